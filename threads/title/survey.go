package title

import (
	"bytes"
	"slices"
	"strings"

	"handtight/threads"
)

// survey notes what the words say of the part as a whole.
func (l *line) survey() {
	for k := range l.tokens {
		it := &l.tokens[k]
		if it.figure == nil && it.mark == 0 {
			l.tell(k)
		}
		for _, m := range it.word.all() {
			l.europe = l.europe || m.european
			switch m.class {
			case classKind:
				l.takeName(k, it, m)
			case classMaterial:
				if l.foot(it) || l.tubesOwn(k) {
					continue
				}
				if l.ofItsSeal(k) {
					l.ignore(l.words(it.from, it.to), "what its seal is made of")
					it.word = l.lex.word("the")
					break // brass, FKM gasket
				}
				if l.looksOnly(k) {
					l.ignore(l.words(it.from, it.to), threads.LooksOnly)
					it.word = l.lex.word("the")
					break // brass-coloured plastic
				}
				if l.ofPiece(k) {
					l.ignore(l.words(it.from, it.to), "what a piece of it, or beside it, is made of")
					it.word = l.lex.word("the")
					break // with brass handle
				}
				if m.value == "copper" && l.ofWhatItTakes(k) {
					l.copperTube = true // what takes copper is told by it, and is mostly of brass
				}
				if m.value != "copper" && l.ofWhatItTakes(k) {
					l.ignore(l.words(it.from, it.to), "what its tube or hose is made of")
					it.word = l.lex.word("the")
					break // for nylon tube
				}
				if l.behindNot(k) {
					l.ignore(l.words(it.from, it.to), whyNot[asDenied])
					it.word = l.lex.word("the")
					break // not 316
				}
				if at(l.tokens, k-1).role(classBefore) == asCode && digit(l.norm[it.from]) && !l.one && l.numbersParts(k-1) {
					l.ignore(l.words(l.tokens[k-1].from, it.to), whyNot[asCode])
					continue // ref 2205
				}
				l.takeMaterial(m.value)
				if len(it.word.all()) == 1 && !slices.Contains(l.materials, m.value) { // med is copper in one language, and with in others
					l.materials = append(l.materials, m.value)
				}
			case classFamily, classSex, classEnd:
				l.takeEvidence(m)
			case classAttr:
				l.evidence = l.evidence || m.value == "nut"
				l.both = l.both || m.value == "both" || m.value == "pair" || m.value == "port" && l.plural(it)
				l.reducing = l.reducing || m.value == "reducing"
			}
		}
		if f := it.figure; f != nil {
			l.washer22 = l.washer22 || f.kind == metricSize && f.v == 22
			if f.kind == metricSize && (f.pitch > 0 && f.pitch <= 3 || f.v == 22) || f.kind == unSize || f.kind == coneSize && l.one || f.kind == specialSize || f.kind == frenchSize || f.kind == fenSize {
				l.evidence = true
			}
		}
	}
	l.settleName()
}

// settleName takes another name for the part where the words together say more than each: a hose with its fittings, a gauge by its scale.
func (l *line) settleName() {
	if !l.one && len(l.tokens) > 1 && l.tokens[0].value(classAttr) == "o-ring" && l.ringByItself() {
		l.shape = l.lex.shapes["O-ring"]
	}
	hosed := l.namesHose()
	if !l.one && (l.is(hose) || hosed) && (l.hasWord("one end") && l.hasWord("other end") || l.straightAndBent() || l.oneNamed() && l.contains(otherEndList) && !l.contains(bareEndList)) {
		l.both = true // straight one end, 90 degrees other end
	}
	if l.both && !l.one && hosed && l.contains(bareEndList) {
		l.both = false
		l.unjudged = append(l.unjudged, "the other end (no fitting)")
	}
	if l.dialed != nil && l.fromZero() {
		l.shape = l.dialed // a gauge with its socket: no fitting has a scale
	}
	if !l.one && (l.shape == nil || l.is(hose)) && (hosed || l.says("TUBE") || l.says("TUBING") || anyToken(l.tokens, func(it *token) bool { return it.value(classFamily) == "NH" })) && l.byLength() {
		l.shape = l.lex.shapes["hose stock"]
	}
	if l.hoseAssembly(hosed) || l.hydraulicLine() {
		l.shape = l.lex.shapes["hose"]
	}
	if l.hoseEndByCode() {
		l.shape = l.lex.shapes["hose tail"]
	}
	if l.is(nipple) && !l.one && l.holds("cola de p") {
		l.shape = l.lex.shapes["hose tail"] // niple 1" cola de pez
	}
	if l.is(tail) && !l.one && l.tokens[0].value(classEnd) == "HOSE" && (l.contains(withTerminalsList) || l.tailsNamed() > 1) {
		l.shape = l.lex.shapes["hose"] // manguera 1/2 con terminales JIC hembra
	}
	if l.is(tail) && l.both && !l.one && hosed {
		l.shape = l.lex.shapes["hose"] // hose with a terminal at both ends
	}
	if l.hoseWithFittings() {
		l.shape, l.both = l.lex.shapes["hose"], !l.contains(bareEndList) // hose 3/8, 2 m, with fittings JIC 6 female
	}
	if l.is(nut) && !l.one && anyToken(l.tokens, func(it *token) bool {
		m := it.is(classKind)
		return m != nil && m.shape.traits&adaptor != 0 && m.shape.traits&nut == 0
	}) && anyToken(l.tokens, func(it *token) bool { return it.value(classSep) == "x" }) {
		l.shape = l.lex.shapes["adaptor"] // adapter 12L nut x 3/8 NPT female: the nut of its end
	}
	if l.is(stock) && anyToken(l.tokens, saysEnd) {
		l.shape = nil // 1/2" pipe to 3/8" barb
	}
	if l.shape != nil && l.shape.ends >= 0 {
		l.evidence = true
	}
	l.litres()
}

// takeName takes the part that a word names for the line's own, where it is not what the part comes with, what it is for or what it is beside.
func (l *line) takeName(k int, it *token, m *sense) {
	l.parts = l.parts || (l.shape != nil && l.shape.ends >= 0 || l.unknownPart(k) || l.shape == nil && l.namesHose()) && m.shape.ends >= 0 && m.shape.rank > 1 && l.plusBefore(k)
	if m.shape.name == "clamp" && !l.one && l.shape != nil && l.shape.ends > 0 && bytes.Contains(l.norm[it.from:it.to], []byte(" ")) {
		return // filter housing, clamp for wall
	}
	if l.plugBeside(k, m.shape) {
		return // ball valve G 1/2 female both ends, with plug G 1/4
	}
	if k > 0 && !l.one && m.shape.name == "adaptor" && it.is(classEnd) == nil && l.together(k-1) && (l.shape != nil && l.shape.ends > 0 && !l.is(adaptor) || l.shape == nil && l.includedInBreath(k)) && l.adaptorBeside(k) {
		return // valve G 3/4 female, with adapter to 3/4 NPT
	}
	if k > 0 && l.shape != nil && (l.shape.kind == "cap" || l.shape.kind == "plug") && m.shape.traits&tail != 0 && l.meantFor(k-1) {
		l.ignore(l.words(it.from, it.to), whyNot[asWhatFor])
		it.word = l.lex.word("the")
		return // cap for hose tail: no tail of its own
	}
	if k > 0 && l.meantFor(k-1) && (m.shape.ends < 0 || l.tokens[k-1].to-l.tokens[k-1].from > 2 || m.shape.traits&serves != 0) {
		return // à vis, für Rohrschellen: not the part itself
	}
	if k > 1 && !l.one && l.tokens[k-1].figure != nil && l.tokens[k-1].figure.role == asCount && l.plural(it) && l.shape != nil && l.shape.ends > 0 {
		l.ignore(l.words(it.from, it.to), "it comes with the part")
		it.word = l.lex.word("the")
		return // pump with 2 nipples
	}
	if k > 0 && l.together(k-1) && (m.shape.ends < 0 || m.shape.traits&ring != 0 || l.shape != nil && l.shape.ends >= 0 || m.shape.traits&dial != 0) {
		if (m.shape.traits&(nut|ring) != 0 || m.shape.kind == "plug" || m.shape.kind == "cap" || m.shape.kind == "strainer" || m.shape.name == "drain valve" || m.shape.ends < 0 && it.is(classAttr) != nil) && !l.one {
			l.ignore(l.words(it.from, it.to), "it comes with the part")
		}
		if m.shape.traits&dial != 0 && !l.one && !anyToken(l.tokens[k:], func(o *token) bool { return o.figure != nil && o.figure.kind == pressureFigure }) {
			l.ignore(l.words(it.from, it.to), "it comes with the part")
			it.word = l.lex.word("the") // its sex is no end's
			return
		}
		return // with clip, mit Dichtung, z kolankiem: not the part itself
	}
	if !l.one && k > 0 && l.is(nut) && (l.tokens[k-1].mark == ',' || string(l.norm[l.tokens[k-1].from:l.tokens[k-1].to]) == "of") && m.shape.ends != 1 {
		l.ignore(l.words(it.from, it.to), whyNot[asWhatFor])
		return // nut, regulator, G 3/8 female
	}
	if !l.one && k > 0 && l.shape != nil && l.shape.ends >= 0 && l.includedBehind(k) {
		l.ignore(l.words(it.from, it.to), "it comes with the part")
		it.word = l.lex.word("the")
		return // adaptateur ..., bouchons de protection inclus
	}
	if !l.one && l.shape != nil && l.forBefore(k) {
		return // nut for 1/2 compression elbow: what it is for
	}
	if !l.one && k > 0 && m.shape.traits&tail != 0 && l.shape == nil && anyToken(l.tokens[:k], (*token).hosed) && l.together(k-1) && l.figured(k) && !l.figuredBehind(k) {
		l.ignore(l.words(it.from, it.to), "it comes with the part")
		return // silicone hose 16 mm, with barb fitting
	}
	if !l.one && m.shape.traits&serves != 0 && l.placeOfHose(k) {
		l.ignore(l.words(it.from, it.to), whyNot[asWhatFor])
		return // hose 3/8, JIC -6 female both ends, HP pump - membrane: where it goes
	}
	if !l.one && l.spareFor(k) {
		return // o-rings for end plugs: what they are for
	}
	if l.inBracket(k) && (m.shape.traits&serves != 0 && (l.shape != nil || l.says("QC")) || m.shape.ends < 0 && l.shape != nil && l.shape.ends > 0) {
		return // O-ring 25 x 3 (pump seal kit): what it is for
	}
	if word := string(l.norm[it.from:it.to]); (word == "wire" || word == "wires") && !l.one && l.namesHose() {
		return // two wire hose: its layers
	}
	if m.shape.ends < 0 && l.shape != nil && l.shape.ends > 0 && k > 0 && l.tokens[k-1].figure.plain() && l.figured(k-1) {
		return // saddle 63 mm x 1", 4 bolts
	}
	if (m.shape.ends < 0 || m.shape.traits&ring != 0) && !l.one && (l.shape == nil || l.shape.ends >= 0) && l.asideOfEnds(k) {
		return // -8 ORB male x 3/8 FNPT straight (o-ring incl.)
	}
	if l.is(pump) && !l.one && (m.shape.traits&valve != 0 || strings.HasSuffix(m.shape.kind, "valve")) && (l.plural(it) || l.withSoonBefore(k)) {
		return // pump with stainless valves, with an internal bypass valve
	}
	if m.shape.traits&ring != 0 && !l.one && l.shape != nil && l.shape.ends >= 0 && l.shape.traits&ring == 0 && l.sizesBefore(k) > 1 {
		return // adaptor G1/2 M x 1/4 NPT F, copper washer
	}
	if m.shape.traits&beside != 0 && (m.shape.name != "clamp" || k > 0 && l.tokens[k-1].figure.digits()) && l.shape != nil && l.shape.ends > 0 {
		return // tee derivación cinta: a fitting for drip tape; seacock with a tail, 2 clamps
	}
	if m.shape.traits&foremost != 0 && (l.one || l.figured(k)) {
		return // 1/2 with a gasket: not the part itself
	}
	if m.shape.traits&foremost == 0 && m.shape.ends < 0 && m.shape.rank == 1 && l.sparesOf(k) {
		l.shape = m.shape // end plug o-rings, vessel end cap seals
		return
	}
	if !l.one && m.shape.traits&(angled|nipple) != 0 && l.hoseBefore(k) {
		return // hose 3/8 BSP female straight x 3/8 BSP female elbow
	}
	l.takeKind(m.shape)
	l.takeTeeSex(k, m.shape)
	if m.shape.traits&dial != 0 {
		l.dialed = m.shape
	}
}

// includedInBreath reports a word behind k, up to the end of what is said in a breath, that says the part comes with it.
func (l *line) includedInBreath(k int) bool {
	for j := k + 1; j < len(l.tokens) && !l.endsBreath(j); j++ {
		if it := &l.tokens[j]; it.figure == nil && withItList.has(l.norm[it.from:it.to]) {
			return true
		}
	}
	return false
}

// adaptorBeside leaves out the ends of an adaptor that comes with the part, to the end of its breath; false where no size is said of it.
func (l *line) adaptorBeside(k int) bool {
	to, sized := k+1, false
	for ; to < len(l.tokens) && !l.endsBreath(to); to++ {
		sized = sized || l.tokens[to].figure != nil
	}
	if !sized || !l.figured(k) {
		return false
	}
	l.ignore(l.words(l.tokens[k-1].from, l.tokens[to-1].to), "it comes with the part")
	for j := k - 1; j < to; j++ {
		if f := l.tokens[j].figure; f != nil {
			f.drop(asWhatFor)
			f.used = true
		}
		l.tokens[j].word, l.tokens[j].unread = l.lex.word("the"), false
	}
	return true
}

// oneNamed reports that one thread is all that the line gives of its ends.
func (l *line) oneNamed() bool {
	n := 0
	for k := range l.tokens {
		if m := l.tokens[k].is(classFamily); m != nil && m.value != "THREAD" && !l.inCode(k) {
			n++
		}
	}
	return n == 1
}

// ringByItself reports that a rubber or a figure stands right behind the O-ring that a line begins with, and no thread is said: the ring
// itself is what the line names.
func (l *line) ringByItself() bool {
	next := &l.tokens[1]
	m := next.is(classMaterial)
	if next.figure == nil && (m == nil || m.value != "rubber") {
		return false
	}
	return !anyToken(l.tokens, func(it *token) bool { return it.is(classFamily) != nil || it.is(classSex) != nil })
}

// placeOfHose reports a part named behind the last comma of a line that begins with a hose and its figures, with no figure there: it is what
// the hose goes to.
func (l *line) placeOfHose(k int) bool {
	first := slices.IndexFunc(l.tokens[:k], func(it token) bool { return it.is(classKind) != nil || it.is(classEnd) != nil })
	if first < 0 || !l.tokens[first].hosed() {
		return false
	}
	from := k
	for from > 0 && l.tokens[from].mark != ',' && l.tokens[from].mark != ';' && l.tokens[from].mark != '|' && l.tokens[from].mark != '(' {
		if from--; l.tokens[from].figure != nil {
			return false
		}
	}
	return from > 0 && l.figured(from) && !l.figuredBehind(k)
}

// figuredBehind reports whether a figure stands behind the word at k.
func (l *line) figuredBehind(k int) bool {
	return anyToken(l.tokens[k:], func(it *token) bool { return it.figure != nil })
}

// fromZero reports a scale: 0-60 psi.
func (l *line) fromZero() bool {
	for k := 2; k < len(l.tokens); k++ {
		f, dash, zero := l.tokens[k].figure, &l.tokens[k-1], l.tokens[k-2].figure
		if f != nil && f.kind == pressureFigure && zero != nil && zero.v == 0 && (dash.mark == '-' || dash.mark == '/' || dash.value(classSep) != "") {
			return true
		}
	}
	return false
}

// tubesOwn reports a material that is written to the size of the tube that pushes in: push-in PE10. It is
// the tube's, and says nothing of what the fitting is made of.
func (l *line) tubesOwn(k int) bool {
	next := at(l.tokens, k+1)
	return next.figure != nil && next.glued && (next.figure.kind == bare || next.figure.kind == mmSize) && anyToken(l.tokens, func(it *token) bool { return it.value(classEnd) == "PUSH" })
}

// ofWhatItTakes reports a material beside the word for the tube or the hose that a fitting is for: hose tail for nylon tube, raccord pour tuyau en PVC. The
// fitting itself may be of another.
func (l *line) ofWhatItTakes(k int) bool {
	if l.one || at(l.tokens, k+1).figure.plain() {
		return false // per tubo PE 25: the size of such pipe
	}
	taken := func(it *token) bool { v := it.value(classEnd); return v == "TUBE" || v == "TUBING" || it.hosed() }
	from := k
	switch {
	case taken(at(l.tokens, k+1)), at(l.tokens, k+1).mark == '-' && at(l.tokens, k+1).glued && taken(at(l.tokens, k+2)):
	case taken(at(l.tokens, k-1)):
		from--
	case taken(at(l.tokens, k-2)) && at(l.tokens, k-1).value(classSep) != "x" && at(l.tokens, k-1).figure == nil && at(l.tokens, k-1).mark == 0 && at(l.tokens, k-1).to-at(l.tokens, k-1).from < 4:
		from -= 2
	default:
		return false
	}
	return from > 0 && l.meantFor(from-1) && l.tokens[from-1].to-l.tokens[from-1].from > 2
}

// looksOnly reports a material behind which a word says that the part only looks so.
func (l *line) looksOnly(k int) bool {
	next := at(l.tokens, k+1)
	if next.mark == '-' && next.glued {
		next = at(l.tokens, k+2)
	}
	return !l.one && next.to > next.from && looksLikeList.has(l.norm[next.from:next.to])
}

// ofPiece reports a material of a piece of the part or of what comes with it, behind a with: valve with brass handle; and that of the place that it is
// screwed into.
func (l *line) ofPiece(k int) bool {
	if l.one || k == 0 {
		return false
	}
	before, next := at(l.tokens, k-1), at(l.tokens, k+1)
	if text := string(l.norm[before.from:before.to]); text == "a" || text == "an" || text == "the" {
		before = at(l.tokens, k-2)
	}
	if text := string(l.norm[before.from:before.to]); text == "into" || text == "onto" {
		return true
	}
	return before.to > before.from && withList.has(l.norm[before.from:before.to]) && next.to > next.from && comesOfItList.has(l.norm[next.from:next.to]) && l.shape != nil
}

// foot reports the Portuguese pé, a foot, which no polyethylene is written as.
func (l *line) foot(it *token) bool {
	switch l.words(it.from, it.to) {
	case "pé", "Pé", "PÉ":
		return true
	}
	return false
}

func (l *line) takeEvidence(m *sense) {
	l.evidence = true
	l.dashes = l.dashes || m.has("dash")
	l.byBore = l.byBore || m.has("dn")
	l.pressed = l.pressed || m.class == classEnd && (m.value == "PRESS" || m.value == "LAYER")
	switch m.tongue {
	case "sv", "no", "da", "fi":
		l.nordic = true
	case "ja":
		l.japan = true
	}
	if m.class == classFamily && (m.has("male") || m.has("female")) && m.value == "NPT" {
		l.america = true
	}
}

// takeKind keeps the first kind that is not a general word for a fitting; a
// kind that never holds a pipe end (a clamp, a cable gland) outranks the rest.
func (l *line) takeKind(s *shape) {
	if l.is(sealKit) {
		return // a seal kit for a pump is no pump
	}
	if l.fitting == nil && s.ends >= 0 {
		l.fitting = s
	}
	if (l.is(coupler) || l.shape != nil && l.shape.name == "coupling") && s.traits&(tee|elbow) != 0 {
		l.shape = s // quick connect tee, socket elbow
		return
	}
	if l.shape == nil || s.rank > l.shape.rank || s.rank == l.shape.rank && len(s.name) > len(l.shape.name) && strings.HasSuffix(s.name, l.shape.name) { // elbows, street elbow
		l.shape = s
	}
}

// takeMaterial keeps the first material; a grade outranks the plain word, a
// metal its plating.
func (l *line) takeMaterial(value string) {
	old, ok := vagueness(l.material)
	if !ok {
		return
	}
	if now, vague := vagueness(value); !vague || now > old {
		l.material = value
	}
}

// vagueness is how far a word tells a material that is not told wholly; false for one that is.
func vagueness(material string) (int, bool) {
	switch material {
	case "":
		return 0, true
	case "galvanised", "rubber":
		return 1, true
	case "plastic", "carbon steel":
		return 2, true
	case "stainless steel":
		return 3, true
	}
	return 0, false
}

// ofItsSeal reports a material that is written to the word for a seal behind another part's name: ball valve brass, FKM gasket.
func (l *line) ofItsSeal(k int) bool {
	next := at(l.tokens, k+1)
	if next.mark == '-' && next.glued {
		next = at(l.tokens, k+2)
	}
	isRing := func(it *token) bool { m := it.is(classKind); return m != nil && m.shape.traits&ring != 0 }
	seal := isRing(&l.tokens[k]) || isRing(next) && next.is(classMaterial) == nil || next.value(classAttr) == "washer" || next.value(classAttr) == "o-ring"
	return seal && !l.one && l.shape != nil && l.shape.traits&ring == 0 && l.shape.ends >= 0 && l.figured(k)
}

// withSoonBefore reports a with among the three words before k.
func (l *line) withSoonBefore(k int) bool {
	for j := k - 1; j >= max(0, k-3); j-- {
		if l.tokens[j].figure == nil && l.together(j) {
			return true
		}
	}
	return false
}
