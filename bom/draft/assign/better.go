package assign

import "slices"

// better betters an answer that a bounded search gave: two groups of places at a time are freed,
// and filled anew beside all others as they are, as long as that makes the whole cheaper. A
// group is a place with all that may have a branch of it. It takes at most half the steps that
// the search itself may.
func (s *solver) better(part []int, best *node) *node {
	all := slices.Clone(s.cands)
	defer func() { copy(s.cands, all) }()
	var groups [][]int
	for _, h := range part {
		if s.p.Places[h].From == Branch {
			continue
		}
		g := []int{h}
		for _, i := range part {
			if slices.Contains(s.p.Places[i].Hosts, h) {
				g = append(g, i)
			}
		}
		groups = append(groups, g)
	}
	end := s.steps + s.limit/2
	for again := true; again; {
		again = false
		for a := range groups {
			for b := range groups {
				if a == b || !best.lacks(groups[a]) || best.lacks(groups[b]) && b > a {
					continue // two that lack nothing have little to give each other
				}
				if s.steps > end {
					return best
				}
				if n := s.freed(part, best, all, groups[a], groups[b]); n != nil && n.cost.Compare(best.cost) < 0 {
					best, again = n, true
				}
			}
		}
	}
	return best
}

// tried is how many states are kept while two groups are filled anew.
const tried = 200

// freed fills the places of groups anew, all others as in a state.
func (s *solver) freed(part []int, now *node, all [][]candidate, groups ...[]int) *node {
	chosen := map[int]*candidate{}
	for n := now; n != nil && n.place >= 0; n = n.prev {
		chosen[n.place] = n.cand
	}
	rest := make([]Cost, len(part)+1)
	for k := len(part) - 1; k >= 0; k-- {
		i := part[k]
		floor := s.floor[i]
		s.cands[i] = all[i]
		if !slices.ContainsFunc(groups, func(g []int) bool { return slices.Contains(g, i) }) {
			s.cands[i], floor = []candidate{*chosen[i]}, chosen[i].cost
		}
		rest[k] = rest[k+1].Add(floor)
	}
	n, _, _ := s.run(part, rest, &now.cost, tried)
	return n
}

// lacks reports whether something is to buy, or stops, in a group of places.
func (n *node) lacks(group []int) bool {
	for ; n != nil && n.place >= 0; n = n.prev {
		if slices.Contains(group, n.place) && (n.cand.cost.Missing > 0 || n.cand.cost.Stops > 0) {
			return true
		}
	}
	return false
}
