package title

import (
	"slices"

	"handtight/pressure/quantity"
	"handtight/threads"
)

// overNominal is what American copper pipe is larger outside than its nominal size, in inches, at
// every size: 1/2 nominal is 5/8 outside. CPVC and PEX of copper tube size are made to it. Source:
// ASTM B88, as memory has it.
const overNominal = 1.0 / 8

// leastNominal is the smallest size that stops and couplings of houses are given by nominally: below
// it, such ends are for small tube, which is called by its outside. A judgement.
const leastNominal = 0.5

// nominalSizes gives an end that takes a pipe the outside of the pipe whose nominal size is said: 1/2
// nom comp is for 5/8 outside. An outside that stands behind it too, 1/2 nom comp (5/8 OD), is no
// further end.
func (l *line) nominalSizes(ends []*phrase) []*phrase {
	if !slices.ContainsFunc(ends, func(e *phrase) bool { return e.attr&isNominal != 0 }) {
		return ends
	}
	out := l.pad.list(len(ends))
	for _, e := range ends {
		if e.attr&isNominal != 0 && e.takesPipe() && e.fig.kind == inchSize {
			e.fig.used = true
			outside := *e.fig
			outside.v += overNominal
			e.fig, e.round = &outside, true
		} else if e.end == "TUBE" && !e.strong && !e.described() && e.fig != nil && len(out) > 0 && out[len(out)-1].fig != nil {
			if last := out[len(out)-1]; last.attr&isNominal != 0 && last.fig.v == e.fig.v && last.fig.kind == e.fig.kind {
				e.fig.role = asRepeat
				continue
			}
		}
		out = append(out, e)
	}
	return out
}

// takesPipe reports whether an end of some size holds a pipe by its outside.
func (c *phrase) takesPipe() bool {
	return c.fig != nil && !c.described() && (c.end == "COMPRESSION" || c.end == "PUSH" || c.end == "TUBE")
}

// perhapsNominal reports whether an end that holds a pipe may be given by the pipe's nominal size:
// American plumbing says 1/2 push-fit of pipe that is 5/8 outside, and of tube that is 1/2.
func (l *line) perhapsNominal(c *phrase) bool {
	return !l.one && l.american() && (c.end == "COMPRESSION" || c.end == "PUSH") && c.takesPipe() &&
		c.fig.kind == inchSize && c.fig.v >= leastNominal && !c.round && !c.tubed && !c.pex && !c.hose
}

// outsides are the ends of a size that may be the pipe's outside or its nominal size.
func outsides(c *phrase, family threads.Family) []threads.End {
	over := *c.fig
	over.v += overNominal
	c.outer = true
	return []threads.End{plainEnds(c, []threads.Family{family})[0], plainEnds(&phrase{fig: &over}, []threads.Family{family})[0]}
}

// askOutside asks which of two outsides a size means.
func askOutside(c *phrase, ends []threads.End) string {
	return "Is " + inchText(c.fig.v) + " in the outside of the tube, or the nominal size of a pipe that is " + quantity.Exact(c.fig.v+overNominal) +
		" in outside (" + sizesOf(ends) + ")? Measure the pipe, or ask the shop."
}

// perhapsBore reports whether millimetres of a valve may be its nominal bore, as the trades of Australia, India and
// China write it, and not the outside of a tube: ball valve 20 mm.
func (l *line) perhapsBore(c *phrase) bool {
	for k := range l.tokens {
		if f := l.tokens[k].figure; l.material != "galvanised" && f != nil && f != c.fig && f.kind != bare && f.kind < pressureFigure {
			return false
		}
	}
	return l.ofIron(c) && (l.is(valve) || l.material == "galvanised") && !c.described()
}

// ofIron reports whole millimetres that are a nominal bore, of a part that is not of plastic or copper and of whose end
// no word says that it takes a tube.
func (l *line) ofIron(c *phrase) bool {
	return !l.one && c.millimetres() && (c.end == "" || c.end == "TUBE") && l.lex.bores[int(c.fig.v)] > 0 && c.fig.v <= 50 && !c.tubed && !c.round && !c.pex && !plasticMaterials[l.material] && l.material != "copper"
}

// nominalBore is a figure of millimetres as the nominal bore that it names.
func (l *line) nominalBore(f *figure) *figure {
	bore := *f
	bore.dn, bore.v, bore.kind = f.v, l.lex.bores[int(f.v)], dnSize
	return &bore
}

// boreThreads are the pipe threads of a nominal bore.
func (l *line) boreThreads(c *phrase) []threads.End {
	over := *c
	over.fig, over.end = l.nominalBore(c.fig), ""
	return l.threads(&over)
}

// copperTubes are the outsides in mm of the copper tubes that are nominal bores too, so that of a brass fitting they
// are no bore by the sex beside them alone: EN 1057, as memory has it.
var copperTubes = map[float64]bool{8: true, 10: true, 15: true}

// boreSaid reports millimetres that a sex stands with: a tube has none, so that they are a bore. So are those of a
// nipple of metal, which has threads alone.
func (l *line) boreSaid(c *phrase) bool {
	if !l.ofIron(c) {
		return false
	}
	said := len(c.sexes) > 0 && !c.assumed && (l.is(valve) || l.ironSex() || l.material == "galvanised" || l.material == "brass" && c.fig != nil && !copperTubes[c.fig.v] && l.shape != nil && l.is(nominal))
	return (said || l.is(nipple) && l.material != "") && l.onlyMillimetres()
}

// onlyMillimetres reports a line whose every size is in millimetres that are a bore.
func (l *line) onlyMillimetres() bool {
	for k := range l.tokens {
		if f := l.tokens[k].figure; f != nil && f.kind != bare && f.kind < pressureFigure && (f.kind != mmSize || l.lex.bores[int(f.v)] == 0) {
			return false
		}
	}
	return true
}

// galvanised reports a part of galvanised or malleable iron, which is threaded and sold by its bore.
func (l *line) galvanised() bool {
	return l.material == "galvanised" || l.material == "malleable iron"
}

// ironSex reports FI or MI, female and male iron, which the trades of Australia and South Africa write behind a bore.
func (l *line) ironSex() bool {
	for k := range l.tokens {
		if it := &l.tokens[k]; it.is(classSex) != nil && (l.capital(it.from) && !l.europe || l.galvanised()) {
			switch string(l.norm[it.from:it.to]) {
			case "fi", "mi", "mi x fi", "fi x fi", "mi x mi":
				return true
			}
		}
	}
	return false
}
