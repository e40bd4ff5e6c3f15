package network

// Water that goes round through a feed pump would gain its pressure again at every
// turn. Each pump counts once: a ring, that is zones that feed pressure comes back to,
// sees at most what comes to it from outside and the pressure of each pump in it.

// arc is one way in which feed pressure goes from zone to zone.
type arc struct {
	from, to int
	head     float64
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
			add(l.from, l.to, l, !l.edge.Holds.Known)
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
	heads, inside := make([]float64, g.count), make([]int, g.count)
	for _, a := range arcs {
		if a.head > 0 && g.of[a.from] == g.of[a.to] {
			heads[g.of[a.from]] += a.head
			inside[g.of[a.from]]++
		}
	}
	comes := s.comes(arcs, g, heads)
	s.ceiling = make([]float64, len(s.discharge))
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
func (s *solver) comes(arcs []arc, g *rings, heads []float64) []float64 {
	comes := make([]float64, len(s.discharge))
	for z, bar := range s.gives {
		comes[z] = s.given(bar, z)
	}
	for changed := true; changed; {
		changed = false
		for _, z := range g.order {
			for _, i := range g.leaving[z] {
				a := arcs[i]
				bar := comes[a.from]
				if here := g.of[a.from]; here != g.of[a.to] {
					bar += heads[here] + a.head
				}
				if a.drops {
					bar = min(bar, s.discharge[a.to])
				}
				changed = raise(&comes[a.to], s.given(bar, a.to)) || changed
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

// newRings finds the rings: zones by the time they are left, then what reaches each
// backwards (Kosaraju and Sharir's method, without recursion).
func newRings(zones int, arcs []arc) *rings {
	g := &rings{of: make([]int, zones), leaving: make([][]int, zones)}
	entering := make([][]int, zones)
	for i, a := range arcs {
		g.leaving[a.from] = append(g.leaving[a.from], i)
		entering[a.to] = append(entering[a.to], i)
	}
	seen := make([]bool, zones)
	var left []int
	for z := range zones {
		left = append(left, visitFrom(z, seen, g.leaving, func(i int) int { return arcs[i].to })...)
	}
	seen = make([]bool, zones)
	for i := zones - 1; i >= 0; i-- {
		members := visitFrom(left[i], seen, entering, func(i int) int { return arcs[i].from })
		for _, z := range members {
			g.of[z] = g.count
		}
		if len(members) > 0 {
			g.count++
			g.order = append(g.order, members...)
		}
	}
	return g
}

// visitFrom lists the zones that are newly reached from one, each after all that it
// leads to.
func visitFrom(start int, seen []bool, arcs [][]int, end func(int) int) []int {
	if seen[start] {
		return nil
	}
	seen[start] = true
	var out []int
	type frame struct{ zone, next int }
	stack := []frame{{start, 0}}
	for len(stack) > 0 {
		top := &stack[len(stack)-1]
		if top.next == len(arcs[top.zone]) {
			out = append(out, top.zone)
			stack = stack[:len(stack)-1]
			continue
		}
		to := end(arcs[top.zone][top.next])
		top.next++
		if !seen[to] {
			seen[to] = true
			stack = append(stack, frame{to, 0})
		}
	}
	return out
}
