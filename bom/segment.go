package bom

import (
	"slices"

	"handtight/catalog"
)

// Segment is joints and parts, branches included, bounded by whatever raises,
// drops or can stop pressure.
type Segment struct {
	Name    string // after the first run and its first and last unit: "raw water: intake to feed-pump"
	Runs    []*Run
	Units   []*Unit // every unit that touches it, bounding ones too
	Ports   []int
	Joints  []*Joint
	Load    Load
	Hold    Hold    // its weakest member
	Unrated []*Unit // members whose rating is not known
	Below   bool
}

// HighPressure is the boundary between low and high pressure in bar: our own
// (a judgement), above what a house system or a feed pump gives and below what any
// membrane needs.
const HighPressure = 10.0

// High reports whether the segment's normal pressure makes it a high-pressure one.
func (g *Segment) High() bool { return g.Load.Normal > HighPressure }

// segment makes cells and segments. Filters and strainers do not bound a segment:
// what clogs is a failure and not a part of the plan.
func (s *System) segment() {
	s.cells = s.newCells()
	s.gatherParts()
	sets := newSets(s.cells.count)
	for _, e := range s.cells.edges {
		if e.is == catalog.Open && !e.closable {
			sets.join(e.from, e.to)
		}
	}
	of, n := sets.number()
	s.Segments = make([]*Segment, n)
	for i := range s.Segments {
		s.Segments[i] = &Segment{}
	}
	s.segmentOf = make([]*Segment, len(s.Ports))
	for p := range s.Ports {
		g := s.Segments[of[s.cells.of[p]]]
		s.segmentOf[p] = g
		g.Ports = append(g.Ports, p)
		u := s.Ports[p].Unit
		if len(g.Units) == 0 || g.Units[len(g.Units)-1] != u && !slices.Contains(g.Units, u) {
			g.Units = append(g.Units, u)
		}
	}
	for _, j := range s.Joints {
		g := s.segmentOf[j.A]
		g.Joints = append(g.Joints, j)
		g.Below = g.Below || j.Run.Below
		if len(g.Runs) == 0 || g.Runs[len(g.Runs)-1] != j.Run && !slices.Contains(g.Runs, j.Run) {
			g.Runs = append(g.Runs, j.Run)
		}
	}
	s.Segments = slices.DeleteFunc(s.Segments, func(g *Segment) bool { return len(g.Joints) == 0 })
	for _, g := range s.Segments {
		g.Name = g.name(s)
	}
}

// name calls a segment after the run that has most of its joints, the first of like ones,
// and the units at the ends of it.
func (g *Segment) name(s *System) string {
	count := map[*Run]int{}
	main := g.Joints[0].Run
	for _, j := range g.Joints {
		if count[j.Run]++; count[j.Run] > count[main] {
			main = j.Run
		}
	}
	var first, last *Unit
	for _, j := range g.Joints {
		if j.Run != main {
			continue
		}
		if first == nil {
			first = s.Ports[j.A].Unit
		}
		last = s.Ports[j.B].Unit
	}
	return main.Name + ": " + first.Name + " to " + last.Name
}

// SegmentOf returns the segment that a port stands in.
func (s *System) SegmentOf(port int) *Segment { return s.segmentOf[port] }

// weigh gives every segment its load.
func (s *System) weigh() {
	s.loaded = s.loads()
	for _, g := range s.Segments {
		for _, p := range g.Ports {
			g.Load.merge(&s.loaded[s.cells.of[p]])
		}
	}
}
