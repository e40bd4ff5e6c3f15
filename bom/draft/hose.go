package draft

import (
	_ "embed"
	"encoding/csv"
	"fmt"
	"slices"
	"strconv"
	"strings"
	"sync"

	"handtight/bom/draft/assign"
	"handtight/pressure"
	"handtight/pressure/quantity"
	"handtight/threads"
	"handtight/threads/title"
)

// table/hose_end.csv holds the ends that are pressed on hoses for high pressure as a rule, by the dash
// size of the hose, the usual ones first. One end of a hose at least must turn, so that both can be made.
//
//go:embed table/hose_end.csv
var hoseEndText string

// hoseEnd is an end of a hose that a shop makes up.
type hoseEnd struct {
	bore quantity.Length
	end  threads.End
}

var hoseEnds = sync.OnceValue(func() []hoseEnd {
	rows, err := csv.NewReader(strings.NewReader(hoseEndText)).ReadAll()
	if err != nil {
		panic("draft: " + err.Error())
	}
	var out []hoseEnd
	for _, r := range rows[1:] {
		dash, err := strconv.Atoi(r[0])
		e, err2 := title.ReadEnd(r[1])
		if err != nil || err2 != nil || len(e.Candidates) != 1 {
			panic("draft: hose_end.csv: " + r[1])
		}
		out = append(out, hoseEnd{quantity.Length(dash) * quantity.Inch / 16, e.Candidates[0]})
	}
	return out
})

// overRelief is what a relief valve lets the pressure rise to over its setting where nothing says its
// full flow: a tenth, as a check takes it.
const overRelief = 1.1

// hoseSpec is the standard of a hose that holds a pressure at a bore: that of a hose of the lists,
// else of those whose figure was seen in a source the one that holds least, and of those from memory
// only where there is none.
func hoseSpec(bore quantity.Length, need quantity.Pressure, lists []*Part) (best pressure.Spec, ok bool) {
	need *= overRelief
	holds := func(s pressure.Spec) (pressure.Rating, bool) {
		r, known := pressure.HoseRating(s, bore)
		return r, known && r.Pressure >= need && !r.Basis.Guess()
	}
	for _, p := range lists {
		if p.Aside != "" || p.item == nil || !p.isHose() {
			continue
		}
		if s, known := pressure.HoseSpec(p.item.Spec); known {
			if _, is := holds(s); is {
				return s, true
			}
		}
	}
	var least pressure.Rating
	for _, s := range pressure.KnownSpecs() {
		if r, is := holds(s); is && (!ok || r.Status < least.Status || r.Status == least.Status && r.Pressure < least.Pressure) {
			best, least, ok = s, r, true
		}
	}
	return best, ok
}

// hosePair is a hose between two ends: which ends it has, and as how many pieces it counts with those
// that go with it.
type hosePair struct{ from, to, pieces int }

// asPieces is as how many pieces a hose counts that is made up to measure: a fitting is bought sooner.
const asPieces = 2

// toHose is, of each end that a hose may have, how many fittings to buy lead to it from a sort of end;
// never where more than two do.
func (s *shelf) toHose(mates []int, far []uint8) []int {
	out := make([]int, len(s.hoses))
	for k, h := range s.hoses {
		out[k] = mostBought
		if slices.Contains(mates, h) {
			out[k] = 0
			continue
		}
		for _, o := range s.joins[h] {
			if n := int(far[o]); n > 0 {
				out[k] = min(out[k], n)
			}
		}
	}
	return out
}

// pair finds the hose between two sorts of end with the fewest fittings to buy, a bore that is wanted
// first where that is the same, and then the usual ends.
func (s *shelf) pair(a, b []int, need quantity.Pressure, bore quantity.Length) (best hosePair, ok bool) {
	wanted := func(p hosePair) bool { return hoseEnds()[p.from].bore == bore }
	for x := range a {
		for y := range b {
			p := hosePair{x, y, a[x] + asPieces + b[y]}
			if hoseEnds()[x].bore != hoseEnds()[y].bore || !hoseEnds()[x].end.Swivel && !hoseEnds()[y].end.Swivel || p.pieces > asPieces+mostBought-1 || ok && (p.pieces > best.pieces || p.pieces == best.pieces && (wanted(best) || !wanted(p))) {
				continue
			}
			if _, holds := hoseSpec(hoseEnds()[x].bore, need, nil); holds {
				best, ok = p, true
			}
		}
	}
	return best, ok
}

// soften fills in how many pieces could be bought between two sorts of end with a hose among them.
func (x *ends) soften(t *assign.Table, need quantity.Pressure) {
	n, s := len(x.list), shelfFor(true)
	lead := make([][]int, n)
	for a := range n {
		mates := s.mates(&x.list[a])
		lead[a] = s.toHose(mates, s.far(mates))
	}
	t.Soft = make([]uint8, n*n)
	for a := range n {
		for b := range a + 1 {
			if p, ok := s.pair(lead[a], lead[b], need, 0); ok {
				t.Soft[a*n+b], t.Soft[b*n+a] = uint8(p.pieces), uint8(p.pieces)
			}
		}
	}
}

// withHose lists what to buy between two ends of a line for high pressure, a hose that is made up
// among it; nil where no such row is known.
func (s *solved) withHose(a, b int, l *line, p pressures) []bought {
	sh := shelfFor(true)
	lead := func(n int) []int {
		m := sh.mates(&s.ends.list[n])
		return sh.toHose(m, sh.far(m))
	}
	bore := quantity.Length(0)
	for _, q := range s.parts {
		if q.Aside == "" && q.item != nil && q.isHose() && q.item.Bore != nil {
			bore = *q.item.Bore
			break
		}
	}
	x, y := lead(a), lead(b)
	pair, ok := sh.pair(x, y, p.high, bore)
	if !ok {
		return nil
	}
	from, to := hoseEnds()[pair.from], hoseEnds()[pair.to]
	spec, _ := hoseSpec(from.bore, p.high, s.parts)
	at := func(e threads.End) int {
		return s.ends.number(endClass{readings: []threads.End{e}, madeUp: true})
	}
	var out []bought
	if x[pair.from] > 0 {
		out = append(out, s.between(a, at(from.end), l, p)...)
	}
	hose := madeUp(from, to, spec)
	hose.from = at(from.end)
	out = append(out, hose)
	if y[pair.to] > 0 {
		out = append(out, s.between(at(to.end), b, l, p)...)
	}
	return out
}

// madeUp is a hose to be made up, as a build file has it but for its length.
func madeUp(from, to hoseEnd, spec pressure.Spec) bought {
	name := string(spec)
	if strings.HasPrefix(name, "100R") {
		name = "SAE " + name
	}
	ends := from.end.String() + " both ends"
	if to.end != from.end {
		ends = from.end.String() + " x " + to.end.String()
	}
	b := bought{title: fmt.Sprintf("hose %s %s, %s, 316, made up to measure", name, boreText(from.bore), ends),
		note: "the length is to be measured, and the ends to be pressed on by who makes it up"}
	b.hose = madeHose
	b.made.text("about", b.title)
	b.made.add("ends", "["+literal(from.end.String())+", "+literal(to.end.String())+"]")
	b.made.text("material", "316 ends")
	b.made.text("spec", name)
	b.made.text("bore", boreText(from.bore))
	return b
}

// madeHose is the sort of a bought piece that is a hose with its ends.
const madeHose = "made"
