package compare

import (
	"fmt"
	"math"

	"handtight/bom/segment"
	"handtight/pressure/quantity"
)

// segments compares each new segment with the old one that it shares most ports with.
func (c *comparer) segments() {
	for _, g := range c.new.Segments.All {
		o := c.before(g)
		if o == nil {
			continue
		}
		row := Segment{Old: o, New: g}
		row.figures()
		if len(row.Worse)+len(row.Better) > 0 {
			c.report.Segments = append(c.report.Segments, row)
		}
	}
}

// before finds the old segment of a new one; nil if none of its units was there.
func (c *comparer) before(g *segment.Segment) *segment.Segment {
	shared := map[*segment.Segment]int{}
	for _, p := range g.Ports {
		n := &c.new.Graph.Ports[p]
		u := c.from[n.Unit]
		if u == nil {
			continue
		}
		if i := u.Item.PortIndex(n.Port.Name); i >= 0 {
			shared[c.old.Segments.SegmentOf(u.First+i)]++
		}
	}
	var best *segment.Segment
	for _, o := range c.old.Segments.All {
		if shared[o] > 0 && (best == nil || shared[o] > shared[best]) {
			best = o
		}
	}
	return best
}

// enough is the least change of a pressure that is told, in bar: what a figure with one
// decimal can show.
const enough = 0.05

// figures tells what of a segment is worse and what is better.
func (s *Segment) figures() {
	worstOld, _ := s.Old.Load.Worst()
	worstNew, _ := s.New.Load.Worst()
	s.tell("normal", s.Old.Load.Normal.Bar(), s.New.Load.Normal.Bar(), false)
	s.tell("worst", worstOld.Bar(), worstNew.Bar(), false)
	s.tell("vacuum", -s.Old.Load.Low.Bar(), -s.New.Load.Low.Bar(), false)
	hold := func(g *segment.Segment) float64 {
		if !g.Rated() {
			return math.NaN()
		}
		return g.Allowable.Rating.Pressure.Bar()
	}
	s.tell("holds", hold(s.Old), hold(s.New), true)
	margin := func(g *segment.Segment) float64 {
		if m, ok := g.Margin(); ok {
			return m.Bar()
		}
		return math.NaN()
	}
	s.tell("margin", margin(s.Old), margin(s.New), true)
	if was, now := len(s.Old.Unrated), len(s.New.Unrated); was != now {
		s.put(fmt.Sprintf("units without a known rating %d -> %d", was, now), now > was)
	}
}

// tell notes a figure that rose or fell; NaN is one that is not known.
func (s *Segment) tell(what string, old, now float64, moreIsBetter bool) {
	if math.IsNaN(old) && math.IsNaN(now) || old == now || math.Abs(now-old) < enough {
		return
	}
	better := now > old == moreIsBetter
	if math.IsNaN(old) || math.IsNaN(now) {
		better = math.IsNaN(old)
	}
	s.put(fmt.Sprintf("%s %s -> %s", what, bar(old), bar(now)), !better)
}

func (s *Segment) put(text string, worse bool) {
	if worse {
		s.Worse = append(s.Worse, text)
	} else {
		s.Better = append(s.Better, text)
	}
}

// bar writes a pressure to a tenth, with its unit.
func bar(v float64) string {
	switch {
	case math.IsNaN(v):
		return "not known"
	case math.IsInf(v, 1):
		return "no bound"
	}
	return quantity.Decimals(v, 1) + " bar"
}
