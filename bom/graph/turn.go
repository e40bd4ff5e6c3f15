package graph

import (
	"slices"

	"handtight/bom/build"
	"handtight/threads"
)

// mate judges two ports by their readings: the joint, whether the readings leave
// it open, and whether both ends are known at all.
func mate(a, b *build.Port) (m threads.Mating, open, known bool) {
	if !Sized(a.End) || !Sized(b.End) {
		return threads.Mating{}, false, false
	}
	m, open = threads.Worst(a.End, b.End)
	return m, open, true
}

// Sized reports whether something is said of an end that it can be judged by: a tail or a
// hose without a size is no more than one that is not said, nor is one whose words contradict each other.
func Sized(end threads.EndReading) bool {
	return len(end.Candidates) > 0 && !end.Torn && !slices.ContainsFunc(end.Candidates, func(e threads.End) bool { return !e.Family.Threaded() && e.Diameter == 0 })
}

// cost is how bad a joint is when a part may be turned either route.
func cost(a, b *build.Port) int {
	m, _, known := mate(a, b)
	switch {
	case !known:
		return 2
	case m.Verdict.Holds():
		return 0
	case m.Verdict == threads.LowPressureOnly:
		return 1
	}
	return 3
}

// turn chooses how each unit of a run is passed so that the joints together are
// best, and the written order on a tie. It leaves the chosen route as each visit's
// only one.
//
// It is the shortest path through the routes, one column a step; each column has one
// or two.
func (w *walker) turn(visits []visit) {
	if !choices(visits) {
		return
	}
	sums := make([][2]int, len(visits))
	back := make([][2]int, len(visits))
	for i := 1; i < len(visits); i++ {
		for k, to := range visits[i].routes {
			best := -1
			for p, from := range visits[i-1].routes {
				c := sums[i-1][p] + cost(w.port(&visits[i-1], from.exit), w.port(&visits[i], to.entry))
				if best < 0 || c < best {
					best, back[i][k] = c, p
				}
			}
			sums[i][k] = best
		}
	}
	last := len(visits) - 1
	k := 0
	if len(visits[last].routes) > 1 && sums[last][1] < sums[last][0] {
		k = 1
	}
	for i := last; i >= 0; i-- {
		visits[i].routes = visits[i].routes[k : k+1]
		k = back[i][k]
	}
}

func (w *walker) port(v *visit, index int) *build.Port { return w.graph.Port(v.unit, index).Port }

func choices(visits []visit) bool {
	for i := range visits {
		if len(visits[i].routes) > 1 {
			return true
		}
	}
	return false
}
