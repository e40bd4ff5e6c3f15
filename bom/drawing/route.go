package drawing

import (
	"container/heap"
	"slices"
)

// What a line pays, in units of length: judgement, by looking at pictures.
const (
	bendCost     = 34
	crossingCost = 110
)

// grid is the tracks that lines may run on: every crossing of xs and ys is a node.
type grid struct {
	xs, ys  []float64
	shutH   []bool // the piece from node (x,y) to (x+1,y) is not free
	shutV   []bool // the piece from (x,y) to (x,y+1)
	through []uint8

	best []float64 // of the search under way, by state; below 0: not reached
	prev []int
	seen []int // the states that it reached
}

// How a line passes a node.
const (
	across uint8 = 1 << iota
	upDown
	corner
)

func newGrid(xs, ys []float64, solid []Box) *grid {
	slices.Sort(xs)
	slices.Sort(ys)
	g := &grid{xs: slices.Compact(xs), ys: slices.Compact(ys)}
	n := len(g.xs) * len(g.ys)
	g.shutH, g.shutV, g.through = make([]bool, n), make([]bool, n), make([]uint8, n)
	for _, b := range solid {
		x0, _ := slices.BinarySearch(g.xs, b.X0)
		y0, _ := slices.BinarySearch(g.ys, b.Y0)
		for y := max(0, y0-1); y < len(g.ys) && g.ys[y] < b.Y1; y++ {
			for x := max(0, x0-1); x < len(g.xs) && g.xs[x] < b.X1; x++ {
				i := g.node(x, y)
				if x+1 < len(g.xs) && g.ys[y] > b.Y0 && g.xs[x+1] > b.X0 {
					g.shutH[i] = true
				}
				if y+1 < len(g.ys) && g.xs[x] > b.X0 && g.ys[y+1] > b.Y0 {
					g.shutV[i] = true
				}
			}
		}
	}
	return g
}

func (g *grid) node(x, y int) int { return y*len(g.xs) + x }

func (g *grid) point(i int) Point { return Point{g.xs[i%len(g.xs)], g.ys[i/len(g.xs)]} }

// step goes from a node one track on; ok is false at the edge or where it is not free.
func (g *grid) step(i int, d side) (to int, ok bool) {
	w := len(g.xs)
	x, y := i%w, i/w
	switch d {
	case left:
		if x == 0 || g.shutH[i-1] {
			return 0, false
		}
		return i - 1, true
	case right:
		if x == w-1 || g.shutH[i] {
			return 0, false
		}
		return i + 1, true
	case above:
		if y == 0 || g.shutV[i-w] {
			return 0, false
		}
		return i - w, true
	}
	if y == len(g.ys)-1 || g.shutV[i] {
		return 0, false
	}
	return i + w, true
}

// outside is the first free node on the way out of a symbol by a side.
func (g *grid) outside(centre Point, d side, half float64) (int, bool) {
	x, okX := slices.BinarySearch(g.xs, centre.X)
	y, okY := slices.BinarySearch(g.ys, centre.Y)
	if !okX || !okY {
		return 0, false
	}
	for {
		x, y = x+int(unit[d].X), y+int(unit[d].Y)
		if x < 0 || y < 0 || x >= len(g.xs) || y >= len(g.ys) {
			return 0, false
		}
		if abs64(g.xs[x]-centre.X)+abs64(g.ys[y]-centre.Y) > half {
			return g.node(x, y), true
		}
	}
}

func abs64(a float64) float64 { return max(a, -a) }

// trip is a state of the search: a node, and the way in which it was entered.
type trip struct {
	state int // node*4 + direction
	cost  float64
	guess float64
	order int
}

type trips []trip

func (q trips) Len() int { return len(q) }
func (q trips) Less(i, j int) bool {
	if q[i].guess != q[j].guess {
		return q[i].guess < q[j].guess
	}
	return q[i].order < q[j].order
}
func (q trips) Swap(i, j int) { q[i], q[j] = q[j], q[i] }
func (q *trips) Push(x any)   { *q = append(*q, x.(trip)) }
func (q *trips) Pop() any {
	old := *q
	last := old[len(old)-1]
	*q = old[:len(old)-1]
	return last
}

// route finds the cheapest line from one node, entered in a direction, to another that it
// must enter in a direction (A*). It runs along no other line and touches no corner of
// one; it may cross. ok is false where there is none.
func (g *grid) route(from int, out side, to int, in side) (path []int, ok bool) {
	goal := g.point(to)
	guess := func(i int) float64 {
		p := g.point(i)
		return abs64(p.X-goal.X) + abs64(p.Y-goal.Y)
	}
	if g.through[from] != 0 && !g.passes(from, out, out) {
		return nil, false
	}
	best, prev := g.fresh()
	start := from*4 + int(out)
	best[start] = 0
	g.seen = append(g.seen, start)
	queue := &trips{{state: start, guess: guess(from)}}
	order := 0
	for queue.Len() > 0 {
		t := heap.Pop(queue).(trip)
		if t.cost > best[t.state] {
			continue
		}
		i, d := t.state/4, side(t.state%4)
		if i == to && d == in {
			for s := t.state; s >= 0; s = prev[s] {
				path = append(path, s/4)
			}
			slices.Reverse(path)
			return path, true
		}
		for turn := left; turn <= below; turn++ {
			j, cost, free := g.leg(i, d, turn, t.cost)
			if !free {
				continue
			}
			next := j*4 + int(turn)
			if best[next] < 0 || cost < best[next] {
				if best[next] < 0 {
					g.seen = append(g.seen, next)
				}
				best[next], prev[next] = cost, t.state
				order++
				heap.Push(queue, trip{state: next, cost: cost, guess: cost + guess(j), order: order})
			}
		}
	}
	return nil, false
}

// leg is the step from a node that was entered in one direction to the next in another, and what the
// line costs up to there, its bend and the line that it crosses counted; free is false where no line may go.
func (g *grid) leg(i int, in, out side, before float64) (j int, cost float64, free bool) {
	if out == in.opposite() || !g.passes(i, in, out) {
		return 0, 0, false
	}
	if j, free = g.step(i, out); !free || !g.passes(j, out, out) {
		return 0, 0, false
	}
	a, b := g.point(i), g.point(j)
	cost = before + abs64(a.X-b.X) + abs64(a.Y-b.Y)
	if out != in {
		cost += bendCost
	}
	if g.through[j] != 0 {
		cost += crossingCost
	}
	return j, cost, true
}

// fresh gives the tables of a search, cleared of the last one.
func (g *grid) fresh() (best []float64, prev []int) {
	if g.best == nil {
		g.best, g.prev = slices.Repeat([]float64{-1}, len(g.through)*4), slices.Repeat([]int{-1}, len(g.through)*4)
	}
	for _, s := range g.seen {
		g.best[s], g.prev[s] = -1, -1
	}
	g.seen = g.seen[:0]
	return g.best, g.prev
}

// passes reports whether a line may go through a node, coming in one direction and
// leaving in another, beside what passes there already.
func (g *grid) passes(i int, in, out side) bool {
	t := g.through[i]
	if t == 0 {
		return true
	}
	if in != out || t&corner != 0 {
		return false
	}
	if in.upright() {
		return t == across
	}
	return t == upDown
}

// mark notes a line over its nodes, and counts the lines that it crosses.
func (g *grid) mark(path []int, in, out side) (crossed int) {
	d := in
	for k, i := range path {
		next := out
		if k+1 < len(path) {
			next = g.heading(i, path[k+1])
		}
		if g.through[i] != 0 {
			crossed++
		}
		switch {
		case next != d:
			g.through[i] |= corner
		case d.upright():
			g.through[i] |= upDown
		default:
			g.through[i] |= across
		}
		d = next
	}
	return crossed
}

func (g *grid) heading(i, j int) side {
	w := len(g.xs)
	switch j - i {
	case -1:
		return left
	case 1:
		return right
	case -w:
		return above
	}
	return below
}

// along is the nodes between two points of one row of tracks.
func (g *grid) along(a, b Point) []int {
	y, _ := slices.BinarySearch(g.ys, a.Y)
	x0, _ := slices.BinarySearch(g.xs, min(a.X, b.X))
	x1, _ := slices.BinarySearch(g.xs, max(a.X, b.X))
	var out []int
	for x := x0; x <= x1 && x < len(g.xs); x++ {
		out = append(out, g.node(x, y))
	}
	if a.X > b.X {
		slices.Reverse(out)
	}
	return out
}
