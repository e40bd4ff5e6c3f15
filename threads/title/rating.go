package title

import (
	"bytes"

	"handtight/pressure/quantity"
	"handtight/threads"
)

// pressureUnit are the units a pressure is written in.
var pressureUnit = map[string]quantity.Pressure{
	"bar": quantity.Bar, "psi": quantity.PSI, "mpa": quantity.MPa, "kpa": quantity.KPa, "mbar": quantity.Bar / 1000, "kgcm2": quantity.KgfPerCm2, "atm": 101325 * quantity.Pascal,
}

// classNumbers are the numbers that fittings and flanges have as their class:
// ASME B16.3, B16.5, B16.11, B16.14, B16.15.
var classNumbers = map[float64]bool{
	125: true, 150: true, 200: true, 250: true, 300: true, 400: true, 600: true, 800: true, 900: true, 1500: true, 2000: true, 2500: true,
	3000: true, 6000: true, 9000: true,
}

// pressureLetters reads the PS and PT that stand before a pressure: the maximum allowable
// pressure (Directive 2014/68/EU, article 2) and the test pressure (EN 764-1, memory), and no
// threads, which a size follows.
func (l *line) pressureLetters(k int) {
	it := &l.tokens[k]
	if it.to-it.from != 2 || l.norm[it.from] != 'p' {
		return
	}
	next := at(l.tokens, k+1)
	if next.mark == ':' || next.mark == '=' || next.mark == '(' {
		next = at(l.tokens, k+2)
	}
	if f := next.figure; l.norm[it.from+1] == 's' && f.digits() && f.v >= leastService && !l.japan && !l.one && next.is(classFamily) == nil {
		f.kind, f.per = pressureFigure, quantity.Bar // PS 10: bar, directive 2014/68/EU
	}
	if next.figure == nil || next.figure.kind != pressureFigure {
		return
	}
	switch l.norm[it.from+1] {
	case 's':
		it.word = l.lex.word("betriebsdruck")
	case 't':
		it.word = l.lex.word("prufdruck")
	}
}

// poundRole is what a number before a pound sign is: a class, or a weight.
func poundRole(f *figure) role {
	switch {
	case f.whole && classNumbers[f.v]:
		return asClass
	case f.v < 100:
		return asWeight
	}
	return asCode
}

// classifyPressure tells a rating from a pressure that is something else, by the
// words before it and right behind it.
func (l *line) classifyPressure(k int, f *figure) {
	p := quantity.Pressure(f.v) * f.per
	if l.sameAgain(k, p) {
		return
	}
	if end := l.endOfScale(k, f); end > 0 {
		f.v = end
		p = quantity.Pressure(f.v) * f.per
	}
	if l.denied(k) {
		l.notRated(k, f, p, "what the text says it is not")
		return
	}
	what := l.pressureCalled(k, f)
	if what == "opens" {
		what = "opening pressure"
		if l.is(set) {
			what = "setting"
		}
	}
	if what == "" || what == "rated" {
		if words := l.ofAnother(k); words != "" {
			l.notClear(f, threads.StatedPressure{What: threads.AnotherPart, Pressure: p, Words: words})
			return
		}
		if words := l.unclearPressure(k); words != "" {
			l.notClear(f, threads.StatedPressure{What: threads.Unclear, Pressure: p, Words: words})
			return
		}
	}
	switch {
	case l.cracks(k, p) == opensAt:
		l.notRated(k, f, p, "opening pressure")
	case l.cracks(k, p) == holdsTo:
		l.rate(f, p)
	case what == "rated" || what == "" && !l.is(scaled) && (!l.is(set) || l.saysRated() || l.setBelow(k, p)):
		l.rate(f, p)
	case what == "" && l.is(scaled):
		l.notRated(k, f, p, "full scale")
	case what == "":
		l.notRated(k, f, p, "setting")
	default:
		l.notRated(k, f, p, what)
	}
}

// endOfScale is the upper end of a gauge's scale from a vacuum up that a stroke parts, -1/10 bar; 0 if the figure is none.
func (l *line) endOfScale(k int, f *figure) float64 {
	it := &l.tokens[k]
	stroke := bytes.IndexByte(l.norm[it.from:it.to], '/')
	if l.one || !l.is(scaled) || stroke < 0 || byteAt(l.norm, it.from-1) != '-' && at(l.tokens, k-1).mark != '-' || alnum(byteAt(l.norm, it.from-2)) {
		return 0
	}
	return float64(atoi(string(l.norm[it.from+stroke+1 : it.to])))
}

// pressureCalled is what the words beside a pressure call it, "" if nothing.
func (l *line) pressureCalled(k int, f *figure) string {
	if f.steam {
		return "steam"
	}
	if f.called != "" {
		return f.called
	}
	if f.set {
		return "full scale" // the end of a range
	}
	if l.wordsFollow(k) {
		if m := l.tokens[k+1].is(classPress); m != nil {
			return m.value // 1000 psi set 1200 psi max
		}
		return "rated"
	}
	for j, found := k-1, ""; ; j-- {
		if j < max(0, k-4) || l.tokens[j].partsPressures() {
			if own := l.calledBehind(k); found == "rated" && (own == "burst" || own == "test" || own == "peak") {
				return own // service 80 bar burst: the worse of the two
			}
			if found != "" {
				return found
			}
			break
		}
		if l.tokens[j].mark == '(' {
			if own := l.calledBehind(k); own != "" {
				return own // test (16 bar working pressure)
			}
		}
		if m := l.tokens[j].is(classPress); m != nil && found == "" && !l.femaleSwivel(j) {
			found = m.value
		}
		if m := l.tokens[j].is(classKind); m != nil && found == "" && m.shape.traits&dial != 0 && !l.is(dial) {
			found = "full scale" // reducer with a gauge 6 bar
		}
	}
	return l.calledBehind(k)
}

// sharedUnits makes pressures of the numbers before a stroke whose unit stands once behind them all: WP/BP 180/720 bar, 10/16 bar. Which
// of them is the rating the words do not say by the place: the lowest is taken. On a scale they are its ends.
func (l *line) sharedUnits() {
	if l.one || l.is(scaled) || l.is(dial) {
		return
	}
	for k := range l.tokens {
		f := l.tokens[k].figure
		if f == nil || f.kind != pressureFigure {
			continue
		}
		for j := k; (at(l.tokens, j-1).mark == '/' || at(l.tokens, j-1).mark == '&' && l.pressureWord(j-3) != "") && at(l.tokens, j-2).figure.digits() && l.tokens[j-2].figure.v > 0; j -= 2 {
			before := l.tokens[j-2].figure
			before.kind, before.per = pressureFigure, f.per
		}
	}
}

// unitsFirst makes a pressure of a number that its unit or a word for a working pressure stands before: PSI: 3000, WOG 1000, MAWP 1000
// beside a figure in psi.
func (l *line) unitsFirst() {
	if l.one {
		return
	}
	for k := range l.tokens {
		f := l.tokens[k].figure
		if !f.digits() || f.v < leastBare || at(l.tokens, k+1).is(classUnit) != nil || at(l.tokens, k+1).mark == '/' {
			continue
		}
		j := k - 1
		if m := at(l.tokens, j).mark; m == ':' || m == '=' {
			j--
		}
		word := at(l.tokens, j)
		unit := word.is(classUnit)
		switch {
		case unit != nil && pressureUnit[unit.value] != 0 && at(l.tokens, j-1).figure == nil && word.figure == nil:
			f.kind, f.per = pressureFigure, pressureUnit[unit.value]
		case workingWordList.has(l.norm[word.from:word.to]) && !l.priced(k) && !l.twoDecimals(&l.tokens[k]) && !(at(l.tokens, k+1).glued && at(l.tokens, k+1).mark == 0):
			for n := range l.tokens {
				if o := l.tokens[n].figure; o != nil && o.kind == pressureFigure {
					f.kind, f.per = pressureFigure, o.per
					break
				}
			}
		}
	}
}

// leastBare is the least number that is a pressure because its unit stands before it. A judgement.
const leastBare = 5

// denied reports that the words right before a pressure or a class say that the part has it not: not rated for 1000 psi, not class 3000,
// can't take 1000 psi. Between the two stand none but words that lead to the figure.
func (l *line) denied(k int) bool {
	for j := k - 1; j >= max(0, k-4) && !l.one; j-- {
		it := &l.tokens[j]
		if it.mark != 0 || it.figure != nil {
			return false
		}
		word := string(l.norm[it.from:it.to])
		switch {
		case deniedList.hasWord(word):
			return true
		case word == "t" && it.from > 1 && l.norm[it.from-1] == '\'' && l.norm[it.from-2] == 'n':
			return true // can't, won't
		case !leadsToFigureList.hasWord(word):
			return false
		}
	}
	return false
}

// behindNot reports a word right before a material that says the part is not of it, or no more: not 316, no brass, was brass.
func (l *line) behindNot(k int) bool {
	j := k
	for at(l.tokens, j-1).to > 0 && smallWordsList.has(l.norm[at(l.tokens, j-1).from:at(l.tokens, j-1).to]) {
		j--
	}
	if l.one || j == 0 || digit(l.norm[l.tokens[k].from]) && hasText(l.norm, l.tokens[j-1].from, "no") && !hasText(l.norm, l.tokens[j-1].from, "not") {
		return false // No 304: its number
	}
	if m := at(l.tokens, k+1); m.is(classKind) != nil || m.value(classAttr) == "nut" || m.value(classAttr) == "washer" {
		return false // without brass nut
	}
	return l.wordsBefore(j, deniesMaterialList)
}

// calledBehind is what the words right behind a pressure call it, "" if nothing.
func (l *line) calledBehind(k int) string {
	for j := k + 1; j < min(len(l.tokens), k+4) && !l.tokens[j].partsPressures(); j++ {
		if next := at(l.tokens, j+1); next.figure != nil && next.glued && next.figure.kind != pressureFigure {
			break // 10 bar PN16: the PN is the sixteen's
		}
		if m := l.tokens[j].is(classPress); m != nil && !l.pressureSoon(j, m.value) && !l.factorBehind(j) {
			return m.value
		}
	}
	return ""
}

// partsPressures reports a token that ends what belongs to a pressure.
func (it *token) partsPressures() bool {
	return it.figure != nil || it.mark == ',' || it.mark == ';' || it.mark == ')' || it.mark == '/'
}

// pressureSoon reports whether a pressure follows a word within three tokens and is called by it, so
// that the word is that pressure's.
func (l *line) pressureSoon(j int, what string) bool {
	for k := j + 1; k < min(len(l.tokens), j+4); k++ {
		if f := l.tokens[k].figure; f != nil {
			return f.kind == pressureFigure && l.pressureCalled(k, f) == what
		}
	}
	return false
}

// rate takes a pressure as the rating. Of two the lower is taken: the other may
// be for gas, for cold water, or for another size.
func (l *line) rate(f *figure, p quantity.Pressure) {
	f.role = asRating
	if k := indexToken(l.tokens, func(it *token) bool { return it.figure == f }); f.kind == bare && (l.denied(k) || l.denied(k-1)) {
		f.role = asDenied
		return // not PN16
	}
	if f.kind == bare && f.v >= 800 && classNumbers[f.v] {
		f.role = asClass
		l.takeClass(f)
		return // PN 3000: no nominal pressure in bar, but the class of a forged fitting
	}
	if p <= 0 {
		f.role = asNothing
		return
	}
	switch {
	case !l.hasRated:
		l.rated, l.hasRated, l.ratedBy = p, true, f
	case p < l.rated*0.98:
		l.ratedBy.role = asScaleOf
		l.rated, l.ratedBy = p, f
	case p > l.rated*1.02:
		f.role = asScaleOf
	}
}

func (l *line) notRated(k int, f *figure, p quantity.Pressure, what string) {
	f.role = asPressure
	l.pressures = append(l.pressures, threads.StatedPressure{What: what, Pressure: p, Words: l.words(l.tokens[k].from, l.tokens[k].to)})
}

// setBelow reports whether another pressure of the line is called a setting and lies below: "set 60 bar,
// 120 bar". Whatever else the higher one may be, the most that it can be set to or the one at which it is
// full open, the part holds it.
func (l *line) setBelow(k int, p quantity.Pressure) bool {
	for j := range l.tokens {
		if f := l.tokens[j].figure; j != k && f != nil && f.kind == pressureFigure && quantity.Pressure(f.v)*f.per < p && l.pressureCalled(j, f) == "setting" {
			return true
		}
	}
	return false
}

// saysRated reports whether a pressure is called a rating: that of a relief valve
// is else what it is set to.
func (l *line) saysRated() bool {
	text := string(l.norm)
	return hasWord(text, "rated") || hasWord(text, "pn") && !l.nominalPressure() || hasWord(text, "max")
}

// takeNamed notes a grade, a schedule in one word, and the number of a standard,
// whose figures are no sizes.
func (l *line) takeNamed(k int) {
	it := &l.tokens[k]
	if m := it.is(classGrade); m != nil {
		l.grade = l.words(it.from, it.to)
		l.takeMaterial(m.value)
	}
	if m := it.is(classWord); m != nil {
		l.schedule = m.value
	}
	if it.role(classBefore) == asStandard {
		if end := l.standardEnd(k); end > it.to && bytes.ContainsAny(l.norm[it.to:end], "0123456789") {
			l.standards = append(l.standards, l.words(it.from, end))
		}
	}
}

// takeStated notes class, schedule and temperature.
func (l *line) takeStated(f *figure) {
	switch f.role {
	case asClass:
		if k := indexToken(l.tokens, func(it *token) bool { return it.figure == f }); l.denied(k) {
			f.role = asDenied
			return
		}
		l.takeClass(f)
	case asSchedule:
		l.schedule = "schedule " + quantity.Exact(f.v)
	case asSDR:
		l.schedule = "SDR " + quantity.Exact(f.v)
	case asCelsius:
		l.heat(f, quantity.Temperature(f.v))
	case asFahrenheit:
		l.heat(f, quantity.Temperature((f.v-32)/1.8))
	}
}

// nominalPressure reports PN with its number and no unit, so that another pressure of a valve that is set is what it is set to.
func (l *line) nominalPressure() bool {
	for k := range l.tokens {
		if f := l.tokens[k].figure; f != nil && f.kind != pressureFigure && l.behindNominal(k) {
			return true
		}
	}
	return false
}

// behindNominal reports a figure right behind PN.
func (l *line) behindNominal(k int) bool {
	word := at(l.tokens, k-1)
	if word.mark == '-' && word.glued {
		word = at(l.tokens, k-2)
	}
	return word.to-word.from == 2 && string(l.norm[word.from:word.to]) == "pn"
}

// What a pressure of a check valve is, where the line gives two far apart.
const (
	opensAt = "opens"
	holdsTo = "holds"
)

// cracks tells the pressure that opens a check valve from the one that it holds: of two the one of at most two bar, an eighth of the other or
// less, is that of its spring, whichever words stand between them. "" where the line gives one, or two alike.
func (l *line) cracks(k int, p quantity.Pressure) string {
	if l.one || l.shape == nil || l.shape.kind != "check valve" {
		return ""
	}
	for j := range l.tokens {
		f := l.tokens[j].figure
		if j == k || f == nil {
			continue
		}
		other := quantity.Pressure(f.v) * f.per
		if f.kind != pressureFigure && l.behindNominal(j) {
			other = quantity.Pressure(f.v) * quantity.Bar
		}
		switch {
		case other <= 0:
		case p <= mostSpring && other >= p*springShare:
			return opensAt
		case other <= mostSpring && p >= other*springShare:
			return holdsTo
		}
	}
	return ""
}

// mostSpring is the most that the spring of a check valve opens at, and springShare how far below its rating that is at least. A judgement.
const (
	mostSpring  = 2 * quantity.Bar
	springShare = 8
)

// wordsFollow reports that the words of two pressures stand behind them, 1000 psi set 1200 psi max: a word stands behind each, and none before
// the first.
func (l *line) wordsFollow(k int) bool {
	word := func(j int) bool {
		it := at(l.tokens, j)
		return it.is(classPress) != nil || it.to > it.from && workingWordList.has(l.norm[it.from:it.to])
	}
	pressure := func(j int) bool { f := at(l.tokens, j).figure; return f != nil && f.kind == pressureFigure }
	switch {
	case word(k-1) && pressure(k-2) && word(k+1):
		return !word(k - 3)
	case word(k+1) && pressure(k+2) && word(k+3):
		return !word(k - 1)
	}
	return false
}

// factorBehind reports that a factor stands behind the word for a burst or a test: burst 4x, safety 4:1. It calls no pressure.
func (l *line) factorBehind(k int) bool {
	f := at(l.tokens, k+1).figure
	return f.digits() && f.v < 10 && (at(l.tokens, k+2).value(classSep) == "x" || at(l.tokens, k+2).mark == ':')
}

// leastService is the least number behind PS that is a pressure in bar; below it PS may be the Japanese name of a thread. A judgement.
const leastService = 4

// vacuum reports the beginning or the end of a gauge's scale below the air's pressure: -1/0.
func (l *line) vacuum(k int) bool {
	if !l.is(dial) && !l.is(scaled) {
		return false
	}
	for _, one := range [...]int{k, k - 2} {
		a, b := at(l.tokens, one), at(l.tokens, one+2)
		if a.figure.digitsOrDecimals() && a.figure.v == 1 && at(l.tokens, one-1).mark == '-' && (at(l.tokens, one+1).mark == '/' || at(l.tokens, one+1).value(classSep) != "") && b.figure.digitsOrDecimals() && b.figure.v == 0 {
			return true
		}
	}
	return false
}

// femaleSwivel reports the letters FS of a part that has no scale: they are an end, and no full scale.
func (l *line) femaleSwivel(k int) bool {
	it := &l.tokens[k]
	return it.to-it.from == 2 && string(l.norm[it.from:it.to]) == "fs" && !l.is(dial) && !l.is(scaled)
}
