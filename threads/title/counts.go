package title

import (
	"bytes"
)

// counts says what a number is where a hyphen ties a whole number to a word that is no
// thread's (2-pack, 2-pc, 4-port), or the number ends a code (PC8-02).
func (l *line) counts(k int, f *figure) role {
	prev, dash, word := at(l.tokens, k-1), at(l.tokens, k+1), at(l.tokens, k+2)
	if l.tokens[k].glued && (f.v == 2 || f.v == 4) && f.whole && prev.to-prev.from == 1 && !prev.glued && l.norm[prev.from] == 'a' {
		return asGrade // A4: a grade of stainless steel
	}
	if prev.glued && prev.mark == '-' && l.tokens[k].glued && l.norm[l.tokens[k].from] == '0' && !l.dashes || l.tokens[k].glued && onlyUnit(prev.word) && len(prev.word.all()) > 0 {
		return asCode
	}
	if !l.one && l.leads(k) && f.whole && !f.marked && !f.dashed && !(dash.glued && dash.is(classFamily) != nil) && l.tokens[k].to-l.tokens[k].from > 1 && l.norm[l.tokens[k].from] == '0' && f.v > 0 && (!dash.parted() || dash.mark == '-' && !dash.glued && at(l.tokens, k+2).figure.plain() && at(l.tokens, k+3).value(classSep) == "x" && at(l.tokens, k+4).figure == nil) {
		return asCount // 01 nipple; 04 - 2x nipple
	}
	tied := f.whole && !f.marked && prev.value(classEnd) != "ROUND" && dash.mark == '-' && dash.glued && word.glued && word.figure == nil && word.mark == 0
	if next := at(l.tokens, k+1); !l.one && f.whole && !f.marked && l.tokens[k].glued && prev.is(classEnd) != nil && prev.to-prev.from > 2 && hasText(l.norm, next.from, "ea") {
		return asCount // HOSE2 EA: columns run together
	}
	if tied && word.to-word.from <= 2 && word.unread {
		return noRole
	}
	if tied && (word.is(classUnit) != nil || word.is(classAfter) != nil || word.unread || word.to-word.from > 2 && word.is(classNoise) != nil || word.is(classKind) != nil) {
		return asCount
	}
	return noRole
}

// quantity reports a whole number before an x and a part's name (4 x elbow), and
// the number of a tee's ends behind an x (1/4 female x 3).
func (l *line) quantity(k int, f *figure, next *token) bool {
	if !f.whole || f.marked {
		return false
	}
	if l.timesGlued(k, f, next) {
		return true
	}
	if (l.leads(k) || next.glued && l.proseBefore(k) && at(l.tokens, k-1).mark == 0) && next.value(classSep) == "x" && (next.glued || k == 0 && !l.is(tail) && !(l.reducing && tubeOutsides[f.v]) && mmBehind(l.tokens, k+2)) && !l.countsTee(k, f, k+2) && (!at(l.tokens, k+2).glued || at(l.tokens, k+2).figure != nil && at(l.tokens, k+2).figure.dashed) {
		next.word = l.lex.word("the")
		return true // 2x 8 mm compression: two of them
	}
	if after := at(l.tokens, k+2); !l.one && k > 0 && next.value(classSep) == "x" && next.glued && at(l.tokens, k-1).is(classEnd) != nil && l.otherSize(k) && (after.mark == ',' || after.mark == ';' || after.to == after.from) {
		next.word = l.lex.word("the")
		return true // 22 mm knel 2x, met aftap
	}
	if l.timesBehind(k, f) || l.countAlone(k, f) {
		return true
	}
	if of := l.hoseFittings(k, f); of != nil {
		of.times, of.counted, f.used = int(f.v), true, true
		return true
	}
	if of := l.likeEnds(k, f, next); of != nil {
		of.times, of.counted, f.used = int(f.v), true, true
		return true
	}
	if l.shape == nil {
		return false
	}
	after := at(l.tokens, k+2)
	if l.leads(k) && next.value(classSep) == "x" && after.figure == nil && after.is(classSex) == nil && after.is(classFamily) == nil {
		return true
	}
	if l.endsCounted(k, f, next) {
		return true
	}
	if k == len(l.tokens)-1 && k >= 2 && l.tokens[k].glued && at(l.tokens, k-1).value(classSep) == "x" && at(l.tokens, k-2).is(classMaterial) != nil && l.otherSize(k) {
		return true // nylon x50: a pack
	}
	behind := at(l.tokens, k+1)
	open := behind.figure != nil && behind.figure.sized() || behind.value(classSep) == "x" || behind.mark == '/' || behind.mark == '-' && behind.glued || telling([]token{*behind})
	last := !open && at(l.tokens, k-1).value(classSep) == "x"
	return last && f.v > 2 && int(f.v) == l.shape.ends
}

// timesGlued reports a count with its x: 2x JIC -6 male, G 3/8 (2x, one plugged), 4x G3/8 + 2x G1/4. Of a part of many ports it is how
// many of the size beside it there are. What stands behind the x is no figure, so that it is no second size.
func (l *line) timesGlued(k int, f *figure, x *token) bool {
	after := at(l.tokens, k+2)
	if l.one || f.frac || f.dashed || f.v < 1 || f.v > 20 || x.value(classSep) != "x" || !l.countsPorts(k, f) && (after.figure != nil || at(l.tokens, k-1).value(classSep) == "x") || !l.sizeElsewhere(k) {
		return false
	}
	before := at(l.tokens, k-1)
	m := after.is(classFamily)
	named := m != nil && m.value != "THREAD" && (at(l.tokens, k+3).figure != nil || at(l.tokens, k+3).mark == '-')
	switch {
	case x.glued && before.mark == '(' && after.to > after.from && after.mark == 0 && !after.glued && !named:
	case x.glued && before.mark == '(' && (after.mark == ',' || after.mark == ')'):
		if size := l.lastSize(k); size != nil && (l.is(vessel) || l.is(manifold) || l.is(tee)) && f.v > 1 && size.times == 0 {
			size.times, size.counted = int(f.v), true
		}
	case named && !after.glued && (x.glued || l.leads(k)) && (before.to == before.from || before.mark != 0 || before.unread || before.is(classNoise) != nil || before.is(classKind) != nil):
		if size := at(l.tokens, k+3).figure; size != nil && (l.is(manifold) || l.is(vessel)) && f.v > 1 {
			size.times, size.counted = int(f.v), true
		}
	case l.countsPorts(k, f):
		size := at(l.tokens, k+2).figure
		if size == nil {
			size = at(l.tokens, k+3).figure
		}
		size.times, size.counted = int(f.v), true
	case x.glued && k > 1 && (after.to == after.from || after.mark == ',' || after.mark == ';' || after.mark == '|' || !after.glued && after.is(classMaterial) != nil || !after.glued && after.is(classSex) != nil) && !l.reducing && !l.is(unequal):
	case !x.glued && k > 1 && before.is(classSex) != nil && f.plain() && f.v > 1 && (after.to == after.from || after.mark == ',' || after.mark == ';' || after.mark == '|'):
	default:
		return false
	}
	x.word = l.lex.word("the")
	return true
}

// countsPorts reports how many of the size behind an x a manifold or a tee has, where words of an end and not a figure stand before: manifold
// 1/2 NPT F inlet, 3 x 1/4 NPT F; tee 1/2 NPT M x 2 x 1/2 NPT F.
func (l *line) countsPorts(k int, f *figure) bool {
	size, before := at(l.tokens, k+2).figure, at(l.tokens, k-1)
	prefixed := size == nil && at(l.tokens, k+2).is(classFamily) != nil && !at(l.tokens, k+2).glued
	if prefixed {
		size = at(l.tokens, k+3).figure
		if (l.is(manifold) || l.is(tee)) && f.plain() && f.v > 0 && f.v < 9 && size != nil && size.times == 0 && k > 0 && before.figure == nil && before.is(classFamily) == nil {
			return true
		}
	}
	if before.value(classSep) == "x" || before.mark == ',' || before.mark == '+' || before.mark == ';' {
		before = at(l.tokens, k-2)
	}
	told := before.is(classSex) != nil || before.is(classFamily) != nil || before.is(classNoise) != nil && before.to > before.from
	return (l.is(manifold) || l.is(tee)) && f.plain() && f.v > 1 && f.v < 9 && size != nil && size.frac && size.v < 1 && size.times == 0 && told && k > 1
}

// lastSize is the last size of an end before k; nil if none stands there.
func (l *line) lastSize(k int) *figure {
	for j := k - 1; j >= 0; j-- {
		if f := l.tokens[j].figure; f != nil && (f.frac || f.marked || f.sized()) {
			return f
		}
	}
	return nil
}

// mmBehind reports a size with its millimetres at a place, that no x parts from another.
func mmBehind(tokens []token, k int) bool {
	f := at(tokens, k).figure
	return f != nil && f.kind == mmSize && at(tokens, k+1).value(classSep) != "x" && at(tokens, k+1).mark == 0 && at(tokens, k+1).is(classEnd) == nil
}

// sizeElsewhere reports whether another figure of the line is a size by its own form: a fraction, or with a
// unit or a mark.
func (l *line) sizeElsewhere(k int) bool {
	for j := range l.tokens {
		if f := l.tokens[j].figure; f != nil && j != k && (f.frac || f.marked || f.dashed || f.sized() || l.beside(j, -1).role(classBefore) == asBore) {
			return true
		}
	}
	return false
}

// timesBehind reports the count of parts behind their description: hex nipple 1/2 NPT x2. The x stands apart
// from what is before it, and touches the count. Of a part that goes from one size to another a figure
// behind a size is its other size.
func (l *line) timesBehind(k int, f *figure) bool {
	x, before, next := at(l.tokens, k-1), at(l.tokens, k-2), at(l.tokens, k+1)
	if !l.one && k >= 3 && !l.reducing && !l.is(unequal) && x.value(classSep) == "x" && l.tokens[k].glued && f.v >= 2 && !f.marked && (before.mark == ',' || before.mark == '|' || before.mark == ';') && l.otherSize(k) && (next.to == next.from || next.mark == '|' || next.mark == ';') {
		return true // elbow 15 mm, x12
	}
	if !l.one && x.value(classSep) == "x" && l.tokens[k].glued && f.whole && !f.marked && f.v >= 2 && f.v <= 4 && l.is(tee) && next.is(classEnd) != nil && l.plural(next) && l.otherSize(k) {
		return true // tee for 3/4 hose x3 barbs
	}
	if l.one || k < 2 || x.value(classSep) != "x" || x.glued || f.v < 2 || f.marked || tubeOutsides[f.v] || !l.otherSize(k) || next.figure != nil && !l.priceLike(k+1) || next.parted() && (next.mark != '-' || next.glued) || next.glued && next.mark == 0 {
		return false
	}
	if next.is(classSex) != nil || next.is(classFamily) != nil || next.is(classEnd) != nil || next.is(classAfter) != nil || next.is(classAttr) != nil {
		return false
	}
	if last := k == len(l.tokens)-1; last && before.figure == nil && (before.is(classMaterial) != nil || before.is(classNoise) != nil || before.unread) && before.is(classKind) == nil && before.is(classEnd) == nil && before.is(classSex) == nil && before.is(classFamily) == nil && !l.is(unequal) && !l.reducing {
		x.word = l.lex.word("the")
		return true // gal x 6
	}
	size, sizes := before.figure, 0
	var nearest *figure
	for j := range l.tokens[:k] {
		if o := l.tokens[j].figure; o != nil && o.sized() {
			sizes++
			nearest = o
		}
	}
	ends := 2
	if l.shape != nil {
		ends = max(l.shape.ends, 2)
	}
	unit := bytes.HasSuffix(l.norm[before.from:before.to], []byte("mm"))
	if !l.tokens[k].glued && sizes < ends && !unit && (nearest == nil || l.shape == nil || pipeSteps(nearest.v, f.v) < mostSteps) && (l.shape == nil || l.shape.ends < 1 || l.is(unequal) || l.is(nipple) || l.reducing) {
		return false // x 4 apart from each other: of a nipple or an adaptor it can be a size
	}
	switch {
	case size == nil, sizes >= ends, unit, size.kind == metricSize, size.kind == coneSize, size.dashed, f.v > largestInch && (size.marked || size.frac):
	case !size.marked && !size.frac && !size.sized():
		return false
	case l.shape == nil || l.shape.ends < 1 || l.reducing || l.is(unequal):
		if pipeSteps(size.v, f.v) < mostSteps {
			return false
		}
	}
	x.word = l.lex.word("the") // it parts no ends
	return true
}

// closeLength reports the length of a nipple of which only its threads are left: 1 x close nipple.
func (l *line) closeLength(it *token) bool {
	switch string(l.norm[it.from:it.to]) {
	case "close", "cls", "clse", "close nipple", "close nip", "cls nipple":
		return l.is(nipple)
	}
	return false
}

// hoseFittings gives the size of the fittings of a hose that a number before their name counts: hose 3/8, 2
// fittings JIC 9/16 female.
func (l *line) hoseFittings(k int, f *figure) *figure {
	tube := func(it *token) bool { return it.value(classEnd) == "TUBE" }
	if l.one || f.v < 2 || f.v > mostLike || f.marked || f.dashed || k == 0 || at(l.tokens, k-1).value(classSep) == "x" || at(l.tokens, k-1).is(classFamily) != nil || !l.is(hose) && l.proseBefore(k) || !l.namesHose() && !anyToken(l.tokens, tube) {
		return nil
	}
	named, from := false, k+1
	if x := at(l.tokens, from); x.value(classSep) == "x" && (x.glued || at(l.tokens, from+1).is(classSex) != nil && l.is(hose)) {
		from++ // 2x nut M18x1.5
		if size := at(l.tokens, from).figure; size != nil && size.kind == metricSize {
			return size // DN8 2x M22x1.5
		}
	}
	for j := from; j < len(l.tokens); j++ {
		it := &l.tokens[j]
		if it.figure != nil {
			if named && (it.figure.frac || it.figure.marked || it.figure.dashed || it.figure.sized()) {
				return it.figure
			}
			return nil
		}
		if next := at(l.tokens, j+1).figure; it.mark == '-' && next != nil && next.dashed {
			continue // JIC -8
		}
		if it.mark != 0 || it.is(classSep) != nil {
			return nil
		}
		m := it.is(classKind)
		named = named || j == from && from > k+1 && it.is(classSex) != nil || j == from && (m != nil && m.shape.ends >= 0 || it.value(classAttr) == "nut" || hoseEndsList.has(l.norm[it.from:it.to]))
	}
	return nil
}

// likeEnds gives the millimetres of so many like ends: 3 x 10 mm push-in, 3 hose tails 13 mm. A
// thread of so many inches goes on no hose or tube that small.
func (l *line) likeEnds(k int, f *figure, next *token) *figure {
	if f.v < 2 || f.v > mostLike || at(l.tokens, k-1).is(classFamily) != nil || l.is(unequal) || l.reducing {
		return nil
	}
	j := k + 1
	if next.is(classEnd) != nil {
		for j++; j < len(l.tokens) && l.tokens[j].figure == nil && (l.tokens[j].mark == 0 || l.tokens[j].mark == '/' && l.tokens[j].glued) && l.tokens[j].value(classSep) != "x"; j++ {
		}
	} else if next.value(classSep) == "x" {
		j++
	}
	size := at(l.tokens, j).figure
	if size != nil && size.kind == bare && size.whole && !size.marked && size.v >= 10 && size.v <= 63 && l.countsTee(k, f, j) {
		size.kind = mmSize
	}
	if size == nil || j == k+1 || size.kind != mmSize || size.v >= f.v*tubeOfThread && !(next.is(classEnd) != nil && l.plural(next) && !next.glued) {
		return nil
	}
	if next.is(classEnd) != nil || l.namesEnd(j) || l.countsTee(k, f, j) {
		return size
	}
	return nil
}

// countsTee reports the number of a tee's or cross's ends before its only size: tee 3x12 mm.
func (l *line) countsTee(k int, f *figure, j int) bool {
	return l.shape != nil && f.v > 2 && int(f.v) == l.shape.ends && j == k+2 && !l.tokens[k].glued && at(l.tokens, j+1).value(classSep) != "x" && at(l.tokens, k-1).value(classSep) != "x"
}

// namesEnd reports whether a word of an end without a thread stands beside a size.
func (l *line) namesEnd(k int) bool {
	return at(l.tokens, k+1).is(classEnd) != nil || at(l.tokens, k-3).is(classEnd) != nil || l.takesTubes()
}

// mostLike is the most like ends that a count before their size tells; tubeOfThread is how many
// millimetres of hose or tube a thread's size in inches comes with at least, a tail of half the
// thread. Both a judgement.
const (
	mostLike     = 6
	tubeOfThread = 10
)

// endsCounted reports the number of like ends before an x, with a word for an end on one side
// of it: tails 2 x 25 mm, 3 x tail 10 mm. A pipe thread of as many inches has no such small
// hose or tube.
func (l *line) endsCounted(k int, f *figure, next *token) bool {
	if int(f.v) != l.shape.ends || f.v < 2 || next.value(classSep) != "x" {
		return false
	}
	word, size := at(l.tokens, k-1), at(l.tokens, k+2)
	if size.figure == nil {
		word, size = size, at(l.tokens, k+3)
	}
	return word.is(classEnd) != nil && size.figure != nil && size.figure.kind == mmSize && (size.figure.v < f.v*15 || next.glued && grips(word.value(classEnd)))
}

// ringSize reports the measures of a washer (24x15x2), which are no ends.
func (l *line) ringSize(f *figure, prev, next *token) bool {
	return l.is(ring) && !f.marked && (next.parted() || prev.parted())
}

// threaded reports whether some word names a sex or a thread.
func (l *line) threaded() bool {
	for k := range l.tokens {
		if l.tokens[k].is(classSex) != nil || l.tokens[k].is(classFamily) != nil {
			return true
		}
	}
	return false
}

// leads reports whether a figure stands at the beginning of a line, or behind a name
// that is not understood and nothing else.
func (l *line) leads(k int) bool {
	for j := range l.tokens[:k] {
		if (!l.tokens[j].unread && l.tokens[j].mark == 0 || l.tokens[j].figure != nil) && !l.inCode(j) {
			return false
		}
	}
	return true
}

// countsFitting reports the number before a fitting of a hose, whose thread stands behind it: flexible 3/8, 1 embout 3/8 NPT mâle, 1 embout JIC 9/16-18.
func (l *line) countsFitting(k int, f *figure) bool {
	before, noun, behind := at(l.tokens, k-1), at(l.tokens, k+1), at(l.tokens, k+2)
	if l.one || !f.digits() || f.v != 1 || noun.glued || k == 0 || !l.is(hose) && !l.namesHose() && !anyToken(l.tokens, hoseGradeWord) {
		return false
	}
	if before.mark != ',' && before.mark != '+' && before.mark != ';' && before.mark != ':' && !andList.has(l.norm[before.from:before.to]) {
		return false
	}
	m := noun.is(classKind)
	return (m != nil && m.shape.ends >= 0 || noun.value(classEnd) == "BARB") && noun.figure == nil && (behind.figure != nil || behind.is(classFamily) != nil)
}
