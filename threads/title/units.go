package title

import (
	"bytes"
	"slices"
	"strings"

	"handtight/pressure/quantity"
	"handtight/threads"
)

// unitBehind reads what a figure counts: mm, bar, fen, a cone's series, a class
// letter, feet, pieces.
func (sc *scanner) unitBehind(end int, f *figure) int {
	if byteAt(sc.norm, end) == '\'' && f.frac && !f.marked {
		f.kind, f.marked = inchSize, true // nobody counts quarters of a foot
		return end + 1
	}
	if byteAt(sc.norm, end) == '\'' && !f.marked && f.whole && f.v <= largestInch && sc.inchOfOne(end+1) {
		f.kind, f.marked = inchSize, true
		return end + 1
	}
	if byteAt(sc.norm, end) == '\'' && !f.marked {
		f.drop(asLength)
		return end + 1
	}
	if byteAt(sc.norm, end) == 'd' && (f.v == 45 || f.v == 90) && f.whole && !f.marked && !alnum(byteAt(sc.norm, end+1)) {
		f.drop(asAngle)
		return end + 1 // 90D
	}
	at := sc.blanks(end)
	if at > end && (f.v == 45 || f.v == 90) && f.whole && !f.marked && byteAt(sc.norm, at) == 'm' && isBlank(byteAt(sc.norm, at+1)) && sc.familyAt(sc.blanks(at+1)) && !anyToken(sc.tokens, ofHose) {
		f.drop(asAngle)
		return end // 90 m jic: the male end of an elbow
	}
	if byteAt(sc.norm, at) == 'm' && isBlank(byteAt(sc.norm, at+1)) && hasText(sc.norm, sc.blanks(at+1), "m.") && at > end && !f.frac && !f.marked {
		f.drop(asLength)
		return at + 1 // 1,2 m m. JIC: metres, and with
	}
	if stop := sc.horsepower(at, f); stop > 0 {
		return stop
	}
	if f.frac || f.marked {
		f.kind = inchSize
		return sc.parallelClass(end, f)
	}
	if at >= len(sc.norm) {
		return end
	}
	if sign := byteAt(sc.norm, sc.blanks(at+1)); letter(sc.norm[at]) && at > end && (sign == '=' || sign == ':' || (sign == '-' || sign == '.') && sc.norm[at] == 'l' && digit(byteAt(sc.norm, at+2))) {
		return end // the L of L=50 mm, L-1200
	}
	if stop := sc.germanSize(end, f); stop > 0 {
		return stop
	}
	if stop := sc.series(end, at, f); stop > 0 {
		return stop
	}
	if sc.norm[at] == '#' {
		if end := sc.poundsOf(at+1, f); end > 0 {
			return end
		}
		f.drop(poundRole(f))
		return at + 1
	}
	if n := len(sc.tokens); n > 0 && at > end && sc.tokens[n-1].role(classBefore) == asBore {
		if hasText(sc.norm, at, "mm") && !alnum(byteAt(sc.norm, at+2)) && !(sc.capital(at) && sc.bothCases()) {
			return at + 2 // DN 15 mm: its unit, and no sexes
		}
		return end // DN32 EA: the bore has its unit
	}
	stop, m := sc.unitAt(at)
	for _, s := range m.all() {
		if s.class == classUnit {
			return sc.takeUnit(end, at, stop, s, f)
		}
	}
	return end
}

// germanSize reads the er of 8er and 15er, which are tubes of so many millimetres, or packs of so many pieces.
func (sc *scanner) germanSize(end int, f *figure) int {
	if !f.whole || f.v < 4 || f.v > 63 || !hasText(sc.norm, end, "er") || alnum(byteAt(sc.norm, end+2)) {
		return 0
	}
	next := sc.blanks(end + 2)
	if byteAt(sc.norm, next) == '-' {
		next = sc.blanks(next + 1)
	}
	for _, pack := range germanPackList.words() {
		if hasText(sc.norm, next, pack) {
			f.drop(asCount)
			return end + 2
		}
	}
	if next >= len(sc.norm) && sc.figured() {
		f.drop(asCount) // 8 mm, 10er
		return end + 2
	}
	f.kind = mmSize
	return end + 2
}

// pressureBehind reads a fraction of a bar or a psi, such as a check valve cracks at; 0 if no such unit follows.
func (sc *scanner) pressureBehind(end, at int, f *figure) int {
	if byteAt(sc.norm, end) == '-' {
		at = end + 1
		if _, stop := sc.digits(at); stop > at { // 1/2-30 psi
			if _, m := sc.unitAt(sc.blanks(stop)); slices.ContainsFunc(m.all(), func(s *sense) bool { return s.class == classUnit && pressureUnit[s.value] != 0 }) {
				f.drop(asScale)
				return end
			}
		}
	}
	stop, m := sc.unitAt(at)
	for _, s := range m.all() {
		if s.class == classUnit && pressureUnit[s.value] != 0 {
			return sc.takeUnit(end, at, stop, s, f)
		}
	}
	return 0
}

// ofHose reports a word for hose or pipe, which is sold by the metre.
func ofHose(it *token) bool {
	m := it.is(classKind)
	end := it.value(classEnd)
	return end == "HOSE" || end == "TUBE" || end == "TUBING" || end == "BARB" || m != nil && (m.shape.traits&hose != 0 || m.shape.ends < 0)
}

// namesMadeUp reports the name of a hose with its ends.
func namesMadeUp(it *token) bool {
	m := it.is(classKind)
	return m != nil && m.shape.traits&madeUp != 0
}

// soldByLength reports such a word anywhere in the text.
func (sc *scanner) soldByLength() bool {
	for _, w := range lengthList.words() {
		if bytes.Contains(sc.norm, []byte(w)) {
			return true
		}
	}
	return false
}

// familyAt reports the name of a thread at a place.
func (sc *scanner) familyAt(i int) bool {
	_, m := sc.lookUp(i)
	return slices.ContainsFunc(m.all(), func(s *sense) bool { return s.class == classFamily && s.value != "THREAD" })
}

// inchOfOne reports whether a single stroke before a place marks inches and no feet, as Russian lists write them:
// an x with another size stands behind it or before the figure, or it stands behind a thread or a sex.
func (sc *scanner) inchOfOne(at int) bool {
	x := sc.blanks(at)
	if byteAt(sc.norm, x) == 'x' && digit(byteAt(sc.norm, sc.blanks(x+1))) {
		return true
	}
	n := len(sc.tokens)
	sized := anyToken(sc.tokens, func(it *token) bool { f := it.figure; return f != nil && (f.frac || f.marked) })
	parted := n > 1 && (sc.tokens[n-2].value(classSep) != "" || sc.tokens[n-2].unread && sc.tokens[n-2].to-sc.tokens[n-2].from == 1)
	if n > 0 && (!sized || parted) && (sc.tokens[n-1].is(classSex) != nil || sc.tokens[n-1].value(classFamily) == "THREAD") {
		return true // rosca 1'
	}
	return x == len(sc.norm) && n > 1 && sc.tokens[n-1].value(classSep) == "x" && sc.tokens[n-2].figure != nil && (sc.tokens[n-2].figure.frac || sc.tokens[n-2].figure.marked)
}

// unitAt looks up the word at a place, or the unit that it begins with before an x and another end: the mm of
// 50mmx25mm and 8 mmxG1/4.
func (sc *scanner) unitAt(at int) (int, *meanings) {
	stop, m := sc.lookUp(at)
	if m != nil {
		return stop, m
	}
	for x := at + 1; x < len(sc.norm) && letter(sc.norm[x]); x++ {
		if sc.norm[x] != 'x' || !digit(byteAt(sc.norm, sc.blanks(x+1))) && !(letter(byteAt(sc.norm, x+1)) && sc.known(x+1)) {
			continue
		}
		if _, m := sc.exact(at, x); slices.ContainsFunc(m.all(), func(s *sense) bool { return s.class == classUnit }) {
			return x, m
		}
	}
	return sc.unitBeforeEnd(at)
}

// unitBeforeEnd looks up the unit that a figure is glued to where the word of an end is glued to the unit: the
// in of 3/4inMIP, the mm of 20mmFPT.
func (sc *scanner) unitBeforeEnd(at int) (int, *meanings) {
	if at+2 >= len(sc.norm) || !digit(byteAt(sc.norm, at-1)) || !hasText(sc.norm, at, "in") && !hasText(sc.norm, at, "mm") {
		return 0, nil
	}
	rest, stop := at+2, sc.run(at, false)
	for to := stop; to > rest; to-- {
		if to < stop && sc.norm[to] != 'x' {
			continue
		}
		if _, m := sc.exact(rest, to); slices.ContainsFunc(m.all(), (*sense).ofEnd) {
			return sc.exact(at, rest)
		}
	}
	return 0, nil
}

// ofEnd reports a word that says something of an end.
func (m *sense) ofEnd() bool {
	return m.class == classFamily || m.class == classSex || m.class == classEnd
}

func (sc *scanner) takeUnit(end, at, stop int, unit *sense, f *figure) int {
	one := stop-at == 1 && sc.norm[at] < 0x80
	if one && letter(sc.norm[at]) {
		capital := sc.capital(at)
		sized := f.v <= 4 && f.whole
		switch sc.norm[at] {
		case 'm':
			if n := len(sc.tokens); n > 0 && dashWord(sc.tokens[n-1].is(classFamily)) || n > 1 && sc.tokens[n-1].mark == '-' && dashWord(sc.tokens[n-2].is(classFamily)) {
				return end // JIC-6 M
			}
			if capital && !(at > end && sc.soldByLength() && isBlank(byteAt(sc.norm, stop)) && digit(byteAt(sc.norm, sc.blanks(stop)))) || !capital && sized && at > end && !sc.figured() && !sc.soldByLength() || digit(byteAt(sc.norm, stop)) && !(f.whole && f.v < 10 && sc.twoDigits(stop)) {
				return end // m18x1.5 is no 8 m of dn8 m18x1.5
			}
		case 'g':
			if at > end && (capital || digit(byteAt(sc.norm, sc.blanks(stop)))) {
				return end // 22 G 3/8: a thread
			}
		case 'c', 'w', 'v':
			if sized || capital && at == end && sc.norm[at] == 'c' {
				return end
			}
		}
	}
	if unit.role == asFineness && (strings.HasPrefix(sc.as[sc.at[at]:], "Ü") || strings.HasPrefix(sc.as[sc.at[at]:], "ü")) {
		return end // JIC 6 ÜM: a nut
	}
	if unit.role == asPrice && at > end && digit(byteAt(sc.norm, sc.blanks(stop))) {
		return end // 0.75 USD 3.50: the price is the next
	}
	switch unit.value {
	case "mm":
		f.kind = mmSize
	case "eighth":
		if sc.norm[at] == 'p' && !translatedList.in(sc.norm) {
			return end // 4 points
		}
		f.kind, f.v = fenSize, f.v/8
	case "steam":
		f.kind, f.per, f.steam = pressureFigure, quantity.PSI, true
	case "bar", "psi", "mpa", "kpa", "mbar", "kgcm2", "atm":
		f.kind, f.per = pressureFigure, pressureUnit[unit.value]
	case "inch":
		f.kind, f.marked = inchSize, true
	case "class":
		if end := sc.poundsOf(stop, f); end > 0 {
			return end
		}
		f.drop(poundRole(f))
	case "weight":
		if end := sc.poundsOf(stop, f); end > 0 && bytes.HasPrefix(sc.norm[at:], []byte("lb")) {
			return end
		}
		f.drop(asWeight)
		if bytes.HasPrefix(sc.norm[at:], []byte("lb")) {
			f.drop(poundRole(f))
		}
	default:
		f.drop(unit.role)
		if unit.role == asLength && one && sc.norm[at] == 'm' && at == end {
			if sc.twoDigits(stop) {
				return stop + 2 // 1m20: a metre and twenty
			}
		}
	}
	return stop
}

// poundsOf reads pounds of which the words behind say that they are a pressure in psi (600 lb WOG, 150# working pressure) or what a part is
// pulled with; 0 if they say neither, and the number may be a class.
func (sc *scanner) poundsOf(at int, f *figure) int {
	at = sc.blanks(at)
	for byteAt(sc.norm, at) == '.' {
		at = sc.blanks(at + 1)
	}
	for _, word := range poundPressureList.words() {
		if hasText(sc.norm, at, word) && !alnum(byteAt(sc.norm, at+len(word))) {
			f.kind, f.per = pressureFigure, quantity.PSI
			if word[0] == 'w' && len(word) < 7 {
				return at + len(word) // WOG is the unit; working pressure calls it
			}
			return at
		}
	}
	for _, word := range poundPullList.words() {
		if hasText(sc.norm, at, word) && !alnum(byteAt(sc.norm, at+len(word))) {
			f.drop(asWeight)
			return at
		}
	}
	return 0
}

// twoDigits reports two digits at a place, and nothing glued to them that makes them a size.
func (sc *scanner) twoDigits(i int) bool {
	_, end := sc.digits(i)
	behind := byteAt(sc.norm, end)
	return end == i+2 && !alnum(behind) && behind != '/' && behind != '.' && behind != '"'
}

// horsepower reads the power of a motor, which comes in fractions too (1/2 HP); CV, which is also
// short for a check valve, only behind the name of a pump. 0 if none begins at i.
func (sc *scanner) horsepower(i int, f *figure) int {
	c, next := byteAt(sc.norm, i), byteAt(sc.norm, i+1)
	if f.marked || alnum(byteAt(sc.norm, i+2)) || !(c == 'h' && next == 'p') && !(c == 'c' && next == 'v' && sc.pumpNamed()) {
		return 0
	}
	f.drop(asPower)
	return i + 2
}

// pumpNamed reports whether the words so far name a pump.
func (sc *scanner) pumpNamed() bool {
	for k := range sc.tokens {
		if m := sc.tokens[k].is(classKind); m != nil && m.shape.traits&pump != 0 {
			return true
		}
	}
	return false
}

// figured reports whether the line gave a figure before: 1/4" 1 m is a length.
func (sc *scanner) figured() bool {
	for k := range sc.tokens {
		if sc.tokens[k].figure != nil {
			return true
		}
	}
	return false
}

// series reads the letter of a 24 degree cone (12L, 16 S), of a nominal bore of
// Japan in millimetres or inches (15A, 1/2B), of the Chinese inch (1寸2, 1寸半), and of a class.
func (sc *scanner) series(end, at int, f *figure) int {
	if stop := sc.hyphenSeries(end, f); stop > end {
		return stop
	}
	c := sc.norm[at]
	alone := !alnum(byteAt(sc.norm, at+1)) || byteAt(sc.norm, at+1) == 'x' && (digit(byteAt(sc.norm, at+2)) || letter(byteAt(sc.norm, at+2)) && sc.known(at+2)) // 10LxR 1/4
	joined := byteAt(sc.norm, at+1) == 'x' && digit(byteAt(sc.norm, at+2))                                                                                      // 20A×15A
	if sc.norm[at] >= 0xE0 {
		return sc.chineseInch(at, f)
	}
	switch {
	case (c == 'l' || c == 's') && alone && f.whole && coneTube(f.v, c) && (byteAt(sc.norm, at+1) != '/' || digit(byteAt(sc.norm, at+2))) && (at == end || sc.capital(at)):
		f.kind, f.series = coneSize, c
		return at + 1
	case c == 'l' && byteAt(sc.norm, at+1) == 'l' && f.whole && f.v <= 12:
		f.drop(asCode)
		return at + 2
	case c == 'a' && (alone || joined) && at == end && f.whole && f.v >= 6 && sc.lex.bores[int(f.v)] > 0 && sc.eastern():
		f.kind, f.v = dnSize, sc.lex.bores[int(f.v)]
		return at + 1
	case at == end && inchLike(f.v) && sc.easternInch(at) > at:
		f.kind, f.marked = inchSize, true
		return sc.easternInch(at)
	case c == 'l' && alone && at == end && f.v >= 100:
		f.drop(asVolume)
		return at + 1
	}
	return 0
}

func hasText(b []byte, at int, text string) bool {
	return at+len(text) <= len(b) && string(b[at:at+len(text)]) == text
}

// parallelClass reads the A or B of ISO 228 behind an inch size, and the mark of an
// inch size of Japan or China.
func (sc *scanner) parallelClass(end int, f *figure) int {
	at := sc.blanks(end)
	c := byteAt(sc.norm, at)
	accented := c == 'a' && sc.as[sc.at[at]] >= 0x80 // G 3/8 à gauche
	if (c == 'a' || c == 'b') && !accented && (!alnum(byteAt(sc.norm, at+1)) || byteAt(sc.norm, at+1) == 'x' && digit(byteAt(sc.norm, at+2))) && sc.afterG() {
		f.suffixed, f.classA = threads.Male, c == 'a'
		return at + 1
	}
	stop := sc.easternInch(end)
	f.marked = f.marked || stop > end
	return stop
}

// hyphenSeries reads the series of a 24 degree cone behind a hyphen, as part lists of cutting-ring fittings have it: GE 12-L, T 10-S. A longer code goes on
// behind the letter.
func (sc *scanner) hyphenSeries(end int, f *figure) int {
	c := byteAt(sc.norm, end+1)
	if byteAt(sc.norm, end) != '-' || c != 'l' && c != 's' || !f.whole || f.frac || f.dashed || !sc.capital(end+1) || !coneTube(f.v, c) || !isBlank(byteAt(sc.norm, end+2)) && byteAt(sc.norm, end+2) != ',' || !sc.ringLetters() {
		return end
	}
	f.kind, f.series = coneSize, c
	return end + 2
}

// ringLetters reports that one to five capitals stand right before the figure, as the code of such a fitting's form.
func (sc *scanner) ringLetters() bool {
	n := len(sc.tokens)
	if n == 0 {
		return false
	}
	it := &sc.tokens[n-1]
	if it.figure != nil || it.mark != 0 || it.to-it.from > len("EVGSD") || it.is(classSex) != nil || it.is(classFamily) != nil {
		return false
	}
	for i := it.from; i < it.to; i++ {
		if !letter(sc.norm[i]) || !sc.capital(i) {
			return false
		}
	}
	return true
}

// afterG reports whether the word before the figure is G, which alone has classes.
func (sc *scanner) afterG() bool {
	if len(sc.tokens) == 0 {
		return false
	}
	m := sc.tokens[len(sc.tokens)-1].is(classFamily)
	return m != nil && m.value == "BSPP"
}

// coneTube reports whether a tube of v mm is made in the series.
func coneTube(v float64, series byte) bool {
	_, ok := threads.Find(coneFamily(series), coneSize24(v, series))
	return ok
}

func coneFamily(series byte) threads.Family {
	if series == 's' {
		return threads.Cone24S
	}
	return threads.Cone24L
}

// coneSize24 writes a cone's size as the standard does: 12L, 16S.
func coneSize24(v float64, series byte) string {
	return quantity.Exact(v) + strings.ToUpper(string(series))
}

// inchAlone reads the word for an inch of an Arabic line that has no figure as one inch: tee, an inch, iron.
func (l *line) inchAlone() {
	place := -1
	for k := range l.tokens {
		it := &l.tokens[k]
		if it.figure != nil {
			return
		}
		if hasUnit(it.word, "inch") && l.norm[it.from] >= 0xD8 && l.norm[it.from] <= 0xDB {
			place = k
		}
	}
	if place >= 0 && !l.one {
		l.tokens[place].word, l.tokens[place].figure = nil, &figure{kind: inchSize, v: 1, whole: true, marked: true}
	}
}
