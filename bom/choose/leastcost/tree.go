package leastcost

// table is what eliminated variables cost at the least, over variables that are not.
type table struct {
	over  []int // variables, in ascending order
	size  []int // choices of each
	value []int64
}

// at looks a way up.
func (t *table) at(way []int) int64 {
	i := 0
	for k, v := range t.over {
		i = i*t.size[k] + way[v]
	}
	return t.value[i]
}

// tree is a problem eliminated in an order, with some variables held.
type tree struct {
	p     *Problem
	order []int
	held  map[int]int
	table []*table // of each variable, over its neighbours when it was eliminated
	links [][]int  // of each variable, to those eliminated later, and to the held
	below [][]int  // of each variable: those whose tables are read where it is eliminated
	fixed int64    // of the held
	least int64
}

func newTree(p *Problem, order []int, held map[int]int) *tree {
	n := len(p.Cost)
	t := &tree{p: p, order: order, held: held, table: make([]*table, n), links: make([][]int, n), below: make([][]int, n)}
	place := make([]int, n)
	for v := range place {
		place[v] = n // the held come last
	}
	for i, v := range order {
		place[v] = i
	}
	way := make([]int, n)
	for v, x := range held {
		way[v] = x
		t.fixed = plus(t.fixed, p.Cost[v][x])
	}
	for i := range p.Links {
		l := &p.Links[i]
		switch a, b := place[l.A], place[l.B]; {
		case a == n && b == n:
			t.fixed = plus(t.fixed, l.Cost[way[l.A]][way[l.B]])
		case a <= b:
			t.links[l.A] = append(t.links[l.A], i)
		default:
			t.links[l.B] = append(t.links[l.B], i)
		}
	}
	t.least = t.fixed
	for _, v := range order {
		t.eliminate(v, place, way)
	}
	return t
}

// eliminate makes the table of a variable.
func (t *tree) eliminate(v int, place, way []int) {
	n := len(place)
	near := map[int]bool{}
	add := func(u int) {
		if u != v && place[u] < n {
			near[u] = true
		}
	}
	for _, i := range t.links[v] {
		add(t.p.Links[i].A)
		add(t.p.Links[i].B)
	}
	for _, u := range t.below[v] {
		for _, w := range t.table[u].over {
			add(w)
		}
	}
	tab := &table{}
	size := 1
	first := -1
	for u := range n {
		if near[u] {
			tab.over, tab.size = append(tab.over, u), append(tab.size, len(t.p.Cost[u]))
			size *= len(t.p.Cost[u])
			if first < 0 || place[u] < place[first] {
				first = u
			}
		}
	}
	tab.value = make([]int64, size)
	for i := range tab.value {
		rest := i
		for k := len(tab.over) - 1; k >= 0; k-- {
			way[tab.over[k]] = rest % tab.size[k]
			rest /= tab.size[k]
		}
		best := Never
		for x := range t.p.Cost[v] {
			way[v] = x
			best = min(best, t.local(v, way))
		}
		tab.value[i] = best
	}
	t.table[v] = tab
	if first < 0 {
		t.least = plus(t.least, tab.value[0])
		return
	}
	t.below[first] = append(t.below[first], v)
}

// local is what a variable's choice costs with what hangs on it, its neighbours decided.
func (t *tree) local(v int, way []int) int64 {
	total := t.p.Cost[v][way[v]]
	for _, i := range t.links[v] {
		l := &t.p.Links[i]
		total = plus(total, l.Cost[way[l.A]][way[l.B]])
	}
	for _, u := range t.below[v] {
		total = plus(total, t.table[u].at(way))
	}
	return total
}
