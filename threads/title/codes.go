package title

// noSize says what a number is that no words beside it make a size: a price, the number of a part, an angle.
func (l *line) noSize(k int, f *figure, prev, next *token) role {
	switch {
	case l.priced(k), l.amount(k, f):
		return asPrice
	case hasText(l.norm, l.tokens[k].to, ".."):
		return asScale // -10...+110 °C
	case l.ownColumn(k) && l.otherSize(k):
		return asCount
	case l.is(angled) && (f.v == 45 || f.v == 90) && !l.twice(k, f),
		f.v == 90 && f.whole && !f.marked && l.is(valve) && l.otherSize(k) && prev.role(classBefore) != asBore:
		return asAngle
	case l.is(pump) && f.whole && f.v >= 15 && (next.mark == '/' && next.glued || prev.mark == '/' && prev.glued), l.pumpType(k, f), !l.one && l.partNumbered(k, f):
		return asCode
	}
	return noRole
}

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
		if k == 0 && behind.figure.plain() && behind.to-behind.from > 2 && l.sizeElsewhere(k) {
			return true
		}
	}
	before, name := at(l.tokens, k-2).figure, at(l.tokens, k-1)
	if tied(name, &l.tokens[k]) && before != nil && before.role == asCode {
		return true
	}
	return l.tokens[k].glued && name.to == l.tokens[k].from && name.unread && name.to-name.from > 2 && letter(l.norm[name.from])
}
