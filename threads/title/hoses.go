package title

import (
	"slices"
	"strings"

	"handtight/threads"
)

// looseNut adds the end of a union nut that is named beside a male of its size.
func (l *line) looseNut(ends, rest []*phrase) []*phrase {
	if len(ends) == 1 && ends[0].attr&isNut != 0 && ends[0].sex() == threads.Male && !l.one {
		rest = append(rest[:len(rest):len(rest)], ends[0])
	}
	for _, r := range rest {
		if r.attr&isNut == 0 || len(ends) != 1 || ends[0].sex() != threads.Male || l.one || l.is(ownThread) {
			continue
		}
		nut := copyOf(ends[0])
		nut.sexes, nut.from, nut.to = []threads.Sex{threads.Female}, r.from, r.to
		nut.assumed = r == ends[0]
		ends[0].attr &^= isNut | isSwivel
		return append(ends, nut)
	}
	return ends
}

// dropHoseBore leaves out the bore of a hose that is itself the part, with or
// without made-up ends: it is no end.
func (l *line) dropHoseBore(ends, rest []*phrase) []*phrase {
	if l.one || len(ends) == 0 {
		return ends
	}
	first := ends[0]
	if first.hose && (l.is(hose) && first.described() || l.both && len(ends) == 1 && first.threadByForm()) {
		first.end, first.hose = "", false // hydraulikschlauch 3/8 NPT AG, hose 12L both ends: the thread at its end
	}
	if l.is(hose) && len(ends) == 1 && first.millimetres() && !first.described() && tubeOutsides[first.fig.v] && l.hasWord("tap connector") {
		first.end, first.hose = "TUBE", false // flexible tap connector 15 mm: the pipe that it goes onto
		l.unjudged = append(l.unjudged, otherEndUnsaid)
		return ends
	}
	if last := ends[len(ends)-1]; l.is(hose) && len(ends) == 2 && first.fam != nil && last != first && last.fig != nil && last.fam == nil && len(last.sexes) == 0 && last.part != nil && last.part.traits&hose != 0 && last.fig.kind == inchSize {
		last.end, last.hose = "BARB", true // BSPP female, 5/8" braided hose: what the fitting is on
	}
	if l.is(hose) && onlyBores(ends) || (l.is(hose) || l.shape == nil) && len(ends) == 1 && ends[0].bare() && !ends[0].threadByForm() && ends[0].attr == 0 && (namesStock(rest) || l.is(hose) && first.fig.kind == inchSize && (l.madeTo() || hydraulic(l.norm) && !anyToken(l.tokens, fittingNamed)) && !slices.ContainsFunc(rest, (*phrase).describes)) {
		for _, e := range ends {
			e.fig.role = asBoreOf
		}
		return nil // hose 8 mm inside; hydraulikslange 2-lag 1/2"; hose, 1/2"
	}
	if l.shape == nil && len(ends) == 2 && (first.hose && first.endFirst || slices.ContainsFunc(rest, func(c *phrase) bool { return c.hose && c.to <= first.from })) && boreByOutside(ends) {
		for _, e := range ends {
			e.fig.role = asBoreOf
		}
		return nil // wąż 10x17: what it is inside and outside
	}
	if len(ends) > 1 && first.hose && first.endFirst && !first.described() && ends[1].plus {
		first.fig.role = asBore // hose 3/4 + nipple 3/4: two parts, and the hose is no end
		return ends[1:]
	}
	if !first.threadByForm() && (l.shape == nil || l.shape.rank <= 1 || l.is(hose)) && l.byTheRoll(ends) {
		return l.rollEnds(ends)
	}
	if last := ends[len(ends)-1]; l.is(hose) && len(ends) > 1 && last.inner && last.millimetres() && !last.described() && !first.millimetres() {
		last.fig.role = asBoreOf
		return ends[:len(ends)-1] // hydraulic hose 1" ..., inner diameter 13 mm
	}
	if l.is(hose) && l.both && len(ends) == 2 && first.described() && !ends[1].described() && ends[1].fig != nil && ends[1].fig.kind == inchSize && (ends[1].end == "BORE" || ends[1].inner || ends[1].bare()) {
		ends[1].fig.role = asBoreOf
		return ends[:1] // hose JIC 6 F both ends, 3/8 bore
	}
	if l.is(hose) && len(ends) > 2 && first.inner && !first.described() && ends[1].described() && ends[2].described() {
		first.fig.role = asBoreOf
		return ends[1:] // hose assy 3/8 id, -6 JIC F swivel one end, 3/8 MNPT other
	}
	if (l.is(hose) || l.shape == nil && l.namesHose()) && len(ends) > 1 && first.end == "BORE" && !first.described() && slices.ContainsFunc(ends[1:], (*phrase).described) {
		first.fig.role = asBoreOf
		return l.dropHoseBore(ends[1:], rest) // hose 1/4 bore, one end 1/4 BSP F
	}
	if (l.is(hose) || l.shape == nil && l.namesHose()) && len(ends) == 1 && first.end == "BORE" && !first.described() {
		first.fig.role = asBoreOf
		return nil // hose R7 3/8 bore, by the metre
	}
	if rest := l.withoutBore(ends); rest != nil {
		return rest
	}
	if l.pipeFirst() && !slices.ContainsFunc(ends, (*phrase).threadByForm) && !slices.ContainsFunc(ends, (*phrase).described) && !slices.ContainsFunc(rest, (*phrase).described) {
		for _, e := range ends {
			if e.fig != nil {
				e.fig.role = asMeasure
			}
		}
		return nil
	}
	if l.ownMeasures(ends) {
		for _, e := range ends {
			e.fig.role = asMeasure
		}
		return nil
	}
	if l.shape != nil && !l.is(hose) {
		return ends
	}
	if (l.shape == nil || l.is(hose)) && l.connector(ends) {
		return ends
	}
	if l.shape == nil && len(ends) == 1 && first.end == "TUBE" && first.endFirst && first.millimetres() && first.fam == nil && !first.thread && first.sex() != threads.NoSex {
		first.sexes = nil // PE-rør udv. 10 mm: the outside of the pipe
	}
	if l.shape == nil && len(ends) == 1 && first.hose && first.round && first.millimetres() && first.fam == nil && !first.thread {
		first.sexes = nil // tuyau Ø25 int.: its inside
	}
	if l.shape == nil && allStock(ends) && !slices.ContainsFunc(ends, (*phrase).threadByForm) && (first.endFirst || l.tubing()) && !l.both && !l.says("PUSH") && !l.says("COMPRESSION") {
		for _, e := range ends {
			if e.fig != nil {
				e.fig.role = asMeasure
			}
		}
		return nil // a length of hose or pipe
	}
	if l.is(hose) && allNominalBores(ends) {
		for _, e := range ends {
			e.fig.role = asBoreBeside
		}
		return nil // hose 2SC DN10: its bore
	}
	if first.hose && first.endFirst && first.fam != nil && l.both && l.shape == nil {
		l.shape, first.end, first.hose = l.lex.shapes["hose"], "", false // hose 1/2 BSP swivel ends
		return ends
	}
	whole := l.is(hose) && l.both && len(ends) > 1 // 3/8 hose, JIC -6 female both ends
	if !first.hose || !first.endFirst && !whole || first.described() || len(ends) == 2 && l.shape == nil {
		return ends
	}
	if l.shape == nil {
		l.shape = l.lex.shapes["hose"]
	}
	if l.connects() && first.millimetres() && tubeOutsides[first.fig.v] && len(ends) == 2 && !l.layers() {
		first.end, first.hose = "TUBE", false // flexible connector hose 10 mm x 1/2 BSP: as it stands, from a tube to a tap
		return ends
	}
	if first.fig == nil {
		return ends
	}
	first.fig.role = asBoreOf
	return ends[1:]
}

// threadByForm reports a size that only a thread has: M18x1.5, 12L.
func (c *phrase) threadByForm() bool {
	return c.fig != nil && (c.fig.kind == metricSize && c.fig.pitch > 0 || c.fig.kind == coneSize)
}

// fittingNamed reports a word for the fitting of a hose: complete hydraulic hose with fitting 1".
func fittingNamed(it *token) bool {
	m := it.is(classKind)
	return m != nil && m.shape.traits&hose == 0 && m.shape.ends >= 0
}

// describes reports whether words without a size speak of an end that is no hose's.
func (c *phrase) describes() bool { return c.described() || c.end != "" && !c.hose }

// boreByOutside reports two sizes in mm of a hose of which no word says that it has ends, the larger less than twice
// the other.
func boreByOutside(ends []*phrase) bool {
	for _, e := range ends {
		if !e.millimetres() || e.described() || e.barbed || e.attr != 0 || e.end == "PUSH" || e.end == "COMPRESSION" || e.end == "QC" {
			return false
		}
	}
	a, b := ends[0].fig.v, ends[1].fig.v
	return a != b && max(a, b) < 2*min(a, b)
}

// madeTo reports a standard that hose is made to: hydraulic hose R2AT 5/8" is hose by the metre.
func (l *line) madeTo() bool {
	return anyToken(l.tokens, func(it *token) bool { return it.value(classNoise) == "hose" })
}

// pipeFirst reports a line that begins with the word for pipe or tube, with its material before it or not, and names no fitting and
// no end: Rohr nahtlos; 12x1,5.
func (l *line) pipeFirst() bool {
	if l.one || l.shape != nil && l.shape.ends >= 0 && !l.is(serves) || l.parts {
		return false
	}
	noun := -1
	inches := func(k int) bool { f := at(l.tokens, k).figure; return f != nil && (f.frac || f.marked) && f.v >= 0.125 }
	for k := range l.tokens {
		it := &l.tokens[k]
		v := it.value(classEnd)
		switch {
		case it.value(classSep) == "x" && inches(k-1) && inches(k+1):
			return false // flexible tube 3/4" x 1/2": its two ends
		case noun < 0 && (v == "TUBE" || v == "TUBING"):
			noun = k
		case noun < 0 && it.is(classMaterial) == nil && it.is(classGrade) == nil && it.mark != '-' && (it.is(classNoise) == nil || it.figure != nil), it.is(classFamily) != nil, it.is(classSex) != nil, it.value(classAttr) == "both":
			return false
		case noun >= 0 && v != "" && v != "TUBE" && v != "TUBING" && v != "ROUND", it.value(classSep) == "x" && !it.glued && it.to-it.from == 1, it.is(classKind) != nil && it.is(classKind).shape.ends >= 0 && it.is(classKind).shape.traits&serves == 0:
			return false
		}
	}
	return noun >= 0
}

// pipeNoun reports an English word for pipe, which stands last where it is what the line names: 15 mm copper pipe.
func pipeNoun(word string) bool {
	return endsIn(word, "pipe", "pipes", "tube", "tubes")
}

// tubing reports whether tubing or hose itself is what the line names last, and every word is understood.
func (l *line) tubing() bool {
	named := false
	for k := range l.tokens {
		it := &l.tokens[k]
		if it.unread && !it.code {
			return false
		}
		if it.figure == nil || it.figure.role != asLength {
			end := it.value(classEnd)
			named = end == "TUBING" || end == "HOSE" || pipeNoun(string(l.norm[it.from:it.to])) && (end == "TUBE" && l.material != "" || end == "PEX")
		}
	}
	return named
}

// onlyBores reports whether every size of a hose is in millimetres and no word names an end.
func onlyBores(ends []*phrase) bool {
	for _, e := range ends {
		inside := e.hose && e.fig != nil && e.fig.kind == inchSize // hose 3/8 ID
		if !e.millimetres() && !inside || e.threadByForm() || e.fam != nil || e.thread || e.end != "" && !e.hose && e.end != "TUBE" {
			return false
		}
	}
	return true
}

// namesStock reports words without a size that name hose itself, and no end of it.
func namesStock(rest []*phrase) bool {
	stock := false
	for _, r := range rest {
		if r.describes() {
			return false
		}
		stock = stock || r.hose
	}
	return stock
}

// allStock reports whether every size is a hose's or a pipe's own: its bore, its
// outside, its wall.
func allStock(ends []*phrase) bool {
	for k, e := range ends {
		if e.described() || !e.hose && e.end != "TUBE" && (k == 0 || e.end != "") {
			return false
		}
	}
	return true
}

// connector reports a short hose with its ends on, of which only the sizes are
// said (hose 1/2 x 3/8 40 cm; supply line 3/4 x 3/4, 18 in), and makes its ends threads.
func (l *line) connector(ends []*phrase) bool {
	if len(ends) != 2 || !allStock(ends) {
		return false
	}
	short := false
	for k := range l.tokens {
		if f := l.tokens[k].figure; f != nil && f.role == asLength {
			text := strings.ToLower(l.words(l.tokens[k].from, l.tokens[k].to))
			short = short || endsIn(text, "cm", "см", "سم") || f.v <= longestSupply/12 && endsIn(text, "feet", "ft", "foot") || l.is(hose) && f.v <= longestSupply && endsIn(text, `"`, "in", "inch")
		}
	}
	for _, e := range ends {
		if e.fig == nil || e.fig.kind != inchSize || e.round || e.pex {
			return false
		}
	}
	if !short {
		return false
	}
	l.shape = l.lex.shapes["hose"]
	for _, e := range ends {
		e.end, e.hose, e.thread = "", false, true
	}
	return true
}

// longestSupply is the longest of the hoses in inches that are sold with their ends on to join a tap or a toilet.
// A judgement.
const longestSupply = 72

// endsIn reports whether a length's text ends in one of the units.
func endsIn(text string, units ...string) bool {
	for _, u := range units {
		if strings.HasSuffix(text, u) {
			return true
		}
	}
	return false
}

// shortestRoll is the length in metres from which hose and pipe are taken to be sold by their
// length: made-up hoses of taps and sinks are shorter. A judgement.
const shortestRoll = 3

// shortestReel is the same where the word for hose is used of made-up ones too. A judgement.
const shortestReel = 5

// byTheRoll reports hose or pipe of a length that no fitting has, of whose ends no thread is said.
func (l *line) byTheRoll(ends []*phrase) bool {
	if !anyToken(l.tokens, func(it *token) bool { return it.figure != nil && it.figure.role == asLength }) {
		return false
	}
	stock := l.hasWord("pipe")
	for k := range l.tokens {
		m := l.tokens[k].is(classEnd)
		stock = stock || m != nil && (m.value == "HOSE" || m.value == "TUBE" || m.value == "PEX" && l.shape == nil)
	}
	shortest, long := float64(shortestRoll), false
	if !stock {
		shortest, stock = shortestReel, l.is(hose)
	}
	for k := range l.tokens {
		it := &l.tokens[k]
		if f := it.figure; f != nil && f.role == asLength {
			words := strings.Fields(strings.ToLower(l.words(it.from, l.figureEnd(k)))) // 300 mm length
			in := func(units ...string) bool {
				return slices.ContainsFunc(words, func(w string) bool { return endsIn(strings.TrimRight(w, "."), units...) })
			}
			switch {
			case in("cm", "mm", "in", `"`, "″", "см", "мм", "سم", "مم", "ملم"):
			case in("ft", "feet", "foot", "'"):
				long = long || f.v >= shortest*3
			default:
				long = long || f.v >= shortest
			}
		}
	}
	return stock && long && !anyThread(ends) && !slices.ContainsFunc(ends, anySex)
}

// rollEnds are the ends of a roll: the fittings that are named with a size. The sizes of the hose
// itself are none.
func (l *line) rollEnds(ends []*phrase) []*phrase {
	var out []*phrase
	for _, e := range ends {
		switch {
		case e.part != nil && e.part.traits&hose == 0 && !e.endFirst && !e.millimetres():
			e.end, e.hose, e.thread = "", false, true
		case e.hose || e.end == "" || e.end == "TUBE" || e.end == "PUSH":
			e.fig.role = asMeasure
			continue
		}
		out = append(out, e)
	}
	if len(out) > 0 {
		l.shape = l.lex.shapes["hose"]
	}
	return out
}

// gradeDash reports the dash size of a hose behind its grade: 2SN-08, R2AT-6.
func (l *line) gradeDash(k int) bool {
	if at(l.tokens, k-1).mark == '-' && l.tokens[k-1].glued {
		k--
	}
	return !l.one && hoseGradeWord(at(l.tokens, k-1)) && l.tokens[k].glued
}

// withoutBore leaves out the size that only the word hose stands by, where the line gives the threads of a hose by its ends: JIC-6
// female both ends, 3/8 hose R2. nil if there is none.
func (l *line) withoutBore(ends []*phrase) []*phrase {
	if l.shape != nil && !l.is(hose) || l.one || len(ends) < 2 || !l.both && !(l.is(hose) && l.lengthSaid()) && !l.contains(bareEndList) && !(len(ends) > 2 && slices.ContainsFunc(ends, func(e *phrase) bool { return (e.end == "BORE" || e.inner) && !e.described() })) || l.says("BARB") || l.says("PUSH") || l.says("COMPRESSION") {
		return nil
	}
	bore := -1
	for k, e := range ends {
		if e.fig == nil || e.described() || e.barbed {
			continue
		}
		named := e.hose || e.inner || e.end == "BORE" || e.end == "BARB" || (e.end == "TUBE" || e.bare()) && l.gradeWithin(e)
		if !named || bore >= 0 || e.fig.kind != inchSize && e.fig.kind != mmSize && e.fig.kind != dnSize {
			return nil
		}
		bore = k
	}
	if bore < 0 || !slices.ContainsFunc(ends, func(e *phrase) bool { return e.described() && threadLike(e) && e.end == "" }) {
		return nil
	}
	if l.shape == nil {
		l.shape = l.lex.shapes["hose"]
	}
	ends[bore].fig.role = asBoreOf
	return slices.Delete(slices.Clone(ends), bore, bore+1)
}

// gradeWithin reports a grade of hose among the words of an end: 1/4 R2AT, tubo R2T 1/4.
func (l *line) gradeWithin(e *phrase) bool {
	return anyToken(l.tokens, func(it *token) bool { return it.from >= e.from && it.to <= e.to && hoseGradeWord(it) })
}

// hoseGradeWord reports a word for a grade of hose: R2AT, 2SN.
func hoseGradeWord(it *token) bool {
	m := it.is(classNoise)
	return m != nil && m.value == "hose"
}
