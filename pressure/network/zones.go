package network

import (
	"handtight/pressure/network/connected"
	"handtight/pressure/quantity"
)

// link is an edge that is neither open nor shut, between two zones.
type link struct {
	edge     *Edge
	from, to int
	waste    int // of an energy-recovery pump, as from and to
	brine    int // of an energy-recovery pump
	is       Kind
}

// Field is the pressures of one state: of the pressure zones of a network, the
// nodes that open edges link, and so of its nodes.
type Field struct {
	zone   []int // of each node
	answer *answer
}

// Solve answers one state: a network in one condition. With fullFlow, reliefs stand where
// they pass the pumps' flow, else where they begin to open.
func Solve(n Network, fullFlow bool) Field {
	sets := connected.NewSets(n.Nodes)
	for i := range n.Edges {
		if n.Kinds[i] == Open {
			sets.Join(n.Edges[i].From, n.Edges[i].To)
		}
	}
	zone, zones := sets.Number()
	var links []link
	for i := range n.Edges {
		switch e, is := &n.Edges[i], n.Kinds[i]; {
		case is == Open, is == Shut, zone[e.From] == zone[e.To]:
		default:
			links = append(links, link{edge: e, from: zone[e.From], to: zone[e.To], waste: zone[e.Waste], brine: zone[e.Brine], is: is})
		}
	}
	return Field{zone, solve(n, zone, zones, links, fullFlow)}
}

// Zone is the pressure zone of a node: a number below [Field.Count].
func (f *Field) Zone(node int) int { return f.zone[node] }

// Count is how many zones there are.
func (f *Field) Count() int { return len(f.answer.discharge) }

// Bounds are the highest and the lowest pressure of a zone; infinite where nothing opens.
func (f *Field) Bounds(zone int) (high, low quantity.Pressure) {
	return f.answer.highest(zone), f.answer.lowest(zone)
}

// High is the highest pressure of a node; infinite where nothing opens.
func (f *Field) High(node int) quantity.Pressure { return f.answer.highest(f.Zone(node)) }

// Low is the lowest pressure of a node: 0, or [Vacuum].
func (f *Field) Low(node int) quantity.Pressure { return f.answer.lowest(f.Zone(node)) }

// Discharge is the least pressure at which a node's water finds a way out; infinite where
// there is none.
func (f *Field) Discharge(node int) quantity.Pressure { return f.answer.discharge[f.Zone(node)] }

// Pumped is the part of the highest pressure of a node that positive pumps push.
func (f *Field) Pumped(node int) quantity.Pressure { return f.answer.pumped[f.Zone(node)] }

// NoBound reports whether the pressure has no bound in some zone.
func (f *Field) NoBound() bool { return f.answer.noBound() }
