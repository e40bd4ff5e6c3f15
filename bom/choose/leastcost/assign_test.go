package leastcost_test

import (
	"fmt"
	"slices"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"handtight/bom/choose/leastcost"
)

// lcg is a linear congruential generator, Numerical Recipes (memory): the same cases each time.
type lcg uint32

func (l *lcg) next(n int) int {
	*l = *l*1664525 + 1013904223
	return int(*l>>8) % n
}

// small draws a problem of a few variables: a tree with links more, some choices and some
// pairs that may not be.
func small(l *lcg, most, choices int) *leastcost.Problem {
	p := &leastcost.Problem{}
	n := 1 + l.next(most)
	for range n {
		row := make([]int64, 1+l.next(choices))
		for x := range row {
			row[x] = int64(l.next(50))
			if l.next(8) == 0 {
				row[x] = leastcost.Never
			}
		}
		p.Cost = append(p.Cost, row)
	}
	link := func(a, b int) {
		cost := make([][]int64, len(p.Cost[a]))
		for x := range cost {
			cost[x] = make([]int64, len(p.Cost[b]))
			for y := range cost[x] {
				cost[x][y] = int64(l.next(40))
				if l.next(5) == 0 {
					cost[x][y] = leastcost.Never
				}
			}
		}
		p.Links = append(p.Links, leastcost.Link{A: a, B: b, Cost: cost})
	}
	for v := 1; v < n; v++ {
		if l.next(6) > 0 {
			link(v, l.next(v))
		}
	}
	for range l.next(4) {
		if a, b := l.next(n), l.next(n); a != b {
			link(a, b)
		}
	}
	return p
}

// all prices every way.
func all(p *leastcost.Problem) []int64 {
	out := []int64{}
	way := make([]int, len(p.Cost))
	var try func(int)
	try = func(v int) {
		if v == len(way) {
			if c := p.Of(way); c < leastcost.Never {
				out = append(out, c)
			}
			return
		}
		for x := range p.Cost[v] {
			way[v] = x
			try(v + 1)
		}
	}
	try(0)
	slices.Sort(out)
	return out
}

// Three thousand small problems of up to eight variables: the least cost is that of brute
// force, and the ways come in the order of their cost, each once, none left out.
func TestAgainstBruteForce(t *testing.T) {
	count := 3000
	if testing.Short() {
		count = 300
	}
	l := lcg(7)
	for i := range count {
		p := small(&l, 8, 3)
		want := all(p)
		s := leastcost.New(p)
		require.True(t, s.Exact)
		least := leastcost.Never
		if len(want) > 0 {
			least = want[0]
		}
		require.Equal(t, least, s.Bound(), "problem %d", i)
		got := []int64{}
		seen := map[string]bool{}
		s.Each(func(way []int, bound int64) bool {
			require.Equal(t, p.Of(way), bound)
			key := fmt.Sprint(way)
			require.False(t, seen[key], "a way comes twice")
			seen[key] = true
			got = append(got, bound)
			return len(got) < 200
		})
		require.Equal(t, want[:min(len(want), 200)], got, "problem %d", i)
	}
}

// depthFirst is the least cost by trying every way that is not dearer already.
func depthFirst(p *leastcost.Problem) int64 {
	best := leastcost.Never
	way := make([]int, len(p.Cost))
	var try func(v int, cost int64)
	try = func(v int, cost int64) {
		if cost >= best {
			return
		}
		if v == len(way) {
			best = cost
			return
		}
		for x := range p.Cost[v] {
			way[v] = x
			more := cost + p.Cost[v][x]
			for i := range p.Links {
				if l := &p.Links[i]; max(l.A, l.B) == v {
					more += l.Cost[way[l.A]][way[l.B]]
				}
			}
			try(v+1, more)
		}
	}
	try(0, 0)
	return best
}

// A choice more never makes the best dearer.
func TestMoreChoices(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		l := lcg(rapid.Uint32().Draw(t, "seed"))
		p := small(&l, 6, 3)
		before := leastcost.New(p).Bound()
		v := l.next(len(p.Cost))
		p.Cost[v] = append(p.Cost[v], int64(l.next(50)))
		for i := range p.Links {
			k := &p.Links[i]
			if k.A == v {
				row := make([]int64, len(p.Cost[k.B]))
				for y := range row {
					row[y] = int64(l.next(40))
				}
				k.Cost = append(k.Cost, row)
			}
			if k.B == v {
				for x := range k.Cost {
					k.Cost[x] = append(k.Cost[x], int64(l.next(40)))
				}
			}
		}
		require.LessOrEqual(t, leastcost.New(p).Bound(), before)
	})
}

// A thick graph is taken apart by trying the ways of some of its variables, and is as exact; a
// thicker one gives a bound that nothing lies below.
func TestThickGraphs(t *testing.T) {
	l := lcg(3)
	clique := func(n, choices int) *leastcost.Problem {
		p := &leastcost.Problem{}
		for range n {
			row := make([]int64, choices)
			for x := range row {
				row[x] = int64(l.next(50))
			}
			p.Cost = append(p.Cost, row)
		}
		for a := range n {
			for b := range a {
				cost := make([][]int64, choices)
				for x := range cost {
					cost[x] = make([]int64, choices)
					for y := range cost[x] {
						cost[x][y] = int64(l.next(40))
					}
				}
				p.Links = append(p.Links, leastcost.Link{A: a, B: b, Cost: cost})
			}
		}
		return p
	}
	p := clique(10, 4) // 4^10 entries are too many for one table
	s := leastcost.New(p)
	require.True(t, s.Exact)
	require.Equal(t, depthFirst(p), s.Bound())

	p = clique(40, 4)
	s = leastcost.New(p)
	require.False(t, s.Exact)
	n := 0
	s.Each(func(way []int, bound int64) bool {
		require.LessOrEqual(t, bound, p.Of(way))
		n++
		return n < 50
	})
	require.Equal(t, 50, n)
}

// BenchmarkAssign is 200 items of 4 choices, a tree with 12 links more.
func BenchmarkAssign(b *testing.B) {
	l := lcg(11)
	p := &leastcost.Problem{}
	for range 200 {
		row := make([]int64, 4)
		for x := range row {
			row[x] = int64(l.next(9000))
		}
		p.Cost = append(p.Cost, row)
	}
	link := func(a, b int) {
		cost := make([][]int64, 4)
		for x := range cost {
			cost[x] = make([]int64, 4)
			for y := range cost[x] {
				if x != y {
					cost[x][y] = int64(l.next(6000))
				}
			}
		}
		p.Links = append(p.Links, leastcost.Link{A: a, B: b, Cost: cost})
	}
	for v := 1; v < 200; v++ {
		link(v, l.next(v))
	}
	for range 12 {
		a := l.next(199)
		link(a, a+1+l.next(199-a))
	}
	width := 0
	for b.Loop() {
		s := leastcost.New(p)
		width = s.Width
		n := 0
		s.Each(func([]int, int64) bool { n++; return n < 256 })
	}
	b.ReportMetric(float64(width), "width")
}
