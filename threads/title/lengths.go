package title

import (
	"slices"

	"handtight/threads"
)

// dropLengths leaves out figures that are no ends of the kind of part: a
// nipple's length, a gauge's dial, a hose's bore.
func (l *line) dropLengths(ends []*phrase) []*phrase {
	if l.is(extension) && len(ends) == 1 && ends[0].bare() && ends[0].millimetres() && !l.one {
		ends[0].fig.role = asLength
		return nil
	}
	if l.is(ring) && !l.one && onlyMeasures(ends) {
		for _, e := range ends {
			if e.fig != nil {
				e.fig.role = asRing
			}
		}
		return nil // washer OD 100 x ID 85
	}
	if l.is(saddle) && len(ends) == 2 && ends[0].fig != nil && ends[1].fig != nil && !l.one && !ends[0].millimetres() && ends[0].fig.v > ends[1].fig.v && !ends[0].described() {
		ends[0].fig.role = asWhatFor // saddle 4" x 1": the pipe that it goes round
		return ends[1:]
	}
	if l.shape == nil || len(ends) < 2 || l.one {
		return ends
	}
	out := l.pad.list(len(ends))
	for k, e := range ends {
		if k == 2 && len(ends) == 3 && l.shape.ends == 2 && e.bare() && e.fig != nil && ends[0].fig != nil && ends[1].fig != nil && !l.portBefore(e) && (e.fig.v == ends[0].fig.v || e.fig.v == ends[1].fig.v) && e.fig.kind == inchSize {
			e.fig.role = asRepeat // 1/2 x 3/4 F-F, to go on a 3/4 valve
			continue
		}
		drop := false
		plain := e.bare() && e.fig.kind == inchSize
		if l.is(nipple) && k > 0 && !l.reducing && ends[0].bare() && e.fam != nil && e.fig != nil && (len(e.sexes) == 0 && e.fig.v >= 2*ends[0].fig.v || e.maleOrUnsaid() && e.fig.v >= 3 && e.fig.v >= 4*ends[0].fig.v) && e.fig.v == float64(int(e.fig.v)) {
			ends[0].fam, ends[0].sexes, plain = e.fam, e.sexes, true
		}
		if l.is(nipple) && k > 0 && !l.reducing && ends[0].bare() && e.maleOrUnsaid() && !plain && e.fig != nil && e.fig.kind == inchSize && lengthOfNipple(e.fig.v, ends[0].fig.v) {
			e.fig.perhaps = true // 1 x 1 1/2 NPT is a close nipple, or one that reduces
		}
		switch {
		case l.is(nipple) && k > 0 && plain && !l.reducing && ends[0].fig != nil:
			drop = lengthOfNipple(e.fig.v, ends[0].fig.v)
		case e.end == "BORE" && !l.is(tail) && !l.is(hose) && l.shape.ends > 1 && !e.described():
			drop = true // ball valve 3/4, bore 20 mm
		case l.is(nipple) && k > 0 || l.is(extension):
			drop = e.bare() && e.millimetres() && !l.reducedBore(e, ends[0])
		case l.is(ring) && e.bare() && e.millimetres() && ends[0].fig != nil && ends[0].fig.kind == inchSize:
			drop = true // the pipe that the washer's union is for
		case l.shape.ends == 1 && !l.is(nut):
			drop = e.bare() && anyDescribed(ends) && !l.strangeCap(e)
		case l.is(madeUp):
			if e.bare() && e.fig.kind == dnSize && k == 0 && !ends[1].strong && slices.ContainsFunc(ends[1:], (*phrase).threadFigure) {
				drop = true // РВД DN10, nuts M20x1.5
				break
			}
			bore := e.round || e.end == "BORE" || (!l.connects() || l.layers()) && e.millimetres() && (e.end == "" || e.end == "TUBE")
			drop = (plain || bore && !e.described()) && k == 0 && (anyDescribed(ends[1:]) || !ends[1].strong && slices.ContainsFunc(ends[1:], (*phrase).threadFigure))
		case k == 2 && plain && l.shape.ends <= 2 && !l.is(many):
			drop = e.fig.v >= 1.5
		}
		if drop {
			e.fig.role = asLength
			if l.is(madeUp) {
				e.fig.role = asBoreOf
			}
			continue
		}
		out = append(out, e)
	}
	return out
}

// maleOrUnsaid reports the words of a nipple's length, if it is one: 1/2" x 3" MIP.
func (c *phrase) maleOrUnsaid() bool {
	return len(c.sexes) == 0 || len(c.sexes) == 1 && c.sexes[0] == threads.Male
}

// lengthOfNipple reports whether the second figure of a nipple can be its length in inches: none is shorter than
// half as much again as its size, and short ones come from an inch and a half. Common practice.
func lengthOfNipple(length, size float64) bool { return length >= 1.5 && length >= 1.5*size }

// onlyMeasures reports whether all that is said of the ends are an outside and an inside in
// millimetres or without a size.
func onlyMeasures(ends []*phrase) bool {
	for _, e := range ends {
		if e.described() || e.end != "TUBE" && !e.hose || e.fig != nil && !e.millimetres() {
			return false
		}
	}
	return true
}

// reducedBore reports two nominal bores of a nipple, the second less than the first: no nipple is shorter than it is wide.
func (l *line) reducedBore(e, first *phrase) bool {
	return l.is(nipple) && first.millimetres() && l.ofIron(first) && l.ofIron(e) && e.fig.v < first.fig.v
}

// strangeCap reports a size of a cap or plug with an unread word behind it: a second end
// that the word names (cap 4" TC to 1/2" NPT).
func (l *line) strangeCap(e *phrase) bool {
	return e.strange && l.is(plain) && e.fig.kind == inchSize && !l.one
}
