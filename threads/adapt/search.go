package adapt

import (
	"slices"

	"handtight/threads"
)

// Chains lists the chains between two ends: all of one piece, else all of two, up to
// w.Most. Chains of more pieces than need be are not listed, nor what w.Will refuses.
func (s *Stock) Chains(a, b threads.End, w Wish) []Chain {
	var out []Chain
	s.Each(a, b, w, func(c *Chain) bool {
		out = append(out, Chain{Pieces: slices.Clone(c.Pieces), Joints: slices.Clone(c.Joints)})
		return w.Limit == 0 || len(out) < w.Limit
	})
	return out
}

// Each goes through the chains that [Stock.Chains] lists, without keeping them: what it
// hands over is used again for the next one. It ends where found returns false.
func (s *Stock) Each(a, b threads.End, w Wish, found func(*Chain) bool) {
	if w.Accept == nil {
		w.Accept = func(int) bool { return true }
	}
	q := &search{s: s, w: &w, found: found, accepted: map[[2]int][]Piece{}, met: map[[2]int]*threads.Mating{}}
	q.last = map[int]*threads.Mating{}
	goals := map[int]bool{}
	for _, c := range s.matesOf(b) {
		if m := threads.Mate(s.classes[c], b); good(&m, &w) {
			goals[c], q.last[c] = true, &m
		}
	}
	starts := s.matesOf(a)
	for n := 1; n <= w.Most; n++ {
		q.reach = s.reach(goals, n)
		for _, c := range starts {
			m := threads.Mate(a, s.classes[c])
			if !good(&m, &w) {
				continue
			}
			q.joints = append(q.joints[:0], m)
			q.from(c, n)
		}
		if q.any || q.over {
			return
		}
	}
}

// Knows reports whether any piece of the stock closes with an end.
func (s *Stock) Knows(e threads.End) bool { return len(s.matesOf(e)) > 0 }

// matesOf lists the classes that an end closes with, at low pressure too.
func (s *Stock) matesOf(e threads.End) []int {
	if c, ok := s.classOf[e]; ok {
		return s.mates[c]
	}
	var out []int
	for i := range s.classes {
		if closes(e, s.classes[i]) {
			out = append(out, i)
		}
	}
	return out
}

// reach says, by number of pieces left, from which classes a goal can be reached at all: so
// that the search never goes down a way that ends nowhere.
func (s *Stock) reach(goals map[int]bool, most int) [][]bool {
	out := make([][]bool, most+1)
	for n := 1; n <= most; n++ {
		out[n] = make([]bool, len(s.classes))
		for c := range s.classes {
			for i := range s.edges[c] {
				to := s.edges[c][i].to
				if n == 1 && goals[to] || n > 1 && slices.ContainsFunc(s.mates[to], func(m int) bool { return out[n-1][m] }) {
					out[n][c] = true
					break
				}
			}
		}
	}
	return out
}

// search goes from class to class. Which pieces will do is asked once of each piece, and how
// two classes meet once of each pair: pieces of the same two ends make the same joints.
type search struct {
	s        *Stock
	w        *Wish
	found    func(*Chain) bool
	last     map[int]*threads.Mating // of a goal's class with the end that is searched for
	met      map[[2]int]*threads.Mating
	accepted map[[2]int][]Piece
	reach    [][]bool
	lists    [][]Piece // of each edge on the way
	joints   []threads.Mating
	any      bool
	over     bool // the caller has enough
}

func (q *search) from(class, left int) {
	if !q.reach[left][class] {
		return
	}
	for i := range q.s.edges[class] {
		to := q.s.edges[class][i].to
		if left == 1 && q.last[to] == nil {
			continue
		}
		pieces := q.will(class, i)
		if len(pieces) == 0 {
			continue
		}
		q.lists = append(q.lists, pieces)
		if left == 1 {
			q.joints = append(q.joints, *q.last[to])
			q.fill(&Chain{Joints: q.joints})
			q.joints = q.joints[:len(q.joints)-1]
		} else {
			for _, next := range q.s.mates[to] {
				if !q.reach[left-1][next] {
					continue
				}
				m := q.mate(to, next)
				if !good(m, q.w) {
					continue
				}
				q.joints = append(q.joints, *m)
				q.from(next, left-1)
				q.joints = q.joints[:len(q.joints)-1]
			}
		}
		q.lists = q.lists[:len(q.lists)-1]
		if q.over {
			return
		}
	}
}

// will lists the pieces of an edge that the caller accepts.
func (q *search) will(class, i int) []Piece {
	key := [2]int{class, i}
	list, ok := q.accepted[key]
	if !ok {
		for _, p := range q.s.edges[class][i].pieces {
			if q.w.Accept(p.Index) {
				list = append(list, p)
			}
		}
		if q.w.Best != nil && len(list) > 1 {
			list = q.w.Best(list)
		}
		q.accepted[key] = list
	}
	return list
}

func (q *search) mate(a, b int) *threads.Mating {
	key := [2]int{a, b}
	if q.met[key] == nil {
		m := threads.Mate(q.s.classes[a], q.s.classes[b])
		q.met[key] = &m
	}
	return q.met[key]
}

// fill puts pieces on every edge of a way.
func (q *search) fill(c *Chain) {
	k := len(c.Pieces)
	if k == len(q.lists) {
		if q.w.Will != nil && !q.w.Will(c) {
			return
		}
		q.any = true
		q.over = !q.found(c)
		return
	}
	for _, p := range q.lists[k] {
		if k > 0 && q.w.Pair != nil && !q.w.Pair(c.Pieces[k-1].Index, p.Index) {
			continue
		}
		c.Pieces = append(c.Pieces[:k], p)
		if q.fill(c); q.over {
			return
		}
	}
	c.Pieces = c.Pieces[:k]
}
