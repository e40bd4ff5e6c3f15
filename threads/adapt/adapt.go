// Package adapt finds chains of pieces between two ends: every joint of a chain seals by
// [threads.Mate].
//
// It knows ends and nothing else. [New] takes the two ends of each piece of a stock and
// works out once which ends of pieces mate; [Stock.Chains] lists the chains between two given
// ends, the shortest first. What a piece is made of, what it holds and what it costs is the
// caller's: a piece that will not do is refused by the caller's own function.
package adapt

import (
	"maps"
	"slices"

	"handtight/pressure/quantity"
	"handtight/threads"
)

// Piece is one way through a fitting of two ends: In looks at what comes before.
type Piece struct {
	Index   int // in the stock
	In, Out threads.End
	Turned  bool // its second end looks at what comes before
}

// Chain is pieces in a line, with the joints at their ends: one more than pieces.
type Chain struct {
	Pieces []Piece
	Joints []threads.Mating
}

// Low counts the joints that close at low pressure only.
func (c *Chain) Low() int {
	n := 0
	for i := range c.Joints {
		if c.Joints[i].Verdict == threads.LowPressureOnly {
			n++
		}
	}
	return n
}

// Families lists the families of thread in the middle of a chain: those of neither given end.
func (c *Chain) Families(a, b threads.End) []threads.Family {
	var out []threads.Family
	for _, p := range c.Pieces {
		for _, e := range []threads.End{p.In, p.Out} {
			if e.Family != a.Family && e.Family != b.Family && !slices.Contains(out, e.Family) {
				out = append(out, e.Family)
			}
		}
	}
	return out
}

// Wish is what a chain must do.
type Wish struct {
	Pressure quantity.Pressure // that every joint must close at
	Most     int               // pieces
	Strict   bool              // no joint that closes at low pressure only
	Accept   func(index int) bool
	Pair     func(before, after int) bool // whether two pieces may touch; nil: any
	Limit    int                          // chains listed; 0: all
	// Will is asked of every chain as a whole; nil: any will do. Where none of few pieces will, those
	// of more are searched.
	Will func(*Chain) bool
	// Best leaves out pieces of the same two ends that no chain that is wanted can have; nil
	// keeps all. It is asked once for each pair of ends.
	Best func([]Piece) []Piece
}

// Stock is pieces made ready to search.
type Stock struct {
	classes []threads.End
	classOf map[threads.End]int
	edges   [][]edge // by class: pieces that have it as one end
	mates   [][]int  // by class: classes that it closes with, at low pressure too
	count   int      // pieces
}

type edge struct {
	to     int // class of the other end
	pieces []Piece
}

// New makes a stock of pieces with two ends each ready to search. It mates every class of end
// with every other once: a few hundred classes take some tens of milliseconds.
func New(pieces [][2]threads.End) *Stock {
	return (&Stock{classOf: map[threads.End]int{}}).With(pieces)
}

// With is a stock with more pieces, numbered on from those that it has; the stock itself
// stays as it is.
func (s *Stock) With(pieces [][2]threads.End) *Stock {
	t := &Stock{classes: slices.Clone(s.classes), classOf: maps.Clone(s.classOf), mates: make([][]int, len(s.mates)), edges: make([][]edge, len(s.edges)), count: s.count}
	for i := range s.edges {
		t.edges[i] = slices.Clone(s.edges[i])
		for k := range t.edges[i] {
			t.edges[i][k].pieces = slices.Clip(t.edges[i][k].pieces)
		}
		t.mates[i] = slices.Clip(s.mates[i])
	}
	for _, p := range pieces {
		a, b := t.class(p[0]), t.class(p[1])
		t.add(a, b, Piece{Index: t.count, In: p[0], Out: p[1]})
		if a != b {
			t.add(b, a, Piece{Index: t.count, In: p[1], Out: p[0], Turned: true})
		}
		t.count++
	}
	for i := len(s.classes); i < len(t.classes); i++ {
		t.mates = append(t.mates, nil)
		for k := range i + 1 {
			if !closes(t.classes[i], t.classes[k]) {
				continue
			}
			t.mates[i] = append(t.mates[i], k)
			if k != i {
				t.mates[k] = append(t.mates[k], i)
			}
		}
	}
	return t
}

func (s *Stock) class(e threads.End) int {
	if c, ok := s.classOf[e]; ok {
		return c
	}
	c := len(s.classes)
	s.classOf[e] = c
	s.classes = append(s.classes, e)
	s.edges = append(s.edges, nil)
	return c
}

func (s *Stock) add(from, to int, p Piece) {
	for i := range s.edges[from] {
		if s.edges[from][i].to == to {
			s.edges[from][i].pieces = append(s.edges[from][i].pieces, p)
			return
		}
	}
	s.edges[from] = append(s.edges[from], edge{to: to, pieces: []Piece{p}})
}

// Classes is how many different ends the stock has.
func (s *Stock) Classes() int { return len(s.classes) }

func closes(a, b threads.End) bool {
	m := threads.Mate(a, b)
	return m.Verdict.Holds() || m.Verdict == threads.LowPressureOnly
}

// good reports whether a joint closes at a pressure.
func good(m *threads.Mating, w *Wish) bool { return m.Bears(w.Pressure, w.Strict) }

// Direct reports how two ends join without a piece between, and whether that will do.
func Direct(a, b threads.End, w Wish) (threads.Mating, bool) {
	m := threads.Mate(a, b)
	return m, good(&m, &w)
}
