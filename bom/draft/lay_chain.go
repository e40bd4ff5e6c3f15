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
	var left []*Part
	for _, p := range slices.Concat(l.parts, l.own) {
		if p.Aside == "" && !refused[p] && !(p.own && l.bought[p.ID]) && !g.takes(p) && (p.isStock() || l.used[p] < p.Pieces) {
			left = append(left, p)
		}
	}
	s := &solved{ends: newEnds(), refused: map[*Part]string{}}
	for _, p := range left { // each line a class of its own
		one := &solved{ends: s.ends}
		one.classify([]*Part{p})
		if len(one.classes) == 1 && (len(one.classes[0].ends) == 2 || len(g.row) > 0 || g.hangs != nil) {
			s.classes = append(s.classes, one.classes...)
		}
	}
	if len(s.classes) == 0 && !g.inLine() && !g.open {
		return nil, false
	}
	end := func(port int) int {
		return l.endAt(s, port)
	}
	p := &assign.Problem{}
	for i := range s.classes {
		c := s.assignClass(&s.classes[i], i)
		if c.Count > 0 {
			c.Count -= l.used[s.classes[i].parts[0]]
		}
		p.Classes = append(p.Classes, c)
	}
	lost := assign.Cost{Stops: 1}
	may := make([]assign.Grade, len(p.Classes))
	p.Places = []assign.Place{{From: end(g.from), To: end(g.to), Grade: may, Lost: lost}}
	switch {
	case g.open:
		p.Places = l.rowPlaces(s, g.row, may, lost)
		p.Places[0].From, p.Places[0].Hosts = end(g.from), nil
	case g.inLine():
		in, out := g.way()
		at := func(i int) int { return s.ends.number(readingClass(g.part.item.Ports[i].End, true)) }
		p.Places = append(p.Places, assign.Place{From: at(out), To: p.Places[0].To, Grade: may, Lost: lost})
		p.Places[0].To = at(in)
	case g.hangs != nil:
		p.Places = append(p.Places, assign.Place{From: assign.Branch, To: end(g.hangs.to), Hosts: []int{0}, Grade: may, Lost: lost})
	default:
		p.Places = append(p.Places, l.rowPlaces(s, g.row, may, lost)...)
	}
	p.Ends = len(s.ends.list)
	p.Tables = []assign.Table{{Joints: make([]assign.Joint, p.Ends*p.Ends), Buy: make([]uint8, p.Ends*p.Ends)}} // nothing is to buy
	for a := range p.Ends {
		for b := range p.Ends {
			p.Tables[0].Joints[a*p.Ends+b] = join(&s.ends.list[a], &s.ends.list[b], assumedFeed)
		}
	}
	answer := assign.Solve(p)
	out := make([][]laid, len(answer.Places))
	for i, m := range answer.Places {
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
	fresh := slices.ContainsFunc(out[0], func(c laid) bool { return !c.part.own })
	return out, fresh || g.inLine() || g.open || len(g.row) > 0 && len(out[0]) > 0
}
