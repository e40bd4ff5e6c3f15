package title

import (
	"math"

	"handtight/pressure/quantity"
)

// classify decides what each figure is from its neighbours, and keeps what is no
// size of an end (pressures, lengths, spanners, codes, quantities) out of the way.
func (l *line) classify() {
	for k := range l.tokens {
		if f := l.tokens[k].figure; f != nil {
			l.classifyRange(k, f)
		}
	}
	for k := range l.tokens {
		f := l.tokens[k].figure
		if f == nil {
			continue
		}
		switch f.kind {
		case bare:
			f.kind = l.classifyBare(k, f)
		case inchSize:
			l.classifyInch(k, f)
		case mmSize:
			l.classifyMillimetres(k, f)
		case unSize:
			l.classifyThreadAndTube(f)
		case pressureFigure:
			l.classifyPressure(k, f)
		}
		switch {
		case f.kind == bare:
			f.drop(asNothing)
		case f.kind == mmSize && l.is(dial):
			f.drop(asDial) // a gauge's millimetres are its dial
		case f.kind == junkFigure && f.role == noRole:
			f.role = asNothing
		}
		l.takeStated(f)
	}
	l.secondNames()
	l.threadAndTube()
}

// beside gives the token n places away, brackets, colons and equals signs left out.
func (l *line) beside(k, n int) *token {
	step := 1
	if n < 0 {
		step = -1
	}
	for j := k + step; j >= 0 && j < len(l.tokens); j += step {
		if m := l.tokens[j].mark; m == '(' || m == ')' || m == ':' || m == '=' {
			continue
		}
		return &l.tokens[j]
	}
	return &token{}
}

// called is what a word before a figure makes of it. A word that has taken the
// figure before it (2" dial 1/4) says nothing of the next.
func (l *line) called(k int) role {
	prev := l.beside(k, -1)
	if prev.role(classBefore) == asHex {
		if l.sizeBefore(k) || l.tokens[k].figure.kind == mmSize {
			return asSpanner
		}
		return noRole
	}
	if prev.is(classAfter) != nil {
		for j := k - 2; j >= max(k-3, 0); j-- {
			if m := l.tokens[j].mark; m == ',' || m == ';' {
				break
			}
			if l.tokens[j].figure != nil && l.tokens[j].to < prev.from {
				return noRole
			}
		}
	}
	return prev.role(classBefore)
}

func (it *token) value(c wordClass) string {
	if m := it.is(c); m != nil {
		return m.value
	}
	return ""
}

// parted reports whether an token parts two ends: x, a dash, a stroke.
func (it *token) parted() bool {
	return it.value(classSep) == "x" || it.mark == '-' || it.mark == '/' || it.mark == '+'
}

// classifyRange finds 0-100 bar and 34-40 mm.
func (l *line) classifyRange(k int, f *figure) {
	if k < 2 || (f.kind != mmSize && f.kind != pressureFigure && f.kind != junkFigure) {
		return
	}
	dash, before := &l.tokens[k-1], l.tokens[k-2].figure
	if f.dashed {
		dash, before = &token{mark: '-'}, l.tokens[k-1].figure
	}
	if dash.mark != '-' && dash.value(classSep) == "" || before == nil || before.kind != bare {
		return
	}
	if dash.mark == '-' && at(l.tokens, k-3).mark == '-' && at(l.tokens, k-4).figure != nil && f.kind == mmSize {
		for _, j := range [...]int{k - 2, k - 4} {
			l.tokens[j].figure.kind = mmSize // 6-4-6 mm
		}
		return
	}
	if dash.mark == '-' {
		before.drop(asScale)
		f.set = true
		if f.kind == mmSize {
			f.drop(asMeasure)
		}
	}
}

// classifyBare says what a number without a unit is; bare if it is nothing.
func (l *line) classifyBare(k int, f *figure) figureKind {
	prev, next := l.beside(k, -1), l.beside(k, 1)
	if l.is(angled) && (f.v == 45 || f.v == 90) {
		return f.drop(asAngle)
	}
	if l.is(pump) && f.whole && f.v >= 15 && (next.mark == '/' && next.glued || prev.mark == '/' && prev.glued) {
		return f.drop(asCode)
	}
	switch called := l.called(k); {
	case called == asRating:
		if l.is(scaled) {
			return f.drop(asScale)
		}
		l.rate(f, quantity.Pressure(f.v)*quantity.Bar)
		return f.drop(asRating)
	case called == asBore:
		return l.bore(f)
	case called == asPhi:
		return l.pipeOutside(f)
	case called == asLength || called == asCount || called.other():
		return f.drop(called)
	}
	switch behind := next.role(classAfter); {
	case behind == asBore:
		return l.bore(f)
	case behind == asCount || behind == asLength || behind.other():
		return f.drop(behind)
	}
	if r := l.counts(k, f); r != noRole {
		return f.drop(r)
	}
	if l.priced(k) {
		return f.drop(asPrice)
	}
	if f.whole && !f.marked && prev.value(classSep) == "x" && l.tokens[k+1:] != nil && at(l.tokens, k+1).mark == '=' {
		return f.drop(asCount) // x 3 = 12.00
	}
	if l.quantity(k, f, next) {
		return f.drop(asCount)
	}
	if l.ringSize(f, prev, next) {
		return f.drop(asRing)
	}
	if l.wall(k, f) {
		return f.drop(asWallOf)
	}
	if l.dash(k, f, prev, next) {
		return dashSize
	}
	if _, ok := l.lex.bores[int(f.v)]; ok && l.byBore && prev.is(classKind) != nil {
		return l.bore(f)
	}
	pf, nf := prev.is(classFamily), next.is(classFamily)
	if nf != nil && (nf.has("pre") || nf.value == "THREAD") && pf == nil && prev.is(classEnd) != nil && f.v > 4 {
		nf = nil // R1/8 behind it has its own size
	}
	if pf == nil && nf == nil {
		if kind := l.classifyPaired(k, f, prev, next); kind != bare {
			return kind
		}
		return l.classifyLonely(k, f, prev, next)
	}
	if pf != nil && pf.value == "R" && l.hoseGrade(k, f) {
		l.tokens[k-1].word = nil // R7: a grade of hose
		return f.drop(asGrade)
	}
	if inchLike(f.v) {
		return inchSize
	}
	if _, ok := l.lex.bores[int(f.v)]; ok && f.whole && (pf != nil && pf.has("pre") || nf != nil && bspWord(nf)) {
		return l.bore(f)
	}
	return l.classifyPaired(k, f, prev, next)
}

// hoseGrade reports whether R with a whole number glued to it is a grade of hose.
func (l *line) hoseGrade(k int, f *figure) bool {
	if !f.whole || f.v > 20 || k == 0 || !l.tokens[k].glued || l.tokens[k-1].is(classFamily) == nil {
		return false
	}
	return l.is(hose) || l.lex.bores[int(f.v)] == 0 && !inchLike(f.v)
}

func bspWord(m *sense) bool {
	switch m.value {
	case "BSP", "BSPP", "BSPT", "THREAD":
		return true
	}
	return false
}

func (l *line) bore(f *figure) figureKind {
	if v := l.lex.bores[int(f.v)]; v > 0 && f.whole {
		f.dn, f.v = f.v, v
		return dnSize
	}
	return f.drop(asBore)
}

// inchLike reports whether a plain number can be an inch size: 1, 2, 0.75, 1.25.
func inchLike(v float64) bool {
	return v >= 0.125 && v <= 4 && v*8 == math.Trunc(v*8)
}

var dashNumbers = map[float64]bool{
	2: true, 3: true, 4: true, 5: true, 6: true, 7: true, 8: true, 10: true, 12: true, 14: true, 16: true, 20: true, 24: true, 32: true,
}

func (l *line) dash(k int, f *figure, prev, next *token) bool {
	if !l.dashes || !f.whole || !dashNumbers[f.v] {
		return false
	}
	if f.dashed {
		return true
	}
	if m := next.is(classFamily); m != nil && m.has("dash") {
		return true
	}
	if m := prev.is(classFamily); m != nil && m.has("dash") && !next.parted() {
		return true
	}
	m := prev.is(classFamily)
	return m != nil && m.has("dash") && f.v >= 4
}

// classifyPaired reads a number parted by an x or a dash from another figure.
func (l *line) classifyPaired(k int, f *figure, prev, next *token) figureKind {
	var other *figure
	switch {
	case next.parted() && k+2 < len(l.tokens):
		other = l.after(k)
	case prev.parted() && k >= 2:
		other = l.before(k)
	}
	if other == nil || other.kind == junkFigure || other.kind == pressureFigure {
		return bare
	}
	if l.leads(k) && f.whole && f.v <= 20 && next.value(classSep) == "x" && (next.glued && !at(l.tokens, k+2).glued || other.marked) {
		return f.drop(asCount) // 2x 1/2 BSP, 2 x 3/4": two of them
	}
	if f.whole && l.shape != nil && int(f.v) == l.shape.ends && f.v > 1 && next.value(classSep) == "x" && !f.marked && other.frac {
		return f.drop(asPort) // tee 3 x 1/2: three of them
	}
	if f.whole && !f.marked && f.v >= 2 && f.v <= 4 && k >= 2 && prev.value(classSep) == "x" && next.value(classSep) == "x" && other.marked && l.before(k) != nil && l.before(k).marked {
		other.times = int(f.v) // 1" x 2 x 3/4": two of 3/4"
		return f.drop(asPort)
	}
	if !f.whole && other.kind == bare && other.v > 8 {
		other.drop(asElement) // 2.5 x 40: a membrane
		return f.drop(asElement)
	}
	switch {
	case f.v >= 5 && f.v <= 63 && (other.kind != bare || l.evidence):
		return mmSize
	case inchLike(f.v):
		return inchSize
	}
	return bare
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
	made := prev.is(classMaterial) != nil && at(l.tokens, k-2).is(classEnd) != nil // tube PE 20
	if prev.is(classEnd) != nil || next.is(classEnd) != nil || made {
		if f.v >= 4 && f.v <= 63 && !(f.v == 45 && l.is(angled)) {
			return mmSize
		}
		if inchLike(f.v) {
			return inchSize
		}
	}
	if f.whole && tubeOutsides[f.v] && l.shape != nil && l.is(nominal) && (prev.is(classKind) != nil || next.is(classKind) != nil) && !l.otherSize(k) {
		return mmSize // knie 15, sok 22
	}
	if f.whole && f.v >= 10 && f.v <= 63 && l.takesTubes() && !l.otherSize(k) && (next.is(classMaterial) != nil || prev.is(classMaterial) != nil) {
		return mmSize // Trójnik zaciskowy 32 PE
	}
	if !inchLike(f.v) {
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

// tubeOutsides are the outside diameters of copper tube in mm that no inch size
// is written like: EN 1057.
var tubeOutsides = map[float64]bool{10: true, 12: true, 14: true, 15: true, 16: true, 18: true, 22: true, 28: true, 35: true, 42: true, 54: true}

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

func hasWord(text, word string) bool {
	for i := 0; i+len(word) <= len(text); i++ {
		if text[i:i+len(word)] == word && !alnum(byteAt([]byte(text), i-1)) && !alnum(byteAt([]byte(text), i+len(word))) {
			return true
		}
	}
	return false
}
