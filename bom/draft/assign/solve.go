package assign

import (
	"slices"
)

// Enough is the bound on steps where a problem names none.
const Enough = 400_000

// Solve finds the assignment of the least cost. It does not change the problem.
func Solve(p *Problem) *Answer {
	s := &solver{p: p, limit: p.Steps, proven: true}
	if s.limit <= 0 {
		s.limit = Enough
	}
	s.list()
	s.scarcity()
	s.thin()
	a := &Answer{Places: make([]Made, len(p.Places)), Left: make([]int, len(p.Classes))}
	for _, part := range s.parts() {
		part = s.inTurn(part)
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
	if whole {
		return best, best.cost
	}
	s.proven = false
	best = s.better(part, best)
	if dropped.Compare(best.cost) < 0 {
		return best, dropped
	}
	return best, best.cost
}

// keepStates keeps the cheapest of sorted states, and the cheapest one in which no branch
// waits: that one can always be gone on from.
func keepStates(states []*node, n int) []*node {
	if k := slices.IndexFunc(states, func(m *node) bool { return len(m.pool) == 0 }); k >= n {
		states[n-1] = states[k]
	}
	return states[:n]
}

// run goes through the places of a part. keep is how many states stay after each place, 0 for
// all while the steps last; above is a cost that is known to be reached. whole is false where
// states were dropped; dropped is then the least that any of them could have come to.
func (s *solver) run(part []int, rest []Cost, above *Cost, keep int) (best *node, dropped Cost, whole bool) {
	whole = true
	classes := s.classesOf(part)
	wants := s.wants(part)
	states := []*node{{used: make([]uint16, len(classes)), host: -1, place: -1}}
	for i, place := range part {
		if fit := max(narrow, (2*s.limit-s.steps)/max(1, len(s.cands[place]))); keep == 0 && len(states) > fit {
			if d := states[fit].cost.Add(rest[i]); whole || d.Compare(dropped) < 0 {
				dropped = d
			}
			whole = false
			states = keepStates(states, fit)
		}
		next := map[string]*node{}
		later := s.later(part[i+1:], classes)
		for _, n := range states {
			s.expand(n, place, classes, later, func(m *node) {
				s.steps++
				if !wants[i].serve(m.pool) {
					return // a branch that nothing more can start at
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
			states = keepStates(states, most)
		}
	}
	if len(states) == 0 {
		return nil, dropped, whole
	}
	return states[0], dropped, whole
}

// trace writes the chains that led to a state into the answer. The branches of a place are
// given out in the order in which places ask for them.
func (s *solver) trace(n *node, a *Answer) {
	var list []*node
	for ; n != nil && n.place >= 0; n = n.prev {
		list = append(list, n)
	}
	slices.Reverse(list)
	taken := map[[3]int]bool{}
	for _, n := range list {
		m := Made{OK: n.cand.made, Stiff: n.cand.stiff, Chain: n.cand.steps, Buy: n.cand.buy, Soft: n.cand.soft, Host: -1, HostAt: -1}
		if n.host >= 0 {
			m.Host = n.host
			for at, step := range a.Places[n.host].Chain {
				for _, side := range step.Sides {
					if key := [3]int{n.host, at, side}; m.HostAt < 0 && !taken[key] && s.p.Classes[step.Class].Ends[side] == n.cand.source {
						m.HostAt, m.Side = at, side
						taken[key] = true
					}
				}
			}
		}
		a.Places[n.place] = m
	}
}
