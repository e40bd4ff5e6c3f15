package leastcost

import (
	"container/heap"
	"math"
)

// Never is the cost of what may not be: it is added to without a limit being passed.
const Never int64 = math.MaxInt64 / 4

// Link is what two variables cost together, by their choices.
type Link struct {
	A, B int
	Cost [][]int64 // by the choice of A, then of B; [Never] where they do not go together
}

// Problem is variables, their choices' costs, and the links between them.
type Problem struct {
	Cost  [][]int64 // by variable, by choice; [Never] where it may not be taken
	Links []Link    // several between the same two are added
}

// Of is what a way costs; [Never] or more where it may not be.
func (p *Problem) Of(way []int) int64 {
	total := int64(0)
	for v, x := range way {
		total = plus(total, p.Cost[v][x])
	}
	for i := range p.Links {
		l := &p.Links[i]
		total = plus(total, l.Cost[way[l.A]][way[l.B]])
	}
	return total
}

// plus adds costs; nothing is more than Never.
func plus(a, b int64) int64 { return min(Never, a+b) }

// Bounds of what is worked out in tables: beyond, the problem is taken apart.
const (
	mostTable  = 1 << 18 // entries of one table
	mostBranch = 1 << 12 // ways of the variables that are tried one by one
)

// Solver is a problem made ready.
type Solver struct {
	p       *Problem
	trees   []*tree // one for each way of the variables that are tried one by one
	Width   int     // neighbours of a variable when it is eliminated, at the most
	Exact   bool    // false: links were dropped, and costs are lower bounds
	dropped int
}

// New makes a problem ready.
func New(p *Problem) *Solver {
	s := &Solver{p: p, Exact: true}
	order, width, large := eliminate(p, nil)
	if large <= mostTable {
		s.Width = width
		s.trees = []*tree{newTree(p, order, nil)}
		return s
	}
	if fixed, ok := cutSet(p); ok {
		order, s.Width, _ = eliminate(p, fixed)
		way := map[int]int{}
		s.branch(order, fixed, way)
		return s
	}
	s.Exact = false
	q, order, width := thin(p)
	s.p, s.Width, s.dropped = p, width, len(p.Links)-len(q.Links)
	s.trees = []*tree{newTree(q, order, nil)}
	return s
}

func (s *Solver) branch(order, fixed []int, way map[int]int) {
	if len(way) == len(fixed) {
		held := map[int]int{}
		for k, x := range way {
			held[k] = x
		}
		s.trees = append(s.trees, newTree(s.p, order, held))
		return
	}
	v := fixed[len(way)]
	for x := range s.p.Cost[v] {
		way[v] = x
		s.branch(order, fixed, way)
	}
	delete(way, v)
}

// Each goes through the ways that may be, the cheapest first by the lower bound that is handed
// over with it: the cost itself where the solver is exact. It ends where found returns false.
// The way is used again: what is kept is copied.
func (s *Solver) Each(found func(way []int, bound int64) bool) {
	h := &front{}
	for _, t := range s.trees {
		if t.least < Never {
			heap.Push(h, &node{tree: t, cost: t.least})
		}
	}
	serial := 0
	way := make([]int, len(s.p.Cost))
	for h.Len() > 0 {
		n := heap.Pop(h).(*node)
		if n.depth == len(n.tree.order) {
			n.fill(way)
			if !found(way, n.cost) {
				return
			}
			continue
		}
		n.fill(way)
		v := n.tree.order[len(n.tree.order)-1-n.depth]
		base := n.tree.table[v].at(way)
		for x := range s.p.Cost[v] {
			way[v] = x
			local := n.tree.local(v, way)
			if local >= Never {
				continue
			}
			serial++
			heap.Push(h, &node{tree: n.tree, up: n, v: v, x: x, depth: n.depth + 1, cost: n.cost - base + local, serial: serial})
		}
	}
}

// node is a way decided down to a depth.
type node struct {
	tree   *tree
	up     *node
	v, x   int
	depth  int
	cost   int64
	serial int
}

func (n *node) fill(way []int) {
	for v, x := range n.tree.held {
		way[v] = x
	}
	for ; n.up != nil; n = n.up {
		way[n.v] = n.x
	}
}

// front is the ways that are not yet decided, the cheapest first, the deeper of two alike.
type front []*node

func (f front) Len() int { return len(f) }
func (f front) Less(i, j int) bool {
	if f[i].cost != f[j].cost {
		return f[i].cost < f[j].cost
	}
	if f[i].depth != f[j].depth {
		return f[i].depth > f[j].depth
	}
	return f[i].serial < f[j].serial
}
func (f front) Swap(i, j int) { f[i], f[j] = f[j], f[i] }
func (f *front) Push(x any)   { *f = append(*f, x.(*node)) }
func (f *front) Pop() any {
	old := *f
	n := old[len(old)-1]
	*f = old[:len(old)-1]
	return n
}
