package title

import (
	"bytes"
	"slices"
	"strings"
	"unicode/utf8"

	"handtight/pressure/quantity"
	"handtight/threads"
)

// line is a text on its way to a reading.
type line struct {
	*spelling
	lex       *lexicon
	tokens    []token
	fitting   *shape // the first part that has ends, though another word outranks it
	skip      string // the name of a step that a test leaves out
	one       bool   // a single end, not a part: kinds add nothing
	shape     *shape
	material  string
	materials []string // all that are named
	rated     quantity.Pressure
	hasRated  bool
	ratedBy   *figure

	class, schedule, grade string
	temperature            quantity.Temperature
	hasTemperature         bool
	standards              []string
	pressures              []threads.StatedPressure

	byBore    bool // a standard whose sizes are nominal bores
	dashes    bool // a family that is sized by dash is named
	pressed   bool // press or multilayer tube is named
	nordic    bool // Scandinavian or Finnish words: R may only say "pipe thread"
	japan     bool
	europe    bool // words of a language of Europe other than English and those of the Americas
	america   bool // words of the United States or Canada
	malleable bool // a symbol of EN 10242: R and Rp
	washer22  bool // an M22 thread: 14 or 15 mm is its pin
	both      bool
	teeSex    threads.Sex // of the branch of a branch tee, of one run of a run tee
	reducing  bool
	evidence  bool // something says that the figures belong to an end
	unjudged  []string
	inside    string // a name of several words with one in it that is not understood
	lost      bool   // a piece between the x of ends holds nothing but words that are not understood
	lostEnd   bool   // such a piece stands behind an x
	parts     bool   // two parts are named, with a plus between them
	unsure    bool   // the part's name is not understood, and a size of a pipe thread stands beside it
	ignored   []threads.NotUsed
}

// survey notes what the words say of the part as a whole.
func (l *line) survey() {
	var reads *shape
	for k := range l.tokens {
		it := &l.tokens[k]
		l.germanLetter(k)
		l.wideSyllable(k)
		l.diameterWord(k)
		l.voltLetter(k)
		l.slipLetter(k)
		l.turkish(k)
		l.socketWord(k)
		l.solderWord(k)
		if l.shortWith(k) {
			it.word, it.unread = l.lex.words["with"], false
		}
		l.smallWord(k)
		l.codeInBrackets(k)
		l.countAsEnd(k)
		l.spannerWord(k)
		l.pressureLetters(k)
		l.metreLetter(k)
		l.russianLetter(k)
		l.coupledFace(k)
		l.chineseBore(k)
		l.pipeFor(k)
		l.fromTo(k)
		l.takeNamed(k)
		l.takeBack(k)
		for _, m := range it.word {
			l.europe = l.europe || m.class != classNoise && m.class != classSep && european[m.tongue]
			switch m.class {
			case classKind:
				l.parts = l.parts || l.shape != nil && l.shape.ends >= 0 && m.shape.ends >= 0 && m.shape.rank > 1 && l.plusBefore(k)
				if k > 0 && m.shape.ends < 0 && l.meantFor(k-1) {
					continue // à vis, für Rohrschellen: not the part itself
				}
				if k > 0 && l.together(k-1) && (m.shape.ends < 0 || l.shape != nil && l.shape.ends >= 0) {
					continue // with clip, mit Dichtung, z kolankiem: not the part itself
				}
				l.takeKind(m.shape)
				l.takeTeeSex(k, m.shape)
				if m.shape.traits&dial != 0 {
					reads = m.shape
				}
			case classMaterial:
				if l.foot(it) {
					continue
				}
				l.takeMaterial(m.value)
				if len(it.word) == 1 && !slices.Contains(l.materials, m.value) { // med is copper in one language, and with in others
					l.materials = append(l.materials, m.value)
				}
			case classFamily, classSex, classEnd:
				l.takeEvidence(m)
			case classAttr:
				l.evidence = l.evidence || m.value == "nut"
				l.both = l.both || m.value == "both" || m.value == "pair" || m.value == "port" && l.plural(it)
				l.reducing = l.reducing || m.value == "reducing"
			}
		}
		if f := it.figure; f != nil {
			l.washer22 = l.washer22 || f.kind == metricSize && f.v == 22
			if f.kind == metricSize && (f.pitch > 0 && f.pitch <= 3 || f.v == 22) || f.kind == unSize || f.kind == coneSize && l.one || f.kind == specialSize || f.kind == frenchSize || f.kind == fenSize {
				l.evidence = true
			}
		}
	}
	if reads != nil && l.fromZero() {
		l.shape = reads // a gauge with its socket: no fitting has a scale
	}
	if l.shape != nil && l.shape.ends >= 0 {
		l.evidence = true
	}
	l.litres()
}

// fromZero reports a scale: 0-60 psi.
func (l *line) fromZero() bool {
	for k := 2; k < len(l.tokens); k++ {
		f, dash, zero := l.tokens[k].figure, &l.tokens[k-1], l.tokens[k-2].figure
		if f != nil && f.kind == pressureFigure && zero != nil && zero.v == 0 && (dash.mark == '-' || dash.mark == '/' || dash.value(classSep) != "") {
			return true
		}
	}
	return false
}

// european are the languages of countries whose pipe threads are BSP.
var european = map[string]bool{
	"de": true, "it": true, "nl": true, "sv": true, "no": true, "da": true, "fi": true, "pl": true, "cs": true,
	"ru": true, "uk": true, "tr": true, "hu": true, "ro": true, "hr": true, "el": true,
}

// letterSex are single letters that are a sex behind a size in inches: Ukrainian З, Greek Α and Θ.
var letterSex = map[string]string{"з": "male", "α": "male", "θ": "female"}

// germanLetter reads the i (innen) or a (aussen) that stands alone behind an inch size, or
// behind the thread's name that follows one.
func (l *line) germanLetter(k int) {
	it, prev, next := &l.tokens[k], at(l.tokens, k-1), at(l.tokens, k+1)
	if prev.is(classFamily) != nil {
		prev = at(l.tokens, k-2)
	}
	if prev.figure == nil || prev.figure.kind != inchSize {
		return
	}
	ends := k+1 == len(l.tokens) || next.value(classSep) == "x" || next.mark != 0
	if sex := letterSex[string(l.norm[it.from:it.to])]; sex != "" && ends {
		it.word, it.unread = l.lex.words[sex], false
		return
	}
	if it.to-it.from != 1 || it.value(classSep) != "weak" {
		return
	}
	ends = k+1 == len(l.tokens) || next.value(classSep) == "x" || next.mark != 0
	c := l.norm[it.from]
	if !ends || c != 'i' && c != 'a' {
		return
	}
	it.word = l.lex.words["ig"]
	if c == 'a' {
		it.word = l.lex.words["ag"]
	}
}

// wideSyllable takes the sex from a single sign of Chinese or Japanese that stands right beside signs that
// are not understood, as it is a syllable of their word: 公 is male, and 公制 metric.
func (l *line) wideSyllable(k int) {
	it, prev, next := &l.tokens[k], at(l.tokens, k-1), at(l.tokens, k+1)
	if it.is(classSex) == nil || !wide(l.norm, it.from) || utf8.RuneCount(l.norm[it.from:it.to]) > 1 {
		return
	}
	if prev.unread && prev.to == it.from && wide(l.norm, prev.from) || next.unread && next.from == it.to && wide(l.norm, next.from) {
		it.word, it.unread = nil, true
	}
}

// diameterWord reads the fi of Slavic lists before a number of millimetres, which is the sign of a diameter
// and no female: Rura fi 32.
func (l *line) diameterWord(k int) {
	it, next := &l.tokens[k], at(l.tokens, k+1)
	if f := next.figure; f != nil && string(l.norm[it.from:it.to]) == "fi" && !l.capital(it.to-1) && (f.kind == bare || f.kind == mmSize) && !f.frac && !f.marked && f.v > largestInch {
		it.word = l.lex.words["the"]
	}
}

// voltages are those of coils and pumps: IEC 60038, and boats' batteries.
var voltages = map[float64]bool{12: true, 24: true, 36: true, 48: true, 110: true, 220: true, 230: true, 240: true, 380: true, 400: true}

// voltLetter takes the female from the В of 220В, which are volts.
func (l *line) voltLetter(k int) {
	it, f := &l.tokens[k], at(l.tokens, k-1).figure
	if f != nil && f.whole && f.kind == bare && !f.marked && voltages[f.v] && string(l.norm[it.from:it.to]) == "в" && l.capital(it.from) {
		it.word, it.unread = l.lex.words["the"], false
		f.drop(asVoltage)
	}
}

// foot reports the Portuguese pé, a foot, which no polyethylene is written as.
func (l *line) foot(it *token) bool {
	switch l.words(it.from, it.to) {
	case "pé", "Pé", "PÉ":
		return true
	}
	return false
}

// plural reports whether the word for a port is plural, and no kind says how many.
func (l *line) plural(it *token) bool {
	return it.to > it.from && l.norm[it.to-1] == 's'
}

// together reports a word that says what comes with the part.
func (l *line) together(k int) bool {
	it := &l.tokens[k]
	if l.shortWith(k) {
		return true
	}
	switch string(l.norm[it.from:it.to]) {
	case "with", "mit", "avec", "con", "com", "met", "med", "cu", "incl", "including", "inkl", "c/w", "w/", "w", "plus", "and", "und", "et", "z", "ze", "с", "із", "з", "s", "me":
		return true
	}
	return it.mark == '+' || it.mark == '&'
}

// meantFor reports a word that says what a part is for, or what it goes by.
func (l *line) meantFor(k int) bool {
	switch string(l.norm[l.tokens[k].from:l.tokens[k].to]) {
	case "for", "pour", "per", "para", "für", "fur", "fuer", "voor", "dla", "для", "till", "til", "a":
		return true
	}
	return false
}

// shortWith reports the m. of "m. Dichtung" and "m. keerklep": with, and no male.
func (l *line) shortWith(k int) bool {
	it, next := &l.tokens[k], at(l.tokens, k+1)
	return it.to-it.from == 1 && l.norm[it.from] == 'm' && !it.glued && !l.capital(it.from) &&
		byteAt(l.norm, it.to) == '.' && (isBlank(byteAt(l.norm, it.to+1)) || next.from == it.to+1 && next.to-next.from > 2) && next.to > next.from && letter(l.norm[next.from])
}

// partShortWith parts the m. of "NPT m. Dichtung" from the name before it, with which it would be a male.
func (l *line) partShortWith() {
	for k := 0; k < len(l.tokens); k++ {
		it := l.tokens[k]
		m := it.to - 1
		if it.is(classFamily) == nil || m-it.from < 2 || l.norm[m] != 'm' || !isBlank(l.norm[m-1]) {
			continue
		}
		l.tokens = slices.Insert(l.tokens, k+1, token{from: m, to: it.to, word: l.lex.words["m"]})
		if !l.shortWith(k + 1) {
			l.tokens = slices.Delete(l.tokens, k+1, k+2)
			continue
		}
		name := strings.TrimSpace(string(l.norm[it.from:m]))
		l.tokens[k].to, l.tokens[k].word = it.from+len(name), l.lex.words[name]
	}
}

// solderWord takes the capitals SO for soldered, as Chilean lists write it beside sizes.
func (l *line) solderWord(k int) {
	it, prev, next := &l.tokens[k], at(l.tokens, k-1), at(l.tokens, k+1)
	so := func(it *token) bool {
		return it.to-it.from == 2 && string(l.norm[it.from:it.to]) == "so" && l.capital(it.from) && l.capital(it.from+1)
	}
	if so(it) && (so(prev) || so(next) || prev.figure != nil || next.figure != nil) {
		it.word, it.unread = l.lex.words["solder"], false
	}
}

// socketWord takes socket beside an x for the end of a plastic part that is glued: MNPT x socket,
// and BS of Brazil (bolsa soldável): BS x RM.
func (l *line) socketWord(k int) {
	it := &l.tokens[k]
	word := string(l.norm[it.from:it.to])
	if word != "socket" && word != "skt" && word != "bs" && word != "bsa" || l.one {
		return
	}
	prev, next := at(l.tokens, k-1), at(l.tokens, k+1)
	beside := func(x, far *token) bool {
		return x.value(classSep) == "x" && (far.is(classFamily) != nil || far.is(classSex) != nil || far.is(classEnd) != nil)
	}
	if beside(prev, at(l.tokens, k-2)) || beside(next, at(l.tokens, k+2)) {
		it.word, it.unread = l.lex.words["slip"], false
	}
}

// plusBefore reports whether a plus stands between a part's name and the name or the size
// before it: elbow 3/8 + ball valve.
func (l *line) plusBefore(k int) bool {
	for j := k - 1; j >= 0 && l.tokens[j].is(classKind) == nil; j-- {
		if l.tokens[j].mark == '+' {
			return true
		}
		if f := l.tokens[j].figure; f != nil && (f.kind != bare || f.frac) {
			return false
		}
	}
	return false
}

// hardware reports a nut of a bolt: a metric size without the pitch of a fitting,
// and no word of a thread, a tube or a hose.
func (l *line) hardware() bool {
	if l.shape != nil && !l.is(nut) && !l.is(ring) {
		return false
	}
	metric := false
	for k := range l.tokens {
		it := &l.tokens[k]
		if f := it.figure; f != nil && f.sized() {
			if f.kind != metricSize || f.pitch > 0 && f.pitch <= 3 {
				return false
			}
			metric = true
		}
		if it.is(classFamily) != nil || it.is(classEnd) != nil || it.is(classSex) != nil && it.value(classSex) != "F~" && it.to-it.from > 2 {
			return false
		}
	}
	return metric
}

// smallWord takes the thread's name from an, un or uno in small letters, which
// are words of several languages; the names are written in capitals.
func (l *line) smallWord(k int) {
	it := &l.tokens[k]
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
		it.word = l.lex.words["the"] // the g of gas behind a sex, and no thread
		return
	}
	if m := it.is(classFamily); m != nil && m.value == "R" && it.to-it.from == 1 && at(l.tokens, k-1).figure == nil && (at(l.tokens, k+1).is(classSex) != nil || at(l.tokens, k+1).unread) {
		it.word = l.lex.words["thread"] // R EXT, R HEMBRA: rosca
		return
	}
	if l.fuelGas(k) {
		return
	}
	if next := at(l.tokens, k+1); it.to-it.from == 1 && l.norm[it.from] == 'c' && next.mark == '/' && next.glued && isBlank(byteAt(l.norm, next.to)) {
		it.word = l.lex.words["the"] // c/ rosca: with a thread
		return
	}
	if it.is(classFamily) == nil || l.capital(it.from) || l.one {
		return
	}
	switch string(l.norm[it.from:it.to]) {
	case "an", "un", "uno":
		it.word = l.lex.words["the"]
	}
}

// fromTo takes the a between the two sizes of a part that reduces for an x: buje 3 a 1 1/4.
func (l *line) fromTo(k int) {
	it, from, to := &l.tokens[k], at(l.tokens, k-1).figure, at(l.tokens, k+1).figure
	if it.to-it.from != 1 || l.norm[it.from] != 'a' || from == nil || to == nil || !l.reducing && (l.shape == nil || !l.is(unequal)) {
		return
	}
	if (from.kind == bare || from.kind == inchSize) && (to.kind == bare || to.kind == inchSize) && inchLike(from.v) && inchLike(to.v) {
		it.word, it.unread = l.lex.words["x"], false
	}
}

// fuelGas takes the thread's name from gas that a part is for: registro p/ gás, robinet pour gaz.
func (l *line) fuelGas(k int) bool {
	it, prev := &l.tokens[k], at(l.tokens, k-1)
	if m := it.is(classFamily); m == nil || m.value != "BSP" || k == 0 || it.to-it.from != 3 {
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
	it.word = l.lex.words["the"]
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
			l.tokens[k].word = l.lex.words["the"]
			return
		}
	}
}

// slipLetter reads the capital S (slip) of S x FPT, beside an x.
func (l *line) slipLetter(k int) {
	it := &l.tokens[k]
	if it.to-it.from != 1 || l.norm[it.from] != 's' || it.value(classSep) != "weak" || !l.capital(it.from) {
		return
	}
	if at(l.tokens, k-1).value(classSep) == "x" || at(l.tokens, k+1).value(classSep) == "x" && at(l.tokens, k+2).figure == nil {
		it.word = l.lex.words["slip"]
	}
}

// diameters takes the d of d = 28 for a diameter in millimetres.
func (l *line) diameters() {
	for k := 0; k+2 < len(l.tokens); k++ {
		it, size := &l.tokens[k], l.tokens[k+2].figure
		if it.to-it.from == 1 && l.norm[it.from] == 'd' && l.tokens[k+1].mark == '=' && size != nil && size.kind == bare && !size.frac && !size.marked {
			size.kind = mmSize
			l.tokens = slices.Delete(l.tokens, k, k+2)
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
	if it.glued && (!prev.figure.whole || l.hoseLength(k)) || l.hoseByLength(k) {
		it.word = l.lex.words["the"]
		prev.figure.drop(asLength)
	}
}

// largestRussian is the largest size of GOST 6111 in inches.
const largestRussian = 2

// russianLetter takes the thread of GOST 6111 from a K that no size of it follows: K1/4 is one, the capital
// of К 1/4 too, and 3/8 K-10A and K6 are not.
func (l *line) russianLetter(k int) {
	it, next := &l.tokens[k], at(l.tokens, k+1)
	if m := it.is(classFamily); m == nil || m.value != "NPT" || string(l.norm[it.from:it.to]) != "k" {
		return
	}
	if next.figure == nil || (!next.glued || it.to != next.from) && !(!it.glued && l.capital(it.from) && next.figure.frac) || next.figure.whole && next.figure.v > largestRussian {
		it.word, it.unread = nil, true
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
			it.word = l.lex.words["the"]
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
		if t.figure != nil && j != k+1 && !l.inCode(j) {
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
		it.word, it.unread = l.lex.words["dn"], false
	}
}

// hoseLength reports whether the whole figure before the M at k is the length of a hose or a tube: the
// line names a hose and a size with an inch mark stands before, or it names a tube behind its wall
// (15 x 1.0 TUBE 6M), and no x joins the figure to another.
func (l *line) hoseLength(k int) bool {
	hose, size, wall := false, false, false
	for j := range l.tokens {
		it := &l.tokens[j]
		hose = hose || it.value(classEnd) == "HOSE" || it.is(classKind) != nil && it.is(classKind).shape.name == "hose"
		size = size || j < k-1 && it.figure != nil && (it.figure.marked || it.figure.frac)
		wall = wall || j < k-1 && it.value(classEnd) == "TUBE" && at(l.tokens, j-2).value(classSep) == "x" && bytes.IndexByte(l.norm[at(l.tokens, j-1).from:at(l.tokens, j-1).to], '.') > 0
	}
	return (hose && size || wall) && at(l.tokens, k-2).value(classSep) == "" && at(l.tokens, k+1).value(classSep) == ""
}

// hoseByLength reports whether the whole figure before the small m at k is the length of hose that is
// the part itself, whose bore in millimetres is given too: hose 2 m 13 mm.
func (l *line) hoseByLength(k int) bool {
	hose, bore := false, false
	for j := range l.tokens {
		it := &l.tokens[j]
		if m := it.is(classKind); m != nil && m.shape.name != "hose" && m.shape.rank > 0 && m.shape.ends >= 0 {
			return false
		}
		hose = hose || it.value(classEnd) == "HOSE" || it.is(classKind) != nil && it.is(classKind).shape.name == "hose"
		bore = bore || it.figure != nil && it.figure.kind == mmSize
	}
	return hose && bore && !l.capital(l.tokens[k].from)
}

// codeInBrackets takes the sex from two letters in brackets behind a code or a standard, and from
// no thread or size: ISO 7241-A (AG).
func (l *line) codeInBrackets(k int) {
	it, open := &l.tokens[k], at(l.tokens, k-1)
	if it.is(classSex) == nil || it.to-it.from != 2 || open.mark != '(' || at(l.tokens, k+1).mark != ')' || k < 4 {
		return
	}
	code, dash := at(l.tokens, k-2), at(l.tokens, k-3)
	if code.figure == nil && code.glued && code.to-code.from == 1 && dash.mark == '-' && l.tokens[k-4].figure != nil {
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

// spannerWord takes the swivel from SW 27, which is a spanner's size (Schlüsselweite).
func (l *line) spannerWord(k int) {
	it, next := &l.tokens[k], at(l.tokens, k+1)
	if string(l.norm[it.from:it.to]) != "sw" || next.figure == nil || next.figure.v < 8 || next.figure.kind != bare && next.figure.kind != mmSize {
		return
	}
	it.word = slices.DeleteFunc(slices.Clone(it.word), func(m *sense) bool { return m.class == classAttr })
}

func (l *line) takeEvidence(m *sense) {
	l.evidence = true
	l.dashes = l.dashes || m.has("dash")
	l.byBore = l.byBore || m.has("dn")
	l.pressed = l.pressed || m.class == classEnd && (m.value == "PRESS" || m.value == "LAYER")
	switch m.tongue {
	case "sv", "no", "da", "fi":
		l.nordic = true
	case "ja":
		l.japan = true
	}
	if m.class == classFamily && (m.has("male") || m.has("female")) && m.value == "NPT" {
		l.america = true
	}
}

// takeKind keeps the first kind that is not a general word for a fitting; a
// kind that never holds a pipe end (a clamp, a cable gland) outranks the rest.
func (l *line) takeKind(s *shape) {
	if l.is(sealKit) {
		return // a seal kit for a pump is no pump
	}
	if l.fitting == nil && s.ends >= 0 {
		l.fitting = s
	}
	if l.shape == nil || s.rank > l.shape.rank || s.rank == l.shape.rank && len(s.name) > len(l.shape.name) && strings.HasSuffix(s.name, l.shape.name) { // elbows, street elbow
		l.shape = s
	}
}

// takeMaterial keeps the first material; a grade outranks the plain word, a
// metal its plating.
func (l *line) takeMaterial(value string) {
	vague := map[string]int{"": 0, "galvanised": 1, "rubber": 1, "plastic": 2, "carbon steel": 2, "stainless steel": 3}
	old, ok := vague[l.material]
	if !ok {
		return
	}
	now, isVague := vague[value]
	if !isVague || now > old {
		l.material = value
	}
}

// symbols finds a fitting symbol of EN 10242 in brackets, such as (A4, n. 92),
// and takes the bracket out of the line.
func (l *line) symbols() {
	for k := 0; k < len(l.tokens); k++ {
		if l.tokens[k].mark != '(' {
			continue
		}
		end, found := k+1, symbol{}
		for end < len(l.tokens) && l.tokens[end].mark != ')' {
			if s, ok := l.symbolAt(end); ok {
				found = s
			}
			end++
		}
		if found.shape == nil || end-k > 8 || end == len(l.tokens) {
			continue
		}
		said := *found.shape
		said.sexes, said.traits = found.sexes, said.traits|plain // A4 is male and female, and not mostly so
		l.malleable, l.shape, l.evidence = true, &said, true
		strange := slices.DeleteFunc(slices.Clone(l.tokens[k:end]), func(it token) bool { return !it.unread || it.to-it.from < 3 })
		l.tokens = slices.Replace(l.tokens, k, end+1, strange...)
	}
}

func (l *line) symbolAt(k int) (symbol, bool) {
	it := l.tokens[k]
	if f := it.figure; f != nil && f.kind == bare {
		s, ok := l.lex.symbols[string(l.norm[it.from:it.to])]
		return s, ok && l.inBrackets(k)
	}
	if k+1 < len(l.tokens) && l.tokens[k+1].figure != nil && l.tokens[k+1].glued {
		s, ok := l.lex.symbols[string(l.norm[it.from:l.tokens[k+1].to])]
		return s, ok
	}
	return symbol{}, false
}

// inBrackets reports whether a bare number in brackets can be a symbol's: it
// stands beside a symbol letter, an R for reducing, or n.
func (l *line) inBrackets(k int) bool {
	next := l.tokens[k+1 : min(k+2, len(l.tokens))]
	prev := l.tokens[max(k-1, 0):k]
	if len(next) == 1 && next[0].glued && next[0].to-next[0].from == 1 && l.norm[next[0].from] == 'r' {
		return true
	}
	return len(prev) == 1 && prev[0].mark == 0 && prev[0].to-prev[0].from <= 2
}
