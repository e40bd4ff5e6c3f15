package title

import (
	"handtight/threads"
)

// ringCodes are how the German trade names cutting-ring fittings before their tube and series, GE15L, with the sort of
// part. Source: the short names of DIN 2353, as memory has them.
var ringCodes = map[string]string{"ge": "adaptor", "gem": "adaptor", "gev": "adaptor", "we": "elbow", "wem": "elbow", "gsv": "bulkhead", "sv": "bulkhead", "wsv": "elbow", "te": "tee", "le": "tee"}

// cuttingRings reads the sort of part from the letters of such a code: GE15L, WE 12 S.
func (l *line) cuttingRings() {
	if l.one || !l.seen.figure(coneSize) {
		return
	}
	for k := range l.tokens {
		it, cone := &l.tokens[k], at(l.tokens, k+1).figure
		if !it.unread || cone == nil || cone.kind != coneSize {
			continue
		}
		if s := l.lex.shapes[ringCodes[string(l.norm[it.from:it.to])]]; s != nil {
			it.unread, l.ringCode = false, true
			it.word = meaningOf(&sense{class: classKind, value: s.name, shape: s})
		}
	}
}

// coneLetters takes the sex from the BB of a line with a tube and its series, which in lists of cutting rings is a form of the
// body, and female at both ends in other trades.
func (l *line) coneLetters(k int) {
	it := &l.tokens[k]
	cone := func(it *token) bool { return it.figure != nil && it.figure.kind == coneSize }
	if !l.one && string(l.norm[it.from:it.to]) == "bb" && !l.cyrillic() && anyToken(l.tokens, cone) {
		it.word, it.unread = nil, true
	}
}

// saysRing reports a word for a cutting ring.
func (l *line) saysRing() bool {
	return l.contains(cuttingRingList)
}

// seriesOfCones reads the series of a 24 degree cone that a word says beside the tube in millimetres: 12 mm, L-Reihe.
func (l *line) seriesOfCones() {
	row := l.holds("seri") || l.holds("reihe") || l.holds("reeks")
	if l.one || !row || l.says("BARB") || l.says("PUSH") || l.namesHose() {
		return
	}
	var series byte
	switch {
	case l.containsWord(coneLightList):
		series = 'l'
	case l.containsWord(coneHeavyList):
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

// coneAgain leaves out the thread that a 24 degree cone has by its tube, where it is said too and no x parts the two: 10S, beidseitig M18x1,5 AG. What is said of it holds for the cone, but for the nut of a fitting, which comes with it.
func (l *line) coneAgain(ends []*phrase) []*phrase {
	if l.one {
		return ends
	}
	out := l.pad.list(len(ends))
	for k, o := range ends {
		e := coneOf(ends[:k], o)
		if e == nil && k == 1 && len(ends) == 2 && !o.strong && !o.plus && ends[0].fig != nil && ends[0].fig.kind == coneSize && o.threadByForm() && o.fam == nil && o.end == "" && !o.comma && !l.is(adaptor) && !l.is(hose) && !l.namesHose() {
			ends[0].contrary, o.contrary = l.words(o.from, o.to), l.words(ends[0].from, ends[0].to)
		}
		if e == nil || o.strong || o.end != "" || o.fam != nil && o.fam.value != "THREAD" {
			out = append(out, o)
			continue
		}
		o.fig.role = asRepeat
		if o.attr&isNut == 0 || l.is(hose) {
			if len(e.sexes) == 0 {
				e.sexes = o.sexes
			}
			e.attr |= o.attr
		}
	}
	return out
}

// coneOf is the cone among some ends whose thread another end's size is; nil if there is none.
func coneOf(ends []*phrase, o *phrase) *phrase {
	if o.fig == nil || o.fig.kind != metricSize || o.fig.pitch == 0 {
		return nil
	}
	for _, e := range ends {
		if e.fig == nil || e.fig.kind != coneSize {
			continue
		}
		form, ok := threads.Find(coneFamily(e.fig.series), coneSize24(e.fig.v, e.fig.series))
		if ok && float64(form.Major) == o.fig.v && float64(form.Pitch) == o.fig.pitch {
			return e
		}
	}
	return nil
}
