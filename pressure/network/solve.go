package network

import "handtight/pressure/quantity"

// How a state is solved: the rules are those of a quasi-static upper bound
// (friction left out), in four steps over the zones that open passages make of
// the nodes.
//
//  1. way out: the least pressure at which a zone can pass the pump's flow to
//     somewhere that takes it: 0 at an open boundary, what the feed gives at the
//     inlet of a running positive pump, the held pressure through throttles, once
//     however many there are, a relief's set on top through a relief, infinite where
//     nothing opens (discharge.go).
//  2. pushed by a positive pump: its outlet stands at the way out, else at the
//     pump's stall where that is lower, else without bound; what lies beyond takes
//     the lesser of that and its own way out.
//  3. pushed by a feed pump or a supply: its shut-off or supply pressure, passed on
//     where nothing drops it, through a relief that it opens, and held by one that
//     has a way out (push.go). Each pump adds its pressure once (ring.go).
//  4. pushed by an energy-recovery pump: what drives it, divided by the ratio of its rod, as
//     long as its waste finds a way out; else what drives it, its waste too (recovery.go).
//
// A relief of a stated capacity, and the inlet of a positive pump of a stated flow, pass no
// more than that: what the pumps deliver beyond it takes the next way out (capacity.go).
//
// Suction: a zone that a running pump draws from, and that no water can reach,
// stands at full vacuum at worst.

// Vacuum is the lowest gauge pressure there is: a full vacuum at sea level.
const Vacuum = -1 * quantity.Bar

// answer is the pressures of one state by zone.
type answer struct {
	discharge []quantity.Pressure // the least pressure of a way out
	pumped    []quantity.Pressure // pushed by a positive pump
	feed      []quantity.Pressure // pushed by a feed pump or a supply
	suctioned []bool              // a running pump draws from it
	supplied  []bool              // water reaches it
}

// highest is the highest pressure of a zone.
func (a *answer) highest(zone int) quantity.Pressure { return max(a.pumped[zone], a.feed[zone]) }

// lowest is the lowest pressure of a zone.
func (a *answer) lowest(zone int) quantity.Pressure {
	if a.suctioned[zone] && !a.supplied[zone] {
		return Vacuum
	}
	return 0
}

// noBound reports whether the pressure has no bound in some zone.
func (a *answer) noBound() bool {
	for zone := range a.discharge {
		if a.highest(zone).Unbounded() {
			return true
		}
	}
	return false
}

// solver solves one network.
type solver struct {
	duty          quantity.Pressure
	fullFlow      bool                // reliefs stand at their full-flow pressure
	takes         []bool              // zones with a boundary that takes water
	sources       []bool              // zones with a boundary that gives water
	gives         []quantity.Pressure // what a supply pushes with, by zone
	reliefCeiling []quantity.Pressure // what a relief holds the feed pressure to
	ceiling       []quantity.Pressure // a bound on the feed pressure; nil where no feed pump stands in a ring
	looped        []int               // zones behind pumps of which several stand in one ring
	opened        map[int]bool        // reliefs and regulators that the feed opens, by edge
	sized         bool                // some way out has a capacity
	spent         map[int]bool        // ways out that do not pass the flow, by edge
	returns       map[int]bool        // energy-recovery pumps whose brine comes back as it stands high, by edge
	*answer
}

// solve answers a state on the zones of its network and the links between them.
func solve(net Network, zone []int, zones int, links []link, fullFlow bool) *answer {
	s := &solver{duty: net.Duty, fullFlow: fullFlow, takes: make([]bool, zones), sources: make([]bool, zones), gives: make([]quantity.Pressure, zones), answer: &answer{
		pumped: make([]quantity.Pressure, zones), feed: make([]quantity.Pressure, zones), suctioned: make([]bool, zones), supplied: make([]bool, zones),
	}}
	for _, b := range net.Boundaries {
		at := zone[b.Node]
		s.takes[at] = s.takes[at] || b.Takes
		s.supplied[at] = s.supplied[at] || b.Gives
		s.sources[at] = s.sources[at] || b.Gives
		s.gives[at] = max(s.gives[at], b.Push)
	}
	for i := range links {
		s.sized = s.sized || links[i].capacity().Known
	}
	s.findReturns(links)
	s.push(links)
	if s.comesBack(links) {
		s.push(links) // now that it is known what stands at the inlets of the pumps
	}
	s.suction(links)
	return s.answer
}

func fill(n int, v quantity.Pressure) []quantity.Pressure {
	out := make([]quantity.Pressure, n)
	for i := range out {
		out[i] = v
	}
	return out
}

// propagate applies a rule to every link until nothing changes, forwards and backwards in
// turn. Every rule moves one way only, and a value crosses at least one link more with every
// round; round a ring it goes twice at most ([solver.bound]), so that the bound on the rounds
// is never what ends it.
func (s *solver) propagate(links []link, rule func(link) bool) {
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

// stands is where a relief stands: opening, or passing the pumps' flow. Where the latter is
// not known it is the former.
func (s *solver) stands(e *Edge) quantity.Pressure {
	switch {
	case !e.Set.Known:
		return quantity.NoBound()
	case s.fullFlow && e.FullFlow.Known:
		return e.FullFlow.Value
	}
	return e.Set.Value
}

// pass hands pressure on through a link.
func (s *solver) pass(l link) bool {
	u, w := l.from, l.to
	switch l.is {
	case OneWay:
		a := raise(&s.pumped[w], s.passed(u, w))
		return raise(&s.feed[w], s.given(s.feed[u], w)) || a
	case PositivePump:
		return raise(&s.feed[w], s.given(s.feed[u], w))
	case FeedPump:
		a := raise(&s.pumped[w], s.passed(u, w))
		return raise(&s.feed[w], s.given(s.feed[u]+l.head(), w)) || a
	case Throttle:
		a, b := s.drop(u, w), s.drop(w, u)
		return a || b
	case Membrane:
		return s.drop(u, w)
	case Relief:
		return s.lift(l)
	case Regulator:
		return s.regulate(l)
	case Recovery:
		a := raise(&s.pumped[w], s.passed(u, w)) // it lets water on, driven or not
		return raise(&s.feed[w], s.given(s.feed[u], w)) || a
	}
	return false
}

// lift hands on what comes through a relief that is opened: all that stands before it, up
// to what the zone behind it finds its way out at.
func (s *solver) lift(l link) bool {
	if !l.edge.Set.Known {
		return false
	}
	set := l.edge.Set.Value
	from, to := l.from, l.to
	a := s.pumped[from] >= set && raise(&s.pumped[to], s.passed(from, to))
	return s.opened[l.edge.ID] && raise(&s.feed[to], s.given(min(s.feed[from], s.discharge[to]), to)) || a
}

// regulate hands on what a regulator lets through once it has opened.
func (s *solver) regulate(l link) bool {
	if !l.edge.Holds.Known {
		return s.drop(l.from, l.to)
	}
	set := l.edge.Holds.Value
	a := s.pumped[l.from] >= set && raise(&s.pumped[l.to], s.passed(l.from, l.to))
	return s.opened[l.edge.ID] && raise(&s.feed[l.to], s.given(min(s.feed[l.from], s.discharge[l.to]), l.to)) || a
}

// drop hands on what a throttle or a membrane does: no more than what the zone behind
// it finds its way out at, so nothing where that is open.
func (s *solver) drop(from, to int) bool {
	a := raise(&s.pumped[to], s.passed(from, to))
	return raise(&s.feed[to], s.given(min(s.feed[from], s.discharge[to]), to)) || a
}

// passed is what of a zone's pump pressure reaches the next: no more than lets
// the next pass it on.
func (s *solver) passed(from, to int) quantity.Pressure { return min(s.pumped[from], s.discharge[to]) }

func set(v *bool) bool {
	*v = true
	return true
}

func lower(v *quantity.Pressure, to quantity.Pressure) bool {
	if to < *v {
		*v = to
		return true
	}
	return false
}

func raise(v *quantity.Pressure, to quantity.Pressure) bool {
	if to > *v {
		*v = to
		return true
	}
	return false
}
