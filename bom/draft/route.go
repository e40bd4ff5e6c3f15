package draft

import (
	"fmt"

	"handtight/bom/money"
)

// element is one step of a run's path.
type element struct {
	id, label string
	in, out   string // ports that must be named; "" where the part's kind says them
	buy       *bought
	part      *Part // of the bag, or nil
	unit      *unit // of the plant's parts, or nil
	cut       *cutHose
}

// text is the element in a path, as the first of it, in between, or as the last.
func (e *element) text(first, last bool) string {
	name := e.id
	if e.label != "" {
		name += "/" + e.label
	}
	switch {
	case e.in == "" && e.out == "" || e.plain(first, last):
		return name
	case first && last:
		return name
	case first && e.out != "":
		return name + "." + e.out
	case last && e.in != "":
		return name + "." + e.in
	case first || last:
		return name
	}
	return name + "." + e.in + ">" + e.out
}

// plain reports whether the part's kind goes from and to these ports by itself.
func (e *element) plain(first, last bool) bool {
	if e.unit == nil {
		return false
	}
	k := e.unit.kind
	if e.part != nil {
		k = e.part.Kind
	}
	enter, leave := "", ""
	if k.Enter >= 0 {
		enter = k.Ports[k.Enter]
	}
	if k.Leave >= 0 {
		leave = k.Ports[k.Leave]
	}
	if last && len(k.Boundary) > 0 && leave != "" {
		enter = leave // an outlet is entered by the end that an intake is left by
	}
	return (first || e.in == enter && enter != "") && (last || e.out == leave && leave != "")
}

// cutHose is a piece that is cut from stock, or made up with its ends.
type cutHose struct {
	id, of string
	part   *Part  // the stock of the bag; nil: to buy
	made   fields // of one that is made up; it is of no stock then
	length money.Quantity
	from   string // what it leads from and to, in words
	to     string
}

// router turns an assignment into runs.
type router struct {
	s      *solved
	p      pressures
	used   map[*Part]int
	chains [][]element // by place: what stands between its ports
	hoses  []*cutHose
	buys   []*bought // items to buy, each once
	lost   []Missing
	taken  map[string]bool    // ids
	counts map[string]int     // pieces of a bought item
	side   map[[3]int]element // of branches, by place, step and end
}

func newRouter(s *solved, ids map[string]bool) *router {
	r := &router{s: s, p: pressuresOf(s.plant), used: map[*Part]int{}, chains: make([][]element, len(s.places)), taken: ids, counts: map[string]int{}, side: map[[3]int]element{}}
	for _, pl := range s.plant.every() {
		for _, list := range pl.units {
			for _, u := range list {
				if u.part != nil {
					r.used[u.part]++
				}
			}
		}
	}
	for i := range s.places {
		r.place(i)
	}
	for i := range s.places {
		if !s.answer.Places[i].OK {
			r.mend(i)
		}
	}
	return r
}

// place makes the elements of a place's chain.
func (r *router) place(i int) {
	m := &r.s.answer.Places[i]
	if !m.OK {
		return
	}
	open := r.s.problem.Places[i].From
	var out []element
	if m.Host >= 0 {
		host := r.s.answer.Places[m.Host].Chain[m.HostAt]
		open = r.s.classes[host.Class].ends[m.Side]
	}
	for at, step := range m.Chain {
		c := &r.s.classes[step.Class]
		if step.Buy > 0 {
			out = append(out, r.buy(i, open, c.ends[step.In], step.Soft)...)
		}
		e := r.take(step.Class, i)
		if len(c.ends) > 2 {
			ports := e.part.ports
			e.in, e.out = ports[step.In], ports[step.Out]
			for _, side := range step.Sides {
				r.side[[3]int{i, at, side}] = element{id: e.id, label: e.label, out: ports[side], part: e.part}
			}
		}
		out = append(out, e)
		open = c.ends[step.Out]
	}
	if m.Buy > 0 {
		out = append(out, r.buy(i, open, r.s.problem.Places[i].To, m.Soft)...)
	}
	if m.Stiff {
		r.stiff(i)
	}
	r.chains[i] = out
}

// take takes one piece of a class out of the bag.
func (r *router) take(class, place int) element {
	c := &r.s.classes[class]
	if c.cut {
		return r.cut(c.parts[0], c.parts[0].ID, place)
	}
	for _, p := range c.parts {
		if r.used[p] < p.Pieces {
			r.used[p]++
			e := element{id: p.ID, part: p}
			if r.used[p] > 1 {
				e.label = fmt.Sprint(r.used[p])
			}
			return e
		}
	}
	return element{id: c.parts[0].ID, part: c.parts[0]} // the solver takes no more than there are
}

// cut makes a piece of hose.
func (r *router) cut(p *Part, of string, place int) element {
	h := r.hose(place)
	h.of, h.part = of, p
	if p != nil {
		r.used[p]++
	}
	return element{id: h.id, cut: h, part: p}
}

// hose names a hose for a place.
func (r *router) hose(place int) *cutHose {
	h := &cutHose{}
	base := idOf(r.s.places[place].line.Name)
	for n := 1; ; n++ {
		if h.id = fmt.Sprintf("%s-%d", base, n); !r.taken[h.id] {
			break
		}
	}
	r.taken[h.id] = true
	h.from, h.to = "", r.s.places[place].to.String()
	if f := r.s.places[place].from; f != nil {
		h.from = f.String()
	}
	r.hoses = append(r.hoses, h)
	return h
}
