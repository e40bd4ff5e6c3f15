package title

import (
	"bytes"
	"slices"
)

// tubeBores are the bores in mm that tube of compressed air, of dosing and of drinking water comes with by its outside:
// 6/4, 8/6. Common practice: ISO 14743 has the outsides.
var tubeBores = map[float64][]float64{
	4: {2, 2.5, 3}, 6: {3, 4}, 8: {5, 5.5, 6}, 10: {6, 6.5, 7, 7.5, 8}, 12: {8, 9, 10}, 14: {10, 11}, 16: {10, 11, 12, 13},
}

// tubePairs reads the outside and the bore of a tube that a stroke joins beside the word for tube or hose: 6/4 Schlauch
// is no 1 1/2 inches. The bore is no end.
func (l *line) tubePairs() {
	if l.one || bytes.IndexByte(l.norm, '/') < 0 && !l.says("PUSH") {
		return
	}
	pairs := false
	for k := 0; k < len(l.tokens); k++ {
		f, last := l.tokens[k].figure, k
		if f == nil || f.marked || f.dashed {
			continue
		}
		outside, bore := 0.0, 0.0
		if f.frac && f.v > 1 {
			a, b, ok := l.strokePair(k)
			if !ok {
				continue
			}
			outside, bore = a, b
		} else if other := at(l.tokens, k+2).figure; f.plain() && (at(l.tokens, k+1).mark == '/' || at(l.tokens, k+1).value(classSep) == "x" && l.says("PUSH")) && at(l.tokens, k+1).glued && at(l.tokens, k+2).glued && other.digitsOrDecimals() {
			outside, bore, last = f.v, other.v, k+2
		}
		if !slices.Contains(tubeBores[outside], bore) || at(l.tokens, k-1).mark == '/' || at(l.tokens, last+1).mark == '/' || at(l.tokens, last+1).value(classSep) == "x" && last == k+2 && at(l.tokens, k+1).value(classSep) == "x" || !pairs && !l.tubeWord(k-1) && !l.tubeWord(last+1) && !(at(l.tokens, k+1).value(classSep) == "x" && l.says("PUSH")) {
			continue
		}
		pairs = true
		f.kind, f.v, f.frac, f.whole = mmSize, outside, false, true
		if l.namesTail() {
			f.v = bore // a tail goes into the tube
		}
		l.tokens[k].to = l.tokens[last].to
		l.tokens = slices.Delete(l.tokens, k+1, last+1)
		if l.namesTail() {
			l.ignore(l.words(l.tokens[k].from, l.tokens[k].to), "the first number is the tube's outside")
			continue
		}
		l.ignore(l.words(l.tokens[k].from, l.tokens[k].to), "the second number is the tube's bore")
		for _, j := range [...]int{k - 1, k + 1} {
			if l.tubeWord(j) && l.tokens[j].value(classEnd) != "BARB" {
				l.tokens[j].word = l.lex.word("tube") // it goes by its outside, and onto no tail
			}
		}
	}
}

// strokePair are the two numbers of the fraction at k as it is written.
func (l *line) strokePair(k int) (a, b float64, ok bool) {
	stroke := false
	for _, c := range l.norm[l.tokens[k].from:l.tokens[k].to] {
		switch {
		case c == '/' && !stroke:
			stroke = true
		case !digit(c):
			return 0, 0, false
		case stroke:
			b = b*10 + float64(c-'0')
		default:
			a = a*10 + float64(c-'0')
		}
	}
	return a, b, stroke
}

// namesTail reports a word for a tail.
func (l *line) namesTail() bool {
	return l.says("BARB") || anyToken(l.tokens, func(it *token) bool { m := it.is(classKind); return m != nil && m.shape.traits&tail != 0 })
}

// tubeWord reports a word for a tube or a hose at k.
func (l *line) tubeWord(k int) bool {
	switch at(l.tokens, k).value(classEnd) {
	case "HOSE", "TUBE", "TUBING", "BARB":
		return true
	}
	return false
}

// ownMeasures reports ends that are the outside and the bore of one tube, of which the line names no fitting: tubing
// 6 mm OD / 4 mm ID.
func (l *line) ownMeasures(ends []*phrase) bool {
	if l.one || l.shape != nil && l.shape.ends >= 0 {
		return false
	}
	outside, bore := 0.0, 0.0
	for _, e := range ends {
		if e.fig == nil || e.strong || e.described() || e.part != nil && e.part.ends >= 0 || e.end != "TUBE" && !e.hose {
			return false
		}
		v := e.fig.v
		if !e.millimetres() {
			v *= 25.4
		}
		if e.hose {
			bore = v
		} else {
			outside = max(outside, v)
		}
	}
	return bore > 0 && bore < outside
}
