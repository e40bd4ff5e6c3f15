package threads

import (
	"math"
	"strings"
	"sync"
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
	unSize   // v inches, pitch in threads an inch
	dashSize // v sixteenths
	coneSize // v millimetres of tube, series L or S
	garbled
	pressureFigure
	junkFigure
)

// figure is a number of the text with what stands on it.
type figure struct {
	kind     figureKind
	v        float64
	pitch    float64 // metric: millimetres, 0 if not said; unified: threads an inch
	unit     string  // of a pressure
	series   byte    // l or s
	frac     bool
	whole    bool
	marked   bool // an inch mark or an inch word stands behind it
	dashed   bool // written with a hyphen or # in front
	ranged   bool // the end of a range
	suffixed Sex  // of a class 2A, 2B, 6g, 6H
	classA   bool
	taper    bool
	pin      float64 // M22-14: the pin of a pressure washer's joint
	tube     float64 // 1/2-16: a thread and a tube of 16 mm
	set      bool    // a pressure that a part is set to, or the end of a scale: no rating
	hose     bool    // an inch size repeated in millimetres of bore: 3/8" (9,52 mm)
}

// number reads the figure at i and adds it.
func (sc *scanner) number(i int, glued bool) int {
	if end := sc.frenchPair(i); end > 0 {
		return sc.addFigure(i, end, glued, &figure{kind: frenchSize, v: sc.frenchValue(i, end)})
	}
	f := &figure{}
	f.dashed = byteAt(sc.norm, i-1) == '#' || byteAt(sc.norm, i-1) == '-' && !digit(byteAt(sc.norm, i-2)) && byteAt(sc.norm, i-2) != '"'
	end := sc.value(i, f)
	if f.kind == garbled || f.kind == junkFigure {
		return sc.addFigure(i, end, glued, f)
	}
	end = sc.inchMark(end, f)
	if stop := sc.threadPitch(end, f); stop > 0 {
		return sc.addFigure(i, sc.unifiedClass(stop, f), glued, f)
	}
	end = sc.unitBehind(end, f)
	return sc.addFigure(i, end, glued, f)
}

func (sc *scanner) addFigure(i, end int, glued bool, f *figure) int {
	sc.items = append(sc.items, item{from: i, to: end, figure: f, glued: glued})
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
	if digit(byteAt(sc.norm, i-1)) || byteAt(sc.norm, i-1) == '.' || byteAt(sc.norm, i-1) == '/' {
		return 0
	}
	_, end := sc.digits(i)
	if b := byteAt(sc.norm, end); b != '/' && b != 'x' && b != '-' {
		return 0
	}
	_, stop := sc.digits(end + 1)
	if stop == end+1 || byteAt(sc.norm, stop) == '.' && digit(byteAt(sc.norm, stop+1)) || byteAt(sc.norm, stop) == '/' {
		return 0
	}
	if sc.frenchValue(i, stop) == 0 || sc.measuredBehind(stop) {
		return 0
	}
	return stop
}

// measuredBehind reports whether a unit that no thread has follows (5/10 micron).
func (sc *scanner) measuredBehind(i int) bool {
	_, m := sc.phrase(sc.blanks(i))
	for _, s := range m {
		if s.class == classUnit && s.value != "inch" && len(m) == 1 {
			return true
		}
	}
	return false
}

func (sc *scanner) frenchValue(i, end int) float64 {
	a, mid := sc.digits(i)
	b, _ := sc.digits(mid + 1)
	return sc.lex.pairs[[2]int{a, b}]
}

// value reads 3/4, 1 1/2, 1-1/2, 1.1/2, 1"1/2, 0.75, .5, 5/4 or 12.
func (sc *scanner) value(i int, f *figure) int {
	n, end := sc.digits(i)
	f.v, f.whole = float64(n), true
	if v, stop := sc.fraction(i); stop > 0 {
		f.v, f.frac, f.whole = v, true, false
		return stop
	}
	if at := sc.mixedAt(end); at > 0 && n <= largestInch {
		if v, stop := sc.fraction(at); stop > 0 && v < 1 {
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
		if d, stop := sc.digits(end + 1); stop > end+1 && stop-end < 8 && byteAt(sc.norm, stop) != '/' {
			f.v, f.whole = f.v+float64(d)/math.Pow10(stop-end-1), d == 0
			return stop
		}
	}
	if end == i {
		f.kind = junkFigure // a stop and more digits than a size has
		_, end = sc.digits(i + 1)
	}
	return end
}

// mixedAt gives where the fraction of a mixed number would begin.
func (sc *scanner) mixedAt(end int) int {
	at := end
	switch byteAt(sc.norm, at) {
	case '"':
		at = sc.blanks(at + 1)
	case '.':
		at++
		if byteAt(sc.norm, at) == '-' {
			at++
		}
	case '-':
		at++
	case ' ':
		if at >= len(sc.norm) {
			return 0
		}
		at = sc.blanks(at)
	default:
		return 0
	}
	if !digit(byteAt(sc.norm, at)) {
		return 0
	}
	return at
}

// fraction reads a/b where b is a power of two to 64, as inch sizes have.
func (sc *scanner) fraction(i int) (float64, int) {
	a, end := sc.digits(i)
	if end == i || byteAt(sc.norm, end) != '/' {
		return 0, 0
	}
	b, stop := sc.digits(end + 1)
	if stop == end+1 || b < 2 || b > 64 || a == 0 || a > 99 || byteAt(sc.norm, stop) == '/' && digit(byteAt(sc.norm, stop+1)) {
		return 0, 0
	}
	return float64(a) / float64(b), stop
}

func (sc *scanner) inchMark(end int, f *figure) int {
	at := sc.blanks(end)
	if byteAt(sc.norm, at) == '"' {
		f.marked = true
		return at + 1
	}
	if at < len(sc.norm) && !f.marked {
		if stop, m := sc.phrase(at); m != nil && hasUnit(m, "inch") && (f.whole || f.frac || at == end || f.v <= 4) {
			f.marked = true
			if byteAt(sc.norm, stop) == '.' {
				stop++
			}
			return stop
		}
	}
	return end
}

func hasUnit(ms []*meaning, value string) bool {
	for _, m := range ms {
		if m.class == classUnit && m.value == value {
			return true
		}
	}
	return false
}

type threadKey struct{ size, tpi int }

// inchThreads are the threads an inch known for each inch size, so that 1/2-14
// is a thread and 1/2-16 a thread and a tube.
var inchThreads = sync.OnceValue(func() map[threadKey]bool {
	out := map[threadKey]bool{}
	for _, f := range []Family{NPT, NPSM, G, UN, JIC, SAE45, ORB, ORFS} {
		for _, form := range Forms(f) {
			size := float64(form.Major.Inches())
			if f == NPT || f == NPSM || f == G {
				size = inches(form.Size)
			}
			out[threadKey{int(size*64 + 0.5), int(form.TPI*2 + 0.5)}] = true
		}
	}
	for _, r := range lexiconRows("thread.csv") {
		out[threadKey{int(inches(r["size"])*64 + 0.5), int(r.number("tpi")*2 + 0.5)}] = true
	}
	return out
})

// threadPitch reads threads an inch behind a size: 9/16-18, 1/4"-18, 9/16x18.
func (sc *scanner) threadPitch(end int, f *figure) int {
	at := end
	b := byteAt(sc.norm, at)
	if b != '-' && b != 'x' || f.v > 4 || !(f.frac || f.marked || f.whole) || !digit(byteAt(sc.norm, at+1)) {
		return 0
	}
	n, stop := sc.digits(at + 1)
	tpi := float64(n)
	if byteAt(sc.norm, stop) == '.' && byteAt(sc.norm, stop+1) == '5' {
		tpi, stop = tpi+0.5, stop+2
	}
	next := byteAt(sc.norm, stop)
	if tpi < 4 || tpi > 80 || next == '/' || next == '"' || digit(next) || sc.tubeBehind(stop) {
		return 0
	}
	known := inchThreads()[threadKey{int(f.v*64 + 0.5), int(tpi*2 + 0.5)}]
	if !known && !sc.unifiedBehind(stop) || b == 'x' && !known {
		if b == '-' && f.frac && tpi >= 10 && tpi <= 63 && tpi == float64(n) {
			f.tube = tpi
			f.kind = inchSize
			return stop
		}
		return 0
	}
	f.kind, f.pitch, f.tube = unSize, tpi, tpi
	return stop
}

// tubeBehind reports whether millimetres follow, so that the figure is a tube or a pin.
func (sc *scanner) tubeBehind(i int) bool {
	_, m := sc.phrase(sc.blanks(i))
	return m != nil && hasUnit(m, "mm")
}

func (sc *scanner) unifiedBehind(i int) bool {
	_, m := sc.phrase(sc.blanks(i))
	for _, s := range m {
		if s.class == classFamily && (s.value == "UN" || s.value == "NH" || s.value == "NST") {
			return true
		}
	}
	return false
}

// unifiedClass reads -2A, -2B or the words UNF-2B behind a unified thread.
func (sc *scanner) unifiedClass(i int, f *figure) int {
	at := i
	if byteAt(sc.norm, at) == '-' {
		at++
	}
	c := byteAt(sc.norm, at)
	x := byteAt(sc.norm, at+1)
	if at > i && (c == '2' || c == '3' || c == '1') && (x == 'a' || x == 'b') && !alnum(byteAt(sc.norm, at+2)) {
		f.suffixed = Male
		if x == 'b' {
			f.suffixed = Female
		}
		return at + 2
	}
	return i
}

// unitBehind reads what a figure counts: mm, bar, fen, a cone's series, a class
// letter, feet, pieces.
func (sc *scanner) unitBehind(end int, f *figure) int {
	if byteAt(sc.norm, end) == '\'' && !f.marked {
		f.kind = junkFigure
		return end + 1
	}
	at := sc.blanks(end)
	if f.frac || f.marked {
		f.kind = inchSize
		return sc.parallelClass(end, f)
	}
	if at >= len(sc.norm) {
		return end
	}
	if stop := sc.series(end, at, f); stop > 0 {
		return stop
	}
	if sc.norm[at] == '#' {
		f.kind = junkFigure
		return at + 1
	}
	stop, m := sc.phrase(at)
	for _, s := range m {
		if s.class == classUnit {
			return sc.takeUnit(end, at, stop, s.value, f)
		}
	}
	return end
}

func (sc *scanner) takeUnit(end, at, stop int, unit string, f *figure) int {
	one := stop-at == 1 && sc.norm[at] < 0x80
	if one && letter(sc.norm[at]) {
		capital := sc.capital(at)
		sized := f.v <= 4 && f.whole
		switch sc.norm[at] {
		case 'm', 'h', 'f':
			if capital || sized && at > end && !(sc.norm[at] == 'm' && sc.figured()) {
				return end
			}
		case 'c', 'w', 'v':
			if sized || capital && at == end && sc.norm[at] == 'c' {
				return end
			}
		}
	}
	switch unit {
	case "mm":
		f.kind = mmSize
	case "eighth":
		f.kind, f.v = fenSize, f.v/8
	case "bar", "psi", "mpa", "kpa", "kgcm2", "atm":
		f.kind, f.unit = pressureFigure, unit
	case "inch":
		f.kind, f.marked = inchSize, true
	default:
		f.kind = junkFigure
	}
	return stop
}

// figured reports whether the line gave a figure before: 1/4" 1 m is a length.
func (sc *scanner) figured() bool {
	for k := range sc.items {
		if sc.items[k].figure != nil {
			return true
		}
	}
	return false
}

// series reads the letter of a 24 degree cone (12L, 16 S), of a nominal bore of
// Japan (15A), of the Chinese inch (1寸2, 1寸半), and of a class.
func (sc *scanner) series(end, at int, f *figure) int {
	c := sc.norm[at]
	alone := !alnum(byteAt(sc.norm, at+1))
	if sc.norm[at] >= 0xE0 {
		return sc.chineseInch(at, f)
	}
	switch {
	case (c == 'l' || c == 's') && alone && f.whole && coneTube(f.v, c) && byteAt(sc.norm, at+1) != '/' && (at == end || sc.capital(at)):
		f.kind, f.series = coneSize, c
		return at + 1
	case c == 'l' && byteAt(sc.norm, at+1) == 'l' && f.whole && f.v <= 12:
		f.kind = junkFigure
		return at + 2
	case c == 'a' && alone && at == end && f.whole && f.v >= 6 && sc.lex.bores[int(f.v)] > 0 && sc.eastern():
		f.kind, f.v = dnSize, sc.lex.bores[int(f.v)]
		return at + 1
	case c == 'l' && alone && at == end && f.v >= 100:
		f.kind = junkFigure
		return at + 1
	}
	return 0
}

func (sc *scanner) eastern() bool {
	for i := range sc.norm {
		if wide(sc.norm, i) {
			return true
		}
	}
	return false
}

// chineseInch reads 寸 with what follows it: a figure counts eighths, 半 is a half.
func (sc *scanner) chineseInch(at int, f *figure) int {
	const inch, half = "寸", "半"
	if !hasText(sc.norm, at, inch) || !f.whole {
		return 0
	}
	f.kind = fenSize
	end := at + len(inch)
	if hasText(sc.norm, end, half) {
		f.v += 0.5
		return end + len(half)
	}
	if n, stop := sc.digits(end); stop == end+1 && n < 8 {
		f.v += float64(n) / 8
		return stop
	}
	return end
}

func hasText(b []byte, at int, text string) bool {
	return at+len(text) <= len(b) && string(b[at:at+len(text)]) == text
}

// parallelClass reads the A or B of ISO 228 behind an inch size, the B of a
// Japanese inch size, or a gender glued to the figure.
func (sc *scanner) parallelClass(end int, f *figure) int {
	at := sc.blanks(end)
	c := byteAt(sc.norm, at)
	if (c == 'a' || c == 'b') && !alnum(byteAt(sc.norm, at+1)) && sc.afterG() {
		f.suffixed, f.classA = Male, c == 'a'
		return at + 1
	}
	return end
}

// afterG reports whether the word before the figure is G, which alone has classes.
func (sc *scanner) afterG() bool {
	if len(sc.items) == 0 {
		return false
	}
	m := sc.items[len(sc.items)-1].is(classFamily)
	return m != nil && m.value == "BSPP"
}

// coneTube reports whether a tube of v mm is made in the series.
func coneTube(v float64, series byte) bool {
	_, ok := Find(coneFamily(series), coneSize24(v, series))
	return ok
}

func coneFamily(series byte) Family {
	if series == 's' {
		return Cone24S
	}
	return Cone24L
}

// coneSize24 writes a cone's size as the standard does: 12L, 16S.
func coneSize24(v float64, series byte) string { return trim(v) + strings.ToUpper(string(series)) }

// metric reads M22x1.5, M 30 x 2 keg, M18×1,5-6g, M22-14; 0 if it is no metric
// thread (M 1/2 is a male of half an inch).
func (sc *scanner) metric(i int, glued bool) int {
	at := sc.blanks(i + 1)
	d, end := sc.digits(at)
	if end == at || end-at > 2 || d < 3 || byteAt(sc.norm, end) == '/' {
		return 0
	}
	if at > i+1 && byteAt(sc.norm, sc.blanks(end)) != 'x' {
		return 0
	}
	v := float64(d)
	if byteAt(sc.norm, end) == '.' {
		part, stop := sc.digits(end + 1)
		v, end = v+float64(part)/math.Pow10(stop-end-1), stop
	}
	if byteAt(sc.norm, end) == '"' || letter(byteAt(sc.norm, end)) && byteAt(sc.norm, end) != 'x' {
		return 0
	}
	f := &figure{kind: metricSize, v: v}
	end = sc.metricPitch(end, f)
	end = sc.metricClass(end, f)
	return sc.addFigure(i, end, glued, f)
}

func (sc *scanner) metricPitch(end int, f *figure) int {
	at := sc.blanks(end)
	switch byteAt(sc.norm, at) {
	case 'x':
		from := sc.blanks(at + 1)
		p := &figure{}
		if !digit(byteAt(sc.norm, from)) {
			return end
		}
		stop := sc.value(from, p)
		if p.frac || p.kind == garbled || byteAt(sc.norm, stop) == '"' || sc.tubeBehind(stop) && p.v > 6 {
			return end
		}
		f.pitch = p.v
		if sc.tubeBehind(stop) {
			stop, _ = sc.phrase(sc.blanks(stop))
		}
		return stop
	case '-':
		n, stop := sc.digits(at + 1)
		if at == end && (n == 14 || n == 15) && f.v == 22 {
			f.pin = float64(n)
			if sc.tubeBehind(stop) {
				stop, _ = sc.phrase(sc.blanks(stop))
			}
			return stop
		}
	}
	return end
}

// metricClass reads the tolerance class of ISO 965: capitals are internal.
func (sc *scanner) metricClass(end int, f *figure) int {
	at := end
	if byteAt(sc.norm, at) == '-' {
		at++
	}
	c := byteAt(sc.norm, at+1)
	if at == end || !digit(byteAt(sc.norm, at)) || (c != 'h' && c != 'g') || alnum(byteAt(sc.norm, at+2)) {
		return end
	}
	f.suffixed = Male
	if sc.capital(at + 1) {
		f.suffixed = Female
	}
	return at + 2
}
