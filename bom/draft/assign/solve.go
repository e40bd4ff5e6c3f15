package assign

import (
	"slices"
	"strings"
)

// Solve finds the assignment of the least cost. It does not change the problem.
func Solve(p *Problem) *Answer {
	s := &solver{p: p, limit: p.Steps, proven: true}
	if s.limit <= 0 {
		s.limit = 1_000_000
	}
	s.list()
	s.scarcity()
	s.thin()
	a := &Answer{Places: make([]Made, len(p.Places)), Left: make([]int, len(p.Classes))}
	for _, part := range s.parts() {
		best, bound := s.best(part)
		s.trace(best, a)
		a.Cost, a.Bound = a.Cost.Add(best.cost), a.Bound.Add(bound)
	}
	bag := 0
	for i, c := range p.Classes {
		if c.Count != Cut {
			a.Left[i], bag = c.Count, bag+c.Count
		}
	}
	for _, m := range a.Places {
		for _, step := range m.Chain {
			if p.Classes[step.Class].Count != Cut {
				a.Left[step.Class]--
			}
		}
	}
	a.Cost.LeftOver += bag
	a.Bound.LeftOver += bag
	a.Proven, a.Steps = s.proven, s.steps
	if a.Proven {
		a.Bound = a.Cost
	}
	return a
}

// solver is one search.
type solver struct {
	p      *Problem
	cands  [][]candidate // by place; the last of each is the chain that is not made
	scarce []bool
	floor  []Cost // by place: the least that it costs
	limit  int
	steps  int
	proven bool
}

// wanting counts the later places that may start at a branch of a place.
func (p *Problem) wanting(host int) int {
	n := 0
	for i := range p.Places {
		if slices.Contains(p.Places[i].Hosts, host) {
			n++
		}
	}
	return n
}

// list makes the chains of every place.
func (s *solver) list() {
	s.cands, s.floor = make([][]candidate, len(s.p.Places)), make([]Cost, len(s.p.Places))
	share := max(2000, s.limit/2/max(1, len(s.p.Places)))
	for i := range s.p.Places {
		place := &s.p.Places[i]
		from := []int{place.From}
		if place.From == Branch {
			from = s.branches()
		}
		cut := false
		for _, f := range from {
			for tees := 0; tees <= s.p.wanting(i); tees++ {
				list, n, full := s.p.chains(place, f, tees, share/len(from))
				s.cands[i] = append(s.cands[i], list...)
				s.steps += n
				cut = cut || full
			}
		}
		s.cands[i] = append(s.cands[i], candidate{cost: place.Lost, source: place.From})
		s.floor[i] = s.cands[i][0].cost
		for k := range s.cands[i] {
			if c := s.cands[i][k].cost; c.Compare(s.floor[i]) < 0 {
				s.floor[i] = c
			}
		}
		if cut {
			s.proven = false
			s.floor[i] = Cost{LeftOver: -s.p.longest()}
		}
	}
}

// branches lists the ends that a branch can have.
func (s *solver) branches() []int {
	var out []int
	for i := range s.p.Classes {
		if c := &s.p.Classes[i]; len(c.Ends) > 2 && c.Count != 0 {
			out = append(out, c.Ends...)
		}
	}
	slices.Sort(out)
	return slices.Compact(out)
}

// scarcity tells of which classes all places together may want more than there are.
func (s *solver) scarcity() {
	s.scarce = make([]bool, len(s.p.Classes))
	want := make([]int, len(s.p.Classes))
	for _, list := range s.cands {
		most := map[int]int{}
		for k := range list {
			for _, u := range list[k].use {
				most[u.class] = max(most[u.class], u.n)
			}
		}
		for c, n := range most {
			want[c] += n
		}
	}
	for i, c := range s.p.Classes {
		s.scarce[i] = c.Count != Cut && want[i] > c.Count
	}
}

// thin drops the chains that another one is no worse than: of the same branches, cheaper, and
// taking no more of anything scarce. What is not scarce is taken out of what a chain uses.
func (s *solver) thin() {
	for i, list := range s.cands {
		slices.SortStableFunc(list, func(a, b candidate) int { return a.cost.Compare(b.cost) })
		list = s.atMost(list, mostListed)
		var kept []candidate
		for k := range list {
			c := &list[k]
			c.use = slices.DeleteFunc(c.use, func(u use) bool { return !s.scarce[u.class] })
			if !slices.ContainsFunc(kept, func(d candidate) bool {
				return (d.made == c.made || len(d.sides) == 0 && s.p.Places[i].From != Branch) && (d.source == c.source || !c.made) && slices.Equal(d.sides, c.sides) && usesNoMore(d.use, c.use)
			}) {
				kept = append(kept, *c)
			}
		}
		s.cands[i] = s.atMost(kept, mostKept)
	}
}

// How many chains of a place are looked at, and how many are kept: past that, the answer is not
// proven. Sixty lines of a cart stay far below.
const (
	mostListed = 3000
	mostKept   = 600
)

// atMost keeps the cheapest of a sorted list, and the one that is not made.
func (s *solver) atMost(list []candidate, n int) []candidate {
	if len(list) <= n {
		return list
	}
	s.proven = false
	out := list[:n:n]
	for k := range list[n:] {
		if c := &list[n+k]; !c.made {
			out = append(out, *c)
		}
	}
	return out
}

func usesNoMore(a, b []use) bool {
	for _, u := range a {
		k := slices.IndexFunc(b, func(v use) bool { return v.class == u.class })
		if k < 0 || b[k].n < u.n {
			return false
		}
	}
	return true
}

// parts splits the places into those that share something scarce, or a branch: the others
// do not touch each other.
func (s *solver) parts() [][]int {
	up := make([]int, len(s.p.Places))
	for i := range up {
		up[i] = i
	}
	var root func(int) int
	root = func(i int) int {
		if up[i] != i {
			up[i] = root(up[i])
		}
		return up[i]
	}
	owner := map[int]int{}
	for i := range s.p.Places {
		for _, h := range s.p.Places[i].Hosts {
			up[root(i)] = root(h)
		}
		for _, c := range s.cands[i] {
			for _, u := range c.use {
				if o, ok := owner[u.class]; ok {
					up[root(i)] = root(o)
				} else {
					owner[u.class] = i
				}
			}
		}
	}
	var order []int
	of := map[int][]int{}
	for i := range s.p.Places {
		r := root(i)
		if of[r] == nil {
			order = append(order, r)
		}
		of[r] = append(of[r], i)
	}
	out := make([][]int, len(order))
	for i, r := range order {
		out[i] = of[r]
	}
	return out
}

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

// narrow and wide are how many states are kept where not all can be.
const (
	narrow = 60
	wide   = 1500
)

// best finds the least cost of a part: once narrow, for a bound, and then in full.
func (s *solver) best(part []int) (*node, Cost) {
	rest := make([]Cost, len(part)+1)
	for i := len(part) - 1; i >= 0; i-- {
		rest[i] = rest[i+1].Add(s.floor[part[i]])
	}
	first, _, whole := s.run(part, rest, nil, narrow)
	if whole {
		return first, first.cost
	}
	var limit *Cost
	if first != nil {
		limit = &first.cost
	}
	best, dropped, whole := s.run(part, rest, limit, 0)
	if best == nil || first != nil && best.cost.Compare(first.cost) > 0 {
		best = first
	}
	if best == nil { // every state that was kept had a branch too many: nothing is joined
		best = s.nothing(part)
	}
	if whole {
		return best, best.cost
	}
	s.proven = false
	if dropped.Compare(best.cost) < 0 {
		return best, dropped
	}
	return best, best.cost
}

// nothing is the state in which no place of a part is made.
func (s *solver) nothing(part []int) *node {
	n := &node{host: -1, place: -1}
	for _, place := range part {
		c := &candidate{cost: s.p.Places[place].Lost}
		n = &node{cost: n.cost.Add(c.cost), prev: n, place: place, cand: c, host: -1}
	}
	return n
}

// run goes through the places of a part. keep is how many states stay after each place, 0 for
// all while the steps last; above is a cost that is known to be reached. whole is false where
// states were dropped; dropped is then the least that any of them could have come to.
func (s *solver) run(part []int, rest []Cost, above *Cost, keep int) (best *node, dropped Cost, whole bool) {
	whole = true
	classes := s.classesOf(part)
	last := s.lastWanting(part)
	states := []*node{{used: make([]uint16, len(classes)), host: -1, place: -1}}
	for i, place := range part {
		if fit := max(narrow, (2*s.limit-s.steps)/max(1, len(s.cands[place]))); keep == 0 && len(states) > fit {
			if d := states[fit].cost.Add(rest[i]); whole || d.Compare(dropped) < 0 {
				dropped = d
			}
			whole = false
			states = states[:fit]
		}
		next := map[string]*node{}
		later := s.later(part[i+1:], classes)
		for _, n := range states {
			s.expand(n, place, classes, later, func(m *node) {
				s.steps++
				for _, b := range m.pool {
					if last[b.host] <= place {
						return // a branch that nothing more can start at
					}
				}
				if above != nil && m.cost.Add(rest[i+1]).Compare(*above) > 0 {
					return
				}
				key := m.key(later)
				if old, ok := next[key]; !ok || m.cost.Compare(old.cost) < 0 {
					next[key] = m
				}
			})
		}
		states = states[:0]
		for _, n := range next {
			states = append(states, n)
		}
		slices.SortFunc(states, compareNodes)
		most := keep
		if keep == 0 && s.steps > s.limit {
			most = wide
		}
		if most > 0 && len(states) > most {
			if d := states[most].cost.Add(rest[i+1]); whole || d.Compare(dropped) < 0 {
				dropped = d
			}
			whole = false
			states = states[:most]
		}
	}
	if len(states) == 0 {
		return nil, dropped, whole
	}
	return states[0], dropped, whole
}

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

// lastWanting is, of each place, the last one that may start at a branch of it.
func (s *solver) lastWanting(part []int) map[int]int {
	out := map[int]int{}
	for _, i := range part {
		if _, ok := out[i]; !ok {
			out[i] = -1
		}
		for _, h := range s.p.Places[i].Hosts {
			out[h] = max(out[h], i)
		}
	}
	return out
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

// trace writes the chains that led to a state into the answer. The branches of a place are
// given out in the order in which places ask for them.
func (s *solver) trace(n *node, a *Answer) {
	var list []*node
	for ; n != nil && n.place >= 0; n = n.prev {
		list = append(list, n)
	}
	slices.Reverse(list)
	taken := map[[2]int]bool{}
	for _, n := range list {
		m := Made{OK: n.cand.made, Stiff: n.cand.stiff, Chain: n.cand.steps, Buy: n.cand.buy, Host: -1, HostAt: -1}
		if n.host >= 0 {
			m.Host = n.host
			for at, step := range a.Places[n.host].Chain {
				if step.Side >= 0 && !taken[[2]int{n.host, at}] && s.p.Classes[step.Class].Ends[step.Side] == n.cand.source {
					m.HostAt = at
					taken[[2]int{n.host, at}] = true
					break
				}
			}
		}
		a.Places[n.place] = m
	}
}
