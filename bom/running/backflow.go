package running

import (
	"slices"

	"handtight/bom/circuit"
	"handtight/bom/graph"
	"handtight/catalog"
)

// Backflows lists the house supplies into which sea water can run back when their pump is
// off: by way of valves that are opened for the flush, with nothing that holds it.
func (s *Running) Backflows() []*graph.Unit {
	var out []*graph.Unit
	for _, u := range s.Graph.Units {
		if !u.Item.Kind.Supply {
			continue
		}
		back := s.Circuit.Reach(s.Circuit.JunctionOf[u.First], letsBack)
		if slices.ContainsFunc(s.Circuit.Nets[back.Net], func(cell int) bool { return back.Junction(cell) && s.Waters.SeaAt(cell) }) {
			out = append(out, u)
		}
	}
	return out
}

// letsBack reports whether water can come back through an edge to the cell that it is
// followed from; back says that it is followed against its direction, so that the water
// runs with it.
func letsBack(e *circuit.Link, back bool) bool {
	switch e.Is {
	case catalog.Open, catalog.Throttle:
		return true
	case catalog.OneWay, catalog.PositivePump, catalog.Regulator, catalog.Recovery, catalog.Return:
		return back
	case catalog.FeedPump:
		return back || e.Unit.Item.Type == "centrifugal"
	}
	return false
}
