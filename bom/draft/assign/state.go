package assign

import (
	"maps"
	"slices"
	"strings"
)

// node is one state: what has been chosen for the places so far.
type node struct {
	cost  Cost
	used  []uint16 // of the part's scarce classes
	pool  []branch // branches that wait for a place
	prev  *node
	place int
	cand  *candidate
	host  int // place whose branch it starts at; -1
}

// branch is an end that a place offers.
type branch struct{ host, end int }

// compareNodes orders states by cost, and like ones by what they hold, so that the same bag
// always gives the same answer.
func compareNodes(a, b *node) int {
	if c := a.cost.Compare(b.cost); c != 0 {
		return c
	}
	if c := slices.Compare(a.used, b.used); c != 0 {
		return c
	}
	return slices.CompareFunc(a.pool, b.pool, compareBranches)
}

func compareBranches(a, b branch) int {
	if a.host != b.host {
		return a.host - b.host
	}
	return a.end - b.end
}

// classesOf numbers the scarce classes that a part uses.
func (s *solver) classesOf(part []int) map[int]int {
	out := map[int]int{}
	for _, place := range part {
		for _, c := range s.cands[place] {
			for _, u := range c.use {
				if _, ok := out[u.class]; !ok {
					out[u.class] = len(out)
				}
			}
		}
	}
	return out
}

// inTurn orders the places of a part so that those at branches come as soon as all that may
// have their branch are decided: fewer branches wait then.
func (s *solver) inTurn(part []int) []int {
	var out []int
	for _, i := range part {
		if s.p.Places[i].From != Branch {
			out = append(out, i)
		}
	}
	for _, i := range part {
		if s.p.Places[i].From != Branch {
			continue
		}
		at := 0
		for k, o := range out {
			if slices.Contains(s.p.Places[i].Hosts, o) {
				at = k + 1
			}
		}
		for at < len(out) && s.p.Places[out[at]].From == Branch {
			at++
		}
		out = slices.Insert(out, at, i)
	}
	return out
}

// wanting tells, of the branches that hosts offer, which places still to come may start at.
type wanting map[branch][]int

// wants is, behind each place of a part, what the places still to come want.
func (s *solver) wants(part []int) []wanting {
	out := make([]wanting, len(part))
	w := wanting{}
	for i := len(part) - 1; i >= 0; i-- {
		out[i] = maps.Clone(w)
		p := &s.p.Places[part[i]]
		if p.From != Branch {
			continue
		}
		var ends []int
		for _, c := range s.cands[part[i]] {
			if c.made && !slices.Contains(ends, c.source) {
				ends = append(ends, c.source)
			}
		}
		for _, h := range p.Hosts {
			for _, e := range ends {
				b := branch{h, e}
				w[b] = append(slices.Clone(w[b]), part[i])
			}
		}
	}
	return out
}

// serve reports whether each branch that waits may have a place of its own, as far as counting
// tells: no branch without any, and no more branches than places.
func (w wanting) serve(pool []branch) bool {
	var places []int
	for _, b := range pool {
		list := w[b]
		if len(list) == 0 {
			return false
		}
		for _, p := range list {
			if !slices.Contains(places, p) {
				places = append(places, p)
			}
		}
	}
	return len(pool) <= len(places)
}

// later tells which scarce classes the places still to come may use.
func (s *solver) later(part []int, classes map[int]int) []bool {
	out := make([]bool, len(classes))
	for _, place := range part {
		for _, c := range s.cands[place] {
			for _, u := range c.use {
				out[classes[u.class]] = true
			}
		}
	}
	return out
}

// key is what of a state matters for the places to come.
func (n *node) key(later []bool) string {
	var b strings.Builder
	for i, u := range n.used {
		if later[i] {
			b.WriteByte(byte(u))
			b.WriteByte(byte(u >> 8))
		}
	}
	b.WriteByte('|')
	for _, p := range n.pool {
		b.WriteByte(byte(p.host))
		b.WriteByte(byte(p.host >> 8))
		b.WriteByte(byte(p.end))
		b.WriteByte(byte(p.end >> 8))
	}
	return b.String()
}

// expand gives each state that a place can lead to.
func (s *solver) expand(n *node, place int, classes map[int]int, later []bool, add func(*node)) {
	p := &s.p.Places[place]
	for k := range s.cands[place] {
		c := &s.cands[place][k]
		if !s.fits(n, c, classes) {
			continue
		}
		if p.From != Branch || !c.made {
			add(s.with(n, place, c, classes, -1))
			continue
		}
		for i, b := range n.pool {
			if b.end != c.source || !slices.Contains(p.Hosts, b.host) || i > 0 && n.pool[i-1] == b {
				continue
			}
			add(s.with(n, place, c, classes, i))
		}
	}
}

// fits reports whether enough is left for a chain.
func (s *solver) fits(n *node, c *candidate, classes map[int]int) bool {
	for _, u := range c.use {
		if int(n.used[classes[u.class]])+u.n > s.p.Classes[u.class].Count {
			return false
		}
	}
	return true
}

// with is a state with one more chain, started at the branch at the pool's index.
func (s *solver) with(n *node, place int, c *candidate, classes map[int]int, from int) *node {
	m := &node{cost: n.cost.Add(c.cost), used: n.used, pool: n.pool, prev: n, place: place, cand: c, host: -1}
	if len(c.use) > 0 {
		m.used = slices.Clone(n.used)
		for _, u := range c.use {
			m.used[classes[u.class]] += uint16(u.n)
		}
	}
	if from >= 0 {
		m.host = n.pool[from].host
		m.cost.Length += slices.Index(s.p.Places[place].Hosts, m.host)
		m.pool = slices.Delete(slices.Clone(n.pool), from, from+1)
	}
	if len(c.sides) > 0 {
		m.pool = slices.Clone(m.pool)
		for _, e := range c.sides {
			m.pool = append(m.pool, branch{place, e})
		}
		slices.SortFunc(m.pool, compareBranches)
	}
	return m
}
