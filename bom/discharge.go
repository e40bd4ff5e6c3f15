package bom

import (
	"slices"

	"handtight/catalog"
)

// Discharge is where the water of a port ends, in normal running.
type Discharge struct {
	Overboard bool    // the sea, a skin fitting, an overboard outlet
	Pump      bool    // the inlet of a running pump, which takes it
	Inside    []*Unit // tanks and drains
}

// Closed reports whether it ends nowhere.
func (d Discharge) Closed() bool { return !d.Overboard && !d.Pump && len(d.Inside) == 0 }

// DischargeOf follows the water that leaves by a port: forward through what is open
// in normal running.
func (s *System) DischargeOf(port int) Discharge {
	reached := s.spread([]int{s.cells.of[port]}, func(e *edge, back bool) bool {
		return !e.shutNormally() && (e.is == catalog.Open || e.is == catalog.OneWay && !back)
	})
	var d Discharge
	for _, u := range s.Units {
		for i := range u.Item.Ports {
			if !reached[s.cells.of[u.First+i]] {
				continue
			}
			switch name := u.Item.Kind.Name; {
			case name == "sea", name == "overboard", name == "through-hull", name == "seacock":
				d.Overboard = true
			case name == "plunger pump" && u.Item.Ports[i].Name == "in":
				d.Pump = true
			case (name == "tank" || name == "drain") && !slices.Contains(d.Inside, u):
				d.Inside = append(d.Inside, u)
			}
		}
	}
	return d
}

// SuctionHoses lists the hoses that a pump draws its flow through: back from its
// inlet through whatever is open, as far as the next pump or the water's beginning.
// Only what sea water wets is followed, so that a flush line is none.
func (s *System) SuctionHoses(pump *Unit, w *Waters) []*Unit {
	in := pump.Item.PortIndex("in")
	if in < 0 {
		return nil
	}
	reached := s.spread([]int{s.cells.of[pump.First+in]}, func(e *edge, back bool) bool {
		return !e.shutNormally() && (e.is == catalog.Open || e.is == catalog.OneWay && back)
	})
	var out []*Unit
	for _, u := range s.Units {
		if u.Item.IsHose() && reached[s.cells.of[u.First]] && w.Sea(u.First) {
			out = append(out, u)
		}
	}
	return out
}
