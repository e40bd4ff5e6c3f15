package repair

import (
	"slices"
	"strings"

	"handtight/catalog"
	"handtight/threads"
	"handtight/threads/adapt"
)

// refused names what a fitter would not do in a chain whose joints all close; "" where he
// would do it. These are rules of whole chains; those of one piece and of two that touch are
// asked earlier. Source: common practice.
func (q *query) refused(c *adapt.Chain) string {
	last := len(c.Joints) - 1
	for i := range c.Joints {
		m := &c.Joints[i]
		male, female := m.Male(), m.Female()
		if tapered(male) && !male.Plastic && female.Plastic {
			return "a metal taper splits a plastic female"
		}
		if i > 0 && i < last && (passing[m.A.Family] || passing[m.B.Family] || m.A.Left || m.B.Left) {
			return "a thread that no part of a line should have stands in the middle"
		}
		if tapered(male) && female.Swivel && male.Seal != threads.Chamfer {
			return "a taper male under a swivel has no seat"
		}
	}
	for i, p := range c.Pieces {
		if !q.shelf.pieces[p.Index].kind.Is(catalog.Bush) || q.o.Pressure <= highPressure {
			continue
		}
		if c.Joints[i].A.Swivel || c.Joints[i+1].B.Swivel || i == 0 && q.o.Hose[0] || i == len(c.Pieces)-1 && q.o.Hose[1] {
			return "a bush on a hose end at high pressure: a one-piece adaptor"
		}
	}
	if q.o.Turns && !q.turns(c) {
		return "nothing turns"
	}
	return ""
}

func tapered(e threads.End) bool { return e.Family.Facts().Tapered }

// passing are threads that are left at the first chance: they may stand at a given end, and
// never in the middle of a chain.
var passing = map[threads.Family]bool{threads.NH: true, threads.PG: true, threads.NPSM: true}

// turns reports whether something in a chain can turn last.
func (q *query) turns(c *adapt.Chain) bool {
	return slices.ContainsFunc(c.Pieces, func(p adapt.Piece) bool { return q.shelf.pieces[p.Index].turns() }) ||
		slices.ContainsFunc(c.Joints, func(m threads.Mating) bool { return m.A.Swivel || m.B.Swivel })
}

// galls reports whether a joint of a chain has two stainless tapers in one another.
func (q *query) galls(c *Chain, joint int) bool {
	m := &c.Joints[joint]
	if !tapered(m.Male()) || !tapered(m.Female()) {
		return false
	}
	before, after := q.o.Beside[0], q.o.Beside[1]
	if joint > 0 {
		before = c.Pieces[joint-1].material
	}
	if joint < len(c.Pieces) {
		after = c.Pieces[joint].material
	}
	// a given end of which nothing is said is taken for stainless: paste does no harm
	return stainless(before) && stainless(after)
}

func stainless(list []*catalog.Material) bool {
	return len(list) == 0 || slices.ContainsFunc(list, func(m *catalog.Material) bool { return strings.HasPrefix(m.Title, "stainless") })
}

// unmarked reports whether a piece has an NPT and a British taper of one size, which nobody
// tells apart once it is built in.
func unmarked(p adapt.Piece) bool {
	a, b := p.In, p.Out
	if a.Family != threads.NPT {
		a, b = b, a
	}
	return a.Family == threads.NPT && a.Size == b.Size && (b.Family == threads.R || b.Family == threads.Rc || b.Family == threads.Rp)
}
