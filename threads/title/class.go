package title

import "handtight/pressure/quantity"

// takeClass keeps the lowest of the classes that the line gives, and leaves the others unused.
func (l *line) takeClass(f *figure) {
	if l.classBy != nil && l.classBy != f && l.classBy.v != f.v {
		other := f
		if f.v < l.classBy.v {
			other = l.classBy
		}
		other.role, other.used = asOtherClass, false
		if other == f {
			return
		}
	}
	l.class, l.classBy = "class "+quantity.Exact(f.v), f
}

// thousandClass reads the M of 3M and 6M as thousands, a class of forged fittings (ASME B16.11), where no part has so many male ends
// or a forged grade is named; its figure is then the class.
func (l *line) thousandClass(k int, f *figure) bool {
	m := at(l.tokens, k+1)
	if l.one || !f.plain() || f.v != 2 && f.v != 3 && f.v != 6 && f.v != 9 || !m.glued || m.to-m.from != 1 || l.norm[m.from] != 'm' || !l.capital(m.from) || l.shape == nil || !l.otherSize(k) {
		return false
	}
	if int(f.v) == l.shape.ends && !l.forged() || l.is(scaled) || l.is(dial) || l.is(hose) || l.is(tail) || l.shape.traits&(plainPipe|plain|nipple|bush|elbow|tee|union) == 0 || l.contains(cableList) || l.namesHose() || l.says("TUBE") {
		return false
	}
	m.word, m.unread = l.lex.word("the"), false
	f.v *= 1000
	return true
}

// forged reports a class or a grade of forged fittings: class 800, 3000, 6000, 9000, A105, F316 (ASME B16.11, ASTM A105 and A182).
func (l *line) forged() bool {
	for k := range l.tokens {
		it := &l.tokens[k]
		if f := it.figure; f != nil && (f.v == 800 || f.v == 3000 || f.v == 6000 || f.v == 9000) && (f.role == asClass || at(l.tokens, k-1).role(classBefore) == asClass) {
			return true
		}
		switch string(l.norm[it.from:it.to]) {
		case "a105", "f316", "f316l", "f304", "f304l", "f51", "f44":
			return true
		}
	}
	return false
}
