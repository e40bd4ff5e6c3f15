package title

import (
	"bytes"
	"math"
	"sync"

	"handtight/pressure/quantity"
	"handtight/threads"
)

// largestInch is the largest pipe size that is read: more is a length, a filter
// housing or a coil.
const largestInch = 4

// largestGauge is the largest thread of a gauge in inches; more is its dial. EN 837-1 ends at 1/2, and
// thermometers' pockets at 1 (memory).
const largestGauge = 1

// elementDiameters are the diameters in inches of membranes and of filters: common practice.
var elementDiameters = map[float64]bool{2.5: true, 4: true, 4.5: true, 8: true}

// classifyInch keeps lengths, spanners and drives out of the inch sizes.
func (l *line) classifyInch(k int, f *figure) {
	next := l.beside(k, 1)
	behind, called := next.role(classAfter), l.called(k)
	if behind == asLength && (l.ownLength(k) || next.value(classAttr) == "long" && f.frac && !l.one && l.onlyFigure(k) && l.shape != nil && l.shape.ends > 0) {
		behind = noRole // nipple 1/2" long
	}
	if behind == asSpanner && hasText(l.norm, next.from, "hex") && !l.sizeBefore(k) {
		behind = noRole // flexible hose 1/2" hex: the form of the nut
	}
	if word := at(l.tokens, k+1); behind == asDial && dialBeforeList.has(l.norm[word.from:word.to]) && at(l.tokens, k+2).figure != nil {
		behind = noRole // 1/4 carátula 2 1/2: the dial is what stands behind
	}
	var as role
	switch {
	case (behind == asLength || behind.other()) && !(l.reducing && f.frac):
		as = behind
	case behind == asLength:
		f.perhaps = true
	case string(l.norm[at(l.tokens, k+1).from:at(l.tokens, k+1).to]) == "body" && l.sizeElsewhere(k) && (l.says("QC") || l.is(valve) || l.shape != nil && l.shape.kind == "valve") && !l.one:
		as = asMeasure // 1/2 body: the size of a quick coupling
	case called == asSetting && f.frac, called == asHole && f.frac && l.boreLetter(k):
		// fitting set 3/8, T-Bohrung 1/2": no setting is a fraction, and the letter is that of the way through
	case called.other(), called == asCount, called == asLength && l.sizeBefore(k):
		as = called
	}
	if l.is(housing) && !l.one && f.marked && elementDiameters[f.v] && next.is(classFamily) == nil && next.is(classSex) == nil && anyToken(l.tokens, func(it *token) bool { return it.figure != nil && it.figure != f && it.figure.frac && it.figure.v < 2 }) {
		as = asElement // membrane housing 2.5 inch with 1/2 NPT F ports
	}
	if l.is(elementSized) && next.value(classSep) == "x" && at(l.tokens, k+2).figure != nil && at(l.tokens, k+2).figure.v > 8 {
		as = asElement // 2 1/2 x 40 in
	}
	long := next.value(classAttr) == "long" && l.beside(k, -1).parted() && !f.frac
	if f.v > largestInch || f.v < 1.0/16 || long {
		as = asLength
	}
	if l.is(dial) && f.v > largestGauge {
		as = asDial
	}
	if l.insideCode(k, f) {
		as = asCode
	}
	if as == noRole && l.reducing && f.frac && f.v > 1 && !l.one && bytes.IndexByte(l.norm[l.tokens[k].from:l.tokens[k].to], '-') > 0 && !anyToken(l.tokens, func(it *token) bool { return it.value(classSep) == "x" }) && !l.otherSize(k) {
		whole := math.Floor(f.v)
		f.or = inchText(whole) + " x " + inchText(f.v-whole) // reducing socket 1-3/4
	}
	if l.portsAndPositions(k, f) {
		as = asWays
	}
	if as != noRole {
		f.drop(as)
	}
}

// ownLength reports a word of length behind the figure at k that another figure of millimetres or centimetres
// follows, whose word it is: 3/8" length 120 mm.
func (l *line) ownLength(k int) bool {
	next, then := at(l.tokens, k+1), at(l.tokens, k+2).figure
	return next.role(classBefore) == asLength && then != nil && (then.kind == mmSize || then.role == asLength || then.digits() && then.v > largestInch)
}

// portsAndPositions reports the 5/2 of a valve with five ports and two positions (ISO 1219-1 calls valves so), as
// no size is written: a mark of inches, or no other size beside it, and it is one.
func (l *line) portsAndPositions(k int, f *figure) bool {
	text := l.norm[l.tokens[k].from:l.tokens[k].to]
	return l.is(valve) && !f.marked && len(text) == 3 && text[1] == '/' && '2' <= text[0] && text[0] <= '5' && (text[2] == '2' || text[2] == '3') && l.otherSize(k)
}

// insideCode reports a fraction that letters stand glued to on both sides, the first of them not
// understood: Q2/11F is a type.
func (l *line) insideCode(k int, f *figure) bool {
	prev, next := at(l.tokens, k-1), at(l.tokens, k+1)
	return f.frac && !f.marked && l.tokens[k].glued && prev.unread && next.glued && next.figure == nil && next.mark == 0
}

// sizeBefore reports whether a size stands before the figure, so that what a
// word of length goes with is the length of that.
func (l *line) sizeBefore(k int) bool {
	for j := range l.tokens[:k] {
		if f := l.tokens[j].figure; f != nil && f.sized() {
			return true
		}
	}
	return false
}

// classifyMillimetres tells a tube or a tail from a nominal bore, a diameter of the
// thread, a length, a spanner, and the pin of a pressure washer's joint.
func (l *line) classifyMillimetres(k int, f *figure) {
	prev, next := l.beside(k, -1), l.beside(k, 1)
	long := next.value(classAttr) == "long"
	longTail := long && (prev.is(classEnd) != nil && (f.v < shortestTail || !l.otherSize(k)) || l.onlyGrip(k, prev))
	if long && !longTail && f.v >= shortestTail && l.otherSize(k) {
		f.drop(asLength)
		next.word = l.lex.word("the") // 120 mm long
		return
	}
	switch {
	case longTail:
	case l.called(k).other() || l.called(k) == asLength || l.called(k) == asCount:
		f.drop(l.called(k))
	case next.role(classAfter) == asMeasure && l.galvanised() && l.lex.bores[int(f.v)] > 0 && l.shape != nil && l.shape.ends > 0 && !l.otherSize(k):
		f.kind = l.bore(f) // G.I. elbow 15 mm dia
		next.word = l.lex.word("the")
	case next.role(classAfter).other() || next.role(classAfter) == asLength && !l.ownLength(k):
		f.drop(next.role(classAfter))
	case l.washer22 && (f.v == 14 || f.v == 15) && prev.is(classEnd) == nil && next.is(classEnd) == nil:
		if !l.pinOf(k, f.v) {
			f.drop(asNose)
			break
		}
		f.drop(asRepeat)
		f.used = true // the thread before it carries it
	case next.role(classAfter) == asBore && l.is(tail) && hasText(l.norm, next.from, "bore"):
		// hose tail for 13 mm bore
	case next.role(classAfter) == asBore && !(l.one && next.is(classEnd) != nil) || prev.role(classBefore) == asBore:
		f.kind = l.bore(f)
	case f.v > l.largestTube(k) || f.v < 3:
		f.drop(asLength)
	case l.saysMetric(k):
		f.kind = metricSize
	default:
		l.threadInMillimetres(k, f)
	}
}

// dashBesideFlare reports digits that are glued to the name of a pipe thread with its sex, where another end of the line is so named by a dash size:
// 4MNPT x 4MJ. They count sixteenths, as the other's do.
func (l *line) dashBesideFlare(k int, f *figure) bool {
	next := at(l.tokens, k+1)
	m := next.is(classFamily)
	if l.one || !f.digits() || f.v < 2 || f.v > 32 || m == nil || len(m.sexes) == 0 || !next.glued || dashWord(m) {
		return false
	}
	for j := 1; j < len(l.tokens); j++ {
		o := l.tokens[j-1].figure
		if j-1 != k && o.digitsInCode() && l.tokens[j].glued && dashWord(l.tokens[j].is(classFamily)) {
			return true
		}
	}
	return false
}

// digitsInCode reports plain digits, or a dash size that was read from them.
func (f *figure) digitsInCode() bool {
	return f.digits() || f != nil && f.kind == dashSize && f.whole
}

// tubeTiedToThread reports the outside of a tube that a hyphen ties to the letter of a thread and its size, in a line of push-in or compression
// fittings: 10-G3/8.
func (l *line) tubeTiedToThread(k int, f *figure) bool {
	hyphen, name := at(l.tokens, k+1), at(l.tokens, k+2)
	m := name.is(classFamily)
	return !l.one && f.plain() && tubeOutsides[f.v] && hyphen.mark == '-' && hyphen.glued && name.glued && m != nil && m.has("pre") && at(l.tokens, k+3).figure != nil && at(l.tokens, k+3).figure.frac && (l.says("COMPRESSION") || l.says("PUSH"))
}

// smallGrip reports a whole number of two to four beside the word for a tail or a push-in end, where the other size is that of a small thread:
// M5 male x barb 3, 1/8 NPT x 3 barb. It is millimetres.
func (l *line) smallGrip(k int, f *figure) bool {
	if l.one || !f.digits() || f.v < 2 || f.v > 4 {
		return false
	}
	grip := func(j int) bool {
		v := at(l.tokens, j).value(classEnd)
		return v == "BARB" || v == "PUSH" || v == "COMPRESSION"
	}
	next := at(l.tokens, k+1)
	if !(grip(k-1) && !next.parted() && next.is(classKind) == nil) && !(grip(k+1) && k > 2 && at(l.tokens, k-1).value(classSep) == "x") {
		return false
	}
	for j := range l.tokens {
		o := l.tokens[j].figure
		if j == k || o == nil {
			continue
		}
		if o.kind == metricSize && o.v <= 14 || o.frac && o.v <= 0.25 && (o.kind == inchSize || o.kind == bare) {
			return true
		}
	}
	return false
}

// largestTube is the most millimetres that are a tube's and no length. Pipe of polyethylene goes up to
// 110 with compression ends (ISO 17885, memory), which the line must name, and no other size.
func (l *line) largestTube(k int) float64 {
	if (l.one || l.shape != nil && l.shape.ends > 1) && l.takesTubes() && !l.otherSize(k) {
		return 110
	}
	if !l.one && l.shape != nil && l.is(nominal) && pipeOutsides[l.tokens[k].figure.v] && !l.otherSize(k) && l.beside(k, 1).value(classAttr) != "long" {
		return 110 // the only size of a tee or an elbow: T-stykke 110 mm
	}
	if !l.one && l.is(drain) {
		return 110 // a drain in the floor
	}
	return 63
}

// saysMetric reports whether the millimetres are called metric and a sex follows: 22mm metric male.
func (l *line) saysMetric(k int) bool {
	it, sex := at(l.tokens, k+1), at(l.tokens, k+2).is(classSex)
	if sex == nil || len(sex.sexes) != 1 {
		return false
	}
	switch string(l.norm[it.from:it.to]) {
	case "metric":
		return true
	case "met":
		return sex.tongue == "en" // of a Dutch sex it is the word for with
	}
	return false
}

// shortestTail is the length in mm that no hose tail with a thread falls short of, so that a
// smaller figure is its hose's bore. Common practice.
const shortestTail = 33

// onlyGrip reports the one size in millimetres behind the x of a hose tail: "G 3/4 x 19 mm
// long" is a long tail for 19 mm hose, since a tail is never sold without its hose.
func (l *line) onlyGrip(k int, prev *token) bool {
	f := l.tokens[k].figure
	if !l.is(tail) || prev.value(classSep) != "x" || f.v >= shortestTail {
		return false
	}
	for j := range l.tokens {
		if o := l.tokens[j].figure; j != k && o != nil && o.kind == mmSize {
			return false
		}
	}
	return true
}

// pinOf gives the nose of a pressure washer's joint to the M22 thread before it;
// false where none stands there.
func (l *line) pinOf(k int, v float64) bool {
	for j := k - 1; j >= 0; j-- {
		if f := l.tokens[j].figure; f != nil && f.kind == metricSize && f.v == 22 {
			f.pin = v
			return true
		}
	}
	return false
}

// threadInMillimetres reads 20 mm BSP and G 32 mm as nominal bores, and
// "rosca 21 mm" by the diameter of the thread.
func (l *line) threadInMillimetres(k int, f *figure) {
	prev, next := at(l.tokens, k-1), at(l.tokens, k+1)
	pm, nm := prev.is(classFamily), next.is(classFamily)
	if v := l.lex.bores[int(f.v)]; v > 0 && f.v == math.Trunc(f.v) && l.bspOnly(k) && (prev.is(classSex) != nil || next.is(classSex) != nil || pm != nil && bspWord(pm)) {
		f.v, f.kind = v, dnSize
		return
	}
	called := nm != nil && (bspWord(nm) || nm.value == "NPT") && prev.is(classEnd) == nil && !(nm.has("pre") && at(l.tokens, k+2).figure != nil)
	if !called && !(pm != nil && (pm.has("pre") || pm.value == "THREAD")) && !(prev.is(classSex) != nil && f.v != math.Trunc(f.v)) {
		return
	}
	if nm != nil && next.is(classEnd) != nil || pm != nil && pm.value == "THREAD" && next.value(classSep) == "x" && l.inchElsewhere() {
		return
	}
	if v := l.lex.bores[int(f.v)]; v > 0 && f.v == math.Trunc(f.v) {
		f.v, f.kind = v, dnSize
		return
	}
	female := l.beside(k, -1).is(classSex)
	if female == nil {
		female = l.beside(k, 1).is(classSex)
	}
	if female != nil && len(female.sexes) == 1 && female.sexes[0] == threads.Female && f.v != math.Trunc(f.v) {
		for _, g := range threads.Forms(threads.G) {
			if math.Abs(float64(g.Minor)-f.v) < 0.35 {
				f.v, f.kind = threads.SizeInches(g.Size), dnSize // a bore as it is measured
				return
			}
		}
	}
	for _, g := range threads.Forms(threads.G) {
		if math.Abs(float64(g.Major)-f.v) < 0.6 {
			f.v, f.kind = threads.SizeInches(g.Size), dnSize
			return
		}
	}
}

// inchElsewhere reports an inch size in the line, so that millimetres parted from
// it by an x are a tube's.
func (l *line) inchElsewhere() bool {
	for k := range l.tokens {
		if f := l.tokens[k].figure; f != nil && f.kind == inchSize {
			return true
		}
	}
	return false
}

// bspOnly reports whether the line says BSP and gives no other size, so that
// millimetres beside a sex are a nominal bore (BSP tee 20 mm F).
func (l *line) bspOnly(k int) bool {
	bsp := false
	for j := range l.tokens {
		if m := l.tokens[j].is(classFamily); m != nil {
			bsp = bsp || bspWord(m) && m.value != "THREAD"
		}
		f := l.tokens[j].figure
		if l.tokens[j].is(classEnd) != nil || f != nil && j != k && (f.kind == inchSize || f.kind == mmSize || f.kind == frenchSize) {
			return false
		}
	}
	return bsp
}

// allNominal takes the other millimetres of a threaded part for nominal bores
// too, where one of them is (25mm x 20mm BSP reducing bush).
func (l *line) allNominal() {
	if !l.is(nominal) {
		return
	}
	nominal := false
	for k := range l.tokens {
		f := l.tokens[k].figure
		nominal = nominal || f != nil && f.kind == dnSize
		if m := at(l.tokens, k-1).is(classFamily); f != nil && f.kind == dnSize && m != nil && m.has("pre") && l.tokens[k].glued {
			return // 15 x G15: a tube and a thread
		}
		if l.tokens[k].is(classEnd) != nil || f != nil && f.kind != dnSize && f.kind != mmSize && f.kind != junkFigure && f.kind != pressureFigure {
			return
		}
	}
	for k := range l.tokens {
		if f := l.tokens[k].figure; nominal && f != nil && f.kind == mmSize {
			f.kind = l.bore(f)
		}
	}
}

// hyphenated reports whether a hyphen joins the nominal bore at k to a thread of another size, so
// that the bore is another end's: DN20-Rc1/2.
func (l *line) hyphenated(k int) bool {
	size := at(l.tokens, k+3).figure
	return at(l.tokens, k+1).mark == '-' && at(l.tokens, k+1).glued && at(l.tokens, k+2).is(classFamily) != nil &&
		size != nil && size.kind == inchSize && size.v != l.tokens[k].figure.v
}

// sizedByBore reports whether the family is one whose sizes a nominal bore can name.
func sizedByBore(m *sense) bool { return m != nil && (bspWord(m) || m.value == "NPT") }

// threadAndTube parts 1/2-16 into a thread and a tube where the line speaks of tubes.
func (l *line) threadAndTube() {
	for k := 0; k < len(l.tokens); k++ {
		f := l.tokens[k].figure
		if f == nil || f.kind != inchSize || f.tube == 0 {
			continue
		}
		it := l.tokens[k]
		tube := token{from: it.from, to: it.to, figure: &figure{kind: mmSize, v: f.tube, whole: true}}
		sep := token{from: it.to, to: it.to, word: l.lex.word("x")}
		f.tube = 0
		l.tokens = append(l.tokens[:k+1], append([]token{sep, tube}, l.tokens[k+1:]...)...)
	}
}

// classifyThreadAndTube takes 1/2-20 for a thread and a tube in a line about press fittings, and in a
// tee whose first size is that tube: 20-1/2-20.
func (l *line) classifyThreadAndTube(k int, f *figure) {
	run := at(l.tokens, k-2).figure
	between := l.is(tee) && run != nil && run.v == f.pitch && at(l.tokens, k-1).parted()
	if (l.pressed && !dashWord(at(l.tokens, k-1).is(classFamily)) || between) && f.pitch == math.Trunc(f.pitch) {
		f.kind, f.pitch = inchSize, 0
		return
	}
	f.tube = 0
}

// inchText writes an inch size as the standards do: 1/2, 1 1/4, 2.
func inchText(v float64) string {
	n := int(v*64 + 0.5)
	if n >= 0 && n < len(inchTexts()) {
		return inchTexts()[n]
	}
	return spellInches(n)
}

// inchTexts are the sizes below 8 inches by their sixty-fourths: each line needs some.
var inchTexts = sync.OnceValue(func() []string {
	out := make([]string, 8*64)
	for n := range out {
		out[n] = spellInches(n)
	}
	return out
})

// inchForm is the form of a family with a size of so many inches; nil if the family has none.
func inchForm(f threads.Family, v float64) *threads.Form {
	if n := int(v*64 + 0.5); n >= 0 && n < len(inchTexts()) {
		return inchForms()[f][n]
	}
	form, _ := threads.Find(f, inchText(v))
	return form
}

// inchForms are the forms of each family by the sixty-fourths of an inch of their sizes, as [inchTexts] are.
var inchForms = sync.OnceValue(func() [][]*threads.Form {
	out := make([][]*threads.Form, len(threads.Families())+1)
	for _, f := range threads.Families() {
		out[f] = make([]*threads.Form, len(inchTexts()))
		for _, form := range threads.Forms(f) {
			if n := int(threads.SizeInches(form.Size)*64 + 0.5); n >= 0 && n < len(inchTexts()) && inchTexts()[n] == form.Size {
				out[f][n], _ = threads.Find(f, form.Size)
			}
		}
	}
	return out
})

// spellInches writes sixty-fourths of an inch in lowest terms: 1 1/4.
func spellInches(n int) string {
	whole, part, of := n/64, n%64, 64
	for part > 0 && part%2 == 0 {
		part, of = part/2, of/2
	}
	switch {
	case part == 0:
		return quantity.Exact(float64(whole))
	case whole == 0:
		return quantity.Exact(float64(part)) + "/" + quantity.Exact(float64(of))
	}
	return quantity.Exact(float64(whole)) + " " + quantity.Exact(float64(part)) + "/" + quantity.Exact(float64(of))
}
