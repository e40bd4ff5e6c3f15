package title

import (
	"bytes"
	"slices"

	"handtight/threads"
)

// assignSexes gives each threaded end the sex that its words, its class, its nut
// or its kind of part imply. A sex that only the kind implies is marked assumed.
func (l *line) assignSexes(ends []*phrase) {
	count := 0
	for _, e := range ends {
		if threadLike(e) {
			count++
		}
	}
	l.portsOfManifold(ends)
	l.swivelOfHose(ends)
	l.femaleBody(ends)
	l.sexOfStud(ends)
	oneSided(ends)
	l.oneEnded(ends)
	l.oneSwivel(ends)
	l.nutBeside(ends)
	l.couplingFace(ends)
	if !l.one && l.is(ownThread) {
		for _, e := range ends {
			if e.sex() != threads.Female {
				e.attr &^= isNut | isSwivel // the nut of a through-hull is on its own thread
			}
		}
	}
	if len(ends) == 2 && ends[0].fig == ends[1].fig {
		l.second = ends[1]
	}
	for _, e := range ends {
		l.ownSex(e)
	}
	partSexes(ends)
	l.studSexes(ends)
	if l.one || l.shape == nil {
		return
	}
	l.kindSexes(ends, count)
}

// swivelOfHose gives the swivel of a flare or a flat face on a hose its sex: what turns is the nut. Source: SAE J514, SAE J1453.
func (l *line) swivelOfHose(ends []*phrase) {
	if l.one || !l.is(hose) {
		return
	}
	for _, e := range ends {
		if e.attr&isSwivel != 0 && len(e.sexes) == 0 && e.fam != nil && (e.fam.value == "JIC" || e.fam.value == "ORFS") {
			e.sexes = []threads.Sex{threads.Female}
		}
	}
}

// sexOfStud gives the male that is said before the cone of a stud to its thread, of which none is said: union mâle 10L - 3/8 BSPP.
// The cone is male by its kind.
func (l *line) sexOfStud(ends []*phrase) {
	if l.one || len(ends) != 2 || !l.is(adaptor) && !l.is(union) && !l.is(elbow) {
		return
	}
	cone, thread := ends[0], ends[1]
	if cone.fig == nil || cone.fig.kind != coneSize || cone.sex() != threads.Male || !threadLike(thread) || thread.fig.kind == coneSize || len(thread.sexes) > 0 || thread.attr&isNut != 0 {
		return
	}
	thread.sexes, cone.sexes, cone.assumed = cone.sexes, nil, false
}

// couplingFace takes the flat face from the threads of a hydraulic coupling: it is where its two halves meet.
func (l *line) couplingFace(ends []*phrase) {
	if l.one || !l.is(coupler) && (l.shape == nil || l.shape.name != "coupling" || !hydraulic(l.norm)) {
		return
	}
	for _, e := range ends {
		if threadLike(e) && !flared(e.fam) {
			e.attr &^= isFlat | isWasher
		}
	}
}

// nutBeside takes a nut that comes with a part of two male ends from both of them: nipple 3/4 M/M with nut. Where no
// sex is said the nut may be one end's, and that is asked.
func (l *line) nutBeside(ends []*phrase) {
	if !l.one && l.is(valve) && len(ends) == 2 && ends[0].fig != ends[1].fig && l.withPlainNut() {
		for _, e := range ends {
			if e.attr&isNut != 0 && len(e.sexes) == 0 {
				e.attr &^= isNut
				e.bothSexes, e.nutted = true, true
			}
		}
		return
	}
	if l.one || len(ends) != 2 || ends[0].fig == nil || ends[0].fig != ends[1].fig || ends[0].attr&ends[1].attr&isNut == 0 {
		return
	}
	male := ends[0].sex() == threads.Male && ends[1].sex() == threads.Male
	if !male && (!l.is(nipple) || len(ends[0].sexes)+len(ends[1].sexes) > 0) {
		return
	}
	for _, e := range ends {
		e.attr &^= isNut
		e.bothSexes, e.nutted = !male, !male
	}
	for k := range l.tokens {
		if it := &l.tokens[k]; male && (it.value(classAttr) == "nut" || it.is(classKind) != nil && it.is(classKind).shape.traits&nut != 0) {
			l.ignore(l.words(it.from, it.to), "a nut that comes with the part")
		}
	}
}

// withPlainNut reports a nut of any sort that comes with the part: angle valve 1/2 x 3/8 with nut.
func (l *line) withPlainNut() bool {
	for k := 1; k < len(l.tokens); k++ {
		it := &l.tokens[k]
		text := string(phraseKey(l.norm[it.from:it.to]))
		if text == "s matkou" || text == "s maticou" {
			return true
		}
		if it.value(classAttr) == "nut" && l.together(k-1) && (plainNuts[text] || text == "nut" || text == "matkou" || text == "гайкой") {
			return true
		}
	}
	return false
}

// oneSwivel leaves the swivel nut of a tee or an elbow of flares or cones at one end: its body
// is male at the others, as such bodies are.
func (l *line) oneSwivel(ends []*phrase) {
	if l.one || l.both || !l.is(tee) && !l.is(elbow) || len(ends) < 2 {
		return
	}
	named := false
	for _, e := range ends {
		if e.fig == nil || e.fig != ends[0].fig || e.end != "" || !flared(e.fam) && e.fig.kind != coneSize {
			return
		}
		if len(e.sexes) > 0 {
			if named = e.fam != nil && len(e.fam.sexes) == 1 && e.sex() == threads.Female; !named {
				return
			}
		}
	}
	turns := ends[0].attr & (isNut | isSwivel)
	if turns == 0 && !named {
		return
	}
	for k, e := range ends {
		e.attr &^= isNut | isSwivel
		if k == 0 {
			e.attr |= turns | isSwivel
		} else {
			e.sexes, e.assumed = []threads.Sex{threads.Male}, true
		}
	}
}

// oneSided leaves the sex that is said of one side on the first of the ends of that size: valve G 1/4, male on one side.
func oneSided(ends []*phrase) {
	if slices.ContainsFunc(ends, func(e *phrase) bool { return e.sex() != ends[0].sex() }) {
		return // each has its own
	}
	for k, e := range ends {
		if e.attr&isOneSided != 0 && k > 0 && ends[k-1].fig == e.fig && ends[k-1].fam == e.fam && ends[k-1].attr&isOneSided != 0 {
			e.sexes = nil
			e.attr &^= isNut | isSwivel
		}
	}
}

// femaleBody marks the R of a part whose ends are mostly female, where no word gives a sex: the
// trade writes R 1/2 for a valve with Rp 1/2, and DIN 2999 has called both R.
func (l *line) femaleBody(ends []*phrase) {
	round := l.shape != nil && l.is(femaleRound) && !l.one && !l.stud() && l.teeSex == threads.NoSex
	if l.shape == nil || l.is(madeUp) || l.shape.ends < 1 || len(l.shape.sexes) == 0 && !round || slices.Contains(l.shape.sexes, threads.Male) {
		return
	}
	if round && (len(ends) != l.shape.ends || slices.ContainsFunc(ends, func(e *phrase) bool { return !threadLike(e) })) {
		return // of a tube and a thread, the thread screws in
	}
	for _, e := range ends {
		if len(e.sexes) > 0 || e.bothSexes || threadLike(e) && (e.fam == nil || e.fam.value != "R" || e.part != nil && e.part != l.shape || e.attr&isTaper != 0) {
			return
		}
	}
	for _, e := range ends {
		e.oldR = threadLike(e) && (e.fig == nil || e.fig.dn == 0)
	}
}

// ownSex is the sex that the end's own words imply.
func (l *line) ownSex(e *phrase) {
	if len(e.sexes) > 0 || e.bothSexes || !threadLike(e) {
		return
	}
	switch {
	case e.fam != nil && len(e.fam.sexes) > 0:
		e.sexes = e.fam.sexes
	case e.fam != nil && e.fam.value == "R" && l.is(extension) && !l.one && l.second == e:
		e.sexes, e.assumed = []threads.Sex{threads.Female}, true // the tap screws into it
	case e.fam != nil && e.fam.value == "R" && (e.fig == nil || e.fig.dn == 0) && !e.oldR && e.attr&isNut == 0:
		e.sexes = []threads.Sex{threads.Male}
	case e.fam != nil && (e.fam.value == "RC" || e.fam.value == "RP"):
		e.sexes = []threads.Sex{threads.Female}
	case e.fig != nil && e.fig.suffixed != threads.NoSex:
		e.sexes = []threads.Sex{e.fig.suffixed}
	case e.attr&isNut != 0:
		e.sexes = []threads.Sex{threads.Female}
	case e.attr&isStudSeal != 0 && !l.one:
		e.sexes = []threads.Sex{threads.Male} // the ring of a stud lies on its outside thread
	case e.part != nil && l.shape != nil && e.part != l.shape && !(l.is(ownThread) && e.part.traits&nut != 0) && e.part.ends == 1 && len(e.part.sexes) == 1:
		e.sexes = e.part.sexes
	case e.fig != nil && e.fig.kind == coneSize && !l.one && e.part == nil:
		e.sexes, e.assumed = []threads.Sex{l.coneSex()}, true
	}
}

// partSexes reads 3/4 nippel x 1/2 muffe: two ends, each called by the part that
// has its sex.
func partSexes(ends []*phrase) {
	if len(ends) != 2 || ends[0].part == nil || ends[1].part == nil {
		return
	}
	a, b := ends[0].part.name, ends[1].part.name
	if a == "nipple" && b == "coupling" || a == "coupling" && b == "nipple" {
		for _, e := range ends {
			if len(e.sexes) == 0 && threadLike(e) {
				e.sexes = e.part.sexes[:1]
			}
		}
	}
}

// studSexes gives the male of a "male stud" to the stud and not to the cone.
func (l *line) studSexes(ends []*phrase) {
	stud := l.stud()
	for _, e := range ends {
		if stud && len(e.sexes) == 0 && threadLike(e) && e.fig.kind != coneSize && len(ends) > 1 {
			e.sexes = []threads.Sex{threads.Male}
		}
	}
}

// stud reports whether the part is called a stud: its thread screws in, and its other end is a tube's.
func (l *line) stud() bool {
	for k := range l.tokens {
		if l.tokens[k].value(classAttr) == "stud" {
			return true
		}
	}
	return false
}

// coneSex is male for a body, female for a nut: the cone itself is inside the body's end.
func (l *line) coneSex() threads.Sex {
	if l.is(hose) {
		return threads.Female // a hose has the nut
	}
	if l.is(nut) {
		return threads.Female
	}
	return threads.Male
}

func (l *line) valve() bool { return l.is(valve) }

// sexesSaid counts the words for a sex in the line.
func (l *line) sexesSaid() int {
	n := 0
	for k := range l.tokens {
		if saysSex(&l.tokens[k]) {
			n++
		}
	}
	return n
}

// sex is the one sex of a phrase.
func (c *phrase) sex() threads.Sex {
	if len(c.sexes) == 1 {
		return c.sexes[0]
	}
	return threads.NoSex
}

// swivelOfPart gives the swivel that stands beside the name of an adaptor, before all sizes, to its female end; which end turns is asked.
func (l *line) swivelOfPart(ends []*phrase) {
	if l.one || len(ends) != 2 || l.shape != nil && !l.is(adaptor) {
		return
	}
	male, female := ends[0], ends[1]
	if male.sex() != threads.Male || female.sex() != threads.Female || male.attr&isSwivel == 0 || male.attr&isNut != 0 || male.fam == nil {
		return
	}
	for k := range l.tokens {
		if l.tokens[k].value(classAttr) == "swivel" {
			named := bytes.IndexByte(l.norm[l.tokens[k].from:l.tokens[k].to], ' ') > 0 // swivel adaptor
			if (named || at(l.tokens, k+1).is(classKind) != nil) && !l.figured(k) {
				male.attr &^= isSwivel
				female.swings = female.attr&(isSwivel|isNut) == 0
				female.attr |= isSwivel
			}
			return
		}
	}
}

// portsOfManifold gives the sex that is said of all ends to those that have none, and takes that of a gauge from the port of a manifold that
// is called after it: the port is the manifold's.
func (l *line) portsOfManifold(ends []*phrase) {
	if l.one {
		return
	}
	if l.is(manifold) {
		for _, e := range ends {
			if e.part != nil && e.part.traits&(dial|scaled) != 0 {
				e.part = nil
			}
		}
	}
	all := l.sexOfAll()
	if all == threads.NoSex {
		return
	}
	for _, e := range ends {
		if threadLike(e) && len(e.sexes) == 0 {
			e.sexes = []threads.Sex{all}
		}
	}
}

// sexOfAll is the sex that the word for all stands before: all female, alle IG.
func (l *line) sexOfAll() threads.Sex {
	for k := 1; k < len(l.tokens); k++ {
		m := l.tokens[k].is(classSex)
		before := &l.tokens[k-1]
		if m != nil && len(m.sexes) == 1 && before.to > before.from && before.mark == 0 && allList.has(l.norm[before.from:before.to]) {
			before.unread = false
			return m.sexes[0]
		}
	}
	return threads.NoSex
}

// oneEnded leaves the sex that is said of one end, or of so many, on those alone: elbow 3/8 NPT, one end is male; tee 1/4 NPT, two ends male.
// It must be the only sex that the line says. Of the others it is not said.
func (l *line) oneEnded(ends []*phrase) {
	if l.one || l.both && !l.is(tee) || len(ends) < 2 {
		return
	}
	said := -1
	for k := range l.tokens {
		if len(l.tokens[k].saidSexes()) == 0 {
			continue
		}
		if said >= 0 || len(l.tokens[k].saidSexes()) > 1 {
			return
		}
		said = k
	}
	if said < 0 {
		return
	}
	n, small := l.endsOfSex(said)
	if n == 0 && !small || n >= len(ends) {
		return
	}
	if small && len(ends) == 2 && ends[0].fig != nil && ends[1].fig != nil && ends[0].fig.v != ends[1].fig.v {
		if ends[0].fig.v < ends[1].fig.v {
			ends[1].sexes = nil
		} else {
			ends[0].sexes = nil
		}
		return
	}
	for k, e := range ends {
		if k >= max(n, 1) && e.fig == ends[0].fig && e.sex() == ends[0].sex() {
			e.sexes, e.attr = nil, e.attr&^(isNut|isSwivel)
		}
	}
}

// endsOfSex is how many ends the words beside a sex say it of, 0 if they do not say; small if it is that of the smaller end.
func (l *line) endsOfSex(k int) (n int, small bool) {
	from, to := k, k
	for from > 0 && k-from < 4 && l.tokens[from-1].figure == nil && l.tokens[from-1].mark == 0 && l.tokens[from-1].is(classFamily) == nil {
		from--
	}
	if at(l.tokens, to+1).figure == nil && at(l.tokens, to+1).mark == 0 && at(l.tokens, to+1).to > 0 {
		to++
	}
	if from == to || !l.contains(smallerEndList) && !l.contains(oneEndList) && !l.holds(" end") {
		return 0, false
	}
	text := string(l.norm[l.tokens[from].from:l.tokens[to].to])
	for _, w := range smallerEndList.words() {
		if hasWord(text, w) {
			return 1, true
		}
	}
	word := string(l.norm[l.tokens[k].from:l.tokens[k].to])
	for _, w := range oneEndList.words() {
		if hasWord(text, w) {
			return 1, false
		}
	}
	if hasWord(text, "one "+word+" end") || hasWord(text, "a single "+word+" end") {
		return 1, false
	}
	if hasWord(text, "two ends") || hasWord(text, "two "+word+" ends") {
		return 2, false
	}
	return 0, false
}
