package title

import (
	"bytes"
	"slices"
	"strings"
)

// refrigerants are the numbers of refrigerants: ISO 817, as memory has it. Those of blends and of three digits are no size of a
// thread; 22 and 32 may be the nominal bore of one.
var refrigerants = map[float64]bool{134: true, 290: true, 404: true, 407: true, 410: true, 422: true, 448: true, 449: true, 454: true, 507: true, 513: true, 600: true, 717: true, 744: true, 1234: true, 22: false, 32: false}

// refrigerant takes the thread from the R of R410 and R134a, and of R32 and R22 beside the word for a flare; no thread has a
// size of three digits: R412 is a refrigerant too, or a price in rand.
func (l *line) refrigerant(k int) {
	it, next := &l.tokens[k], at(l.tokens, k+1)
	if m := it.is(classFamily); m == nil || m.value != "R" || l.one || next.figure == nil || !next.glued || !next.figure.whole {
		return
	}
	always, known := refrigerants[next.figure.v]
	noSize := next.figure.v >= 100 || next.figure.v > largestInch && l.lex.bores[int(next.figure.v)] == 0 && !l.namesHose() && !l.namesTail()
	if !noSize && (!known || !always && !l.saysFlare()) {
		return
	}
	it.word, it.unread = l.lex.word("the"), false
	next.figure.drop(asCode)
}

// saysFlare reports a word for the flared ends of refrigerant pipe.
func (l *line) saysFlare() bool {
	for k := range l.tokens {
		if m := l.tokens[k].is(classFamily); m != nil && (m.value == "FLARE" || m.value == "SAE45" || m.value == "SAE") {
			return true
		}
	}
	return false
}

// forShort reads the pt. of Romanian lists, pentru: for.
func (l *line) forShort(k int) {
	it, prev, next := &l.tokens[k], at(l.tokens, k-1), at(l.tokens, k+1)
	if string(l.norm[it.from:it.to]) != "pt" || l.capital(it.from) || next.figure != nil || next.to-next.from < 3 || l.one || next.is(classSex) != nil || next.is(classFamily) != nil {
		return
	}
	if ro := l.speaks("ro"); byteAt(l.norm, it.to) != '.' && !ro || prev.figure != nil && !ro && (next.is(classMaterial) != nil || next.is(classKind) != nil || next.is(classEnd) != nil) {
		return
	}
	it.word, it.unread = l.lex.word("für"), false
}

// runningMetre takes the thread from the mb behind a number, metr bieżący, where hose or pipe is named and no other thread.
func (l *line) runningMetre(k int) {
	it, f := &l.tokens[k], at(l.tokens, k-1).figure
	next := at(l.tokens, k+1).figure
	if string(l.norm[it.from:it.to]) == "mb" && !l.one && !l.capital(it.from) && !it.glued && f.digitsOrDecimals() && !l.namesHose() && !l.says("TUBE") && !slices.ContainsFunc(l.tokens, func(o token) bool { return dashWord(o.is(classFamily)) && string(l.norm[o.from:o.to]) != "mb" }) {
		it.word, it.unread = nil, true // millibars, or metres
		f.drop(asMeasure)
		return
	}
	behind := f == nil && next.plain() && !at(l.tokens, k+1).glued
	if string(l.norm[it.from:it.to]) != "mb" || l.one || l.capital(it.from) || !behind && (f == nil || f.kind != bare || f.marked) || !l.namesHose() && !l.says("TUBE") {
		return
	}
	for j := range l.tokens {
		if j != k && l.tokens[j].is(classFamily) != nil {
			return
		}
	}
	it.word, it.unread = l.lex.word("the"), false
	if behind {
		f = next
	}
	f.drop(asLength)
}

// farC takes the soldered end from a C that stands beside no size and no x: the letter of a block or a class.
func (l *line) farC(k int) {
	it, prev, next := &l.tokens[k], at(l.tokens, k-1), at(l.tokens, k+1)
	if it.value(classEnd) != "SOLDER" || l.norm[it.from] != 'c' || l.one || next.mark == '-' {
		return
	}
	x := func(it *token) bool { return it.value(classSep) == "x" }
	if prev.figure == nil && next.figure == nil && !x(prev) && !x(next) || prev.figure != nil && prev.figure.plain() && it.glued && prev.figure.v > largestInch && !tubeOutsides[prev.figure.v] && l.sizeElsewhere(k-1) {
		it.word, it.unread = nil, true
	}
}

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

// hexLetter takes the female from the H that stands right before a nipple: a hex nipple, in Indian lists.
func (l *line) hexLetter(k int) {
	it, next := &l.tokens[k], at(l.tokens, k+1)
	m := next.is(classKind)
	before := m != nil && m.shape.traits&nipple != 0 && strings.HasPrefix(string(l.norm[next.from:next.to]), "nip")
	if l.one || l.norm[it.from] != 'h' || it.glued || !l.capital(it.from) || !before && !hasWord(string(l.norm), "nipple") || l.spanishBeside(k) {
		return
	}
	it.word, it.unread = l.lex.word("hex"), false
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

// fusedIron takes the thread from the IPS of a fitting that is fused: the outsides of iron pipe, which polyethylene is made to as well.
func (l *line) fusedIron(k int) {
	it := &l.tokens[k]
	if l.one || string(l.norm[it.from:it.to]) != "ips" || !l.says("SOCKET") || !bytes.Contains(l.norm, []byte("fusion")) {
		return
	}
	it.word, it.unread = l.lex.word("the"), false
}

// turkishSuffix reads the lik that is glued to a number in Turkish lists: 16lık is of 16 mm, 3/4lük of 3/4 inch.
func (l *line) turkishSuffix(k int) {
	it, f := &l.tokens[k], at(l.tokens, k-1).figure
	if l.one || !it.glued || f == nil {
		return
	}
	switch string(l.norm[it.from:it.to]) {
	case "lik", "lık", "lük", "luk":
	default:
		return
	}
	it.word, it.unread = l.lex.word("the"), false
	if f.plain() && f.v > largestInch {
		f.kind = mmSize
	}
}

// spanishBeside reports a word of Spanish or Portuguese other than the one at k.
func (l *line) spanishBeside(k int) bool {
	for j := range l.tokens {
		if j != k && slices.ContainsFunc(l.tokens[j].word, func(m *sense) bool { return m.tongue == "es" || m.tongue == "pt" }) {
			return true
		}
	}
	return false
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
	if l.one || it.value(classEnd) != "QC" || !bytes.Contains(l.norm, []byte("osmos")) && !bytes.Contains(l.norm, []byte("ósmos")) {
		return
	}
	it.word, it.unread = l.lex.word(string(phraseKey([]byte("push-in")))), false
}

// timesMetre reads the x mt that a piece of a hose's line ends with: it is sold by the metre.
func (l *line) timesMetre(k int) {
	it, x, next := &l.tokens[k], at(l.tokens, k-1), at(l.tokens, k+1)
	text := string(l.norm[it.from:it.to])
	if l.one || text != "mt" && text != "mts" && text != "mtr" || x.value(classSep) != "x" || !l.namesHose() || next.to > next.from && next.mark == 0 {
		return
	}
	x.word = l.lex.word("the")
	it.word, it.unread = l.lex.word("por metro"), false
}

// tubeLetter takes the tee from the capital T glued to a fraction of an inch before an x or at the end: the outside of a tube, in the
// lists of instruments.
func (l *line) tubeLetter(k int) {
	it, prev, next := &l.tokens[k], at(l.tokens, k-1), at(l.tokens, k+1)
	if l.one || string(l.norm[it.from:it.to]) != "t" || !l.capital(it.from) || !it.glued || prev.figure == nil || !prev.figure.frac || prev.to != it.from {
		return
	}
	kind := next.is(classKind)
	if next.to == next.from || next.value(classSep) == "x" || next.unread && at(l.tokens, k+2).value(classSep) == "x" || next.mark == ',' || next.figure != nil && !next.glued || kind != nil && kind.shape.traits&valve == 0 {
		it.word, it.unread = l.lex.word("tube"), false
		return
	}
	if next.unread {
		it.word, it.unread = nil, true // what it is is not sure
	}
}

// sideOfThread reads outside and inside before a thread and its size as male and female.
func (l *line) sideOfThread(k int) {
	it, next := &l.tokens[k], at(l.tokens, k+1)
	f := next.figure
	thread := next.is(classFamily) != nil && (next.is(classFamily).has("pre") || at(l.tokens, k+2).figure != nil) || f != nil && f.kind == metricSize
	thread = thread || f != nil && f.frac && (at(l.tokens, k+2).is(classFamily) != nil || at(l.tokens, k+2).value(classSep) == "x" && slices.ContainsFunc(l.tokens, func(o token) bool { m := o.is(classFamily); return m != nil && (bspWord(m) || m.value == "NPT") })) // outside 3/8 bsp
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

// lotOf takes the solder, which is lot in German, from LOT 2.
func (l *line) lotOf(k int) {
	it, next := &l.tokens[k], at(l.tokens, k+1).figure
	if text := strings.ToLower(l.words(it.from, it.to)); l.one || text != "lot" && text != "lots" || !next.plain() || it.value(classEnd) != "SOLDER" {
		return
	}
	it.word, it.unread = l.lex.word("the"), false
	next.drop(asCount)
}

// seacockFoot takes the flange from a seacock: it stands on the hull by it, and no pipe is bolted there.
func (l *line) seacockFoot(k int) {
	it := &l.tokens[k]
	if l.one || it.value(classEnd) != "FLANGE" || !slices.ContainsFunc(l.tokens, func(o token) bool { m := o.is(classKind); return m != nil && m.shape.traits&footed != 0 }) {
		return
	}
	l.ignore(l.words(it.from, it.to), "it stands on the hull by it")
	it.word, it.unread = l.lex.word("the"), false
}

// greeting takes the inside thread, hilo interior, from the Hi that a letter begins with.
func (l *line) greeting(k int) {
	it, prev, next := &l.tokens[k], at(l.tokens, k-1), at(l.tokens, k+1)
	if prev.figure == nil && prev.value(classSep) != "x" && prev.mark == 0 && !l.one && string(l.norm[it.from:it.to]) == "hi" && next.figure == nil && next.value(classSep) != "x" && next.to > next.from {
		it.word, it.unread = l.lex.word("the"), false
	}
}

// perMetre takes the male from the m of $14.90/m.
func (l *line) perMetre(k int) {
	it, stroke, price := &l.tokens[k], at(l.tokens, k-1), at(l.tokens, k-2)
	if l.one || string(l.norm[it.from:it.to]) != "m" || !it.glued || stroke.mark != '/' || !stroke.glued || price.figure == nil {
		return
	}
	rand := at(l.tokens, k-3)
	inRand := rand.is(classFamily) != nil && rand.to-rand.from == 1 && price.glued && l.norm[rand.from] == 'r'
	if !l.priced(k-2) && !l.twoDecimals(price) && !inRand {
		return
	}
	it.word, it.unread = l.lex.word("per m"), false
	price.figure.drop(asPrice)
	if inRand {
		rand.word, rand.unread = l.lex.word("the"), false
	}
}

// hoseGrades are the grades of SAE J517 that hoses are called by their number: R1 to R17.
const hoseGrades = 17

// hoseGradeLetter takes the thread from the R of R2 in a line that names a hose and another thread.
func (l *line) hoseGradeLetter(k int) {
	it, next := &l.tokens[k], at(l.tokens, k+1)
	m := it.is(classFamily)
	if l.one || m == nil || m.value != "R" || !next.glued || next.figure == nil || !next.figure.whole || next.figure.marked || next.figure.frac || next.figure.v > hoseGrades || !l.namesHose() {
		return
	}
	other := func(o token) bool {
		f := o.is(classFamily)
		return f != nil && (dashWord(f) || f.series() != 0 || f.value == "NPT" || f.value == "NPTF")
	}
	if slices.ContainsFunc(l.tokens, other) {
		it.word, it.unread = l.lex.word("r2at"), false
		next.figure.drop(asGrade)
	}
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
	if prev.value(classSep) == "x" && prev.glued {
		prev = at(l.tokens, k-2)
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

// unitFirst reads the mm of Italian lists before a number, which is its unit and no two sexes: mm 19.
func (l *line) unitFirst(k int) {
	it, next := &l.tokens[k], at(l.tokens, k+1)
	if f := next.figure; l.one || string(l.norm[it.from:it.to]) != "mm" || l.capital(it.from) || it.glued || next.glued || !f.plain() || f.kind != bare || !f.whole || f.v <= largestInch || at(l.tokens, k-1).figure != nil {
		return
	}
	it.word, it.unread = l.lex.word("the"), false
	next.figure.kind = mmSize
}

// stemWord takes a stem beside the size of a tube, where a push-in end, a tube or a tail is named, for the stem that plugs into such an
// end: it is no socket for a tube.
func (l *line) stemWord(k int) {
	it := &l.tokens[k]
	if text := string(l.norm[it.from:it.to]); l.one || text != "stem" && text != "stems" || l.is(valve) {
		return
	}
	sized := at(l.tokens, k-1).figure != nil || at(l.tokens, k+1).figure != nil || at(l.tokens, k+2).figure != nil
	if sized && (l.says("PUSH") || l.says("TUBE") || l.says("BARB") || slices.ContainsFunc(l.tokens, func(o token) bool { return o.value(classSep) == "x" })) {
		l.ignore(l.words(it.from, it.to), "it plugs into an end for such a tube, and takes none")
		it.word, it.unread = l.lex.word("tube"), false
	}
}

// tailsWith takes the tails that a valve, a pump or a strainer comes with, in the plural behind with, from its ends, and names them.
func (l *line) tailsWith(k int) {
	it := &l.tokens[k]
	if l.one || it.value(classEnd) != "BARB" || !l.plural(it) || l.is(tail) {
		return
	}
	part := slices.ContainsFunc(l.tokens[:k], func(o token) bool {
		m := o.is(classKind)
		return m != nil && m.shape.traits&(valve|serves|pump|through) != 0
	})
	j := k - 1
	for j > 0 && (l.tokens[j].figure != nil || l.tokens[j].value(classEnd) == "HOSE" || l.tokens[j].is(classMaterial) != nil) {
		j--
	}
	threaded := slices.ContainsFunc(l.tokens[:k], func(o token) bool { return o.is(classFamily) != nil || o.is(classSex) != nil })
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
