package title

import (
	"slices"
	"strings"

	"handtight/threads"
)

// meant are the families that a thread's name can stand for, whatever else is said.
var meant = map[string][]threads.Family{
	"BSP": {threads.G, threads.R, threads.Rp, threads.Rc}, "BSPP": {threads.G}, "BSPT": {threads.R, threads.Rc},
	"R": {threads.R, threads.Rc, threads.Rp, threads.G}, "RC": {threads.Rc, threads.R}, "RP": {threads.Rp, threads.R},
	"NPT": {threads.NPT, threads.NPTF}, "NPTF": {threads.NPTF, threads.NPT}, "MP": {threads.NPT, threads.NPTF}, "NPSM": {threads.NPSM, threads.NPS},
	"NPS": {threads.NPS, threads.NPSM}, "NPS?": {threads.NPS, threads.NPSM}, "IPS": {threads.NPT, threads.NPSM}, "NH": {threads.NH},
	"UN":  {threads.UN, threads.JIC, threads.ORB, threads.SAE45, threads.ORFS},
	"JIC": {threads.JIC}, "SAE45": {threads.SAE45}, "ORB": {threads.ORB}, "ORFS": {threads.ORFS}, "SAE": {threads.ORB, threads.SAE45, threads.JIC},
	"FLARE": {threads.SAE45, threads.JIC}, "ISO6149": {threads.ISO6149, threads.M},
}

// conflict is what an end's words say that cannot both be so; "" if they agree.
// Of two families that cannot be one thread both become candidates.
func (l *line) conflict(c *phrase, r *threads.EndReading) string {
	if c.fam != nil && c.fam2 != nil && !compatible(c.fam.value, c.fam2.value) {
		other := *c
		other.fam, other.fam2 = c.fam2, nil
		if ends := l.threads(&other); len(ends) > 0 && c.fig != nil && c.fig.kind != metricSize {
			l.dress(&other, ends)
			r.Candidates = append(r.Candidates, ends...)
		}
		return "The text calls the thread both " + l.spelled(c.fam) + " and " + l.spelled(c.fam2) + ". Which is it" + listed(r.Candidates) + "? Look at the letters on the part, or ask the shop."
	}
	if len(r.Candidates) == 0 {
		return ""
	}
	f := r.Candidates[0].Family
	name := r.Candidates[0].String()
	tapered := f.Threaded() && f.Facts().Tapered
	switch {
	case c.fam != nil && meant[c.fam.value] != nil && c.fig != nil && f.Threaded() && !slices.Contains(meant[c.fam.value], f) && (c.fig.kind == metricSize || c.fig.kind == coneSize):
		return "The size is that of " + r.Candidates[0].Form.Designation + ", and the text says " + l.spelled(c.fam) + ". Which thread is it? Ask the shop."
	case c.attr&isTaper != 0 && c.attr&isParallel != 0 && f.Threaded():
		return "The text says both taper and parallel. Which is the " + name + "? Look whether the thread narrows, or ask the shop."
	case !onlyBSP(c) && c.attr&isTaper != 0 && f.Threaded() && !tapered && f != threads.M:
		return "The text says taper, and " + r.Candidates[0].Form.Designation + " is a parallel thread. Which is it? Look whether the thread narrows, or ask the shop."
	case !onlyBSP(c) && c.attr&isParallel != 0 && tapered && f != threads.Rc:
		return "The text says parallel, and " + r.Candidates[0].Form.Designation + " is a taper thread. Which is it? Look whether the thread narrows, or ask the shop."
	case l.one && f.Threaded() && noThread[c.also] != "":
		return "The text names a thread and " + noThread[c.also] + ". Which is the end, " + name + " or the other? Give each end its own text."
	}
	return ""
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
		if m == nil || meant[m.value] == nil {
			continue
		}
		fits := func(c *phrase) bool {
			return c.fam != nil && compatible(c.fam.value, m.value) || c.fam2 != nil && compatible(c.fam2.value, m.value)
		}
		if slices.ContainsFunc(ends, fits) {
			continue
		}
		for _, c := range ends {
			if c.fam != nil && c.fam2 == nil && meant[c.fam.value] != nil {
				c.fam2 = m
			}
		}
	}
}

// noThread are ends without a thread, in words.
var noThread = map[string]string{
	"BARB": "a hose tail", "BORE": "a hose's bore", "PUSH": "a push-in end", "COMPRESSION": "a compression end", "FERRULE": "a clamp ferrule",
	"PRESS": "a press end", "SOCKET": "a glued or welded end", "SOLDER": "a solder end", "FLANGE": "a flange", "QC": "a quick coupling",
	"CAMLOCK": "a cam coupling", "GROOVE": "a grooved end", "AERATOR": "an aerator thread", "BALLCOCK": "a ballcock thread",
}

// onlyBSP reports whether the family is open between taper and parallel until
// such a word is said.
func onlyBSP(c *phrase) bool { return c.fam == nil || c.fam.value == "BSP" }

func compatible(a, b string) bool {
	x, y := meant[a], meant[b]
	if x == nil || y == nil {
		return true // a word for any thread
	}
	return slices.ContainsFunc(x, func(f threads.Family) bool { return slices.Contains(y, f) })
}

// spelled is the name of a family as the line writes it.
func (l *line) spelled(m *sense) string {
	for k := range l.tokens {
		if slices.Contains(l.tokens[k].word, m) {
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
