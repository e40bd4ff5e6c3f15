package running

import (
	"handtight/bom/graph"
	"handtight/bom/segment"
	"handtight/pressure"
	"handtight/pressure/quantity"
)

// Surge is what a valve that shuts at once adds to the line before it: an estimate.
type Surge struct {
	Valve   *graph.Unit
	Segment *segment.Segment // that leads to its inlet
	Flow    quantity.Flow
	Bore    quantity.Length   // the narrowest of the segment's hoses
	Speed   quantity.Velocity // in that bore
	Length  quantity.Length   // of all the segment's hoses
	Stands  quantity.Pressure // in normal running or in the flush
	Rise    quantity.Pressure
}

// Peak is the pressure that the line sees when the valve has shut.
func (s *Surge) Peak() quantity.Pressure { return s.Stands + s.Rise }

// seaDensity is that of sea water, the heaviest water in the build.
const seaDensity = 1025 * quantity.KilogramPerCubicMetre

// Surges lists the valves that shut at once in a line of hose whose flow is known: house
// water by the supply's flow, product by the duty, sea water by the largest pump's flow.
// The whole flow is taken to run through the narrowest hose, and all hose to lie before
// the valve, in walls that do not give: an upper estimate.
func (s *Running) Surges() []Surge {
	var out []Surge
	for _, u := range s.Graph.Units {
		in := u.Item.PortIndex("in")
		if !u.Item.Kind.Snaps || in < 0 {
			continue
		}
		x := Surge{Valve: u, Segment: s.Segments.SegmentOf(u.First + in), Stands: s.standsOpen(u.First + in)}
		for _, h := range x.Segment.Units {
			if !h.Item.IsHose() || h.Item.Bore == nil || h.Item.Length == nil {
				continue
			}
			x.Length += *h.Item.Length
			if x.Bore == 0 || *h.Item.Bore < x.Bore {
				x.Bore = *h.Item.Bore
			}
		}
		x.Flow = s.flowAt(u.First + in)
		var known bool
		if x.Speed, known = pressure.LineSpeed(x.Flow, x.Bore); !known || x.Stands.Unbounded() {
			continue
		}
		x.Rise, known = pressure.ClosingSurge(seaDensity, pressure.RigidWaveSpeed, x.Speed, x.Length, pressure.SolenoidCloses)
		if known {
			out = append(out, x)
		}
	}
	return out
}

// standsOpen is the higher of what stands at a port in normal running and in the flush.
func (s *Running) standsOpen(port int) quantity.Pressure {
	stands := s.States.PortLoad(port).Normal
	for _, st := range s.Segments.States.All {
		if high, _, ok := s.States.Pressure(st, port); ok && st.Name == "flush" {
			stands = max(stands, high)
		}
	}
	return stands
}

// flowAt is the most that may run past a port, by the water that it carries; none where
// nothing tells it.
func (s *Running) flowAt(port int) quantity.Flow {
	if s.Waters.Product(port) {
		if s.Graph.Build.Duty.Product == nil {
			return 0
		}
		return *s.Graph.Build.Duty.Product
	}
	var most quantity.Flow
	for _, u := range s.Circuit.UnitsAround(port) {
		if f := u.Item.Flow; f != nil && u.Item.Kind.Supply == s.Waters.House(port) && u.Item.Set == nil {
			most = max(most, *f)
		}
	}
	return most
}
