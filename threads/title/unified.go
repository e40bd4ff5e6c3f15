package title

import (
	"math"
	"slices"

	"handtight/pressure/quantity"
	"handtight/threads"
)

var dashFamilies = [...]threads.Family{threads.JIC, threads.ORB, threads.SAE45, threads.ORFS}

// dashText writes a dash size: -8.
func dashText(v float64) string { return "-" + quantity.Exact(v) }

func sameThread(f *threads.Form, thread *figure) bool {
	return math.Abs(f.Major.Inches()-thread.v) < 0.002 && math.Abs(f.TPI-thread.pitch) < 0.01
}

// named are the families that a word for a flare or O-ring end stands for.
func (l *line) named(c *phrase) []threads.Family {
	if c.fam == nil {
		return nil
	}
	switch c.fam.value {
	case "JIC":
		return []threads.Family{threads.JIC}
	case "ORB":
		return []threads.Family{threads.ORB}
	case "ORFS":
		return []threads.Family{threads.ORFS}
	case "SAE45", "FLARE":
		return []threads.Family{threads.SAE45}
	case "SAE":
		if l.hasWord("flare") {
			return []threads.Family{threads.SAE45}
		}
		return []threads.Family{threads.ORB, threads.SAE45}
	}
	return nil
}

// dashEnds are the ends of a dash size; of a pipe thread by dash (8 MP) the inch size.
func (l *line) dashEnds(c *phrase) []threads.End {
	var out []threads.End
	families := l.named(c)
	if families == nil {
		if c.fam != nil {
			return l.pipeEnds(c, c.fig.v/16)
		}
		families = dashFamilies[:]
	}
	for _, f := range families {
		out = addFamily(out, f, dashText(c.fig.v), c.sex())
	}
	return out
}

// flareInches reads "JIC 1/2": the tube's size first, then the thread of that
// diameter.
func (l *line) flareInches(c *phrase) []threads.End {
	var out []threads.End
	for _, f := range l.named(c) {
		out = addFamily(out, f, dashText(c.fig.v*16), c.sex())
	}
	if len(l.named(c)) == 1 && l.named(c)[0] == threads.SAE45 && out != nil {
		return out // a 45 degree flare is called by its tube
	}
	for _, f := range l.named(c) {
		for _, form := range threads.Forms(f) {
			if math.Abs(form.Major.Inches()-c.fig.v) < 0.002 {
				out = append(out, threads.Threaded(form, c.sex()))
			}
		}
	}
	return out
}

// unifiedEnds are the ends with a thread given as 9/16-18: those of its named
// family, or the ports that use the thread and the bare thread itself.
func (l *line) unifiedEnds(c *phrase) []threads.End {
	if c.fam != nil && l.named(c) == nil && c.fam.value != "UN" {
		return l.pipeEnds(c, c.fig.v)
	}
	if families := l.named(c); families != nil {
		return threadOf(families, c)
	}
	if c.attr&isORing != 0 {
		if out := threadOf([]threads.Family{threads.ORB}, c); out != nil {
			return out
		}
	}
	out := threadOf(portOrder(c), c)
	if out == nil || c.fam == nil {
		out = append(out, l.pipeEnds(c, c.fig.v)...)
	}
	return out
}

// portOrder: a female port is mostly an O-ring port, the rest mostly a flare.
func portOrder(c *phrase) []threads.Family {
	if c.attr&isPort != 0 || c.sex() == threads.Female && c.attr&isSwivel == 0 {
		return []threads.Family{threads.ORB, threads.JIC, threads.SAE45, threads.ORFS, threads.UN}
	}
	return []threads.Family{threads.JIC, threads.ORB, threads.SAE45, threads.ORFS, threads.UN}
}

func threadOf(families []threads.Family, c *phrase) []threads.End {
	var out []threads.End
	for _, f := range families {
		for _, form := range threads.Forms(f) {
			if sameThread(form, c.fig) {
				out = append(out, threads.Threaded(form, c.sex()))
				break
			}
		}
	}
	return out
}

// unifiedBySize reads "5/16 UNF", the pitch left out: the threads of that diameter.
func (l *line) unifiedBySize(c *phrase) []threads.End {
	var out []threads.End
	for _, f := range portOrder(c) {
		for _, form := range threads.Forms(f) {
			if math.Abs(form.Major.Inches()-c.fig.v) < 0.002 {
				out = append(out, threads.Threaded(form, c.sex()))
			}
		}
	}
	return out
}

// metricEnds are the ends of a metric thread. A pitch left out is coarse by the
// standard and 1.5 mm or 1 mm on fittings, so both are given.
func (l *line) metricEnds(c *phrase) []threads.End {
	if c.fam != nil {
		switch c.fam.value {
		case "24":
			if out := l.coneByThread(c); out != nil {
				return out
			}
		case "ISO6149":
			return ofFamily(threads.ISO6149, metricText(c.fig.v, c.fig.pitch), c.sex())
		}
	}
	taper := c.attr&isTaper != 0
	if c.fig.pitch >= 75 && l.shape != nil {
		c.fig.pitch /= 100 // M10x100, as French tapware writes a pitch of 1 mm
	}
	if c.fig.pitch != 0 {
		return metricEnd(taper, c.fig.v, c.fig.pitch, c.sex())
	}
	var out []threads.End
	for _, p := range fittingPitches {
		out = append(out, metricEnd(taper, c.fig.v, p, c.sex())...)
	}
	for _, f := range threads.Forms(threads.M) {
		if f.Coarse() && float64(f.Major) == c.fig.v && !taper {
			out = append(out, metricEnd(false, c.fig.v, float64(f.Pitch), c.sex())...)
		}
	}
	return dropTwice(out)
}

// fittingPitches are the pitches that fittings have where the coarse one is
// left, likeliest first: common practice.
var fittingPitches = [...]float64{1.5, 1, 2}

func dropTwice(ends []threads.End) []threads.End {
	out := ends[:0]
	for k, e := range ends {
		twice := false
		for _, o := range ends[:k] {
			twice = twice || o.Family == e.Family && o.Size == e.Size
		}
		if !twice {
			out = append(out, e)
		}
	}
	return out
}

func metricEnd(taper bool, d, pitch float64, sex threads.Sex) []threads.End {
	if taper && sex != threads.Female {
		return ofFamily(threads.MT, metricText(d, pitch), sex)
	}
	return ofFamily(threads.M, metricText(d, pitch), sex)
}

func metricText(d, pitch float64) string {
	if pitch == 0 {
		return "M" + quantity.Exact(d)
	}
	return "M" + quantity.Exact(d) + "x" + quantity.Exact(pitch)
}

// coneByThread finds the 24 degree cones that use a metric thread, of the series that the end's code
// names where it has one of that thread.
func (l *line) coneByThread(c *phrase) []threads.End {
	var out []threads.End
	for _, f := range [...]threads.Family{threads.Cone24L, threads.Cone24S} {
		for _, form := range threads.Forms(f) {
			if float64(form.Major) == c.fig.v && (c.fig.pitch == 0 || float64(form.Pitch) == c.fig.pitch) {
				out = append(out, threads.Threaded(form, c.sex()))
			}
		}
	}
	of := func(e threads.End) bool { return e.Family == coneFamily(c.fam.series()) }
	if c.fam.series() != 0 && slices.ContainsFunc(out, of) {
		out = slices.DeleteFunc(out, func(e threads.End) bool { return !of(e) })
	}
	return out
}
