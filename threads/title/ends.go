package title

import (
	"slices"

	"handtight/threads"
)

// otherEndUnsaid names an end that a part has and its line says nothing of.
const otherEndUnsaid = "the other end (nothing is said of it)"

// multiply gives the part as many ends as its kind has.
func (l *line) multiply(ends []*phrase) []*phrase {
	if l.one || len(ends) == 1 && len(l.unjudged) > 0 {
		return ends // of the other end no size is said
	}
	if len(ends) == 1 && l.is(union) && !l.is(adaptor) && ends[0].attr&isNut != 0 && ends[0].sex() != threads.Male && l.nutWith() {
		l.ignore(l.nutWord(), "the nut between the halves of the union")
		ends[0].attr &^= isNut | isSwivel
		if ends[0].fam == nil {
			ends[0].thread = true
		}
	}
	for _, other := range []string{"QC", "LUER"} {
		if len(ends) == 1 && ends[0].end == "BARB" && l.says(other) {
			l.unjudged = append(l.unjudged, "the other end ("+notJudged[other]+")")
			return ends
		}
	}
	if l.sidePort(ends) {
		l.sided = true
		first, other := ends[0], copyOf(ends[0])
		if len(first.sexes) == 2 {
			first.sexes, other.sexes = first.sexes[:1:1], first.sexes[1:]
		}
		if port := ends[1]; port.names(plain) {
			port.part, port.sexes, port.assumed = nil, []threads.Sex{threads.Female}, true // with 1/4 NPT drain plug: the port that it closes
			l.ignore("plug", "it comes with the part")
		}
		if l.is(tee) {
			return []*phrase{first, other, copyOf(first), ends[1]}
		}
		return []*phrase{first, other, ends[1]} // ball valve 1/2 NPT F with 1/4 NPT F gauge port
	}
	if n := l.sequence(ends); n > 1 && !l.torn(ends) {
		ends = l.spread(ends, n)
	}
	if len(ends) == 2 && l.is(unequal) && !l.is(bush) && ends[0].end == "FERRULE" && ends[1].bare() {
		ends[1].end = "FERRULE" // reducer, tri-clamp 3" x 2"
	}
	if len(ends) == 1 && !l.one && l.is(set) && !l.both && len(ends[0].sexes) == 1 && l.onePort() == "" && (ends[0].fig == nil || ends[0].fig.times < 2) {
		l.unjudged = append(l.unjudged, "the other port (nothing is said of it)")
		return ends
	}
	if port := l.onePort(); port != "" && len(ends) == 1 {
		l.unjudged = append(l.unjudged, port+" (nothing is said of it)")
		return ends
	}
	if male, nut := l.studAndNut(ends); nut != nil {
		return []*phrase{male, nut}
	}
	if len(ends) == 1 && l.is(pump) && l.saysOutlet() {
		l.unjudged = append(l.unjudged, "the inlet (nothing is said of it)")
		return ends
	}
	want := 0
	if l.shape != nil {
		want = l.shape.ends
	}
	if l.is(valve) && want == 2 {
		want = max(want, l.ways())
	}
	if l.both {
		want = max(want, 2)
	}
	if l.both && l.is(vessel) && anyToken(l.tokens, func(it *token) bool { return it.value(classAttr) == "pair" }) && !l.feedAndBrine() {
		want = 3 // feed, brine, product
	}
	if len(ends) == 1 && l.is(vessel) && ends[0].attr&isTwo != 0 {
		want = 2 // with two 1/2 NPT F ports
	}
	if want == 0 && len(ends) == 1 && l.is(adaptor) && l.ways() == 3 {
		want = 3
	}
	if want == 0 && len(ends) == 1 && (l.evenBody(ends[0]) || l.is(adaptor) && len(ends[0].sexes) == 0 && l.bent()) {
		want = 2
	}
	if one := ends[0]; len(ends) == 1 && want == 0 && l.is(hose) && threadLike(one) && len(one.sexes) == 0 && one.attr == 0 && one.end == "" && (one.fam == nil && l.lengthSaid() || one.fam != nil && len(one.fam.sexes) == 0 && !dashWord(one.fam)) {
		return append(ends, copyOf(one)) // flexible hose 1/2 x 40 cm: its size at both ends
	}
	if len(ends) == 1 && (want == 0 && l.is(madeUp) || l.is(elbow) && l.stud() && len(ends[0].sexes) == 1 || (l.is(wall) || ends[0].end == "BARB" && (l.is(ownThread) || l.is(tapThread))) && !l.both || ends[0].end == "BARB" && ends[0].attr&isNut != 0 && ends[0].millimetres()) {
		l.unjudged = append(l.unjudged, otherEndUnsaid)
		return ends
	}
	if one := ends[0]; len(ends) == 1 && want == 0 && l.is(adaptor) && (one.end == "TUBE" || one.end == "") && one.millimetres() && !one.described() && one.attr == 0 {
		return append(ends, copyOf(one)) // koppling 15 mm: the one size is that of both
	}
	if one := ends[0]; len(ends) == 1 && want == 0 && l.is(adaptor) && one.bare() && one.attr == 0 && (one.fig.kind == inchSize || one.fig.kind == frenchSize) && !one.strange {
		return append(ends, copyOf(one)) // raccordo 3/4: so is it here, and both are asked
	}
	if len(ends) == 1 && want == 0 && (l.is(adaptor) || l.is(body)) {
		l.unjudged = append(l.unjudged, otherEndUnsaid) // connector 3/4 FIP: it joins that to something
		return ends
	}
	if l.is(tee) && len(ends) == 2 && ends[0].fig == ends[1].fig && ends[0].fig != nil && ends[0].fig.counted {
		return ends // two tails of a tee: of its third end nothing is said
	}
	if l.is(tee) && len(ends) == 2 && !l.one && ends[0].sameFigure(ends[1]) && l.contains(sidePortList) {
		l.unjudged = append(l.unjudged, "the port beside them (nothing is said of it)")
		return ends // tee 1/4 x 1/4 with a probe port
	}
	if (l.is(tee) || want == 3) && len(ends) == 2 && l.twoOutlets(ends[0], ends[1]) {
		return []*phrase{ends[0], ends[1], copyOf(ends[1])}
	}
	if l.is(tee) && len(ends) == 2 || want == 3 && len(ends) == 2 && threadLike(ends[0]) && threadLike(ends[1]) {
		return l.threeOf(ends)
	}
	if l.is(vessel) && len(ends) == 2 {
		if l.namesBrine() || ends[0].fig != nil && ends[0].fig == ends[1].fig && ends[0].fig.counted {
			return ends // feed and brine: of the product nothing is said
		}
		brine := copyOf(ends[0])
		brine.brine = ends[0].attr&isTwo == 0 && !l.contains(brineList) && !l.contains(portsList)
		return []*phrase{ends[0], brine, ends[1]}
	}
	if l.is(femaleRound) && want == 4 && len(ends) == 2 && l.oddOne(ends[0], ends[1]) {
		return []*phrase{ends[0], copyOf(ends[0]), copyOf(ends[0]), ends[1]} // cross 1/2 NPT, one port 1/4 NPT
	}
	if l.is(femaleRound) && want == 4 && len(ends) == 2 {
		return []*phrase{ends[0], copyOf(ends[0]), ends[1], copyOf(ends[1])} // a cross: run and branches
	}
	if l.is(manifold) {
		return l.outlets(ends)
	}
	if one := ends[0]; len(ends) == 1 && (want == 2 && l.is(elbow) || want == 0 && l.is(adaptor) && one.fam != nil) && len(one.sexes) < 2 && (one.also == "PUSH" || one.also == "COMPRESSION") {
		grip := &phrase{from: one.from, to: one.to, end: one.also} // push-fit elbow 1/8 BSPT: of the tube's end the size is not said
		one.also = ""
		return []*phrase{one, grip}
	}
	for len(ends) == 1 && want > 1 {
		one := ends[0]
		for len(ends) < want {
			other := copyOf(one)
			other.doubled = other.end == "BARB" && (l.is(elbow) || l.is(valve) && !l.both)
			other.assumed = other.assumed || l.is(bulkhead) && len(one.sexes) > 0
			other.turns = one.attr&(isSwivel|isNut) != 0 && !l.both && (l.is(elbow) || l.is(tee) || l.is(nipple))
			if l.is(hose) && other.attr&isSwivel != 0 && l.contains(oneSwivelList) {
				other.attr &^= isSwivel
				other.swings, one.swings = true, true
			}
			other.open, other.strange = other.open || l.lostEnd, other.strange || l.lostEnd // FIP x QJ: a word of the other end is not understood
			ends = append(ends, other)
		}
	}
	return ends
}

// oddOne reports that one port alone is said to be of the second of two sizes.
func (l *line) oddOne(first, second *phrase) bool {
	if first.to > second.to {
		return false
	}
	return oneOfThemList.in(l.norm[first.to:second.to])
}

// moreThanItHas reports more ends than a part of the kind has, so that some of what was read is none.
func (l *line) moreThanItHas(ends []*phrase) bool {
	switch {
	case slices.ContainsFunc(ends, func(e *phrase) bool { return e.fig != nil && e.fig.counted && e.fig.multiple > 1 }) && l.shape != nil && (l.is(serves) || l.is(pump) || l.is(many)):
		return false // pump with two inlets and one outlet
	case l.one || l.shape == nil || len(ends) < 2 || l.is(many) || l.is(manifold) || l.sided && len(ends) == l.shape.ends+1:
		return false
	case len(ends) <= max(l.shape.ends, 1) && !l.is(adaptor) && !l.is(unequal) && !l.is(tail) && !l.is(madeUp), l.ways() > 0:
		return false
	case l.is(adaptor), l.is(unequal), l.is(tail), l.is(madeUp):
		return len(ends) > 2
	case l.shape.ends == 1:
		return len(ends) > 1 && (l.is(plain) || l.is(dial) || l.is(scaled) || l.is(coupler) && ends[0].end == "" && ends[1].end == "")
	}
	return l.shape.ends > 1 && len(ends) > l.shape.ends
}

// reducesNothing reports a part that goes from one size to another, all of whose ends are read with one size.
func (l *line) reducesNothing(ends []*phrase) bool {
	if l.one || !l.reducing && !l.is(evenly) || len(ends) < 2 {
		return false
	}
	return !slices.ContainsFunc(ends, func(e *phrase) bool {
		return e.fig == nil || !e.sameFigure(ends[0]) || threadLike(e) != threadLike(ends[0])
	})
}

// lengthSaid reports a length in the line.
func (l *line) lengthSaid() bool {
	for k := range l.tokens {
		if f := l.tokens[k].figure; f != nil && f.role == asLength {
			return true
		}
	}
	return false
}

// bent reports an angle of 90 or 45 degrees: a fitting with one is an elbow.
func (l *line) bent() bool {
	for k := range l.tokens {
		if f := l.tokens[k].figure; f != nil && f.role == asAngle && (f.v == 90 || f.v == 45) {
			return true
		}
	}
	return false
}

// ways is how many ways a valve is said to have, 3 or 4; else 0.
func (l *line) ways() int {
	for k := range l.tokens {
		if l.tokens[k].value(classAttr) == "three-way" {
			return 3
		}
		f := l.tokens[k].figure
		if f == nil {
			continue
		}
		if f.role == asWays {
			return int(l.norm[l.tokens[k].from] - '0') // 5/2: five ports
		}
		next := l.beside(k, 1)
		if next.mark == '-' && next.glued {
			next = at(l.tokens, k+2)
		}
		if (f.v == 3 || f.v == 4 || f.v == 5 && l.is(spool)) && next.role(classAfter) == asCount {
			return int(f.v)
		}
	}
	return 0
}

// evenBody reports whether a part of which one cone or tube is said has the same
// at its other end: an equal or straight body, not a stud, a nut or a plug.
func (l *line) evenBody(c *phrase) bool {
	if l.shape != nil && !l.is(body) || len(c.sexes) > 0 || c.described() && c.fig.kind != coneSize {
		return false
	}
	even := false
	if l.hasWord("tailpiece") {
		return false // it has a tail at one end, and something else holds the other
	}
	for k := range l.tokens {
		v := l.tokens[k].value(classAttr)
		even = even || v == "equal"
		if v == "stud" || v == "nut" || l.tokens[k].is(classFamily) != nil && l.tokens[k].is(classFamily).has("female") {
			return false
		}
	}
	return even && (c.fig.kind == coneSize || plainFamilies(c.end) != nil)
}

// sameFigure reports whether two ends have one size, said once or twice.
func (c *phrase) sameFigure(o *phrase) bool {
	return c.fig == o.fig || c.fig != nil && o.fig != nil && c.fig.kind == o.fig.kind && c.fig.v == o.fig.v && c.fig.pitch == o.fig.pitch
}

func copyOf(c *phrase) *phrase { d := *c; return &d }

// threeOf makes a tee of two ends: tubes and tails are the run, else the first
// size is.
func (l *line) threeOf(ends []*phrase) []*phrase {
	a, b := ends[0], ends[1]
	if l.branchFirst(a, b) {
		return []*phrase{b, copyOf(b), a}
	}
	if b.attr&isTwo != 0 && a.attr&isTwo == 0 || l.is(tee) && l.bothOf(a, b) {
		return []*phrase{a, b, copyOf(b)}
	}
	if threadLike(a) && !threadLike(b) {
		return []*phrase{b, a, copyOf(b)}
	}
	if first, other := l.sidesOf(a, b); first == "run" && other == "branch" {
		return []*phrase{a, copyOf(a), b}
	}
	if third := copyOf(b); a.sameFigure(b) && len(a.sexes) == 1 && len(b.sexes) == 1 && a.sexes[0] != b.sexes[0] {
		third.sexes, third.bothSexes = nil, true // tee 1/2 M/F: which of the two it has twice is not said
		return []*phrase{a, b, third}
	}
	return []*phrase{a, copyOf(a), b}
}

// bothOf reports that both ends are said of the second of two: tee G 1/2 male, G 1/4 female both ends.
func (l *line) bothOf(a, b *phrase) bool {
	return a.to <= b.from && anyToken(l.tokens, func(it *token) bool { return it.value(classAttr) == "both" && it.from >= a.to })
}

// nutWith reports that the nut is said to come with the part: union 3/4 with nut.
func (l *line) nutWith() bool {
	k := indexToken(l.tokens, func(it *token) bool { return it.value(classAttr) == "nut" })
	return k > 0 && (l.together(k-1) || string(l.norm[l.tokens[k].from:l.tokens[k].to]) == "ナット" || at(l.tokens, k+1).value(classSep) == "weak")
}

// nutWord is the word for the nut.
func (l *line) nutWord() string {
	k := indexToken(l.tokens, func(it *token) bool { return it.value(classAttr) == "nut" })
	return l.words(l.tokens[k].from, l.tokens[k].to)
}
