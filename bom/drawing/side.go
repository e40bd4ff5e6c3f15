package drawing

// side is one of the four sides of a symbol.
type side uint8

const (
	left side = iota
	right
	above
	below
	noSide
)

var unit = [4]Point{{-1, 0}, {1, 0}, {0, -1}, {0, 1}}

func (d side) opposite() side { return d ^ 1 }

func (d side) upright() bool { return d == above || d == below }

// wire is a link with its sides chosen.
type wire struct {
	link     int
	from, to side
	straight bool
}

// sides chooses where each link leaves and enters. Neighbours in a row are joined
// straight; a turn at the end of a row goes round by the margin; the rest leaves upward or
// downward, as the other end lies. A side is used once while there is a free one.
func (sh *sheet) sides(s *Scheme) []wire {
	wires := make([]wire, len(s.Links))
	used := make([][4]bool, len(s.Parts))
	done := make([]bool, len(s.Links))
	set := func(i int, from, to side, straight bool) {
		l := &s.Links[i]
		wires[i] = wire{i, from, to, straight}
		used[l.From][from], used[l.To][to], done[i] = true, true, true
	}
	for i, l := range s.Links {
		a, b := sh.at[l.From], sh.at[l.To]
		if a.row != b.row || l.From == l.To || !sh.clearBetween(a, b) {
			continue
		}
		from, to := right, left
		if b.col < a.col {
			from, to = left, right
		}
		if !used[l.From][from] && !used[l.To][to] {
			set(i, from, to, true)
		}
	}
	for i, l := range s.Links { // turns at the end of a row
		a, b := sh.at[l.From], sh.at[l.To]
		if done[i] || a.row == b.row || a.col != b.col || a.col != 0 && a.col != sh.columns-1 || !sh.main[a.row] || !sh.main[b.row] {
			continue
		}
		outer := left
		if a.col > 0 {
			outer = right
		}
		if !used[l.From][outer] && !used[l.To][outer] {
			set(i, outer, outer, false)
		}
	}
	for i, l := range s.Links {
		if done[i] {
			continue
		}
		a, b := sh.at[l.From], sh.at[l.To]
		from := pick(used[l.From], a, b, l.FromSide)
		used[l.From][from] = true
		to := pick(used[l.To], b, a, l.ToSide)
		set(i, from, to, false)
	}
	return wires
}

// clearBetween reports whether nothing stands between two places of a row.
func (sh *sheet) clearBetween(a, b spot) bool {
	for col := min(a.col, b.col) + 1; col < max(a.col, b.col); col++ {
		if sh.rows[a.row][col] >= 0 {
			return false
		}
	}
	return true
}

// pick chooses the side of a part that looks to another place.
func pick(used [4]bool, at, other spot, lean Lean) side {
	var order []side
	toward := right
	if other.col < at.col {
		toward = left
	}
	switch {
	case other.row < at.row:
		order = []side{above, toward, toward.opposite(), below}
	case other.row > at.row:
		order = []side{below, toward, toward.opposite(), above}
	case lean == Under:
		order = []side{below, above, toward, toward.opposite()}
	default:
		order = []side{above, below, toward, toward.opposite()}
	}
	for _, d := range order {
		if !used[d] {
			return d
		}
	}
	return order[0]
}
