package draft

import (
	"fmt"
	"slices"
	"strings"

	"handtight/catalog"
)

// stiff notes a place between two parts that are screwed down, in which nothing gives way.
func (r *router) stiff(i int) {
	r.lost = append(r.lost, Missing{Where: r.s.where(i), Line: r.s.places[i].line.Name, What: "something that gives way, for both ends are screwed down",
		Note: "a union in the middle, or a hose with its tails, made to measure"})
}

// buy makes the elements of what is missing between two ends; soft where a hose is to be among it.
func (r *router) buy(place, a, b int, soft bool) []element {
	var list []bought
	if soft {
		list = r.s.withHose(a, b, r.s.places[place].line, r.p)
	} else {
		list = r.s.between(a, b, r.s.places[place].line, r.p)
	}
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
	if b.hose == madeHose {
		b.cut = r.hose(place)
		b.cut.made, b.id = b.made, b.cut.id
		r.buys = append(r.buys, b)
		return element{id: b.id, buy: b}
	}
	if b.hose != "" {
		id := "buy-hose-" + idOf(b.size)
		if !slices.ContainsFunc(r.buys, func(o *bought) bool { return o.id == id }) {
			var f fields
			f.text("id", id)
			f.text("kind", catalog.OfRole(catalog.HoseStock).Name)
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
			soft := r.s.problem.Places[i].Fixed && softly(r.s.problem, &r.s.problem.Places[i]) > 0
			r.chains[i] = r.buy(i, a, b, soft)
			if !soft && r.s.problem.Places[i].Fixed && !slices.ContainsFunc(r.chains[i], func(e element) bool { return e.buy != nil && e.buy.hose != "" }) {
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
		r.side[[3]int{-1, place}] = element{id: tee.id, label: tee.label, out: "branch", buy: tee.buy}
		return &b, true
	}
	last := r.s.answer.Places[host].Chain
	if n := len(chain) - 1; r.s.places[host].line.Held == "last" && n >= 0 && len(last) > 0 && r.s.answer.Places[host].Buy == 0 && chain[n].part != nil && chain[n].cut == nil { // what is heavy stands at what is screwed down
		step := last[len(last)-1]
		if b, ok := r.s.tee(r.s.classes[step.Class].ends[step.Out], r.s.problem.Places[host].To, side, r.s.places[host].line); ok {
			tee := r.bought(&b, host)
			tee.in, tee.out = "a", "b"
			r.chains[host] = append(slices.Clone(chain), tee)
			r.side[[3]int{-1, place}] = element{id: tee.id, label: tee.label, out: "branch", buy: tee.buy}
			return &b, true
		}
	}
	open := r.s.problem.Places[host].From
	if next := r.firstEnd(host); open >= 0 && next >= 0 {
		if b, ok := r.s.tee(open, next, side, r.s.places[host].line); ok {
			tee := r.bought(&b, host)
			tee.in, tee.out = "a", "b"
			r.chains[host] = slices.Insert(slices.Clone(chain), 0, tee)
			r.side[[3]int{-1, place}] = element{id: tee.id, label: tee.label, out: "branch", buy: tee.buy}
			return &b, true
		}
	}
	return nil, false
}

// firstEnd is the end that a place's chain begins with, of a piece of the bag or of a hose that is to
// be made up; -1 where it begins otherwise.
func (r *router) firstEnd(place int) int {
	chain, next := r.chains[place], r.s.answer.Places[place].Chain
	switch {
	case len(chain) == 0:
	case chain[0].buy != nil && chain[0].buy.hose == madeHose:
		return chain[0].buy.from
	case chain[0].part != nil && chain[0].cut == nil && len(next) > 0 && next[0].Buy == 0:
		return r.s.classes[next[0].Class].ends[next[0].In]
	}
	return -1
}
