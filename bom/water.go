package bom

import "handtight/catalog"

// Waters says which water wets each port: by where it comes from, along the
// passages that it can take. A port that none reaches is wet by a water that is not known.
type Waters struct {
	s                   *System
	sea, product, house []bool // by cell
	rinsed              []bool
}

// Waters says which water wets each port.
//
// Sea water comes from the sea, from a skin fitting that begins a run, and stands
// wherever a plunger pump, a vessel or a throttle is fed by it; it passes a check
// valve forward only, and neither a membrane, a relief valve nor a valve that is shut in
// normal running. Product is what comes through a membrane and has met no sea
// water; house water is what a house supply gives before it meets either.
func (s *System) Waters() *Waters { return s.waters }

func (s *System) newWaters() *Waters {
	w := &Waters{s: s}
	w.sea = s.spread(s.seaSeeds(), func(e *edge, back bool) bool {
		second := e.unit.Item.Kind.Selector && e.way > 0
		return !e.shutNormally() && !second && e.is != catalog.Membrane && e.is != catalog.Relief && !(back && e.is == catalog.OneWay)
	})
	house := s.kindSeeds("house supply")
	w.rinsed = s.spread(append(s.freshTanks(), house...), rinses)
	w.house = without(s.spread(house, func(e *edge, back bool) bool {
		return rinses(e, back) && !w.sea[e.to] && !w.sea[e.from]
	}), w.sea)
	var membranes []int
	for i := range s.cells.edges {
		if e := &s.cells.edges[i]; e.is == catalog.Membrane {
			membranes = append(membranes, e.to)
		}
	}
	dry := func(cell int) bool { return !w.sea[cell] && !w.house[cell] }
	w.product = without(without(s.spread(membranes, func(e *edge, back bool) bool {
		to := e.to
		if back {
			to = e.from
		}
		return dry(to) && !e.shutNormally() && (e.is == catalog.Open || e.is == catalog.OneWay && !back)
	}), w.sea), w.house)
	return w
}

// Sea reports whether sea water or brine wets a port.
func (w *Waters) Sea(port int) bool { return w.sea[w.s.cells.of[port]] }

// Product reports whether a port carries the drinking water that is made.
func (w *Waters) Product(port int) bool { return w.product[w.s.cells.of[port]] }

// House reports whether a port carries house water only.
func (w *Waters) House(port int) bool { return w.house[w.s.cells.of[port]] }

// Rinsed reports whether the fresh-water flush reaches a port.
func (w *Waters) Rinsed(port int) bool { return w.rinsed[w.s.cells.of[port]] }

// Unfiltered lists the pressure vessels that the water of a house supply reaches by a way
// without a carbon filter, also by a valve that somebody leaves open.
func (s *System) Unfiltered(house *Unit) []*Unit {
	reached := s.reach(s.cells.of[house.First], func(e *edge, back bool) bool {
		if e.closable && e.shutNormally() {
			return true
		}
		return e.unit.Item.Kind.Name != "carbon filter" && rinses(e, back)
	})
	var out []*Unit
	for _, u := range s.UnitsAround(house.First) {
		if feed := u.Item.PortIndex("feed"); feed >= 0 && u.Item.Kind.Name == "pressure vessel" && reached.port(u.First+feed) {
			out = append(out, u)
		}
	}
	return out
}

// freshTanks are the cells of tanks whose water runs to a high-pressure pump: such a plant
// is flushed by its own pump.
func (s *System) freshTanks() []int {
	var out []int
	for _, u := range s.Units {
		if u.Item.Kind.Name != "tank" {
			continue
		}
		from := s.reach(s.cells.of[u.First], func(e *edge, back bool) bool { return flows(e, back, true) })
		for _, i := range s.cells.wires[from.part] {
			if e := &s.cells.edges[i]; e.is == catalog.PositivePump && from.cell(e.from) {
				out = append(out, s.cells.of[u.First])
				break
			}
		}
	}
	return out
}

// rinses reports whether flush water passes an edge: with the flush valve open, the
// pumps standing still, and pushed by the house supply.
func rinses(e *edge, back bool) bool {
	if e.shutNormally() && !e.forFlush() {
		return false
	}
	switch e.is {
	case catalog.Membrane, catalog.Relief, catalog.Shut:
		return false
	case catalog.OneWay, catalog.PositivePump:
		return !back
	case catalog.FeedPump:
		return !back || e.unit.Item.Type == "centrifugal"
	}
	return true
}

// seaSeeds are the cells that sea water stands in by their nature.
func (s *System) seaSeeds() []int {
	out := s.kindSeeds("sea", "plunger pump", "brine throttle")
	for _, u := range s.Units {
		switch u.Item.Kind.Name {
		case "pressure vessel":
			for i := range u.Item.Ports {
				if u.Item.Ports[i].Name != "product" {
					out = append(out, s.cells.of[u.First+i])
				}
			}
		case "through-hull", "seacock":
			if s.begins(u) {
				out = append(out, s.cells.of[u.First], s.cells.of[u.First+len(u.Item.Ports)-1])
			}
		}
	}
	return append(out, s.belowSeeds(out)...)
}

// belowSeeds are the cells of runs below the waterline in parts of the build where
// nothing else says what water it is.
func (s *System) belowSeeds(known []int) []int {
	said := make([]bool, len(s.cells.parts))
	for _, cell := range known {
		said[s.cells.part[cell]] = true
	}
	var out []int
	for _, j := range s.Joints {
		if cell := s.cells.of[j.A]; j.Run.Below && !said[s.cells.part[cell]] {
			out = append(out, cell)
		}
	}
	return out
}

// begins reports whether a unit is the first of a run.
func (s *System) begins(u *Unit) bool {
	for i := range u.Item.Ports {
		if j := s.Node(u, i).Joint; j != nil && s.Ports[j.A].Unit == u && j.Run.Steps[0].Item == u.Item {
			return true
		}
	}
	return false
}

// kindSeeds are the cells of all ports of units of some kinds.
func (s *System) kindSeeds(kinds ...string) []int {
	var out []int
	for _, u := range s.Units {
		for _, k := range kinds {
			if u.Item.Kind.Name != k {
				continue
			}
			for i := range u.Item.Ports {
				out = append(out, s.cells.of[u.First+i])
			}
		}
	}
	return out
}

// spread marks the cells that are reached from some, through the edges that let
// pass; back says that the edge is taken against its direction.
func (s *System) spread(seeds []int, pass func(e *edge, back bool) bool) []bool {
	c := s.cells
	leads := make([][]int, c.count) // edges of each cell
	for i := range c.edges {
		e := &c.edges[i]
		leads[e.from] = append(leads[e.from], i)
		if e.to != e.from {
			leads[e.to] = append(leads[e.to], i)
		}
	}
	seen := make([]bool, c.count)
	var queue []int
	visit := func(cell int) {
		if !seen[cell] {
			seen[cell] = true
			queue = append(queue, cell)
		}
	}
	for _, cell := range seeds {
		visit(cell)
	}
	for len(queue) > 0 {
		cell := queue[0]
		queue = queue[1:]
		for _, i := range leads[cell] {
			e := &c.edges[i]
			if e.from == cell && pass(e, false) {
				visit(e.to)
			}
			if e.to == cell && pass(e, true) {
				visit(e.from)
			}
		}
	}
	return seen
}

// without clears what another set holds.
func without(set, other []bool) []bool {
	for i := range set {
		set[i] = set[i] && !other[i]
	}
	return set
}
