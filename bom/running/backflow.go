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
		if s.seaComesBack(s.Circuit.JunctionOf[u.First]) {
			out = append(out, u)
		}
	}
	return out
}

// mostSelectors is how many selectors of one line are turned every way; of more none is trusted.
const mostSelectors = 6

// seaComesBack reports whether sea water can run back to a junction, however the selectors stand: one that
// is said to shut between its ways never joins them.
func (s *Running) seaComesBack(junction int) bool {
	var turned []*graph.Unit
	for _, i := range s.Circuit.LinksOf[s.Circuit.NetOf[junction]] {
		u := s.Circuit.Links[i].Unit
		if u.Item.Kind.Selector && u.Item.Between == "shut" && !slices.Contains(turned, u) {
			turned = append(turned, u)
		}
	}
	if len(turned) > mostSelectors {
		turned = nil
	}
	for stand := range 1 << len(turned) {
		back := s.Circuit.Reach(junction, func(e *circuit.Link, back bool) bool {
			at := slices.Index(turned, e.Unit)
			return admitsReverse(e, back) && (at < 0 || e.Position == stand>>at&1)
		})
		if !slices.ContainsFunc(s.Circuit.Nets[back.Net], func(c int) bool { return back.Junction(c) && s.Waters.SeaAt(c) }) {
			continue
		}
		// behind a selector that was turned stands what sea water the plant holds; it takes an intake to run
		if len(turned) == 0 || slices.ContainsFunc(s.Graph.Units, func(u *graph.Unit) bool { return s.Waters.Intake(u) && s.reachedAny(back, u) }) {
			return true
		}
	}
	return false
}

// reachedAny reports whether a port of a unit is reached.
func (s *Running) reachedAny(back *circuit.Reached, u *graph.Unit) bool {
	for i := range u.Item.Ports {
		if back.Port(u.First + i) {
			return true
		}
	}
	return false
}

// admitsReverse reports whether water can come back through an edge to the junction that it is
// followed from; back says that it is followed against its direction, so that the water
// runs with it.
func admitsReverse(e *circuit.Link, back bool) bool {
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
