package leastcost

import "slices"

// eliminate finds the order in which variables are eliminated, all but those held: each time
// the one that joins the fewest of its neighbours again. width is the most neighbours that one
// has then, and large the most entries of a table with its variable.
func eliminate(p *Problem, held []int) (order []int, width, large int) {
	near := graph(p)
	gone := make([]bool, len(p.Cost))
	remove := func(v int) {
		gone[v] = true
		for u := range near[v] {
			delete(near[u], v)
		}
	}
	for _, v := range held {
		remove(v)
	}
	for len(order)+len(held) < len(p.Cost) {
		best, fill := -1, 0
		for v := range p.Cost {
			if gone[v] {
				continue
			}
			if f := missing(near, v); best < 0 || f < fill || f == fill && len(near[v]) < len(near[best]) {
				best, fill = v, f
			}
		}
		size := len(p.Cost[best])
		list := neighbours(near, best)
		for i, u := range list {
			size = min(size*max(1, len(p.Cost[u])), mostTable+1)
			for _, w := range list[i+1:] {
				near[u][w], near[w][u] = true, true
			}
		}
		width, large = max(width, len(list)), max(large, size)
		order = append(order, best)
		remove(best)
	}
	return order, width, large
}

func graph(p *Problem) []map[int]bool {
	near := make([]map[int]bool, len(p.Cost))
	for v := range near {
		near[v] = map[int]bool{}
	}
	for i := range p.Links {
		if a, b := p.Links[i].A, p.Links[i].B; a != b {
			near[a][b], near[b][a] = true, true
		}
	}
	return near
}

func neighbours(near []map[int]bool, v int) []int {
	var out []int
	for u := range near[v] {
		out = append(out, u)
	}
	slices.Sort(out)
	return out
}

// missing counts the pairs of a variable's neighbours that are not joined.
func missing(near []map[int]bool, v int) int {
	list, n := neighbours(near, v), 0
	for i, u := range list {
		for _, w := range list[i+1:] {
			if !near[u][w] {
				n++
			}
		}
	}
	return n
}

// cutSet finds variables whose ways, tried one by one, leave a graph thin enough: each time
// the one with the most neighbours. False where they would be too many.
func cutSet(p *Problem) ([]int, bool) {
	near := graph(p)
	var held []int
	ways := 1
	for {
		best := -1
		for v := range p.Cost {
			if !slices.Contains(held, v) && (best < 0 || len(near[v]) > len(near[best])) {
				best = v
			}
		}
		if best < 0 {
			return held, true
		}
		if ways *= max(1, len(p.Cost[best])); ways > mostBranch {
			return nil, false
		}
		held = append(held, best)
		for u := range near[best] {
			delete(near[u], best)
		}
		near[best] = map[int]bool{}
		// the tables of all trees together are bounded, not those of one alone
		if _, _, large := eliminate(p, held); large <= mostTable && large*ways <= 16*mostTable {
			return held, true
		}
	}
}

// thin drops links until the tables are small enough: those first that tell the choices apart
// the least. What is dropped counts for its least cost.
func thin(p *Problem) (*Problem, []int, int) {
	q := &Problem{Cost: make([][]int64, len(p.Cost)), Links: slices.Clone(p.Links)}
	for v := range p.Cost {
		q.Cost[v] = slices.Clone(p.Cost[v])
	}
	spread := func(l *Link) (least, apart int64) {
		least, most := Never, int64(0)
		for _, row := range l.Cost {
			for _, c := range row {
				least, most = min(least, c), max(most, c)
			}
		}
		return least, most - least
	}
	slices.SortStableFunc(q.Links, func(a, b Link) int {
		_, x := spread(&a)
		_, y := spread(&b)
		switch {
		case x > y:
			return -1
		case x < y:
			return 1
		}
		return 0
	})
	all := q.Links
	keep, over := 0, len(all) // so many fit, so many do not
	for over-keep > 1 {
		q.Links = all[:(keep+over)/2]
		if _, _, large := eliminate(q, nil); large <= mostTable {
			keep = len(q.Links)
		} else {
			over = len(q.Links)
		}
	}
	q.Links = all[:keep]
	for i := range all[keep:] {
		l := &all[keep+i]
		least, _ := spread(l)
		for x := range q.Cost[l.A] {
			q.Cost[l.A][x] = plus(q.Cost[l.A][x], least)
		}
	}
	order, width, _ := eliminate(q, nil)
	return q, order, width
}
