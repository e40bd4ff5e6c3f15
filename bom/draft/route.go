package draft

import (
	"fmt"
	"slices"
	"strings"

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

// cutHose is a piece that is cut from stock.
type cutHose struct {
	id, of string
	part   *Part // the stock of the bag; nil: to buy
	length money.Quantity
	from   string // what it leads from and to, in words
	to     string
}

// run is units in flow order, with what is to be said of it.
type run struct {
	line *line
	name string
	path []element
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
	taken  map[string]bool // ids
	counts map[string]int  // pieces of a bought item
	side   map[[2]int]element
}

func newRouter(s *solved, ids map[string]bool) *router {
	r := &router{s: s, p: pressuresOf(s.plant), used: map[*Part]int{}, chains: make([][]element, len(s.places)), taken: ids, counts: map[string]int{}, side: map[[2]int]element{}}
	for _, list := range s.plant.units {
		for _, u := range list {
			if u.part != nil {
				r.used[u.part]++
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
		open = r.s.classes[host.Class].ends[host.Side]
	}
	for at, step := range m.Chain {
		c := &r.s.classes[step.Class]
		if step.Buy > 0 {
			out = append(out, r.buy(i, open, c.ends[step.In])...)
		}
		e := r.take(step.Class, i)
		if len(c.ends) > 2 {
			ports := e.part.ports
			e.in, e.out = ports[step.In], ports[step.Out]
			r.side[[2]int{i, at}] = element{id: e.id, label: e.label, out: ports[step.Side], part: e.part}
		}
		out = append(out, e)
		open = c.ends[step.Out]
	}
	if m.Buy > 0 {
		out = append(out, r.buy(i, open, r.s.problem.Places[i].To)...)
	}
	if m.Stiff {
		r.stiff(i)
	}
	r.chains[i] = out
}

// stiff notes a place between two parts that are screwed down, in which nothing gives way.
func (r *router) stiff(i int) {
	r.lost = append(r.lost, Missing{Where: r.s.where(i), Line: r.s.places[i].line.Name, What: "something that gives way, for both ends are screwed down",
		Note: "a union in the middle, or a hose with its tails, made to measure"})
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
	h := &cutHose{of: of, part: p}
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
	if p != nil {
		r.used[p]++
	}
	return element{id: h.id, cut: h, part: p}
}

// buy makes the elements of what is missing between two ends.
func (r *router) buy(place, a, b int) []element {
	list := r.s.between(a, b, r.s.places[place].line, r.p)
	m := Missing{Where: r.s.where(place), Line: r.s.places[place].line.Name}
	var out []element
	for k := range list {
		out = append(out, r.bought(&list[k], place))
		m.Buy = append(m.Buy, list[k].title)
		if list[k].note != "" {
			m.Note = list[k].note
		}
	}
	m.What = r.s.endWords(a) + " to " + r.s.endWords(b)
	if len(list) == 0 {
		m.Note = "nothing that is made joins them: replace one of the two parts"
	}
	r.lost = append(r.lost, m)
	return out
}

// bought notes an item to buy, once, and gives one piece of it.
func (r *router) bought(b *bought, place int) element {
	if b.hose != "" {
		id := "buy-hose-" + idOf(b.size)
		if !slices.ContainsFunc(r.buys, func(o *bought) bool { return o.id == id }) {
			var f fields
			f.text("id", id)
			f.text("kind", "hose stock")
			f.text(b.hose, b.size)
			b.id, b.item = id, f.write("item")
			r.buys = append(r.buys, b)
		}
		e := r.cut(nil, id, place)
		e.buy = b
		return e
	}
	if b.item == "" {
		return element{}
	}
	if r.taken[b.id] { // the lists have one that is called so
		fresh := "buy-" + b.id
		b.item, b.id = strings.Replace(b.item, quote(b.id), quote(fresh), 1), fresh
	}
	if !slices.ContainsFunc(r.buys, func(o *bought) bool { return o.id == b.id }) {
		r.buys = append(r.buys, b)
	}
	r.counts[b.id]++
	e := element{id: b.id, buy: b}
	if r.counts[b.id] > 1 {
		e.label = fmt.Sprint(r.counts[b.id])
	}
	return e
}

// mend deals with a place that nothing fills: a branch gets its tee to buy, two ports that
// nothing joins stand side by side, so that a check stops at them.
func (r *router) mend(i int) {
	pc := &r.s.places[i]
	if pc.from != nil {
		a, b := r.s.problem.Places[i].From, r.s.problem.Places[i].To
		if r.s.problem.Places[i].Lost.Stops == 0 {
			r.chains[i] = r.buy(i, a, b)
			if r.s.problem.Places[i].Fixed && r.s.problem.Places[i].Table == 1 {
				r.stiff(i)
			}
			return
		}
		r.lost = append(r.lost, Missing{Where: r.s.where(i), Line: pc.line.Name, What: r.s.endWords(a) + " to " + r.s.endWords(b), Stop: true,
			Note: "nothing that is made joins them: replace one of the two parts"})
		return
	}
	m := Missing{Where: r.s.where(i), Line: pc.line.Name, What: "a branch for " + pc.to.String() + " (" + r.s.endWords(r.s.problem.Places[i].To) + ")"}
	for _, h := range pc.hosts {
		if b, ok := r.insert(h, i); ok {
			m.Buy, m.Note = []string{b.title}, b.note
			break
		}
	}
	if len(m.Buy) == 0 {
		m.Note = "no tee was found for it: it stands in no run"
	}
	r.lost = append(r.lost, m)
}

// insert puts a tee to buy into the chain of a host, where two ends meet or in the middle of a
// hose.
func (r *router) insert(host, place int) (*bought, bool) {
	if !r.s.answer.Places[host].OK && r.s.places[host].from != nil && len(r.chains[host]) == 0 {
		return nil, false
	}
	side := r.s.problem.Places[place].To
	chain := r.chains[host]
	for k := len(chain) - 1; k >= 0; k-- {
		e := chain[k]
		if e.cut == nil || e.part == nil {
			continue
		}
		end, ok := e.part.tubeEnd()
		if !ok {
			continue
		}
		n := r.s.ends.number(endClass{}) // an end that is there in any case
		for i := range r.s.ends.list {
			if c := &r.s.ends.list[i]; c.boat == "" && !c.device && len(c.readings) == 1 && c.readings[0] == end {
				n = i
			}
		}
		b, ok := r.s.tee(n, n, side, r.s.places[host].line)
		if !ok {
			continue
		}
		tee := r.bought(&b, host)
		tee.in, tee.out = "a", "b"
		r.chains[host] = slices.Insert(slices.Clone(chain), k+1, tee, r.cut(e.part, e.part.ID, host))
		r.side[[2]int{-1, place}] = element{id: tee.id, label: tee.label, out: "branch", buy: tee.buy}
		return &b, true
	}
	open := r.s.problem.Places[host].From
	if open >= 0 && len(chain) > 0 && chain[0].part != nil && chain[0].cut == nil {
		next := r.s.answer.Places[host].Chain
		if len(next) > 0 && next[0].Buy == 0 {
			b, ok := r.s.tee(open, r.s.classes[next[0].Class].ends[next[0].In], side, r.s.places[host].line)
			if ok {
				tee := r.bought(&b, host)
				tee.in, tee.out = "a", "b"
				r.chains[host] = slices.Insert(slices.Clone(chain), 0, tee)
				r.side[[2]int{-1, place}] = element{id: tee.id, label: tee.label, out: "branch", buy: tee.buy}
				return &b, true
			}
		}
	}
	return nil, false
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
	lines := chain().lines(r.s.plant.sort)
	for i := range lines {
		l := &lines[i]
		var now *run
		var last *unit
		begin := func(e element) {
			out = append(out, run{line: l, path: []element{e}})
			now = &out[len(out)-1]
		}
		for k := range r.s.places {
			pc := &r.s.places[k]
			if pc.line.Name != l.Name {
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
				if l.Back && now != nil && last == pc.to.u {
					now.path[len(now.path)-1].out = pc.to.name
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
		e, ok := r.side[[2]int{m.Host, m.HostAt}]
		return e, ok
	}
	e, ok := r.side[[2]int{-1, place}]
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
