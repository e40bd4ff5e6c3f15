package segment

import (
	"slices"

	"handtight/bom/build"
	"handtight/bom/circuit"
	"handtight/bom/graph"
	"handtight/bom/rating"
	"handtight/bom/state"
	"handtight/catalog"
	"handtight/pressure"
	"handtight/pressure/network/connected"
	"handtight/pressure/quantity"
)

// Segment is joints and parts, branches included, bounded by whatever raises,
// drops or can stop pressure.
type Segment struct {
	Name      string // after the first run and its first and last unit: "raw water: intake to feed-pump"
	Runs      []*build.Run
	Units     []*graph.Unit // every unit that touches it, bounding ones too
	Ports     []int
	Joints    []*graph.Joint
	Load      state.Load
	Allowable rating.Allowable // its weakest member
	Unrated   []*graph.Unit    // members whose rating is not known
	Guessed   []*graph.Unit    // members on high pressure whose figure never clears it ([pressure.Basis.Guess])
	Memory    []*graph.Unit    // members on high pressure whose figure nobody has looked up
	Below     bool
	driven    bool
}

// High reports whether the segment is a high-pressure one by what drives it: see
// [state.States.Driven].
func (g *Segment) High() bool { return g.driven }

// Segments are the segments of a build, in the order of their first ports, with what each
// sees and bears.
type Segments struct {
	Graph   *graph.Graph
	Circuit *circuit.Circuit
	States  *state.States
	Ratings *rating.Ratings
	All     []*Segment

	of []*Segment // by port
}

// Of makes the segments, and gives each its load and its weakest member.
func Of(st *state.States, r *rating.Ratings) *Segments {
	s := &Segments{Graph: st.Graph, Circuit: st.Circuit, States: st, Ratings: r}
	s.segment()
	s.setLoads()
	s.rate()
	return s
}

// segment makes segments. Filters and strainers do not bound a segment:
// what clogs is a failure and not a part of the plan.
func (s *Segments) segment() {
	sets := connected.NewSets(s.Circuit.Junctions)
	for _, e := range s.Circuit.Links {
		if e.Is == catalog.Open && !e.Closable {
			sets.Join(e.From, e.To)
		}
	}
	of, n := sets.Number()
	s.All = make([]*Segment, n)
	for i := range s.All {
		s.All[i] = &Segment{}
	}
	s.of = make([]*Segment, len(s.Graph.Ports))
	for p := range s.Graph.Ports {
		g := s.All[of[s.Circuit.JunctionOf[p]]]
		s.of[p] = g
		g.Ports = append(g.Ports, p)
		g.driven = g.driven || s.States.Driven(p)
		u := s.Graph.Ports[p].Unit
		if len(g.Units) == 0 || g.Units[len(g.Units)-1] != u { // the ports of a unit follow each other
			g.Units = append(g.Units, u)
		}
	}
	for _, j := range s.Graph.Joints {
		g := s.of[j.A]
		g.Joints = append(g.Joints, j)
		g.Below = g.Below || j.Run.Below
		if len(g.Runs) == 0 || g.Runs[len(g.Runs)-1] != j.Run { // and so do the joints of a run
			g.Runs = append(g.Runs, j.Run)
		}
	}
	s.All = slices.DeleteFunc(s.All, func(g *Segment) bool { return len(g.Joints) == 0 })
	for _, g := range s.All {
		g.Name = g.name(s)
	}
}

// name calls a segment after the run that has most of its joints, the first of like ones,
// and the units at the ends of it.
func (g *Segment) name(s *Segments) string {
	count := map[*build.Run]int{}
	main := g.Joints[0].Run
	for _, j := range g.Joints {
		if count[j.Run]++; count[j.Run] > count[main] {
			main = j.Run
		}
	}
	var first, last *graph.Unit
	for _, j := range g.Joints {
		if j.Run != main {
			continue
		}
		if first == nil {
			first = s.Graph.Ports[j.A].Unit
		}
		last = s.Graph.Ports[j.B].Unit
	}
	return main.Name + ": " + first.Name + " to " + last.Name
}

// SegmentOf returns the segment that a port stands in.
func (s *Segments) SegmentOf(port int) *Segment { return s.of[port] }

// setLoads gives every segment its load.
func (s *Segments) setLoads() {
	for _, g := range s.All {
		for _, p := range g.Ports {
			g.Load.Merge(s.States.PortLoad(p))
		}
	}
}

// rate gives every segment its weakest member.
func (s *Segments) rate() {
	for _, g := range s.All {
		for _, p := range g.Ports {
			n := &s.Graph.Ports[p]
			if n.Unit.Item.Exempt(n.Index) {
				continue
			}
			h := s.Ratings.Port(p)
			switch {
			case !h.Known:
				g.Unrated = with(g.Unrated, n.Unit)
			case !g.driven:
			case h.Estimate:
				g.Guessed = with(g.Guessed, n.Unit)
			case h.Rating.Status == pressure.Memory:
				g.Memory = with(g.Memory, n.Unit)
			}
			g.Allowable.Lower(h)
		}
		for _, j := range g.Joints {
			g.Allowable.Lower(s.Ratings.Joint(j))
		}
	}
}

// with adds a unit whose ports follow each other, once.
func with(units []*graph.Unit, u *graph.Unit) []*graph.Unit {
	if n := len(units); n > 0 && units[n-1] == u {
		return units
	}
	return append(units, u)
}

// Rated reports whether it is known what the segment holds: what each of its members holds. A
// figure that never clears high pressure tells it only of a segment that sees more than that.
func (g *Segment) Rated() bool {
	worst, _ := g.Load.Worst()
	return g.Allowable.Known && len(g.Unrated) == 0 && (len(g.Guessed) == 0 || pressure.Above(worst, g.Allowable.Rating.Pressure))
}

// Margin is what the weakest member holds beyond the worst pressure;
// false when either is not known: also while one member's rating is not.
func (g *Segment) Margin() (quantity.Pressure, bool) {
	worst, _ := g.Load.Worst()
	if !g.Rated() || worst.Unbounded() {
		return 0, false
	}
	return g.Allowable.Rating.Pressure - worst, true
}
