package leastcost

// Bound is what no way costs less than; [Never] where there is none.
func (s *Solver) Bound() int64 {
	best := Never
	for _, t := range s.trees {
		best = min(best, t.least)
	}
	return best
}
