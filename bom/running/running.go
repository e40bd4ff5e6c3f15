package running

import (
	"handtight/bom/circuit"
	"handtight/bom/graph"
	"handtight/bom/rating"
	"handtight/bom/segment"
	"handtight/bom/state"
	"handtight/bom/wetting"
	"handtight/catalog"
	"handtight/pressure"
	"handtight/pressure/quantity"
)

// What normal running comes to, where the parts are all sound and one of them stands in the
// wrong place or the wrong way round.

// Running is the solved plant as it is used: where water goes in a state, and where not.
type Running struct {
	Graph    *graph.Graph
	Circuit  *circuit.Circuit
	Waters   *wetting.Waters
	States   *state.States
	Ratings  *rating.Ratings
	Segments *segment.Segments
}

// OpenReliefs lists the relief valves that stand open in normal running though they are set
// above the duty: the pump's water has no other way, since what should be open is not.
func (s *Running) OpenReliefs() []*graph.Unit {
	var out []*graph.Unit
	for _, u := range s.Graph.Units {
		in := u.Item.PortIndex("in")
		duty := s.Graph.Build.Duty.Pressure
		if !u.Item.Kind.Is(catalog.Relieves) || u.Item.Set == nil || in < 0 || duty == nil || *u.Item.Set <= *duty {
			continue
		}
		st := s.States.Normal(s.Circuit.NetOf[s.Circuit.JunctionOf[u.First+in]])
		if st == nil {
			continue
		}
		if s.States.Pumped(st, u.First+in) >= *u.Item.Set && s.pumped(u.First+in) {
			out = append(out, u)
		}
	}
	return out
}

// pumped reports whether water runs from a positive pump's outlet to a port.
func (s *Running) pumped(port int) bool {
	for _, i := range s.Circuit.LinksOf[s.Circuit.NetOf[s.Circuit.JunctionOf[port]]] {
		e := &s.Circuit.Links[i]
		if _, out := circuit.PumpEnds(e.Unit); e.Is == catalog.PositivePump && s.Circuit.Reaches(e.Unit.First+out, port, true) {
			return true
		}
	}
	return false
}

// Unpressed is a pressure vessel that does not come to the duty in normal running.
type Unpressed struct {
	Vessel *graph.Unit
	Stands quantity.Pressure // at its feed
	Driven bool              // some pump brings pressure to it
}

// Unpressed lists the vessels that nothing brings to the duty: water leaves them by a way
// without a throttle, the throttle stands before them, or no pump that could press stands
// before them at all. Where a relief is set below the duty, or stands open, that is why, and
// none is listed; nor is a vessel whose feed or brine is joined to nothing.
func (s *Running) Unpressed() []Unpressed {
	if s.Graph.Build.Duty.Pressure == nil {
		return nil
	}
	duty := *s.Graph.Build.Duty.Pressure
	var out []Unpressed
	for part := range s.Circuit.Nets {
		st := s.States.Normal(part)
		if st != nil && s.relieved(part) {
			continue
		}
		for _, u := range s.Circuit.UnitsOf(part) {
			feed, brine := u.Item.PortIndex("feed"), u.Item.PortIndex("brine")
			if !u.Item.Kind.Is(catalog.Separates) || feed < 0 || brine < 0 || s.Graph.Port(u, feed).Joint == nil || s.Graph.Port(u, brine).Joint == nil {
				continue
			}
			x := Unpressed{Vessel: u}
			if st != nil {
				x.Stands, _, _ = s.States.Pressure(st, u.First+feed)
				x.Driven = s.driven(u.First + feed)
			}
			if pressure.Above(duty, x.Stands) {
				out = append(out, x)
			}
		}
	}
	return out
}

// driven reports whether a pump that could press stands before a port.
func (s *Running) driven(port int) bool {
	for _, i := range s.Circuit.LinksOf[s.Circuit.NetOf[s.Circuit.JunctionOf[port]]] {
		if is := s.Circuit.Links[i].Is; is == catalog.PositivePump || is == catalog.Recovery {
			return true
		}
	}
	return false
}

// relieved reports whether a relief keeps a connected part of the build from the duty.
func (s *Running) relieved(part int) bool {
	for _, i := range s.Circuit.LinksOf[part] {
		e := &s.Circuit.Links[i]
		if set := e.Unit.Item.Set; e.Is == catalog.Relief && set != nil {
			in := e.Unit.First + e.Unit.Item.PortIndex("in")
			high, _, _ := s.States.Pressure(s.States.Normal(part), in)
			if high >= *set && s.pumped(in) {
				return true
			}
		}
	}
	return false
}
