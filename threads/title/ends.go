package title

import (
	"bytes"
	"slices"

	"handtight/threads"
)

// inherit gives a bare size the family and the sex that its neighbour says for
// both (3/4 x 1/2 female NPT).
func (l *line) inherit(ends []*phrase) {
	tail := l.is(tail)
	for k, e := range ends {
		if k > 0 && !l.one && l.is(hose) && e.bare() && e.attr == 0 && e.fig != nil && e.fig.kind == coneSize && ends[k-1].fig != nil && ends[k-1].fig.kind == coneSize && ends[k-1].attr&isNut != 0 {
			e.attr, e.sexes = ends[k-1].attr, ends[k-1].sexes // nut 12L / 12L of a hose
		}
		if e.fig == nil || e.open || e.end != "" || e.fam != nil || !threadLike(e) || e.fig.kind != inchSize && e.fig.kind != dashSize {
			continue
		}
		if e.fig.hose && !tail && !hasEnd(ends, "BARB") && !l.saysHose() {
			e.end, e.pex = "TUBE", true // a bore or an outside: which is not said
			continue
		}
		if e.fig.hose || tail && e.bare() && l.otherThread(ends, k) && !hasEnd(ends, "BARB") {
			e.end, e.lent = "BARB", e.strange
			continue
		}
		if e.bare() && l.adapts() && l.otherThread(ends, k) && l.sequence(ends) < 2 && !hasEnd(ends, "BARB") && (k > 0 || l.connects() && e.fig.v != ends[len(ends)-1].fig.v) {
			e.open = true
			continue
		}
		if e.bare() && !l.one && hasEnd(ends, "BARB") && e.names(stock) {
			e.open = true // 1/2" pipe to 3/8" barb: how it takes the pipe is not said
			continue
		}
		if e.bare() && !l.one && !anyThread(ends) && l.unevenWord(ends, e) {
			continue
		}
		if e.bare() && !l.one && e.attr&isNut == 0 && !anyThread(ends) && !(e.names(tapThread) && len(ends) == 2 && ends[1-k].millimetres()) {
			if e.end = l.sharedEnd(ends, e); e.end != "" {
				e.lent = e.strange
				continue
			}
		}
		if k > 0 && e.bare() && e.attr == 0 && (grips(ends[k-1].end) || l.is(tee) && plainFamilies(ends[k-1].end) != nil) && ends[k-1].fig.v == e.fig.v && !l.one {
			e.end = ends[k-1].end // press tee 1" x 1" with 1/2" FIP branch
			continue
		}
		if e.bare() && !l.one && l.material == "pe" && l.shape != nil && l.is(plainPipe) && l.neighbour(ends, k) != nil && e.fig.kind == inchSize {
			e.end, e.pex, e.fused = "TUBE", true, true // HDPE elbow 1 x 1/2 NPT male: the other end takes the pipe
			continue
		}
		if n := l.neighbour(ends, k); n != nil {
			was := e.bare()
			if was && (e.strange || l.lost) {
				e.open = true // a word not understood may say another end
				continue
			}
			e.fam, e.fam2 = n.fam, n.fam2
			if was && len(n.sexes) == 1 && len(e.sexes) == 0 && !l.unequal() {
				e.sexes = n.sexes
			}
		}
	}
}

// otherEndUnsaid names an end that a part has and its line says nothing of.
const otherEndUnsaid = "the other end (nothing is said of it)"

// grips reports an end of pipe that is pressed, soldered or glued, which the other end of its size mostly is too.
func grips(end string) bool {
	switch end {
	case "GROOVE", "PRESS", "LAYER", "SOCKET", "SOLDER", "COPPER":
		return true
	}
	return false
}

// saysHose reports whether a word of the line names a hose or its tail.
func (l *line) saysHose() bool {
	for k := range l.tokens {
		if v := l.tokens[k].value(classEnd); v == "HOSE" || v == "BARB" {
			return true
		}
	}
	return false
}

// unequal reports whether the two ends of the part differ in sex by its nature.
func (l *line) unequal() bool {
	return l.is(unequal)
}

// anyThread reports whether the words of some end speak of a thread.
func anyThread(ends []*phrase) bool {
	for _, e := range ends {
		if e.described() {
			return true
		}
	}
	return false
}

// unevenWord opens both ends of a valve of two sizes of which one word says the grip: 1/2 x 3/8
// push-fit stop. Such valves take a thread or another grip at the other end, and the word does not
// say which end it is; a push-in end is rather the larger, where the pipe of the house goes in.
func (l *line) unevenWord(ends []*phrase, bare *phrase) bool {
	if !l.is(valve) {
		return false
	}
	for _, o := range ends {
		if (o.end == "PUSH" || o.end == "COMPRESSION") && o.fig != nil && o.fig.kind == inchSize && o.fig.v != bare.fig.v {
			if o.end == "PUSH" && o.part != nil && bare.fig.v > o.fig.v {
				bare.end, o.end = o.end, ""
				bare, o = o, bare
			}
			bare.open, o.either = true, true
			return true
		}
	}
	return false
}

// sharedEnd is the word of an end that holds for a bare size too (union 3/8 x
// 1/4 compression). Millimetres beside inches are another sort of end, and so is
// the thread of a tap or a through-hull beside its tail.
func (l *line) sharedEnd(ends []*phrase, bare *phrase) string {
	own := l.is(ownThread)
	for _, e := range ends {
		if e.millimetres() && !bare.millimetres() || own && e.end == "BARB" {
			continue
		}
		switch e.end {
		case "COMPRESSION", "PUSH", "BARB", "TUBE":
			return e.end
		}
	}
	return ""
}

// connects reports whether the part is called a connector, as a fitting from a tube to a thread is.
func (l *line) connects() bool {
	return hasWord(string(l.norm), "connector") || hasWord(string(l.norm), "connectors")
}

func (l *line) adapts() bool { return l.is(adaptor) && !l.one }

func (l *line) otherThread(ends []*phrase, k int) bool {
	for j, o := range ends {
		if j != k && len(o.sexes) > 0 && threadLike(o) {
			return true
		}
	}
	return false
}

func hasEnd(ends []*phrase, name string) bool {
	for _, e := range ends {
		if e.end == name {
			return true
		}
	}
	return false
}

// nameFirst reports that the name of an end's thread stands before its size: of 1/4 AG x JIC 7/16 the JIC is the second's alone.
func (l *line) nameFirst(c *phrase) bool {
	named := false
	for k := range l.tokens {
		it := &l.tokens[k]
		if it.from < c.from || it.to > c.to {
			continue
		}
		if it.figure != nil && it.figure == c.fig {
			return named
		}
		named = named || it.is(classFamily) == c.fam
	}
	return false
}

// neighbour finds the nearest end whose family a bare size can share: the one
// behind it first, as the words mostly follow the figures.
func (l *line) neighbour(ends []*phrase, k int) *phrase {
	taper := func(m *sense) bool {
		return m.value == "NPT" || m.value == "NPTF" || m.value == "BSPT" || m.value == "R" || m.value == "RC"
	}
	shares := func(c *phrase) bool {
		return c.fam != nil && !(ends[k].attr&isParallel != 0 && taper(c.fam)) && !c.fam.has("pre") && c.end == "" && c.fam.value != "NH" && (c.fig == nil || c.fig.kind == ends[k].fig.kind)
	}
	if l.one {
		return nil
	}
	for j := k + 1; j < len(ends); j++ {
		if shares(ends[j]) && !(len(ends[k].sexes) > 0 && ends[j].strong && l.nameFirst(ends[j])) {
			return ends[j]
		}
	}
	for j := k - 1; j >= 0; j-- {
		if shares(ends[j]) && !(l.is(adaptor) && len(ends[j].sexes) == 1) {
			return ends[j]
		}
	}
	return nil
}

// multiply gives the part as many ends as its kind has.
func (l *line) multiply(ends []*phrase) []*phrase {
	if l.one || len(ends) == 1 && len(l.unjudged) > 0 {
		return ends // of the other end no size is said
	}
	if len(ends) == 1 && ends[0].end == "BARB" && l.says("QC") {
		l.unjudged = append(l.unjudged, "the other end (quick coupling)")
		return ends
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
	if l.sidePort(ends) {
		l.sided = true
		return []*phrase{ends[0], copyOf(ends[0]), ends[1]} // ball valve 1/2 NPT F with 1/4 NPT F gauge port
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
	if l.both && l.is(vessel) && slices.ContainsFunc(l.tokens, func(it token) bool { return it.value(classAttr) == "pair" }) && !l.feedAndBrine() {
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
	if len(ends) == 1 && (want == 0 && l.is(madeUp) || l.is(elbow) && l.stud() && len(ends[0].sexes) == 1 || l.is(wall) && !l.both || ends[0].end == "BARB" && ends[0].attr&isNut != 0 && ends[0].millimetres()) {
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
	if l.is(tee) && len(ends) == 2 && l.twoOutlets(ends[0], ends[1]) {
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
		brine.brine = ends[0].attr&isTwo == 0 && !l.contains("brine") && !l.contains("ports")
		return []*phrase{ends[0], brine, ends[1]}
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
			other.open, other.strange = other.open || l.lostEnd, other.strange || l.lostEnd // FIP x QJ: a word of the other end is not understood
			ends = append(ends, other)
		}
	}
	return ends
}

// moreThanItHas reports more ends than a part of the kind has, so that some of what was read is none.
func (l *line) moreThanItHas(ends []*phrase) bool {
	switch {
	case l.one || l.shape == nil || l.is(many) || l.is(manifold) || l.ways() > 0 || l.sided && len(ends) == l.shape.ends+1:
		return false
	case l.is(adaptor), l.is(unequal), l.is(tail), l.is(madeUp):
		return len(ends) > 2
	case l.shape.ends == 1:
		return len(ends) > 1 && (l.is(plain) || l.is(dial) || l.is(coupler) && ends[0].end == "" && ends[1].end == "")
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
		f, next := l.tokens[k].figure, l.beside(k, 1)
		if f != nil && f.role == asWays {
			return int(l.norm[l.tokens[k].from] - '0') // 5/2: five ports
		}
		if next.mark == '-' && next.glued {
			next = at(l.tokens, k+2)
		}
		if f != nil && (f.v == 3 || f.v == 4 || f.v == 5 && l.is(spool)) && next.role(classAfter) == asCount {
			return int(f.v)
		}
	}
	return 0
}

// contains reports one of the words of a list anywhere in the text.
func (l *line) contains(name string) bool {
	return slices.ContainsFunc(list(name), func(w string) bool { return bytes.Contains(l.norm, []byte(w)) })
}

// feedAndBrine reports the two ports of a vessel that are named together, feed/brine: of the product something else is said.
func (l *line) feedAndBrine() bool {
	return slices.ContainsFunc(l.tokens, func(it token) bool {
		return it.value(classAttr) == "pair" && bytes.HasPrefix(l.norm[it.from:it.to], []byte("feed"))
	})
}

// namesBrine reports whether a vessel's line speaks of its brine port and not of its
// product, so that two ends are feed and brine and not feed and product.
func (l *line) namesBrine() bool {
	has := func(words ...string) bool {
		return slices.ContainsFunc(words, func(w string) bool { return bytes.Contains(l.norm, []byte(w)) })
	}
	return has("brine", "concentrate", "reject") && !has("product", "permeate")
}

// evenBody reports whether a part of which one cone or tube is said has the same
// at its other end: an equal or straight body, not a stud, a nut or a plug.
func (l *line) evenBody(c *phrase) bool {
	if l.shape != nil && !l.is(body) || len(c.sexes) > 0 || c.described() && c.fig.kind != coneSize {
		return false
	}
	even := false
	for k := range l.tokens {
		v := l.tokens[k].value(classAttr)
		even = even || v == "equal"
		if v == "stud" || v == "nut" || l.tokens[k].is(classFamily) != nil && l.tokens[k].is(classFamily).has("female") {
			return false
		}
	}
	return even && (c.fig.kind == coneSize || plainFamilies(c.end) != nil)
}

// sequence is the number of sexes said one after the other for one phrase.
func (l *line) sequence(ends []*phrase) int {
	n := 0
	for _, e := range ends {
		n = max(n, len(e.sexes))
	}
	return n
}

// spread deals a sequence of sexes (M-F-F) out to the ends.
func (l *line) spread(ends []*phrase, n int) []*phrase {
	var sexes []threads.Sex
	count := 0
	for _, e := range ends {
		if len(e.sexes) == n && sexes == nil {
			sexes = e.sexes
		}
		if threadLike(e) {
			count++
		}
	}
	if count == 1 && len(ends) > 1 && l.shape != nil && l.shape.ends > 0 && len(ends)-1+n > l.shape.ends && !l.is(many) {
		for _, e := range ends {
			e.oneSex() // Muffe IG/IG 22 x 1/2: the tube is one of the two ends
		}
		return ends
	}
	var out []*phrase
	if count == 1 {
		for _, e := range ends {
			if !threadLike(e) {
				out = append(out, e)
				continue
			}
			for i, s := range sexes {
				c := copyOf(e)
				c.sexes = []threads.Sex{s}
				if n == 2 && s == threads.Male && sexes[1-i] == threads.Female && !l.one {
					c.attr &^= isNut | isSwivel // the nut of a part that is male and female is its female's
					if c.attr&isConeRing != 0 {
						c.attr &^= isConeRing // and so are the cone and the ring of a DKOL
					}
				}
				l.ownForm(c, i, n)
				out = append(out, c)
			}
		}
		return out
	}
	if count == 2 && n == 3 {
		ends = l.threeOf(ends)
	}
	if l.is(bush) && count == 2 && n == 2 && sexes[0] != sexes[1] && len(ends) == 2 && ends[0].fig.v != ends[1].fig.v {
		large, small := ends[0], ends[1]
		if large.fig.v < small.fig.v {
			large, small = small, large
		}
		large.sexes, small.sexes = []threads.Sex{threads.Male}, []threads.Sex{threads.Female}
		return ends
	}
	k := 0
	for _, e := range ends {
		if threadLike(e) && k < n {
			if e.attr&isNut != 0 && len(e.sexes) == 0 && sexes[k] == threads.Male && !l.one {
				e.bothSexes = true // nipple G 1/2 male/male with swivel nut G 3/4
			} else {
				e.sexes = []threads.Sex{sexes[k]}
			}
			k++
		}
	}
	return ends
}

// studAndNut parts an end that is called male from the code of a nut beside it, which is the part's other end: male elbow 12L
// with DKOL. Nil if nothing of the kind is said.
func (l *line) studAndNut(ends []*phrase) (male, nut *phrase) {
	if l.one || len(ends) != 1 || l.shape == nil || l.shape.ends != 2 && !l.is(adaptor) {
		return nil, nil
	}
	e := ends[0]
	if e.fam == nil || e.fam.series() == 0 || len(e.fam.sexes) != 1 || e.fam.sexes[0] != threads.Female || len(e.sexes) != 1 || e.sexes[0] != threads.Male {
		return nil, nil
	}
	nut = copyOf(e)
	nut.sexes = e.fam.sexes
	e.attr &^= isNut | isSwivel | isConeRing
	return e, nut
}

// ownForm leaves the i-th of two ends of one phrase the form that is said of it: konisches AG und
// zylindrisches IG.
func (l *line) ownForm(c *phrase, i, n int) {
	if n == 2 && c.sex() == threads.Male && (c.fam != nil && c.fam.series() != 0 || c.fam2 != nil && c.fam2.series() != 0) && c.attr&isConeRing != 0 {
		c.attr &^= isNut | isSwivel | isConeRing // DKOL of an elbow whose other end is male
	}
	if n != 2 || c.attr&isTaper == 0 || c.attr&isParallel == 0 {
		return
	}
	for k := range l.tokens {
		v := l.tokens[k].value(classAttr)
		if v != "taper" && v != "parallel" {
			continue
		}
		if (v == "taper") == (i == 0) {
			c.attr &^= isParallel
		} else {
			c.attr &^= isTaper
		}
		return
	}
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
	if b.attr&isTwo != 0 && a.attr&isTwo == 0 {
		return []*phrase{a, b, copyOf(b)}
	}
	if threadLike(a) && !threadLike(b) {
		return []*phrase{b, a, copyOf(b)}
	}
	if third := copyOf(b); a.sameFigure(b) && len(a.sexes) == 1 && len(b.sexes) == 1 && a.sexes[0] != b.sexes[0] {
		third.sexes, third.bothSexes = nil, true // tee 1/2 M/F: which of the two it has twice is not said
		return []*phrase{a, b, third}
	}
	return []*phrase{a, copyOf(a), b}
}

// inletBetween reports whether a word for the inlet stands in a stretch.
func (l *line) inletBetween(from, to int) bool {
	text := string(l.norm[min(from, to):to])
	for _, w := range list("inlet") {
		if hasWord(text, w) {
			return true
		}
	}
	return false
}

// sidePort reports that the second of two ends of a valve or a filter is the port for a gauge, a drain or a bypass by its words, so that
// the first is that of both its main ports.
func (l *line) sidePort(ends []*phrase) bool {
	if l.one || len(ends) != 2 || l.shape == nil || l.shape.ends != 2 || !l.is(valve) && !l.is(through) {
		return false
	}
	first, second := ends[0], ends[1]
	if l.is(set) && l.inletBetween(0, len(l.norm)) {
		return false // relief valve, inlet 3/8, bypass 1/2: its two ports
	}
	if first.fig == nil || second.fig == nil || first.fig == second.fig || len(first.sexes) == 2 && first.sexes[0] != first.sexes[1] || first.to > second.to {
		return false
	}
	to := second.to
	for to < len(l.norm) && l.norm[to] != ',' && to < second.to+longestPort {
		to++
	}
	text := l.norm[first.to:to]
	return slices.ContainsFunc(list("side-port"), func(w string) bool { return bytes.Contains(text, []byte(w)) })
}

// longestPort is how many bytes behind a size the words for its port end at most.
const longestPort = 24

// onePort gives the port of a relief valve or a pump that the words behind its name do not speak of, where they speak of the other: its ports
// mostly differ. "" if they speak of both or of none.
func (l *line) onePort() string {
	if l.one || l.both || !l.is(set) && !l.is(delivers) {
		return ""
	}
	named := slices.IndexFunc(l.tokens, func(it token) bool { return it.is(classKind) != nil && it.is(classKind).shape.ends >= 0 })
	if named < 0 {
		return ""
	}
	from := l.tokens[named].to
	inlet := l.inletBetween(from, len(l.norm))
	outlet := slices.ContainsFunc(list("outlet"), func(w string) bool { return bytes.Contains(l.norm[from:], []byte(w)) })
	switch {
	case inlet && !outlet:
		return "the outlet"
	case outlet && !inlet:
		return "the inlet"
	}
	return ""
}

// saysOutlet reports a word for the outlet and none for the inlet.
func (l *line) saysOutlet() bool {
	if l.inletBetween(0, len(l.norm)) || bytes.Contains(l.norm, []byte("进")) || bytes.Contains(l.norm, []byte("吸")) {
		return false
	}
	return l.contains("outlet")
}

// twoOutlets reports whether two outlets are counted behind the first of two ends: inlet IG 3/4, 2 outlets AG 3/4.
func (l *line) twoOutlets(first, second *phrase) bool {
	for k := range l.tokens {
		it := &l.tokens[k]
		if f := it.figure; it.from >= first.from && it.to <= second.to && f != nil && f.whole && f.v == 2 && at(l.tokens, k+1).role(classAfter) == asCount && l.inletBetween(0, it.from) {
			return true
		}
	}
	return false
}

// counted reports a word for outlets at k, or behind the names of a thread and its sex that begin there.
func (l *line) counted(k int) bool {
	for at(l.tokens, k).is(classFamily) != nil || at(l.tokens, k).is(classSex) != nil {
		k++
	}
	return at(l.tokens, k).role(classAfter) == asCount
}

// outlets multiplies the last size of a manifold by the number of its outlets.
func (l *line) outlets(ends []*phrase) []*phrase {
	n := 0
	for k := range l.tokens {
		f := l.tokens[k].figure
		next := l.beside(k, 1)
		if next.mark == '-' && next.glued {
			next = at(l.tokens, k+2)
		}
		if f != nil && f.whole && f.v <= 12 && next.role(classAfter) == asCount {
			n = int(f.v)
		}
		if f != nil && f.whole && f.v <= 12 && !f.marked && next.value(classSep) == "x" && at(l.tokens, k+2).figure != nil && l.counted(k+3) {
			n, f.used = int(f.v), true // 4 x 1/2 outlets
		}
	}
	if n == 0 || len(ends) > 2 {
		return ends
	}
	last := ends[len(ends)-1]
	if len(ends) == 2 && ends[0].attr&isTwo != 0 && last.attr&isTwo != 0 {
		ends = append(ends, copyOf(ends[0])) // inlets: a bar with one at each end
	}
	if len(ends) == 2 && l.inletBetween(ends[0].to, ends[1].to) {
		last = ends[0]
	}
	for k := 1; k < n; k++ {
		ends = append(ends, copyOf(last))
	}
	return ends
}
