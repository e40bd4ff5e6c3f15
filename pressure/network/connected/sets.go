package connected

// Sets are disjoint sets of small numbers.
type Sets []int

// NewSets makes n sets of one number each: 0 to n-1.
func NewSets(n int) Sets {
	s := make(Sets, n)
	for i := range s {
		s[i] = i
	}
	return s
}

// Find gives the number that leads the set of i: the lowest in it.
func (s Sets) Find(i int) int {
	for s[i] != i {
		s[i] = s[s[i]]
		i = s[i]
	}
	return i
}

// Join makes one set of those of a and b.
func (s Sets) Join(a, b int) {
	a, b = s.Find(a), s.Find(b)
	if a > b {
		a, b = b, a
	}
	s[b] = a // the lowest number leads, so that numbering follows the file
}

// Number gives each element the number of its set, counted in order of its first, and
// how many sets there are.
func (s Sets) Number() (of []int, sets int) {
	of = make([]int, len(s))
	seen := make([]int, len(s))
	for i := range s {
		root := s.Find(i)
		if seen[root] == 0 {
			sets++
			seen[root] = sets
		}
		of[i] = seen[root] - 1
	}
	return of, sets
}
