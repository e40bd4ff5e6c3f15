package drawing

import "slices"

// spot is a place on the sheet: a row and a column, both from 0.
type spot struct{ row, col int }

// sheet is rows of places; -1 stands for a free one.
type sheet struct {
	columns int
	rows    [][]int
	main    []bool // rows of a main chain keep their order and their neighbours
	at      []spot // by part
	turned  []bool // by part: its flow is drawn from right to left
}

// place gives every part a spot.
func place(s *Scheme, columns int) *sheet {
	sh := &sheet{columns: columns, at: make([]spot, len(s.Parts)), turned: make([]bool, len(s.Parts))}
	for i := range sh.at {
		sh.at[i].row = -1
	}
	n := newNet(s)
	for _, plant := range n.chains() {
		first := len(sh.rows)
		sh.fold(plant[0].parts, first, true)
		for _, c := range plant[1:] {
			sh.hang(c, first, s)
		}
	}
	sh.turn(s)
	return sh
}

// emptyRow puts a free row in at an index.
func (sh *sheet) emptyRow(at int, main bool) {
	row := slices.Repeat([]int{-1}, sh.columns)
	sh.rows = slices.Insert(sh.rows, at, row)
	sh.main = slices.Insert(sh.main, at, main)
	for i := range sh.at {
		if sh.at[i].row >= at {
			sh.at[i].row++
		}
	}
}

func (sh *sheet) put(part, row, col int) {
	sh.rows[row][col] = part
	sh.at[part] = spot{row, col}
}

// fold lays a chain to and fro over rows of its own, from an index on.
func (sh *sheet) fold(parts []int, at int, main bool) {
	back := false
	for len(parts) > 0 {
		sh.emptyRow(at, main)
		count := min(len(parts), sh.columns)
		if rest := len(parts) - count; rest == 1 && count > 2 {
			count-- // a row of one part alone looks lost
		}
		for i, p := range parts[:count] {
			col := i
			if back {
				col = sh.columns - 1 - i
			}
			sh.put(p, at, col)
		}
		parts = parts[count:]
		back = !back
		at++
	}
}

// choice is one way to lay a chain.
type choice struct {
	row, col, step int
	fresh          bool // a row put in for it
	cost           int
}

// Costs of a choice, in units of a place sideways: judgement, by looking at pictures.
const (
	costFar     = 4 // for each row beyond the next
	costFresh   = 3 // a row more
	costReading = 1 // against the reading
	costParted  = 5 // for each pair of neighbours that a row put in parts
	costBlocked = 6 // something stands between it and what it hangs on
)

// hang lays a chain near what it hangs on, in the cheapest free stretch of a row, or
// folds it into rows of its own if it is longer than a row. It keeps to the rows of its
// own plant, from the index first on.
func (sh *sheet) hang(c chain, first int, s *Scheme) {
	anchor := sh.at[c.anchor]
	if len(c.parts) > sh.columns {
		sh.foldNear(c.parts, anchor)
		return
	}
	best := choice{cost: 1 << 30}
	for row := first; row < len(sh.rows); row++ {
		if !sh.main[row] {
			sh.tryRow(c, anchor, row, false, &best)
		}
	}
	sh.tryFresh(c, anchor, anchor.row, s, &best)
	sh.tryFresh(c, anchor, anchor.row+1, s, &best)
	if best.fresh {
		sh.emptyRow(best.row, false)
	}
	for i, p := range c.parts {
		sh.put(p, best.row, best.col+i*best.step)
	}
}

// foldNear folds a long chain below what it hangs on, beginning at the nearer end.
func (sh *sheet) foldNear(parts []int, anchor spot) {
	from := anchor.row + 1
	sh.fold(parts, from, false)
	if anchor.col > sh.columns/2 {
		for row := from; row < len(sh.rows) && sh.holds(row, parts); row++ {
			slices.Reverse(sh.rows[row])
			for col, p := range sh.rows[row] {
				if p >= 0 {
					sh.at[p] = spot{row, col}
				}
			}
		}
	}
}

func (sh *sheet) holds(row int, parts []int) bool {
	return slices.ContainsFunc(sh.rows[row], func(p int) bool { return p >= 0 && slices.Contains(parts, p) })
}

// tryRow weighs every stretch of a row that is free.
func (sh *sheet) tryRow(c chain, anchor spot, row int, fresh bool, best *choice) {
	free := func(col int) bool { return fresh || sh.rows[row][col] < 0 }
	for _, step := range []int{1, -1} {
		for col := range sh.columns {
			end := col + step*(len(c.parts)-1)
			if end < 0 || end >= sh.columns {
				continue
			}
			ok := true
			for k := col; ; k += step {
				if !free(k) {
					ok = false
					break
				}
				if k == end {
					break
				}
			}
			if !ok {
				continue
			}
			cost := sh.cost(c, anchor, row, col, step, fresh)
			if cost < best.cost {
				*best = choice{row: row, col: col, step: step, fresh: fresh, cost: cost}
			}
		}
	}
}

// tryFresh weighs a row put in before another; one that parts what stood next to each
// other pays for it.
func (sh *sheet) tryFresh(c chain, anchor spot, row int, s *Scheme, best *choice) {
	parted := 0
	for _, l := range s.Links {
		a, b := sh.at[l.From], sh.at[l.To]
		if a.row >= 0 && b.row >= 0 && min(a.row, b.row) < row && row <= max(a.row, b.row) && !(sh.main[a.row] && sh.main[b.row]) {
			parted++
		}
	}
	tried := choice{cost: 1 << 30}
	sh.tryRow(c, anchor, row, true, &tried)
	if tried.cost += costParted * parted; tried.cost < best.cost {
		*best = tried
	}
}

func (sh *sheet) cost(c chain, anchor spot, row, col, step int, fresh bool) int {
	cost := 2 * abs(col-anchor.col)
	apart := abs(row - anchor.row)
	if fresh {
		cost += costFresh * 2
		apart = 1
	}
	if apart == 0 { // beside it in its own row: only where it is next
		apart = 2
		cost += costBlocked
	}
	cost += costFar * 2 * (apart - 1)
	if !fresh && col == anchor.col {
		for r := min(row, anchor.row) + 1; r < max(row, anchor.row); r++ {
			if sh.rows[r][col] >= 0 {
				cost += costBlocked
			}
		}
	}
	if step < 0 && len(c.parts) > 1 {
		cost += costReading
	}
	return cost
}

// turn says which parts are drawn from right to left: those whose water comes from the
// right, or leaves to the left.
func (sh *sheet) turn(s *Scheme) {
	score := make([]int, len(s.Parts))
	for _, l := range s.Links {
		a, b := sh.at[l.From], sh.at[l.To]
		if a.row != b.row || l.Back {
			continue
		}
		d := 1
		if b.col < a.col {
			d = -1
		}
		if abs(b.col-a.col) == 1 {
			d *= 2
		}
		score[l.From] += d
		score[l.To] += d
	}
	for i, v := range score {
		sh.turned[i] = v < 0
	}
}

func abs(a int) int {
	if a < 0 {
		return -a
	}
	return a
}
