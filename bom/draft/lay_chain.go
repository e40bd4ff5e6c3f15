package draft

import (
	"slices"

	"handtight/bom/draft/assign"
)

// laid is one piece in a chain.
type laid struct {
	part    *Part
	in, out int
	side    int // branch that the next chain starts at; -1 for none
}

// solve asks for a chain of the pieces that are left.
func (l *layer) solve(g *gap, refused map[*Part]bool) (chains [][]laid, ok bool) {
	s := l.classes(g, refused)
	if len(s.classes) == 0 && !g.inLine() && !g.open {
		return nil, false
	}
	p := &assign.Problem{}
	for i := range s.classes {
		c := s.assignClass(&s.classes[i], i)
		if c.Count > 0 {
			c.Count -= l.used[s.classes[i].parts[0]]
		}
		p.Classes = append(p.Classes, c)
	}
	p.Places = l.places(g, s)
	p.Ends = len(s.ends.list)
	p.Tables = []assign.Table{{Joints: make([]assign.Joint, p.Ends*p.Ends), Buy: make([]uint8, p.Ends*p.Ends)}} // nothing is to buy
	for a := range p.Ends {
		for b := range p.Ends {
			p.Tables[0].Joints[a*p.Ends+b] = join(&s.ends.list[a], &s.ends.list[b], assumedFeed)
		}
	}
	out, ok := s.laid(assign.Solve(p).Places)
	if !ok {
		return nil, false
	}
	fresh := slices.ContainsFunc(out[0], func(c laid) bool { return !c.part.own })
	return out, fresh || g.inLine() || g.open || len(g.row) > 0 && len(out[0]) > 0
}

// classes are the pieces that may stand in a gap, each line a class of its own.
func (l *layer) classes(g *gap, refused map[*Part]bool) *solved {
	s := &solved{ends: newEnds(), refused: map[*Part]string{}}
	for _, p := range slices.Concat(l.parts, l.own) {
		if p.Aside != "" || refused[p] || p.own && l.bought[p.ID] || g.takes(p) || !p.isStock() && l.used[p] >= p.Pieces {
			continue
		}
		one := &solved{ends: s.ends}
		one.classify([]*Part{p})
		if len(one.classes) == 1 && (len(one.classes[0].ends) == 2 || len(g.row) > 0 || g.hangs != nil) {
			s.classes = append(s.classes, one.classes...)
		}
	}
	return s
}

// places asks for the chains of a gap: from its one port to the other, with what stands in line
// between them or hangs on a branch.
func (l *layer) places(g *gap, s *solved) []assign.Place {
	lost := assign.Cost{Stops: 1}
	may := make([]assign.Grade, len(s.classes))
	first := assign.Place{From: l.endAt(s, g.from), To: l.endAt(s, g.to), Grade: may, Lost: lost}
	switch {
	case g.open:
		row := l.rowPlaces(s, g.row, may, lost)
		row[0].From, row[0].Hosts = first.From, nil
		return row
	case g.inLine():
		in, out := g.way()
		at := func(i int) int { return s.ends.number(readingClass(g.part.item.Ports[i].End, true)) }
		second := assign.Place{From: at(out), To: first.To, Grade: may, Lost: lost}
		first.To = at(in)
		return []assign.Place{first, second}
	case g.hangs != nil:
		return []assign.Place{first, {From: assign.Branch, To: l.endAt(s, g.hangs.to), Hosts: []int{0}, Grade: may, Lost: lost}}
	}
	return append([]assign.Place{first}, l.rowPlaces(s, g.row, may, lost)...)
}

// laid reads the chains out of an answer; not where one lacks a piece.
func (s *solved) laid(places []assign.Made) (out [][]laid, ok bool) {
	out = make([][]laid, len(places))
	for i, m := range places {
		if !m.OK || m.Buy > 0 {
			return nil, false
		}
		for _, step := range m.Chain {
			if step.Buy > 0 {
				return nil, false
			}
			out[i] = append(out[i], laid{part: s.classes[step.Class].parts[0], in: step.In, out: step.Out, side: -1})
		}
		if i == 1 && m.Host == 0 && m.HostAt >= 0 {
			out[0][m.HostAt].side = m.Side
		}
	}
	return out, true
}
