package title

import (
	"bytes"
	"math"
	"slices"
	"sync"

	"handtight/threads"
)

type threadKey struct{ size, tpi int }

// inchThreads are the threads an inch known for each inch size, so that 1/2-14
// is a thread and 1/2-16 a thread and a tube.
var inchThreads = sync.OnceValue(func() map[threadKey]bool {
	out := map[threadKey]bool{}
	for _, f := range []threads.Family{threads.NPT, threads.NPSM, threads.G, threads.UN, threads.JIC, threads.SAE45, threads.ORB, threads.ORFS} {
		for _, form := range threads.Forms(f) {
			size := float64(form.Major.Inches())
			if f == threads.NPT || f == threads.NPSM || f == threads.G {
				size = threads.SizeInches(form.Size)
			}
			out[threadKey{int(size*64 + 0.5), int(form.TPI*2 + 0.5)}] = true
		}
	}
	for _, r := range lexiconRows("thread.csv") {
		out[threadKey{int(threads.SizeInches(r["size"])*64 + 0.5), int(r.number("tpi")*2 + 0.5)}] = true
	}
	return out
})

// threadPitch reads threads an inch behind a size: 9/16-18, 1/4"-18, 9/16x18.
func (sc *scanner) threadPitch(end int, f *figure) int {
	at := end
	b := byteAt(sc.norm, at)
	if stop := sc.numbered(end, f); stop > 0 {
		return stop
	}
	if b != '-' && b != 'x' || f.v > 4 || !(f.frac || f.marked || f.whole) || !digit(byteAt(sc.norm, at+1)) {
		return 0
	}
	n, stop := sc.digits(at + 1)
	tpi := float64(n)
	if byteAt(sc.norm, stop) == '.' && byteAt(sc.norm, stop+1) == '5' {
		tpi, stop = tpi+0.5, stop+2
	} else if n == 11 && bytes.HasPrefix(sc.norm[stop:], []byte(" 1/2")) {
		tpi, stop = tpi+0.5, stop+4 // 1-11½ NPT, as the standard writes it
	}
	next := byteAt(sc.norm, stop)
	if tpi < 4 || tpi > 80 || next == '/' || next == '"' || digit(next) || sc.tubeBehind(stop) && !sc.flaredThread(f.v, tpi) {
		return 0
	}
	if b == 'x' && f.plain() && !sc.unifiedBehind(stop) && anyToken(sc.tokens, func(it *token) bool { return takesTube(it.value(classEnd)) }) {
		return 0 // tee push-in 3x8
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

// flaredThread reports a thread of the unified series whose family stands right before it, so that the word for a hose behind it
// begins something else: JIC 9/16-18 hose 3/8.
func (sc *scanner) flaredThread(v, tpi float64) bool {
	n := len(sc.tokens)
	return n > 0 && dashWord(sc.tokens[n-1].is(classFamily)) && inchThreads()[threadKey{int(v*64 + 0.5), int(tpi*2 + 0.5)}]
}

// numberedThreads are the threads of the numbered sizes of unified screws, with their threads an inch. Size n is
// 0.060 in and 0.013 in for each number across. Source: ASME B1.1, as memory has it.
var numberedThreads = [...][2]int{{4, 40}, {6, 32}, {8, 32}, {10, 24}, {10, 32}, {12, 24}}

// numbered reads the thread of a numbered size: 10-32.
func (sc *scanner) numbered(end int, f *figure) int {
	if byteAt(sc.norm, end) != '-' || !f.whole || f.marked || f.frac || f.v < 4 || f.v > 12 {
		return 0
	}
	n, stop := sc.digits(end + 1)
	if !slices.Contains(numberedThreads[:], [2]int{int(f.v), n}) || alnum(byteAt(sc.norm, stop)) && !sc.unifiedBehind(stop) || byteAt(sc.norm, stop) == '-' || byteAt(sc.norm, stop) == '/' || sc.tubeBehind(stop) || sc.measured(stop) {
		return 0
	}
	if k := len(sc.tokens); k > 0 && (sc.tokens[k-1].role(classBefore) == asBore || sc.tokens[k-1].mark == '-') {
		return 0 // DN 10-32; 6-10-32
	}
	f.kind, f.pitch, f.tube, f.v, f.whole = unSize, float64(n), float64(n), 0.060+0.013*f.v, false
	return stop
}

// tubeBehind reports whether millimetres follow, so that the figure is a tube or a pin.
func (sc *scanner) tubeBehind(i int) bool {
	_, m := sc.lookUp(sc.blanks(i))
	return m != nil && hasUnit(m, "mm")
}

// measured reports whether a unit follows, so that the two figures are a range of it: 12-24 V, 4-40 °C.
func (sc *scanner) measured(i int) bool {
	_, m := sc.lookUp(sc.blanks(i))
	return onlyUnit(m) && m != nil
}

func (sc *scanner) unifiedBehind(i int) bool {
	_, m := sc.lookUp(sc.blanks(i))
	for _, s := range m.all() {
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
		f.suffixed = threads.Male
		if x == 'b' {
			f.suffixed = threads.Female
		}
		return at + 2
	}
	return i
}

// metric reads M22x1.5, M 30 x 2 keg, M18×1,5-6g, M22-14; 0 if it is no metric
// thread (M 1/2 is a male of half an inch).
func (sc *scanner) metric(i int, glued bool) int {
	at := sc.blanks(i + 1)
	d, end := sc.digits(at)
	if end == at || end-at > 2 || d < 3 || sc.norm[at] == '0' && byteAt(sc.norm, i-1) == '-' || byteAt(sc.norm, end) == '/' && !(byteAt(sc.norm, end+1) == 'm' && digit(byteAt(sc.norm, end+2))) {
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
	sex := threads.NoSex
	if b := byteAt(sc.norm, end); (b == 'a' || b == 'i') && !alnum(byteAt(sc.norm, end+1)) && v <= 10 {
		sex = map[byte]threads.Sex{'a': threads.Male, 'i': threads.Female}[b] // M5a: aussen
	} else if b == '"' || letter(b) && b != 'x' {
		return 0
	}
	f := &figure{kind: metricSize, v: v, suffixed: sex}
	if sex != threads.NoSex {
		return sc.addFigure(i, end+1, glued, f)
	}
	end = sc.metricPitch(end, f)
	if sc.lex.pairs[[2]int{d, int(f.pitch)}] > 0 {
		return 0 // M 12 x 17: a male of 12/17
	}
	end = sc.metricClass(end, f)
	return sc.addFigure(i, end, glued, f)
}

func (sc *scanner) metricPitch(end int, f *figure) int {
	at := sc.blanks(end)
	switch byteAt(sc.norm, at) {
	case 'b', 'm', 'p':
		return sc.spokenPitch(end, at, f)
	case 'x':
		from := sc.blanks(at + 1)
		p := &figure{}
		if !digit(byteAt(sc.norm, from)) {
			return end
		}
		stop := sc.value(from, p)
		if whole, end := sc.digits(from); p.frac && p.v > 1 && end == from+1 && whole >= 1 && whole <= 6 && isBlank(byteAt(sc.norm, end)) {
			p.v, p.frac, stop = float64(whole), false, end // M16x2 1/4 BSPP: the pitch, and the other end's size
		}
		if p.frac || p.kind == garbled || byteAt(sc.norm, stop) == '"' || sc.tubeBehind(stop) && (p.v > 6 || p.v > f.v/3) { // M5 x 4mm: no thread is so coarse
			return end
		}
		f.pitch = p.v
		if sc.tubeBehind(stop) {
			stop, _ = sc.lookUp(sc.blanks(stop))
		}
		return stop
	case '-':
		n, stop := sc.digits(at + 1)
		if at == end && (n == 14 || n == 15) && f.v == 22 {
			f.pin = float64(n)
			if sc.tubeBehind(stop) {
				stop, _ = sc.lookUp(sc.blanks(stop))
			}
			return stop
		}
		// M22-1.5: no size stands behind the hyphen where it is no whole figure. ISO 261 ends at 6 mm.
		p := &figure{}
		if at != end || !digit(byteAt(sc.norm, at+1)) {
			return end
		}
		stop = sc.value(at+1, p)
		if !p.frac && p.kind != garbled && p.v < 6 && p.v != math.Trunc(p.v) && byteAt(sc.norm, stop) != '"' && !alnum(byteAt(sc.norm, stop)) {
			f.pitch = p.v
			return stop
		}
	}
	return end
}

// spokenPitch reads the pitch behind a word for the x: M16 by 1.5, M16 mal 1,5. A longer number, or one with its unit, is none.
func (sc *scanner) spokenPitch(end, word int, f *figure) int {
	for _, w := range timesList.words() {
		if !hasText(sc.norm, word, w) || !isBlank(byteAt(sc.norm, word+len(w))) {
			continue
		}
		p := &figure{}
		from := sc.blanks(word + len(w))
		if !digit(byteAt(sc.norm, from)) {
			return end
		}
		stop := sc.value(from, p)
		if p.frac || p.kind == garbled || p.v > coarsest || p.v > f.v/3 || byteAt(sc.norm, stop) == '"' || alnum(byteAt(sc.norm, stop)) || sc.tubeBehind(stop) || sc.countsPieces(stop) {
			return end
		}
		f.pitch = p.v
		return stop
	}
	return end
}

// countsPieces reports a word for pieces behind a number: M12 by 1 each.
func (sc *scanner) countsPieces(stop int) bool {
	_, m := sc.lookUp(sc.blanks(stop))
	return hasText(sc.norm, sc.blanks(stop), "each") || m != nil && m.has&(1<<classUnit) != 0
}

// coarsest is the largest pitch of the metric threads of fittings, in mm. Source: ISO 261, up to M42.
const coarsest = 4.5

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
	if !sc.bothCases() {
		return at + 2 // of a line in capitals the letter says nothing
	}
	f.suffixed = threads.Male
	if sc.capital(at + 1) {
		f.suffixed = threads.Female
	}
	return at + 2
}

// spacedPitch joins a size and its threads an inch that stand apart, before the thread's
// name: 1/2 x 14 NPT, 1/2 - 14 NPT, 1/2 14 NPT.
func (l *line) spacedPitch() {
	if l.seen.figures < 2 {
		return
	}
	l.pitchOfSex()
	for k := 0; k < len(l.tokens); k++ {
		size := l.tokens[k].figure
		if size == nil || size.kind != inchSize && size.kind != bare || size.v > 4 || !size.frac && !size.marked && !size.whole {
			continue
		}
		j := k + 1
		if it := at(l.tokens, j); it.value(classSep) == "x" || it.mark == '-' {
			j++
		}
		turns := at(l.tokens, j).figure
		if half := at(l.tokens, j+1).figure; turns != nil && turns.v == 11 && half != nil && half.v == 0.5 && half.frac {
			turns = &figure{v: 11.5} // 1 x 11 1/2 NPT
			j++
		}
		family := at(l.tokens, j+1).is(classFamily)
		if turns == nil || turns.kind != bare || turns.marked || turns.v < 8 || family == nil || family.has("pre") {
			continue
		}
		if !inchThreads()[threadKey{int(size.v*64 + 0.5), int(turns.v*2 + 0.5)}] {
			continue
		}
		size.kind, size.pitch, size.tube = unSize, turns.v, turns.v
		l.tokens[k].to = l.tokens[j].to
		l.tokens = append(l.tokens[:k+1], l.tokens[j+1:]...)
	}
}

// pitchOfSex reads 12x1,5 AG as M12x1.5 whose letter lacks: a sex stands beside it, the second figure is a pitch of the first, and no
// tube, whose wall it would be, is named.
func (l *line) pitchOfSex() {
	if l.one || l.seen.plain == 0 || !l.seen.word(classSep) {
		return
	}
	for k := range l.tokens {
		size := l.tokens[k].figure
		if size == nil {
			continue
		}
		pitch := at(l.tokens, k+2).figure
		if pitch == nil || !size.plain() || !size.whole || size.kind != bare || size.v < 8 || size.v > 42 || at(l.tokens, k+1).value(classSep) != "x" {
			continue
		}
		if pitch.kind != bare || pitch.frac || pitch.marked || pitch.v != 1.5 && pitch.v != 1.25 && pitch.v != 1.75 || at(l.tokens, k+3).value(classSep) != "" {
			continue
		}
		if l.says("TUBE") || l.says("TUBING") || l.namesHose() {
			return
		}
		if l.beside(k, -1).is(classSex) == nil && l.beside(k+2, 1).is(classSex) == nil || l.beside(k, -1).figure != nil || l.beside(k, -1).is(classMaterial) != nil {
			continue
		}
		size.kind, size.pitch = metricSize, pitch.v
		l.tokens[k].to = l.tokens[k+2].to
		l.tokens = slices.Delete(l.tokens, k+1, k+3)
		return
	}
}
