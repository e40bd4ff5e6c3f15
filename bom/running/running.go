package running

import (
	"handtight/bom/circuit"
	"handtight/bom/graph"
	"handtight/bom/segment"
	"handtight/bom/wetting"
	"handtight/catalog"
	"handtight/pressure"
)

// What normal running comes to, where the parts are all sound and one of them stands in the
// wrong place or the wrong way round.

// Running is the solved plant as it is used: where water goes in a state, and where not.
type Running struct {
	*segment.Segments
	Waters *wetting.Waters
}

// OpenReliefs lists the relief valves that stand open in normal running though they are set
// above the duty: the pump's water has no other way, since what should be open is not.
func (s *Running) OpenReliefs() []*graph.Unit {
	var out []*graph.Unit
	for _, u := range s.Units {
		in := u.Item.PortIndex("in")
		duty := s.Build.Duty.Pressure
		if u.Item.Kind.Name != "relief valve" || u.Item.Set == nil || in < 0 || duty == nil || *u.Item.Set <= *duty {
			continue
		}
		st := s.Normal(s.NetOf[s.JunctionOf[u.First+in]])
		if st == nil {
			continue
		}
		if s.Pumped(st, u.First+in) >= u.Item.Set.Bar() && s.pumped(u.First+in) {
			out = append(out, u)
		}
	}
	return out
}

// pumped reports whether water runs from a positive pump's outlet to a port.
func (s *Running) pumped(port int) bool {
	for _, i := range s.LinksOf[s.NetOf[s.JunctionOf[port]]] {
		e := &s.Links[i]
		if _, out := circuit.PumpEnds(e.Unit); e.Is == catalog.PositivePump && s.Reaches(e.Unit.First+out, port, true) {
			return true
		}
	}
	return false
}

// Unpressed is a pressure vessel that does not come to the duty in normal running.
type Unpressed struct {
	Vessel *graph.Unit
	Stands float64 // bar, at its feed
}

// Unpressed lists the vessels that a running pump does not bring to the duty: water leaves
// them by a way without a throttle, or the throttle stands before them. Where a relief is
// set below the duty, or stands open, that is why, and none is listed.
func (s *Running) Unpressed() []Unpressed {
	if s.Build.Duty.Pressure == nil {
		return nil
	}
	duty := s.Build.Duty.Pressure.Bar()
	var out []Unpressed
	for part := range s.Nets {
		st := s.Normal(part)
		if st == nil || s.relieved(part) {
			continue
		}
		for _, u := range s.UnitsOf(part) {
			feed, brine := u.Item.PortIndex("feed"), u.Item.PortIndex("brine")
			if u.Item.Kind.Name != "pressure vessel" || feed < 0 || brine < 0 || s.Node(u, feed).Joint == nil || s.Node(u, brine).Joint == nil {
				continue
			}
			if high, _, ok := s.Pressure(st, u.First+feed); ok && pressure.Above(duty, high) {
				out = append(out, Unpressed{u, high})
			}
		}
	}
	return out
}

// relieved reports whether a part of the build has no pump that could press, or a relief
// that keeps it from the duty.
func (s *Running) relieved(part int) bool {
	pumps := false
	for _, i := range s.LinksOf[part] {
		e := &s.Links[i]
		pumps = pumps || e.Is == catalog.PositivePump
		if set := e.Unit.Item.Set; e.Is == catalog.Relief && set != nil {
			in := e.Unit.First + e.Unit.Item.PortIndex("in")
			high, _, _ := s.Pressure(s.Normal(part), in)
			if high >= set.Bar() && s.pumped(in) {
				return true
			}
		}
	}
	return !pumps
}
