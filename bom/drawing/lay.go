package drawing

import "slices"

// Room of a place above and below its line, in units.
const (
	lineRoom = 4.0  // between a symbol and what must not touch it
	overLine = 40.0 // a joint's number and size
)

// gaps are the distances of tracks that are tried, until every number has a free place.
var gaps = []float64{10, 16, 24, 34}

// layout is a picture in the making.
type layout struct {
	s     *Scheme
	form  form
	sheet *sheet
	wires []wire
	pitch float64
	gap   float64   // between tracks
	xs    []float64 // the middle of each column
	ys    []float64 // of each row
	names []nameplate
	out   *Picture
	solid []Box // what lines keep clear of
	taken []Box // what texts keep clear of: symbols, texts and lines
}

// Lay lays a scheme out. A scheme without parts gives a picture without symbols.
func Lay(s *Scheme, f Form) *Picture {
	l := &layout{s: s, form: forms[f], out: &Picture{Title: s.Title, Desc: s.Desc, Width: forms[f].width}}
	l.pitch = (l.form.width - 2*l.form.margin) / float64(l.form.columns)
	if len(s.Parts) == 0 {
		return l.out
	}
	l.sheet = place(s, l.form.columns)
	l.wires = l.sheet.sides(s)
	l.plates()
	var bare []Line
	for _, l.gap = range gaps {
		l.tracks()
		if bare = l.labels(); len(bare) == 0 {
			break
		}
	}
	for _, line := range bare {
		if !l.atRing(&line, s.Links[line.Link].Name) {
			l.part(line)
		}
	}
	l.signs()
	return l.out
}

// Most tracks between two rows before a line that finds no way becomes two pointers.
const mostTracks = 8

// tracks finds how many tracks the lines need between rows: more while some line finds no
// way, then only those that are used.
func (l *layout) tracks() {
	best, fewest := 0, 1<<30
	for tracks := 2; tracks <= mostTracks; tracks += 2 {
		l.run(l.evenly(tracks))
		if l.out.Unrouted < fewest {
			best, fewest = tracks, l.out.Unrouted
		}
		if l.out.Unrouted == 0 {
			break
		}
	}
	l.run(l.evenly(best))
	if thin := l.used(); !l.run(thin) && l.out.Unrouted > fewest {
		l.run(l.evenly(best))
	}
}

func (l *layout) evenly(tracks int) []int { return slices.Repeat([]int{tracks}, len(l.sheet.rows)+1) }

// used is how many tracks of each gap between rows some line runs along, at least one.
func (l *layout) used() []int {
	out := make([]int, len(l.ys)+1)
	for gap := range out {
		top, end := 0.0, l.out.Height
		if gap > 0 {
			top = l.ys[gap-1]
		}
		if gap < len(l.ys) {
			end = l.ys[gap]
		}
		at := map[float64]bool{}
		for _, line := range l.out.Lines {
			for i := 1; i < len(line.Points); i++ {
				if a, b := line.Points[i-1], line.Points[i]; a.Y == b.Y && a.Y > top && a.Y < end {
					at[a.Y] = true
				}
			}
		}
		out[gap] = max(1, len(at))
	}
	return out
}

// run draws symbols and lines with so many tracks in each gap between rows; false where a
// line found no way.
func (l *layout) run(tracks []int) bool {
	l.out.Symbols, l.out.Lines, l.out.Texts = nil, nil, nil
	l.out.Crossings, l.out.Unrouted = 0, 0
	l.solid, l.taken = nil, nil
	lanes := l.coordinates(tracks)
	l.symbols()
	l.nameTexts()
	l.straightLabels()
	g := l.grid(lanes)
	order := l.order()
	for _, w := range order {
		if w.straight {
			l.straight(g, w)
		}
	}
	for _, w := range order {
		if !w.straight {
			l.bent(g, w)
		}
	}
	slices.SortStableFunc(l.out.Lines, func(a, b Line) int { return a.Link - b.Link })
	return l.out.Unrouted == 0
}

// coordinates gives every column and row its middle, and the heights of the tracks
// between rows.
func (l *layout) coordinates(tracks []int) (lanes []float64) {
	l.xs, l.ys = nil, nil
	for c := range l.form.columns {
		l.xs = append(l.xs, whole(l.form.margin+(float64(c)+0.5)*l.pitch))
	}
	y := 8.0
	for r := range l.sheet.rows {
		up, down := l.extent(r)
		for t := range tracks[r] {
			lanes = append(lanes, y+float64(t)*l.gap)
		}
		y += float64(tracks[r]-1)*l.gap + 8
		l.ys = append(l.ys, whole(y+up))
		y = whole(y + up + down + 8)
	}
	last := tracks[len(tracks)-1]
	for t := range last {
		lanes = append(lanes, y+float64(t)*l.gap)
	}
	l.out.Height = whole(y + float64(last-1)*l.gap + 8)
	return lanes
}

func whole(a float64) float64 { return float64(int(a + 0.5)) }

// extent is what a row needs above and below its line.
func (l *layout) extent(row int) (up, down float64) {
	up, down = half+lineRoom+2, half+lineRoom+2
	for _, p := range l.sheet.rows[row] {
		if p < 0 {
			continue
		}
		n := &l.names[p]
		tall := float64(len(n.lines))*leadin + 4
		switch n.where {
		case nameAbove:
			up = max(up, overLine+tall)
		default:
			down = max(down, half+lineRoom+tall)
		}
	}
	for _, w := range l.wires {
		if w.straight && l.sheet.at[l.s.Links[w.link].From].row == row {
			up = max(up, overLine)
		}
	}
	return up, down
}

func (l *layout) centre(part int) Point {
	at := l.sheet.at[part]
	return Point{l.xs[at.col], l.ys[at.row]}
}

func (l *layout) symbols() {
	used := make([][4]bool, len(l.s.Parts))
	for _, w := range l.wires {
		k := &l.s.Links[w.link]
		used[k.From][w.from], used[k.To][w.to] = true, true
	}
	for p := range l.s.Parts {
		c := l.centre(p)
		b := stroke(c, c, half)
		l.out.Symbols = append(l.out.Symbols, Drawn{Part: p, Centre: c, Turned: l.sheet.turned[p], Sides: used[p], Box: b})
		l.solid = append(l.solid, b.grow(lineRoom-1))
		l.taken = append(l.taken, b)
	}
}

// grid makes the tracks: the middles of columns and rows, two tracks on either side of the
// borders between columns, the lanes between rows, and the margins.
func (l *layout) grid(lanes []float64) *grid {
	xs := slices.Clone(l.xs)
	for c := range l.form.columns + 1 {
		edge := whole(l.form.margin + float64(c)*l.pitch)
		switch {
		case c > 0 && c < l.form.columns:
			xs = append(xs, edge-9, edge, edge+9)
		case c == 0:
			for x := edge - l.form.lane; x >= 5; x -= 9 {
				xs = append(xs, x)
			}
		default:
			for x := edge + l.form.lane; x <= l.form.width-5; x += 9 {
				xs = append(xs, x)
			}
		}
	}
	return newGrid(xs, append(slices.Clone(l.ys), lanes...), l.solid)
}

// order is the links by the distance that they span, the shortest first.
func (l *layout) order() []wire {
	out := slices.Clone(l.wires)
	span := func(w wire) int {
		a, b := l.sheet.at[l.s.Links[w.link].From], l.sheet.at[l.s.Links[w.link].To]
		return abs(a.row-b.row)*3 + abs(a.col-b.col)
	}
	slices.SortStableFunc(out, func(a, b wire) int { return span(a) - span(b) })
	return out
}

func edgeOf(c Point, d side) Point { return Point{c.X + half*unit[d].X, c.Y + half*unit[d].Y} }

func (l *layout) straight(g *grid, w wire) {
	k := &l.s.Links[w.link]
	a, b := l.centre(k.From), l.centre(k.To)
	g.mark(g.along(a, b), w.from, w.from)
	l.addLine(w.link, []Point{edgeOf(a, w.from), edgeOf(b, w.to)})
}

// bent leads a link over the tracks: by the sides chosen for it, else by others that are
// free.
func (l *layout) bent(g *grid, w wire) {
	k := &l.s.Links[w.link]
	for _, try := range l.tries(w) {
		a, b := l.centre(k.From), l.centre(k.To)
		from, ok1 := g.outside(a, try.from, half)
		to, ok2 := g.outside(b, try.to, half)
		if !ok1 || !ok2 {
			continue
		}
		path, ok := g.route(from, try.from, to, try.to.opposite())
		if !ok {
			continue
		}
		l.out.Crossings += g.mark(path, try.from, try.to.opposite())
		points := []Point{edgeOf(a, try.from)}
		for _, i := range path {
			points = append(points, g.point(i))
		}
		l.addLine(w.link, corners(append(points, edgeOf(b, try.to))))
		l.useSide(k.From, w.from, try.from)
		l.useSide(k.To, w.to, try.to)
		return
	}
	l.out.Unrouted++
	l.pointers(w)
}

// tries are the pairs of sides that a link may take: the chosen ones first, then those
// where no line and no name stands.
func (l *layout) tries(w wire) []wire {
	k := &l.s.Links[w.link]
	choices := func(part int, chosen side) []side {
		out := []side{chosen}
		for _, d := range []side{left, right, above} {
			if d != chosen && !l.out.Symbols[part].Sides[d] && (d != above || l.names[part].where == nameBelow) {
				out = append(out, d)
			}
		}
		return out
	}
	var out []wire
	for _, from := range choices(k.From, w.from) {
		for _, to := range choices(k.To, w.to) {
			out = append(out, wire{link: w.link, from: from, to: to})
		}
	}
	return out
}

// useSide notes that a line meets a symbol on another side than the one chosen for it.
func (l *layout) useSide(part int, chosen, taken side) {
	if chosen != taken {
		l.out.Symbols[part].Sides[chosen] = false
		l.out.Symbols[part].Sides[taken] = true
	}
}

// pointers draws a joint that found no way as two short lines, each with the name of the
// part at its far end: never an unmarked gap.
func (l *layout) pointers(w wire) {
	k := &l.s.Links[w.link]
	for _, end := range []struct {
		part, far int
		d         side
	}{{k.From, k.To, w.from}, {k.To, k.From, w.to}} {
		at := edgeOf(l.centre(end.part), end.d)
		tip := Point{at.X + 9*unit[end.d].X, at.Y + 9*unit[end.d].Y}
		l.addLine(w.link, []Point{at, tip})
		stump := &l.out.Lines[len(l.out.Lines)-1]
		stump.Stump = true
		stump.Ring, stump.Arrow = Point{-1, -1}, Point{-1, -1}
		l.beside(stump, []string{k.Name, "to " + l.s.Parts[end.far].Name}, k.Name)
	}
}

// part draws a line whose number found no place as pointers, by the sides that it had taken.
func (l *layout) part(line Line) {
	l.out.Lines = slices.DeleteFunc(l.out.Lines, func(o Line) bool { return o.Link == line.Link })
	l.out.Unrouted++
	last := len(line.Points) - 1
	l.pointers(wire{link: line.Link, from: towards(line.Points[0], line.Points[1]), to: towards(line.Points[last], line.Points[last-1])})
	slices.SortStableFunc(l.out.Lines, func(a, b Line) int { return a.Link - b.Link })
}

// towards is the way from one point to another of a straight piece.
func towards(a, b Point) side {
	switch {
	case b.X < a.X:
		return left
	case b.X > a.X:
		return right
	case b.Y < a.Y:
		return above
	}
	return below
}

// corners drops the points on the way of a straight piece.
func corners(points []Point) []Point {
	out := points[:1:1]
	for i := 1; i+1 < len(points); i++ {
		a, b, c := out[len(out)-1], points[i], points[i+1]
		if a.X == b.X && b.X == c.X || a.Y == b.Y && b.Y == c.Y {
			continue
		}
		out = append(out, b)
	}
	return append(out, points[len(points)-1])
}

// addLine adds a line with its ring in the middle of the longest piece, and its arrow
// beyond it.
func (l *layout) addLine(link int, points []Point) {
	k := 0
	for i := 1; i+1 < len(points); i++ {
		if length(points[i], points[i+1]) > length(points[k], points[k+1])+8 {
			k = i
		}
	}
	a, b := points[k], points[k+1]
	n := length(a, b)
	ahead := Point{(b.X - a.X) / n, (b.Y - a.Y) / n}
	ring := Point{(a.X + b.X) / 2, (a.Y + b.Y) / 2}
	away := min(16, n/2-6)
	l.out.Lines = append(l.out.Lines, Line{
		Link: link, Points: points, Ring: ring, Ahead: ahead,
		Arrow: Point{ring.X + away*ahead.X, ring.Y + away*ahead.Y},
	})
	for i := 1; i < len(points); i++ {
		l.taken = append(l.taken, stroke(points[i-1], points[i], 2.5))
	}
	if l.s.Links[link].Mark.Severity != NoMark && !l.isStraight(link) {
		l.taken = append(l.taken, stroke(ring, ring, 10.5))
	}
}

func length(a, b Point) float64 { return abs64(a.X-b.X) + abs64(a.Y-b.Y) }

// text adds a text, and keeps later ones clear of it.
func (l *layout) text(t Text) {
	l.out.Texts = append(l.out.Texts, t)
	l.taken = append(l.taken, t.Box)
}
