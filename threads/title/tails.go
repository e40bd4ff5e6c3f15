package title

import "strings"

// withTail adds the tail of a part that has a thread and a tail, where one size
// stands for both or the tail's is not said.
func (l *line) withTail(ends []*phrase) []*phrase {
	if l.one {
		return ends
	}
	out := l.pad.list(len(ends) + 1)
	for _, e := range ends {
		if e.end == "BARB" && len(ends) == 1 && !e.endFirst && e.bareTail() && l.is(ownThread) && e.fig != nil && e.fig.kind == inchSize {
			e.lone = true // tap 1/2 for hose
		}
		if bore := hoseBore(e, ends); bore != nil && (l.namesHose() || l.namesTail()) {
			out = append(out, e, bore)
			continue
		}
		if e.hose && l.shape == nil && e.end == "BARB" && l.wholeHose(e, ends) {
			l.shape, e.end, e.hose = l.lex.shapes["hose"], "", false
		}
		if e.hose && l.shape == nil && e.end == "BARB" && threadLike(e) && len(ends) == 2 && (hasEnd(ends, "PUSH") || hasEnd(ends, "COMPRESSION")) {
			l.shape, e.end, e.hose = l.lex.shapes["hose"], "", false // push fit to BSP hose: its two ends are given
		}
		if e.end == "BARB" && threadLike(e) {
			tail := &phrase{from: e.from, to: e.to, end: "BARB"}
			if !e.endFirst {
				tail.fig = e.fig
			}
			e.end = ""
			if e.fig.kind == dashSize || e.fig.kind == inchSize && dashWord(e.fam) {
				tail.fig = e.fig
			}
			if tail.fig == e.fig && e.fig.kind == inchSize && dashWord(e.fam) && flareThreads[e.fig.v] {
				tail.fig = nil // JIC female 9/16 hose end: of the hose nothing is said
			}
			if hasEnd(ends, "BARB") || l.shape != nil && l.valve() {
				out = append(out, e)
				continue
			}
			out = append(out, e, tail)
			continue
		}
		out = append(out, e)
	}
	return l.pillar(out)
}

// flareThreads are the diameters of flares and flat faces, in inches, that no hose has for its bore. Source: SAE J514.
var flareThreads = map[float64]bool{7.0 / 16: true, 9.0 / 16: true, 11.0 / 16: true, 13.0 / 16: true, 1.0625: true, 1.1875: true, 1.3125: true, 1.4375: true, 1.625: true, 1.6875: true, 1.875: true}

// wholeHose reports whether the word for hose names the part and no tail: the threads at both its ends are
// given, and which threads. Hose F/F 1/2, hose 1/2 NPT male both ends, hose 3/8 BSP F x 3/8 BSP F.
func (l *line) wholeHose(e *phrase, ends []*phrase) bool {
	switch len(ends) {
	case 1:
		if e.fam != nil && e.endFirst && len(e.sexes) > 0 && (l.lengthSaid() || dashWord(e.fam)) {
			return true // hose 300 mm 1/4 NPT M; hose JIC 6 F
		}
		return len(e.sexes) > 1 || l.both && e.endFirst && (e.fam != nil || e.threadFigure())
	case 2:
		if o := ends[0]; e == ends[1] && e.strong && !e.endFirst && e.fam != nil && o.fam != nil && o.end == "" && dashWord(e.fam) && dashWord(o.fam) {
			return true // ORFS -6 fem swivel x ORFS -6 fem swivel hose
		}
		sexes := len(e.sexes) == 1 && len(ends[1].sexes) == 1
		return e == ends[0] && e.endFirst && (e.fam != nil || e.threadFigure() || sexes) && threadLike(ends[1]) && ends[1].end == ""
	}
	return false
}

// hoseBore parts the bore of a garden hose (5/8" garden hose, female) from the
// thread at its end, which comes in one size.
func hoseBore(e *phrase, ends []*phrase) *phrase {
	if e.fam == nil || e.fam.value != "NH" || e.fig == nil || e.fig.kind != inchSize || e.fig.v == 0.75 || e.fig.v > 1 {
		return nil
	}
	bore := &phrase{from: e.from, to: e.to, end: "BARB", fig: e.fig}
	e.fig, e.end = hoseThread(), ""
	for _, o := range ends {
		if o != e && (o.end == "BARB" || o.fam != nil && o.fam.value != "NH" && o.end == "") {
			return nil // 1/2 FPT x 1/2 MHT: the thread of a half inch hose is that of all
		}
	}
	return bore
}

func dashWord(m *sense) bool { return m != nil && m.has("dash") }

// pillar adds the tail that a hose tail or a tap has without a size of it.
func (l *line) pillar(ends []*phrase) []*phrase {
	if len(ends) == 1 && l.is(tail) && ends[0].end == "BARB" && !ends[0].described() && ends[0].fig != nil && ends[0].fig.kind == inchSize {
		ends[0].lone = true
	}
	if len(ends) == 2 && (l.is(tail) || l.is(adaptor)) && !l.one && !l.reducing && ends[0].bareTail() && ends[1].bareTail() && ends[0].fig.v != ends[1].fig.v {
		ends[0].lone, ends[1].lone, ends[0].paired, ends[1].paired = true, true, true, true // hose tail 1/2 x 3/4: one of them may be the thread's
	}
	if len(ends) == 2 && l.is(tail) && !l.one && ends[1].bareTail() && !ends[1].barbed && ends[0].fam == nil && threadLike(ends[0]) && ends[0].fig.kind == inchSize && ends[0].fig.v != ends[1].fig.v && l.sexBefore(ends[0].fig) {
		ends[1].lone, ends[1].paired = true, true // male hose tail 3/4 x 1: which of them is male is not sure
	}
	if l.shape == nil || hasEnd(ends, "BARB") || len(ends) != 1 || !threadLike(ends[0]) {
		return ends
	}
	if !l.is(tail) && !(l.is(pillar) && l.pillared()) {
		return ends
	}
	tail := &phrase{from: ends[0].from, to: ends[0].to, end: "BARB"}
	if dashWord(ends[0].fam) && ends[0].fig.kind == inchSize {
		tail.fig, tail.lone = ends[0].fig, true
	}
	return append(ends, tail)
}

// gripSaid is what holds a tube, if the line says one way: pushed in, or compressed.
func (l *line) gripSaid() string {
	switch push, ring := l.says("PUSH"), l.says("COMPRESSION"); {
	case push && !ring:
		return "PUSH"
	case ring && !push:
		return "COMPRESSION"
	}
	return ""
}

// sexBefore reports a sex that stands before a figure and not behind it.
func (l *line) sexBefore(f *figure) bool {
	for k := range l.tokens {
		if l.tokens[k].figure == f {
			return l.beside(k, 1).is(classSex) == nil
		}
	}
	return false
}

// bareTail reports a tail in inches of which nothing else is said.
func (c *phrase) bareTail() bool {
	return c.end == "BARB" && c.fig != nil && c.fig.kind == inchSize && c.fam == nil && len(c.sexes) == 0 && !c.thread
}

func (l *line) pillared() bool {
	for k := range l.tokens {
		if m := l.tokens[k].is(classEnd); m != nil && m.value == "BARB" {
			return true
		}
	}
	return false
}

// nameTubes says what an end in millimetres without a word of its own is, from
// the words of the line.
func (l *line) nameTubes(ends, rest []*phrase) {
	word := ""
	for _, c := range append(append(l.pad.list(len(rest)+len(ends)), rest...), ends...) {
		if c.end != "" && (word == "" || word == "TUBE") && c.end != "QC" {
			word = c.end
		}
	}
	if word == "BARB" && (l.is(tee) || l.is(elbow)) && l.says("QC") {
		word = "PUSH" // no quick coupling branches: quick connect tee, hose
	}
	if word == "" && !l.one && (l.is(tee) || l.is(elbow)) && l.namesHose() && !anyThread(ends) {
		word = "BARB" // heater hose Y piece 19/19/16
	}
	tubed := false
	for _, e := range ends {
		tubed = tubed || e.millimetres()
	}
	for _, e := range ends {
		if grip := l.gripSaid(); e.hose && !e.barbed && e.end == "BARB" && e.millimetres() && !e.described() && grip != "" && !hasEnd(ends, grip) && !l.one && !l.says("BARB") {
			e.end, e.hose = grip, false // push-in fitting, hose 8 mm: what it takes
			continue
		}
		if e.bare() && !tubed && (e.fig.kind == inchSize || e.fig.kind == dnSize) && !l.one && !anyThread(ends) && (word == "SOCKET" || word == "SOLDER" || word == "PRESS" || word == "LAYER" || word == "FLANGE" && e.fig.kind == dnSize) {
			e.end = word
			continue
		}
		if e.bare() && !l.one && e.fig.kind == inchSize && l.material == "pe" && word == "" && l.is(plainPipe) && !l.is(adaptor) && !l.is(bush) && !anyThread(ends) && !tubed {
			e.end, e.pex, e.fused = "TUBE", true, true // no thread is cut on polyethylene: its elbows and tees take the pipe
			continue
		}
		if e.bare() && !l.one && e.fig.kind == inchSize && l.material == "copper" && word == "" && l.shape != nil && (l.is(elbow) || l.is(tee) || l.shape.name == "coupling" || l.shape.name == "union" && l.hasWord("cobre") || l.shape.name == "cap") && !anyThread(ends) {
			e.end = "COPPER"
			continue
		}
		if e.bare() && e.end == "" && e.fig.kind == dnSize && l.material == "pvc" && !l.one && !anyThread(ends) && word == "" {
			e.end = "SOCKET" // waste and drain pipe by its nominal bore
		}
		if e.pex && !e.fused && e.end == "TUBE" && word == "COMPRESSION" && e.fig != nil && e.fig.kind == inchSize && tubed && l.europe && !l.one {
			e.end, e.thread = "", true // Klemmverschraubung 16x2 3/4" PEX: where pipe is of millimetres, the inches are the thread's
			continue
		}
		if e.pex && e.end == "TUBE" && word != "" && word != "TUBE" && word != "SOLDER" && word != "SOCKET" { // no PEX is soldered or glued
			e.end = word
		}
		if e.bare() && e.fig.kind == dnSize && l.material == "pe" && strings.HasPrefix(l.schedule, "SDR") && !l.one && l.shape != nil && l.shape.ends > 1 {
			e.end = "SOCKET" // fittings of a pipe series are fused
			continue
		}
		if !e.millimetres() || e.end != "" && e.end != "TUBE" {
			continue
		}
		if word == "COMPRESSION" && len(e.sexes) > 0 && l.ironSex() && l.ofIron(e) {
			continue // 25 mm comp x 20 mm MI
		}
		if e.names(hose) && e.strong && e.end == "" && l.shape != nil && !l.is(hose) && !l.one {
			e.end = "BARB" // elbow 1/2 male x hose 12 mm
			continue
		}
		glued := l.shape != nil && l.material == "pvc" && (e.end == "" || e.round && !e.pex)
		switch {
		case glued && (word == "" || word == "TUBE") && !l.is(tail):
			e.end = "SOCKET"
		case word != "" && (e.end == "" || e.round || word != "BARB"):
			e.end = word
			e.lent = e.strange && !l.one
		case l.is(tail) && l.material != "pvc":
			e.end = "BARB"
			e.assumed = l.is(perhaps)
			e.lent = e.strange && !l.one
		case l.material == "copper" && e.end == "" && l.shape != nil && (l.is(elbow) || l.is(tee) || l.is(bush) || l.shape.name == "coupling" || l.shape.name == "cap" || l.shape.name == "reducer"):
			e.end = "COPPER" // fittings of copper are soldered or pressed: EN 1254-1
		case strings.HasPrefix(l.schedule, "SDR") && e.end == "" && l.shape != nil && l.shape.ends > 1:
			e.end = "SOCKET" // fittings of a pipe series are fused or glued
		case l.is(bush) || glued:
			e.end = "SOCKET"
		default:
			e.end = "TUBE"
		}
	}
}

// tailsNamed counts the words for a tail that is a hose's fitting: 1 terminal 3/8 NPT, 1 terminal JIC 9/16-18.
func (l *line) tailsNamed() (n int) {
	for k := range l.tokens {
		if m := l.tokens[k].is(classKind); m != nil && m.shape.traits&tail != 0 {
			n++
		}
	}
	return n
}

// hoseEndByCode reports the fitting of a hose's end by its code and the bore of the hose: DKR 3/8 DN10 Bogen. The bend is the part's own,
// and no second end is screwed to it.
func (l *line) hoseEndByCode() bool {
	if l.one || l.shape != nil && !l.is(elbow) || l.both || l.lengthSaid() {
		return false
	}
	codes, bores := 0, 0
	for k := range l.tokens {
		it := &l.tokens[k]
		if it.value(classEnd) == "HOSE" || it.value(classSep) == "x" && at(l.tokens, k+1).role(classBefore) != asBore {
			return false
		}
		if it.is(classFamily) != nil && hoseEndCodeList.has(l.norm[it.from:it.to]) {
			codes++
		}
		if it.role(classBefore) == asBore && at(l.tokens, k+1).figure != nil {
			bores++
		}
	}
	return codes == 1 && bores == 1
}

// boreOfTail reports the nominal bore at k of a part with a tail, beside which no word of a thread stands: Schlauchtülle DN20 x G 1/2 AG. It is that
// of the hose.
func (l *line) boreOfTail(k int) bool {
	if l.one || !l.is(tail) || l.is(ownThread|perhaps) || l.lengthSaid() {
		return false
	}
	for _, it := range [...]*token{at(l.tokens, k+1), at(l.tokens, k-2)} {
		if it.is(classFamily) != nil && it.is(classFamily).value != "24" || it.is(classSex) != nil {
			return false
		}
	}
	return !anyToken(l.tokens, func(it *token) bool { return it.figure != nil && it.figure.kind == mmSize })
}
