package bom

import (
	"fmt"
	"math"
	"slices"

	"handtight/catalog"
)

// State is one way the build can stand: normal, flush, one act or one failure,
// with the pressures that it gives.
type State struct {
	Name    string // "normal", "flush", "overboard shut"
	Cause   string // "overboard (seacock) left shut"
	Failure bool   // a part fails; else a person's act or the normal course
	Unit    *Unit  // the unit that is shut or fails; nil for normal and flush

	NoBound bool // somewhere nothing opens

	part  int // the part of the build it was solved on; elsewhere it is as in the normal state
	local map[int]int
	field field
}

// solve solves every state. A state of one unit touches only the part of the
// build that the unit stands in, so the whole costs what its parts cost.
func (s *System) solve() {
	c := s.cells
	locals := s.locals()
	for part := range c.parts {
		if !s.runsIn(part) {
			continue
		}
		s.add(locals[part], part, "normal", "normal running", nil, false, condition{})
	}
	for part := range c.parts {
		if !s.runsIn(part) {
			continue
		}
		s.modes(locals[part], part)
		for _, i := range c.wires[part] {
			s.acts(locals[part], part, i)
		}
	}
}

// locals numbers the cells of each part.
func (s *System) locals() []map[int]int {
	out := make([]map[int]int, len(s.cells.parts))
	for p, list := range s.cells.parts {
		m := make(map[int]int, len(list))
		for i, cell := range list {
			m[cell] = i
		}
		out[p] = m
	}
	return out
}

// runsIn reports whether anything in the part can push or draw.
func (s *System) runsIn(part int) bool {
	for _, i := range s.cells.wires[part] {
		if is := s.cells.edges[i].is; is == catalog.PositivePump || is == catalog.FeedPump {
			return true
		}
	}
	for _, cell := range s.cells.parts[part] {
		if s.cells.push[cell] > 0 {
			return true
		}
	}
	return false
}

func (s *System) add(local map[int]int, part int, name, cause string, unit *Unit, failure bool, cond condition) {
	cond.fullFlow = true
	f := s.solveOne(local, part, cond)
	st := &State{Name: name, Cause: cause, Failure: failure, Unit: unit, part: part, local: local, field: f}
	for i := range s.cells.parts[part] {
		st.NoBound = st.NoBound || math.IsInf(f.high(i), 1)
	}
	s.States = append(s.States, st)
}

func (s *System) solveOne(local map[int]int, part int, cond condition) field {
	duty := 0.0
	if s.Build.Duty.Pressure != nil {
		duty = s.Build.Duty.Pressure.Bar()
	}
	sol := solver{c: s.cells, duty: duty, cond: &cond, local: local, cells: s.cells.parts[part], wires: s.cells.wires[part]}
	sol.solve()
	return sol.field
}

// modes are the states that no single unit makes: flush, and the pumps run alone.
func (s *System) modes(local map[int]int, part int) {
	var flush, positive, feed bool
	for _, i := range s.cells.wires[part] {
		e := &s.cells.edges[i]
		flush = flush || e.unit.Item.Kind.Flush
		positive = positive || e.is == catalog.PositivePump
		feed = feed || e.is == catalog.FeedPump
	}
	if flush {
		s.add(local, part, "flush", "fresh-water flush, pumps stopped", nil, false, condition{flush: true, stopped: true, still: true})
	}
	if positive && feed {
		s.add(local, part, "feed pump alone", "feed pump running, high-pressure pump stopped", nil, false, condition{stopped: true})
	}
}

// acts are the states that one passage makes: shut by a person, or by a failure.
func (s *System) acts(local map[int]int, part, i int) {
	e := &s.cells.edges[i]
	k := e.unit.Item.Kind
	title := e.unit.title()
	switch {
	case k.Selector && e.way == 0:
		s.add(local, part, e.unit.Name+" between", title+" left between its positions", e.unit, false, condition{between: e.unit})
		s.add(local, part, e.unit.Name+" other way", title+" turned to its second way", e.unit, false, condition{swapped: e.unit})
	case k.Selector:
	case k.Flush:
		// shut in the normal state already; in the flush it only stops the flush
	case e.unit.Item.Normal == "shut":
	case e.closable:
		s.add(local, part, e.unit.Name+" shut", title+" left shut", e.unit, false, condition{shut: map[int]bool{i: true}})
		if s.flushes(part) {
			s.add(local, part, e.unit.Name+" shut in flush", title+" left shut while flushing", e.unit, false,
				condition{shut: map[int]bool{i: true}, flush: true, stopped: true, still: true})
		}
	case e.clogs:
		s.add(local, part, e.unit.Name+" clogged", title+" clogged", e.unit, true, condition{shut: map[int]bool{i: true}})
	case e.is == catalog.Relief:
		s.add(local, part, e.unit.Name+" stuck", title+" stuck shut", e.unit, true, condition{shut: map[int]bool{i: true}})
	}
}

func (s *System) flushes(part int) bool {
	return slices.ContainsFunc(s.cells.wires[part], func(i int) bool { return s.cells.edges[i].unit.Item.Kind.Flush })
}

// title names a unit with its kind where the name does not say it.
func (u *Unit) title() string {
	if u.Item.ID == u.Item.Kind.Name {
		return u.Name
	}
	return fmt.Sprintf("%s (%s)", u.Name, u.Item.Kind.Name)
}

// Pressure is what a port sees in one state, in bar; infinite where nothing
// opens, false where the state does not touch the port.
func (s *System) Pressure(st *State, port int) (high, low float64, ok bool) {
	i, ok := st.local[s.cells.of[port]]
	if !ok {
		return 0, 0, false
	}
	return st.field.high(i), st.field.low(i), true
}

// Load is what a port, a unit or a segment sees over all states. The figures are
// the highest that have a bound; states without one are named apart.
type Load struct {
	Normal      float64 // bar, in the normal state
	Act         float64 // highest by the normal course or a person's act
	ByAct       *State
	Fail        float64 // highest by a single failure
	ByFail      *State
	NoBound     *State  // an act, or the normal course, in which nothing opens
	NoBoundFail *State  // a failure in which nothing opens
	Low         float64 // lowest, at most 0
	ByLow       *State
}

// Worst is the highest pressure of all, infinite where a state has no bound, and
// the state that gives it; nil where nothing can push.
func (l *Load) Worst() (float64, *State) {
	switch {
	case l.NoBound != nil:
		return math.Inf(1), l.NoBound
	case l.NoBoundFail != nil:
		return math.Inf(1), l.NoBoundFail
	case l.ByFail != nil && l.Fail > l.Act:
		return l.Fail, l.ByFail
	}
	return l.Act, l.ByAct
}

// take adds a state's pressures to the load.
func (l *Load) take(st *State, high, low float64) {
	if low < l.Low {
		l.Low, l.ByLow = low, st
	}
	if st.Name == "normal" {
		l.Normal = max(l.Normal, high)
	}
	switch {
	case math.IsInf(high, 1) && st.Failure:
		first(&l.NoBoundFail, st)
	case math.IsInf(high, 1):
		first(&l.NoBound, st)
	case st.Failure:
		most(&l.Fail, &l.ByFail, high, st)
	default:
		most(&l.Act, &l.ByAct, high, st)
	}
}

// merge adds another load, as of a further cell of a segment.
func (l *Load) merge(o *Load) {
	l.Normal = max(l.Normal, o.Normal)
	most(&l.Act, &l.ByAct, o.Act, o.ByAct)
	most(&l.Fail, &l.ByFail, o.Fail, o.ByFail)
	first(&l.NoBound, o.NoBound)
	first(&l.NoBoundFail, o.NoBoundFail)
	if o.Low < l.Low {
		l.Low, l.ByLow = o.Low, o.ByLow
	}
}

func first(v **State, st *State) {
	if *v == nil {
		*v = st
	}
}

// most keeps the higher pressure; on a tie the earlier state, so that the normal
// state is named where an act adds nothing.
func most(v *float64, by **State, high float64, st *State) {
	if st != nil && (*by == nil || high > *v) {
		*v, *by = high, st
	}
}

// loads gives each cell its load over all states.
func (s *System) loads() []Load {
	out := make([]Load, s.cells.count)
	for _, st := range s.States {
		for i, cell := range s.cells.parts[st.part] {
			out[cell].take(st, st.field.high(i), st.field.low(i))
		}
	}
	return out
}

// PortLoad is the load of one port.
func (s *System) PortLoad(port int) *Load { return &s.loaded[s.cells.of[port]] }

// WayOut is the pressure at which a port's water finds a way out in a state;
// infinite where none opens, false where the state does not touch the port.
func (s *System) WayOut(st *State, port int) (bar float64, ok bool) {
	i, ok := st.local[s.cells.of[port]]
	if !ok {
		return 0, false
	}
	return st.field.out[st.field.zone[i]], true
}

// NoBoundNormally reports whether the part of the build that a state was solved on has
// no bound in normal running already.
func (s *System) NoBoundNormally(st *State) bool {
	for _, other := range s.States {
		if other.part == st.part && other.Name == "normal" {
			return other.NoBound
		}
	}
	return false
}
