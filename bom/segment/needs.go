package segment

import (
	"handtight/catalog"
	"handtight/pressure/quantity"
)

// ReliefMargin is the least set pressure of a relief as a multiple of the duty. Source: pump
// handbook chapter on relief valves, triplex and more plungers.
const ReliefMargin = 1.1

// Needs is what a part must be bought for that is to stand in a segment: the highest pressure there
// that has a bound, what a relief needs in its line, and without one, where nothing bounds the
// pressure, a tenth above a relief that stands a tenth above the duty. ok is false where no figure
// has a bound.
func (s *Segments) Needs(g *Segment) (p quantity.Pressure, ok bool) {
	p = max(g.Load.Act, g.Load.Fail)
	relieved := false
	for _, u := range s.Graph.Units {
		if u.Item.Kind.Is(catalog.Relieves) && u.Item.Set != nil && s.SegmentOf(u.First+u.Item.PortIndex("in")) == g {
			p, relieved = max(p, *u.Item.Set*ReliefMargin), true
		}
	}
	if worst, _ := g.Load.Worst(); !relieved && worst.Unbounded() && s.Graph.Build.Duty.Pressure != nil {
		p = max(p, *s.Graph.Build.Duty.Pressure*ReliefMargin*ReliefMargin)
	}
	return p, p > 0
}
