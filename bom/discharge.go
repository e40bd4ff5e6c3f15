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
	cell := s.cells.of[port]
	reached := s.reach(cell, func(e *edge, back bool) bool {
		second := e.unit.Item.Kind.Selector && e.way > 0
		return !e.shutNormally() && !second && (e.is == catalog.Open || e.is == catalog.OneWay && !back)
	})
	var d Discharge
	for _, u := range s.partUnits[s.cells.part[cell]] {
		for i := range u.Item.Ports {
			if !reached.port(u.First + i) {
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

// gatherParts lists the units of each connected part of the build.
func (s *System) gatherParts() {
	s.partUnits = make([][]*Unit, len(s.cells.parts))
	for _, u := range s.Units {
		for i := range u.Item.Ports {
			part := s.cells.part[s.cells.of[u.First+i]]
			if list := s.partUnits[part]; len(list) == 0 || list[len(list)-1] != u {
				s.partUnits[part] = append(list, u)
			}
		}
	}
}

// UnitsAround lists the units of the connected part of the build that a port stands in.
func (s *System) UnitsAround(port int) []*Unit { return s.partUnits[s.cells.part[s.cells.of[port]]] }
