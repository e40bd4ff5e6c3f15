package bom

import (
	"math"

	"handtight/catalog"
)

// How a state is solved: the rules are those of a quasi-static upper bound
// (friction left out), in three steps over the zones that open passages make of
// the cells.
//
//  1. way out: the least pressure at which a zone can pass the pump's flow to
//     somewhere that takes it: 0 at an open boundary, what the feed gives at the
//     inlet of a running positive pump, the held pressure through throttles, once
//     however many there are, a relief's set on top through a relief, infinite where
//     nothing opens (solve_out.go).
//  2. pushed by a positive pump: its outlet stands at the way out, else at the
//     pump's stall where that is lower, else without bound; what lies beyond takes
//     the lesser of that and its own way out.
//  3. pushed by a feed pump or a supply: its shut-off or supply pressure, passed on
//     where nothing drops it, through a relief that it opens, and held by one that
//     has a way out (solve_push.go). Each pump adds its pressure once (solve_ring.go).
//
// Suction: a zone that a running pump draws from, and that no water can reach,
// stands at full vacuum at worst.

// vacuum is the lowest gauge pressure there is, in bar: a full vacuum at sea level.
const vacuum = -1.0

// answer is the pressures of one state by zone, the zone that is cut off last.
type answer struct {
	out   []float64
	pos   []float64 // pushed by a positive pump
	feed  []float64 // pushed by a feed pump or a supply
	drawn []bool
	fed   []bool
}

// highest is the highest pressure of a zone.
func (a *answer) highest(zone int) float64 { return max(a.pos[zone], a.feed[zone]) }

// lowest is the lowest pressure of a zone.
func (a *answer) lowest(zone int) float64 {
	if a.drawn[zone] && !a.fed[zone] {
		return vacuum
	}
	return 0
}

// noBound reports whether the pressure has no bound in some zone.
func (a *answer) noBound() bool {
	for zone := range a.out {
		if math.IsInf(a.highest(zone), 1) {
			return true
		}
	}
	return false
}

// solver solves one part of the build in one condition, with one passage shut.
type solver struct {
	duty     float64
	fullFlow bool         // reliefs stand at their full-flow pressure
	takes    []bool       // zones with a boundary that takes water
	gives    []float64    // what a supply pushes with, by zone
	held     []float64    // what a relief holds the feed pressure to
	most     []float64    // a bound on the feed pressure; nil where no feed pump stands in a ring
	round    []int        // zones behind pumps of which several stand in one ring
	lifted   map[int]bool // reliefs that the feed opens, by edge
	*answer
}

// solve answers a question: the links are those between zones.
func (z *zoning) solve(q question, cut cutOff) *answer {
	n := z.pieces + 1
	s := &solver{duty: z.duty, fullFlow: q.fullFlow, takes: make([]bool, n), gives: make([]float64, n), answer: &answer{
		pos: make([]float64, n), feed: make([]float64, n), drawn: make([]bool, n), fed: make([]bool, n),
	}}
	for _, e := range z.ends {
		at := z.zone(e.cell, cut)
		s.takes[at] = s.takes[at] || e.takes
		s.fed[at] = s.fed[at] || e.gives
		s.gives[at] = max(s.gives[at], e.push)
	}
	links := make([]link, 0, len(z.links))
	for _, l := range z.links {
		l.from, l.to = z.zone(l.from, cut), z.zone(l.to, cut)
		if l.edge != q.without && l.from != l.to {
			links = append(links, l)
		}
	}
	s.push(links)
	if s.comesBack(links) {
		s.push(links) // now that it is known what stands at the inlets of the pumps
	}
	s.suction(links)
	return s.answer
}

func fill(n int, v float64) []float64 {
	out := make([]float64, n)
	for i := range out {
		out[i] = v
	}
	return out
}

// settle applies a rule to every link until nothing changes, forwards and backwards in
// turn. Every rule moves one way only, and a value crosses at least one link more with every
// round; round a ring it goes twice at most ([solver.bound]), so that the bound on the rounds
// is never what ends it.
func (s *solver) settle(links []link, rule func(link) bool) {
	for round := range 3*len(links) + 3 {
		changed := false
		for i := range links {
			if round%2 == 1 {
				i = len(links) - 1 - i
			}
			changed = rule(links[i]) || changed
		}
		if !changed {
			return
		}
	}
}

// set is where a relief stands: opening, or passing the pump's whole flow.
func (s *solver) set(u *Unit) float64 {
	if u.Item.Set == nil {
		return math.Inf(1)
	}
	if s.fullFlow {
		return u.Item.fullFlow()
	}
	return u.Item.Set.Bar()
}

// FullFlowFactor is where a relief stands passing the pump's whole flow, as a
// multiple of its set pressure, when its data sheet does not say (a judgement).
const FullFlowFactor = 1.1

func (i *Item) fullFlow() float64 {
	if i.FullFlow != nil {
		return i.FullFlow.Bar()
	}
	return FullFlowFactor * i.Set.Bar()
}

// pass hands pressure on through a link.
func (s *solver) pass(l link) bool {
	u, w := l.from, l.to
	switch l.is {
	case catalog.OneWay:
		a := raise(&s.pos[w], s.passed(u, w))
		return raise(&s.feed[w], s.given(s.feed[u], w)) || a
	case catalog.PositivePump:
		return raise(&s.feed[w], s.given(s.feed[u], w))
	case catalog.FeedPump:
		a := raise(&s.pos[w], s.passed(u, w))
		return raise(&s.feed[w], s.given(s.feed[u]+l.head(), w)) || a
	case catalog.Throttle:
		a, b := s.drop(u, w), s.drop(w, u)
		return a || b
	case catalog.Membrane:
		return s.drop(u, w)
	case catalog.Relief:
		return s.lift(l)
	}
	return false
}

// lift hands on what comes through a relief that is opened: all that stands before it, up
// to what the zone behind it finds its way out at.
func (s *solver) lift(l link) bool {
	set := l.unit.Item.Set
	if set == nil {
		return false
	}
	from, to := l.from, l.to
	a := s.pos[from] >= set.Bar() && raise(&s.pos[to], s.passed(from, to))
	return s.lifted[l.edge] && raise(&s.feed[to], s.given(min(s.feed[from], s.out[to]), to)) || a
}

// drop hands on what a throttle or a membrane does: no more than what the zone behind
// it finds its way out at, so nothing where that is open.
func (s *solver) drop(from, to int) bool {
	a := raise(&s.pos[to], s.passed(from, to))
	return raise(&s.feed[to], s.given(min(s.feed[from], s.out[to]), to)) || a
}

// passed is what of a zone's pump pressure reaches the next: no more than lets
// the next pass it on.
func (s *solver) passed(from, to int) float64 { return min(s.pos[from], s.out[to]) }

// suction marks zones that water reaches, and zones that a running pump draws from,
// itself or through a zone that it has emptied.
func (s *solver) suction(links []link) {
	for _, l := range links {
		if l.is == catalog.PositivePump || l.is == catalog.FeedPump {
			s.drawn[l.from] = true
		}
	}
	s.settle(links, func(l link) bool { return forward(l.is) && !s.fed[l.to] && s.fed[l.from] && set(&s.fed[l.to]) })
	s.settle(links, func(l link) bool {
		starved := s.drawn[l.to] && !s.fed[l.to]
		return forward(l.is) && starved && !s.drawn[l.from] && set(&s.drawn[l.from])
	})
}

func set(v *bool) bool {
	*v = true
	return true
}

func forward(is catalog.Flow) bool {
	return is == catalog.OneWay || is == catalog.FeedPump || is == catalog.PositivePump || is == catalog.Throttle
}

func lower(v *float64, to float64) bool {
	if to < *v {
		*v = to
		return true
	}
	return false
}

func raise(v *float64, to float64) bool {
	if to > *v {
		*v = to
		return true
	}
	return false
}
