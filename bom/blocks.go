package bom

import (
	"fmt"
	"slices"

	"handtight/catalog"
)

// Blocks says, in a few words each, what keeps water that runs from some ports from a port,
// in normal running: what stands the wrong way round, or is shut, at the edge of where the
// water comes to. That is what, put right, lets it on to the port; where nothing does so
// alone, what the port lies somewhere behind.
func (s *System) Blocks(from []int, to int) []string {
	goal := s.cells.of[to]
	part := s.cells.part[goal]
	seen := make([]bool, len(s.cells.parts[part]))
	for _, port := range from {
		if cell := s.cells.of[port]; s.cells.part[cell] == part {
			for i, yes := range s.reach(cell, runsOn).seen {
				seen[i] = seen[i] || yes
			}
		}
	}
	if seen[s.cells.local[goal]] {
		return nil
	}
	if alone := s.blocks(seen, goal, runsOn); len(alone) > 0 {
		return alone
	}
	return s.blocks(seen, goal, anyWay)
}

// blocks lists what stands at the edge of the cells that are seen, where water that got past
// it would come to a goal.
func (s *System) blocks(seen []bool, goal int, pass func(e *edge, back bool) bool) []string {
	var out []string
	for _, i := range s.cells.wires[s.cells.part[goal]] {
		e := &s.cells.edges[i]
		near, far := seen[s.cells.local[e.from]], seen[s.cells.local[e.to]]
		if near == far {
			continue
		}
		behind := e.to
		if far {
			behind = e.from
		}
		words := e.blocks(far)
		if words == "" || !s.reach(behind, pass).cell(goal) {
			continue
		}
		if words = e.unit.Name + " " + words; !slices.Contains(out, words) {
			out = append(out, words)
		}
	}
	return out
}

// runsOn reports whether water runs through an edge in normal running, pumps included.
func runsOn(e *edge, back bool) bool {
	if e.shutNormally() || e.unit.Item.Kind.Selector && e.way > 0 {
		return false
	}
	switch e.is {
	case catalog.Open:
		return true
	case catalog.OneWay, catalog.FeedPump, catalog.PositivePump:
		return !back
	}
	return false
}

// anyWay reports whether water could run through an edge if all stood open and turned right.
func anyWay(e *edge, _ bool) bool {
	switch e.is {
	case catalog.Open, catalog.OneWay, catalog.FeedPump, catalog.PositivePump:
		return true
	}
	return false
}

// blocks says why water does not pass an edge; back says that it stands at its outlet.
func (e *edge) blocks(back bool) string {
	switch {
	case e.unit.Item.Kind.Selector:
		return fmt.Sprintf("stands at its way `%s`", e.unit.Item.Ports[1].Name)
	case e.is == catalog.OneWay && back:
		return "points back"
	case (e.is == catalog.FeedPump || e.is == catalog.PositivePump) && back:
		return "is turned about"
	case e.is == catalog.Open && e.shutNormally():
		return "is shut in normal running"
	}
	return ""
}

// openings are the ports of a part of the build that sea water comes in by.
func (s *System) openings(part int) []int {
	var out []int
	for _, u := range s.partUnits[part] {
		for i := range u.Item.Ports {
			if openToSea(u) && s.boundary(u, i) {
				out = append(out, u.First+i)
			}
		}
	}
	return out
}

// BlocksBefore says what keeps the sea's water from a pump in normal running.
func (s *System) BlocksBefore(pump *Unit) []string {
	in, _ := pumpEnds(pump)
	return s.Blocks(s.openings(s.cells.part[s.cells.of[pump.First+in]]), pump.First+in)
}

// BlocksBehind says what keeps a pump's water from the throttles of its plant in normal
// running.
func (s *System) BlocksBehind(pump *Unit) []string {
	_, end := pumpEnds(pump)
	var out []string
	for _, u := range s.UnitsAround(pump.First + end) {
		if in := u.Item.PortIndex("in"); u.Item.Kind.Name == "brine throttle" && in >= 0 {
			for _, words := range s.Blocks([]int{pump.First + end}, u.First+in) {
				if !slices.Contains(out, words) {
					out = append(out, words)
				}
			}
		}
	}
	return out
}
