package wetting

import (
	"handtight/bom/circuit"
	"handtight/bom/graph"
	"handtight/catalog"
)

// Waters says which water wets each port: by where it comes from, along the
// passages that it can take. A port that none reaches is wet by a water that is not known.
type Waters struct {
	Circuit             *circuit.Circuit
	sea, product, house []bool // by junction
	rinsed              []bool
}

// Of says which water wets each port.
//
// Sea water comes from the sea, from a skin fitting that begins a run, and stands
// wherever a plunger pump, a vessel or a throttle is fed by it; it passes a check
// valve forward only, and neither a membrane, a relief valve nor a valve that is shut in
// normal running. Product is what comes through a membrane and has met no sea
// water; house water is what a house supply gives before it meets either.
func Of(c *circuit.Circuit) *Waters {
	w := &Waters{Circuit: c}
	s := w
	w.sea = s.spread(s.seaSeeds(), func(e *circuit.Link, back bool) bool {
		second := e.Unit.Item.Kind.Selector && e.Position > 0
		return !e.ShutNormally() && !second && e.Is != catalog.Membrane && e.Is != catalog.Relief && !(back && (e.Is == catalog.OneWay || e.Is == catalog.Regulator || e.Is == catalog.Recovery || e.Is == catalog.Return))
	})
	house := s.kindSeeds(catalog.Supplies)
	w.rinsed = s.spread(append(s.freshTanks(), house...), rinses)
	w.house = without(s.spread(house, func(e *circuit.Link, back bool) bool {
		return rinses(e, back) && !w.sea[e.To] && !w.sea[e.From]
	}), w.sea)
	var membranes []int
	for i := range s.Circuit.Links {
		if e := &s.Circuit.Links[i]; e.Is == catalog.Membrane {
			membranes = append(membranes, e.To)
		}
	}
	dry := func(junction int) bool { return !w.sea[junction] && !w.house[junction] }
	w.product = without(without(s.spread(membranes, func(e *circuit.Link, back bool) bool {
		to := e.To
		if back {
			to = e.From
		}
		return dry(to) && !e.ShutNormally() && (e.Is == catalog.Open || e.Is == catalog.OneWay && !back)
	}), w.sea), w.house)
	return w
}

// Sea reports whether sea water or brine wets a port.
func (w *Waters) Sea(port int) bool { return w.sea[w.Circuit.JunctionOf[port]] }

// Product reports whether a port carries the drinking water that is made.
func (w *Waters) Product(port int) bool { return w.product[w.Circuit.JunctionOf[port]] }

// House reports whether a port carries house water only.
func (w *Waters) House(port int) bool { return w.house[w.Circuit.JunctionOf[port]] }

// Rinsed reports whether the fresh-water flush reaches a port.
func (w *Waters) Rinsed(port int) bool { return w.rinsed[w.Circuit.JunctionOf[port]] }

// SeaAt reports whether sea water or brine wets a junction.
func (w *Waters) SeaAt(junction int) bool { return w.sea[junction] }

// Rinses reports whether the fresh-water flush passes a link.
func (w *Waters) Rinses(e *circuit.Link) bool {
	return w.rinsed[e.From] && rinses(e, false) || w.rinsed[e.To] && rinses(e, true)
}

// Unfiltered lists the pressure vessels that the water of a house supply reaches by a way
// without a carbon filter, also by a valve that somebody leaves open.
func (s *Waters) Unfiltered(house *graph.Unit) []*graph.Unit {
	reached := s.Circuit.Reach(s.Circuit.JunctionOf[house.First], func(e *circuit.Link, back bool) bool {
		if e.Closable && e.ShutNormally() {
			return true
		}
		return !e.Unit.Item.Kind.Is(catalog.Carbon) && rinses(e, back)
	})
	var out []*graph.Unit
	for _, u := range s.Circuit.UnitsAround(house.First) {
		if feed := u.Item.PortIndex("feed"); feed >= 0 && u.Item.Kind.Is(catalog.Separates) && reached.Port(u.First+feed) {
			out = append(out, u)
		}
	}
	return out
}

// freshTanks are the junctions of tanks whose water runs to a high-pressure pump, by itself or through
// the feed pump: such a plant is flushed by its own pumps.
func (s *Waters) freshTanks() []int {
	var out []int
	for _, u := range s.Circuit.Graph.Units {
		if !u.Item.Kind.Is(catalog.Store) {
			continue
		}
		from := s.Circuit.Reach(s.Circuit.JunctionOf[u.First], func(e *circuit.Link, back bool) bool {
			return circuit.Flows(e, back, true) || e.Is == catalog.FeedPump && !back
		})
		for _, i := range s.Circuit.LinksOf[from.Net] {
			if e := &s.Circuit.Links[i]; e.Is == catalog.PositivePump && from.Junction(e.From) {
				out = append(out, s.Circuit.JunctionOf[u.First])
				break
			}
		}
	}
	return out
}

// rinses reports whether flush water passes an edge: with the flush valve open, the
// pumps standing still, and pushed by the house supply.
func rinses(e *circuit.Link, back bool) bool {
	if e.ShutNormally() && !e.ForFlush() {
		return false
	}
	switch e.Is {
	case catalog.Membrane, catalog.Relief, catalog.Shut:
		return false
	case catalog.OneWay, catalog.PositivePump, catalog.Regulator, catalog.Recovery, catalog.Return:
		return !back
	case catalog.FeedPump:
		return !back || e.Unit.Item.Type == "centrifugal"
	}
	return true
}

// seaSeeds are the junctions that sea water stands in by their nature.
func (s *Waters) seaSeeds() []int {
	out := s.kindSeeds(catalog.Sea | catalog.DrivesHigh | catalog.Throttles)
	for _, u := range s.Circuit.Graph.Units {
		switch k := u.Item.Kind; {
		case k.Is(catalog.Separates):
			for i := range u.Item.Ports {
				if u.Item.Ports[i].Name != "product" {
					out = append(out, s.Circuit.JunctionOf[u.First+i])
				}
			}
		case k.Is(catalog.SkinFitting):
			if s.Circuit.Graph.Begins(u) {
				out = append(out, s.Circuit.JunctionOf[u.First], s.Circuit.JunctionOf[u.First+len(u.Item.Ports)-1])
			}
		}
	}
	return append(out, s.belowSeeds(out)...)
}

// belowSeeds are the junctions of runs below the waterline in parts of the build where
// nothing else says what water it is.
func (s *Waters) belowSeeds(known []int) []int {
	said := make([]bool, len(s.Circuit.Nets))
	for _, junction := range known {
		said[s.Circuit.NetOf[junction]] = true
	}
	var out []int
	for _, j := range s.Circuit.Graph.Joints {
		if junction := s.Circuit.JunctionOf[j.A]; j.Run.Below && !said[s.Circuit.NetOf[junction]] {
			out = append(out, junction)
		}
	}
	return out
}

// kindSeeds are the junctions of all ports of units that have a role.
func (s *Waters) kindSeeds(role catalog.Role) []int {
	var out []int
	for _, u := range s.Circuit.Graph.Units {
		if !u.Item.Kind.Is(role) {
			continue
		}
		for i := range u.Item.Ports {
			out = append(out, s.Circuit.JunctionOf[u.First+i])
		}
	}
	return out
}

// spread marks the junctions that are reached from some, through the edges that let
// pass; back says that the edge is taken against its direction.
func (s *Waters) spread(seeds []int, pass func(e *circuit.Link, back bool) bool) []bool {
	leads := make([][]int, s.Circuit.Junctions) // edges of each junction
	for i := range s.Circuit.Links {
		e := &s.Circuit.Links[i]
		leads[e.From] = append(leads[e.From], i)
		if e.To != e.From {
			leads[e.To] = append(leads[e.To], i)
		}
	}
	seen := make([]bool, s.Circuit.Junctions)
	var queue []int
	visit := func(junction int) {
		if !seen[junction] {
			seen[junction] = true
			queue = append(queue, junction)
		}
	}
	for _, junction := range seeds {
		visit(junction)
	}
	for len(queue) > 0 {
		junction := queue[0]
		queue = queue[1:]
		for _, i := range leads[junction] {
			e := &s.Circuit.Links[i]
			if e.From == junction && pass(e, false) {
				visit(e.To)
			}
			if e.To == junction && pass(e, true) {
				visit(e.From)
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

// Intake reports whether a unit lets sea water in: the sea, or a skin fitting from which
// water reaches a pump; where no pump stands, the one that a run begins at.
func (s *Waters) Intake(u *graph.Unit) bool {
	switch k := u.Item.Kind; {
	case k.Is(catalog.Sea):
		return true
	case k.Is(catalog.SkinFitting):
	default:
		return false
	}
	inboard := u.First + len(u.Item.Ports) - 1
	pumps := 0
	var from *circuit.Reached
	for _, i := range s.Circuit.LinksOf[s.Circuit.NetOf[s.Circuit.JunctionOf[inboard]]] {
		e := &s.Circuit.Links[i]
		if e.Is != catalog.FeedPump && e.Is != catalog.PositivePump {
			continue
		}
		if from == nil {
			from = s.Circuit.Reach(s.Circuit.JunctionOf[inboard], func(e *circuit.Link, back bool) bool { return circuit.Flows(e, back, true) })
		}
		if pumps++; from.Junction(e.From) {
			return true
		}
	}
	return pumps == 0 && s.Circuit.Graph.Begins(u)
}
