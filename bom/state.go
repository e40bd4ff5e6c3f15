package bom

import (
	"fmt"
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
	field field
}

// solve solves every state. A state of one unit touches only the part of the
// build that the unit stands in, so the whole costs what its parts cost.
func (s *System) solve() {
	parts := make([]*states, len(s.cells.parts))
	s.normal = make([]*State, len(s.cells.parts))
	for part := range s.cells.parts {
		if !s.runsIn(part) {
			continue
		}
		parts[part] = &states{sys: s, part: part, running: s.newZoning(part, &condition{})}
		s.normal[part] = parts[part].add("normal", "normal running", nil, false, parts[part].running, -1)
	}
	for part, p := range parts {
		if p == nil {
			continue
		}
		p.modes()
		for _, i := range s.cells.wires[part] {
			p.acts(i)
		}
		p.blocked()
	}
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

// states makes the states of one part of the build.
type states struct {
	sys      *System
	part     int
	running  *zoning
	flushing *zoning // nil where nothing is flushed
}

func (p *states) add(name, cause string, unit *Unit, failure bool, z *zoning, shut int) *State {
	st := &State{Name: name, Cause: cause, Failure: failure, Unit: unit, part: p.part, field: z.shut(shut, true)}
	st.NoBound = st.field.noBound()
	p.sys.States = append(p.sys.States, st)
	return st
}

// modes are the states that no single unit makes: flush, and the pumps run alone.
func (p *states) modes() {
	c := p.sys.cells
	var flush, positive, feed bool
	for _, i := range c.wires[p.part] {
		e := &c.edges[i]
		flush = flush || e.forFlush()
		positive = positive || e.is == catalog.PositivePump
		feed = feed || e.is == catalog.FeedPump
	}
	if flush {
		p.flushing = p.sys.newZoning(p.part, &condition{flush: true, stopped: true, still: true})
		p.add("flush", "fresh-water flush, pumps stopped", nil, false, p.flushing, -1)
	}
	if positive && feed {
		p.add("feed pump alone", "feed pump running, high-pressure pump stopped", nil, false, p.zoning(condition{stopped: true}), -1)
		p.add("high-pressure pump alone", "high-pressure pump running, feed pump stopped", nil, false, p.zoning(condition{still: true}), -1)
	}
}

// blocked makes the states in which an intake that nobody can shut lets no water in: weed
// or a bag lies over it.
func (p *states) blocked() {
	for _, u := range p.sys.partUnits[p.part] {
		if p.sys.lets(u) {
			p.add(u.Name+" blocked", u.title()+" blocked, as by weed", u, true, p.zoning(condition{dry: u}), -1)
		}
	}
}

// lets reports whether a unit is an intake that lets water in and cannot be shut.
func (s *System) lets(u *Unit) bool {
	if !s.intake(u) || slices.ContainsFunc(u.passages(), func(p catalog.Passage) bool { return p.Closable }) {
		return false
	}
	for i := range u.Item.Ports {
		if slices.Contains(s.cells.from[s.cells.of[u.First+i]], u) {
			return true
		}
	}
	return false
}

func (p *states) zoning(c condition) *zoning { return p.sys.newZoning(p.part, &c) }

// acts are the states that one passage makes: left shut or open by a person, or failed.
func (p *states) acts(i int) {
	e := &p.sys.cells.edges[i]
	name, title := e.unit.Name, e.unit.title()
	switch {
	case e.is == catalog.Shut:
	case e.unit.Item.Kind.Selector && e.way == 0:
		p.add(name+" between", title+" left between its positions", e.unit, false, p.zoning(condition{between: e.unit}), -1)
		p.add(name+" other way", title+" turned to its second way", e.unit, false, p.zoning(condition{swapped: e.unit}), -1)
		if p.sys.letsHouseIn(e.unit, p.part) {
			p.add(name+" other way in flush", title+" turned to its second way, pumps stopped", e.unit, false,
				p.zoning(condition{swapped: e.unit, flush: true, stopped: true, still: true}), -1)
		}
	case e.unit.Item.Kind.Selector:
	case e.closable && e.unit.Item.Kind.Flush: // it works by current or by a clock, and no hand leaves it
		p.valve(i, e, title+" failed", true)
	case e.closable:
		p.valve(i, e, title+" left", false)
	case e.clogs:
		p.add(name+" clogged", title+" clogged", e.unit, true, p.running, i)
	case e.is == catalog.Relief:
		p.add(name+" stuck", title+" stuck shut", e.unit, true, p.running, i)
	}
}

// letsHouseIn reports whether house water may come to a selector, which then lets the flush
// in as a valve does.
func (s *System) letsHouseIn(u *Unit, part int) bool {
	if !slices.ContainsFunc(s.cells.parts[part], func(cell int) bool { return s.cells.push[cell] > 0 }) {
		return false
	}
	second := u.Item.PortIndex("b")
	return second >= 0 && s.waters.Rinsed(u.First+second)
}

// valve makes the states in which a valve stands as it should not: open where it is shut
// in normal running, else shut; and shut while flushing. Of a valve that is opened for the
// flush, the latter only where another lets the flush in: else it is no flush.
func (p *states) valve(i int, e *edge, what string, failure bool) {
	name := e.unit.Name
	if e.shutNormally() {
		p.add(name+" open", what+" open", e.unit, failure, p.zoning(condition{opened: e.unit}), -1)
	} else {
		p.add(name+" shut", what+" shut", e.unit, failure, p.running, i)
	}
	if p.flushing != nil && (!e.shutNormally() || e.forFlush() && p.flushesBeside(e)) {
		p.add(name+" shut in flush", what+" shut while flushing", e.unit, failure, p.flushing, i)
	}
}

// flushesBeside reports whether another valve lets the flush in: where this one is the
// only one, its being shut is no flush.
func (p *states) flushesBeside(e *edge) bool {
	for _, i := range p.sys.cells.wires[p.part] {
		if other := &p.sys.cells.edges[i]; other.unit != e.unit && other.forFlush() {
			return true
		}
	}
	return false
}

// title names a unit with its kind where the name does not say it.
func (u *Unit) title() string {
	if u.Item.ID == u.Item.Kind.Name {
		return u.Name
	}
	return fmt.Sprintf("%s (%s)", u.Name, u.Item.Kind.Name)
}

// PumpsRun reports whether the high-pressure pumps run in the state.
func (st *State) PumpsRun() bool { return !st.field.zones.cond.stopped }

// Pressure is what a port sees in one state, in bar; infinite where nothing
// opens, false where the state does not touch the port.
func (s *System) Pressure(st *State, port int) (high, low float64, ok bool) {
	cell := s.cells.of[port]
	if s.cells.part[cell] != st.part {
		return 0, 0, false
	}
	zone := st.field.zones.zone(s.cells.local[cell], st.field.cut)
	return st.field.highest(zone), st.field.lowest(zone), true
}

// WayOut is the pressure at which a port's water finds a way out in a state;
// infinite where none opens, false where the state does not touch the port.
func (s *System) WayOut(st *State, port int) (bar float64, ok bool) {
	cell := s.cells.of[port]
	if s.cells.part[cell] != st.part {
		return 0, false
	}
	return st.field.wayOut(s.cells.local[cell]), true
}

// NoBoundNormally reports whether the part of the build that a state was solved on has
// no bound in normal running already.
func (s *System) NoBoundNormally(st *State) bool { return s.normal[st.part].NoBound }
