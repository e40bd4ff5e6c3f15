package title

import (
	"bytes"
	"math"
	"slices"
	"strings"

	"handtight/pressure/quantity"
	"handtight/threads"
)

// notJudged names ends that this package has no geometry for. They are shown
// among the words not read, and no thread is reported for them.
var notJudged = map[string]string{
	"NST": "fire hose thread", "AERATOR": "aerator thread", "BALLCOCK": "ballcock thread", "PRESS": "press end", "LAYER": "end for multilayer pipe",
	"SOCKET": "glued or welded end", "SOLDER": "solder end", "COPPER": "soldered or pressed end", "FLANGE": "flange", "FLARED": "flared tube end", "QC": "quick coupling", "BSB": "old brass gas thread", "CAMLOCK": "cam coupling", "GROOVE": "grooved end", "INVFLARE": "inverted or double flare", "FLARELESS": "flareless end", "DAIRY": "dairy thread", "LUER": "luer end", "BANJO": "eye of a banjo, which a hollow bolt holds",
}

// camsUnsized names a cam coupling without a size of its own beside the ends that are read.
func (l *line) camsUnsized(ends []*phrase) {
	for k := range l.tokens {
		it := &l.tokens[k]
		if it.value(classEnd) != "CAMLOCK" || len(l.unjudged) > 0 {
			continue
		}
		named := false
		for _, c := range ends {
			named = named || c.from <= it.from && it.from < c.to
		}
		if !named {
			l.unjudged = append(l.unjudged, l.words(it.from, it.to)+" ("+notJudged["CAMLOCK"]+")")
		}
	}
}

// gripsUnsized names an end that the words say and that none of the ends read is, nor is named for: of adaptor 1/2" male,
// slip x FPT the slip.
func (l *line) gripsUnsized(ends []*phrase) {
	for k := range l.tokens {
		it := &l.tokens[k]
		m := it.is(classEnd)
		if m == nil || slices.ContainsFunc(ends, func(c *phrase) bool {
			return c.end != "" && c.end != "FERRULE" || c.also == m.value || c.end == m.value || c.from <= it.from && it.to <= c.to && c.end != "FERRULE"
		}) {
			continue // it is read
		}
		if noThread[m.value] == "" || m.value == "BORE" || l.inCode(k) {
			continue
		}
		words := l.words(it.from, it.to)
		told := slices.ContainsFunc(l.unjudged, func(u string) bool { return strings.Contains(u, words) || strings.Contains(u, noThread[m.value]) })
		if !told {
			l.unjudged = append(l.unjudged, words+" (an end of which no size is said)")
		}
	}
}

// dashesUnsized names a flare or an O-ring thread whose size is not said, where no end is read.
func (l *line) dashesUnsized() {
	for k := range l.tokens {
		if it := &l.tokens[k]; dashWord(it.is(classFamily)) {
			l.unjudged = append(l.unjudged, l.words(it.from, it.to)+" (a thread of which no size is said)")
		}
	}
}

// largestPushIn is the largest tube in inches that is sold with push-in ends by the name of hose:
// filters, drinking water, air. A judgement.
const largestPushIn = 0.5

// resolve makes the reading of one phrase; false for an end that is not judged.
func (l *line) resolve(c *phrase) (threads.EndReading, bool) {
	out := threads.EndReading{Words: l.words(c.from, c.to), Sex: c.sex(), Seal: sealSaid(c), Swivel: c.attr&(isSwivel|isNut) != 0}
	if c.fig != nil {
		c.fig.used = true
	}
	name := c.end
	if c.fam != nil && (c.fam.value == "NST" || c.fam.value == "BSB") {
		name = c.fam.value
	}
	if c.fig != nil && c.fig.kind == unSize && c.fig.pitch == 27 && c.fam == nil {
		name = "AERATOR"
	}
	if c.fig != nil && c.fig.special != "" {
		l.unjudged = append(l.unjudged, out.Words+" ("+c.fig.special+")")
		return out, false
	}
	if what := notJudged[name]; name != "" && what != "" && (name == c.end || c.end == "") {
		l.unjudged = append(l.unjudged, out.Words+" ("+what+")")
		return out, false
	}
	if c.end == "" && c.fam == nil && !c.thread && !c.threaded && l.is(coupler) && c.fig != nil && c.fig.kind == inchSize {
		l.unjudged = append(l.unjudged, out.Words+" (quick coupling)")
		return out, false
	}
	if tube, ok := c.standpipe(); ok {
		out.Sex = threads.Male
		out.Candidates = []threads.End{{Family: threads.Push, Sex: threads.Male, Size: quantity.Exact(float64(tube)) + " mm", Diameter: tube}}
		return out, true
	}
	if name == "BARB" && !l.one && !l.is(tail) && (c.millimetres() && l.hasWord("crimp") || l.hasWord("pex") && l.hasWord("crimp") || l.hasWord("expansion")) {
		c.assumed = true // multilayer pipe is crimped too, and PEX widened over what it goes on
	}
	if name == "BARB" && c.hose && !l.one && l.is(valve) && c.fig != nil && c.fig.kind == inchSize && len(sizesIn(l.tokens)) == 1 {
		c.lone = true // tap 1/2 for a hose
	}
	if l.boreSaid(c) {
		over := *c
		over.fig, over.end = l.nominalBore(c.fig), ""
		if len(over.sexes) == 2 && same(over.sexes) {
			over.sexes = over.sexes[:1] // valve 25 mm F x F
		}
		over.bothSexes = over.bothSexes || len(over.sexes) == 2
		if l.is(nipple) && len(over.sexes) == 0 {
			over.sexes, over.assumed = []threads.Sex{threads.Male}, true
		}
		out.Sex = over.sex()
		c, name = &over, ""
	}
	if plain := plainFamilies(name); plain != nil && !(c.fam != nil && name == "TUBE") && !c.threadFigure() {
		out.Sex, out.Seal, out.Swivel = threads.NoSex, threads.NoSeal, false
		if c.pex && name == "TUBE" && !c.millimetres() {
			plain = []threads.Family{threads.Barb, threads.Push, threads.Compression}
		}
		if name == "BARB" && c.hose && !l.one && !l.dashes && c.fig != nil && (l.shape == nil && c.fig.kind == inchSize && c.fig.v <= largestPushIn || c.millimetres() && c.fig.v <= largestPushIn*25.4 && l.airTube()) {
			plain = []threads.Family{threads.Barb, threads.Push} // the word for hose is said of small tube too
		}
		out.Candidates = plainEnds(c, plain)
		if name == "TUBE" && l.perhapsBore(c) {
			out.Candidates = append(out.Candidates, l.boreThreads(c)...)
		}
		if len(plain) == 1 && l.perhapsNominal(c) {
			out.Candidates = outsides(c, plain[0])
		}
		if name == "TUBE" && l.one && (c.attr&isPlastic != 0 || plasticMaterials[l.material]) {
			for k := range out.Candidates {
				out.Candidates[k].Plastic = true // a plastic tube takes an insert under its olive
			}
		}
		if name != "TUBE" && c.sex() != threads.Male {
			for k := range out.Candidates {
				if out.Candidates[k].Family == threads.Push || out.Candidates[k].Family == threads.Compression {
					out.Candidates[k].Sex = threads.Female // the word names the socket
				}
			}
		}
		if c.attr&isLong != 0 {
			for k := range out.Candidates {
				out.Candidates[k].Long = true
			}
		}
	} else {
		out.Candidates = l.threads(c)
		l.dress(c, out.Candidates)
		out.Sex = commonSex(out.Candidates, out.Sex)
	}
	if out.Question = l.conflict(c, &out); out.Question == "" {
		out.Question = l.question(c, &out)
	}
	return out, true
}

// airTube reports a line whose hose of a few millimetres may be the tube of a push-in fitting: compressed air is
// named, or no part is.
func (l *line) airTube() bool {
	if l.shape == nil {
		return anyThreadSize(l.tokens)
	}
	if (l.is(elbow) || l.is(adaptor)) && smallMetric(l.tokens) || l.is(valve) || l.shape.name == "throttle" {
		return true
	}
	return bytes.Contains(l.norm, []byte("pneum")) || bytes.Contains(l.norm, []byte("пневм")) || bytes.Contains(l.norm, []byte("气"))
}

// smallMetric reports the M5 or M6 of compressed air.
func smallMetric(tokens []token) bool {
	for k := range tokens {
		if f := tokens[k].figure; f != nil && f.kind == metricSize && f.v <= 6 {
			return true
		}
	}
	return false
}

// anyThreadSize reports a size that can only be a thread's.
func anyThreadSize(tokens []token) bool {
	for k := range tokens {
		if f := tokens[k].figure; f != nil && (f.kind == metricSize || f.kind == inchSize) {
			return true
		}
	}
	return false
}

// standpipe is the tube of the standpipe that the words name, by its own size or by the thread of the
// nut over it: BEL M18x1.5 is a tube of 12 mm.
func (c *phrase) standpipe() (threads.Length, bool) {
	if c.fam == nil || c.fam.value != "STANDPIPE" || c.fig == nil {
		return 0, false
	}
	switch c.fig.kind {
	case coneSize, mmSize:
		return threads.Length(c.fig.v), true
	case metricSize:
		for _, f := range threads.Forms(coneFamily(c.fam.series())) {
			if float64(f.Major) == c.fig.v && (c.fig.pitch == 0 || float64(f.Pitch) == c.fig.pitch) {
				return f.Tube, true
			}
		}
	}
	return 0, false
}

// threadFigure reports whether the size itself can only be a thread's.
func (c *phrase) threadFigure() bool {
	return c.fig != nil && (c.fig.kind == metricSize || c.fig.kind == specialSize || c.fig.kind == coneSize || c.fig.kind == unSize && (c.end != "BARB" || c.fig.v < 0.25))
}

// commonSex is the sex of the candidates if they agree, else what the words say.
func commonSex(ends []threads.End, said threads.Sex) threads.Sex {
	if len(ends) == 0 {
		return said
	}
	for _, e := range ends[1:] {
		if e.Sex != ends[0].Sex {
			return said
		}
	}
	return ends[0].Sex
}

func sealSaid(c *phrase) threads.Seal {
	switch {
	case c.attr&isConeRing != 0, c.attr&isCone60 != 0 && c.attr&isORing != 0:
		return threads.ConeRing
	case c.attr&isStudSeal != 0:
		return threads.StudRing
	case c.attr&isEdge != 0:
		return threads.MetalEdge
	case c.attr&isCone24 != 0:
		return threads.Cone24
	case c.attr&isChamfer != 0:
		return threads.Chamfer
	case c.attr&isCone60 != 0:
		return threads.Cone60
	case c.attr&isCone30 != 0:
		return threads.Cone30
	case c.attr&isWasher != 0:
		return threads.Washer
	case c.attr&isFlat != 0:
		return threads.FlatFace
	case c.attr&isORing != 0:
		return threads.ORing
	}
	return threads.NoSeal
}

// dress puts the seal, the swivel and the like on the candidates.
func (l *line) dress(c *phrase, ends []threads.End) {
	plastic := c.attr&isPlastic != 0 || plasticMaterials[l.material]
	for k := range ends {
		ends[k].Seal = sealSaid(c)
		ends[k].Swivel = c.attr&(isSwivel|isNut) != 0
		ends[k].Plastic = plastic
		ends[k].Long = c.attr&isLong != 0
		ends[k].Left = c.attr&isLeft != 0
		ends[k].Short = c.attr&isShort != 0 && ends[k].Family == threads.NPTF
		if cone := ends[k].Family == threads.Cone24L || ends[k].Family == threads.Cone24S; cone && ends[k].Seal == threads.ORing && ends[k].Sex == threads.Female {
			ends[k].Seal = threads.ConeRing
		}
		if c.fig != nil && c.fig.pin > 0 && ends[k].Family == threads.M {
			ends[k].Seal, ends[k].Nose = threads.NoseRing, threads.Length(c.fig.pin)
		}
		ends[k].ClassA = c.fig != nil && c.fig.classA && ends[k].Family == threads.G
	}
}

// threads lists the threaded ends that the words leave open, likeliest first.
func (l *line) threads(c *phrase) []threads.End {
	if c.fig == nil || c.open {
		return nil
	}
	switch c.fig.kind {
	case metricSize:
		return l.metricEnds(c)
	case coneSize:
		return ofFamily(coneFamily(c.fig.series), coneSize24(c.fig.v, c.fig.series), c.sex())
	case specialSize:
		return ofFamily(threads.PG, "PG"+quantity.Exact(c.fig.v), c.sex())
	case unSize:
		return l.unifiedEnds(c)
	case dashSize:
		return l.dashEnds(c)
	case garbled:
		return nil
	}
	if c.fam != nil && dashWord(c.fam) && c.fam.value != "MP" && c.fam.value != "NPSM" {
		return l.flareInches(c)
	}
	if c.fam != nil && c.fam.value == "UN" {
		return l.unifiedBySize(c)
	}
	return l.pipeEnds(c, c.fig.v)
}

// ofFamily makes the end of a family and size, none if the family has no such size.
func ofFamily(f threads.Family, size string, sex threads.Sex) []threads.End {
	return addFamily(nil, f, size, sex)
}

// addFamily adds the family's end of that size, if it has one.
func addFamily(to []threads.End, f threads.Family, size string, sex threads.Sex) []threads.End {
	form, _ := threads.Find(f, size)
	return addForm(to, form, sex)
}

// addForm adds the end of a form, none if there is no form or it has not the sex.
func addForm(to []threads.End, form *threads.Form, sex threads.Sex) []threads.End {
	if form == nil {
		return to
	}
	if only := form.Family.Facts().Only; only != threads.NoSex {
		if sex != threads.NoSex && sex != only {
			return to
		}
		sex = only
	}
	return append(to, threads.Threaded(form, sex))
}

// pipeEnds are the candidates of an inch pipe size.
func (l *line) pipeEnds(c *phrase, v float64) []threads.End {
	families := l.pipeFamilies(c)
	out := make([]threads.End, 0, len(families))
	for _, f := range families {
		form := inchForm(f, v)
		if c.fig.pitch != 0 && !pitchFits(form, c.fig.pitch) {
			continue
		}
		out = addForm(out, form, c.sex())
	}
	if len(out) == 0 && c.fam != nil && c.fam.value == "R" && c.sex() == threads.Female {
		out = addForm(addForm(nil, inchForm(threads.Rc, v), threads.Female), inchForm(threads.Rp, v), threads.Female)
	}
	if len(out) == 0 && c.fam != nil && (c.fam.value == "RC" || c.fam.value == "RP") && c.sex() == threads.Male {
		out = addForm(nil, inchForm(threads.R, v), threads.Male)
	}
	return out
}

func pitchFits(form *threads.Form, tpi float64) bool {
	return form != nil && math.Abs(form.TPI-tpi) < 0.01
}
