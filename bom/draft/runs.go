package draft

import (
	"fmt"
	"slices"
)

// run is units in flow order, with what is to be said of it.
type run struct {
	line *line
	name string
	path []element
}

// where names a place for people.
func (s *solved) where(i int) string {
	p := &s.places[i]
	if p.from == nil {
		return p.to.String()
	}
	return p.from.String() + " - " + p.to.String()
}

// endWords names a sort of end.
func (s *solved) endWords(n int) string {
	c := &s.ends.list[n]
	switch {
	case c.boat != "":
		return "the boat's own end"
	case len(c.readings) == 0:
		return "an end not said"
	case len(c.readings) > 1:
		return c.readings[0].String() + " or another"
	}
	return c.readings[0].String()
}

// runs lists the runs, line by line.
func (r *router) runs() []run {
	var out []run
	for plant := range r.s.plant.every() {
		for l := range chain().Line {
			if line := &chain().Line[l]; line.Plant == "" || line.Plant == r.s.plant.sort.Name {
				out = append(out, r.runsOf(line, plant)...)
			}
		}
	}
	for i := range out {
		out[i].name = out[i].line.Name
		for n := 2; slices.ContainsFunc(out[:i], func(o run) bool { return o.name == out[i].name }); n++ {
			out[i].name = fmt.Sprintf("%s %d", out[i].line.Name, n)
		}
	}
	return out
}

// runsOf lists the runs of one line of one plant. A place that goes on where the last one ended is in
// its run; a place on a branch begins one, or ends one where its water comes back.
func (r *router) runsOf(l *line, plant int) (out []run) {
	var last *unit
	begin := func(e element) { out = append(out, run{line: l, path: []element{e}}) }
	goOn := func(e element) { // from the unit at which the last run ends, by the port out of e; else begin there
		if len(out) == 0 || last == nil || last != e.unit {
			begin(e)
			return
		}
		path := out[len(out)-1].path
		path[len(path)-1].out = e.out
	}
	add := func(list ...element) { out[len(out)-1].path = append(out[len(out)-1].path, list...) }
	for k := range r.s.places {
		pc := &r.s.places[k]
		if pc.plant != plant || pc.line.Name != l.Name {
			continue
		}
		if pc.from != nil {
			goOn(r.unit(*pc.from, false))
			add(append(slices.Clone(r.chains[k]), r.unit(pc.to, true))...)
			last = pc.to.u
			continue
		}
		at, ok := r.branch(k)
		switch {
		case !ok:
		case pc.back:
			goOn(r.unit(pc.to, false))
			back := slices.Clone(r.chains[k])
			slices.Reverse(back)
			for n := range back {
				back[n].in, back[n].out = back[n].out, back[n].in
			}
			at.in, at.out = at.out, ""
			add(append(back, at)...)
			last = nil
		default:
			begin(at)
			add(append(slices.Clone(r.chains[k]), r.unit(pc.to, true))...)
			last = pc.to.u
		}
	}
	return out
}

// branch is the port of a tee that a place starts at.
func (r *router) branch(place int) (element, bool) {
	if m := &r.s.answer.Places[place]; m.OK {
		e, ok := r.side[[3]int{m.Host, m.HostAt, m.Side}]
		return e, ok
	}
	e, ok := r.side[[3]int{-1, place}]
	return e, ok
}

// unit makes the element of a port's unit.
func (r *router) unit(p port, enter bool) element {
	e := element{id: p.u.id, label: p.u.label, unit: p.u, part: p.u.part}
	if enter {
		e.in = p.name
	} else {
		e.out = p.name
	}
	return e
}
