package duty

import (
	"errors"
	"fmt"

	"handtight/bom"
	"handtight/bom/circuit"
	"handtight/bom/graph"
	"handtight/catalog"
	"handtight/pressure/process/flow"
	"handtight/pressure/process/line"
	"handtight/pressure/process/pump"
	"handtight/pressure/quantity"
)

func (n *net) solve() (*flow.Answer, error) {
	f := n.m.frame(n.s)
	n.node, n.nodes = f.node, f.nodes
	n.links, n.unitOf = make([]flow.Link, 0, f.links), make([]*graph.Unit, 0, f.links)
	for _, u := range n.m.units {
		n.unit(u)
	}
	n.anchor()
	n.n.Nodes, n.n.Links, n.n.Like = n.nodes, n.links, f.like
	a, err := n.n.Solve()
	if err == nil {
		f.like, f.links = a, len(n.links)
	}
	return a, n.named(err)
}

// named puts the build's own names into an error of the network: what did not converge, and where.
func (n *net) named(err error) error {
	var unsettled *flow.UnsettledError
	var loose *flow.LooseError
	switch {
	case errors.As(err, &unsettled):
		where := ""
		switch {
		case unsettled.What == "throttle" && unsettled.Index < len(n.throttleOf):
			where = n.throttleOf[unsettled.Index].Name
		case unsettled.What == "link" && unsettled.Index < len(n.unitOf):
			where = n.unitOf[unsettled.Index].Name
		}
		return fmt.Errorf("the flow through %s does not come to rest (it %s), so nothing of the hoses and the pressures before the pumps is known: look at what is written of %s and of its neighbours, a bore, a `kv`, a `loss` or a `curve` that is out by a power of ten, or a way round that nothing closes: %w",
			where, unsettled.Moves(), where, flow.ErrNotFound)
	case errors.As(err, &loose):
		return fmt.Errorf("nothing fixes the pressure at %s: no open way leads from it to the sea, a tank or the house: %w", n.portAt(loose.Node), err)
	}
	return err
}

// portAt is the name of a port that stands at a node.
func (n *net) portAt(node int) string {
	for _, u := range n.m.units {
		for i := range u.Item.Ports {
			if n.node[u.First+i] == node {
				return u.Name + "." + u.Item.Ports[i].Name
			}
		}
	}
	return "a part"
}

// frame is what the networks of a plant have in common, whatever runs in it.
type frame struct {
	node  map[int]int // of each port
	nodes int
	bores map[*graph.Unit]nearBore // of the hoses nearest to fittings
	like  *flow.Answer             // of the case before
	links int                      // how many it had
}

type nearBore struct {
	bore  quantity.Length
	found bool
}

// frame makes a node of each port, and one of two ports that are joined.
func (m *Making) frame(s *bom.System) *frame {
	if m.frames != nil {
		return m.frames
	}
	f := &frame{node: make(map[int]int, 4*len(m.units)), bores: make(map[*graph.Unit]nearBore, len(m.units))}
	m.frames = f
	for _, u := range m.units {
		for k := range u.Item.Ports {
			i := u.First + k
			if _, done := f.node[i]; done {
				continue
			}
			f.node[i] = f.nodes
			if j := s.Graph.Ports[i].Joint; j != nil {
				f.node[j.A], f.node[j.B] = f.nodes, f.nodes
			}
			f.nodes++
		}
	}
	return f
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
			n.n.Fixed = append(n.n.Fixed, flow.Fixed{Node: n.node[u.First+i], Pressure: n.stands(u)})
		}
	}
	if u.Item.IsHose() {
		n.link(u, 0, 1, n.hose(u.Item))
		return
	}
	for way, p := range u.Passages() {
		e := circuit.Link{Unit: u, Is: p.Is, Closable: p.Closable, Position: way}
		stands := 0
		if n.drain {
			stands = 1
		}
		if e.ShutNormally() && !(n.flush && e.ForFlush()) || u.Item.Kind.Selector && way != n.selects(u, stands) || p.From < 0 || p.To < 0 {
			continue
		}
		n.passage(u, p)
	}
}

// stands is what a boundary's water stands at: a tank's by its height over the waterline.
func (n *net) stands(u *graph.Unit) quantity.Pressure {
	h := u.Item.Process.Height
	switch {
	case h == nil && len(u.Item.Ports) > 0 && n.m.product(u.First):
		return n.lifted() // where the product ends is taken to be as high as the pump
	case h == nil:
		return 0
	}
	return quantity.Pressure(float64(n.water.Density) * line.Gravity * h.Metres())
}

func (n *net) passage(u *graph.Unit, p catalog.Passage) {
	taken := func(port int, q quantity.Flow) {
		n.n.Taken = append(n.n.Taken, flow.Taken{Node: n.node[u.First+port], Flow: q})
	}
	if n.flush && n.turns && p.Is == catalog.PositivePump {
		q, _, _ := PumpFlow(u.Item, 0)
		taken(p.From, q.Middle())
		taken(p.To, -q.Middle())
		return
	}
	if n.flush {
		n.still(u, p)
		return
	}
	switch p.Is {
	case catalog.PositivePump:
		q := n.pumpFlow(u)
		taken(p.From, q)
		taken(p.To, -q)
	case catalog.Recovery:
		// What leaks past the piston goes with the spent brine and reaches no membrane.
		q, leak := n.recoveryFlow(), n.m.Recovered.Device.Leak
		taken(p.From, q)
		taken(p.To, -q*quantity.Flow(1-leak))
		if waste := u.Item.PortIndex("waste"); waste >= 0 {
			taken(waste, -q*quantity.Flow(leak))
		}
	case catalog.Return:
		n.throttle(u, p, n.m.Recovered.Middle.Held)
	case catalog.FeedPump:
		lower, upper, ok := curves(u.Item)
		switch {
		case !ok:
			n.link(u, p.From, p.To, flow.OneWay{Law: flow.Linear{At: filterFlow, Loses: 100}}) // what it adds is not known
		case n.upper:
			n.link(u, p.From, p.To, flow.Feed{Curve: upper})
		default:
			n.link(u, p.From, p.To, flow.Feed{Curve: lower})
		}
	case catalog.Throttle, catalog.Regulator:
		holds := n.m.Pressure.Middle()
		if set := u.Item.Set; set != nil && p.Is == catalog.Regulator {
			holds = *set
		}
		n.throttle(u, p, holds)
	case catalog.Membrane:
		share := n.prod * n.shareOf(u)
		taken(p.From, share)
		taken(p.To, -share)
	case catalog.Open:
		law := n.part(u)
		if w := n.m.wayOf(u); w != nil && len(n.m.ways) > 1 {
			law = w.law() // as the feed parts by the membranes' own loss
		}
		n.link(u, p.From, p.To, law)
	case catalog.OneWay:
		n.link(u, p.From, p.To, flow.OneWay{Law: n.part(u)})
	}
}

// throttle is a passage before which a pressure is held.
func (n *net) throttle(u *graph.Unit, p catalog.Passage, holds quantity.Pressure) {
	n.n.Throttles = append(n.n.Throttles, flow.Throttle{From: n.node[u.First+p.From], To: n.node[u.First+p.To], Holds: holds})
	n.throttleOf = append(n.throttleOf, u)
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

// selects is the way that a selector stands at: the second only of one that the product goes
// through.
func (n *net) selects(u *graph.Unit, stands int) int {
	if common := u.Item.PortIndex("common"); stands > 0 && common >= 0 && n.m.product(u.First+common) {
		return stands
	}
	return 0
}

// shareOf is a vessel's part of the product: of like rows the same for each, of unlike ones as each
// makes at the middle.
func (n *net) shareOf(u *graph.Unit) quantity.Flow {
	count := 0
	for _, row := range n.m.Rows {
		count += len(row)
	}
	w, all := n.m.wayOf(u), n.m.Middle.Product
	if w == nil || len(n.m.ways) < 2 || !(all > 0) {
		return 1 / quantity.Flow(max(count, 1))
	}
	return w.middle.Product / all / quantity.Flow(len(w.vessels)*len(w.vessels[0]))
}

// pumpFlow is a piston pump's flow at this case.
func (n *net) pumpFlow(u *graph.Unit) quantity.Flow {
	q, _, _ := PumpFlow(u.Item, n.m.in.pressure.Middle())
	return q.Lo + quantity.Flow(n.pumpQ)*(q.Hi-q.Lo)
}

// recoveryFlow is the feed of an energy-recovery pump at this case: where it runs at the middle, or an
// end of where it can run.
func (n *net) recoveryFlow() quantity.Flow {
	switch n.pumpQ {
	case 0:
		return n.m.Recovered.Takes.Lo
	case 1:
		return n.m.Recovered.Takes.Hi
	}
	return n.m.Recovered.Middle.Feed
}
