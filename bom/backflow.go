package bom

import (
	"slices"

	"handtight/catalog"
)

// Backflows lists the house supplies into which sea water can run back when their pump is
// off: by way of valves that are opened for the flush, with nothing that holds it.
func (s *System) Backflows() []*Unit {
	var out []*Unit
	for _, u := range s.Units {
		if !u.Item.Kind.Supply {
			continue
		}
		back := s.reach(s.cells.of[u.First], letsBack)
		if slices.ContainsFunc(s.cells.parts[back.part], func(cell int) bool { return back.cell(cell) && s.waters.sea[cell] }) {
			out = append(out, u)
		}
	}
	return out
}

// letsBack reports whether water can come back through an edge to the cell that it is
// followed from; back says that it is followed against its direction, so that the water
// runs with it.
func letsBack(e *edge, back bool) bool {
	switch e.is {
	case catalog.Open, catalog.Throttle:
		return true
	case catalog.OneWay, catalog.PositivePump:
		return back
	case catalog.FeedPump:
		return back || e.unit.Item.Type == "centrifugal"
	}
	return false
}
