package running

import (
	"fmt"
	"slices"

	"handtight/bom/circuit"
	"handtight/bom/graph"
	"handtight/catalog"
)

// between says, in a few words each, what keeps water that runs from some ports from a port,
// in normal running: what stands the wrong way round, or is shut, at the edge of where the
// water comes to. That is what, put right, lets it on to the port; where nothing does so
// alone, what the port lies somewhere behind.
func (s *Running) between(from []int, to int) []string {
	goal := s.Circuit.JunctionOf[to]
	part := s.Circuit.NetOf[goal]
	seen := make([]bool, len(s.Circuit.Nets[part]))
	for _, port := range from {
		if junction := s.Circuit.JunctionOf[port]; s.Circuit.NetOf[junction] == part {
			for i, yes := range s.Circuit.Reach(junction, runsOn).Seen {
				seen[i] = seen[i] || yes
			}
		}
	}
	if seen[s.Circuit.Local[goal]] {
		return nil
	}
	if alone := s.blocks(seen, goal, runsOn); len(alone) > 0 {
		return alone
	}
	return s.blocks(seen, goal, anyWay)
}

// blocks lists what stands at the edge of the junctions that are seen, where water that got past
// it would come to a goal.
func (s *Running) blocks(seen []bool, goal int, pass func(e *circuit.Link, back bool) bool) []string {
	var out []string
	for _, i := range s.Circuit.LinksOf[s.Circuit.NetOf[goal]] {
		e := &s.Circuit.Links[i]
		near, far := seen[s.Circuit.Local[e.From]], seen[s.Circuit.Local[e.To]]
		if near == far {
			continue
		}
		behind := e.To
		if far {
			behind = e.From
		}
		words := blocks(e, far)
		if words == "" || !s.Circuit.Reach(behind, pass).Junction(goal) {
			continue
		}
		if words = e.Unit.Name + " " + words; !slices.Contains(out, words) {
			out = append(out, words)
		}
	}
	return out
}

// runsOn reports whether water runs through an edge in normal running, pumps included.
func runsOn(e *circuit.Link, back bool) bool {
	if e.ShutNormally() || e.Unit.Item.Kind.Selector && e.Position > 0 {
		return false
	}
	switch e.Is {
	case catalog.Open:
		return true
	case catalog.OneWay, catalog.FeedPump, catalog.PositivePump, catalog.Recovery, catalog.Return:
		return !back
	}
	return false
}

// anyWay reports whether water could run through an edge if all stood open and turned right.
func anyWay(e *circuit.Link, _ bool) bool {
	switch e.Is {
	case catalog.Open, catalog.OneWay, catalog.FeedPump, catalog.PositivePump, catalog.Recovery, catalog.Return:
		return true
	}
	return false
}

// blocks says why water does not pass an edge; back says that it stands at its outlet.
func blocks(e *circuit.Link, back bool) string {
	switch {
	case e.Unit.Item.Kind.Selector:
		return fmt.Sprintf("stands at its way `%s`", e.Unit.Item.Ports[1].Name)
	case e.Is == catalog.OneWay && back:
		return "points back"
	case (e.Is == catalog.FeedPump || e.Is == catalog.PositivePump || e.Is == catalog.Recovery) && back:
		return "is turned about"
	case e.Is == catalog.Open && e.ShutNormally():
		return "is shut in normal running"
	}
	return ""
}

// openings are the ports of a part of the build that sea water comes in by.
func (s *Running) openings(part int) []int {
	var out []int
	for _, u := range s.Circuit.UnitsOf(part) {
		for i := range u.Item.Ports {
			if circuit.OpenToSea(u) && s.Graph.Boundary(u, i) {
				out = append(out, u.First+i)
			}
		}
	}
	return out
}

// BlocksBefore says what keeps the sea's water from a pump in normal running.
func (s *Running) BlocksBefore(pump *graph.Unit) []string {
	in, _ := circuit.PumpEnds(pump)
	return s.between(s.openings(s.Circuit.NetOf[s.Circuit.JunctionOf[pump.First+in]]), pump.First+in)
}

// BlocksBehind says what keeps a pump's water from the throttles of its plant in normal
// running.
func (s *Running) BlocksBehind(pump *graph.Unit) []string {
	_, end := circuit.PumpEnds(pump)
	var out []string
	for _, u := range s.Circuit.UnitsAround(pump.First + end) {
		if in := u.Item.PortIndex("in"); u.Item.Kind.Is(catalog.Throttles) && in >= 0 {
			for _, words := range s.between([]int{pump.First + end}, u.First+in) {
				if !slices.Contains(out, words) {
					out = append(out, words)
				}
			}
		}
	}
	return out
}
