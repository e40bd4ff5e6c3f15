package title

import (
	"math"

	"handtight/threads"
)

// dropMentions leaves out sizes that the line gives again behind those of all the
// ends that the part has: 3/8 x 3/8 nipple, 3/8 NPT (3/8"). What is said of the
// thread the second time holds for the first.
func (l *line) dropMentions(ends []*phrase) []*phrase {
	ends = l.dropGripsAgain(l.dropRestated(l.dropDashAgain(ends)))
	if !l.one && (l.shape == nil || l.is(adaptor) && l.shape.ends == 0) && len(ends) > 2 && (ends[0].whole() || ends[0].gripped()) && (ends[1].whole() || ends[1].gripped()) && ends[1].strong && !l.contains(portsList) {
		all := true
		for _, e := range ends[2:] {
			all = all && e.fig != nil && e.end == "" && !e.plus && (len(e.sexes) > 0 || e.fam != nil) && mentioned(ends[:2], e) && !l.portBefore(e) && (l.shape != nil || len(e.sexes) == 0)
		}
		if all && ends[2].comma {
			for _, e := range ends[2:] {
				e.fig.role = asRepeat
			}
			return ends[:2:2] // 3/4 GHT male to 3/4 NPT male connector, 3/4 male to male hose adapter
		}
	}
	if l.one || l.shape == nil || l.shape.ends < 1 || len(ends) <= l.shape.ends || l.is(many) {
		return ends
	}
	if lead := ends[0]; len(ends) == l.shape.ends+1 && !lead.strong && lead.fam == nil && lead.end == "" && lead.fig != nil && lead.fig.kind == inchSize && !ends[1].strong && ends[1].fam != nil && ends[1].fig != nil && ends[1].fig != lead.fig && ends[1].fig.v == lead.fig.v {
		lead.fig.role = asRepeat
		return ends[1:] // 1/4 hex nipples, 1/4 MNPT x 1/4 MNPT
	}
	first, later := ends[:l.shape.ends:l.shape.ends], ends[l.shape.ends:]
	for _, e := range later {
		if e.fig == nil || e.fig.counted || e.end != "" || e.strong || !mentioned(first, e) || l.portBefore(e) {
			return ends
		}
	}
	for _, e := range later {
		e.fig.role = asRepeat
		for _, o := range first {
			if o.fig == nil || o.fig.v != e.fig.v {
				continue
			}
			if o.fam == nil && o.end == "" && e.fam != nil && !e.fam.has("pre") {
				o.fam, o.fam2 = e.fam, e.fam2
			}
			if len(o.sexes) == 0 && o.end == "" {
				o.sexes = e.sexes
			}
		}
	}
	return first
}

// whole reports an end of which the thread, the size and the sex are said.
func (c *phrase) whole() bool {
	return c.fig != nil && c.fam != nil && c.fam.value != "THREAD" && c.end == "" && len(c.sexes) == 1
}

// gripped reports an end that takes a pipe or a hose of a size.
func (c *phrase) gripped() bool { return c.end != "" && c.fig != nil && c.fam == nil }

// dropDashAgain leaves out the dash size behind a comma that names the thread of an end again: 9/16 x 9/16, 6 JIC.
func (l *line) dropDashAgain(ends []*phrase) []*phrase {
	last := ends[len(ends)-1]
	if l.one || l.is(tee) || l.shape != nil && l.shape.ends > 2 || len(ends) < 3 || !last.comma || last.fig == nil || last.fig.kind != dashSize && !last.fig.whole || !dashWord(last.fam) || last.end != "" {
		return ends
	}
	forms := l.threads(last)
	if len(forms) == 0 || forms[0].Form == nil {
		return ends
	}
	for _, e := range ends[:len(ends)-1] {
		if e.fig != nil && (e.fig.kind == inchSize || e.fig.kind == unSize) && e.end == "" && (len(last.sexes) == 0 || e.sex() == last.sex()) && math.Abs(e.fig.v-forms[0].Form.Major.Inches()) < sameMajor {
			last.fig.role = asRepeat
			return ends[: len(ends)-1 : len(ends)-1]
		}
	}
	return ends
}

// sameMajor is how far in inches the nominal size of a thread may lie from its major diameter.
const sameMajor = 0.003

// dropRestated takes the second half of the ends for the first in other words, where its sizes are those of the
// first half in their order: G 1/4-4 mm, G 1/4 female, 4 mm hose.
func (l *line) dropRestated(ends []*phrase) []*phrase {
	if len(ends) == 3 && !l.one && l.is(adaptor) && ends[1].fig != nil && (ends[1].millimetres() || notJudged[ends[1].end] != "") && threadLike(ends[0]) && ends[0].fig != nil && ends[2].fig != nil && ends[0].fig != ends[2].fig && ends[0].fig.v == ends[2].fig.v && ends[0].fig.kind == ends[2].fig.kind && ends[0].sex() == ends[2].sex() && ends[2].described() && !ends[2].strong {
		ends[2].fig.role = asRepeat
		return ends[:2:2]
	}
	half, cells := len(ends)/2, l.seen.marks.has('|')
	if l.one || half < 2 || len(ends)%2 != 0 || l.is(many) || l.shape == nil && !cells || l.shape != nil && l.shape.ends >= len(ends) {
		return ends
	}
	first, again := ends[:half:half], ends[half:]
	if half == 2 && cells && again[0].fig != nil && first[0].fig != nil && (again[0].fig.v != first[0].fig.v || again[0].fig.kind != first[0].fig.kind) {
		again = []*phrase{again[1], again[0]} // push-in 6 mm - M6x1 | M6x1 male | 6 mm
	}
	for k, e := range first {
		if o := again[k]; e.fig == nil || o.fig == nil || e.fig == o.fig || e.fig.v != o.fig.v || e.fig.kind != o.fig.kind || e.sex() != threads.NoSex && o.sex() != threads.NoSex && e.sex() != o.sex() && !e.assumed {
			return ends
		}
	}
	if first[0].fig.v == first[1].fig.v && first[0].fig.kind == first[1].fig.kind {
		return ends // four like sizes are four ends
	}
	for k, e := range first {
		o := again[k]
		o.fig.role = asRepeat
		if len(o.sexes) > 0 {
			e.sexes = o.sexes
		}
		if e.fam == nil {
			e.fam, e.fam2 = o.fam, o.fam2
		}
		if e.end == "" || e.end == "TUBE" {
			e.end, e.hose = o.end, o.hose
		}
		e.thread, e.attr = e.thread || o.thread, e.attr|o.attr
	}
	return first
}

// dropGripsAgain leaves out a tail or a tube that the line gives again, no x before it, where more ends
// are named than the part has: 19mm nut and tail, 19mm poly to 3/4 BSP. A tail part with a thread has two.
func (l *line) dropGripsAgain(ends []*phrase) []*phrase {
	if l.one || l.shape == nil || l.is(many) {
		return ends
	}
	most := l.shape.ends
	if l.is(tail) && anyThread(ends) {
		most = 2
	}
	out := l.pad.list(len(ends))
	for k, e := range ends {
		if most > 0 && k > 0 && len(ends)-k+len(out) > most && !e.strong && !e.plus && e.fig != nil && e.millimetres() && !e.described() && gripAgain(out, e) {
			e.fig.role = asRepeat
			continue
		}
		out = append(out, e)
	}
	return out
}

// gripAgain reports whether one of the ends is of that size, and of that grip where both say one.
func gripAgain(ends []*phrase, e *phrase) bool {
	for _, o := range ends {
		if o.fig != nil && o.fig != e.fig && o.fig.kind == e.fig.kind && o.fig.v == e.fig.v && (o.end == e.end || o.end == "" || e.end == "" || e.end == "TUBE") && !o.described() {
			if o.end == "" {
				o.end = e.end
			}
			return true
		}
	}
	return false
}

// mentioned reports whether a size is that of one of the ends, and nothing said of
// it is another thread.
func mentioned(ends []*phrase, e *phrase) bool {
	for _, o := range ends {
		if o.fig != nil && o.fig.kind == e.fig.kind && o.fig.v == e.fig.v && (len(e.sexes) == 0 || len(o.sexes) == 0 || e.sex() == o.sex()) && (e.fam == nil || o.fam == nil || compatible(o.fam, e.fam)) && !(o.end == "QC" && e.end == "" && len(e.sexes) > 0) {
			return true
		}
	}
	return false
}

// allNominalBores reports whether all that is said of the ends is a bore.
func allNominalBores(ends []*phrase) bool {
	for _, e := range ends {
		if !e.bare() || e.fig == nil || e.fig.kind != dnSize && !(e.millimetres() && len(ends) == 1) {
			return false
		}
	}
	return true
}

// portBefore reports that a word for a port beside the main ones stands right before the size of an end, or behind it: bypass 3/8.
func (l *line) portBefore(e *phrase) bool {
	from, to := max(0, e.from-longestPort), min(len(l.norm), e.to+longestPort/2)
	text := l.norm[from:to]
	return !l.one && sidePortList.in(text)
}
