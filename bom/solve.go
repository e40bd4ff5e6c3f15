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
//     somewhere that takes it: 0 at an open boundary, the held pressure through the
//     throttle, a relief's set through a relief, infinite where nothing opens.
//  2. pushed by a positive pump: its outlet stands at the way out, else at the
//     pump's stall where that is lower, else without bound; what lies beyond takes
//     the lesser of that and its own way out.
//  3. pushed by a feed pump or a supply: its shut-off or supply pressure, passed on
//     where nothing drops it, and held by a relief. Each pump adds its pressure once.
//
// Suction: a zone that a running pump draws from, and that no water can reach,
// stands at full vacuum at worst.

// vacuum is the lowest gauge pressure there is, in bar: a full vacuum at sea level.
const vacuum = -1.0

// condition is what is done, or has failed, in a state.
type condition struct {
	shut     map[int]bool // edges that are shut by the act or failure
	stopped  bool         // the positive pumps stand still
	still    bool         // the feed pumps stand still
	flush    bool         // flush valves are open
	between  *Unit        // the selector that stands between its ways
	swapped  *Unit        // the selector that stands at its second way
	fullFlow bool         // reliefs stand at their full-flow pressure
}

// field is the pressures of one state on the cells of one part of the build.
type field struct {
	zone  []int // zone of each cell of the part
	out   []float64
	pos   []float64 // pushed by a positive pump
	feed  []float64 // pushed by a feed pump or a supply
	drawn []bool
	fed   []bool
}

// solver solves one part of the build in one condition.
type solver struct {
	c     *cells
	duty  float64
	cond  *condition
	local map[int]int // cell to index in the part
	cells []int
	wires []int
	gives []float64 // what a supply pushes with, by zone
	held  []float64 // what a relief holds the feed pressure to
	most  []float64 // a bound on the feed pressure; nil where no feed pump stands in a ring
	field
}

// flow is what an edge does in the condition, and whether its pump runs.
func (s *solver) flow(i int) (is catalog.Flow, runs bool) {
	e := &s.c.edges[i]
	if s.cond.shut[i] {
		return catalog.Shut, false
	}
	k := e.unit.Item.Kind
	switch {
	case k.Selector:
		return s.selector(e), false
	case k.Flush && e.unit.Item.Normal != "open":
		return openIf(s.cond.flush), false
	case e.unit.Item.Normal == "shut":
		return catalog.Shut, false
	case e.is == catalog.PositivePump && s.cond.stopped:
		return catalog.OneWay, false
	case e.is == catalog.PositivePump:
		return e.is, true
	case e.is == catalog.FeedPump && s.cond.still && e.unit.Item.Type == "centrifugal":
		return catalog.Open, false
	case e.is == catalog.FeedPump && s.cond.still:
		return catalog.OneWay, false
	case e.is == catalog.FeedPump:
		return e.is, true
	}
	return e.is, false
}

func openIf(yes bool) catalog.Flow {
	if yes {
		return catalog.Open
	}
	return catalog.Shut
}

// selector is the state of one of a selector's ways.
func (s *solver) selector(e *edge) catalog.Flow {
	stands := 0
	if s.cond.swapped == e.unit {
		stands = 1
	}
	if s.cond.between == e.unit {
		return openIf(e.unit.Item.Between == "open")
	}
	return openIf(e.way == stands)
}

// link is an edge between zones in a condition.
type link struct {
	from, to int
	is       catalog.Flow
	unit     *Unit
}

func (s *solver) solve() {
	zones, links := s.contract()
	s.out = fill(zones, math.Inf(1))
	s.gives = make([]float64, zones)
	s.drawn, s.fed = make([]bool, zones), make([]bool, zones)
	for i, cell := range s.cells {
		z := s.zone[i]
		if s.c.takes[cell] {
			s.out[z] = 0
		}
		s.fed[z] = s.fed[z] || s.c.gives[cell]
		s.gives[z] = max(s.gives[z], s.c.push[cell])
	}
	for _, l := range links {
		if l.is == catalog.PositivePump {
			s.out[l.from] = 0
		}
	}
	s.settle(links, s.wayOut)
	s.hold(links)
	s.bound(links)
	s.push(links)
	s.suction(links)
}

func fill(n int, v float64) []float64 {
	out := make([]float64, n)
	for i := range out {
		out[i] = v
	}
	return out
}

// contract makes zones of the cells by the passages that are open.
func (s *solver) contract() (zones int, links []link) {
	sets := newSets(len(s.cells))
	for _, i := range s.wires {
		if is, _ := s.flow(i); is == catalog.Open {
			sets.join(s.local[s.c.edges[i].from], s.local[s.c.edges[i].to])
		}
	}
	s.zone, zones = sets.number()
	for _, i := range s.wires {
		e := &s.c.edges[i]
		is, _ := s.flow(i)
		from, to := s.zone[s.local[e.from]], s.zone[s.local[e.to]]
		if is == catalog.Open || is == catalog.Shut || from == to {
			continue
		}
		links = append(links, link{from: from, to: to, is: is, unit: e.unit})
	}
	return zones, links
}

// settle applies a rule to every link until nothing changes. Every rule moves one way
// only, and a value crosses at least one link more with every round, so that the bound
// on the rounds is never what ends it.
func (s *solver) settle(links []link, rule func(link) bool) {
	for range len(links) + 2 {
		changed := false
		for _, l := range links {
			changed = rule(l) || changed
		}
		if !changed {
			return
		}
	}
}

// wayOut lowers the pressure at which the zones of a link find a way out.
func (s *solver) wayOut(l link) bool {
	switch l.is {
	case catalog.OneWay, catalog.FeedPump:
		return lower(&s.out[l.from], s.out[l.to])
	case catalog.Throttle:
		a := lower(&s.out[l.from], s.duty+s.out[l.to])
		return lower(&s.out[l.to], s.duty+s.out[l.from]) || a
	case catalog.Relief:
		return lower(&s.out[l.from], s.set(l.unit)+s.out[l.to])
	}
	return false
}

// set is where a relief stands: opening, or passing the pump's whole flow.
func (s *solver) set(u *Unit) float64 {
	if u.Item.Set == nil {
		return math.Inf(1)
	}
	if s.cond.fullFlow {
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
		if s.pos[u] < s.set(l.unit) {
			return false
		}
		return raise(&s.pos[w], s.passed(u, w))
	}
	return false
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

// high is the highest pressure of a cell, by its index in the part.
func (f *field) high(i int) float64 { return max(f.pos[f.zone[i]], f.feed[f.zone[i]]) }

// low is the lowest pressure of a cell.
func (f *field) low(i int) float64 {
	if z := f.zone[i]; f.drawn[z] && !f.fed[z] {
		return vacuum
	}
	return 0
}
