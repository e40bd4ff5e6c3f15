package assign

import (
	"slices"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// brute tries every way of laying pieces, one by one, into every place. It shares nothing with
// the solver but the problem: no classes of scarce pieces, no bounds, no dominance.
type brute struct {
	p     *Problem
	left  []int
	best  *Cost
	sides []bruteSide
}

type bruteSide struct{ host, end int }

func bruteForce(p *Problem) Cost {
	b := &brute{p: p, left: make([]int, len(p.Classes))}
	bag := 0
	for i, c := range p.Classes {
		b.left[i] = c.Count
		if c.Count == Cut {
			b.left[i] = 100
		} else {
			bag += c.Count
		}
	}
	b.place(0, Cost{LeftOver: bag})
	return *b.best
}

func (b *brute) place(i int, c Cost) {
	if i == len(b.p.Places) {
		if len(b.sides) == 0 && (b.best == nil || c.Compare(*b.best) < 0) {
			b.best = &c
		}
		return
	}
	p := &b.p.Places[i]
	b.place(i+1, c.Add(p.Lost))
	if p.From != Branch {
		b.chain(i, p.From, nil, []int{p.From}, nil, c)
		return
	}
	for k, s := range b.sides {
		for at, h := range p.Hosts {
			if h == s.host {
				old := b.sides
				b.sides = append(append([]bruteSide{}, old[:k]...), old[k+1:]...)
				b.chain(i, s.end, nil, []int{s.end}, nil, c.Add(Cost{Length: at}))
				b.sides = old
			}
		}
	}
}

// piece is one laid piece: its way through, and what was bought before it.
type piece struct {
	class, in, out, buy int
	soft                bool
	sides               []int // sorts of end
}

// chain extends a chain by every piece, and ends it where it can. ends holds, alternating, the
// open end and the end that is put to it.
func (b *brute) chain(i, open int, laid []piece, ends []int, _ []int, c Cost) {
	p := &b.p.Places[i]
	t := &b.p.Tables[p.Table]
	given := !p.Fixed
	for _, l := range laid {
		given = given || l.soft || b.p.Classes[l.class].Gives
	}
	type link struct {
		asks, buy int
		soft      bool
	}
	join := func(x, y int, goal bool) (out []link) {
		switch t.Joints[x*b.p.Ends+y] {
		case Joins:
			out = append(out, link{})
		case Asks:
			out = append(out, link{asks: 1})
		default:
			if n := int(t.Buy[x*b.p.Ends+y]); n > 0 {
				out = append(out, link{buy: n})
			}
		}
		if n := int(t.Soft[x*b.p.Ends+y]); n > 0 && !given && (goal || t.Joints[x*b.p.Ends+y] == No) {
			out = append(out, link{buy: n, soft: true})
		}
		return out
	}
	for _, last := range join(open, p.To, true) {
		d := c.Add(Cost{Questions: last.asks, Missing: last.buy, Length: last.buy})
		if !given && !last.soft {
			d.Missing += p.Stiff
		}
		for k, l := range laid {
			if len(l.sides) > 0 && p.Near == AtFrom {
				d.Apart += k
			} else if len(l.sides) > 0 && p.Near == AtTo {
				d.Apart += len(laid) - k - 1
			}
		}
		if b.needed(t, p.Fixed, laid, append(append([]int{}, ends...), p.To), last.buy, last.soft) && b.chainMissing(laid)+last.buy <= b.most(p, laid, last.soft) {
			old := b.sides
			for _, l := range laid {
				for _, e := range l.sides {
					b.sides = append(append([]bruteSide{}, b.sides...), bruteSide{i, e})
				}
			}
			b.place(i+1, d)
			b.sides = old
		}
	}
	if len(laid) == b.p.longest() {
		return
	}
	for k := range b.p.Classes {
		cl := &b.p.Classes[k]
		if b.left[k] == 0 || p.Grade[k] == Refused {
			continue
		}
		for in := range cl.Ends {
			for out := range cl.Ends {
				if in == out {
					continue
				}
				var sides []int
				used := 1
				for x, e := range cl.Ends {
					if x != in && x != out {
						sides = append(sides, e)
					}
				}
				if cl.Count == Cut {
					used = 0
				}
				for _, by := range join(open, cl.Ends[in], false) {
					if p.Grade[k] == MayAsks {
						by.asks++
					}
					b.left[k]--
					b.chain(i, cl.Ends[out], append(append([]piece{}, laid...), piece{k, in, out, by.buy, by.soft, sides}), append(append([]int{}, ends...), cl.Ends[in], cl.Ends[out]), nil,
						c.Add(Cost{Questions: by.asks, Missing: by.buy, Length: 1 + by.buy, LeftOver: -used, Order: -cl.Rank * p.Rank}))
					b.left[k]++
				}
			}
		}
	}
}

func (b *brute) chainMissing(laid []piece) int {
	n := 0
	for _, l := range laid {
		n += l.buy
	}
	return n
}

// most is what may be bought: with a piece of the bag, less than where the place is not made, but for
// pieces with branches beside what is to buy and gives way.
func (b *brute) most(p *Place, laid []piece, soft bool) int {
	most := 3
	if p.Lost.Stops == 0 {
		most = p.Lost.Missing - 1
	}
	for _, l := range laid {
		soft = soft || l.soft
	}
	for _, l := range laid {
		if len(l.sides) == 0 || !soft {
			return most
		}
	}
	return most + 1
}

// needed holds a whole chain against the rule: no run of pieces without a branch may be taken
// out so that what is left joins at no more pieces to buy, but for one single piece that bends and
// what alone gives way between two ends that stand fast. Where that is to buy, what is bought in
// its place must give way as well, and be less where it takes one piece out.
func (b *brute) needed(t *Table, fixed bool, laid []piece, ends []int, last int, lastSoft bool) bool {
	buys, softs := make([]int, len(laid)+1), make([]bool, len(laid)+1)
	for i, l := range laid {
		buys[i], softs[i] = l.buy, l.soft
	}
	buys[len(laid)], softs[len(laid)] = last, lastSoft
	for i := range laid {
		for k := i; k < len(laid); k++ { // take out i..k
			if len(laid[k].sides) > 0 {
				break
			}
			bought, held, soft := 0, false, false
			for x := i; x <= k; x++ {
				held = held || fixed && b.p.Classes[laid[x].class].Gives
			}
			for x := i; x <= k+1; x++ {
				bought += buys[x]
				soft = soft || softs[x]
			}
			for x := range i {
				if softs[x] || b.p.Classes[laid[x].class].Gives { // something before gives way already
					held, soft = false, false
				}
			}
			if held {
				continue
			}
			if i == k && b.p.Classes[laid[i].class].Bends && bought == 0 {
				continue
			}
			x, y := ends[2*i], ends[2*(k+1)+1]
			if soft {
				if n := int(t.Soft[x*b.p.Ends+y]); n > 0 && (n < bought || i < k && n == bought) {
					return false
				}
				continue
			}
			n := int(t.Buy[x*b.p.Ends+y])
			if t.Joints[x*b.p.Ends+y] == Joins || bought > 0 && n > 0 && n <= bought {
				return false
			}
		}
	}
	return true
}

// genProblem draws a small bag with its places.
func genProblem(t *rapid.T) *Problem {
	n := rapid.IntRange(2, 4).Draw(t, "ends")
	p := &Problem{Ends: n, Longest: rapid.IntRange(1, 3).Draw(t, "longest")}
	for range rapid.IntRange(1, 2).Draw(t, "tables") {
		tab := Table{Joints: make([]Joint, n*n), Buy: make([]uint8, n*n), Soft: make([]uint8, n*n)}
		for a := range n {
			for b := range a + 1 {
				j := Joint(rapid.SampledFrom([]int{0, 0, 1, 1, 2}).Draw(t, "joint"))
				buy := uint8(rapid.SampledFrom([]int{0, 0, 1, 2}).Draw(t, "buy"))
				tab.Joints[a*n+b], tab.Joints[b*n+a] = j, j
				tab.Buy[a*n+b], tab.Buy[b*n+a] = buy, buy
				soft := uint8(rapid.SampledFrom([]int{0, 0, 1, 2, 3}).Draw(t, "soft"))
				tab.Soft[a*n+b], tab.Soft[b*n+a] = soft, soft
			}
		}
		p.Tables = append(p.Tables, tab)
	}
	// Long chains go with few classes and places, and one class has branches: else nobody lives
	// to see the brute force end.
	classes, places, tee := 3, 3, false
	if p.Longest == 3 {
		classes, places = 2, 2
	}
	pieces := 9
	for range rapid.IntRange(1, classes).Draw(t, "classes") {
		c := Class{Count: rapid.IntRange(-1, min(3, pieces)).Draw(t, "count"), Bends: rapid.IntRange(0, 4).Draw(t, "bends") == 0}
		pieces -= max(0, c.Count)
		ports := rapid.SampledFrom([]int{2, 2, 2, 3, 3, 4}).Draw(t, "ports")
		if tee {
			ports = 2
		}
		tee = tee || ports > 2
		for range ports {
			c.Ends = append(c.Ends, rapid.IntRange(0, n-1).Draw(t, "end"))
		}
		if len(c.Ends) > 2 {
			c.Bends = false
			c.Count = max(0, c.Count) // a tee is not cut from stock
		}
		c.Gives = rapid.Bool().Draw(t, "gives")
		c.Rank = rapid.IntRange(0, 5).Draw(t, "rank")
		p.Classes = append(p.Classes, c)
	}
	for i := range rapid.IntRange(1, places).Draw(t, "places") {
		pl := Place{From: rapid.IntRange(0, n-1).Draw(t, "from"), To: rapid.IntRange(0, n-1).Draw(t, "to"), Table: rapid.IntRange(0, len(p.Tables)-1).Draw(t, "table"), Lost: Cost{Missing: rapid.IntRange(1, 3).Draw(t, "lost")}}
		pl.Fixed = rapid.IntRange(0, 3).Draw(t, "fixed") == 0
		pl.Stiff = rapid.IntRange(1, 3).Draw(t, "stiff")
		pl.Near = Near(rapid.IntRange(0, 2).Draw(t, "near"))
		pl.Rank = rapid.IntRange(0, 3).Draw(t, "place rank")
		if rapid.IntRange(0, 5).Draw(t, "hopeless") == 0 {
			pl.Lost = Cost{Stops: 1}
		}
		if i > 0 && rapid.IntRange(0, 1).Draw(t, "branches") == 0 {
			pl.From = Branch
			for h := range i {
				if rapid.IntRange(0, 1).Draw(t, "host") == 0 || h == i-1 {
					pl.Hosts = append(pl.Hosts, h)
				}
			}
		}
		for range p.Classes {
			pl.Grade = append(pl.Grade, Grade(rapid.SampledFrom([]int{0, 0, 0, 1, 2}).Draw(t, "grade")))
		}
		p.Places = append(p.Places, pl)
	}
	return p
}

// What a place seldom has is listed later, and taken all the same where it is best.
func TestSeldomChangesNothing(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := genProblem(t)
		for i := range p.Places {
			p.Places[i].Seldom = rapid.SliceOfN(rapid.Bool(), len(p.Classes), len(p.Classes)).Draw(t, "seldom")
		}
		a := Solve(p)
		require.True(t, a.Proven)
		require.Equal(t, bruteForce(p), a.Cost)
	})
}

// threefold is a problem three times over, whose places share one bag of longer chains.
func threefold(p *Problem) *Problem {
	out := *p
	out.Longest = 8
	out.Classes, out.Places = nil, nil
	for n := range 3 {
		for _, c := range p.Classes {
			c.Rank += n * len(p.Classes)
			out.Classes = append(out.Classes, c)
		}
		for _, pl := range p.Places {
			pl.Grade = slices.Repeat(pl.Grade, 3)
			hosts := pl.Hosts
			pl.Hosts = nil
			for _, h := range hosts {
				pl.Hosts = append(pl.Hosts, h+n*len(p.Places))
			}
			out.Places = append(out.Places, pl)
		}
	}
	return &out
}

// A search that is cut off gives what its chains say all the same, takes no piece twice, and names a
// bound that is no dearer than the best there is.
func TestCutOff(t *testing.T) {
	cut := 0
	for seed := range 150 {
		p := threefold(rapid.Custom(genProblem).Example(seed))
		best := Solve(p)
		p.Steps = 1 + seed%7
		a := Solve(p)
		if !best.Proven {
			continue
		}
		require.Equal(t, a.Cost, audit(t, p, a), "seed %d", seed)
		require.LessOrEqual(t, best.Cost.Compare(a.Cost), 0, "seed %d", seed)
		require.LessOrEqual(t, a.Bound.Compare(best.Cost), 0, "seed %d", seed)
		if !a.Proven {
			cut++
		}
	}
	t.Logf("%d of 150 were cut off", cut)
	require.Positive(t, cut)
}

// Whoever tries every way of laying up to nine pieces comes to the same cost.
func TestAgreesWithBruteForce(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := genProblem(t)
		a := Solve(p)
		require.True(t, a.Proven)
		require.Equal(t, bruteForce(p), a.Cost)
		require.Equal(t, a.Cost, a.Bound)
		require.Equal(t, a.Cost, audit(t, p, a))
	})
}

// audit works the cost of an answer out of its chains, and holds each joint, count and branch.
func audit(t require.TestingT, p *Problem, a *Answer) Cost {
	var c Cost
	left := make([]int, len(p.Classes))
	for i := range p.Classes {
		left[i] = max(0, p.Classes[i].Count)
	}
	served := map[[3]int]bool{}
	for i, m := range a.Places {
		pl := &p.Places[i]
		if !m.OK {
			c = c.Add(pl.Lost)
			continue
		}
		open, tab := pl.From, &p.Tables[pl.Table]
		if open == Branch {
			require.Contains(t, pl.Hosts, m.Host)
			s := a.Places[m.Host].Chain[m.HostAt]
			open = p.Classes[s.Class].Ends[m.Side]
			require.Contains(t, s.Sides, m.Side)
			c.Length += slices.Index(pl.Hosts, m.Host)
			require.False(t, served[[3]int{m.Host, m.HostAt, m.Side}])
			served[[3]int{m.Host, m.HostAt, m.Side}] = true
		}
		joint := func(x, buy int, soft bool) {
			switch j := tab.Joints[open*p.Ends+x]; {
			case soft:
				require.True(t, pl.Fixed)
				require.EqualValues(t, tab.Soft[open*p.Ends+x], buy)
				require.Positive(t, buy)
			case j == No:
				require.EqualValues(t, tab.Buy[open*p.Ends+x], buy)
				require.Positive(t, buy)
			case j == Asks:
				c.Questions++
			}
			c.Missing += buy
			c.Length += buy
		}
		if pl.Fixed && !slices.ContainsFunc(m.Chain, func(s Step) bool { return s.Soft || p.Classes[s.Class].Gives }) && !m.Soft {
			require.True(t, m.Stiff)
			c.Missing += pl.Stiff
		}
		for at, s := range m.Chain {
			if len(s.Sides) > 0 && pl.Near == AtFrom {
				c.Apart += at
			} else if len(s.Sides) > 0 && pl.Near == AtTo {
				c.Apart += len(m.Chain) - 1 - at
			}
			cl := &p.Classes[s.Class]
			joint(cl.Ends[s.In], s.Buy, s.Soft)
			open = cl.Ends[s.Out]
			if cl.Count != Cut {
				left[s.Class]--
				require.GreaterOrEqual(t, left[s.Class], 0)
			}
			c.Length++
			c.Order -= cl.Rank * pl.Rank
			require.NotEqual(t, Refused, pl.Grade[s.Class])
			if pl.Grade[s.Class] == MayAsks {
				c.Questions++
			}
		}
		joint(pl.To, m.Buy, m.Soft)
	}
	for i, m := range a.Places {
		for k, s := range m.Chain {
			for _, side := range s.Sides {
				require.True(t, served[[3]int{i, k, side}])
			}
		}
	}
	for _, n := range left {
		c.LeftOver += n
	}
	require.Equal(t, left, a.Left)
	return c
}

// A thousand bags: every answer is what its chains say, takes no piece twice, and serves each
// branch once; one more piece in the bag never makes more to buy.
func TestThousandBags(t *testing.T) {
	bags := rapid.Custom(genProblem)
	for seed := range 1000 {
		p := bags.Example(seed)
		a := Solve(p)
		require.Equal(t, a.Cost, audit(t, p, a), "seed %d", seed)
		for i := range p.Classes {
			if p.Classes[i].Count != Cut {
				p.Classes[i].Count++
				more := Solve(p)
				p.Classes[i].Count--
				require.LessOrEqual(t, more.Cost.Stops, a.Cost.Stops, "seed %d", seed)
				if more.Cost.Stops == a.Cost.Stops {
					require.LessOrEqual(t, more.Cost.Missing, a.Cost.Missing, "seed %d", seed)
				}
				break
			}
		}
	}
}
