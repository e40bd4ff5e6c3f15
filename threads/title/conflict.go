package title

import (
	"slices"
	"strings"

	"handtight/threads"
)

// meant are the families that a thread's name can stand for, whatever else is said.
var meant = map[string][]threads.Family{
	"BSP": {threads.G, threads.R, threads.Rp, threads.Rc}, "BSPP": {threads.G}, "BSPT": {threads.R, threads.Rc},
	"ISO7": {threads.R, threads.Rp, threads.Rc}, "EN10226-1": {threads.R, threads.Rp},
	"R": {threads.R, threads.Rc, threads.Rp, threads.G}, "RC": {threads.Rc, threads.R}, "RP": {threads.Rp, threads.R},
	"NPT": {threads.NPT, threads.NPTF}, "NPTF": {threads.NPTF, threads.NPT}, "MP": {threads.NPT, threads.NPTF}, "NPSM": {threads.NPSM, threads.NPS},
	"NPS": {threads.NPS, threads.NPSM}, "NPS?": {threads.NPS, threads.NPSM}, "IPS": {threads.NPT, threads.NPSM}, "NH": {threads.NH},
	"UN":  {threads.UN, threads.JIC, threads.ORB, threads.SAE45, threads.ORFS},
	"JIC": {threads.JIC}, "SAE45": {threads.SAE45}, "ORB": {threads.ORB}, "ORFS": {threads.ORFS}, "SAE": {threads.ORB, threads.SAE45, threads.JIC},
	"FLARE": {threads.SAE45, threads.JIC}, "ISO6149": {threads.ISO6149, threads.M},
	"STANDPIPE": {threads.Cone24L, threads.Cone24S}, "24": {threads.Cone24L, threads.Cone24S},
}

// otherWay are the threads that the word taper makes of a parallel one of that size, and parallel of a
// taper one.
var otherWay = map[threads.Family][]threads.Family{
	threads.G: {threads.R, threads.Rc}, threads.R: {threads.G}, threads.Rc: {threads.Rp, threads.G}, threads.Rp: {threads.Rc},
	threads.NPT: {threads.NPSM}, threads.NPTF: {threads.NPSM}, threads.NPSM: {threads.NPT}, threads.NPS: {threads.NPT}, threads.MT: {threads.M},
}

// eitherWay adds the readings that a word against the thread's own taper leaves, and asks which it is.
// Where no thread of that size stands for the word, the end is torn.
func (l *line) eitherWay(c *phrase, r *threads.EndReading, says string) string {
	n := len(r.Candidates)
	for _, e := range r.Candidates[:n] {
		for _, f := range otherWay[e.Family] {
			r.Candidates = addFamily(r.Candidates, f, e.Form.Size, e.Sex)
		}
	}
	r.Candidates = dropTwice(r.Candidates)
	l.dress(c, r.Candidates[n:])
	which := listed(r.Candidates)
	if r.Torn = len(r.Candidates) < 2; r.Torn {
		which = ""
	}
	r.Contrary = !r.Torn
	return "The text says " + says + ". Which is it" + which + "? Look whether the thread narrows, or ask the shop."
}

// conflict is what an end's words say that cannot both be so; "" if they agree.
// Of two families that cannot be one thread both become candidates; so do the taper and the parallel
// thread of one size. An end of which one meaning has no candidate is torn.
func (l *line) conflict(c *phrase, r *threads.EndReading) string {
	if c.fam != nil && c.fam2 != nil && !compatible(c.fam, c.fam2) {
		other := *c
		other.fam, other.fam2 = c.fam2, nil
		if ends := l.threads(&other); len(ends) > 0 && c.fig != nil && c.fig.kind != metricSize {
			l.dress(&other, ends)
			r.Candidates = append(r.Candidates, ends...)
		}
		r.Contrary = true
		return "The text calls the thread both " + l.spelled(c.fam) + " and " + l.spelled(c.fam2) + ". Which is it" + listed(r.Candidates) + "? Look at the letters on the part, or ask the shop."
	}
	if len(r.Candidates) == 0 {
		return ""
	}
	f := r.Candidates[0].Family
	tapered := f.Threaded() && f.Facts().Tapered
	switch {
	case c.fam != nil && c.fig != nil && (c.fig.kind == metricSize || c.fig.kind == coneSize) && f.Threaded() && c.fam.meant != nil && !slices.Contains(c.fam.meant, f):
		r.Torn = true
		return "The size is that of " + r.Candidates[0].Form.Designation + ", and the text says " + l.spelled(c.fam) + ". Which thread is it? Ask the shop."
	case !l.one && strangeSeat(c, f) != "":
		r.Contrary = true
		return "The text says " + strangeSeat(c, f) + ", and " + r.Candidates[0].Form.Designation + " has no such seat. Which is it? Look at the nose, or ask the shop."
	case f == threads.R && c.attr&isStudSeal != 0:
		return l.eitherWay(c, r, "R, a taper thread, and the ring of a stud, which lies under a parallel one")
	case c.attr&isTaper != 0 && c.attr&isParallel != 0 && f.Threaded():
		return l.eitherWay(c, r, "both taper and parallel")
	case !onlyBSP(c) && c.attr&isTaper != 0 && f.Threaded() && !tapered && f != threads.M:
		return l.eitherWay(c, r, "taper, and "+r.Candidates[0].Form.Designation+" is a parallel thread")
	case !onlyBSP(c) && c.attr&isParallel != 0 && tapered && (f != threads.Rc || c.fam.value == "RC"):
		return l.eitherWay(c, r, "parallel, and "+r.Candidates[0].Form.Designation+" is a taper thread")
	case f.Threaded() && r.Candidates[0].Form != nil && c.fam != nil && c.fam.series() != 0 && (f == threads.Cone24L || f == threads.Cone24S) && f != coneFamily(c.fam.series()):
		r.Torn = true
		return "The text says " + l.spelled(c.fam) + ", which is of the other series than " + r.Candidates[0].Form.Designation + ". Which is it, light (L) or heavy (S)? Measure the tube's outside diameter, or ask the shop."
	case !l.one && len(c.sexes) > 0 && (f == threads.Compression || f == threads.Push) && c.end == "COMPRESSION":
		r.Torn = true
		return "The text gives a sex to a compression end, which has no thread. Has the part a thread too, and of what size? Look at the picture, or ask the shop."
	case !l.one && c.sex() == threads.Male && f == threads.Push && c.end == "PUSH" && (l.shape == nil || l.shape.ends != 1 || anyToken(l.tokens, func(it *token) bool { m := it.is(classKind); return m != nil && m.shape.traits&adaptor != 0 })) && len(sizesIn(l.tokens)) == 1 && !anyThreadPhrase(l.tokens):
		return "The text gives one size, and says male and push-in. Is the " + strings.TrimSpace(r.Candidates[0].Size) + " the tube's, or that of a male thread at the other end? Ask for both."
	case !l.one && len(c.sexes) > 0 && c.end == "TUBE" && c.millimetres() && !f.Threaded():
		r.Torn = true
		return "The text gives a sex to the " + strings.TrimSuffix(r.Candidates[0].String(), " push-in") + ", as a thread has. Is it the name of a pipe thread, such as 26 of 26/34 in France, or a tube? Look at the picture, or ask the shop."
	case f.Threaded() && noThread[c.also] != "" && !l.one:
		l.ignore(l.alsoSaid(c), noThread[c.also]+", and the size beside it is a thread's")
	case f.Threaded() && noThread[c.also] != "":
		r.Torn = true
		return "The text names a thread and " + noThread[c.also] + ". Which is the end, " + r.Candidates[0].String() + " or the other? Give each end its own text."
	}
	return ""
}

// anyThreadPhrase reports a word that names a family of threads.
func anyThreadPhrase(tokens []token) bool {
	return anyToken(tokens, func(it *token) bool { return it.is(classFamily) != nil })
}

// contradict lays a family that the line names, and that can be the thread of none of
// its ends, to each of them that names another: which it is, is asked.
func (l *line) contradict(ends []*phrase) {
	for k := 0; k < len(l.tokens); k++ {
		if end := l.codeEnd(k); end > k {
			k = end - 1
			continue
		}
		m := l.tokens[k].is(classFamily)
		if m == nil || m.meant == nil || m.value == "24" && slices.ContainsFunc(ends, (*phrase).threadByForm) {
			continue
		}
		fits := func(c *phrase) bool {
			return c.fam != nil && compatible(c.fam, m) || c.fam2 != nil && compatible(c.fam2, m)
		}
		if slices.ContainsFunc(ends, fits) {
			continue
		}
		for _, c := range ends {
			if c.fam != nil && c.fam2 == nil && c.fam.meant != nil {
				c.fam2 = m
			}
		}
	}
}

// noThread are ends without a thread, in words.
var noThread = map[string]string{
	"BARB": "a hose tail", "BORE": "a hose's bore", "PUSH": "a push-in end", "COMPRESSION": "a compression end", "FERRULE": "a clamp ferrule",
	"PRESS": "a press end", "LAYER": "an end for multilayer pipe", "SOCKET": "a glued or welded end", "SOLDER": "a solder end", "FLANGE": "a flange", "FLARED": "a flared tube end", "QC": "a quick coupling",
	"CAMLOCK": "a cam coupling", "GROOVE": "a grooved end", "AERATOR": "an aerator thread", "BALLCOCK": "a ballcock thread", "LUER": "a luer end", "BANJO": "the eye of a banjo",
}

// alsoSaid is the word for an end that a phrase names beside its thread.
func (l *line) alsoSaid(c *phrase) string {
	for k := range l.tokens {
		it := &l.tokens[k]
		if m := it.is(classEnd); m != nil && m.value == c.also && it.from >= c.from && it.to <= c.to {
			return l.words(it.from, it.to)
		}
	}
	return c.also
}

// onlyBSP reports whether the family is open between taper and parallel until
// such a word is said.
func onlyBSP(c *phrase) bool { return c.fam == nil || c.fam.value == "BSP" }

func compatible(a, b *sense) bool {
	if a.meant == nil || b.meant == nil {
		return true // a word for any thread
	}
	return slices.ContainsFunc(a.meant, func(f threads.Family) bool { return slices.Contains(b.meant, f) })
}

// spelled is the name of a family as the line writes it.
func (l *line) spelled(m *sense) string {
	for k := range l.tokens {
		if slices.Contains(l.tokens[k].word.all(), m) {
			return l.words(l.tokens[k].from, l.tokens[k].to)
		}
	}
	return strings.ToUpper(m.value)
}

func listed(ends []threads.End) string {
	if len(ends) == 0 {
		return ""
	}
	return ", " + sizesOf(ends)
}

// strangeSeat is the cone that the words give a thread which is not made with it: 60 degrees on the 37 of JIC, 24 on a pipe thread; "" if
// there is none.
func strangeSeat(c *phrase, f threads.Family) string {
	switch {
	case f == threads.JIC && c.attr&isCone60 != 0:
		return "a 60 degree cone"
	case f == threads.JIC && c.attr&isCone24 != 0, f == threads.G && c.attr&isCone24 != 0:
		return "a 24 degree cone"
	}
	return ""
}
