package repair

import (
	"cmp"
	"slices"

	"handtight/catalog"
	"handtight/threads"
	"handtight/threads/adapt"
)

// weight is what a chain is put in order by: plain reasons, one after another.
type weight struct {
	cautions, pieces, families, steps int
	priced                            bool
	price                             int64 // landed, in minor units of the build's currency
	plastic                           int   // plastic pieces between ends of metal
	usual                             int   // what is heavier or dearer than need be comes later
	seals                             int   // that can be lost
	unmarked                          int   // NPT beside a British taper of its size
	ids                               [3]string
}

// weigh finds a chain's weight.
func (q *query) weigh(c *adapt.Chain, a, b threads.End) weight {
	w := weight{pieces: len(c.Pieces), families: families(c, a, b), priced: true}
	for i, x := range c.Pieces {
		p := q.shelf.pieces[x.Index]
		if i < len(w.ids) {
			w.ids[i] = p.ID
		}
		w.steps += max(0, p.Steps-1)
		w.usual += p.Usual
		if p.Price == nil {
			w.priced = false
		} else {
			w.price += p.price
		}
		if unmarked(x) {
			w.unmarked++
		}
		if (x.In.Plastic || x.Out.Plastic) && !a.Plastic && !b.Plastic {
			w.plastic++
		}
		if r, ok := p.Holds(); !p.kind.Is(catalog.Hose) && (!ok || q.guessed(r)) {
			w.cautions++
		}
		if q.brittle(p) {
			w.cautions++
		}
	}
	for i := range c.Joints {
		switch c.Joints[i].Verdict {
		case threads.LowPressureOnly:
			w.cautions++
		case threads.SealsWith:
			w.seals++
		}
	}
	return w
}

// families counts the families of thread that neither given end has.
func families(c *adapt.Chain, a, b threads.End) int {
	var seen [6]threads.Family
	n := 0
	for _, p := range c.Pieces {
		for _, f := range [2]threads.Family{p.In.Family, p.Out.Family} {
			if f != a.Family && f != b.Family && n < len(seen) && !slices.Contains(seen[:n], f) {
				seen[n] = f
				n++
			}
		}
	}
	return n
}

// compare puts the best first: fewest cautions, pieces, further families, steps beyond one;
// landed price, what has none later; then what is usual, fewest seals to lose, and the name.
func (q *query) compare(x, y *weight) int {
	price := 0
	switch {
	case x.priced && y.priced:
		price = cmp.Compare(x.price, y.price)
	case x.priced:
		price = -1
	case y.priced:
		price = 1
	}
	first := 0
	if q.o.ByPrice {
		first = price
	}
	return cmp.Or(first,
		cmp.Compare(x.cautions, y.cautions), cmp.Compare(x.pieces, y.pieces), cmp.Compare(x.families, y.families), cmp.Compare(x.steps, y.steps), price,
		cmp.Compare(x.plastic, y.plastic), cmp.Compare(x.usual, y.usual), cmp.Compare(x.seals, y.seals), cmp.Compare(x.unmarked, y.unmarked), slices.Compare(x.ids[:], y.ids[:]))
}

func (q *query) before(x, y *weight) bool { return q.compare(x, y) <= 0 }
