package bom

import (
	"slices"

	"handtight/catalog"
)

// reached is the cells of one part of the build that water reaches from one of them.
type reached struct {
	cells *cells
	part  int
	seen  []bool
}

// cell reports whether a cell is reached.
func (r *reached) cell(cell int) bool {
	return r.cells.part[cell] == r.part && r.seen[r.cells.local[cell]]
}

// port reports whether a port is reached.
func (r *reached) port(port int) bool { return r.cell(r.cells.of[port]) }

// reach follows water from a cell through the edges that let it pass; back says that an
// edge is taken against its direction. It looks at the connected part of the build only,
// so that many plants cost no more than their sum.
func (s *System) reach(start int, pass func(e *edge, back bool) bool) *reached {
	c := s.cells
	r := &reached{cells: c, part: c.part[start]}
	r.seen = make([]bool, len(c.parts[r.part]))
	r.seen[c.local[start]] = true
	for queue := []int{start}; len(queue) > 0; queue = queue[1:] {
		cell := queue[0]
		for _, i := range c.leads.at(cell) {
			e := &c.edges[i]
			next, back := e.to, e.from != cell
			if back {
				next = e.from
			}
			if seen := &r.seen[c.local[next]]; pass(e, back) && !*seen {
				*seen = true
				queue = append(queue, next)
			}
		}
	}
	return r
}

// flows reports whether water flows through an edge without passing a membrane, a
// throttle, a relief or a pump: through what stays open whatever people do, or also
// through what a person can shut.
func flows(e *edge, back, closable bool) bool {
	return (closable || !e.closable) && (e.is == catalog.Open || e.is == catalog.OneWay && !back)
}

// Reaches reports whether water can flow from one port to another without passing a
// membrane, a throttle, a relief or a pump: through what stays open whatever people do, or
// also through what a person can shut.
func (s *System) Reaches(from, to int, closable bool) bool {
	start, goal := s.cells.of[from], s.cells.of[to]
	if s.cells.part[start] != s.cells.part[goal] {
		return false
	}
	return s.reach(start, func(e *edge, back bool) bool { return flows(e, back, closable) }).cell(goal)
}

// Cuts lists the units that a person can shut and that keep one port's water from another
// when they are: those without which [System.Reaches] does not hold. Where several stand
// side by side none of them cuts alone, and all are named.
func (s *System) Cuts(from, to int) []*Unit {
	start, goal := s.cells.of[from], s.cells.of[to]
	var alone, all []*Unit
	for _, i := range s.cells.wires[s.cells.part[start]] {
		u := s.cells.edges[i].unit
		if !s.cells.edges[i].closable || slices.Contains(all, u) {
			continue
		}
		all = append(all, u)
		if !s.reach(start, func(e *edge, back bool) bool { return e.unit != u && flows(e, back, true) }).cell(goal) {
			alone = append(alone, u)
		}
	}
	if len(alone) == 0 {
		return all
	}
	return alone
}

// Reliefs are the relief valves on the outlet of a positive pump: near, with nothing
// between that shuts, and far, behind something that does.
type Reliefs struct{ Near, Far []*Unit }

// ReliefsOf lists the relief valves of a pump.
func (s *System) ReliefsOf(pump *Unit) Reliefs { return s.reliefs[pump] }

// gatherReliefs finds the relief valves of each pump.
func (s *System) gatherReliefs() {
	s.reliefs = map[*Unit]Reliefs{}
	for _, wires := range s.cells.wires {
		var pumps, valves []*Unit
		for _, i := range wires {
			switch e := &s.cells.edges[i]; e.is {
			case catalog.PositivePump:
				pumps = append(pumps, e.unit)
			case catalog.Relief:
				valves = append(valves, e.unit)
			}
		}
		if len(pumps) == 0 || len(valves) == 0 {
			continue
		}
		for _, p := range pumps {
			_, out := pumpEnds(p)
			start := s.cells.of[p.First+out]
			near := s.reach(start, func(e *edge, back bool) bool { return flows(e, back, false) })
			far := s.reach(start, func(e *edge, back bool) bool { return flows(e, back, true) })
			var r Reliefs
			for _, v := range valves {
				switch in := v.First + v.Item.PortIndex("in"); {
				case near.port(in):
					r.Near = append(r.Near, v)
				case far.port(in):
					r.Far = append(r.Far, v)
				}
			}
			s.reliefs[p] = r
		}
	}
}
