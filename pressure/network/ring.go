package network

import (
	"slices"

	"gonum.org/v1/gonum/graph"
	"gonum.org/v1/gonum/graph/iterator"
	"gonum.org/v1/gonum/graph/topo"

	"handtight/pressure/quantity"
)

// Water that goes round through a feed pump would gain its pressure again at every
// turn. Each pump counts once: a ring, that is zones that feed pressure comes back to,
// sees at most what comes to it from outside and the pressure of each pump in it.

// arc is one way in which feed pressure goes from zone to zone.
type arc struct {
	from, to int
	head     quantity.Pressure
	drops    bool // no further than what the next zone finds its way out at
}

// arcs lists what hands feed pressure on.
func (s *solver) arcs(links []link) []arc {
	out := make([]arc, 0, len(links)+1)
	add := func(from, to int, l *link, drops bool) {
		if !drops || s.discharge[to] > 0 {
			out = append(out, arc{from, to, l.head(), drops})
		}
	}
	for i := range links {
		l := &links[i]
		switch l.is {
		case Relief:
			if s.opened[l.edge.ID] {
				add(l.from, l.to, l, true)
			}
		case Throttle:
			add(l.from, l.to, l, true)
			add(l.to, l.from, l, true)
		case Regulator:
			if !l.edge.Holds.Known || s.opened[l.edge.ID] {
				add(l.from, l.to, l, true)
			}
		default:
			add(l.from, l.to, l, l.is == Membrane)
		}
	}
	return out
}

// bound says what each zone can see at most, where a feed pump stands in a ring; and where
// several stand in one, starts their outlets there, since the pressures would only creep up
// to it, a pump at a time.
func (s *solver) bound(links []link) {
	s.ceiling, s.looped = nil, nil
	arcs := s.arcs(links)
	pumps := 0
	for _, a := range arcs {
		if a.head > 0 {
			pumps++
		}
	}
	if pumps == 0 || pumps <= fewPumps && !s.ringed(arcs) {
		return
	}
	g := newRings(len(s.discharge), arcs)
	heads, inside := make([]quantity.Pressure, g.count), make([]int, g.count)
	for _, a := range arcs {
		if a.head > 0 && g.of[a.from] == g.of[a.to] {
			heads[g.of[a.from]] += a.head
			inside[g.of[a.from]]++
		}
	}
	comes := s.comes(arcs, g, heads)
	s.ceiling = make([]quantity.Pressure, len(s.discharge))
	for z := range s.ceiling {
		s.ceiling[z] = comes[z] + heads[g.of[z]]
	}
	for _, a := range arcs {
		if ring := g.of[a.to]; a.head > 0 && g.of[a.from] == ring && inside[ring] > 1 {
			s.looped = append(s.looped, a.to)
		}
	}
}

// fewPumps is how many feed pumps are looked at one by one for a ring: more are searched
// together.
const fewPumps = 2

// comes is what comes to each zone without what the pumps of its own ring add.
func (s *solver) comes(arcs []arc, g *rings, heads []quantity.Pressure) []quantity.Pressure {
	comes := make([]quantity.Pressure, len(s.discharge))
	for z, push := range s.gives {
		comes[z] = s.given(push, z)
	}
	for changed := true; changed; {
		changed = false
		for _, z := range g.order {
			for _, i := range g.leaving[z] {
				a := arcs[i]
				push := comes[a.from]
				if here := g.of[a.from]; here != g.of[a.to] {
					push += heads[here] + a.head
				}
				if a.drops {
					push = min(push, s.discharge[a.to])
				}
				changed = raise(&comes[a.to], s.given(push, a.to)) || changed
			}
		}
	}
	return comes
}

// ringed reports whether the water of some feed pump comes back to it: few builds have
// such a ring, and the others are spared the search for all of them.
func (s *solver) ringed(arcs []arc) bool {
	reached := make([]bool, len(s.discharge))
	for _, pump := range arcs {
		if pump.head == 0 {
			continue
		}
		clear(reached)
		reached[pump.to] = true
		for grew := true; grew && !reached[pump.from]; {
			grew = false
			for _, a := range arcs {
				if reached[a.from] && !reached[a.to] {
					reached[a.to], grew = true, true
				}
			}
		}
		if reached[pump.from] {
			return true
		}
	}
	return false
}

// rings are the strongly connected zones of the arcs.
type rings struct {
	of      []int // ring of each zone
	count   int
	order   []int   // zones, so that an arc leads to the same ring or a later one
	leaving [][]int // arcs of each zone
}

// newRings finds the rings by Tarjan's method, which lists each before those that lead to it.
func newRings(zones int, arcs []arc) *rings {
	g := &rings{of: make([]int, zones), leaving: make([][]int, zones)}
	d := digraph{nodes: make([]graph.Node, zones), from: make([][]graph.Node, zones)}
	for z := range zones {
		d.nodes[z] = node(z)
	}
	for i, a := range arcs {
		g.leaving[a.from] = append(g.leaving[a.from], i)
		d.from[a.from] = append(d.from[a.from], d.nodes[a.to])
	}
	for _, ring := range slices.Backward(topo.TarjanSCC(d)) {
		for _, z := range slices.Backward(ring) { // as they were found, so that a value seldom goes round twice
			g.of[z.ID()] = g.count
			g.order = append(g.order, int(z.ID()))
		}
		g.count++
	}
	return g
}

// digraph is the arcs as the library's search asks for them: by nodes, and by what each leads to.
type digraph struct {
	graph.Directed // the rest, which it never asks for
	nodes          []graph.Node
	from           [][]graph.Node
}

// node is the number of a zone.
type node int64

func (n node) ID() int64 { return int64(n) }

func (d digraph) Nodes() graph.Nodes          { return iterator.NewOrderedNodes(d.nodes) }
func (d digraph) From(zone int64) graph.Nodes { return iterator.NewOrderedNodes(d.from[zone]) }
