package drawing

// Where a part's name and notes stand.
type nameSpot uint8

const (
	nameBelow nameSpot = iota
	nameAbove
	nameBeside // right of a line that leaves downward, where another leaves upward
)

type nameplate struct {
	lines []string
	kinds []string // "name" or "note", by line
	whole string
	where nameSpot
}

// plates breaks every part's name and notes into lines, and says where they stand: below
// the symbol, above it where a line leaves downward, or right of that line.
func (l *layout) plates() {
	l.names = make([]nameplate, len(l.s.Parts))
	used := make([][4]bool, len(l.s.Parts))
	for _, w := range l.wires {
		k := &l.s.Links[w.link]
		used[k.From][w.from], used[k.To][w.to] = true, true
	}
	for i := range l.s.Parts {
		p := &l.s.Parts[i]
		n := &l.names[i]
		fit := l.pitch - 10
		switch {
		case used[i][below] && used[i][above]:
			n.where = nameBeside
			fit = l.pitch/2 - 8
		case used[i][below]:
			n.where = nameAbove
		}
		n.whole = p.Name
		name := breakName(p.Name, fit, 2)
		if n.where == nameBeside {
			name = breakName(p.Name, fit, 3)
		}
		for _, line := range name {
			n.lines, n.kinds = append(n.lines, line), append(n.kinds, "name")
		}
		for _, note := range p.Notes {
			for _, line := range breakName(note, fit, 2) {
				n.lines, n.kinds = append(n.lines, line), append(n.kinds, "note")
			}
		}
		if p.Over != "" {
			for _, line := range breakName(p.Over, fit/1.08, 3) {
				n.lines, n.kinds = append(n.lines, line), append(n.kinds, "over")
			}
		}
	}
}

// nameTexts sets the names; lines keep clear of them.
func (l *layout) nameTexts() {
	for i := range l.names {
		n := &l.names[i]
		c := l.centre(i)
		top := c.Y + half + lineRoom
		if n.where == nameAbove {
			top = c.Y - overLine - float64(len(n.lines))*leadin
		}
		for k, line := range n.lines {
			y := top + float64(k)*leadin
			w := textWidth(line)
			if n.kinds[k] == "over" {
				w = boldWidth(line)
			}
			t := Text{Text: line, At: Point{c.X, y + 10}, Anchor: "middle", Class: n.kinds[k], Box: Box{c.X - w/2, y, c.X + w/2, y + leadin - 1}}
			if n.where == nameBeside {
				t.At.X, t.Anchor = c.X+6, "start"
				t.Box = Box{c.X + 6, y, c.X + 6 + w, y + leadin - 1}
			}
			if k == 0 && line != n.whole {
				t.Whole = n.whole
			}
			l.text(t)
			l.solid = append(l.solid, t.Box.grow(1))
		}
	}
}
