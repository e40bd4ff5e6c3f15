package circuit

import (
	"handtight/bom/build"
	"handtight/bom/graph"
	"handtight/catalog"
	"handtight/pressure/network"
	"handtight/pressure/quantity"
)

// Condition is what is done, or has failed, in a state, beside the one passage that it
// shuts.
type Condition struct {
	Shut      map[int]bool // passages that are shut as well
	NoReliefs bool         // every relief has failed shut
	Stopped   bool         // the positive pumps stand still
	Still     bool         // the feed pumps stand still
	Flush     bool         // flush valves are open
	Opened    *graph.Unit  // the valve that stands open though it should be shut
	Between   *graph.Unit  // the selector that stands between its ways
	Swapped   *graph.Unit  // the selector that stands at its second way
	Dry       *graph.Unit  // the intake that lets no water in
}

// flow is what an edge does in the condition.
func (c *Condition) flow(i int, e *Link) catalog.Flow {
	if c.Shut[i] {
		return catalog.Shut
	}
	switch {
	case c.NoReliefs && e.Is == catalog.Relief:
		return catalog.Shut
	case e.Unit.Item.Kind.Selector:
		return c.selector(e)
	case c.Opened == e.Unit:
		return e.Is
	case e.ForFlush():
		return openIf(c.Flush)
	case e.Unit.Item.Normal == "shut":
		return catalog.Shut
	case e.Is == catalog.PositivePump && c.Stopped:
		return catalog.OneWay
	case e.Is == catalog.FeedPump && c.Still && e.Unit.Item.Type == "centrifugal":
		return catalog.Open
	case e.Is == catalog.FeedPump && c.Still:
		return catalog.OneWay
	}
	return e.Is
}

func openIf(yes bool) catalog.Flow {
	if yes {
		return catalog.Open
	}
	return catalog.Shut
}

// selector is the state of one of a selector's ways.
func (c *Condition) selector(e *Link) catalog.Flow {
	stands := 0
	if c.Swapped == e.Unit {
		stands = 1
	}
	if c.Between == e.Unit {
		return openIf(e.Unit.Item.Between == "open")
	}
	return openIf(e.Position == stands)
}

// makeEdges makes the edges of each part's network: what of them does not change with the
// condition.
func (c *Circuit) makeEdges() {
	c.edges = make([][]network.Edge, len(c.Nets))
	for part, links := range c.LinksOf {
		c.edges[part] = make([]network.Edge, len(links))
		for k, i := range links {
			e := &c.Links[i]
			it := e.Unit.Item
			c.edges[part][k] = network.Edge{
				ID: i, From: c.Local[e.From], To: c.Local[e.To],
				Shutoff: network.Known(it.Shutoff), Stall: network.Known(it.Stall), Set: network.Known(it.Set), FullFlow: fullFlow(it),
				Flow: network.Known(it.Flow),
			}
			c.edges[part][k].Waste, c.edges[part][k].Brine = c.edges[part][k].From, c.edges[part][k].From
			switch e.Is {
			case catalog.Relief:
				c.edges[part][k].Capacity = network.Known(it.Flow)
			case catalog.Regulator:
				c.edges[part][k].Holds = network.Known(it.Set)
			case catalog.Recovery:
				if it.Process.Ratio != nil {
					c.edges[part][k].Ratio = network.Figure[float64]{Value: it.Process.Ratio.Fraction(), Known: true}
				}
				if waste := it.PortIndex("waste"); waste >= 0 {
					c.edges[part][k].Waste = c.Local[c.JunctionOf[e.Unit.First+waste]]
				}
				if brine := it.PortIndex("brine"); brine >= 0 {
					c.edges[part][k].Brine = c.Local[c.JunctionOf[e.Unit.First+brine]]
				}
			}
		}
	}
}

// FullFlowFactor is where a relief stands passing the pump's whole flow, as a
// multiple of its set pressure, when its data sheet does not say (a judgement).
const FullFlowFactor = 1.1

func fullFlow(i *build.Item) network.Figure[quantity.Pressure] {
	if i.FullFlow == nil && i.Set != nil {
		return network.Figure[quantity.Pressure]{Value: FullFlowFactor * *i.Set, Known: true}
	}
	return network.Known(i.FullFlow)
}

// kinds are what passages are in a network.
var kinds = [...]network.Kind{
	catalog.Open: network.Open, catalog.OneWay: network.OneWay, catalog.Shut: network.Shut, catalog.Throttle: network.Throttle,
	catalog.Membrane: network.Membrane, catalog.Relief: network.Relief, catalog.FeedPump: network.FeedPump, catalog.PositivePump: network.PositivePump,
	catalog.Regulator: network.Regulator, catalog.Recovery: network.Recovery, catalog.Return: network.Shut, catalog.Unload: network.Shut,
}

// Network is one part of the build in one condition, for the solver. Nodes are numbered as
// [Circuit.Local] does, edges as [Circuit.Links].
func (c *Circuit) Network(part int, cond *Condition) network.Network {
	n := network.Network{Nodes: len(c.Nets[part]), Edges: c.edges[part], Kinds: make([]network.Kind, len(c.edges[part]))}
	if c.Graph.Build.Duty.Pressure != nil {
		n.Duty = *c.Graph.Build.Duty.Pressure
	}
	for k, i := range c.LinksOf[part] {
		n.Kinds[k] = kinds[cond.flow(i, &c.Links[i])]
	}
	for i, junction := range c.Nets[part] {
		if c.takes[junction] || c.gives[junction] || c.Push[junction] > 0 {
			n.Boundaries = append(n.Boundaries, network.Boundary{
				Node: i, Takes: c.takes[junction], Gives: c.givesBeside(junction, cond.Dry), Push: c.Push[junction],
			})
		}
	}
	return n
}
