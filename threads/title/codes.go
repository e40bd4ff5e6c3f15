package title

// partNumbered reports a figure of a part's number: with others behind hyphens (2404-08-08, ref 7704-06-04, 03-4471 at
// the beginning), or glued to a name of three letters or more (ZPC8).
func (l *line) partNumbered(k int, f *figure) bool {
	if !f.whole {
		return false
	}
	tied := func(dash, far *token) bool { return dash.mark == '-' && dash.glued && far.glued }
	behind := at(l.tokens, k+2)
	if !f.marked && tied(at(l.tokens, k+1), behind) {
		if f.v >= 1000 && behind.figure.digits() {
			return true
		}
		if l.onlyStrange(k) && behind.figure.plain() && behind.to-behind.from > 2 && l.sizeElsewhere(k) {
			return true
		}
	}
	before, name := at(l.tokens, k-2).figure, at(l.tokens, k-1)
	if tied(name, &l.tokens[k]) && before != nil && before.role == asCode {
		return true
	}
	return l.tokens[k].glued && name.to == l.tokens[k].from && name.unread && name.to-name.from > 2 && letter(l.norm[name.from])
}

// onlyStrange reports whether nothing that is understood stands before k: a shop's name, or nothing.
func (l *line) onlyStrange(k int) bool {
	for j := range l.tokens[:k] {
		if !l.tokens[j].unread {
			return false
		}
	}
	return true
}
