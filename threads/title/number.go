package title

import (
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
	counted  bool    // the text says how many ends have it
	perhaps  bool    // a word of length stands by it, on a part of two sizes
	numbered bool    // it stands in the part's number alone
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
	for _, word := range list("pieces") {
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

// frenchPair finds a bore/outside name of the French trade: 15/21, 20x27.
func (sc *scanner) frenchPair(i int) int {
	second := len(sc.tokens) > 1 && sc.tokens[len(sc.tokens)-2].figure != nil && sc.tokens[len(sc.tokens)-2].figure.kind == frenchSize
	if digit(byteAt(sc.norm, i-1)) || byteAt(sc.norm, i-1) == '.' || byteAt(sc.norm, i-1) == '/' && !second {
		return 0
	}
	_, end := sc.digits(i)
	from := end + 1
	if x := sc.blanks(end); x > end && byteAt(sc.norm, x) == 'x' && (sc.behindSex(i) || sc.onlyFrench(sc.blanks(x+1))) {
		end, from = x, sc.blanks(x+1) // M 12 x 17
	}
	if b := byteAt(sc.norm, end); b != '/' && b != 'x' && b != '-' {
		return 0
	}
	_, stop := sc.digits(from)
	if stop == from || byteAt(sc.norm, stop) == '.' && digit(byteAt(sc.norm, stop+1)) || byteAt(sc.norm, stop) == '/' && !(byteAt(sc.norm, end) == 'x' && sc.secondFrenchPair(stop+1)) {
		return 0
	}
	if sc.frenchValue(i, stop) == 0 || sc.measuredBehind(stop) {
		return 0
	}
	return stop
}

// secondFrenchPair reports the second of two pairs that a stroke parts: 33x42/26x34.
func (sc *scanner) secondFrenchPair(i int) bool {
	_, end := sc.digits(i)
	if byteAt(sc.norm, end) != 'x' {
		return false
	}
	_, stop := sc.digits(end + 1)
	return stop > end+1 && sc.frenchValue(i, stop) > 0
}

// onlyFrench reports an outside in mm that pipe of no other trade has, so that its pair may stand apart behind
// the name of a fitting: manchon 20 x 27.
func (sc *scanner) onlyFrench(i int) bool {
	n, stop := sc.digits(i)
	last := at(sc.tokens, len(sc.tokens)-1)
	if last.value(classSep) == "x" || byteAt(sc.norm, sc.blanks(stop)) == 'x' {
		return false // three numbers: a tee's
	}
	named := slices.ContainsFunc(sc.tokens, func(it token) bool { m := it.is(classKind); return m != nil && m.shape.ends >= 0 })
	return named && (n == 21 || n == 27 || n == 34 || n == 49)
}

// behindSex reports whether M or F stands by itself before a figure.
func (sc *scanner) behindSex(i int) bool {
	for i > 0 && isBlank(sc.norm[i-1]) {
		i--
	}
	c := byteAt(sc.norm, i-1)
	return (c == 'm' || c == 'f') && !alnum(byteAt(sc.norm, i-2))
}

// measuredBehind reports whether a unit that no thread has follows (5/10 micron).
func (sc *scanner) measuredBehind(i int) bool {
	from := sc.blanks(i)
	end, m := sc.lookUp(from)
	for _, s := range m {
		if s.class == classUnit && s.value != "inch" && len(m) == 1 && (end-from > 1 || !digit(byteAt(sc.norm, sc.blanks(end)))) {
			return true // 20/27 L 120 mm: a length
		}
	}
	return false
}

func (sc *scanner) frenchValue(i, end int) float64 {
	a, mid := sc.digits(i)
	if isBlank(byteAt(sc.norm, mid)) {
		mid = sc.blanks(mid)
	}
	b, _ := sc.digits(sc.blanks(mid + 1))
	return sc.lex.pairs[[2]int{a, b}]
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
	if n > largestInch && (byteAt(sc.norm, end) == '"' || byteAt(sc.norm, end) == '-' && (n == 9 || n == 19 || n == 29)) && digit(byteAt(sc.norm, end+1)) {
		if v, stop := sc.fraction(end + 1); stop > 0 && v < 1 {
			f.v, f.frac, f.whole, f.marked = float64(n)+v, true, false, true
			return stop // 9"3/4: the length of a filter's housing
		}
	}
	if at := sc.mixedAt(end); at > 0 && n <= largestInch && !sc.behindCode(i) && !sc.wallFirst(end) {
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
	named := slices.ContainsFunc(sc.tokens, func(it token) bool { return !it.unread || wide(sc.norm, it.from) })
	if n != 1 || named || !isBlank(byteAt(sc.norm, end)) || slices.Contains(pipeSizes, 1+fraction) {
		return false
	}
	_, behind := sc.lookUp(sc.blanks(stop))
	return slices.ContainsFunc(behind, func(m *sense) bool { return m.class == classFamily && (m.value == "NPT" || bspWord(m)) })
}

// hoseGradeFirst reports the number of a hose's grade before its bore, which makes no size of a pipe thread
// with it: R2 3/8 is two layers of wire and three eighths.
func (sc *scanner) hoseGradeFirst(i, end int, mixed float64) bool {
	if i == 0 || sc.norm[i-1] != 'r' || letter(byteAt(sc.norm, i-2)) || !isBlank(byteAt(sc.norm, end)) {
		return false
	}
	hose := slices.ContainsFunc(sc.tokens, func(it token) bool {
		m := it.is(classKind)
		v := it.value(classEnd)
		return v == "HOSE" || v == "TUBE" || m != nil && m.shape.traits&hose != 0
	})
	text := string(sc.norm)
	n := len(sc.tokens)
	bored := n > 1 && sc.tokens[n-2].figure != nil && sc.tokens[n-2].figure.frac            // hose 1/2 R2 1/2 BSP
	other := bored || hasWord(text, "npt") || hasWord(text, "orfs") || hasWord(text, "jic") // a thread of another name than R
	if !hose || !hydraulic(sc.norm) && !other {
		return !slices.Contains(pipeSizes, mixed) // pipe nipple R1 1/2, and of a garden's hose the thread too
	}
	_, stop := sc.fraction(sc.blanks(end))
	_, behind := sc.lookUp(sc.blanks(stop))
	return len(behind) == 0 || slices.ContainsFunc(behind, func(m *sense) bool { return m.class != classSex }) // hose R 1 1/4 male is a thread
}

// counted reports a whole number that a word before it makes a count of, or a nought at its beginning: set of 2
// 1/4" plugs, 01 1/2" tee.
func (sc *scanner) counted(i, end int) bool {
	n := len(sc.tokens)
	counts := func(it token) bool { r := it.role(classBefore); return r == asCount || r == asCode }
	return isBlank(byteAt(sc.norm, end)) && (n == 1 && i == 1 && sc.tokens[0].value(classSep) == "x" || sc.norm[i] == '0' && end-i > 1 || n > 0 && counts(sc.tokens[n-1]) || n > 1 && sc.tokens[n-1].mark == ':' && counts(sc.tokens[n-2]))
}

// mixedAt gives where the fraction of a mixed number would begin.
func (sc *scanner) mixedAt(end int) int {
	at := end
	switch byteAt(sc.norm, at) {
	case '\'':
		at++ // 1'1/4
	case '"':
		at = sc.blanks(at + 1)
	case '.':
		at++
		if byteAt(sc.norm, at) == '-' {
			at++
		}
	case '-':
		at++
	case '\xe5':
		if !hasText(sc.norm, at, "又") {
			return 0
		}
		at += len("又") // 1又1/4
	case ' ':
		if at >= len(sc.norm) {
			return 0
		}
		at = sc.joined(sc.blanks(at))
	case '&', '+':
		at = sc.joined(at)
	default:
		return 0
	}
	if !digit(byteAt(sc.norm, at)) {
		return 0
	}
	return at
}

// joined steps over a sign that joins a whole number and its fraction: 1 & 1/4, 1 + 1/4.
func (sc *scanner) joined(at int) int {
	if b := byteAt(sc.norm, at); b == '&' || b == '+' {
		return sc.blanks(at + 1)
	}
	return at
}

// fraction reads a/b where b is a power of two to 64, as inch sizes have.
func (sc *scanner) fraction(i int) (float64, int) {
	a, end := sc.digits(i)
	if stop := sc.halfApart(a, end); stop > 0 {
		b, _ := sc.digits(sc.blanks(sc.blanks(end) + 1))
		return float64(a) / float64(b), stop
	}
	if stop := sc.apart(a, end); stop > 0 {
		b, _ := sc.digits(sc.blanks(sc.blanks(end) + 1))
		return float64(a) / float64(b), stop
	}
	if end == i || byteAt(sc.norm, end) != '/' {
		return 0, 0
	}
	b, stop := sc.digits(end + 1)
	if (b == 2 || b == 4) && stop == end+2 && end == i+2 && a > 10 && a < 30 && a%10 < b && a%2 == 1 && byteAt(sc.norm, i-1) != '/' {
		return float64(a/10) + float64(a%10)/float64(b), stop // 11/4: 1 1/4 run together
	}
	if stop == end+1 || b < 2 || b > 64 || b&(b-1) != 0 && a > 4 && b > 4 || a == 0 || a > 99 || byteAt(sc.norm, stop) == '/' && digit(byteAt(sc.norm, stop+1)) {
		return 0, 0
	}
	if a%2 == 0 && byteAt(sc.norm, i-1) == '/' && digit(byteAt(sc.norm, i-2)) {
		return 0, 0 // 8/6/8: three tubes, and nobody writes 6/8 for 3/4
	}
	if b >= 16 && (a > b || a%2 == 0) {
		return 0, 0 // 22/16: two pipes of millimetres, which no inch size is written as
	}
	if at := sc.blanks(stop); (a == 15 && b == 16 || a >= 3 && b&(b-1) != 0 || a >= 4 && a%2 == 0) && hasText(sc.norm, at, "mm") && !alnum(byteAt(sc.norm, at+2)) {
		return 0, 0 // two pipes of millimetres
	}
	return float64(a) / float64(b), stop
}

// apart gives the end of a fraction whose stroke stands apart from its figures, 3 / 4; 0 if it is none. It is
// less than one and in its lowest terms.
func (sc *scanner) apart(a, end int) int {
	stroke := sc.blanks(end)
	if a%2 == 0 || stroke == end || byteAt(sc.norm, stroke) != '/' || !isBlank(byteAt(sc.norm, stroke+1)) {
		return 0
	}
	b, stop := sc.digits(sc.blanks(stroke + 1))
	if a >= b || b != 2 && b != 4 && b != 8 || digit(byteAt(sc.norm, stop)) || byteAt(sc.norm, stop) == '/' || byteAt(sc.norm, sc.blanks(stop)) == '/' {
		return 0
	}
	return stop
}

// halfApart gives the end of a fraction whose stroke stands apart from one of its figures, where the sign for inches is behind
// it: 1 /2"; 0 if it is none.
func (sc *scanner) halfApart(a, end int) int {
	stroke := sc.blanks(end)
	if a%2 == 0 || byteAt(sc.norm, stroke) != '/' || (stroke == end) == !isBlank(byteAt(sc.norm, stroke+1)) {
		return 0
	}
	b, stop := sc.digits(sc.blanks(stroke + 1))
	if a >= b || b != 2 && b != 4 && b != 8 || byteAt(sc.norm, stop) != '"' {
		return 0
	}
	return stop
}

// turnedFraction reads the 2/1, 4/3 and 8/3 of Arabic lists, which are 1/2, 3/4 and 3/8 written
// from right to left; 0 where the line has no letter of that script.
func (sc *scanner) turnedFraction(i int) (float64, int) {
	b, end := sc.digits(i)
	if b != 2 && b != 4 && b != 8 || end != i+1 || byteAt(sc.norm, end) != '/' || byteAt(sc.norm, i-1) == '/' {
		return 0, 0
	}
	a, stop := sc.digits(end + 1)
	if a%2 == 0 || a >= b || byteAt(sc.norm, stop) == '/' || byteAt(sc.norm, stop) == '.' || !sc.arabic() {
		return 0, 0
	}
	return float64(a) / float64(b), stop
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

// thousands gives the end of an amount with its thousands parted and two decimals, 1,250.00; 0 if none begins at i.
func (sc *scanner) thousands(i int) int {
	_, end := sc.digits(i)
	if end > i+3 || byteAt(sc.norm, end) != '.' && byteAt(sc.norm, end) != ',' {
		return 0
	}
	_, mid := sc.digits(end + 1)
	if mid != end+4 || byteAt(sc.norm, mid) != '.' && byteAt(sc.norm, mid) != ',' {
		return 0
	}
	_, stop := sc.digits(mid + 1)
	if stop != mid+3 || alnum(byteAt(sc.norm, stop)) {
		return 0
	}
	return stop
}

// taxAt reports the name of a tax at a place: 8.15 inc GST is no inch.
func (sc *scanner) taxAt(i int) bool {
	for _, tax := range list("tax") {
		if hasText(sc.norm, i, tax) && !alnum(byteAt(sc.norm, i+len(tax))) {
			return true
		}
	}
	return false
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

func hasUnit(ms []*sense, value string) bool {
	for _, m := range ms {
		if m.class == classUnit && m.value == value {
			return true
		}
	}
	return false
}
