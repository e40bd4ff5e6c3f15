package drawing

// straightLabels sets the number and the size over a straight line between neighbours,
// and what it stands for below; lines keep clear of them.
func (l *layout) straightLabels() {
	for _, w := range l.wires {
		if !w.straight {
			continue
		}
		k := &l.s.Links[w.link]
		a, b := l.centre(k.From), l.centre(k.To)
		mid := Point{(a.X + b.X) / 2, a.Y}
		gap := abs64(a.X-b.X) - 2*half - 6
		set := func(text, class string, fit, top float64) {
			if text == "" {
				return
			}
			short := shorten(text, fit)
			width := textWidth(short)
			if class == "joint" {
				short = shorten(text, fit/1.08)
				width = boldWidth(short)
			}
			t := Text{Text: short, At: Point{mid.X, top + 10}, Anchor: "middle", Class: class, Box: Box{mid.X - width/2, top, mid.X + width/2, top + leadin - 1}}
			if short != text {
				t.Whole = text
			}
			l.text(t)
			l.solid = append(l.solid, t.Box.grow(1))
		}
		name, above := mid.Y-23, mid.Y-37 // above is over the tops of the symbols, where a text may be wider
		if k.Size == "" && boldWidth(k.Name) > gap {
			set(k.Name, "joint", gap+2*half-6, above)
		} else {
			set(k.Name, "joint", gap, name)
		}
		set(k.Size, "size", gap+2*half-6, above)
		along := k.Along
		if k.Bar != "" {
			along = k.Bar
		}
		set(along, "along", gap, mid.Y+11)
	}
}

// labels sets number and size beside the lines that bend: where they meet nothing, along
// the longest piece first. It gives the lines whose numbers found no free place.
func (l *layout) labels() (bare []Line) {
	for i := range l.out.Lines {
		line := &l.out.Lines[i]
		k := &l.s.Links[line.Link]
		if l.isStraight(line.Link) || line.Stump || k.Name == "" && k.Size == "" && k.Along == "" {
			continue
		}
		var words []string
		for _, t := range []string{k.Size, k.Name, k.Along, k.Bar} {
			if t != "" {
				words = append(words, t)
			}
		}
		if !l.beside(line, words, k.Name) && !l.beside(line, []string{k.Name}, k.Name) && k.Name != "" && !l.onLine(line, k.Name) {
			bare = append(bare, *line)
		}
	}
	return bare
}

func (l *layout) isStraight(link int) bool { return l.wires[link].straight }

// beside tries to set some lines of text next to the line.
func (l *layout) beside(line *Line, words []string, name string) bool {
	width := 0.0
	for _, w := range words {
		width = max(width, boldWidth(w))
	}
	height := float64(len(words)) * leadin
	for _, c := range l.candidates(line, width, height) {
		if !l.free(c) {
			continue
		}
		for k, w := range words {
			class := "size"
			if w == name {
				class = "joint"
			}
			y := c.Y0 + float64(k)*leadin
			l.text(Text{Text: w, At: Point{(c.X0 + c.X1) / 2, y + 10}, Anchor: "middle", Class: class,
				Box: Box{(c.X0+c.X1)/2 - boldWidth(w)/2, y, (c.X0+c.X1)/2 + boldWidth(w)/2, y + leadin - 1}})
		}
		return true
	}
	return false
}

// shares are the places along a piece that are tried for a label: the middle first, then
// outward.
var shares = []float64{0.5, 0.4, 0.6, 0.3, 0.7, 0.2, 0.8, 0.1, 0.9, 0.03, 0.97, 0.25, 0.75, 0.15, 0.85, 0.35, 0.65, 0.45, 0.55}

// candidates are places for a label: over and under level pieces, right and left of
// upright ones, the piece with the ring first, from its middle outward.
func (l *layout) candidates(line *Line, width, height float64) []Box {
	var out []Box
	pieces := len(line.Points) - 1
	first := 0
	for i := range pieces {
		if stroke(line.Points[i], line.Points[i+1], 0.1).grow(0.1).Meets(Box{line.Ring.X, line.Ring.Y, line.Ring.X + 0.1, line.Ring.Y + 0.1}) {
			first = i
			break
		}
	}
	for i := range pieces {
		a, b := line.Points[(first+i)%pieces], line.Points[(first+i)%pieces+1]
		n := length(a, b)
		for _, share := range shares {
			m := Point{a.X + (b.X-a.X)*share, a.Y + (b.Y-a.Y)*share}
			if a.Y == b.Y {
				if n < 12 {
					continue
				}
				out = append(out, Box{m.X - width/2, m.Y - 5 - height, m.X + width/2, m.Y - 5},
					Box{m.X - width/2, m.Y + 5, m.X + width/2, m.Y + 5 + height})
				continue
			}
			out = append(out, Box{m.X + 6, m.Y - height/2, m.X + 6 + width, m.Y + height/2},
				Box{m.X - 6 - width, m.Y - height/2, m.X - 6, m.Y + height/2})
		}
	}
	return out
}

func (l *layout) free(b Box) bool {
	if !b.inside(Box{2, 2, l.form.width - 2, l.out.Height - 2}) {
		return false
	}
	b = b.grow(2)
	for _, t := range l.taken {
		if b.Meets(t) {
			return false
		}
	}
	return true
}

// onLine sets a joint's number on its own line, where no place beside it is free: the
// letters stand on the ground's colour, and interrupt no line but their own. It is false
// where none of that is free either.
func (l *layout) onLine(line *Line, name string) bool {
	w := boldWidth(name)
	for i := 1; i < len(line.Points); i++ {
		a, b := line.Points[i-1], line.Points[i]
		for _, share := range shares {
			m := Point{a.X + (b.X-a.X)*share, a.Y + (b.Y-a.Y)*share}
			box := Box{m.X - w/2, m.Y - 6, m.X + w/2, m.Y + 6}
			if l.freeBut(box, line) {
				if l.s.Links[line.Link].Mark.Severity == NoMark { // a mark stands at the ring
					line.Ring, line.Arrow = Point{-1, -1}, Point{-1, -1}
				}
				l.text(Text{Text: name, At: Point{m.X, m.Y + 4}, Anchor: "middle", Class: "joint on", Box: box})
				return true
			}
		}
	}
	return false
}

// atRing sets a joint's number where its ring stands, whatever lies beneath but a text and another line.
func (l *layout) atRing(line *Line, name string) bool {
	w, m := boldWidth(name), line.Ring
	box := Box{m.X - w/2, m.Y - 6, m.X + w/2, m.Y + 6}
	if !l.alone(box, line) {
		return false
	}
	l.text(Text{Text: name, At: Point{m.X, m.Y + 4}, Anchor: "middle", Class: "joint on", Box: box})
	return true
}

// alone reports whether no text and no other line meets a box.
func (l *layout) alone(b Box, own *Line) bool {
	if !b.inside(Box{2, 2, l.form.width - 2, l.out.Height - 2}) {
		return false
	}
	for i := range l.out.Texts {
		if b.Meets(l.out.Texts[i].Box) {
			return false
		}
	}
	for _, line := range l.out.Lines {
		for i := 1; line.Link != own.Link && i < len(line.Points); i++ {
			if b.Meets(stroke(line.Points[i-1], line.Points[i], 0.5)) {
				return false
			}
		}
	}
	return true
}

// freeBut is free, the line itself left out.
func (l *layout) freeBut(b Box, line *Line) bool {
	own := map[Box]bool{}
	for i := 1; i < len(line.Points); i++ {
		own[stroke(line.Points[i-1], line.Points[i], 2.5)] = true
	}
	if !b.inside(Box{2, 2, l.form.width - 2, l.out.Height - 2}) {
		return false
	}
	for _, t := range l.taken {
		if !own[t] && b.Meets(t) {
			return false
		}
	}
	return true
}

// signs sets the marks of findings: on a joint's ring, or on a symbol's upper right. Other
// texts keep clear of neither, since both stand on a line or a symbol of their own.
func (l *layout) signs() {
	for _, d := range l.out.Symbols {
		if m := l.s.Parts[d.Part].Mark; m.Severity != NoMark {
			at := Point{d.Centre.X + half - 7, d.Centre.Y - half + 7}
			l.out.Signs = append(l.out.Signs, Sign{Mark: m, At: at, Box: stroke(at, at, 10)})
		}
	}
	seen := map[int]bool{}
	for _, line := range l.out.Lines {
		m := l.s.Links[line.Link].Mark
		if m.Severity == NoMark || seen[line.Link] || line.Ring.X < 0 {
			continue
		}
		seen[line.Link] = true
		l.out.Signs = append(l.out.Signs, Sign{Mark: m, At: line.Ring, Box: stroke(line.Ring, line.Ring, 10)})
	}
}
