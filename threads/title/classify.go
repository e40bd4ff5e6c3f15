package title

import (
	"handtight/pressure/quantity"
	"handtight/threads"
)

// classify decides what each figure is from its neighbours, and keeps what is no
// size of an end (pressures, lengths, spanners, codes, quantities) out of the way.
func (l *line) classify() {
	for k := range l.tokens {
		if f := l.tokens[k].figure; f != nil {
			l.classifyRange(k, f)
		}
		if l.waysOfSize(k, l.tokens[k].figure) {
			l.tokens[k].figure.drop(asPort)
		}
	}
	l.measures()
	l.portCounts()
	l.countWords()
	l.sizeAgain()
	l.sharedUnits()
	l.unitsFirst()
	l.pairPressures()
	l.teeRow()
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
			l.classifyThreadAndTube(k, f)
		case pressureFigure:
			l.classifyPressure(k, f)
		}
		switch {
		case f.kind == bare:
			f.drop(asNothing)
		case f.kind == mmSize && l.is(dial) && !(f.v < smallestDial && takesTube(at(l.tokens, k+1).value(classEnd))):
			f.drop(asDial) // a gauge's millimetres are its dial
		case f.kind == junkFigure && f.role == noRole:
			f.role = asNothing
		}
		l.takeStated(f)
	}
	l.guardRating()
	l.heatOfRating()
	l.either()
	l.secondNames()
	l.threadAndTube()
}

// teeRow takes the three plain numbers of a tee, 6-4-6, for tubes in millimetres where one of
// them is more than pipe comes in inches.
func (l *line) teeRow() {
	if !l.is(tee) {
		return
	}
	for k := 0; k+4 < len(l.tokens); k++ {
		var row [3]*figure
		most := 0.0
		for n := range row {
			row[n] = l.tokens[k+2*n].figure
			if row[n] == nil || row[n].kind != bare || !row[n].whole || row[n].marked || n > 0 && !l.tokens[k+2*n-1].parted() {
				most = 0
				break
			}
			most = max(most, row[n].v)
		}
		if most <= largestInch || most > 63 {
			continue
		}
		for _, f := range row {
			if f.v < 3 {
				return
			}
		}
		for _, f := range row {
			f.kind = mmSize
		}
		return
	}
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
	return &noToken
}

// largestSpanner is the largest spanner's size of fittings in mm: ISO 272 goes on, and fittings of two inches have 70
// (memory).
const largestSpanner = 85

// called is what a word before a figure makes of it. A word that has taken the
// figure before it (2" dial 1/4) says nothing of the next.
func (l *line) called(k int) role {
	prev := l.beside(k, -1)
	if named := l.dimension(k, prev); named != noRole {
		return named
	}
	if prev.role(classBefore) == asStandard && l.tokens[k].figure.kind != bare {
		return noRole // BS 32 mm: the number of a standard has no unit
	}
	if prev.role(classBefore) == asHex {
		if l.tokens[k].figure.kind == mmSize && l.is(nipple) && !l.otherSize(k) {
			return noRole // nipple brass hex 15 mm: its only size
		}
		if l.sizeBefore(k) && l.tokens[k].figure.kind != mmSize || l.tokens[k].figure.kind == mmSize && l.tokens[k].figure.v <= largestSpanner {
			return asSpanner
		}
		return noRole
	}
	if f := l.tokens[k].figure; prev.role(classBefore) == asCount && f.frac && !l.sizeElsewhere(k) || prev.role(classBefore) == asCode && (f.frac || f.marked && f.v <= largestInch || f.kind == mmSize) {
		return noRole // Item: 1/2" nipple
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

// boreLetter reports the letter of a valve's way through before the word for a hole at k-1: T-Bohrung.
func (l *line) boreLetter(k int) bool {
	letter := at(l.tokens, k-3)
	return at(l.tokens, k-2).mark == '-' && at(l.tokens, k-2).glued && letter.to-letter.from == 1
}

// dimension is what a letter with an equals sign or a colon makes of the figure behind it, as drawings
// name dimensions: L=50 mm, H: 40.
func (l *line) dimension(k int, letter *token) role {
	sign := at(l.tokens, k-1).mark
	if letter.to-letter.from != 1 || sign != '=' && (sign != ':' || l.tokens[k].figure.kind != mmSize) {
		return noRole
	}
	switch l.norm[letter.from] {
	case 'l':
		return asLength
	case 'h', 'b', 'w', 'z':
		return asMeasure
	}
	return noRole
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
	if k < 2 || (f.kind != mmSize && f.kind != pressureFigure && f.kind != junkFigure) || f.role == asCount {
		return
	}
	dash, before := &l.tokens[k-1], l.tokens[k-2].figure
	if f.dashed {
		dash, before = &token{mark: '-'}, l.tokens[k-1].figure
	}
	if before != nil && before.kind == bare && f.kind == pressureFigure && before.v < f.v && rangeToList.has(l.norm[dash.from:dash.to]) && !l.one {
		before.drop(asScale)
		f.set = true // 1 to 5 bar
		return
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
	if dash.mark == '-' && before.v == f.v && f.kind == mmSize {
		before.kind = mmSize // hose joiner 19-19mm
		return
	}
	if dash.mark == '-' && before.v > f.v && f.kind == mmSize && before.whole && !l.one && (l.reducing || l.is(tail) || l.namesHose() || l.says("BARB")) {
		before.kind = mmSize // hose reducer 19-13mm: a range goes up
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

// seriesBefore is the series that a hose-end code of a 24 degree cone says, right
// before a bare number: DKOL 12 is 12L, BES 16 is 16S; 0 if none stands there.
func (l *line) seriesBefore(k int) byte {
	if m := l.beside(k, -1).is(classFamily); m != nil {
		return m.series()
	}
	return 0
}

// coneFits reports whether a tube and a series are a size of the 24 degree cones.
func coneFits(v float64, series byte) bool {
	_, ok := threads.Find(coneFamily(series), coneSize24(v, series))
	return ok
}

// mostLayers are the most layers of wire that a hose has: EN 856 has four, and six in the heaviest of SAE J517, as memory has them.
const mostLayers = 6

// noSize says what a number is that no words beside it make a size: a price, the number of a part, an angle.
func (l *line) noSize(k int, f *figure, prev, next *token) role {
	switch {
	case at(l.tokens, k+1).mark == ')' && at(l.tokens, k+1).glued && f.digits() && l.leads(k) && !l.one && !l.inBracket(k):
		return asListed // shop 4) ball valve
	case l.priced(k), l.amount(k, f):
		return asPrice
	case l.atPrice(k, f):
		return asCount
	case l.timesPrice(k) != noRole:
		return l.timesPrice(k)
	case f.digits() && f.v <= mostLayers && !l.one && layersList.has(l.norm[at(l.tokens, k+1).from:at(l.tokens, k+1).to]) && l.otherSize(k):
		return asCount // 2 λινά 3/8
	case l.vacuum(k):
		return asScale
	case hasText(l.norm, l.tokens[k].to, ".."):
		return asScale // -10...+110 °C
	case l.placeCell(k, f):
		return asCode
	case l.ownColumn(k) && l.otherSize(k), l.numberColumn(k, f):
		return asCount
	case l.is(angled) && (f.v == 45 || f.v == 90) && !l.twice(k, f),
		f.v == 90 && f.whole && !f.marked && l.is(valve) && l.otherSize(k) && prev.role(classBefore) != asBore:
		return asAngle
	case l.is(pump) && f.whole && f.v >= 15 && (next.mark == '/' && next.glued || prev.mark == '/' && prev.glued), l.pumpType(k, f), !l.one && l.partNumbered(k, f):
		return asCode
	}
	return noRole
}

// classifyBare says what a number without a unit is; bare if it is nothing.
func (l *line) classifyBare(k int, f *figure) figureKind {
	prev, next := l.beside(k, -1), l.beside(k, 1)
	if pair := at(l.tokens, k+2).figure; f.whole && f.v >= 3 && at(l.tokens, k+1).mark == '/' && at(l.tokens, k+1).glued && pair != nil && pair.kind == mmSize && pair.v != f.v {
		return mmSize // 4/7 mm: two of the one unit
	}
	if r := l.noSize(k, f, prev, next); r != noRole {
		return f.drop(r)
	}
	if l.smallGrip(k, f) || l.tubeTiedToThread(k, f) {
		return mmSize
	}
	if l.dashBesideFlare(k, f) || l.zeroDash(k, f) || l.pipeDash(k, f) {
		return dashSize
	}
	if series := l.seriesBefore(k); series != 0 && f.whole && coneFits(f.v, series) {
		f.series = series
		return coneSize
	}
	switch called := l.called(k); {
	case called == asRating || f.whole && !f.marked && l.tokens[k].glued && l.behindNominal(k):
		if l.is(scaled) && l.pressureCalled(k, f) != "rated" {
			return f.drop(asScale)
		}
		l.rate(f, quantity.Pressure(f.v)*quantity.Bar)
		return f.drop(f.role)
	case called == asBore && l.boreOfTail(k):
		return mmSize
	case called == asBore, l.boreListed(k, f):
		return l.bore(f)
	case called == asPhi, !l.one && f.whole && l.lex.phis[int(f.v)] > 0 && prev.is(classSex) != nil && prev.is(classSex).tongue == "vi":
		return l.pipeOutside(f) // ren ngoài 34
	case called == asLength || called == asCount || called.other():
		return f.drop(called)
	}
	switch behind := next.role(classAfter); {
	case behind == asBore:
		return l.bore(f)
	case behind == asCount || behind == asLength || behind.other():
		return f.drop(behind)
	}
	if f.whole && !f.marked && l.gradeDash(k) {
		return f.drop(asBoreOf)
	}
	if l.thousandClass(k, f) {
		return f.drop(asClass)
	}
	if l.sexedPorts(k, f) {
		return f.drop(asPort)
	}
	if f.whole && !f.marked && !l.one && l.qtyBefore(k) {
		return f.drop(asCount)
	}
	if l.timesOfEnd(k, f) {
		return f.drop(asPort)
	}
	if l.numbersPort(k, f) {
		return f.drop(asCode)
	}
	if l.countsFitting(k, f) {
		return f.drop(asCount)
	}
	if l.countsEnds(k, f) {
		return f.drop(asPort)
	}
	if r := l.counts(k, f); r != noRole {
		return f.drop(r)
	}
	if f.whole && !f.marked && prev.value(classSep) == "x" && l.tokens[k+1:] != nil && at(l.tokens, k+1).mark == '=' {
		return f.drop(asCount) // x 3 = 12.00
	}
	if next.value(classSep) == "x" && inchLike(f.v) && !(f.whole && !f.marked && next.glued && l.leads(k)) && (l.closeLength(at(l.tokens, k+2)) || l.is(nipple) && at(l.tokens, k+2).figure != nil && at(l.tokens, k+2).figure.role == asLength) {
		return inchSize
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
	if prev.value(classEnd) == "ROUND" && f.whole && !f.marked && f.v >= 3 && f.v <= largestInch && !l.one {
		return mmSize // Ø4: no inch is written so without its mark
	}
	pf, nf := prev.is(classFamily), next.is(classFamily)
	if nf != nil && (nf.has("pre") || nf.value == "THREAD") && pf == nil && prev.is(classEnd) != nil && f.v > 4 {
		nf = nil // R1/8 behind it has its own size
	}
	if l.is(nipple) && !l.reducing && f.whole && !f.marked && f.v > 1 && prev.value(classSep) == "x" && nf != nil && pf == nil {
		if other := l.before(k); other != nil && other.frac && pipeSteps(other.v, f.v) > mostSteps {
			return f.drop(asLength) // 1/2 x 3 MIP
		}
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

// sexedPorts reports the number of a tee's or a manifold's ends of one sex, whose size stands elsewhere: tee 1/4 NPT 3xF, les 3 femelles.
func (l *line) sexedPorts(k int, f *figure) bool {
	x, sex := at(l.tokens, k+1), at(l.tokens, k+2)
	if x.is(classSex) != nil {
		x, sex = nil, x
	}
	if l.one || !f.plain() || l.shape == nil || int(f.v) != l.shape.ends || f.v < 3 || sex.is(classSex) == nil || x != nil && (x.value(classSep) != "x" || !x.glued) || at(l.tokens, k-1).value(classSep) == "x" || !l.sizeElsewhere(k) {
		return false
	}
	if x != nil {
		x.word = l.lex.word("the")
	}
	return true
}

// qtyBefore reports a word for pieces right before a plain number and behind no other: FI-FI buc 6.
func (l *line) qtyBefore(k int) bool {
	prev, before := at(l.tokens, k-1), at(l.tokens, k-2)
	unit := prev.is(classUnit)
	return unit != nil && unit.value == "qty" && !l.tokens[k].glued && prev.to-prev.from > 1 && k > 1 && (before.figure == nil || k == 2 && (before.figure.role != noRole || before.figure.v >= 1000) && at(l.tokens, k+1).is(classKind) != nil) && l.sizeElsewhere(k)
}

// hoseGrade reports whether R with a whole number glued to it is a grade of hose.
func (l *line) hoseGrade(k int, f *figure) bool {
	if !f.whole || f.v > 20 || k == 0 || !l.tokens[k].glued || l.tokens[k-1].is(classFamily) == nil {
		return false
	}
	if l.gradePair(k) || l.smallGrade(k, f) {
		return true
	}
	if next := at(l.tokens, k+1); f.v <= 7 && (next.value(classEnd) == "HOSE" || next.is(classKind) != nil && next.is(classKind).shape.traits&hose != 0) {
		return true // 3/8 R2 hose
	}
	bore := at(l.tokens, k+1)
	wires := f.v <= 2 && hydraulic(l.norm) && bore.is(classSex) == nil && !bore.parted() && l.namesHose() && l.sizeElsewhere(k) // hydraulic hose 3/8 R2
	return l.is(hose) || l.lex.bores[int(f.v)] == 0 && !inchLike(f.v) || bore.figure != nil && bore.figure.frac && !bore.parted() || wires
}

// smallGrade reports the r1 or r2 of a line in small letters whose size stands apart from it, with no x between ends:
// ferrule r2 plain 1/2".
func (l *line) smallGrade(k int, f *figure) bool {
	if f.v > 2 || l.capital(l.tokens[k-1].from) || l.one || at(l.tokens, k+1).is(classSex) != nil {
		return false
	}
	size := false
	for j := range l.tokens {
		o := l.tokens[j].figure
		size = size || j > k+1 && o != nil && o.kind == inchSize && o.frac
		if it := &l.tokens[j]; it.value(classSep) != "" || it.mark == ',' || j != k-1 && it.is(classFamily) != nil || it.is(classSex) != nil {
			return false
		}
	}
	return size
}

// gradePair reports one of two grades of hose that a fitting is for, beside its sizes: r1 / r2 1/4" x 1/4".
func (l *line) gradePair(k int) bool {
	r := func(j int) bool { m := at(l.tokens, j).is(classFamily); return m != nil && m.value == "R" }
	other := func(stroke, letter, number int) bool {
		return at(l.tokens, stroke).mark == '/' && r(letter) && at(l.tokens, number).figure != nil && at(l.tokens, number).figure.whole && at(l.tokens, number).glued
	}
	hose := l.namesHose() || l.is(tail) || hydraulic(l.norm) || anyToken(l.tokens, func(it *token) bool { return dashWord(it.is(classFamily)) })
	return hose && l.tokens[k].glued && r(k-1) && (other(k+1, k+2, k+3) || other(k-2, k-4, k-3)) && l.sizeElsewhere(k)
}

// pumpType reports one of the two numbers of a circulator's type, its bore and its head: 25-60.
func (l *line) pumpType(k int, f *figure) bool {
	other := func(dash, it *token) bool {
		return dash.mark == '-' && dash.glued && it.glued && it.figure != nil && it.figure.whole && !it.figure.frac && !it.figure.marked
	}
	return l.is(pump) && f.whole && !f.marked && f.v >= 14 && (other(at(l.tokens, k+1), at(l.tokens, k+2)) && at(l.tokens, k+2).figure.v >= 14 ||
		k >= 2 && other(&token{mark: l.tokens[k-1].mark, glued: l.tokens[k-1].glued}, &token{glued: l.tokens[k].glued, figure: l.tokens[k-2].figure}) && l.tokens[k-2].figure.v >= 14)
}

// boreListed reports whether a number goes on from a nominal bore in a list: DN 32x15.
func (l *line) boreListed(k int, f *figure) bool {
	before := at(l.tokens, k-2).figure
	return f.whole && f.v > 4 && l.lex.bores[int(f.v)] > 0 && l.tokens[max(k-1, 0)].parted() && before != nil && before.kind == dnSize && l.beside(k-2, -1).role(classBefore) == asBore
}

func bspWord(m *sense) bool {
	switch m.value {
	case "BSP", "BSPP", "BSPT", "ISO7", "EN10226-1", "THREAD":
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
