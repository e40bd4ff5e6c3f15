package title

import (
	"bytes"
	"slices"
	"strings"
	"unicode/utf8"
)

// wideSyllable takes the sex or the part from a single sign of Chinese or Japanese that stands right beside signs that
// are not understood, as it is a syllable of their word: 公 is male, and 公制 metric.
func (l *line) wideSyllable(k int) {
	it, prev, next := &l.tokens[k], at(l.tokens, k-1), at(l.tokens, k+1)
	if it.is(classSex) == nil && it.is(classKind) == nil || !wide(l.norm, it.from) || utf8.RuneCount(l.norm[it.from:it.to]) > 1 {
		return
	}
	if prev.unread && prev.to == it.from && wide(l.norm, prev.from) || next.unread && next.from == it.to && wide(l.norm, next.from) {
		it.word, it.unread = nil, true
	}
}

// smallestDial is the smallest dial of a gauge in mm: EN 837-1 begins with 40.
const smallestDial = 40

// diameterWord reads the fi of Slavic lists before a number of millimetres, which is the sign of a diameter
// and no female: Rura fi 32.
func (l *line) diameterWord(k int) {
	it, next := &l.tokens[k], at(l.tokens, k+1)
	if f := next.figure; f != nil && string(l.norm[it.from:it.to]) == "fi" && (!l.capital(it.to-1) || f.v >= smallestDial) && (f.kind == bare || f.kind == mmSize) && !f.frac && !f.marked && (f.v > largestInch || f.v >= 3 && f.whole && next.glued && l.takesTubes()) {
		it.word = l.lex.word("the")
		if f.v <= largestInch {
			f.kind = mmSize // fi6/fi4
		}
	}
}

// voltages are those of coils and pumps: IEC 60038, and boats' batteries.
var voltages = map[float64]bool{12: true, 24: true, 36: true, 48: true, 110: true, 220: true, 230: true, 240: true, 380: true, 400: true}

// voltLetter takes the female from the В of 220В, which are volts.
func (l *line) voltLetter(k int) {
	it, f := &l.tokens[k], at(l.tokens, k-1).figure
	if f != nil && f.whole && f.kind == bare && !f.marked && voltages[f.v] && string(l.norm[it.from:it.to]) == "в" && l.capital(it.from) {
		it.word, it.unread = l.lex.word("the"), false
		f.drop(asVoltage)
	}
}

// slipLetter reads the capital S (slip) of S x FPT, beside an x.
func (l *line) slipLetter(k int) {
	it := &l.tokens[k]
	if it.to-it.from != 1 || l.norm[it.from] != 's' || it.value(classSep) != "weak" || !l.capital(it.from) && !l.slipBoth(k) {
		return
	}
	if at(l.tokens, k+1).mark == '-' && at(l.tokens, k+1).glued && at(l.tokens, k+2).figure != nil {
		return // S-20
	}
	prev := at(l.tokens, k-1)
	slip := prev.figure != nil && (prev.figure.marked || prev.figure.frac) && at(l.tokens, k-2).value(classSep) == "x" && at(l.tokens, k+1).value(classSep) != "x" // 2" FPT x 2" S
	slip = slip || prev.figure != nil && (prev.figure.marked || prev.figure.frac) && at(l.tokens, k+1).value(classSep) == "x" && l.american()                      // 1-1/2 S x 3/4 FPT
	if slip || prev.value(classSep) == "x" || at(l.tokens, k+1).value(classSep) == "x" && at(l.tokens, k+2).figure == nil {
		it.word = l.lex.word("slip")
	}
}

// gradeOfCode takes the material from a number that a hyphen ties to letters which mean nothing: QZX-2205 is no
// duplex steel.
func (l *line) gradeOfCode(k int) {
	it := &l.tokens[k]
	if it.is(classMaterial) != nil && digit(l.norm[it.from]) && it.glued && at(l.tokens, k-1).mark == '-' && at(l.tokens, k-1).glued && at(l.tokens, k-2).unread {
		it.word, it.unread = nil, true
	}
}

// galvanisedLetters leaves the FG of a line that names no thread and no hose: it is a female that turns, and in the lists of
// South America fierro galvanizado.
func (l *line) galvanisedLetters(k int) {
	it := &l.tokens[k]
	if l.one || string(l.norm[it.from:it.to]) != "fg" || l.namesHose() || l.is(hose) || l.is(tail) {
		return
	}
	if anyToken(l.tokens, func(o *token) bool {
		m := o.is(classFamily)
		return m != nil && m.value != "THREAD" && m.value != "NPT" || o.value(classEnd) == "BARB"
	}) {
		return
	}
	it.word, it.unread = nil, true
}

// ironLetter takes the thread from the G of G.I, galvanised iron, that another word is run together with: G.Ired.
func (l *line) ironLetter(k int) {
	it, next := &l.tokens[k], at(l.tokens, k+1)
	if it.is(classFamily) == nil || l.norm[it.from] != 'g' || byteAt(l.norm, it.to) != '.' || next.from != it.to+1 || !next.unread || l.norm[next.from] != 'i' {
		return
	}
	it.word = l.lex.word("g.i")
}

// numberOf reads the no that is glued to a whole number behind a size: Equal tee 15mm -40no are forty of them.
func (l *line) numberOf(k int) {
	it, f := &l.tokens[k], at(l.tokens, k-1).figure
	next := at(l.tokens, k+1)
	if text := string(l.norm[it.from:it.to]); !l.one && (text == "no" || text == "nos") && !it.glued && f.digits() && (k == 1 && next.is(classKind) != nil || (k == len(l.tokens)-1 || next.mark == ',' || next.mark == ';' || next.mark == '|') && l.sizeElsewhere(k-1)) {
		it.word, it.unread = l.lex.word("the"), false
		f.drop(asCount) // 2 no. elbow; ball valve 1/2 NPT F 2 no.
		return
	}
	if text := string(l.norm[it.from:it.to]); !l.one && (text == "no" || text == "nos") && it.glued && f != nil && f.kind == bare && f.whole && !f.marked && anyToken(l.tokens[:k-1], func(o *token) bool { return o.figure != nil }) {
		it.word, it.unread = l.lex.word("the"), false
		f.drop(asCount)
	}
}

// screwWord takes the screw beside the name of a fitting for a thread: ball valve 1/2" screw.
func (l *line) screwWord(k int) {
	it := &l.tokens[k]
	if l.one || string(l.norm[it.from:it.to]) != "screw" {
		return
	}
	for j := range l.tokens {
		if m := l.tokens[j].is(classKind); j < k && m != nil && m.shape.ends > 0 && m.shape.rank > 2 && at(l.tokens, k-1).figure != nil {
			it.word = l.lex.word("thread")
			return
		}
	}
}

// classLetter takes the soldered end from the C of a class, C-10, and from the Czech č., a number.
func (l *line) classLetter(k int) {
	it, hyphen, number := &l.tokens[k], at(l.tokens, k+1), at(l.tokens, k+2)
	if it.to-it.from != 1 {
		return
	}
	if number := at(l.tokens, k+1).figure; l.words(it.from, it.to) == "č" && number != nil && number.whole {
		it.word = l.lex.word("the")
		number.drop(asCode) // č. 280: number 280
		return
	}
	if l.norm[it.from] == 'c' && hyphen.mark == '-' && hyphen.glued && number.figure != nil && number.glued && number.figure.whole && number.figure.v <= 10 {
		it.word = l.lex.word("the")
		number.figure.drop(asCode)
	}
}

// swLetters leaves the SW behind a size of which no thread is said: shops write a swivel so, and a socket to weld.
func (l *line) swLetters(k int) {
	it, size, next := &l.tokens[k], at(l.tokens, k-1).figure, at(l.tokens, k+1)
	if !l.one && string(l.norm[it.from:it.to]) == "sw" && size == nil && at(l.tokens, k+1).figure == nil && l.speaks("de") {
		it.word, it.unread = l.lex.word("the"), false // black, in German
		return
	}
	if !l.one && string(l.norm[it.from:it.to]) == "sw" && next.figure == nil && l.forged() {
		it.word, it.unread = l.lex.word("socket weld"), false // SW elbow 1/2 class 3000
		return
	}
	if l.one || it.to-it.from != 2 || string(l.norm[it.from:it.to]) != "sw" || size == nil || !size.frac && !size.marked || at(l.tokens, k-2).value(classSep) != "x" || next.is(classFamily) != nil || next.is(classSex) != nil || next.figure != nil {
		return
	}
	it.word, it.unread = nil, true
}

// slipBoth reports whether beyond an x beside a small s there is another one or the name of an American
// thread: s x s x fpt.
func (l *line) slipBoth(k int) bool {
	for _, step := range [...]int{-1, 1} {
		if at(l.tokens, k+step).value(classSep) != "x" {
			continue
		}
		far := at(l.tokens, k+2*step)
		if m := far.is(classFamily); m != nil && m.value == "NPT" || far.to-far.from == 1 && l.norm[far.from] == 's' || far.value(classEnd) == "SOCKET" {
			return true
		}
	}
	return false
}

// diameters takes the d of d = 28 for a diameter in millimetres.
func (l *line) diameters() {
	if !l.seen.alone.has('d') && !l.holds("д") {
		return
	}
	for k := 0; k+2 < len(l.tokens); k++ {
		it, size := &l.tokens[k], l.tokens[k+2].figure
		if it.to-it.from == 1 && l.norm[it.from] == 'd' && l.tokens[k+1].mark == '=' && size != nil && size.kind == bare && !size.frac && !size.marked {
			size.kind = mmSize
			l.tokens = slices.Delete(l.tokens, k, k+2)
		}
	}
	for k := 0; k+1 < len(l.tokens); k++ {
		if it, size := &l.tokens[k], l.tokens[k+1].figure; string(l.norm[it.from:it.to]) == "д" && l.tokens[k+1].glued && size.plain() && pipeOutsides[size.v] {
			it.word, it.unread = l.lex.word("ø"), false // д25
		}
		it, size := &l.tokens[k], l.tokens[k+1].figure
		if it.to-it.from == 1 && l.norm[it.from] == 'd' && (!it.glued || at(l.tokens, k-1).mark == ';') && l.tokens[k+1].glued && size.plain() && size.v >= 4 && size.v <= 63 && !l.one && (at(l.tokens, k-1).mark == ';' || l.says("PUSH") || l.says("COMPRESSION") || l.says("BARB") && size.v > largestInch) {
			size.kind = mmSize // D8 of a push-in fitting
			l.tokens = slices.Delete(l.tokens, k, k+1)
		}
	}
}

// metreLetter takes the male from the M of 0.9M, which is a length in metres: no thread's size is
// written with such a decimal. So is the 2M of a hose that another size stands before.
func (l *line) metreLetter(k int) {
	it, prev := &l.tokens[k], at(l.tokens, k-1)
	if it.to-it.from != 1 || l.norm[it.from] != 'm' || prev.figure == nil || prev.figure.kind != bare || prev.figure.frac || prev.figure.marked {
		return
	}
	if dashWord(at(l.tokens, k-2).is(classFamily)) || at(l.tokens, k-2).mark == '-' && dashWord(at(l.tokens, k-3).is(classFamily)) {
		return // hose JIC-6 M
	}
	long := l.says("TUBING") && it.glued && prev.figure.whole && prev.figure.v > largestInch || l.namesHose() && (prev.figure.v > largestInch || !prev.figure.whole || (k == len(l.tokens)-1 || at(l.tokens, k+1).mark == ':' || at(l.tokens, k+1).mark == ',') && !it.glued && l.sizeElsewhere(k-1)) // hose 3/8" x 2.5 M
	long = long || (l.says("TUBE") || l.says("TUBING") || l.namesHose()) && !it.glued && !l.capital(it.from) && prev.figure.whole && k == len(l.tokens)-1 && at(l.tokens, k-2).value(classSep) == ""                                                                                                  // tube, 1 m
	long = long || l.namesHose() && !it.glued && !l.capital(it.from) && at(l.tokens, k+1).is(classBefore) != nil && at(l.tokens, k+1).value(classBefore) == "dn" && at(l.tokens, k-2).value(classSep) == ""                                                                                           // hydraulic hose 1 m DN19
	if it.glued && (!prev.figure.whole || l.hoseLength(k) || l.longForPipe(k)) || long || l.hoseByLength(k) {
		it.word = l.lex.word("the")
		prev.figure.drop(asLength)
	}
}

// pipeThread takes the pipe right behind inches for a pipe's thread where another size is a tube's: 1/4" tube
// 1/8" pipe.
func (l *line) pipeThread(k int) {
	it, f := &l.tokens[k], at(l.tokens, k-1).figure
	if string(l.norm[it.from:it.to]) != "pipe" || f == nil || f.kind != inchSize {
		return
	}
	for j := range l.tokens {
		o := &l.tokens[j]
		if of := at(l.tokens, j-1).figure; j != k && string(l.norm[o.from:o.to]) == "tube" && of != nil && of.kind == inchSize {
			it.word = l.lex.word("thread")
			return
		}
	}
}

// chineseBore takes the D of D15 for a nominal bore where a thread of a metal part is spoken of in
// Chinese and no other size stands (铜内外螺纹球阀 d15): of plastic it is the pipe's outside.
func (l *line) chineseBore(k int) {
	it, next := &l.tokens[k], at(l.tokens, k+1)
	if string(l.norm[it.from:it.to]) != "d" || next.figure == nil || !next.glued || next.figure.kind != bare || !next.figure.whole || l.lex.bores[int(next.figure.v)] == 0 {
		return
	}
	metal, thread := false, false
	for j := range l.tokens {
		t := &l.tokens[j]
		if f := t.figure; f != nil && j != k+1 && (f.sized() || f.frac || f.marked) && !l.inCode(j) {
			return
		}
		if m := t.is(classMaterial); m != nil {
			metal = m.value == "brass" || m.value == "copper" || m.value == "galvanised" || strings.Contains(m.value, "steel") || strings.Contains(m.value, "iron")
		}
		for _, class := range [...]wordClass{classSex, classFamily} {
			m := t.is(class)
			thread = thread || m != nil && m.tongue == "zh"
		}
	}
	if metal && thread {
		it.word, it.unread = l.lex.word("dn"), false
	}
}

// solderWord takes the capitals SO for soldered, as Chilean lists write it beside sizes.
func (l *line) solderWord(k int) {
	it, prev, next := &l.tokens[k], at(l.tokens, k-1), at(l.tokens, k+1)
	so := func(it *token) bool {
		return it.to-it.from == 2 && string(l.norm[it.from:it.to]) == "so" && l.capital(it.from) && l.capital(it.from+1)
	}
	if so(it) && (so(prev) || so(next) || prev.figure != nil || next.figure != nil) {
		it.word, it.unread = l.lex.word("solder"), false
	}
}

// longestBare is the most metres of a hose that a list gives by a whole number and mt beside its size. A judgement.
const longestBare = 20

// metreWord takes the thread from the MT of Italian hoses, which are metres: tubo 1/2 mt 1,20, rame 50 MT 3/8.
func (l *line) metreWord(k int) {
	it, prev, next := &l.tokens[k], at(l.tokens, k-1).figure, at(l.tokens, k+1).figure
	if l.one || string(l.norm[it.from:it.to]) != "mt" || it.is(classSex) == nil && it.is(classFamily) == nil {
		return
	}
	tube := l.says("TUBE") || l.namesHose() || l.says("SOCKET") && at(l.tokens, k-1).figure != nil && it.glued
	decimal := k+2 == len(l.tokens) && next != nil && next.v > largestInch || bytes.IndexByte(l.norm[at(l.tokens, k+1).from:at(l.tokens, k+1).to], '.') > 0 || byteAt(l.norm, it.to) == '.'
	if l.shape != nil && l.shape.ends >= 0 && !l.is(hose) || at(l.tokens, k-1).value(classSep) == "x" || at(l.tokens, k+2).value(classSep) == "x" {
		it.word = it.word.without(func(m *sense) bool { return m.class != classSex && m.class != classFamily })
		return // hose tail 3/4 x MT 1: a male
	}
	switch {
	case tube && prev.plain() && prev.v <= longestBare && l.sizeElsewhere(k-1) && at(l.tokens, k+1).figure == nil && (l.is(hose) || l.namesHose()):
		prev.drop(asLength) // hortum 1/4 R2 1 mt
	case tube && decimal && next != nil && next.kind == bare && !next.frac && !next.marked:
		next.drop(asLength)
	case tube && prev != nil && prev.kind == bare && !prev.whole && !prev.frac && !prev.marked:
		prev.drop(asLength) // hortum 1,5 mt
	case (tube || l.material == "copper") && prev != nil && prev.plain() && (prev.v > largestInch || it.glued && prev.v >= 3 && !l.otherThreadSaid(k)):
		prev.drop(asLength)
	case tube && k == len(l.tokens)-1 && at(l.tokens, k-1).mark == '-': // - MT: sold by the metre
	default:
		return
	}
	it.word, it.unread = l.lex.word("the"), false
}

// otherThreadSaid reports a sex or a thread's name elsewhere in the line, or a size in inches.
func (l *line) otherThreadSaid(k int) bool {
	for j := range l.tokens {
		it := &l.tokens[j]
		if j != k && (it.is(classSex) != nil || it.is(classFamily) != nil || it.figure != nil && (it.figure.frac || it.figure.marked)) {
			return true
		}
	}
	return false
}

// lettersOfNumber takes the meaning from letters that four digits or more are glued to: FS9100-08-10.
func (l *line) lettersOfNumber(k int) {
	it, next := &l.tokens[k], at(l.tokens, k+1)
	if l.one || it.to-it.from > 4 || !next.glued || next.figure == nil || !next.figure.digits() || next.figure.v < 1000 || next.to-next.from < 4 {
		return
	}
	if it.is(classFamily) == nil && it.is(classSex) == nil && it.is(classAttr) == nil && it.is(classKind) == nil && it.is(classEnd) == nil {
		return
	}
	it.word, it.unread = nil, true
	next.figure.drop(asCode)
}

// nominalPipe takes the thread from the NPS that a size stands behind in a line with a class or a schedule: the nominal pipe size of
// ASME B36.10M. Behind its size it is a straight thread.
func (l *line) nominalPipe(k int) {
	it, next := &l.tokens[k], at(l.tokens, k+1)
	if l.one || string(l.norm[it.from:it.to]) != "nps" || next.figure == nil || at(l.tokens, k-1).figure != nil {
		return
	}
	it.word, it.unread = l.lex.word("the"), false
}

// mercury reads the Hg of a vacuum in inches of mercury, which is no galvanised iron.
func (l *line) mercury(k int) {
	it, inches := &l.tokens[k], at(l.tokens, k-1).figure
	if l.one || string(l.norm[it.from:it.to]) != "hg" || inches == nil || !inches.marked || !it.glued {
		return
	}
	it.word, it.unread = l.lex.word("the"), false
	inches.drop(asScale)
}

// fullScale takes the female swivel from the FS of a sensor, a gauge or a meter, and from that behind a pressure: the end of its scale.
func (l *line) fullScale(k int) {
	it, before := &l.tokens[k], at(l.tokens, k-1)
	if before.is(classUnit) != nil {
		before = at(l.tokens, k-2)
	}
	if word := string(l.norm[it.from:it.to]); l.one || word != "fs" && word != "f.s" && word != "f.s." {
		return
	}
	measured := before.figure != nil && (before.figure.kind == pressureFigure || before.figure.kind == junkFigure)
	if measured || anyToken(l.tokens, func(o *token) bool {
		m := o.is(classKind)
		return m != nil && (m.shape.traits&(scaled|dial) != 0 || m.shape.kind == "flow meter")
	}) {
		it.word = it.word.without(func(m *sense) bool { return m.class != classPress })
		it.unread = len(it.word.all()) == 0
		if it.unread {
			it.word, it.unread = l.lex.word("full scale"), false
		}
	}
}

// malleableLetters takes the sex from the MI before the name of a part, which is malleable iron: MI elbow 1/2 NPT female. Behind a size it is a
// male of Australian lists.
func (l *line) malleableLetters(k int) {
	it, next := &l.tokens[k], at(l.tokens, k+1)
	if l.one || string(l.norm[it.from:it.to]) != "mi" || next.is(classKind) == nil || l.sizeBefore(k) || at(l.tokens, k-1).value(classSep) == "x" {
		return
	}
	it.word = it.word.without(func(m *sense) bool { return m.class == classSex })
}

// articleUm takes the nut from an um without points, in small letters and not beside a size: um joelho fêmea. ÜM is the nut that turns.
func (l *line) articleUm(k int) {
	it := &l.tokens[k]
	if l.one || l.words(it.from, it.to) != "um" || at(l.tokens, k-1).figure != nil || at(l.tokens, k+1).figure != nil {
		return
	}
	it.word, it.unread = l.lex.word("the"), false
}

// hourOrClass takes the sex from an h behind a whole number, which are hours where the line is not of Spain or Portugal, or more than a pipe has inches, and from the
// letter of an insulation class: 24 h, coil class H.
func (l *line) hourOrClass(k int) {
	it, before := &l.tokens[k], at(l.tokens, k-1)
	if l.one {
		return
	}
	iberian := false
	for j := range l.tokens {
		iberian = iberian || j != k && slices.ContainsFunc(l.tokens[j].word.all(), func(m *sense) bool { return m.tongue == "es" || m.tongue == "pt" })
	}
	hours := l.norm[it.from] == 'h' && before.figure.digits() && !l.capital(it.from) && at(l.tokens, k+1).is(classFamily) == nil && (before.figure.v > largestInch || !iberian)
	if hours {
		before.figure.drop(asTime)
	}
	if hours || before.to > before.from && classLetterList.has(l.norm[before.from:before.to]) {
		it.word, it.unread = l.lex.word("the"), false
	}
}
