package duty

import (
	"slices"

	"handtight/bom"
	"handtight/bom/graph"
	"handtight/catalog"
)

// Vessel is a pressure vessel with what stands inside it.
type Vessel struct {
	Unit     *graph.Unit
	Elements []Elements
	Count    int // elements
}

// Plant is pumps and the vessels they press.
type Plant struct {
	Pumps     []*graph.Unit // piston pumps
	Recovery  *graph.Unit   // an energy-recovery pump, in their place
	FeedPumps []*graph.Unit
	Rows      [][]*Vessel // vessels in rows side by side; in a row each takes the brine of the one before
	Net       int
	units     []*graph.Unit
}

// plantsOf finds the vessels of the build, by part of it, in rows.
func plantsOf(s *bom.System) []*Plant {
	var out []*Plant
	vessels := map[*graph.Unit]*Vessel{}
	for _, u := range s.Graph.Units {
		if u.Item.Kind.Is(catalog.Separates) {
			vessels[u] = vesselOf(s, u)
		}
	}
	at := map[int]*Plant{}
	of := func(u *graph.Unit) *Plant {
		net := s.Circuit.NetOf[s.Circuit.JunctionOf[u.First]]
		if at[net] == nil {
			at[net] = &Plant{Net: net}
			out = append(out, at[net])
		}
		return at[net]
	}
	for _, u := range s.Graph.Units {
		switch k := u.Item.Kind; {
		case k.Is(catalog.DrivesHigh):
			of(u).Pumps = append(of(u).Pumps, u)
		case k.Is(catalog.DrivesFeed):
			of(u).FeedPumps = append(of(u).FeedPumps, u)
		case k.Is(catalog.Recovers):
			of(u).Recovery = u
		}
	}
	after := map[*graph.Unit]*graph.Unit{} // whose brine it takes
	for _, u := range s.Graph.Units {
		if vessels[u] == nil {
			continue
		}
		if next := nextVessel(s, u, vessels); next != nil {
			after[next] = u
		}
	}
	for _, u := range s.Graph.Units {
		v := vessels[u]
		if v == nil || after[u] != nil {
			continue
		}
		row := []*Vessel{v}
		for next := nextVessel(s, u, vessels); next != nil && !slices.Contains(row, vessels[next]); next = nextVessel(s, next, vessels) {
			row = append(row, vessels[next])
		}
		of(u).Rows = append(of(u).Rows, row)
	}
	for _, u := range s.Graph.Units {
		if p := at[s.Circuit.NetOf[s.Circuit.JunctionOf[u.First]]]; p != nil && len(u.Item.Ports) > 0 {
			p.units = append(p.units, u)
		}
	}
	return slices.DeleteFunc(out, func(p *Plant) bool { return len(p.Rows) == 0 && len(p.Pumps) == 0 && p.Recovery == nil })
}

// nextVessel is the vessel whose feed stands at a vessel's brine with nothing between that a
// hand or dirt can change; nil where there is none. It walks joints and the open passages of
// fittings and hoses.
func nextVessel(s *bom.System, u *graph.Unit, vessels map[*graph.Unit]*Vessel) *graph.Unit {
	brine := u.Item.PortIndex("brine")
	if brine < 0 {
		return nil
	}
	seen := map[int]bool{u.First + brine: true}
	queue := []int{u.First + brine}
	visit := func(p int) {
		if !seen[p] {
			seen[p] = true
			queue = append(queue, p)
		}
	}
	for len(queue) > 0 {
		p := queue[0]
		queue = queue[1:]
		n := &s.Graph.Ports[p]
		if n.Unit != u && vessels[n.Unit] != nil {
			if n.Index == n.Unit.Item.PortIndex("feed") {
				return n.Unit
			}
			continue
		}
		if n.Joint != nil {
			visit(n.Joint.A)
			visit(n.Joint.B)
		}
		if n.Unit == u {
			continue
		}
		for _, w := range n.Unit.Passages() {
			if w.Is != catalog.Open || w.Closable || w.Clogs {
				continue
			}
			if w.From == n.Index {
				visit(n.Unit.First + w.To)
			} else if w.To == n.Index {
				visit(n.Unit.First + w.From)
			}
		}
	}
	return nil
}

// vesselOf finds what stands inside a vessel.
func vesselOf(s *bom.System, u *graph.Unit) *Vessel {
	v := &Vessel{Unit: u}
	for _, it := range s.Graph.Contents(u.Item) {
		if it.Kind.Is(catalog.Element) {
			e := elementsOf(it)
			v.Elements = append(v.Elements, e)
			v.Count += e.Count
		}
	}
	return v
}
