package title

import (
	"bytes"
	"slices"
)

// airConditioning takes the sexes from the A/A of a Spanish or Portuguese line: aire acondicionado.
func (l *line) airConditioning(k int) {
	it := &l.tokens[k]
	if string(l.norm[it.from:it.to]) != "a/a" || l.one || !l.speaks("es", "pt") && !l.saysFlare() {
		return
	}
	it.word, it.unread = l.lex.word("the"), false
}

// clampWord reads the clamp of a fitting of stainless steel in Spanish, Portuguese, Italian and French lists for the ends of
// clamp ferrules.
func (l *line) clampWord(k int) {
	it := &l.tokens[k]
	if l.one || string(l.norm[it.from:it.to]) != "clamp" {
		return
	}
	steel, fitting := false, false
	for j := range l.tokens {
		m, part := l.tokens[j].is(classMaterial), l.tokens[j].is(classKind)
		steel = steel || m != nil && (m.value == "316" || m.value == "304" || m.value == "stainless steel") || l.tokens[j].is(classGrade) != nil
		fitting = fitting || j != k && part != nil && part.shape.traits&(elbow|tee|unequal|adaptor) != 0
	}
	if steel && fitting {
		it.word, it.unread = l.lex.word("tri clamp"), false
	}
}

// clampByItself takes a clamp beside which no part, no end and no steel is named for one that goes round a hose or a pipe.
func (l *line) clampByItself(k int) {
	it := &l.tokens[k]
	if l.one || string(l.norm[it.from:it.to]) != "clamp" || !it.unread {
		return
	}
	for j := range l.tokens {
		o := &l.tokens[j]
		if j != k && (o.is(classKind) != nil || o.is(classEnd) != nil || o.is(classMaterial) != nil || o.is(classFamily) != nil || o.is(classSex) != nil || o.is(classGrade) != nil || o.unread && !o.code) {
			return
		}
	}
	it.word, it.unread = l.lex.word("hose clamp"), false
}

// crimpedHose takes the press end from a word for pressing in a line that names hose: its ends are crimped on.
func (l *line) crimpedHose(k int) {
	it := &l.tokens[k]
	word := it.value(classEnd)
	if word != "PRESS" && word != "COMPRESSION" || l.one || !l.namesHose() || l.says("LAYER") || l.says("PEX") {
		return
	}
	if word == "COMPRESSION" && bytes.HasPrefix(l.norm[it.from:it.to], []byte("обжимн")) {
		it.word, it.unread = l.lex.word("barb"), false // the word is that of a ring too, and a hose has none
		return
	}
	if word == "COMPRESSION" {
		return
	}
	if l.namesTail() {
		if bytes.HasPrefix(l.norm[it.from:it.to], []byte("prens")) {
			it.word, it.unread = l.lex.word("barb"), false // terminal prensar mangueira
		}
		return
	}
	it.word, it.unread = l.lex.word("the"), false
}

// osmosisCoupling reads the quick coupling of a part for reverse osmosis as the push-in end that it is there.
func (l *line) osmosisCoupling(k int) {
	it := &l.tokens[k]
	if l.one || it.value(classEnd) != "QC" || !l.contains(osmosisList) {
		return
	}
	it.word, it.unread = l.lex.word(string(phraseKey([]byte("push-in")))), false
}

// seacockFoot takes the flange from a seacock: it stands on the hull by it, and no pipe is bolted there.
func (l *line) seacockFoot(k int) {
	it := &l.tokens[k]
	if l.one || it.value(classEnd) != "FLANGE" || !anyToken(l.tokens, func(o *token) bool { m := o.is(classKind); return m != nil && m.shape.traits&footed != 0 }) {
		return
	}
	l.ignore(l.words(it.from, it.to), "it stands on the hull by it")
	it.word, it.unread = l.lex.word("the"), false
}

// couplingSex takes the sex from мама and папа where the line gives the thread another sex in a word for the thread itself: they are said of a quick
// coupling's halves.
func (l *line) couplingSex(k int) {
	it := &l.tokens[k]
	if text := string(l.norm[it.from:it.to]); l.one || text != "мама" && text != "папа" {
		return
	}
	own := it.is(classSex).sexes
	other := anyToken(l.tokens, func(o *token) bool {
		m := o.is(classSex)
		return m != nil && m != it.is(classSex) && len(m.sexes) == 1 && m.sexes[0] != own[0] && !m.weak()
	})
	if other && bytes.Contains(l.norm, []byte("резьб")) {
		l.ignore(l.words(it.from, it.to), "it is said of a quick coupling, and the thread has its own word")
		it.word, it.unread = l.lex.word("the"), false
	}
}

// stemWord takes a stem beside the size of a tube, where a push-in end, a tube or a tail is named, for the stem that plugs into such an
// end: it is no socket for a tube.
func (l *line) stemWord(k int) {
	it := &l.tokens[k]
	if text := string(l.norm[it.from:it.to]); l.one || text != "stem" && text != "stems" || l.is(valve) {
		return
	}
	sized := at(l.tokens, k-1).figure != nil || at(l.tokens, k+1).figure != nil || at(l.tokens, k+2).figure != nil
	if sized && (l.says("PUSH") || l.says("TUBE") || l.says("BARB") || anyToken(l.tokens, func(o *token) bool { return o.value(classSep) == "x" })) {
		l.ignore(l.words(it.from, it.to), "it plugs into an end for such a tube, and takes none")
		l.stemmed = true
		it.word, it.unread = l.lex.word("tube"), false
	}
}

// tailsWith takes the tails that a valve, a pump or a strainer comes with, in the plural behind with, from its ends, and names them.
func (l *line) tailsWith(k int) {
	it := &l.tokens[k]
	if l.one || it.value(classEnd) != "BARB" || !l.plural(it) || l.is(tail) {
		return
	}
	part := anyToken(l.tokens[:k], func(o *token) bool {
		m := o.is(classKind)
		return m != nil && m.shape.traits&(valve|serves|pump|through) != 0
	})
	j := k - 1
	for j > 0 && (l.tokens[j].figure != nil || l.tokens[j].value(classEnd) == "HOSE" || l.tokens[j].is(classMaterial) != nil) {
		j--
	}
	threaded := anyToken(l.tokens[:k], func(o *token) bool { return o.is(classFamily) != nil || o.is(classSex) != nil })
	if !part || !threaded || j < 1 || j == k-1 && l.tokens[j].figure == nil && !l.together(j) || !l.together(j) {
		return
	}
	for n := j + 1; n <= k; n++ {
		if f := l.tokens[n].figure; f != nil {
			f.drop(asMeasure)
		}
		l.tokens[n].word = l.lex.word("the")
	}
	l.ignore(l.words(l.tokens[j+1].from, it.to), "it comes with the part")
}

// nutAtEachEnd reads two nuts or two ends of one sort of a hose as one at each end: 2x DKOL, 2x Überwurf G1/4.
func (l *line) nutAtEachEnd(k int) {
	it, prev := &l.tokens[k], at(l.tokens, k-1)
	m := it.is(classFamily)
	nut := it.value(classAttr) == "nut" || it.value(classAttr) == "swivel" || m != nil && m.series() != 0 && len(m.sexes) > 0
	if l.one || !nut || !l.namesHose() {
		return
	}
	x := k - 1
	if prev.value(classSep) == "x" && prev.glued || onlyUnit(prev.word) && prev.role(classUnit) == asCount {
		prev = at(l.tokens, k-2) // 2x DKOL, 2 st lekande mutter
	}
	if f := prev.figure; f == nil || !f.whole || f.v != 2 || f.marked || f.frac || f.kind != bare || k < 2 {
		return
	}
	prev.figure.drop(asCount)
	if l.tokens[x].figure == nil {
		l.tokens[x].word = l.lex.word("the")
	}
	l.both = true
}

// sideOfThread reads outside and inside before a thread and its size as male and female.
func (l *line) sideOfThread(k int) {
	it, next := &l.tokens[k], at(l.tokens, k+1)
	f := next.figure
	thread := next.is(classFamily) != nil && (next.is(classFamily).has("pre") || at(l.tokens, k+2).figure != nil) || f != nil && f.kind == metricSize
	thread = thread || f != nil && f.frac && (at(l.tokens, k+2).is(classFamily) != nil || at(l.tokens, k+2).value(classSep) == "x" && anyToken(l.tokens, func(o *token) bool { m := o.is(classFamily); return m != nil && (bspWord(m) || m.value == "NPT") })) // outside 3/8 bsp
	if l.one || !thread {
		return
	}
	switch string(l.norm[it.from:it.to]) {
	case "outside":
		it.word, it.unread = l.lex.word("male"), false
	case "inside":
		it.word, it.unread = l.lex.word("female"), false
	}
}

// greeting takes the inside thread, hilo interior, from the Hi that a letter begins with.
func (l *line) greeting(k int) {
	it, prev, next := &l.tokens[k], at(l.tokens, k-1), at(l.tokens, k+1)
	if prev.figure == nil && prev.value(classSep) != "x" && prev.mark == 0 && !l.one && string(l.norm[it.from:it.to]) == "hi" && next.figure == nil && next.value(classSep) != "x" && next.to > next.from {
		it.word, it.unread = l.lex.word("the"), false
	}
}

// whichSex takes a sex that the line asks for, or leaves to be seen, from the end: which side is male; kumpi puoli uros. It is asked.
func (l *line) whichSex(k int) {
	for j := k - 1; j >= max(0, k-3) && l.tokens[k].is(classSex) != nil; j-- {
		it := &l.tokens[j]
		if it.figure != nil || it.mark != 0 {
			return
		}
		if next := at(l.tokens, j+1); whichList.has(l.norm[it.from:it.to]) && !(at(l.tokens, j-1).mark == ',' && hasText(l.norm, it.from, "which")) && !hasText(l.norm, next.from, "has") && !hasText(l.norm, next.from, "is ") && !hasText(l.norm, next.from, "are") {
			l.ignore(l.words(it.from, l.tokens[k].to), "the text asks for it")
			l.tokens[k].word, l.tokens[k].unread = l.lex.word("the"), false
			return
		}
	}
}

// hungarianLetters reads the K and the B behind a size of a Hungarian list: külső menet and belső menet.
func (l *line) hungarianLetters(k int) {
	it, size, next := &l.tokens[k], at(l.tokens, k-1).figure, at(l.tokens, k+1)
	if l.one || it.to-it.from != 1 || !l.capital(it.from) || size == nil || !size.frac && !size.marked || next.figure != nil || next.glued && next.mark == 0 || !l.containsWord(hungarianList) {
		return
	}
	it.word, it.unread = l.lex.word("male"), false
	if l.norm[it.from] == 'b' {
		it.word = l.lex.word("female")
	}
}

// contraction takes the male from the m behind an apostrophe and a letter: I'm short of one.
func (l *line) contraction(k int) {
	it := &l.tokens[k]
	if !l.one && it.to-it.from == 1 && l.norm[it.from] == 'm' && byteAt(l.norm, it.from-1) == '\'' && letter(byteAt(l.norm, it.from-2)) {
		it.word, it.unread = l.lex.word("the"), false
	}
}

// letterBeforeCode takes the thread from a G before a number that is a part's and no size: koppeling g 0730055.
func (l *line) letterBeforeCode(k int) {
	it, next := &l.tokens[k], at(l.tokens, k+1)
	if l.one || it.to-it.from != 1 || l.norm[it.from] != 'g' || next.figure == nil || next.glued || !next.figure.whole || next.figure.marked || next.figure.v < 1000 || at(l.tokens, k-1).figure != nil {
		return
	}
	l.ignore(l.words(it.from, it.to), "no size stands with it")
	it.word, it.unread = l.lex.word("the"), false
}

// vietnameseElbow reads the co that a Vietnamese line begins with: an elbow.
func (l *line) vietnameseElbow(k int) {
	it := &l.tokens[k]
	if !l.one && string(l.norm[it.from:it.to]) == "co" && l.onlyStrange(k) && l.speaks("vi") {
		it.word, it.unread = l.lex.word("elbow"), false
	}
}

// rupiah takes the thread from the Rp before a number of thousands, which is an amount of money of Indonesia: Rp 65.000.
func (l *line) rupiah(k int) {
	it, next := &l.tokens[k], at(l.tokens, k+1)
	f := next.figure
	if l.one || string(l.norm[it.from:it.to]) != "rp" || f == nil || f.frac || f.marked || k == 0 {
		return
	}
	text := l.norm[next.from:next.to]
	thousands := bytes.IndexByte(text, '.') > 0 && len(text)-bytes.IndexByte(text, '.') == 4
	if !thousands && f.v < smallestRupiah {
		return
	}
	it.word, it.unread = l.lex.word("the"), false
	f.drop(asPrice)
}

// smallestRupiah is an amount of money that no size of a thread is, in inches or in millimetres. A judgement.
const smallestRupiah = 200

// insideLetters reads the UN of Croatian lists behind a fraction, where no pitch stands with it: unutarnji navoj.
func (l *line) insideLetters(k int) {
	it, size, next := &l.tokens[k], at(l.tokens, k-1).figure, at(l.tokens, k+1)
	if before := next.figure; size == nil && before != nil && (before.frac || before.marked) {
		size, next = before, at(l.tokens, k+2)
	}
	if l.one || it.value(classFamily) != "UN" || it.to-it.from != len("un") || size == nil || !size.frac && !size.marked || size.kind != inchSize || next.figure != nil && !next.figure.frac || !slices.Contains(pipeSizes, size.v) || !l.containsWord(croatianList) {
		return
	}
	it.word, it.unread = l.lex.word("unutarnji"), false
}
