package title

import (
	"math"
	"slices"
	"strings"
)

// inchLike reports whether a plain number can be an inch size: 1, 2, 0.75, 1.25.
func inchLike(v float64) bool {
	return v >= 0.125 && v <= 4 && v*8 == math.Trunc(v*8)
}

var dashNumbers = map[float64]bool{
	2: true, 3: true, 4: true, 5: true, 6: true, 7: true, 8: true, 10: true, 12: true, 14: true, 16: true, 20: true, 24: true, 32: true,
}

func (l *line) dash(k int, f *figure, prev, next *token) bool {
	if !f.whole || !dashNumbers[f.v] || !l.dashes && !l.hoseDash(k, f, prev, next) {
		return false
	}
	if f.dashed {
		return true
	}
	if m := next.is(classFamily); m != nil && m.has("dash") {
		own := at(l.tokens, k+2)
		return next.glued || own.glued || !own.figure.digits() || !dashNumbers[own.figure.v] // 2 JIC 6 caps: the dash is the 6
	}
	if m := prev.is(classFamily); m != nil && m.has("dash") && !next.parted() {
		return true
	}
	m := prev.is(classFamily)
	if far := at(l.tokens, k-2).is(classFamily); m == nil && far != nil && far.has("dash") && !l.tokens[k].glued && !f.marked && prev.figure == nil && prev.mark == 0 && (prev.is(classKind) != nil || prev.is(classSex) != nil || prev.value(classAttr) == "swivel") {
		return f.v >= 4 // JIC elbow 6 M, JIC female 8
	}
	return m != nil && m.has("dash") && f.v >= 4
}

// twice reports a figure that an x parts from the same figure again: elbow 90 x 90 of pipe of 90 mm.
func (l *line) twice(k int, f *figure) bool {
	for _, step := range [...]int{-1, 1} {
		if o := at(l.tokens, k+2*step).figure; at(l.tokens, k+step).value(classSep) == "x" && o != nil && o.v == f.v {
			f.kind = mmSize
			return l.takesTubes()
		}
	}
	return false
}

// hoseDash reports a figure with a hyphen of its own beside the word of a tail: -8 barb is half an inch of hose.
func (l *line) hoseDash(k int, f *figure, prev, next *token) bool {
	from := l.tokens[k].from
	hose := func(it *token) bool { return it.value(classEnd) == "BARB" || it.value(classEnd) == "HOSE" }
	return f.dashed && byteAt(l.norm, from-1) == '-' && (from < 2 || isBlank(l.norm[from-2])) && (hose(prev) || hose(next) || l.is(tail))
}

// classifyPaired reads a number parted by an x or a dash from another figure.
func (l *line) classifyPaired(k int, f *figure, prev, next *token) figureKind {
	var other *figure
	if next.parted() && k+2 < len(l.tokens) {
		other = l.after(k)
	}
	if other == nil && prev.parted() && k >= 2 {
		other = l.before(k)
	}
	if other == nil || other.kind == junkFigure || other.kind == pressureFigure {
		return bare
	}
	if (l.is(manifold) || l.is(tee) && f.v <= 3 && at(l.tokens, k+3).value(classSep) != "x") && f.whole && !f.marked && f.v <= 12 && next.value(classSep) == "x" && !l.counted(k+3) && next.glued && (l.is(manifold) || !at(l.tokens, k+2).glued) && other.frac {
		other.times, other.counted = int(f.v), true
		return f.drop(asCount) // manifold 1x 3/8 in, 4x 1/4 out
	}
	if l.is(tee) && f.v == 3 && f.digits() && next.value(classSep) == "x" && next.glued && at(l.tokens, k+2).glued && other.digits() && other.v > f.v && !l.one && l.takesTubes() && !at(l.tokens, k+3).parted() {
		other.kind = mmSize
		return f.drop(asPort) // tee push-in 3x8
	}
	if l.is(manifold) && f.whole && !f.marked && next.value(classSep) == "x" && l.counted(k+3) {
		return f.drop(asCount) // 5 x 1/2 NPT female outlets
	}
	if alone := k == 0 && f.v == 1 && !l.is(unequal) && !l.reducing && !l.one && other.frac && l.shape != nil && l.shape.ends != 0; next.to > next.from && l.countable(k) && (alone || l.manyOfEach()) {
		next.word = l.lex.word("the")
		if f.v > 1 {
			other.times, other.counted = int(f.v), true
		}
		return f.drop(asCount) // 1 x 1/2 NPT nipple; 2 x 1/2 NPT F, 1 x 1/4 NPT F
	}
	if l.leads(k) && (k == 0 || !pipeOutsides[f.v]) && f.whole && f.v <= 20 && next.value(classSep) == "x" && (next.glued && !at(l.tokens, k+2).glued || other.marked) {
		return f.drop(asCount) // 2x 1/2 BSP, 2 x 3/4": two of them
	}
	if (l.shape == nil || l.is(hose)) && l.namesHose() && k > 0 && f.whole && f.v == 2 && !f.marked && next.value(classSep) == "x" && (other.frac || other.kind == metricSize && other.pitch > 0) && !prev.parted() && prev.figure == nil && !l.one {
		l.both = true
		return f.drop(asCount) // HP hose 2 x 3/8 BSP female
	}
	if l.is(ported) && f.whole && !f.marked && f.v > 1 && f.v < 9 && next.value(classSep) == "x" && other.frac && !prev.parted() && !l.one {
		other.times, other.counted = int(f.v), true
		return f.drop(asCount) // pump, inlet 1/2, 2 x 3/8 outlets
	}
	if l.timesOf(k, f, next, other) {
		return f.drop(asPort) // tee 3 x 1/2, strainer 2 x G 1: so many of them
	}
	if f.whole && !f.marked && f.v > 1 && next.value(classSep) == "x" && other.frac && !prev.parted() && !l.is(bush) && pipeSteps(f.v, other.v) > mostSteps {
		return f.drop(asCount) // 2 x 1/2 NPT: nobody makes the one into the other
	}
	if f.whole && !f.marked && f.v >= 2 && f.v <= 4 && k >= 2 && prev.value(classSep) == "x" && next.value(classSep) == "x" && other.marked && l.before(k) != nil && l.before(k).marked {
		other.times = int(f.v) // 1" x 2 x 3/4": two of 3/4"
		return f.drop(asPort)
	}
	if l.packOf(k, f) {
		return f.drop(asCount)
	}
	if !f.whole && other.kind == bare && other.v > 8 {
		other.drop(asElement) // 2.5 x 40: a membrane
		return f.drop(asElement)
	}
	if l.tokens[k].glued && l.inCode(k) {
		return f.drop(asCode) // QZ12-3456
	}
	switch {
	case (f.v == 10 || f.v == 12) && f.plain() && k == len(l.tokens)-1 && prev.value(classSep) == "x" && !l.tokens[k].glued && other.kind == mmSize && other.v > f.v && l.shape != nil && l.shape.ends > 0 && !l.is(unequal) && !l.reducing && at(l.tokens, k-2).figure == nil:
		f.tally = true // 15mm comp x 10
		return mmSize
	case f.v >= 5 && f.v <= 63 && (other.kind != bare || l.evidence), f.whole && (f.v == 75 || f.v == 110) && other.frac:
		return mmSize
	case f.v == 4 && !f.marked && !l.one && !l.leads(k) && !l.is(tee) && !l.is(manifold) && next.parted() && other.kind == mmSize && other.v <= 12:
		return mmSize // reducer 4 to 10 mm: the tube of 4 mm, and no pipe of 4 inches
	case inchLike(f.v):
		return inchSize
	}
	return bare
}

// countable reports a small whole number with an x behind it that counts what follows: no size stands before it, and a thread follows,
// or its name.
func (l *line) countable(k int) bool {
	f, x, then := l.tokens[k].figure, at(l.tokens, k+1), at(l.tokens, k+2)
	if f == nil || !f.whole || f.marked || f.frac || f.v < 1 || f.v > 8 || string(l.norm[x.from:x.to]) != "x" || l.one || at(l.tokens, k-1).value(classSep) == "x" {
		return false
	}
	named := then.is(classFamily)
	return then.figure != nil && (then.figure.frac || then.figure.kind == metricSize) || named != nil && !named.has("pre")
}

// manyOfEach reports two such numbers or more in a line.
func (l *line) manyOfEach() bool {
	n := 0
	for k := range l.tokens {
		if l.countable(k) {
			n++
		}
	}
	return n > 1
}

func (l *line) after(k int) *figure {
	for j := k + 2; j < min(k+5, len(l.tokens)); j++ {
		if l.tokens[j].figure != nil {
			return l.tokens[j].figure
		}
	}
	return nil
}

func (l *line) before(k int) *figure {
	for j := k - 2; j >= max(k-5, 0); j-- {
		if l.tokens[j].figure != nil {
			return l.tokens[j].figure
		}
	}
	return nil
}

// classifyLonely reads a number that stands by a word of an end, a sex or a part.
func (l *line) classifyLonely(k int, f *figure, prev, next *token) figureKind {
	if next.glued && next.unread && next.mark == 0 && !l.one && f.whole && !f.marked && (at(l.tokens, k+2).mark == '+' || anyToken(l.tokens, func(it *token) bool { return it.figure != nil && it.figure.role == asVoltage }) || l.fractionElsewhere(k) && !wide(l.norm, next.from) && at(l.tokens, k+2).figure == nil) {
		return bare // 2P+T; racc. 2p
	}
	if name, first := at(l.tokens, k-1), at(l.tokens, k-2); !l.one && l.tokens[k].glued && name.unread && name.glued && first.figure != nil && first.figure.whole && first.figure.v >= 100 && f.whole && !f.marked {
		return f.drop(asCode) // 5779K34
	}
	if l.decimalBesideFraction(k, f) {
		return bare
	}
	made := prev.is(classMaterial) != nil && (at(l.tokens, k-2).is(classEnd) != nil || f.whole && pipeOutsides[f.v] && f.v >= 20 && l.shape != nil && l.shape.ends >= 0 && prev.value(classMaterial) == "pe") // tube PE 20
	if prev.to-prev.from <= 3 && (prev.is(classNoise) != nil || string(l.norm[prev.from:prev.to]) == "da") && namesHoseWord(at(l.tokens, k-2)) && f.whole && f.v >= 4 && f.v <= 63 && !l.one {
		return mmSize // pour tuyau de 13
	}
	straight := prev.is(classNoise) != nil && prev.to-prev.from > 4 && at(l.tokens, k-2).value(classEnd) == "BARB" // portagomma dritto 16
	if prev.is(classEnd) != nil || next.is(classEnd) != nil || made || straight {
		if f.v >= 4 && f.v <= 63 && !(f.v == 45 && l.is(angled)) {
			return mmSize
		}
		if inchLike(f.v) {
			return inchSize
		}
	}
	if f.whole && (tubeOutsides[f.v] || pipeOutsides[f.v] && f.v >= 20 && f.v <= 63) && l.shape != nil && l.is(nominal) && (prev.is(classKind) != nil || next.is(classKind) != nil) && !l.otherSize(k) {
		return mmSize // knie 15, sok 22
	}
	if f.whole && tubeOutsides[f.v] && l.shape != nil && l.shape.ends >= 0 && k > 0 && !l.one && next.value(classSep) == "x" && at(l.tokens, k+2).is(classKind) != nil && !l.otherSize(k) {
		return mmSize // Rotguss 35 x Gewindefitting
	}
	if iron := string(l.norm[next.from:next.to]); f.whole && l.lex.bores[int(f.v)] > 0 && f.v >= 10 && !l.one && (iron == "fi" || iron == "mi") && (l.capital(next.from) && !l.europe || l.galvanised()) && next.is(classSex) != nil {
		return l.bore(f) // 15 MI, 20FI
	}
	if f.whole && !f.marked && f.v >= 15 && l.lex.bores[int(f.v)] > 0 && l.galvanised() && !l.one && l.shape != nil && l.shape.ends > 0 && !l.otherSize(k) && (prev.is(classMaterial) != nil || prev.is(classKind) != nil) && (next.is(classSex) != nil || next.to == next.from) {
		return l.bore(f) // kolano ocynk 15 GW/GZ
	}
	if f.whole && f.v >= 10 && f.v <= 63 && l.takesTubes() && !l.otherSize(k) && (next.is(classMaterial) != nil || prev.is(classMaterial) != nil) {
		return mmSize // Trójnik zaciskowy 32 PE
	}
	if f.whole && (tubeOutsides[f.v] || pipeOutsides[f.v]) && l.shape != nil && l.shape.ends >= 0 && l.takesTubes() && !l.one && l.onlyFigure(k) {
		return mmSize // compression elbow chromed 15
	}
	if f.whole && f.v >= 10 && (tubeOutsides[f.v] || pipeOutsides[f.v]) && !l.one && prev.is(classKind) != nil && at(l.tokens, k-2).value(classEnd) == "BARB" && !l.otherSize(k) {
		return mmSize // 倒刺直通 16
	}
	if f.whole && f.v >= 20 && pipeOutsides[f.v] && !l.one && l.says("SOCKET") && l.otherSize(k) && string(l.norm[prev.from:prev.to]) == "de" {
		return mmSize // codo de 25 con rosca de 1/2, fusión
	}
	if !inchLike(f.v) || l.lastNumber(k, f, prev) {
		return bare
	}
	by := func(it *token) bool { return it.is(classSex) != nil || it.is(classKind) != nil }
	if by(prev) || by(next) {
		return inchSize
	}
	if l.shape != nil && l.shape.ends > 0 && !l.otherSize(k) && (k == len(l.tokens)-1 || prev.is(classMaterial) != nil) {
		return inchSize
	}
	return bare
}

// namesHoseWord reports a word for a hose or for what goes into one.
func namesHoseWord(it *token) bool {
	v := it.value(classEnd)
	return v == "HOSE" || v == "BARB"
}

// decimalBesideFraction reports a decimal of a hose in a line that writes its size of an inch as a fraction: hose 1.50 chrome
// 1/2 x 1/2 is 1.5 m long.
func (l *line) decimalBesideFraction(k int, f *figure) bool {
	if l.one || f.whole || f.frac || f.marked || !l.is(hose) {
		return false
	}
	return anyToken(l.tokens, func(it *token) bool { return it.figure != nil && it.figure.frac && it.figure != f })
}

// fractionElsewhere reports a size of a thread elsewhere in the line that its own form shows: a fraction, or one with its mark.
func (l *line) fractionElsewhere(k int) bool {
	for j := range l.tokens {
		if f := l.tokens[j].figure; f != nil && j != k && (f.frac || f.marked || f.kind == frenchSize) && !l.inCode(j) {
			return true
		}
	}
	return false
}

// packOf reports one of the two numbers of a pack that a line ends with, 50X1, of a glued fitting whose millimetres stand before it.
func (l *line) packOf(k int, f *figure) bool {
	last := len(l.tokens) - 1
	if l.one || !f.plain() || k < last-2 || last < 4 || !l.says("SOCKET") || at(l.tokens, last-1).value(classSep) != "x" || !l.tokens[last].glued || !l.tokens[last-1].glued {
		return false
	}
	many, one := l.tokens[last-2].figure, l.tokens[last].figure
	if !many.plain() && (many == nil || !many.whole || many.role != asCount) || one == nil || !one.whole || one.marked || one.v != 1 || many.v < 5 {
		return false
	}
	return anyToken(l.tokens[:last-2], func(it *token) bool { return it.figure != nil && it.figure.kind == mmSize })
}

// lastNumber reports the whole number that a line ends with behind the name of something that the part is for, where another size
// stands: ferrule DN40 x 1" male, tank 2.
func (l *line) lastNumber(k int, f *figure, prev *token) bool {
	m := prev.is(classKind)
	return !l.one && k == len(l.tokens)-1 && f.whole && !f.marked && m != nil && m.shape.traits&serves != 0 && l.sizeElsewhere(k)
}

// tubeOutsides are the outside diameters of copper tube in mm that no inch size
// is written like: EN 1057.
var tubeOutsides = map[float64]bool{10: true, 12: true, 14: true, 15: true, 16: true, 18: true, 22: true, 28: true, 35: true, 42: true, 54: true}

// pipeOutsides are the outside diameters of plastic pipe in mm: ISO 161-1.
var pipeOutsides = map[float64]bool{16: true, 20: true, 25: true, 32: true, 40: true, 50: true, 63: true, 75: true, 110: true}

// takesTubes reports whether some word names an end that takes a tube.
func (l *line) takesTubes() bool {
	for k := range l.tokens {
		if m := l.tokens[k].is(classEnd); m != nil && takesTube(m.value) {
			return true
		}
	}
	return false
}

func (l *line) otherSize(k int) bool {
	for j := range l.tokens {
		if f := l.tokens[j].figure; j != k && f != nil && f.kind != bare && f.kind < pressureFigure {
			return true
		}
	}
	return false
}

// onlyFigure reports whether the line has no other figure.
func (l *line) onlyFigure(k int) bool {
	for j := range l.tokens {
		if j != k && l.tokens[j].figure != nil {
			return false
		}
	}
	return true
}

func hasWord(text, word string) bool {
	for from := 0; ; {
		at := strings.Index(text[from:], word)
		if at < 0 {
			return false
		}
		at += from
		if !alnumIn(text, at-1) && !alnumIn(text, at+len(word)) {
			return true
		}
		from = at + 1
	}
}

// alnumIn reports a letter or a digit at a place of a text; none stands outside it.
func alnumIn(text string, at int) bool { return at >= 0 && at < len(text) && alnum(text[at]) }

// timesOf reports a whole number that says how often the next size comes: as often as the part
// has ends, before a fraction, or before a thread's name where the part is no fitting that
// goes from one size to another.
func (l *line) timesOf(k int, f *figure, next *token, other *figure) bool {
	if !f.whole || l.shape == nil || int(f.v) != l.shape.ends || f.v <= 1 || next.value(classSep) != "x" || f.marked {
		return false
	}
	made := pipeSteps(f.v, other.v)
	if l.reducing && made > 0 {
		return false // reductor campana de 2 x 3/4
	}
	switch {
	case l.is(bush) && made > 0,
		(l.is(unequal) || l.is(plain) || l.is(nipple) || l.is(union)) && made > 0 && made < mostSteps,
		(l.is(elbow) || l.is(tee)) && made > 0 && made <= 2:
		return false // bush 2 x 3/4: from one size to the other, as every bush is
	}
	return other.frac || at(l.tokens, k+2).is(classFamily) != nil
}

// mostSteps is how many sizes one fitting goes down at most, but for bushes, which are made further: common
// practice, as the stock of generic fittings has it (couplings and nipples three, elbows and tees two).
const mostSteps = 4

// pipeSteps is how many steps of the pipe sizes lie between two of them; 0 where one is none.
func pipeSteps(a, b float64) int {
	i, j := slices.Index(pipeSizes, a), slices.Index(pipeSizes, b)
	if i < 0 || j < 0 {
		return 0
	}
	return max(i-j, j-i)
}

// pipeSizes are the nominal sizes of pipe threads. Source: ISO 7-1 and ASME B1.20.1, as memory has them.
var pipeSizes = []float64{1. / 8, 1. / 4, 3. / 8, 1. / 2, 3. / 4, 1, 1.25, 1.5, 2, 2.5, 3, 4}
