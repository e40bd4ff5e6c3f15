package title

import (
	"bytes"
	"math"
	"slices"

	"handtight/pressure/quantity"
	"handtight/threads"
)

// figureKind is what a figure was found to be.
type figureKind uint8

const (
	bare     figureKind = iota // a number whose meaning the words around it give
	inchSize                   // v in inches
	mmSize                     // v in millimetres
	frenchSize
	fenSize // eighths of an inch
	dnSize  // a nominal bore, v in inches
	metricSize
	unSize      // v inches, pitch in threads an inch
	dashSize    // v sixteenths
	coneSize    // v millimetres of tube, series L or S
	specialSize // a thread with letters of its own: PG16
	garbled
	pressureFigure
	junkFigure
)

// figure is a number of the text with what stands on it.
type figure struct {
	kind     figureKind
	v        float64
	pitch    float64           // metric: millimetres, 0 if not said; unified: threads an inch
	per      quantity.Pressure // of a pressure: its unit
	role     role              // what it is, where it is no size of an end
	used     bool              // an end or another field of the reading has it
	series   byte              // l or s
	frac     bool
	whole    bool
	marked   bool        // an inch mark or an inch word stands behind it
	dashed   bool        // written with a hyphen or # in front
	suffixed threads.Sex // of a class 2A, 2B, 6g, 6H
	coded    bool        // the second number of a code of push-in fittings
	classA   bool
	pin      float64 // M22-14: the pin of a pressure washer's joint
	tube     float64 // 1/2-16: a thread and a tube of 16 mm
	turned   bool    // 4/3 of a line in Arabic: 3/4 written from right to left
	dated    bool    // a spreadsheet has turned the size into a date
	steam    bool    // a pressure that holds for steam
	special  string  // what the thread of a special size is, where it is not judged
	dn       float64 // the nominal bore that v was found by; 0 if none
	set      bool    // a pressure that a part is set to, or the end of a scale: no rating
	times    int     // how many ends have the size, if said
	multiple int     // the same, kept where it has become so many ends
	counted  bool    // the text says how many ends have it
	perhaps  bool    // a word of length stands by it, on a part of two sizes
	numbered bool    // it stands in the part's number alone
	called   string  // what the word at its place in a row of words makes of a pressure
	guessed  bool    // the text gives it as a guess
	tally    bool    // millimetres, or a count behind an x
	or       string  // the other size, where the text gives one or the other
	hose     bool    // an inch size repeated in millimetres of bore: 3/8" (9,52 mm)
}

// digits reports a whole number, with a hyphen before it or without.
func (f *figure) digits() bool {
	return f != nil && f.kind == bare && f.whole && !f.marked
}

// digitsOrDecimals reports a plain number, whole or not.
func (f *figure) digitsOrDecimals() bool {
	return f != nil && f.kind == bare && !f.marked && !f.frac
}

// plain reports a whole number and nothing else.
func (f *figure) plain() bool {
	return f != nil && f.kind == bare && f.whole && !f.marked && !f.dashed
}

// number reads the figure at i and adds it.
func (sc *scanner) number(i int, glued bool) int {
	if end := sc.frenchPair(i); end > 0 {
		f := sc.pad.figure()
		f.kind, f.v = frenchSize, sc.frenchValue(i, end)
		if at := sc.blanks(end); hasText(sc.norm, at, "mm") && !alnum(byteAt(sc.norm, at+2)) && (at == end && !sc.bothCases() || !sc.capital(at) && (at == end || sc.bothCases())) {
			end = at + 2 // 20 x 27 mm: its millimetres, and no sexes
		}
		return sc.addFigure(i, end, glued, f)
	}
	f := sc.pad.figure()
	if end := sc.calendar(i); end > 0 {
		f.drop(asDate)
		return sc.addFigure(i, end, glued, f)
	}
	if end := sc.thousands(i); end > 0 {
		f.drop(asPrice)
		return sc.addFigure(i, end, glued, f)
	}
	if end := sc.dayAndMonth(i); end > 0 {
		f.drop(asDate)
		return sc.addFigure(i, end, glued, f)
	}
	if end := sc.listNumber(i); end > 0 {
		f.drop(asListed)
		return sc.addFigure(i, end, glued, f)
	}
	f.dashed = byteAt(sc.norm, i-1) == '#' || byteAt(sc.norm, i-1) == '-' && !digit(byteAt(sc.norm, i-2)) && byteAt(sc.norm, i-2) != '"'
	if f.dashed && sc.behindBore() { // DN-15
		f.dashed, glued = false, true
		sc.tokens = sc.tokens[:len(sc.tokens)-1]
	}
	end := sc.value(i, f)
	if f.kind == garbled || f.kind == junkFigure {
		return sc.addFigure(i, end, glued, f)
	}
	for _, all := range [...]string{"-in-1", "in1"} {
		if f.whole && end < len(sc.norm) && sc.norm[end] == all[0] && hasText(sc.norm, end, all) && !alnum(byteAt(sc.norm, end+len(all))) {
			f.drop(asCount) // 2-in-1 adaptor
			return sc.addFigure(i, end+len(all), glued, f)
		}
	}
	if f.whole && f.v == 6 && hasText(sc.norm, end, "-k") && (hasText(sc.norm, end, "-kt") || hasText(sc.norm, end, "-kant")) {
		f.drop(asMeasure) // 6-kt., 6-kant: hexagonal
		return sc.addFigure(i, sc.run(end+1, false), glued, f)
	}
	if stop := sc.piecesOfBody(end, f); stop > 0 {
		f.drop(asCount)
		return sc.addFigure(i, stop, glued, f)
	}
	if f.whole && hasText(sc.norm, end, "-x ход") {
		f.drop(asWays) // 3-х ходовой: of three ways
		return sc.addFigure(i, end+len("-x"), glued, f)
	}
	if isBlank(byteAt(sc.norm, end)) && sc.behindCode(i) {
		return sc.addFigure(i, end, glued, f) // AB4512 C: the number of a code counts nothing
	}
	end = sc.inchMark(end, f)
	if f.frac && !f.marked && f.v < 1 {
		if stop := sc.pressureBehind(end, sc.blanks(end), f); stop > 0 {
			return sc.addFigure(i, stop, glued, f)
		}
	}
	if stop := sc.threadPitch(end, f); stop > 0 {
		return sc.addFigure(i, sc.unifiedClass(stop, f), glued, f)
	}
	end = sc.unitBehind(end, f)
	return sc.addFigure(i, end, glued, f)
}

// piecesOfBody gives the end of a number of pieces that a body is made of; 0 if none begins with the figure.
func (sc *scanner) piecesOfBody(end int, f *figure) int {
	if !f.whole || f.v < 1 || f.v > 4 || byteAt(sc.norm, end) != '-' {
		return 0
	}
	for _, word := range piecesList.words() {
		if hasText(sc.norm, end, word) {
			return sc.run(end+1, false)
		}
	}
	return 0
}

// behindBore reports whether the last two are a word that stands before a nominal bore, and
// a hyphen glued to it.
func (sc *scanner) behindBore() bool {
	n := len(sc.tokens)
	if n < 2 || sc.tokens[n-1].mark != '-' || !sc.tokens[n-1].glued {
		return false
	}
	s := sc.tokens[n-2].is(classBefore)
	return s != nil && s.value == "dn"
}

func (sc *scanner) addFigure(i, end int, glued bool, f *figure) int {
	sc.tokens = append(sc.tokens, token{from: i, to: end, figure: f, glued: glued})
	return end
}

// digits reads a whole number; more than six digits is a code.
func (sc *scanner) digits(i int) (int, int) {
	n, end := 0, i
	for end < len(sc.norm) && digit(sc.norm[end]) {
		if end-i < 7 {
			n = n*10 + int(sc.norm[end]-'0')
		}
		end++
	}
	return n, end
}

func (sc *scanner) blanks(i int) int {
	for i < len(sc.norm) && isBlank(sc.norm[i]) {
		i++
	}
	return i
}

// value reads 3/4, 1 1/2, 1-1/2, 1.1/2, 1"1/2, 0.75, .5, 5/4 or 12.
func (sc *scanner) value(i int, f *figure) int {
	n, end := sc.digits(i)
	f.v, f.whole = float64(n), true
	if v, stop := sc.date(n, end); stop > 0 {
		f.v, f.frac, f.whole, f.dated = v, true, false, true
		return stop
	}
	if v, stop := sc.turnedFraction(i); stop > 0 {
		f.v, f.frac, f.whole, f.turned = v, true, false, true
		return stop
	}
	if v, stop := sc.fraction(i); stop > 0 {
		f.v, f.frac, f.whole = v, true, false
		return stop
	}
	if n > largestInch && (byteAt(sc.norm, end) == '"' || (byteAt(sc.norm, end) == '-' || byteAt(sc.norm, end) == '.') && (n == 9 || n == 19 || n == 29)) && digit(byteAt(sc.norm, end+1)) {
		if v, stop := sc.fraction(end + 1); stop > 0 && v < 1 {
			f.v, f.frac, f.whole, f.marked = float64(n)+v, true, false, true
			return stop // 9"3/4: the length of a filter's housing
		}
	}
	if at := sc.mixedAt(end); at > 0 && n <= largestInch && !sc.behindCode(i) && !sc.wallFirst(end) && !sc.steelGrade(i, n) && !sc.portNumbered(n, end) {
		if v, stop := sc.fraction(at); stop > 0 && v < 1 {
			if sc.hoseGradeFirst(i, end, float64(n)+v) {
				return end
			}
			if sc.blanks(stop) < len(sc.norm) && (sc.countFirst(n, v, end) || sc.counted(i, end) || sc.countOfThreads(n, v, end, stop)) {
				return end
			}
			f.v, f.frac, f.whole = float64(n)+v, true, false
			return stop
		}
	}
	if stop := sc.grouped(n, end, f); stop > 0 {
		return stop
	}
	if byteAt(sc.norm, end) == '.' {
		if byteAt(sc.norm, end+1) == '/' {
			f.kind = garbled
			_, stop := sc.digits(end + 2)
			return stop
		}
		if d, stop := sc.digits(end + 1); stop > end+1 && stop-end < 8 && !(byteAt(sc.norm, stop) == '/' && digit(byteAt(sc.norm, stop+1))) {
			f.v, f.whole = f.v+float64(d)/math.Pow10(stop-end-1), d == 0
			return stop
		}
	}
	if end == i {
		f.drop(asCode) // a stop and more digits than a size has
		_, end = sc.digits(i + 1)
	}
	return end
}

// steelGrade reports the number of a grade of stainless steel, behind which a size stands: nipple A4 1/2".
func (sc *scanner) steelGrade(i, n int) bool {
	return (n == 2 || n == 4) && byteAt(sc.norm, i-1) == 'a' && !alnum(byteAt(sc.norm, i-2)) && byteAt(sc.norm, i-2) < 0x80
}

// countFirst reports a whole number at the beginning of a line that counts the parts of the size behind it and
// makes no mixed number with it: 2 3/16" hose barb, 4 1/2 in. coupling. Above one inch pipe, thread and hose
// come in halves of 2 and 3 inches.
func (sc *scanner) countFirst(n int, fraction float64, end int) bool {
	if !isBlank(byteAt(sc.norm, end)) || n < 2 || n < 4 && fraction == 0.5 {
		return false
	}
	for k := range sc.tokens {
		if it := &sc.tokens[k]; !it.unread || wide(sc.norm, it.from) {
			return false
		}
	}
	return true
}

// wallFirst reports the wall of a pipe before a hyphen and the size of a thread: of 16x2-1/2" the 2.
func (sc *scanner) wallFirst(end int) bool {
	n := len(sc.tokens)
	if n < 2 || byteAt(sc.norm, end) != '-' || sc.tokens[n-1].value(classSep) != "x" {
		return false
	}
	pipe := sc.tokens[n-2].figure
	return pipe.plain() && sc.tokens[n-1].glued && pipe.v >= 14 && pipe.v <= 32
}

// countOfThreads reports the one at the beginning of a line before a size that makes no size of a pipe thread with it,
// where the name of such a thread follows: 1 1/8 NPT female.
func (sc *scanner) countOfThreads(n int, fraction float64, end, stop int) bool {
	named := anyToken(sc.tokens, func(it *token) bool { return !it.unread || wide(sc.norm, it.from) })
	if n != 1 || named || !isBlank(byteAt(sc.norm, end)) || slices.Contains(pipeSizes, 1+fraction) {
		return false
	}
	_, behind := sc.lookUp(sc.blanks(stop))
	return slices.ContainsFunc(behind.all(), func(m *sense) bool { return m.class == classFamily && (m.value == "NPT" || bspWord(m)) })
}

// hoseGradeFirst reports the number of a hose's grade before its bore, which makes no size of a pipe thread
// with it: R2 3/8 is two layers of wire and three eighths.
func (sc *scanner) hoseGradeFirst(i, end int, mixed float64) bool {
	if i == 0 || sc.norm[i-1] != 'r' || letter(byteAt(sc.norm, i-2)) || !isBlank(byteAt(sc.norm, end)) {
		return false
	}
	hose := anyToken(sc.tokens, func(it *token) bool {
		m := it.is(classKind)
		v := it.value(classEnd)
		return v == "HOSE" || v == "TUBE" || m != nil && m.shape.traits&hose != 0
	})
	text := string(sc.norm)
	n := len(sc.tokens)
	bored := n > 1 && sc.tokens[n-2].figure != nil && sc.tokens[n-2].figure.frac                                    // hose 1/2 R2 1/2 BSP
	other := bored || hasWord(text, "npt") || hasWord(text, "orfs") || hasWord(text, "jic") || sc.threadBehind(end) // a thread of another name than R
	if !hose || !hydraulic(sc.norm) && !other {
		return !slices.Contains(pipeSizes, mixed) // pipe nipple R1 1/2, and of a garden's hose the thread too
	}
	_, stop := sc.fraction(sc.blanks(end))
	_, behind := sc.lookUp(sc.blanks(stop))
	return behind == nil || slices.ContainsFunc(behind.all(), func(m *sense) bool { return m.class != classSex }) // hose R 1 1/4 male is a thread
}

// threadBehind reports a G with its size, BSP or a metric thread behind a place: hose R2 1/2 G1/2 female.
func (sc *scanner) threadBehind(from int) bool {
	rest := sc.norm[from:]
	if hasWord(string(rest), "bsp") || hasWord(string(rest), "bspp") || hasWord(string(rest), "bspt") {
		return true
	}
	for i := 1; i+1 < len(rest); i++ {
		letters := rest[i] == 'g' || rest[i] == 'm' && byteAt(rest, i+2) != 0 && digit(rest[i+1]) && digit(byteAt(rest, i+2))
		if letters && !alnum(rest[i-1]) && digit(byteAt(sc.norm, sc.blanks(from+i+1))) && (rest[i] == 'm' || bytes.IndexByte(rest[i:min(len(rest), i+5)], '/') > 0) {
			return true
		}
	}
	return false
}

// counted reports a whole number that a word before it makes a count of, or a nought at its beginning: set of 2
// 1/4" plugs, 01 1/2" tee.
func (sc *scanner) counted(i, end int) bool {
	n := len(sc.tokens)
	counts := func(it *token) bool { r := it.role(classBefore); return r == asCount || r == asCode }
	return isBlank(byteAt(sc.norm, end)) && (n == 1 && i == 1 && sc.tokens[0].value(classSep) == "x" || sc.norm[i] == '0' && end-i > 1 || n > 0 && counts(&sc.tokens[n-1]) || n > 1 && sc.tokens[n-1].mark == ':' && counts(&sc.tokens[n-2]))
}

// arabic reports whether the line has a letter of the Arabic script.
func (sc *scanner) arabic() bool {
	for _, b := range sc.norm {
		if b >= 0xD8 && b <= 0xDB {
			return true
		}
	}
	return false
}

func (sc *scanner) inchMark(end int, f *figure) int {
	at := sc.blanks(end)
	if byteAt(sc.norm, at) == '"' {
		f.marked = true
		return at + 1
	}
	if at < len(sc.norm) && !f.marked {
		if stop, m := sc.unitAt(at); m != nil && hasUnit(m, "inch") && !sc.taxAt(sc.blanks(stop)) && (f.whole || f.frac || at == end || f.v <= 4) {
			f.marked = true
			if byteAt(sc.norm, stop) == '.' {
				stop++
			}
			return stop
		}
	}
	return sc.tiedUnit(end, f)
}

// tiedUnit reads 1-inch and 25-mm, whose hyphen is no separator; 2-in-1 is not one.
func (sc *scanner) tiedUnit(end int, f *figure) int {
	if f.marked || byteAt(sc.norm, end) != '-' || !letter(byteAt(sc.norm, end+1)) {
		return end
	}
	stop, m := sc.lookUp(end + 1)
	inch, mm := hasUnit(m, "inch"), hasUnit(m, "mm")
	if stop-end < 3 || byteAt(sc.norm, stop) == '-' && !letter(byteAt(sc.norm, stop+1)) || !inch && !mm {
		return end
	}
	if f.marked = inch; mm {
		f.kind = mmSize
	}
	return stop
}

func hasUnit(ms *meanings, value string) bool {
	for _, m := range ms.all() {
		if m.class == classUnit && m.value == value {
			return true
		}
	}
	return false
}
