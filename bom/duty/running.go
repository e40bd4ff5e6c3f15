package duty

import (
	"fmt"
	"math"

	"handtight/bom"
	"handtight/bom/graph"
	"handtight/pressure/process/line"
	"handtight/pressure/quantity"
)

// Condition is a way of running beside the normal one, with what then runs in each unit at the
// middle of what is said.
type Condition struct {
	Name    string // "product to drain", "flush", "flush with the pump running"
	Words   string
	Flow    map[*graph.Unit]quantity.Flow
	Product quantity.Flow // into the product's way out
	Vessel  quantity.Flow // through the vessel that gets least
	House   quantity.Flow // of a house supply, and Sea of the sea and of tanks: of a flush
	Sea     quantity.Flow
	Open    float64 // what comes in less what goes out, over what comes in: the balance
}

// conditionsOf solves each way of running that the plant has.
func conditionsOf(s *bom.System, m *Making) []Condition {
	var out []Condition
	if n := (&net{s: s, m: m, water: m.water, pumpQ: 0.5, prod: m.Middle.Product, drain: true}); m.Made && m.FeedKnown && n.hasSecondWay() {
		if c, ok := n.condition("product to drain", "the product goes to its second way"); ok {
			out = append(out, c)
		}
	}
	if !m.suppliesKnown() {
		return out
	}
	if m.Recovery != nil {
		m.Unsolved = append(m.Unsolved, "the flush, for nothing says how freely water passes "+m.Recovery.Name+" while no brine drives it: ask its maker how it is flushed")
		return out
	}
	fresh, err := line.Of(20, 0)
	if err != nil {
		return out
	}
	if c, ok := (&net{s: s, m: m, water: fresh, pumpQ: 0.5, flush: true}).condition("flush", "the pumps stand, and the flush goes through their valves"); ok {
		out = append(out, c)
	}
	if len(m.Pumps) == 0 || !m.FeedKnown {
		return out
	}
	if c, ok := (&net{s: s, m: m, water: fresh, pumpQ: 0.5, flush: true, turns: true}).condition("flush with the pump running", "the throttle stands open, and the pump draws what it sweeps"); ok {
		out = append(out, c)
	}
	return out
}

// suppliesKnown reports whether something that flushes says what it gives: a house supply, or a
// tank that stands high.
func (m *Making) suppliesKnown() bool {
	for _, u := range m.units {
		if u.Item.Kind.Supply && u.Item.Pressure != nil && u.Item.Flow != nil {
			return true
		}
	}
	return false
}

func (n *net) hasSecondWay() bool {
	for _, u := range n.m.units {
		if u.Item.Kind.Selector && n.selects(u, 1) == 1 {
			return true
		}
	}
	return false
}

// condition solves the net and gathers what runs in each unit.
func (n *net) condition(name, words string) (Condition, bool) {
	a, err := n.solve()
	if err != nil {
		n.m.Unsolved = append(n.m.Unsolved, fmt.Sprintf("%s: %v", name, err))
		return Condition{}, false
	}
	c := Condition{Name: name, Words: words, Flow: map[*graph.Unit]quantity.Flow{}, Product: n.prod, Vessel: quantity.Flow(math.Inf(1))}
	for i, u := range n.unitOf {
		c.Flow[u] = max(c.Flow[u], quantity.Flow(math.Abs(float64(a.Flow[i]))))
	}
	for _, row := range n.m.Rows {
		for _, v := range row {
			c.Vessel = min(c.Vessel, c.Flow[v.Unit])
		}
	}
	if len(n.m.Rows) == 0 {
		c.Vessel = 0
	}
	c.balance(n, a.Flow, a.Throttle)
	return c, true
}

// balance adds up what comes in at the boundaries and what goes out.
func (c *Condition) balance(n *net, flows, throttles []quantity.Flow) {
	at := make([]quantity.Flow, n.nodes) // leaves the network there
	for i, l := range n.links {
		at[l.From] -= flows[i]
		at[l.To] += flows[i]
	}
	for i, t := range n.n.Throttles {
		at[t.From] -= throttles[i]
		at[t.To] += throttles[i]
	}
	for _, t := range n.n.Taken {
		at[t.Node] -= t.Flow
	}
	fixed := map[int]bool{}
	for _, f := range n.n.Fixed {
		fixed[f.Node] = true
	}
	var in, out, lost quantity.Flow
	for node, q := range at {
		switch {
		case !fixed[node]:
			lost += max(q, -q)
		case q > 0:
			out += q
		default:
			in -= q
		}
	}
	for _, u := range n.m.units {
		for i := range u.Item.Ports {
			q := -at[n.node[u.First+i]]
			switch {
			case !n.s.Graph.Boundary(u, i) || q <= 0:
			case u.Item.Kind.Supply && n.flush: // its own node gives: see below
			default:
				c.Sea += q
			}
		}
	}
	for i, l := range n.links {
		if u := n.unitOf[i]; u.Item.Kind.Supply && fixed[l.From] {
			c.House += max(flows[i], 0)
		}
	}
	if in > 0 {
		c.Open = float64(max(in-out, out-in)+lost) / float64(in)
	}
}
