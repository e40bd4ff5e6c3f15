package assign

import (
	"cmp"
	"slices"
)

// candidate is one chain for a place.
type candidate struct {
	steps  []Step
	buy    int // behind the last
	soft   bool
	cost   Cost
	use    []use
	sides  []int // ends of the branches that it offers, sorted
	made   bool
	source int // end it starts at
	stiff  bool
}

// use is how many pieces of a class a chain takes.
type use struct{ class, n int }

// lister lists the chains of one place from one end.
type lister struct {
	p     *Problem
	place *Place
	table *Table
	tees  int // branches that the chain must offer
	most  int // pieces to buy, at most
	limit int // steps
	count int // steps so far
	full  bool

	plain   bool       // only chains of one sort of hose, without what the place seldom has
	seldom  bool       // some chain was kept out by that
	longest int        // pieces
	exact   bool       // only chains of that many pieces
	ways    [][][2]int // by class
	least   []int      // by end: pieces to buy at least to come from an open end to the goal
	left    []int
	steps   []Step
	opens   []int // open ends before each step, and before the next
	out     []candidate
	from    int
}

func (l *lister) joint(a, b int) Joint { return l.table.Joints[a*l.p.Ends+b] }
func (l *lister) buys(a, b int) int    { return int(l.table.Buy[a*l.p.Ends+b]) }

// softly is how many pieces could be bought between two ends of a place that stands fast, one of
// them a piece that gives way; 0 for none.
func (l *lister) softly(a, b int) int {
	if l.table.Soft == nil || !l.place.Fixed {
		return 0
	}
	return int(l.table.Soft[a*l.p.Ends+b])
}

// gap is a way to come from one end to the next: as they are, or with pieces to buy.
type gap struct {
	asks, buy int
	soft      bool
}

// gaps lists the ways to come from the open end to another. Before the goal a piece that gives way may be
// bought though the two ends join.
func (l *lister) gaps(open, end int, goal bool) (out []gap) {
	if j := l.joint(open, end); j != No {
		out = append(out, gap{asks: boolToInt(j == Asks)})
	} else if n := l.buys(open, end); n > 0 {
		out = append(out, gap{buy: n})
	}
	if n := l.softly(open, end); n > 0 && (goal || len(out) == 0 || out[0].buy > 0) && !l.gives(len(l.steps)) {
		out = append(out, gap{buy: n, soft: true})
	}
	return out
}

const never = 1 << 20

// chains lists the chains from an end to the place's goal with a number of branches.
func (p *Problem) chains(place *Place, from, tees, limit int) (list []candidate, steps int, full bool) {
	l := &lister{p: p, place: place, table: &p.Tables[place.Table], tees: tees, limit: limit, from: from, left: make([]int, len(p.Classes))}
	for i := range p.Classes {
		l.left[i] = p.Classes[i].Count
		if l.left[i] == Cut {
			l.left[i] = never
		}
	}
	l.ways = make([][][2]int, len(p.Classes))
	for i := range p.Classes {
		l.ways[i] = p.Classes[i].ways()
	}
	l.most = place.most()
	l.reach()
	l.plain = true
	cut := l.all()
	if !l.seldom {
		return l.out, l.count, cut
	}
	usual, n := l.out, l.count
	l.plain = false
	if !l.all() {
		return l.out, n + l.count, false
	}
	return append(usual, l.out...), n + l.count, true
}

// all lists the chains afresh; where they are too many, the shortest, one length after the other.
func (l *lister) all() (cut bool) {
	l.out, l.count, l.full, l.exact, l.longest = nil, 0, false, false, l.p.longest()
	l.walk(l.from, 0, 0, 0)
	if !l.full {
		return false
	}
	all := l.count
	l.out, l.count, l.full, l.exact = nil, 0, false, true
	for l.longest = 0; l.longest <= l.p.longest() && !l.full; l.longest++ {
		l.walk(l.from, 0, 0, 0)
	}
	l.count += all
	return true
}

// most is how many pieces a chain for the place may want bought: fewer than where it is not
// made, for a piece of the bag that saves none is not put between bought ones; and a tail, a
// hose and a tail where nothing is known that could be bought.
func (p *Place) most() int {
	if p.Lost.Stops > 0 {
		return 3
	}
	return p.Lost.Missing - 1
}

// reach works out, for each open end, how few pieces must be bought to come to the goal,
// whatever the bag still holds.
func (l *lister) reach() {
	n := l.p.Ends
	l.least = make([]int, n)
	for e := range n {
		l.least[e] = l.step(e, l.place.To)
	}
	for changed := true; changed; {
		changed = false
		for i := range l.p.Classes {
			c := &l.p.Classes[i]
			if l.place.Grade[i] == Refused || c.Count == 0 {
				continue
			}
			for in := range c.Ends {
				for out := range c.Ends {
					if in == out || l.least[c.Ends[out]] >= never {
						continue
					}
					for e := range n {
						if v := l.step(e, c.Ends[in]) + l.least[c.Ends[out]]; v < l.least[e] {
							l.least[e], changed = v, true
						}
					}
				}
			}
		}
	}
}

// step is how many pieces join two ends: 0 where they join by themselves.
func (l *lister) step(a, b int) int {
	switch {
	case l.joint(a, b) != No:
		return 0
	case l.buys(a, b) > 0 && l.softly(a, b) > 0:
		return min(l.buys(a, b), l.softly(a, b))
	case l.buys(a, b)+l.softly(a, b) > 0:
		return l.buys(a, b) + l.softly(a, b)
	}
	return never
}

// walk goes on from an open end.
func (l *lister) walk(open, buy, asks, tees int) {
	if l.count >= l.limit {
		l.full = true
		return
	}
	l.count++
	l.opens = append(l.opens, open)
	defer func() { l.opens = l.opens[:len(l.opens)-1] }()
	if tees == l.tees && (!l.exact || len(l.steps) == l.longest) {
		l.close(open, buy, asks)
	}
	if len(l.steps) >= l.longest {
		return
	}
	for i := range l.p.Classes {
		c := &l.p.Classes[i]
		if l.left[i] == 0 || l.place.Grade[i] == Refused || tees+len(c.Ends)-2 > l.tees {
			continue
		}
		for _, w := range l.ways[i] {
			for _, g := range l.gaps(open, c.Ends[w[0]], false) {
				l.enter(i, w[0], w[1], g, buy, asks, tees)
			}
		}
	}
}

// ways lists the ways through a piece, each once of those that come to the same.
func (c *Class) ways() (out [][2]int) {
	for a := range c.Ends {
		for b := range c.Ends {
			if a != b && !alikeBefore(c, a, b) {
				out = append(out, [2]int{a, b})
			}
		}
	}
	return out
}

// alikeBefore reports whether another way through a piece, tried before, comes to the same.
func alikeBefore(c *Class, in, out int) bool {
	for a := range c.Ends {
		for b := range c.Ends {
			if a == b || a > in || a == in && b >= out {
				continue
			}
			if c.Ends[a] == c.Ends[in] && c.Ends[b] == c.Ends[out] && slices.Equal(c.ends(c.sides(a, b)), c.ends(c.sides(in, out))) {
				return true
			}
		}
	}
	return false
}

// sides are the indices of the branches of a way through a piece.
func (c *Class) sides(in, out int) []int {
	var list []int
	for i := range c.Ends {
		if i != in && i != out {
			list = append(list, i)
		}
	}
	return list
}

// ends are the sorts of end at some indices, in order.
func (c *Class) ends(at []int) []int {
	var list []int
	for _, i := range at {
		list = append(list, c.Ends[i])
	}
	slices.Sort(list)
	return list
}

// enter puts a piece behind the open end, and goes on.
func (l *lister) enter(i, in, out int, g gap, buy, asks, tees int) {
	c := &l.p.Classes[i]
	if buy+g.buy+l.least[c.Ends[out]] > l.most+boolToInt(l.table.Soft != nil && l.place.Fixed && l.branched() && len(c.Ends) > 2) || l.needless(c.Ends[in], g) {
		return
	}
	if l.unusual(i) {
		if l.seldom = true; l.plain {
			return
		}
	}
	s := Step{Class: i, In: in, Out: out, Buy: g.buy, Soft: g.soft}
	if len(c.Ends) > 2 {
		s.Sides = c.sides(in, out)
		tees += len(s.Sides)
	}
	asks += g.asks
	if l.place.Grade[i] == MayAsks {
		asks++
	}
	l.left[i]--
	l.steps = append(l.steps, s)
	l.walk(c.Ends[out], buy+g.buy, asks, tees)
	l.steps = l.steps[:len(l.steps)-1]
	l.left[i]++
}

// unusual reports whether a chain seldom has a piece: a second sort of hose, or what its place
// names so.
func (l *lister) unusual(i int) bool {
	if len(l.place.Seldom) > 0 && l.place.Seldom[i] {
		return true
	}
	return l.p.Classes[i].Count == Cut && slices.ContainsFunc(l.steps, func(s Step) bool { return s.Class != i && l.p.Classes[s.Class].Count == Cut })
}

// needless reports whether an end could have been joined to an earlier open one, so that the
// pieces between are not needed. A branch is needed; a single piece that bends is let stand; a
// joint that something must be asked of makes nothing needless; nor does what is to buy and gives
// way make a single piece beside it needless that it could have reached over at the same cost.
func (l *lister) needless(end int, g gap) bool {
	bought := g.buy
	after := bought // pieces to buy behind the earlier open end
	held := false   // something between gives way, and is needed where both ends stand fast
	soft := g.soft  // and so does something that is to buy
	for k := len(l.steps) - 1; k >= 0; k-- {
		s := &l.steps[k]
		if len(s.Sides) > 0 {
			return false
		}
		after += s.Buy
		soft = soft || s.Soft
		held = held || l.place.Fixed && l.p.Classes[s.Class].Gives
		if k == len(l.steps)-1 && l.p.Classes[s.Class].Bends && bought == 0 && s.Buy == 0 {
			continue
		}
		if held && !l.gives(k) {
			continue
		}
		if soft && !l.gives(k) {
			if n := l.softly(l.opens[k], end); n > 0 && n <= after-boolToInt(k == len(l.steps)-1) {
				return true
			}
			continue
		}
		if j := l.joint(l.opens[k], end); j == Joins || after > 0 && l.buys(l.opens[k], end) > 0 && l.buys(l.opens[k], end) <= after {
			return true
		}
	}
	return false
}

// branched reports whether all pieces so far have branches: those serve other places, and need save
// nothing in their own where what gives way is to buy.
func (l *lister) branched() bool {
	return !slices.ContainsFunc(l.steps, func(s Step) bool { return len(s.Sides) == 0 })
}

// gives reports whether something gives way before a step.
func (l *lister) gives(before int) bool {
	return slices.ContainsFunc(l.steps[:before], func(s Step) bool { return s.Soft || l.p.Classes[s.Class].Gives })
}

// close ends a chain at the goal.
func (l *lister) close(open, buy, asks int) {
	for _, g := range l.gaps(open, l.place.To, true) {
		l.end(g, buy, asks)
	}
}

// end keeps the chain that comes to the goal over a last gap.
func (l *lister) end(g gap, buy, asks int) {
	soft := g.soft || slices.ContainsFunc(l.steps, func(s Step) bool { return s.Soft })
	if most := l.most + boolToInt(len(l.steps) == 0 || soft && l.branched()); buy+g.buy > most || l.needless(l.place.To, g) {
		return
	}
	c := candidate{steps: slices.Clone(l.steps), buy: g.buy, soft: g.soft, made: true, source: l.from,
		cost: Cost{Missing: buy + g.buy, Questions: asks + g.asks, Length: len(l.steps) + buy + g.buy}}
	gives := !l.place.Fixed || g.soft || l.gives(len(l.steps))
	for at, s := range l.steps {
		class := &l.p.Classes[s.Class]
		if class.Count != Cut {
			c.take(s.Class)
			c.cost.LeftOver--
		}
		c.cost.Order -= class.Rank * l.place.Rank
		if len(s.Sides) > 0 {
			c.sides = append(c.sides, class.ends(s.Sides)...)
			switch l.place.Near {
			case AtFrom:
				c.cost.Apart += at
			case AtTo:
				c.cost.Apart += len(l.steps) - 1 - at
			}
		}
	}
	if !gives {
		c.cost.Missing += l.place.Stiff
		c.stiff = true
	}
	slices.Sort(c.sides)
	slices.SortFunc(c.use, func(a, b use) int { return cmp.Compare(a.class, b.class) })
	l.out = append(l.out, c)
}

func (c *candidate) take(class int) {
	for i := range c.use {
		if c.use[i].class == class {
			c.use[i].n++
			return
		}
	}
	c.use = append(c.use, use{class, 1})
}

func (p *Problem) longest() int {
	if p.Longest > 0 {
		return p.Longest
	}
	return 9
}

func boolToInt(b bool) int {
	if b {
		return 1
	}
	return 0
}
