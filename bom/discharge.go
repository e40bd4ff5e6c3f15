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
		return !e.shutNormally() && (e.is == catalog.Open || e.is == catalog.OneWay && !back)
	})
	var d Discharge
	for _, u := range s.partUnits[s.cells.part[cell]] {
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

// Reaches reports whether water can flow from one port to another without passing a
// membrane, a throttle, a relief or a pump: through what stays open whatever people do, or
// also through what a person can shut.
func (s *System) Reaches(from, to int, closable bool) bool {
	start, goal := s.cells.of[from], s.cells.of[to]
	if s.cells.part[start] != s.cells.part[goal] {
		return false
	}
	return s.reach(start, func(e *edge, back bool) bool {
		return (closable || !e.closable && !e.shutNormally()) && (e.is == catalog.Open || e.is == catalog.OneWay && !back)
	})[goal]
}

// Cuts lists the units that a person can shut, or that are shut in normal running, and that
// keep one port's water from another when they are: those without which [System.Reaches]
// does not hold. Where several stand side by side none of them cuts alone, and all are named.
func (s *System) Cuts(from, to int) []*Unit {
	start, goal := s.cells.of[from], s.cells.of[to]
	var alone, all []*Unit
	for _, i := range s.cells.wires[s.cells.part[start]] {
		u := s.cells.edges[i].unit
		if e := &s.cells.edges[i]; !e.closable && !e.shutNormally() || slices.Contains(all, u) {
			continue
		}
		all = append(all, u)
		if !s.reach(start, func(e *edge, back bool) bool {
			return e.unit != u && (e.is == catalog.Open || e.is == catalog.OneWay && !back)
		})[goal] {
			alone = append(alone, u)
		}
	}
	if len(alone) == 0 {
		return all
	}
	return alone
}

// reach is the set of cells that water reaches from one, through the edges that let it
// pass; back says that an edge is taken against its direction. It looks at the
// connected part of the build only, so that many plants cost no more than their sum.
func (s *System) reach(start int, pass func(e *edge, back bool) bool) map[int]bool {
	c := s.cells
	leads := map[int][]int{}
	for _, i := range c.wires[c.part[start]] {
		e := &c.edges[i]
		leads[e.from] = append(leads[e.from], i)
		if e.to != e.from {
			leads[e.to] = append(leads[e.to], i)
		}
	}
	seen := map[int]bool{start: true}
	for queue := []int{start}; len(queue) > 0; queue = queue[1:] {
		cell := queue[0]
		for _, i := range leads[cell] {
			e := &c.edges[i]
			next, back := e.to, e.from != cell
			if back {
				next = e.from
			}
			if pass(e, back) && !seen[next] {
				seen[next] = true
				queue = append(queue, next)
			}
		}
	}
	return seen
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
