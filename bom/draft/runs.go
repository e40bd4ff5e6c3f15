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
	for i := range len(chain().Line) * len(r.s.plant.every()) {
		plant, l := i/len(chain().Line), &chain().Line[i%len(chain().Line)]
		if l.Plant != "" && l.Plant != r.s.plant.sort.Name {
			continue
		}
		var now *run
		var last *unit
		begin := func(e element) {
			out = append(out, run{line: l, path: []element{e}})
			now = &out[len(out)-1]
		}
		for k := range r.s.places {
			pc := &r.s.places[k]
			if pc.plant != plant || pc.line.Name != l.Name {
				continue
			}
			to := r.unit(pc.to, true)
			switch {
			case pc.from != nil:
				if now == nil || last != pc.from.u {
					begin(r.unit(*pc.from, false))
				} else {
					now.path[len(now.path)-1].out = r.unit(*pc.from, false).out
				}
				now.path = append(append(now.path, r.chains[k]...), to)
			default:
				at, ok := r.branch(k)
				if !ok {
					continue
				}
				if pc.back {
					if now != nil && last == pc.to.u {
						now.path[len(now.path)-1].out = pc.to.name
					} else {
						begin(r.unit(pc.to, false))
					}
					back := slices.Clone(r.chains[k])
					slices.Reverse(back)
					for n := range back {
						back[n].in, back[n].out = back[n].out, back[n].in
					}
					at.in, at.out = at.out, ""
					now.path = append(append(now.path, back...), at)
					last = nil
					continue
				}
				begin(at)
				now.path = append(append(now.path, r.chains[k]...), to)
			}
			last = pc.to.u
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
