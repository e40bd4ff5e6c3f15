package facts

import (
	"cmp"
	"math"
	"slices"
)

// InOrder gives the indices of findings as people read them: entry by entry, the most
// dangerous first, and within one by the pressure at stake, what is not known last.
func InOrder(list []Finding) []int {
	order := make([]int, len(list))
	for i := range order {
		order[i] = i
	}
	bar := func(f *Finding) float64 {
		switch {
		case f.Unbounded:
			return math.Inf(1)
		case !f.Stake.Known:
			return -1
		}
		return f.Stake.Value
	}
	slices.SortStableFunc(order, func(i, k int) int {
		x, y := &list[i], &list[k]
		return cmp.Or(cmp.Compare(x.Group, y.Group), cmp.Compare(bar(y), bar(x)), cmp.Compare(x.Subject.Joint, y.Subject.Joint))
	})
	return order
}
