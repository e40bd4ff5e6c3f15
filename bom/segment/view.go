package segment

import (
	"cmp"
	"slices"

	"handtight/bom/state"
	"handtight/pressure"
	"handtight/pressure/quantity"
)

// StateView is one state of the whole build as people read it: the parts of the
// build that it does not touch stand as in normal running.
type StateView struct {
	Name      string
	Cause     string
	Failure   bool
	Segments  []SegmentView // in the build's order
	Overloads []Overload    // what sees more than it holds, the worst first
	Collapses []Collapse    // hoses that its vacuum may flatten
	Untold    []Overload    // what sees pressure, and nothing says what it holds
}

// SegmentView is what a segment sees in one state.
type SegmentView struct {
	Segment *Segment
	High    quantity.Pressure // infinite where nothing opens
	Low     quantity.Pressure // below 0 for a vacuum
}

// Changed reports whether the state makes the segment's pressure another than in
// normal running.
func (v *SegmentView) Changed() bool {
	return v.Low < 0 || pressure.Above(v.High, v.Segment.Load.Normal) || pressure.Above(v.Segment.Load.Normal, v.High)
}

// Overload is a unit or a joint that sees more than it holds in a state, or of which
// nothing says what it holds.
type Overload struct {
	What    string
	Segment *Segment
	Sees    quantity.Pressure // infinite where nothing opens
	Holds   quantity.Pressure // 0 where nothing says it
}

// StateNames lists the names of the build's states, normal first, in their order.
func (s *Segments) StateNames() []string {
	var out []string
	seen := map[string]bool{}
	for _, st := range s.States.All {
		if !seen[st.Name] {
			seen[st.Name] = true
			out = append(out, st.Name)
		}
	}
	return out
}

// View lays out the state of a name; ok is false where the build has none of it.
func (s *Segments) View(name string) (v StateView, ok bool) {
	touched := make([]*state.State, len(s.Circuit.Nets))
	for _, st := range s.States.All {
		if st.Name == "normal" && touched[st.Net()] == nil {
			touched[st.Net()] = st
		}
	}
	for _, st := range s.States.All {
		if st.Name == name {
			v.Name, v.Cause, v.Failure, ok = st.Name, st.Cause, st.Failure, true
			touched[st.Net()] = st
		}
	}
	if !ok {
		return v, false
	}
	sees := func(port int) (high, low quantity.Pressure) {
		if st := touched[s.Circuit.NetOf[s.Circuit.JunctionOf[port]]]; st != nil {
			high, low, _ = s.States.Pressure(st, port)
		}
		return high, low
	}
	for _, g := range s.All {
		row := SegmentView{Segment: g}
		for _, p := range g.Ports {
			high, low := sees(p)
			row.High, row.Low = max(row.High, high), min(row.Low, low)
		}
		v.Segments = append(v.Segments, row)
	}
	v.Overloads, v.Untold = s.overloads(sees)
	v.Collapses = s.collapses(sees)
	return v, true
}

// Views lays out every state, in the order of [Segments.StateNames].
func (s *Segments) Views() []StateView {
	var out []StateView
	for _, name := range s.StateNames() {
		v, _ := s.View(name)
		out = append(out, v)
	}
	return out
}

// overloads lists the units and joints that see more than they hold, by how much, and the
// units that see pressure and of which nothing says what they hold.
func (s *Segments) overloads(sees func(port int) (high, low quantity.Pressure)) (out, untold []Overload) {
	for _, u := range s.Graph.Units {
		worst, silent := Overload{What: u.Name}, Overload{What: u.Name}
		for i := range u.Item.Ports {
			if u.Item.Exempt(i) {
				continue
			}
			hold := s.Ratings.Port(u.First + i)
			high, _ := sees(u.First + i)
			holds := hold.Rating.Pressure
			if hold.Known && pressure.Above(high, holds) && high-holds > worst.Sees-worst.Holds {
				worst.Sees, worst.Holds, worst.Segment = high, holds, s.SegmentOf(u.First+i)
			}
			if !hold.Known && high > silent.Sees {
				silent.Sees, silent.Segment = high, s.SegmentOf(u.First+i)
			}
		}
		if worst.Sees > 0 {
			out = append(out, worst)
		}
		if silent.Sees > 0 {
			untold = append(untold, silent)
		}
	}
	for _, j := range s.Graph.Joints {
		hold := s.Ratings.Joint(j)
		high, _ := sees(j.A)
		if holds := hold.Rating.Pressure; hold.Known && pressure.Above(high, holds) {
			out = append(out, Overload{What: s.Graph.JointName(j), Segment: s.SegmentOf(j.A), Sees: high, Holds: holds})
		}
	}
	slices.SortStableFunc(out, func(a, b Overload) int {
		return cmp.Or(cmp.Compare(b.times(), a.times()), cmp.Compare(a.Holds, b.Holds))
	})
	return out, untold
}

// times is how many times over the part is loaded; infinite where nothing opens.
func (o *Overload) times() float64 { return float64(o.Sees / max(o.Holds, pressure.Slack)) }
