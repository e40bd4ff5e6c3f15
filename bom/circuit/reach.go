package circuit

import (
	"slices"

	"handtight/bom/graph"
	"handtight/catalog"
)

// Reached is the junctions of one part of the build that water reaches from one of them.
type Reached struct {
	circuit *Circuit
	Net     int
	Seen    []bool // by [Circuit.Local]
}

// Junction reports whether a junction is reached.
func (r *Reached) Junction(junction int) bool {
	return r.circuit.NetOf[junction] == r.Net && r.Seen[r.circuit.Local[junction]]
}

// Port reports whether a port is reached.
func (r *Reached) Port(port int) bool { return r.Junction(r.circuit.JunctionOf[port]) }

// Reach follows water from a junction through the edges that let it pass; back says that an
// edge is taken against its direction. It looks at the connected part of the build only,
// so that many plants cost no more than their sum.
func (s *Circuit) Reach(start int, pass func(e *Link, back bool) bool) *Reached {
	r := &Reached{circuit: s, Net: s.NetOf[start]}
	r.Seen = make([]bool, len(s.Nets[r.Net]))
	r.Seen[s.Local[start]] = true
	for queue := []int{start}; len(queue) > 0; queue = queue[1:] {
		junction := queue[0]
		for _, i := range s.at.At(junction) {
			e := &s.Links[i]
			next, back := e.To, e.From != junction
			if back {
				next = e.From
			}
			if seen := &r.Seen[s.Local[next]]; pass(e, back) && !*seen {
				*seen = true
				queue = append(queue, next)
			}
		}
	}
	return r
}

// Flows reports whether water flows through an edge without passing a membrane, a
// throttle, a relief or a pump: through what stays open whatever people do, or also
// through what a person can shut.
func Flows(e *Link, back, closable bool) bool {
	return (closable || !e.Closable) && (e.Is == catalog.Open || e.Is == catalog.OneWay && !back)
}

// Reaches reports whether water can flow from one port to another without passing a
// membrane, a throttle, a relief or a pump: through what stays open whatever people do, or
// also through what a person can shut.
func (s *Circuit) Reaches(from, to int, closable bool) bool {
	start, goal := s.JunctionOf[from], s.JunctionOf[to]
	if s.NetOf[start] != s.NetOf[goal] {
		return false
	}
	return s.Reach(start, func(e *Link, back bool) bool { return Flows(e, back, closable) }).Junction(goal)
}

// Cuts lists the units that a person can shut and that keep one port's water from another
// when they are: those without which [Circuit.Reaches] does not hold. Where several stand
// side by side none of them cuts alone, and all are named.
func (s *Circuit) Cuts(from, to int) []*graph.Unit {
	start, goal := s.JunctionOf[from], s.JunctionOf[to]
	var alone, all []*graph.Unit
	for _, i := range s.LinksOf[s.NetOf[start]] {
		u := s.Links[i].Unit
		if !s.Links[i].Closable || slices.Contains(all, u) {
			continue
		}
		all = append(all, u)
		if !s.Reach(start, func(e *Link, back bool) bool { return e.Unit != u && Flows(e, back, true) }).Junction(goal) {
			alone = append(alone, u)
		}
	}
	if len(alone) == 0 {
		return all
	}
	return alone
}

// Reliefs are the relief valves on the outlet of a positive pump: near, with nothing
// between that shuts, and far, behind something that does.
type Reliefs struct{ Near, Far []*graph.Unit }

// ReliefsOf lists the relief valves of a pump.
func (s *Circuit) ReliefsOf(pump *graph.Unit) Reliefs { return s.reliefs[pump] }

// ReliefsAround lists what opens as a relief in the connected part of the build that a port stands
// in.
func (s *Circuit) ReliefsAround(port int) []*graph.Unit {
	var out []*graph.Unit
	for _, i := range s.LinksOf[s.NetOf[s.JunctionOf[port]]] {
		if e := &s.Links[i]; e.Is == catalog.Relief && !slices.Contains(out, e.Unit) {
			out = append(out, e.Unit)
		}
	}
	return out
}

// gatherReliefs finds the relief valves of each pump.
func (s *Circuit) gatherReliefs() {
	s.reliefs = map[*graph.Unit]Reliefs{}
	for _, wires := range s.LinksOf {
		var pumps, valves []*graph.Unit
		for _, i := range wires {
			switch e := &s.Links[i]; e.Is {
			case catalog.PositivePump:
				pumps = append(pumps, e.Unit)
			case catalog.Relief:
				valves = append(valves, e.Unit)
			}
		}
		if len(pumps) == 0 || len(valves) == 0 {
			continue
		}
		for _, p := range pumps {
			_, out := PumpEnds(p)
			start := s.JunctionOf[p.First+out]
			near := s.Reach(start, func(e *Link, back bool) bool { return Flows(e, back, false) })
			far := s.Reach(start, func(e *Link, back bool) bool { return Flows(e, back, true) })
			var r Reliefs
			for _, v := range valves {
				switch in := v.First + v.Item.PortIndex("in"); {
				case near.Port(in):
					r.Near = append(r.Near, v)
				case far.Port(in):
					r.Far = append(r.Far, v)
				}
			}
			s.reliefs[p] = r
		}
	}
}
