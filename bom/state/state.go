package state

import (
	"slices"

	"handtight/bom/circuit"
	"handtight/bom/graph"
	"handtight/bom/wetting"
	"handtight/catalog"
	"handtight/pressure/network"
	"handtight/pressure/quantity"
)

// State is one way the build can stand: normal, flush, one act or one failure,
// with the pressures that it gives.
type State struct {
	Name    string      // "normal", "flush", "overboard shut"
	Cause   string      // "overboard (seacock) left shut"
	Failure bool        // a part fails; else a person's act or the normal course
	Unit    *graph.Unit // the unit that is shut or fails; nil for normal and flush

	NoBound bool // somewhere nothing opens

	part    int // the part of the build it was solved on; elsewhere it is as in the normal state
	field   network.Field
	stopped bool // the high-pressure pumps stand still
}

// States are all states of a build, in the order of the file, and what each port sees over
// all of them.
type States struct {
	Graph   *graph.Graph
	Circuit *circuit.Circuit
	All     []*State

	waters *wetting.Waters
	normal []*State // by connected part of the build; nil where nothing runs
	loaded []Load   // by junction
	driven []bool   // by junction
}

// Solve solves every state of a circuit.
func Solve(c *circuit.Circuit, w *wetting.Waters) *States {
	s := &States{Graph: c.Graph, Circuit: c, waters: w}
	s.solve()
	s.loaded = s.loads()
	s.drive()
	return s
}

// Normal is the normal state of a connected part of the build; nil where nothing runs in it.
func (s *States) Normal(part int) *State { return s.normal[part] }

// Net is the connected part of the build that the state was solved on; elsewhere all is as
// in normal running.
func (st *State) Net() int { return st.part }

// Field is the pressures of a part of the build in a condition, with the reliefs at full flow.
func (s *States) Field(part int, cond *circuit.Condition) network.Field {
	return network.Solve(s.Circuit.Network(part, cond), true)
}

// solve solves every state. A state of one unit touches only the part of the
// build that the unit stands in, so the whole costs what its parts cost.
func (s *States) solve() {
	parts := make([]*maker, len(s.Circuit.Nets))
	s.normal = make([]*State, len(s.Circuit.Nets))
	for part := range s.Circuit.Nets {
		if !s.runsIn(part) {
			continue
		}
		parts[part] = &maker{sys: s, part: part}
		s.normal[part] = parts[part].add("normal", "normal running", nil, false, running)
	}
	for part, p := range parts {
		if p == nil {
			continue
		}
		p.modes()
		for _, i := range s.Circuit.LinksOf[part] {
			p.acts(i)
		}
		p.blocked()
	}
}

// runsIn reports whether anything in the part can push or draw.
func (s *States) runsIn(part int) bool {
	for _, i := range s.Circuit.LinksOf[part] {
		if is := s.Circuit.Links[i].Is; is == catalog.PositivePump || is == catalog.FeedPump {
			return true
		}
	}
	for _, junction := range s.Circuit.Nets[part] {
		if s.Circuit.Push[junction] > 0 {
			return true
		}
	}
	return false
}

// maker makes the states of one part of the build.
type maker struct {
	sys     *States
	part    int
	flushes bool // something is opened for the flush
}

var (
	running  circuit.Condition
	flushing = circuit.Condition{Flush: true, Stopped: true, Still: true}
)

// without is a condition in which one passage more is shut.
func without(c circuit.Condition, passage int) circuit.Condition {
	c.Shut = map[int]bool{passage: true}
	return c
}

func (p *maker) add(name, cause string, unit *graph.Unit, failure bool, cond circuit.Condition) *State {
	st := &State{Name: name, Cause: cause, Failure: failure, Unit: unit, part: p.part, field: p.sys.Field(p.part, &cond), stopped: cond.Stopped}
	st.NoBound = st.field.NoBound()
	p.sys.All = append(p.sys.All, st)
	return st
}

// modes are the states that no single unit makes: flush, and the pumps run alone.
func (p *maker) modes() {
	var flush, positive, feed bool
	for _, i := range p.sys.Circuit.LinksOf[p.part] {
		e := &p.sys.Circuit.Links[i]
		flush = flush || e.ForFlush()
		positive = positive || e.Is == catalog.PositivePump
		feed = feed || e.Is == catalog.FeedPump
	}
	if flush {
		p.flushes = true
		p.add("flush", "fresh-water flush, pumps stopped", nil, false, flushing)
	}
	if positive && feed {
		p.add("feed pump alone", "feed pump running, high-pressure pump stopped", nil, false, circuit.Condition{Stopped: true})
		p.add("high-pressure pump alone", "high-pressure pump running, feed pump stopped", nil, false, circuit.Condition{Still: true})
	}
}

// blocked makes the states in which an intake that nobody can shut lets no water in: weed
// or a bag lies over it.
func (p *maker) blocked() {
	for _, u := range p.sys.Circuit.UnitsOf(p.part) {
		if p.sys.openIntake(u) {
			p.add(u.Name+" blocked", u.Title()+" blocked, as by weed", u, true, circuit.Condition{Dry: u})
		}
	}
}

// openIntake reports whether a unit is an intake that lets water in and cannot be shut.
func (s *States) openIntake(u *graph.Unit) bool {
	if !s.waters.Intake(u) || slices.ContainsFunc(u.Passages(), func(p catalog.Passage) bool { return p.Closable }) {
		return false
	}
	for i := range u.Item.Ports {
		if slices.Contains(s.Circuit.Givers(u.First+i), u) {
			return true
		}
	}
	return false
}

// acts are the states that one passage makes: left shut or open by a person, or failed.
func (p *maker) acts(i int) {
	e := &p.sys.Circuit.Links[i]
	name, title := e.Unit.Name, e.Unit.Title()
	switch {
	case e.Is == catalog.Shut:
	case e.Unit.Item.Kind.Selector && e.Position == 0:
		p.add(name+" between", title+" left between its positions", e.Unit, false, circuit.Condition{Between: e.Unit})
		p.add(name+" other way", title+" turned to its second way", e.Unit, false, circuit.Condition{Swapped: e.Unit})
		if p.sys.AdmitsHouseWater(e.Unit, p.part) {
			p.add(name+" other way in flush", title+" turned to its second way, pumps stopped", e.Unit, false,
				circuit.Condition{Swapped: e.Unit, Flush: true, Stopped: true, Still: true})
		}
	case e.Unit.Item.Kind.Selector:
	case e.Closable && e.Unit.Item.Kind.Flush: // it works by current or by a clock, and no hand leaves it
		p.valve(i, e, title+" failed", true)
	case e.Closable:
		p.valve(i, e, title+" left", false)
	case e.Clogs:
		p.add(name+" clogged", title+" clogged", e.Unit, true, without(running, i))
	case e.Is == catalog.Relief, e.Is == catalog.Regulator:
		p.add(name+" stuck", title+" stuck shut", e.Unit, true, without(running, i))
	}
}

// AdmitsHouseWater reports whether house water may come to a selector, which then lets the flush
// in as a valve does.
func (s *States) AdmitsHouseWater(u *graph.Unit, part int) bool {
	if !slices.ContainsFunc(s.Circuit.Nets[part], func(junction int) bool { return s.Circuit.Push[junction] > 0 }) {
		return false
	}
	second := u.Item.PortIndex("b")
	return second >= 0 && s.waters.Rinsed(u.First+second)
}

// valve makes the states in which a valve stands as it should not: open where it is shut
// in normal running, else shut; and shut while flushing. Of a valve that is opened for the
// flush, the latter only where another lets the flush in: else it is no flush.
func (p *maker) valve(i int, e *circuit.Link, what string, failure bool) {
	name := e.Unit.Name
	if e.ShutNormally() {
		p.add(name+" open", what+" open", e.Unit, failure, circuit.Condition{Opened: e.Unit})
	} else {
		p.add(name+" shut", what+" shut", e.Unit, failure, without(running, i))
	}
	if p.flushes && (!e.ShutNormally() || e.ForFlush() && p.flushesBeside(e)) {
		p.add(name+" shut in flush", what+" shut while flushing", e.Unit, failure, without(flushing, i))
	}
}

// flushesBeside reports whether another valve lets the flush in: where this one is the
// only one, its being shut is no flush.
func (p *maker) flushesBeside(e *circuit.Link) bool {
	for _, i := range p.sys.Circuit.LinksOf[p.part] {
		if other := &p.sys.Circuit.Links[i]; other.Unit != e.Unit && other.ForFlush() {
			return true
		}
	}
	return false
}

// PumpsRun reports whether the high-pressure pumps run in the state.
func (st *State) PumpsRun() bool { return !st.stopped }

// Pressure is what a port sees in one state, infinite where nothing
// opens, false where the state does not touch the port.
func (s *States) Pressure(st *State, port int) (high, low quantity.Pressure, ok bool) {
	junction := s.Circuit.JunctionOf[port]
	if s.Circuit.NetOf[junction] != st.part {
		return 0, 0, false
	}
	high, low = st.field.Bounds(st.field.Zone(s.Circuit.Local[junction]))
	return high, low, true
}

// WayOut is the pressure at which a port's water finds a way out in a state;
// infinite where none opens, false where the state does not touch the port.
func (s *States) WayOut(st *State, port int) (p quantity.Pressure, ok bool) {
	junction := s.Circuit.JunctionOf[port]
	if s.Circuit.NetOf[junction] != st.part {
		return 0, false
	}
	return st.field.Discharge(s.Circuit.Local[junction]), true
}

// Pumped is the part of a port's highest pressure that positive pumps push in a state; 0
// where the state does not touch the port.
func (s *States) Pumped(st *State, port int) quantity.Pressure {
	junction := s.Circuit.JunctionOf[port]
	if s.Circuit.NetOf[junction] != st.part {
		return 0
	}
	return st.field.Pumped(s.Circuit.Local[junction])
}

// NoBoundNormally reports whether the part of the build that a state was solved on has
// no bound in normal running already.
func (s *States) NoBoundNormally(st *State) bool { return s.normal[st.part].NoBound }
