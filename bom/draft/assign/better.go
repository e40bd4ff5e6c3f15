package assign

import "slices"

// better betters an answer that a bounded search gave: two groups of places at a time are freed,
// and where no two help, three that could hand pieces round; they are filled again beside all
// others as they are, as long as that makes the whole cheaper. A
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
	wants := make([]map[int]bool, len(groups))
	for g := range groups {
		wants[g] = s.wanted(groups[g])
	}
	for at := 0; ; {
		sets := next(at, best, groups, wants)
		if sets == nil {
			return best
		}
		now := best
		for _, set := range sets {
			if s.steps > end {
				return now
			}
			if n := s.freed(part, now, all, set...); n != nil && n.cost.Compare(now.cost) < 0 {
				now = n
				if at > 0 {
					break
				}
			}
		}
		at++
		if now != best {
			best, at = now, 0 // what helped lets others help that did not
		}
	}
}

// next lists the groups that are freed together: first two of which one lacks something, then
// three that could hand pieces round, then any two and any three, for what is left over. It is
// nil behind the last.
func next(at int, best *node, groups [][]int, wants []map[int]bool) [][][]int {
	out := [][][]int{}
	switch at {
	case 0, 2:
		for a := range groups {
			for b := range groups {
				lacks, other := best.lacks(groups[a]), best.lacks(groups[b])
				if a == b || at == 0 && !lacks || (at == 2 || other) && b > a {
					continue
				}
				out = append(out, [][]int{groups[a], groups[b]})
			}
		}
	case 1, 3:
		for _, set := range threes(best, groups, wants, at == 3) {
			out = append(out, [][]int{groups[set[0]], groups[set[1]], groups[set[2]]})
		}
	default:
		return nil
	}
	return out
}

// wanted are the scarce classes that some chain of a group's places takes.
func (s *solver) wanted(group []int) map[int]bool {
	out := map[int]bool{}
	for _, i := range group {
		for k := range s.cands[i] {
			for _, u := range s.cands[i][k].use {
				out[u.class] = true
			}
		}
	}
	return out
}

// threes lists the groups, three at a time, that could hand pieces round: what the first lacks
// the second or the third may hold, and what the second then lacks the third. Of each row of
// three the first lacks something.
func threes(best *node, groups [][]int, wants []map[int]bool, any bool) (out [][3]int) {
	held := make([]map[int]bool, len(groups))
	for g := range groups {
		held[g] = best.holds(groups[g])
	}
	gives := func(from, to int) bool {
		for c := range held[from] {
			if wants[to][c] {
				return true
			}
		}
		return false
	}
	for a := range groups {
		if !any && !best.lacks(groups[a]) {
			continue
		}
		for b := range groups {
			if b == a || !gives(b, a) {
				continue
			}
			for c := range groups {
				if c == a || c == b || !gives(c, b) && !gives(c, a) || gives(c, a) && c < b {
					continue // the last takes no part, or the same three come the other way round
				}
				out = append(out, [3]int{a, b, c})
			}
		}
	}
	return out
}

// holds are the scarce classes that the chains of a group take.
func (n *node) holds(group []int) map[int]bool {
	out := map[int]bool{}
	for ; n != nil && n.place >= 0; n = n.prev {
		if slices.Contains(group, n.place) {
			for _, u := range n.cand.use {
				out[u.class] = true
			}
		}
	}
	return out
}

// tried is how many states are kept while two groups are filled again.
const tried = 200

// freed fills the places of groups again, all others as in a state.
func (s *solver) freed(part []int, now *node, all [][]candidate, groups ...[]int) *node {
	chosen := map[int]*candidate{}
	for n := now; n != nil && n.place >= 0; n = n.prev {
		chosen[n.place] = n.cand
	}
	fixed := func(i int) bool {
		return !slices.ContainsFunc(groups, func(g []int) bool { return slices.Contains(g, i) })
	}
	left := map[int]int{} // pieces that the others leave
	for _, i := range part {
		if !fixed(i) {
			continue
		}
		for _, u := range chosen[i].use {
			left[u.class] -= u.n
		}
	}
	fits := func(c *candidate) bool {
		return !slices.ContainsFunc(c.use, func(u use) bool { return s.p.Classes[u.class].Count+left[u.class] < u.n })
	}
	rest := make([]Cost, len(part)+1)
	for k := len(part) - 1; k >= 0; k-- {
		i := part[k]
		s.cands[i] = nil
		if fixed(i) {
			s.cands[i] = []candidate{*chosen[i]}
		} else {
			for n := range all[i] {
				if fits(&all[i][n]) {
					s.cands[i] = append(s.cands[i], all[i][n])
				}
			}
		}
		floor := s.cands[i][0].cost
		for n := range s.cands[i] {
			if c := s.cands[i][n].cost; c.Compare(floor) < 0 {
				floor = c
			}
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
