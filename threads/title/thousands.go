package title

import (
	"slices"
	"strconv"
)

// grouped reads a pressure whose thousands a comma, a stop, a blank or a stroke parts: 3,000 psi, 1 000 WOG, 2'000 psi. No pressure in
// psi or kPa is written with three decimals. One in bar may be, and 3 600 psi may be a count before 600: such a figure rates nothing, and
// is named. It gives where the figure ends, 0 if n is no such one.
func (sc *scanner) grouped(n, end int, f *figure) int {
	sep := byteAt(sc.norm, end)
	if last := len(sc.tokens) - 1; isBlank(sep) && last >= 0 && (sc.tokens[last].to == end-len(strconv.Itoa(n)) || sc.tokens[last].is(classBefore) != nil) && !sc.calledPressure() {
		return 0 // DN15 160 bar
	}
	if n < 1 || n > 999 || sep != '.' && sep != ',' && sep != '\'' && !isBlank(sep) {
		return 0
	}
	rest, stop := sc.digits(end + 1)
	if stop != end+4 || byteAt(sc.norm, stop) == '/' || byteAt(sc.norm, stop) == '.' && digit(byteAt(sc.norm, stop+1)) {
		return 0
	}
	unit := ""
	if _, m := sc.unitAt(sc.blanks(stop)); m != nil {
		if k := slices.IndexFunc(m.all(), func(s *sense) bool { return s.class == classUnit && (pressureUnit[s.value] != 0 || s.value == "steam") }); k >= 0 {
			unit = m.senses[k].value
		}
	}
	classed := len(sc.tokens) > 0 && sc.tokens[len(sc.tokens)-1].role(classBefore) == asClass || byteAt(sc.norm, stop) == '#'
	if classed && !isBlank(sep) {
		f.v, f.whole = float64(n*1000+rest), true
		return stop // class 3,000
	}
	whole := unit == "psi" || unit == "kpa" || unit == "steam"
	switch {
	case isBlank(sep) && rest > 0 && n > mostParted:
		return 0 // elbow 90 150 psi
	case unit == "" || sep == '.' && !whole && n*1000+rest > mostBar:
		return 0
	case isBlank(sep) && rest > 0 && !sc.calledPressure(), !whole && !isBlank(sep):
		f.drop(asThousands)
	}
	f.v, f.whole = float64(n*1000+rest), true
	return stop
}

// mostBar is a pressure in bar that no part of such lists is rated for: a figure beyond it has decimals. A judgement.
const mostBar = 4000

// calledPressure reports that the word before a figure calls it a pressure: max 3 600 psi.
func (sc *scanner) calledPressure() bool {
	n := len(sc.tokens)
	return n > 0 && (sc.tokens[n-1].is(classPress) != nil || sc.tokens[n-1].role(classBefore) == asRating)
}

// mostParted is the most thousands that a blank parts where no noughts stand behind them; above it the first number is an angle or a bore. A
// judgement.
const mostParted = 12
