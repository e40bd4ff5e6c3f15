package duty

import (
	"handtight/bom/build"
	"handtight/bom/graph"
	"handtight/catalog"
	"handtight/pressure/network/connected"
	"handtight/pressure/process/flow"
	"handtight/pressure/process/line"
	"handtight/pressure/quantity"
)

// BoreOf is the bore of a hose, its own or its stock's; an estimate where only an outside is said.
func BoreOf(b *build.Build, it *build.Item) (quantity.Length, bool) {
	if bore, ok := BoreSaid(b, it); ok {
		return bore, true
	}
	stock, _ := b.Item(it.Of)
	for _, i := range []*build.Item{stock, it} {
		if i != nil && i.Outside != nil {
			return *i.Outside * 0.7, true // thin-walled tube of 10 mm has 7 to 8 mm (memory)
		}
	}
	return 0, false
}

// BoreSaid is the bore of a hose as it is said, its own or its stock's: with its wall, and no
// estimate.
func BoreSaid(b *build.Build, it *build.Item) (quantity.Length, bool) {
	for range 2 {
		if it.Bore != nil {
			return *it.Bore, true
		}
		if it.Outside != nil && it.Wall != nil && *it.Outside > 2**it.Wall {
			return *it.Outside - 2**it.Wall, true
		}
		stock, ok := b.Item(it.Of)
		if !ok || it.Of == "" || stock == it {
			break
		}
		it = stock
	}
	return 0, false
}

func (n *net) hose(it *build.Item) flow.Law {
	bore, ok := BoreOf(n.s.Build, it)
	if !ok || it.Length == nil {
		return flow.Linear{At: filterFlow, Loses: 100}
	}
	p := flow.Pipe{Bore: line.Bore{Diameter: bore, Length: *it.Length, Roughness: smoothRough}, Water: n.water}
	stock, _ := n.s.Build.Item(it.Of)
	for _, i := range []*build.Item{it, stock} {
		if i == nil {
			continue
		}
		if i.Process.Roughness != nil {
			p.Bore.Roughness = *i.Process.Roughness
		}
		if i.Process.Corrugate {
			p.Times = line.CorrugatedMost
		}
	}
	if len(it.Ports) == 2 && it.Of != "" { // pushed over tails
		k, _ := line.Barb(quantity.Length(tailShare), 1)
		p.K = 2 * k
	}
	return p
}

// part is what a fitting or a device loses.
func (n *net) part(u *graph.Unit) flow.Law {
	it := u.Item
	if kv := it.Process.Kv; kv != nil {
		return flow.Square{At: *kv, Loses: quantity.Pressure(float64(n.water.Density) / 1000 * float64(quantity.Bar))}
	}
	filter := it.Kind.Is(catalog.Filter | catalog.Strainer)
	if filter {
		return n.filter(it)
	}
	k := it.Kind.Loss
	if k == 0 {
		k = 0.1
	}
	bore := 12 * quantity.Millimetre
	if it.Bore != nil {
		bore = *it.Bore
	} else if near, ok := n.near(u); ok {
		bore = near
	}
	return flow.Pipe{Bore: line.Bore{Diameter: bore}, K: k, Water: n.water}
}

func (n *net) filter(it *build.Item) flow.Law {
	at := func(l *build.LossAt, usual quantity.Pressure) flow.Law {
		if l != nil {
			return flow.Linear{At: l.Flow, Loses: max(l.Pressure, 1)}
		}
		return flow.Linear{At: filterFlow, Loses: usual}
	}
	if it.Kind.Is(catalog.Strainer) {
		usual := cleanStrainer.Hi
		if n.upper || n.pumpQ == 0.5 {
			usual = cleanStrainer.Lo
		}
		if n.dirty && it.Process.LossDirty != nil {
			return at(it.Process.LossDirty, 0)
		}
		if n.dirty {
			usual = quantity.Pressure(blindStrainer) * cleanStrainer.Middle()
		}
		return at(it.Process.Loss, usual)
	}
	switch {
	case n.dirty && it.Process.LossDirty != nil:
		return at(it.Process.LossDirty, 0)
	case n.dirty:
		return flow.Linear{At: max(n.m.Feed.Middle(), 1e-9), Loses: dirtyFilter.Lo}
	case n.upper, n.pumpQ == 0.5:
		return at(it.Process.Loss, cleanFilter.Lo)
	}
	return at(it.Process.Loss, cleanFilter.Hi)
}

// near is the bore of a hose that is joined to a unit, or to its neighbour.
func (n *net) near(u *graph.Unit) (quantity.Length, bool) {
	got, known := n.m.frames.bores[u]
	if !known {
		got.bore, got.found = n.nearest(u)
		n.m.frames.bores[u] = got
	}
	return got.bore, got.found
}

func (n *net) nearest(u *graph.Unit) (quantity.Length, bool) {
	for depth, list := 0, []*graph.Unit{u}; depth < 4; depth++ {
		var next []*graph.Unit
		for _, v := range list {
			for i := range v.Item.Ports {
				j := n.s.Graph.Port(v, i).Joint
				if j == nil {
					continue
				}
				for _, p := range []int{j.A, j.B} {
					other := n.s.Graph.Ports[p].Unit
					if bore, ok := BoreOf(n.s.Build, other.Item); ok && other.Item.IsHose() {
						return bore, true
					}
					if other != v {
						next = append(next, other)
					}
				}
			}
		}
		list = next
	}
	return 0, false
}

// anchor fixes the pressure of what no way leads from to water of a known pressure: a dead
// end behind a shut valve. The throttles hold theirs.
func (n *net) anchor() {
	known := n.nodes // stands for all of known pressure
	sets := connected.NewSets(n.nodes + 1)
	for _, f := range n.n.Fixed {
		sets.Join(f.Node, known)
	}
	for _, t := range n.n.Throttles {
		sets.Join(t.From, known)
	}
	for _, l := range n.links {
		sets.Join(l.From, l.To)
	}
	for v := range n.nodes {
		if sets.Find(v) != sets.Find(known) {
			n.n.Fixed = append(n.n.Fixed, flow.Fixed{Node: v})
			sets.Join(v, known)
		}
	}
}
