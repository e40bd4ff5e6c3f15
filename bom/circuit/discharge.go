package circuit

import (
	"slices"

	"handtight/bom/graph"
	"handtight/catalog"
)

// Discharge is where the water of a port ends, in normal running.
type Discharge struct {
	Overboard bool          // the sea, a skin fitting, an overboard outlet
	Pump      bool          // the inlet of a running pump, which takes it
	Inside    []*graph.Unit // tanks and drains
}

// Closed reports whether it ends nowhere.
func (d Discharge) Closed() bool { return !d.Overboard && !d.Pump && len(d.Inside) == 0 }

// DischargeOf follows the water that leaves by a port: forward through what is open
// in normal running.
func (s *Circuit) DischargeOf(port int) Discharge {
	junction := s.JunctionOf[port]
	reached := s.Reach(junction, func(e *Link, back bool) bool {
		second := e.Unit.Item.Kind.Selector && e.Position > 0
		return !e.ShutNormally() && !second && (e.Is == catalog.Open || e.Is == catalog.OneWay && !back)
	})
	var d Discharge
	for _, u := range s.units[s.NetOf[junction]] {
		for i := range u.Item.Ports {
			if !reached.Port(u.First + i) {
				continue
			}
			switch k := u.Item.Kind; {
			case k.Is(catalog.Sea | catalog.SkinFitting | catalog.Outlet):
				d.Overboard = true
			case k.Is(catalog.DrivesHigh) && u.Item.Ports[i].Name == "in":
				d.Pump = true
			case k.Is(catalog.Store|catalog.Drain) && !slices.Contains(d.Inside, u):
				d.Inside = append(d.Inside, u)
			}
		}
	}
	return d
}

// gatherParts lists the units of each connected part of the build.
func (s *Circuit) gatherParts() {
	s.units = make([][]*graph.Unit, len(s.Nets))
	for _, u := range s.Graph.Units {
		for i := range u.Item.Ports {
			part := s.NetOf[s.JunctionOf[u.First+i]]
			if list := s.units[part]; len(list) == 0 || list[len(list)-1] != u {
				s.units[part] = append(list, u)
			}
		}
	}
}

// UnitsOf lists the units of a connected part of the build.
func (s *Circuit) UnitsOf(part int) []*graph.Unit { return s.units[part] }

// UnitsAround lists the units of the connected part of the build that a port stands in.
func (s *Circuit) UnitsAround(port int) []*graph.Unit { return s.units[s.NetOf[s.JunctionOf[port]]] }

// OpenToSea reports whether a unit is the sea, or a fitting through the skin.
func OpenToSea(u *graph.Unit) bool {
	return u.Item.Kind.Is(catalog.Sea | catalog.SkinFitting)
}

// PumpEnds are the inlet and the outlet of a pump; -1 of anything else.
func PumpEnds(u *graph.Unit) (in, out int) {
	for _, p := range u.Passages() {
		if p.Is == catalog.FeedPump || p.Is == catalog.PositivePump || p.Is == catalog.Recovery {
			return p.From, p.To
		}
	}
	return -1, -1
}
