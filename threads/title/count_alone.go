package title

// countAlone reports a count that stands by itself: the number that a line begins with before the name of
// the part (4 elbow 1/2 BSP), the number behind a colon at its end, a number alone in brackets, and the
// number before an x at the end. Another size must stand in the line.
func (l *line) countAlone(k int, f *figure) bool {
	hash := (k == 0 || at(l.tokens, k-1).mark == '(' && at(l.tokens, k+1).mark == ')' && at(l.tokens, k+2).is(classKind) != nil) && f.dashed && byteAt(l.norm, l.tokens[k].from-1) == '#'
	if l.one || !f.whole || f.marked || f.dashed && !hash {
		return false
	}
	if !l.sizeElsewhere(k) {
		named := k == 0 && !f.dashed && l.namesPart(1) || at(l.tokens, k+1).is(classKind) != nil && at(l.tokens, k+1).is(classEnd) == nil && l.proseBefore(k)
		return named && l.bareElsewhere(k) // 4 ball valve 15 x 10
	}
	prev, next, last := at(l.tokens, k-1), at(l.tokens, k+1), k == len(l.tokens)-1
	if size := at(l.tokens, k+2); (k == 0 || l.leads(k)) && next.mark == '-' && !next.glued && !size.glued && size.figure != nil && (size.figure.frac || size.figure.marked) && (l.tokens[k].figure.v > 1 || size.figure.v >= 1) && !l.reducing && !l.is(unequal) && !l.is(bush) {
		return true // 2 - 3/4" 90 elbow
	}
	x := func(it *token) bool { return it.value(classSep) == "x" && it.to-it.from == 1 }
	switch {
	case (k == 0 || l.leads(k) && l.norm[l.tokens[k-1].from] < 0x80 && (l.inCode(k-1) || next.is(classKind) != nil && next.is(classEnd) == nil)) && l.namesPart(k+1):
		return true
	case prev.mark == ':' && last && prev.glued, k > 0 && l.countsExtras(k):
		return true
	case next.is(classKind) != nil && (next.is(classEnd) == nil || !l.is(hose) && next.is(classKind).shape.traits&tail != 0) && !next.glued && l.proseBefore(k):
		return true // il me faudrait 4 coudes 20/20
	case k == 1 && x(prev) && l.tokens[k].glued && (l.namesPart(k+1) || next.figure != nil && !next.glued):
		prev.word = l.lex.word("the") // x2 elbow
		return true
	case l.leads(k) && x(next) && at(l.tokens, k+2).to > 0 && l.inCode(k+2):
		next.word = l.lex.word("the")
		return true // 1 x 50265K23: ball valve 1/4
	case f.v > 1 && f.v < 9 && l.countsNamed(k):
		l.both = l.both || f.v == 2 && l.namesHose()
		return true // hose with 2 female JIC-6 ends; 2 JIC 6 caps
	case next.mark == '/' && next.glued && packList.has(l.norm[at(l.tokens, k+2).from:at(l.tokens, k+2).to]):
		return true // 2/pack
	case k > 3 && x(prev) && !l.tokens[k].glued && (next.mark == '+' || next.mark == ')') && f.v < 20 && !l.reducing && l.twoDescribed(k-1):
		prev.word = l.lex.word("the")
		return true // 3/8 BSPP male / 3/8 NPT male x 2 + seals
	case (prev.mark == ':' || prev.mark == '+') && f.plain() && f.v < 5 && !l.tokens[k].glued && !next.glued && next.is(classFamily) != nil && at(l.tokens, k+2).figure != nil && (at(l.tokens, k+2).figure.frac || at(l.tokens, k+2).figure.dashed):
		return true // hose DN8: 1 JIC 9/16 female straight + 1 JIC 9/16 female 90
	case x(prev) && last && f.plain() && f.v < 21 && at(l.tokens, k-2).mark == ',' && !l.reducing && !l.is(unequal) && !l.takesTubes():
		prev.word = l.lex.word("the") // outlets 1/4 BSPP female, x 1
		return true
	case k == 1 && prev.figure == nil && andMoreList.has(l.norm[prev.from:prev.to]) && !next.glued && next.is(classKind) != nil:
		return true // and 2 hose tails 3/4
	case prev.mark == '|' && x(next) && next.glued && (at(l.tokens, k+2).mark == '|' || k+2 == len(l.tokens)):
		next.word = l.lex.word("the") // connector | 5x |
		return true
	case k > 2 && x(prev) && l.tokens[k].glued && (at(l.tokens, k-2).mark == '|' || at(l.tokens, k-2).mark == '-' && !at(l.tokens, k-2).glued) && (next.mark == '|' || next.mark == '-' && !next.glued):
		prev.word = l.lex.word("the") // ball valve 3/8 - x1 - 22.30
		return true
	case k > 1 && prev.mark == '(' && next.mark == ')' && l.countsSize(k, f):
		return true
	case prev.mark == '(' && eachOfList.has(l.norm[next.from:next.to]):
		return true // (1 per tank)
	case prev.mark == '(' && next.mark == ')', prev.mark == '(' && x(next) && at(l.tokens, k+2).mark == ')', x(prev) && at(l.tokens, k-2).mark == '(' && next.mark == ')':
		if x(prev) {
			prev.word = l.lex.word("the")
		} else if x(next) {
			next.word = l.lex.word("the")
		}
		return true
	case x(next) && next.glued && k+2 == len(l.tokens):
		next.word = l.lex.word("the")
		return true
	}
	return false
}

// proseBefore reports that only words which say nothing of a part stand before a figure, two of them at least.
func (l *line) proseBefore(k int) bool {
	for j := range l.tokens[:k] {
		it := &l.tokens[j]
		if it.figure != nil || it.is(classKind) != nil || it.is(classEnd) != nil || it.is(classFamily) != nil || it.is(classBefore) != nil || it.is(classMaterial) != nil || it.is(classSep) != nil && it.value(classSep) == "x" {
			return false
		}
	}
	return k >= 2
}

// twoDescribed reports two fractions of an inch before k, each with the name of a thread.
func (l *line) twoDescribed(k int) bool {
	sizes, families := 0, 0
	for j := range l.tokens[:k] {
		if f := l.tokens[j].figure; f != nil && f.frac {
			sizes++
		}
		if m := l.tokens[j].is(classFamily); m != nil && m.value != "THREAD" {
			families++
		}
	}
	return sizes > 1 && families > 1
}

// countsNamed reports a number at the beginning of a line, or behind a with, before the name of a thread or a sex, where parts or ends
// in the plural follow.
func (l *line) countsNamed(k int) bool {
	next := at(l.tokens, k+1)
	if next.is(classFamily) == nil && next.is(classSex) == nil || next.glued || l.tokens[k].glued || k > 0 && !(l.together(k-1) && l.tokens[k-1].figure == nil) {
		return false
	}
	if m := next.is(classFamily); m != nil && m.has("pre") {
		return false
	}
	return anyToken(l.tokens[k+1:], func(it *token) bool {
		ends := hoseEndsList.has(l.norm[it.from:it.to]) || string(l.norm[it.from:it.to]) == "ports"
		return ends || l.plural(it) && (it.is(classKind) != nil && it.is(classKind).shape.ends > 0 || it.value(classAttr) == "swivel")
	})
}

// countsSize makes the size behind a count in brackets as many ends of a tee, a manifold or a vessel: (2) 3/4 MHT.
func (l *line) countsSize(k int, f *figure) bool {
	size := at(l.tokens, k+2).figure
	if at(l.tokens, k+2).mark == '-' {
		size = at(l.tokens, k+3).figure // (2) -8 ORB
	}
	if size == nil || !size.frac && !size.marked && !size.dashed || f.v < 2 || f.v > 4 || !l.is(tee) && !l.is(manifold) && !l.is(vessel) {
		return false
	}
	size.times, size.counted = int(f.v), true
	return true
}

// countsExtras reports a number before what comes with a part: c/w 2 clamps, with 2 washers.
func (l *line) countsExtras(k int) bool {
	next := at(l.tokens, k+1)
	m := next.is(classKind)
	if m != nil && m.shape.ends < 0 {
		return true
	}
	if f := l.tokens[k].figure; f.digits() && f.v > 1 && f.v < 13 && next.value(classEnd) == "BARB" && l.plural(next) && !next.glued && at(l.tokens, k-1).mark == '+' && l.otherSize(k) && len(sizesIn(l.tokens[k+1:])) == 0 {
		return true // tee 1/2 + 3 barbs
	}
	if f := l.tokens[k].figure; m != nil && f.digits() && f.v > 1 && f.v < 13 && k > 1 && l.otherSize(k) && !next.glued && !l.namesHose() && (at(l.tokens, k-1).mark == '+' || l.together(k-1) && l.tokens[k-1].figure == nil) && len(sizesIn(l.tokens[k+1:])) == 0 {
		return true // T-Stück 1/2 IG + 2 Stopfen
	}
	if f := l.tokens[k].figure; m != nil && f.digits() && f.v < 13 && l.plural(next) && k > 1 && !l.namesHose() && (l.together(k-1) && l.tokens[k-1].figure == nil || at(l.tokens, k-1).mark == ',') && anyToken(l.tokens[:k], func(it *token) bool { return it.figure != nil && it.figure.frac }) {
		return true // pump 1/2 BSP F with 2 nipples
	}
	v := next.value(classAttr)
	return (v == "washer" || v == "o-ring" || v == "nut") && (l.together(k-1) || v != "nut" && at(l.tokens, k-1).mark == ',' && l.tokens[k].figure.digits() && l.plural(next))
}

// namesPart reports whether the words from k on begin to name a part, as they do behind a count, and say nothing
// of an end of the size before: elbow, hose barb 19 mm, male connector; not hose barb to 1/2 NPT.
func (l *line) namesPart(k int) bool {
	it, then := at(l.tokens, k), at(l.tokens, k+1)
	if it.glued || it.figure != nil || it.mark != 0 || it.is(classSep) != nil || it.is(classUnit) != nil || it.is(classAfter) != nil {
		return false
	}
	switch {
	case it.is(classFamily) != nil:
		return then.figure != nil && (then.glued || then.figure.frac) || then.mark == '-' && then.glued && string(l.norm[it.from:it.to]) == "an" // 4 G1/8 male, 4 AN-10
	case it.is(classSex) != nil:
		return then.is(classKind) != nil
	case it.is(classEnd) != nil:
		return it.is(classKind) != nil || then.value(classSep) != "x" && then.mark == 0
	}
	return it.unread || it.is(classKind) != nil || it.is(classMaterial) != nil || it.is(classNoise) != nil || it.is(classAttr) != nil
}

// bareElsewhere reports a plain number elsewhere in the line that is an outside of tube or pipe.
func (l *line) bareElsewhere(k int) bool {
	for j := range l.tokens {
		if f := l.tokens[j].figure; f != nil && j != k && f.kind == bare && (tubeOutsides[f.v] || pipeOutsides[f.v]) && !l.inCode(j) {
			return true
		}
	}
	return false
}
