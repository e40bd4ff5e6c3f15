package title

import (
	"bytes"
	"slices"
)

// ringCodes are how the German trade names cutting-ring fittings before their tube and series, GE15L, with the sort of
// part. Source: the short names of DIN 2353, as memory has them.
var ringCodes = map[string]string{"ge": "adaptor", "gem": "adaptor", "gev": "adaptor", "we": "elbow", "wem": "elbow", "gsv": "bulkhead", "wsv": "elbow"}

// cuttingRings reads the sort of part from the letters of such a code: GE15L, WE 12 S.
func (l *line) cuttingRings() {
	for k := range l.tokens {
		it, cone := &l.tokens[k], at(l.tokens, k+1).figure
		if l.one || !it.unread || cone == nil || cone.kind != coneSize {
			continue
		}
		if s := l.lex.shapes[ringCodes[string(l.norm[it.from:it.to])]]; s != nil {
			it.unread, l.ringCode = false, true
			it.word = []*sense{{class: classKind, value: s.name, shape: s}}
		}
	}
}

// coneLetters takes the sex from the BB of a line with a tube and its series, which in lists of cutting rings is a form of the
// body, and female at both ends in other trades.
func (l *line) coneLetters(k int) {
	it := &l.tokens[k]
	cone := func(it token) bool { return it.figure != nil && it.figure.kind == coneSize }
	if !l.one && string(l.norm[it.from:it.to]) == "bb" && !l.cyrillic() && slices.ContainsFunc(l.tokens, cone) {
		it.word, it.unread = nil, true
	}
}

// saysRing reports a word for a cutting ring.
func (l *line) saysRing() bool {
	return l.contains("cutting-ring")
}

// seriesOfCones reads the series of a 24 degree cone that a word says beside the tube in millimetres: 12 mm, L-Reihe.
func (l *line) seriesOfCones() {
	row := bytes.Contains(l.norm, []byte("seri")) || bytes.Contains(l.norm, []byte("reihe")) || bytes.Contains(l.norm, []byte("reeks"))
	if l.one || !row || l.says("BARB") || l.says("PUSH") || l.namesHose() {
		return
	}
	var series byte
	switch {
	case l.contains("cone-light"):
		series = 'l'
	case l.contains("cone-heavy"):
		series = 's'
	default:
		return
	}
	for k := range l.tokens {
		f := l.tokens[k].figure
		tube := f.digits() && at(l.tokens, k-1).value(classEnd) == "TUBE" // tubo 12 serie L
		if f != nil && (f.kind == mmSize || tube) && f.whole && coneFits(f.v, series) {
			f.kind, f.series, l.evidence = coneSize, series, true
		}
	}
}
