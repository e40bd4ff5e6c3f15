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

// hexLetter takes the female from the H that stands right before a nipple: a hex nipple, in Indian lists.
func (l *line) hexLetter(k int) {
	it, next := &l.tokens[k], at(l.tokens, k+1)
	m := next.is(classKind)
	before := m != nil && m.shape.traits&nipple != 0 && strings.HasPrefix(string(l.norm[next.from:next.to]), "nip")
	if l.one || l.norm[it.from] != 'h' || it.glued || !l.capital(it.from) || !before && !l.hasWord("nipple") || l.spanishBeside(k) {
		return
	}
	it.word, it.unread = l.lex.word("hex"), false
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
		if j != k && slices.ContainsFunc(l.tokens[j].word.all(), func(m *sense) bool { return m.tongue == "es" || m.tongue == "pt" }) {
			return true
		}
	}
	return false
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

// lotOf takes the solder, which is lot in German, from LOT 2.
func (l *line) lotOf(k int) {
	it, next := &l.tokens[k], at(l.tokens, k+1).figure
	if text := strings.ToLower(l.words(it.from, it.to)); l.one || text != "lot" && text != "lots" || !next.plain() || it.value(classEnd) != "SOLDER" {
		return
	}
	it.word, it.unread = l.lex.word("the"), false
	next.drop(asCount)
}

// hoseGrades are the grades of SAE J517 that hoses are called by their number: R1 to R17.
const hoseGrades = 17

// hoseGradeLetter takes the thread from the R of R2 in a line that names a hose and another thread.
func (l *line) hoseGradeLetter(k int) {
	it, next := &l.tokens[k], at(l.tokens, k+1)
	m := it.is(classFamily)
	if l.one || m == nil || m.value != "R" || !next.glued || next.figure == nil || !next.figure.whole || next.figure.marked || next.figure.frac || next.figure.v > hoseGrades || !l.namesHose() || at(l.tokens, k+2).value(classSep) == "x" {
		return
	}
	other := func(o *token) bool {
		f := o.is(classFamily)
		return f != nil && f != m && f.value != "R" && f.value != "THREAD"
	}
	if anyToken(l.tokens, other) {
		it.word, it.unread = l.lex.word("r2at"), false
		next.figure.drop(asGrade)
	}
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

// gardenLetters reads the MH and FH of lists of the United States behind 3/4, male and female hose, where the one stands with the other or with a
// thread's name of that trade. In Spanish MH is one sex at each end.
func (l *line) gardenLetters(k int) {
	it, size := &l.tokens[k], at(l.tokens, k-1).figure
	text := string(l.norm[it.from:it.to])
	if l.one || text != "mh" && text != "fh" || size == nil || size.v != 0.75 {
		return
	}
	if !l.american() && !l.hasWord(map[string]string{"mh": "fh", "fh": "mh"}[text]) {
		return
	}
	it.word, it.unread = l.lex.word(text+"t"), false
}

// gardenName takes garden hose from an end that has another thread's name, where another end has the hose's: 3/4 MHT x 1/2 MIP garden hose adapter. It is
// the part's name.
func gardenName(ends []*phrase) {
	for _, e := range ends {
		if e.fam == nil || e.fam2 == nil {
			continue
		}
		other := slices.ContainsFunc(ends, func(o *phrase) bool { return o != e && o.fam != nil && o.fam2 == nil && o.fam.value == "NH" })
		switch {
		case other && e.fam.value == "NH":
			e.fam, e.fam2 = e.fam2, nil
		case other && e.fam2.value == "NH":
			e.fam2 = nil
		}
	}
}
