package title

import (
	"slices"

	"handtight/threads"
)

// relocate moves words that landed on the wrong end, by the rewrites of pairs in
// steps.go: a sex belongs to the thread and not to the tube, a word of a tail or a
// press end to the end without a thread.
func (l *line) relocate(ends []*phrase) {
	if len(ends) > mostEnds || !slices.ContainsFunc(ends, (*phrase).moreThanThread) {
		return
	}
	for _, pass := range pairPasses {
		for _, e := range ends {
			for _, o := range ends {
				if o == e {
					continue
				}
				for k := range pass {
					if r := &pass[k]; r.when(e, o) && r.name != l.skip {
						r.then(e, o)
					}
				}
			}
		}
	}
}

// moreThanThread reports an end that is not only a thread by its words: of two ends that both are, no word moves.
func (c *phrase) moreThanThread() bool {
	return c.end != "" || c.hose || c.barbed || c.millimetres() || c.attr&isCone60 != 0 || c.names(tail)
}

// loneSocket is a male or female adaptor or elbow of glued pipe, of which one end is named:
// the thread is said and the socket is not.
func (l *line) loneSocket(ends []*phrase) {
	e := ends[0]
	named := l.is(adaptor) || l.is(elbow) && e.fam == nil || e.thread && (l.shape == nil || l.shape.ends == 2)
	if len(ends) == 1 && !l.one && named && (e.end == "SOCKET" || e.end == "SOLDER") && len(e.sexes) > 0 && e.fig != nil && !e.millimetres() {
		l.unjudged = append(l.unjudged, "the other end ("+notJudged[e.end]+")")
		e.end, e.thread = "", true
	}
}

// brassInsert opens the last end of a glued elbow, tee or coupling in which brass is named: the insert of a thread, at the branch
// of a tee. Of the other ends nothing changes. Where the words say insert, or the cone of a heating pipe's nut, the thread beside the pipe is
// inside.
func (l *line) brassInsert(ends []*phrase) {
	if len(ends) < 2 {
		return
	}
	if sex := l.besidePipe(ends); sex != threads.NoSex {
		for _, e := range ends {
			if threadLike(e) && len(e.sexes) == 0 && e.fig != nil && e.fig.kind == inchSize && e.attr&isNut == 0 {
				e.sexes, e.assumed = []threads.Sex{sex}, true
			}
		}
		return
	}
	if l.one || l.material == "brass" || !slices.Contains(l.materials, "brass") || anyThread(ends) || !l.is(plainPipe) || l.is(adaptor) || l.is(unequal) || l.is(union) || len(ends) < 2 {
		return
	}
	for _, e := range ends {
		if e.end != "SOCKET" || e.millimetres() {
			return
		}
	}
	last := ends[len(ends)-1]
	last.end, last.thread = "", true
	last.sexes, last.assumed = []threads.Sex{threads.Female}, true
}

// besidePipe is the sex that a thread beside glued or clamped pipe has by custom, where the words tell the sort of part: inside in the insert of
// joelho soldável com bucha de latão 20 mm x 1/2" and at the cone of a heating pipe, outside of an adaptador soldável 25 x 3/4".
func (l *line) besidePipe(ends []*phrase) threads.Sex {
	switch {
	case l.one || !slices.ContainsFunc(ends, (*phrase).millimetres) && !l.says("SOCKET"):
	case l.contains(brassInsertList), l.contains(euroconeList) && l.is(adaptor):
		return threads.Female
	case l.is(adaptor) && l.iberian() && l.says("SOCKET"):
		return threads.Male
	}
	return threads.NoSex
}

// gripAndThread parts a push-in or compression fitting of which one inch size is
// given, and a sex and a thread apart from it: the size is the thread's, and the
// tube's is not said.
func (l *line) gripAndThread(ends, rest []*phrase) []*phrase {
	e := ends[0]
	if l.one || len(ends) != 1 || e.end != "PUSH" && e.end != "COMPRESSION" || e.fig == nil || e.millimetres() || e.described() {
		return ends
	}
	for _, r := range rest {
		if len(r.sexes) == 1 && (r.thread || r.threaded) {
			grip := &phrase{from: e.from, to: e.to, end: e.end}
			e.end, e.thread, e.sexes = "", true, r.sexes
			return []*phrase{e, grip}
		}
	}
	if l.cyrillic() && e.fig.kind == inchSize {
		grip := &phrase{from: e.from, to: e.to, end: e.end}
		e.end, e.thread = "", true // where pipes come in millimetres, inches are the thread's
		return []*phrase{e, grip}
	}
	return ends
}

// cyrillic reports whether the line is written in Cyrillic letters.
func (l *line) cyrillic() bool {
	for i := range l.norm {
		if l.norm[i] == 0xD0 || l.norm[i] == 0xD1 {
			return true
		}
	}
	return false
}

// ownWords corrects ends by their own words.
func (l *line) ownWords(ends []*phrase) {
	for _, e := range ends {
		if e.end == "QC" && (l.is(elbow) || l.is(tee)) {
			e.end, e.snaps = "PUSH", e.fig != nil && e.fig.kind == inchSize && e.fig.v >= largestPushIn // no quick coupling is bent or branches, but those of garden hoses
		}
		if e.hose && e.end == "BARB" && e.millimetres() && (l.is(elbow) || l.is(tee)) && l.says("QC") {
			e.end = "PUSH" // quick connect tee 10 mm hose
		}
		if e.end == "QC" && e.millimetres() {
			e.end, e.snaps = "PUSH", true // a quick connection of so many millimetres takes a tube, or a hose
		}
		if e.end == "QC" && len(ends) == 2 && e.fam == nil && otherNamed(ends, e) {
			continue // coupling, male 1/2, thread female 1/2 NPT: the first is the coupling's own
		}
		if e.end == "QC" && e.fig != nil && (e.threaded || e.thread) {
			if e.thread {
				l.unjudged = append(l.unjudged, "the other end ("+notJudged[e.end]+")")
			}
			e.end, e.thread = "", true // quick coupling 1/2" IG: the thread on its body
		}
		if (e.end == "PUSH" || e.end == "COMPRESSION") && len(ends) == 2 && e.fig != nil && e.fig.kind == inchSize && (len(e.sexes) == 1 || e.thread) && e.fam == nil && (ends[0].millimetres() || ends[1].millimetres()) {
			e.end, e.thread = "", true // conexão instantânea macho 1/8 tubo 6 mm
		}
		if e.end == "PUSH" && len(ends) == 2 && e.endFirst && e.fig != nil && e.fig.kind == inchSize && len(e.sexes) == 1 && e.thread && e.fam == nil {
			if o := otherOf(ends, e); o.end == "TUBE" {
				o.end = "PUSH"
			}
			e.end = "" // conector rápido, rosca macho 1/4, tubo 1/4
		}
		if e.end == "TUBE" && e.round && e.fig != nil && e.fig.kind == inchSize && e.fig.marked && e.described() {
			e.end = "" // rosca interna Ø 3/4"
		}
		if e.end == "BARB" && e.endFirst && e.described() && e.fig != nil && !e.millimetres() && othersHave(ends, e, "BARB") {
			e.end = ""
		}
		if threadLike(e) && e.end != "" && e.fam != nil && e.end != "BARB" && !standsAlone(e) {
			e.also, e.end = e.end, ""
		}
	}
}

// otherOf is the other of two ends.
func otherOf(ends []*phrase, e *phrase) *phrase {
	if ends[0] == e {
		return ends[1]
	}
	return ends[0]
}

// otherNamed reports whether the family of another end is said.
func otherNamed(ends []*phrase, e *phrase) bool {
	return slices.ContainsFunc(ends, func(o *phrase) bool { return o != e && o.fam != nil && o.end == "" })
}

// nutOfTail gives the nut that is named with a hose tail to the thread beside it.
func (l *line) nutOfTail(ends []*phrase) {
	if !l.is(tail) {
		return
	}
	for _, e := range ends {
		for _, o := range ends {
			if e.millimetres() && e.end == "BARB" && e.fam == nil && e.attr&isNut != 0 && threadLike(o) && o.end == "" && o.sex() != threads.Male {
				o.attr |= isNut
				e.attr &^= isNut
				e.thread = false
			}
		}
	}
}

// nutOfTail reports an inch size that the words for a tail with a nut stand before.
func (c *phrase) nutOfTail() bool {
	named := c.end == "BARB" || c.names(tail)
	return named && c.fig != nil && c.fig.kind == inchSize && c.attr&isNut != 0 && len(c.sexes) == 0
}

// sizeAlone reports a size of which no word speaks.
func (c *phrase) sizeAlone() bool {
	return c.fig != nil && c.fam == nil && c.end == "" && len(c.sexes) == 0 && c.attr&isNut == 0
}

// giveNut makes the end a hose's tail, and its nut the other end's.
func (c *phrase) giveNut(o *phrase) {
	const nut = isNut | isSwivel
	o.attr, o.thread = o.attr|c.attr&nut, true
	c.attr, c.thread, c.end, c.endFirst = c.attr&^nut, false, "BARB", true
}

// takesTube reports whether an end is one that takes a tube.
func takesTube(end string) bool {
	switch end {
	case "SOCKET", "SOLDER", "PRESS", "LAYER", "COMPRESSION", "PUSH":
		return true
	}
	return false
}

func othersHave(ends []*phrase, e *phrase, name string) bool {
	for _, o := range ends {
		if o != e && o.end == name {
			return true
		}
	}
	return false
}

// judgedAlone reports whether the words of the end stand behind its size, so
// that the end is theirs and not the part's.
func standsAlone(c *phrase) bool { return !c.endFirst && c.end != "TUBE" && c.fam == nil }

// oneNut leaves a nut its thread: the tube that it holds, or the thread's other
// name, is no further end.
func (l *line) oneNut(ends []*phrase) []*phrase {
	if !l.is(nut) || len(ends) != 2 || l.one {
		return ends
	}
	for k, e := range ends {
		o := ends[1-k]
		if e.fam == nil || o.fam != nil {
			continue
		}
		if o.fig != nil && o.fig.kind == unSize && dashWord(e.fam) {
			o.fam = e.fam
			return []*phrase{o}
		}
		if o.end == "TUBE" || o.bare() {
			return []*phrase{e}
		}
	}
	return ends
}

func anyDescribed(ends []*phrase) bool {
	for _, e := range ends {
		if e.fam != nil {
			return true
		}
	}
	return false
}

// mostEnds is the most ends of a line that its words are moved between: a part has no more, and each is held against each. A judgement.
const mostEnds = 24
