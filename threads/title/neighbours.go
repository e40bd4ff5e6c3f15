package title

import (
	"slices"
	"strings"
)

// socketWord takes socket beside an x for the end of a plastic part that is glued: MNPT x socket,
// and BS of Brazil (bolsa soldável): BS x RM.
func (l *line) socketWord(k int) {
	it := &l.tokens[k]
	word := string(l.norm[it.from:it.to])
	if word != "socket" && word != "skt" && word != "bs" && word != "bsa" && word != "insert" || l.one {
		return
	}
	prev, next := at(l.tokens, k-1), at(l.tokens, k+1)
	if l.material == "pvc" && word == "socket" && l.shape != nil && l.shape.name != "coupling" && l.shape.ends > 0 && it.is(classKind) != nil {
		it.word, it.unread = l.lex.word("slip"), false // PVC cap, socket
		return
	}
	beside := func(x, far *token) bool {
		again := l.material == "pvc" && far.to > 0 && string(l.norm[far.from:far.to]) == word // PVC, socket x socket
		return x.value(classSep) == "x" && (far.is(classFamily) != nil || far.is(classSex) != nil || far.is(classEnd) != nil || again)
	}
	if beside(prev, at(l.tokens, k-2)) || beside(next, at(l.tokens, k+2)) || word == "insert" && next.value(classSep) == "x" {
		it.word, it.unread = l.lex.word("slip"), false
		if word == "insert" {
			it.word = l.lex.word("barb")
		}
	}
}

// smallWord takes the thread's name from an, un or uno in small letters, which
// are words of several languages; the names are written in capitals.
func (l *line) smallWord(k int) {
	it := &l.tokens[k]
	if it.to-it.from > 2 && it.is(classFamily) == nil {
		return // neither a thread's name nor one of the small words
	}
	if it.to-it.from == 1 && it.is(classFamily) != nil && at(l.tokens, k+1).mark == '-' && at(l.tokens, k+1).glued && at(l.tokens, k+2).glued && at(l.tokens, k+2).figure == nil && len(l.norm) > it.to+2 && letter(l.norm[it.to+1]) && letter(l.norm[it.to+2]) && at(l.tokens, k+2).is(classFamily) == nil && at(l.tokens, k+2).is(classSex) == nil {
		it.word, it.unread = nil, true // G-Line: a name
		return
	}
	if next := at(l.tokens, k+2); it.is(classSex) != nil && it.to-it.from <= 2 && !it.glued && at(l.tokens, k+1).mark == '-' && at(l.tokens, k+1).glued && next.glued && (next.unread && next.to-next.from > 1 || next.is(classNoise) != nil && next.to-next.from > 2) {
		it.word, it.unread = nil, true // Bi-flow, H-ZB84: the beginning of a name or a code
		return
	}
	if m := it.is(classFamily); m != nil && m.has("pre") && it.to-it.from == 1 && !l.capital(it.from) && !l.one &&
		at(l.tokens, k+1).figure == nil && at(l.tokens, k-1).figure == nil {
		it.word = l.lex.word("the") // the g of gas behind a sex, and no thread
		return
	}
	if m := it.is(classFamily); m != nil && m.value == "R" && it.to-it.from == 1 && at(l.tokens, k-1).figure == nil && (at(l.tokens, k+1).is(classSex) != nil || at(l.tokens, k+1).unread) {
		it.word = l.lex.word("thread") // R EXT, R HEMBRA: rosca
		return
	}
	if string(l.norm[it.from:it.to]) == "pt" && strings.HasPrefix(strings.ToLower(l.as[l.at[it.from]:]), "p.t.") && l.is(valve) {
		it.word, it.unread = l.lex.word("the"), false // passaggio totale
		return
	}
	if l.moneyLetter(k) {
		if next := at(l.tokens, k+1).figure; next.digitsOrDecimals() || next != nil && next.role == asCount {
			next.drop(asPrice)
		}
		it.word, it.unread = l.lex.word("the"), false
		return
	}
	if next := at(l.tokens, k+1); it.to-it.from == 1 && l.norm[it.from] == 'p' && it.unread && next.mark == '/' && next.glued && l.withBehind(k+2) && !l.one {
		it.word, it.unread = l.lex.word("für"), false // p/tanque: for a tank
		return
	}
	if l.fuelGas(k) {
		return
	}
	if next := at(l.tokens, k+1); it.to-it.from == 1 && l.norm[it.from] == 'c' && next.mark == '/' && next.glued && (isBlank(byteAt(l.norm, next.to)) || l.withBehind(k+2)) {
		it.word, it.unread = l.lex.word("the"), false // c/ rosca: with a thread
		return
	}
	if it.is(classFamily) == nil || l.capital(it.from) || l.one {
		return
	}
	if dash := at(l.tokens, k+1); dash.mark == '-' && dash.glued && at(l.tokens, k+2).figure != nil && at(l.tokens, k+2).glued {
		return // an-8
	}
	switch string(l.norm[it.from:it.to]) {
	case "an", "un", "uno":
		it.word = l.lex.word("the")
	}
}

// fromTo takes the a between the two sizes of a part that reduces for an x: buje 3 a 1 1/4.
func (l *line) fromTo(k int) {
	it, from, to := &l.tokens[k], at(l.tokens, k-1).figure, at(l.tokens, k+1).figure
	if it.to-it.from != 1 || l.norm[it.from] != 'a' || from == nil || to == nil || it.glued {
		return
	}
	if sexed := at(l.tokens, k+2).is(classSex) != nil && from.frac && to.frac && !l.one; !sexed && !l.reducing && (l.shape == nil || !l.is(unequal)) {
		return
	}
	if (from.kind == bare || from.kind == inchSize) && (to.kind == bare || to.kind == inchSize) && inchLike(from.v) && inchLike(to.v) {
		it.word, it.unread = l.lex.word("x"), false
	}
}

// fuelGas takes the thread's name from gas that a part is for: registro p/ gás, robinet pour gaz.
func (l *line) fuelGas(k int) bool {
	it, prev := &l.tokens[k], at(l.tokens, k-1)
	if m := it.is(classFamily); m == nil || m.value != "BSP" {
		return false
	}
	if text := string(l.norm[it.from:it.to]); text != "gas" && text != "gaz" {
		return false // BSP itself is no gas
	}
	if next := at(l.tokens, k+1); next.is(classKind) != nil && slices.Contains(gasPartList.words(), string(phraseKey(l.norm[next.from:next.to]))) {
		l.ignore("gas", "what the part is for")
		it.word = l.lex.word("the")
		return true
	}
	if k == 0 {
		return false
	}
	if stroke := prev.mark == '/'; stroke {
		prev = at(l.tokens, k-2)
	}
	word := string(l.norm[prev.from:prev.to])
	if word != "p" && word != "p/" && (word == "a" || !l.meantFor(k-1)) {
		return false
	}
	prev.unread = false
	l.ignore(l.words(prev.from, it.to), "what the part is for")
	it.word = l.lex.word("the")
	return true
}

// pipeFor takes the end from what a pipe is for: PE-rør 10 mm til push-in.
func (l *line) pipeFor(k int) {
	m := l.tokens[k].is(classEnd)
	if k == 0 || l.one || l.shape != nil && l.shape.ends >= 0 || m == nil || m.value != "PUSH" && m.value != "COMPRESSION" || !l.meantFor(k-1) || at(l.tokens, k+1).figure != nil {
		return
	}
	for j := range l.tokens[:k] {
		if it := &l.tokens[j]; it.value(classEnd) == "TUBE" {
			l.ignore(l.words(l.tokens[k-1].from, l.tokens[k].to), "what the pipe is for")
			l.tokens[k].word = l.lex.word("the")
			return
		}
	}
}

// coupledFace takes the flat face of a quick coupling from its thread: the halves meet there.
func (l *line) coupledFace(k int) {
	it := &l.tokens[k]
	if it.value(classAttr) != "flat-face" {
		return
	}
	for j := range l.tokens {
		if l.tokens[j].value(classEnd) == "QC" {
			it.word = l.lex.word("the")
			return
		}
	}
}

// codeInBrackets takes the sex from two letters behind a code or a standard, and from no thread or size, in
// brackets or between it and a size: ISO 7241-A (AG), ISO 7241-A AG 3/8 body.
func (l *line) codeInBrackets(k int) {
	it, from := &l.tokens[k], k-1
	if it.is(classSex) == nil || it.to-it.from != 2 {
		return
	}
	switch bracket := at(l.tokens, k-1).mark == '('; {
	case bracket && at(l.tokens, k+1).mark == ')':
		from = k - 2
	case bracket || !l.american():
		return
	}
	code, dash := at(l.tokens, from), at(l.tokens, from-1)
	if code.figure == nil && code.glued && code.to-code.from == 1 && dash.mark == '-' && at(l.tokens, from-2).figure != nil {
		it.word, it.unread = nil, true
	}
}

// countAsEnd takes a word for a count that an x parts from the size before it, and that no figure
// stands beside, for an end that is not understood: MIP X PC.
func (l *line) countAsEnd(k int) {
	it, next := &l.tokens[k], at(l.tokens, k+1)
	if it.is(classUnit) != nil && it.role(classUnit) == asCount && at(l.tokens, k-1).value(classSep) == "x" && (next.figure == nil && next.to == next.from || next.mark != 0) && it.from > 0 {
		it.word, it.unread = nil, true
	}
}

// unitsOf takes the thread from the UN glued to a whole number, which are so many units in Portuguese and
// Spanish: 10UN. A thread's series stands behind a hyphen.
func (l *line) unitsOf(k int) {
	it, f, next := &l.tokens[k], at(l.tokens, k-1).figure, at(l.tokens, k+1)
	if it.value(classFamily) == "UN" && it.to-it.from == 2 && next.figure.plain() && !next.glued && k+2 == len(l.tokens) && f != nil && f.marked && l.countsUnits(f, next.figure) {
		it.word, it.unread = l.lex.word("the"), false // 3/4" UN 10 of a list whose last column is the number
		next.figure.drop(asCount)
		return
	}
	if it.value(classFamily) == "UN" && it.to-it.from == 2 && at(l.tokens, k-1).mark == '(' && next.mark == ')' {
		it.word, it.unread = l.lex.word("the"), false // (UN): sold one by one
		return
	}
	if it.value(classFamily) == "UN" && it.to-it.from == 2 && it.glued && f != nil && f.whole && f.kind == bare && !f.marked && !f.dashed && next.figure == nil && at(l.tokens, k-2).mark != '-' {
		it.word, it.unread = l.lex.word("the"), false
		f.drop(asCount)
	}
}

// apartG takes the thread from a G that ends a line behind a class: it is short for galvanised.
func (l *line) apartG(k int) {
	it, prev := &l.tokens[k], at(l.tokens, k-1)
	if l.one || k != len(l.tokens)-1 || it.to-it.from != 1 || it.value(classFamily) != "BSPP" || prev.figure == nil || prev.figure.kind == bare && !(l.is(nipple) && prev.figure.v > largestInch && at(l.tokens, k-2).value(classSep) == "x") || prev.figure.sized() {
		return
	}
	it.word, it.unread = nil, true
}

// typeLetter takes the tee from a T that whole digits are glued to: 0 T0 21.
func (l *line) typeLetter(k int) {
	it, next := &l.tokens[k], at(l.tokens, k+1)
	if thick := at(l.tokens, k-1).figure; it.is(classKind) != nil && it.to-it.from == 1 && it.glued && thick != nil && thick.kind == bare && !thick.whole && !thick.frac {
		it.word, it.unread = l.lex.word("the"), false
		thick.drop(asWallOf) // 0.8t
		return
	}
	if behind := at(l.tokens, k+2); it.is(classKind) != nil && it.to-it.from == 1 && !l.one && !l.capital(it.from) && (byteAt(l.norm, it.to) == '\'' || it.from > 0 && l.norm[it.from-1] == '\'' || next.mark == '/' && next.glued && behind.figure == nil && behind.to-behind.from > 2) {
		it.word, it.unread = l.lex.word("the"), false // t'en as, t/ osmose
		return
	}
	if it.is(classKind) != nil && it.to-it.from == 1 && !l.one && next.mark == '/' && next.glued && at(l.tokens, k+2).glued && at(l.tokens, k+2).figure == nil && offLetters[string(l.norm[at(l.tokens, k+2).from:at(l.tokens, k+2).to])] && (l.shape != nil || l.says("BARB")) {
		it.word, it.unread = nil, true // T/O, T/Off
		return
	}
	if it.is(classKind) != nil && it.to-it.from == 1 && next.figure != nil && next.glued && next.figure.whole && !next.figure.marked && next.figure.v < 10 {
		it.word, it.unread = nil, true
	}
}

// withBehind reports what a short "with" and a stroke stand before: a word of three letters or more that is no
// end's, or a count, which is then none of the sizes: c/rosca, m/mutter, c/5.
func (l *line) withBehind(k int) bool {
	it := at(l.tokens, k)
	if f := it.figure; f != nil && f.whole && f.kind == bare && !f.marked && it.glued {
		f.drop(asCount)
		return true
	}
	if v := it.value(classAttr); v == "washer" || v == "o-ring" {
		return it.glued // c/empaque
	}
	return it.figure == nil && it.glued && it.to-it.from > 2 && it.is(classSex) == nil && (it.is(classEnd) == nil || it.is(classFamily) != nil)
}

// withStroke reads the m/ of m/mutter, which is the Scandinavian for with.
func (l *line) withStroke(k int) {
	it, next := &l.tokens[k], at(l.tokens, k+1)
	if it.to-it.from == 1 && l.norm[it.from] == 'm' && !it.glued && !l.capital(it.from) && next.mark == '/' && next.glued && (at(l.tokens, k+2).figure == nil && l.withBehind(k+2) || at(l.tokens, k+2).figure != nil && at(l.tokens, k+2).figure.role == asMeasure) {
		it.word, it.unread = l.lex.word("with"), false
	}
}

// bagOf takes the glued socket from the Spanish bolsa before a number, which is a bag of so many.
func (l *line) bagOf(k int) {
	it, next := &l.tokens[k], at(l.tokens, k+1)
	if x := next; x.value(classSep) == "x" && at(l.tokens, k+2).figure.plain() {
		next = at(l.tokens, k+2) // bolsa x 25
	}
	if w := string(l.norm[it.from:it.to]); (w == "bolsa" || w == "busta" || w == "bolsa de") && next.figure != nil && next.figure.whole && next.figure.kind == bare || w == "bolsa" && next.figure != nil && next.figure.role == asCount {
		it.word, it.unread = l.lex.word("the"), false
		next.figure.drop(asCount)
	}
}

// counterpart takes the sex from the word right behind "for", which may be that of the thread that the part goes
// onto: quick coupling for male thread. The thread stays, and its sex is asked.
func (l *line) counterpart(k int) {
	it := &l.tokens[k]
	m, named := it.is(classSex), it.is(classFamily)
	if l.one || k == 0 || (m == nil || len(m.sexes) != 1) && (named == nil || len(named.sexes) != 1) || it.is(classKind) != nil || it.to-it.from < 2 {
		return
	}
	first := k - 1
	if l.tokens[first].figure != nil {
		first--
	}
	if first > 0 && first < k-1 && l.tokens[first].is(classFamily) != nil {
		first-- // plug for G 1/2 female
	}
	if l.closes(k) {
		first = k - 1
		for first > 0 && !ontoList.has(l.norm[l.tokens[first].from:l.tokens[first].to]) {
			first--
		}
	}
	if first < 0 || !ontoList.has(l.norm[l.tokens[first].from:l.tokens[first].to]) || l.sizeBefore(first) {
		return // 3/4 macho para 1/2 hembra: from one to the other
	}
	l.ignore(l.words(l.tokens[first].from, it.to), "it may be said of the thread that the part goes onto")
	if it.word = l.lex.word("thread"); named != nil && named.value != "THREAD" {
		plain := *named
		plain.sexes, plain.extra, plain.attr = nil, nil, 0
		it.word = meaningOf(&plain)
	}
}

// closes reports that the sex at k is that of another part, which the cap, the plug or the nut that a line begins with is for: cap for hose tail
// 3/4 BSP male.
func (l *line) closes(k int) bool {
	if l.shape == nil || l.shape.kind != "cap" && l.shape.kind != "plug" {
		return false
	}
	onto := -1
	for j := range l.tokens[:k] {
		it := &l.tokens[j]
		switch {
		case onto < 0 && it.figure != nil, it.mark == ',' || it.mark == ';' || it.mark == '|', it.value(classSep) == "x":
			return false
		case onto < 0 && ontoList.has(l.norm[it.from:it.to]):
			onto = j
		}
	}
	return onto > 0
}

// spannerWord takes the swivel from SW 27, which is a spanner's size (Schlüsselweite).
func (l *line) spannerWord(k int) {
	it, next := &l.tokens[k], at(l.tokens, k+1)
	if string(l.norm[it.from:it.to]) == "sw" && next.figure != nil && next.figure.v >= 2000 && classNumbers[next.figure.v] {
		it.word, it.unread = l.lex.word("slip"), false // SW 3000: socket weld, ASME B16.11
		next.figure.drop(asClass)
		return
	}
	if string(l.norm[it.from:it.to]) != "sw" || next.figure == nil || next.figure.v < 8 || next.figure.sized() && next.figure.kind != mmSize {
		return
	}
	it.word = it.word.without(func(m *sense) bool { return m.class == classAttr })
}

// countsUnits reports whether UN between a size and a whole number counts pieces: in a list of galvanised parts, which have
// pipe threads alone, and in Portuguese and Spanish where no unified thread is of that size and pitch.
func (l *line) countsUnits(size, number *figure) bool {
	if anyToken(l.tokens, func(it *token) bool { return it.value(classMaterial) == "galvanised" }) {
		return true
	}
	return l.speaks("pt", "es") && !inchThreads()[threadKey{int(size.v*64 + 0.5), int(number.v*2 + 0.5)}]
}

// unitCell takes the thread from the UN that is a cell of its own: the unit that the part is sold by.
func (l *line) unitCell(k int) {
	it, before, after := &l.tokens[k], at(l.tokens, k-1), at(l.tokens, k+1)
	text := string(l.norm[it.from:it.to])
	cell := before.mark == '|' && (after.to == after.from || after.mark == '|')
	last := after.to == after.from || after.figure.plain() && !after.glued || after.figure != nil && !after.glued && l.twoDecimals(after)
	unified := anyToken(l.tokens, func(o *token) bool { return o.figure != nil && o.figure.kind == unSize })
	spanish := last && (before.figure == nil && before.mark == 0 || before.mark == ')' && l.iberian()) && !it.glued && !unified && (before.is(classSex) != nil || l.iberian() || l.speaks("it")) // codo 1/2" M-H UN 2
	if l.one || text != "un" && text != "uni" || !cell && !spanish {
		return
	}
	it.word, it.unread = l.lex.word("the"), false
	if f := after.figure; spanish && f.plain() {
		f.drop(asCount)
	}
}

// packLetters takes the thread from the PT between a described end and a price, with or without a count.
func (l *line) packLetters(k int) {
	it, next := &l.tokens[k], at(l.tokens, k+1)
	if l.one || string(l.norm[it.from:it.to]) != "pt" || it.is(classFamily) == nil || next.figure == nil || next.glued || !l.figured(k) {
		return
	}
	last := at(l.tokens, k+2)
	if k+2 == len(l.tokens) && l.twoDecimals(next) || k+3 == len(l.tokens) && next.figure.plain() && last.figure != nil && l.twoDecimals(last) {
		it.word, it.unread = l.lex.word("the"), false
		if next.figure.plain() {
			next.figure.drop(asCount)
		}
	}
}

// danishPipe reads the RG of Danish and Norwegian lists, rørgevind: a British pipe thread. In German it is red brass.
func (l *line) danishPipe(k int) {
	it := &l.tokens[k]
	if l.one || !it.unread || string(l.norm[it.from:it.to]) != "rg" {
		return
	}
	if anyToken(l.tokens, func(o *token) bool { return danishList.has(l.norm[o.from:o.to]) }) {
		it.word, it.unread = l.lex.word("bsp"), false
	}
}

// gluedFrench reads collé, written as the glue but for its accent, for an end that is glued: collé x fileté.
func (l *line) gluedFrench(k int) {
	it := &l.tokens[k]
	written := l.words(it.from, it.to)
	if !l.one && strings.EqualFold(written, "collé") && (at(l.tokens, k+1).value(classSep) == "x" || at(l.tokens, k-1).value(classSep) == "x" || at(l.tokens, k-1).figure != nil) {
		it.word, it.unread = l.lex.word("slip"), false
	}
}

// offLetters are what stands behind T/ in a store's marks: take off, take apart, take over.
var offLetters = map[string]bool{"o": true, "off": true, "a": true, "over": true}
