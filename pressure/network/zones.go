package network

import "handtight/pressure/network/connected"

// Zones are the pressure zones of a network in one condition: the nodes that open edges
// link. They are made once for a condition; a state that shuts one edge more is answered on
// them: the zone that this cuts in two is known by the span of the nodes beyond the cut, and
// states that isolate the same things share an answer. Each piece of the walk is a zone; the
// zone of the next number is what a cut isolates, empty without one.
type Zones struct {
	*connected.Walk
	net      Network
	links    []link
	attached []int // how many links and boundaries are attached to the nodes before a place
	answers  map[question]*answer
}

// link is an edge that is neither open nor shut.
type link struct {
	edge     *Edge
	from, to int // zones, while solving; else nodes
	waste    int // of an energy-recovery pump, as from and to
	is       Kind
}

// question is all that an answer depends on, in one condition.
type question struct {
	without  int // the link that is shut, by its edge; -1 for none
	from, to int // the links' ends and the boundaries that are isolated
	fullFlow bool
}

// New makes the zones of a network. It keeps the network's lists, which must not change.
func New(n Network) *Zones {
	z := &Zones{net: n, answers: map[question]*answer{}}
	var open []connected.Edge
	for i := range n.Edges {
		e := &n.Edges[i]
		switch is := n.Kinds[i]; is {
		case Open:
			open = append(open, connected.Edge{Name: e.ID, From: e.From, To: e.To})
		case Shut:
		default:
			z.links = append(z.links, link{edge: e, from: e.From, to: e.To, waste: e.Waste, is: is})
		}
	}
	z.Walk = connected.Search(n.Nodes, open)
	z.countAttached()
	return z
}

// countAttached counts what is attached to the nodes, along the walk.
func (z *Zones) countAttached() {
	nodes := z.net.Nodes
	z.attached = make([]int, nodes+1)
	for _, l := range z.links {
		z.attached[z.Order[l.from]+1]++
		z.attached[z.Order[l.to]+1]++
		if l.is == Recovery {
			z.attached[z.Order[l.waste]+1]++
		}
	}
	for _, b := range z.net.Boundaries {
		z.attached[z.Order[b.Node]+1]++
	}
	for i := range nodes {
		z.attached[i+1] += z.attached[i]
	}
}

// zone is the zone of a node when something is isolated.
func (z *Zones) zone(node int, beyond connected.Span) int {
	if beyond.Holds(z.Order[node]) {
		return z.Pieces
	}
	return z.Piece[node]
}

// Shut answers the state in which one edge, named by its ID, is shut beside what the
// condition does; -1 for none. With fullFlow, reliefs stand where they pass the pumps' flow,
// else where they begin to open.
func (z *Zones) Shut(edge int, fullFlow bool) Field {
	beyond, bridge := z.Bridges[edge]
	if !bridge {
		beyond = connected.Empty
	}
	q := question{without: -1, from: z.attached[beyond.First], to: z.attached[beyond.Last+1], fullFlow: fullFlow}
	if q.from == q.to {
		q.from, q.to = 0, 0 // nothing but a dead end is isolated
	}
	for i := range z.links {
		if z.links[i].edge.ID == edge {
			q.without = edge
		}
	}
	a, ok := z.answers[q]
	if !ok {
		a = z.solve(q, beyond)
		z.answers[q] = a
	}
	return Field{z, beyond, a}
}

// Work is what has been gone through on these zones: the nodes once, and the links and
// boundaries for each answer.
func (z *Zones) Work() int {
	return len(z.Piece) + len(z.answers)*(len(z.links)+len(z.net.Boundaries)+z.Pieces)
}

// Field is the pressures of one state on the nodes of a network, in bar gauge.
type Field struct {
	zones  *Zones
	beyond connected.Span
	answer *answer
}

// Zones are what the field was solved on.
func (f *Field) Zones() *Zones { return f.zones }

// Zone is the pressure zone of a node: a number below [Field.Count].
func (f *Field) Zone(node int) int { return f.zones.zone(node, f.beyond) }

// Count is how many zones there are, counting one that may be empty.
func (f *Field) Count() int { return len(f.answer.discharge) }

// Bounds are the highest and the lowest pressure of a zone; infinite where nothing opens.
func (f *Field) Bounds(zone int) (high, low float64) {
	return f.answer.highest(zone), f.answer.lowest(zone)
}

// High is the highest pressure of a node; infinite where nothing opens.
func (f *Field) High(node int) float64 { return f.answer.highest(f.Zone(node)) }

// Low is the lowest pressure of a node: 0, or [Vacuum].
func (f *Field) Low(node int) float64 { return f.answer.lowest(f.Zone(node)) }

// Discharge is the least pressure at which a node's water finds a way out; infinite where
// there is none.
func (f *Field) Discharge(node int) float64 { return f.answer.discharge[f.Zone(node)] }

// Pumped is the part of the highest pressure of a node that positive pumps push.
func (f *Field) Pumped(node int) float64 { return f.answer.pumped[f.Zone(node)] }

// NoBound reports whether the pressure has no bound in some zone.
func (f *Field) NoBound() bool { return f.answer.noBound() }
