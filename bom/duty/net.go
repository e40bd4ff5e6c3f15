package duty

import (
	"math"

	"handtight/bom"
	"handtight/bom/circuit"
	"handtight/bom/graph"
	"handtight/catalog"
	"handtight/pressure/process/flow"
	"handtight/pressure/process/line"
	"handtight/pressure/process/pump"
	"handtight/pressure/process/span"
	"handtight/pressure/quantity"
)

func (n *net) solve() (*flow.Answer, error) {
	n.joinNodes()
	for _, u := range n.m.units {
		n.unit(u)
	}
	n.anchor()
	n.n.Nodes, n.n.Links = n.nodes, n.links
	return n.n.Solve()
}

// joinNodes makes a node of each port, and one of two ports that are joined.
func (n *net) joinNodes() {
	n.node = make(map[int]int, 2*len(n.m.units))
	for _, u := range n.m.units {
		for k := range u.Item.Ports {
			i := u.First + k
			if _, done := n.node[i]; done {
				continue
			}
			n.node[i] = n.nodes
			if j := n.s.Graph.Ports[i].Joint; j != nil {
				n.node[j.A], n.node[j.B] = n.nodes, n.nodes
			}
			n.nodes++
		}
	}
}

func (n *net) link(u *graph.Unit, from, to int, law flow.Law) {
	n.links = append(n.links, flow.Link{From: n.node[u.First+from], To: n.node[u.First+to], Law: law})
	n.unitOf = append(n.unitOf, u)
}

// unit adds the links of a unit in normal running.
func (n *net) unit(u *graph.Unit) {
	for i := range u.Item.Ports {
		if n.s.Graph.Boundary(u, i) {
			if n.flush && u.Item.Kind.Supply {
				n.supply(u, i)
				continue
			}
			n.n.Fixed = append(n.n.Fixed, flow.Fixed{Node: n.node[u.First+i]})
		}
	}
	if u.Item.IsHose() {
		n.link(u, 0, 1, n.hose(u.Item))
		return
	}
	for way, p := range u.Passages() {
		e := circuit.Link{Unit: u, Is: p.Is, Closable: p.Closable, Position: way}
		if e.ShutNormally() && !(n.flush && e.ForFlush()) || u.Item.Kind.Selector && way > 0 || p.From < 0 || p.To < 0 {
			continue
		}
		n.passage(u, p)
	}
}

func (n *net) passage(u *graph.Unit, p catalog.Passage) {
	taken := func(port int, q quantity.Flow) {
		n.n.Taken = append(n.n.Taken, flow.Taken{Node: n.node[u.First+port], Flow: q})
	}
	if n.flush {
		n.still(u, p)
		return
	}
	switch p.Is {
	case catalog.PositivePump:
		q := n.pumpFlow(u)
		taken(p.From, q)
		if u.Item.Kind.Is(catalog.Recovers) {
			// The rod's side takes the brine, and passes it on: see the throttle below.
			taken(p.To, -q)
			return
		}
		taken(p.To, -q)
	case catalog.FeedPump:
		lower, upper, ok := Curves(u.Item)
		switch {
		case !ok:
			n.link(u, p.From, p.To, flow.OneWay{Law: flow.Linear{At: filterFlow, Loses: 100}}) // what it adds is not known
		case n.upper:
			n.link(u, p.From, p.To, flow.Feed{Curve: upper})
		default:
			n.link(u, p.From, p.To, flow.Feed{Curve: lower})
		}
	case catalog.Throttle:
		n.n.Throttles = append(n.n.Throttles, flow.Throttle{From: n.node[u.First+p.From], To: n.node[u.First+p.To], Holds: n.m.Pressure.Middle()})
	case catalog.Membrane:
		share := n.prod / quantity.Flow(max(n.vessels(), 1))
		taken(p.From, share)
		taken(p.To, -share)
	case catalog.Open:
		n.link(u, p.From, p.To, n.part(u))
	case catalog.OneWay:
		n.link(u, p.From, p.To, flow.OneWay{Law: n.part(u)})
	}
}

// still is a passage in the flush: what pumps let water through their valves, and the
// throttles stand open.
func (n *net) still(u *graph.Unit, p catalog.Passage) {
	switch p.Is {
	case catalog.Open, catalog.Throttle:
		n.link(u, p.From, p.To, n.part(u))
	case catalog.OneWay, catalog.PositivePump, catalog.FeedPump:
		n.link(u, p.From, p.To, flow.OneWay{Law: n.part(u)})
	}
}

// supply is a house supply: it gives less pressure as more is taken, by its pressure and its
// open flow.
func (n *net) supply(u *graph.Unit, port int) {
	it := u.Item
	if it.Pressure == nil || it.Flow == nil {
		return
	}
	curve, _, err := pump.Between(*it.Pressure, *it.Flow)
	if err != nil {
		return
	}
	n.n.Fixed = append(n.n.Fixed, flow.Fixed{Node: n.nodes})
	n.links = append(n.links, flow.Link{From: n.nodes, To: n.node[u.First+port], Law: flow.Feed{Curve: curve}})
	n.unitOf = append(n.unitOf, u)
	n.nodes++
}

// flushed solves the flush of a plant: the flow of each unit, nil where no supply gives any, or
// nothing says how much.
func flushed(s *bom.System, m *Making) map[*graph.Unit]quantity.Flow {
	known := false
	for _, u := range m.units {
		known = known || u.Item.Kind.Supply && u.Item.Pressure != nil && u.Item.Flow != nil
	}
	if !known {
		return nil
	}
	n := &net{s: s, m: m, water: m.water, pumpQ: 0.5, flush: true}
	if fresh, err := line.Of(20, 0); err == nil {
		n.water = fresh
	}
	a, err := n.solve()
	if err != nil {
		return nil
	}
	out := map[*graph.Unit]quantity.Flow{}
	for i, u := range n.unitOf {
		out[u] = max(out[u], quantity.Flow(math.Abs(float64(a.Flow[i]))))
	}
	return out
}

func (n *net) vessels() int {
	count := 0
	for _, row := range n.m.Rows {
		count += len(row)
	}
	return count
}

// pumpFlow is a piston pump's flow at this case.
func (n *net) pumpFlow(u *graph.Unit) quantity.Flow {
	pick := func(s span.Span[quantity.Flow]) quantity.Flow { return s.Lo + quantity.Flow(n.pumpQ)*(s.Hi-s.Lo) }
	if u.Item.Kind.Is(catalog.Recovers) {
		return pick(n.m.Feed)
	}
	q, _, _ := PumpFlow(u.Item, n.m.in.pressure.Middle())
	return pick(q)
}
