package assign

import (
	"slices"
)

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
