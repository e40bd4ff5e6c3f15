package title

import (
	"bytes"
	"slices"

	"handtight/threads"
)

// relocate moves words that landed on the wrong end, by the rewrites of pairs in
// steps.go: a sex belongs to the thread and not to the tube, a word of a tail or a
// press end to the end without a thread.
func (l *line) relocate(ends []*phrase) {
	for _, pass := range pairPasses {
		for _, e := range ends {
			for _, o := range ends {
				if o == e {
					continue
				}
				for _, r := range pass {
					if r.name != l.skip && r.when(e, o) {
						r.then(e, o)
					}
				}
			}
		}
	}
}

// loneSocket is a male or female adaptor or elbow of glued pipe, of which one end is named:
// the thread is said and the socket is not.
func (l *line) loneSocket(ends []*phrase) {
	e := ends[0]
	named := l.is(adaptor) || l.is(elbow) && e.fam == nil || e.thread && (l.shape == nil || l.shape.ends == 2)
	if len(ends) == 1 && !l.one && named && (e.end == "SOCKET" || e.end == "SOLDER") && len(e.sexes) > 0 && e.fig != nil && !e.millimetres() {
		l.unjudged = append(l.unjudged, "the other end ("+notJudged[e.end]+")")
		e.end, e.thread = "", true
	}
}

// brassInsert opens the last end of a glued elbow, tee or coupling in which brass is named: the insert of a thread, at the branch
// of a tee. Of the other ends nothing changes.
func (l *line) brassInsert(ends []*phrase) {
	if l.one || l.material == "brass" || !slices.Contains(l.materials, "brass") || anyThread(ends) || !l.is(plainPipe) || l.is(adaptor) || l.is(unequal) || l.is(union) || len(ends) < 2 {
		return
	}
	for _, e := range ends {
		if e.end != "SOCKET" || e.millimetres() {
			return
		}
	}
	last := ends[len(ends)-1]
	last.end, last.thread = "", true
	last.sexes, last.assumed = []threads.Sex{threads.Female}, true
}

// gripAndThread parts a push-in or compression fitting of which one inch size is
// given, and a sex and a thread apart from it: the size is the thread's, and the
// tube's is not said.
func (l *line) gripAndThread(ends, rest []*phrase) []*phrase {
	e := ends[0]
	if l.one || len(ends) != 1 || e.end != "PUSH" && e.end != "COMPRESSION" || e.fig == nil || e.millimetres() || e.described() {
		return ends
	}
	for _, r := range rest {
		if len(r.sexes) == 1 && (r.thread || r.threaded) {
			grip := &phrase{from: e.from, to: e.to, end: e.end}
			e.end, e.thread, e.sexes = "", true, r.sexes
			return []*phrase{e, grip}
		}
	}
	if l.cyrillic() && e.fig.kind == inchSize {
		grip := &phrase{from: e.from, to: e.to, end: e.end}
		e.end, e.thread = "", true // where pipes come in millimetres, inches are the thread's
		return []*phrase{e, grip}
	}
	return ends
}

// cyrillic reports whether the line is written in Cyrillic letters.
func (l *line) cyrillic() bool {
	for i := range l.norm {
		if l.norm[i] == 0xD0 || l.norm[i] == 0xD1 {
			return true
		}
	}
	return false
}

// ownWords corrects ends by their own words.
func (l *line) ownWords(ends []*phrase) {
	for _, e := range ends {
		if e.end == "QC" && (l.is(elbow) || l.is(tee)) {
			e.end, e.snaps = "PUSH", e.fig != nil && e.fig.kind == inchSize && e.fig.v >= largestPushIn // no quick coupling is bent or branches, but those of garden hoses
		}
		if e.hose && e.end == "BARB" && e.millimetres() && (l.is(elbow) || l.is(tee)) && l.says("QC") {
			e.end = "PUSH" // quick connect tee 10 mm hose
		}
		if e.end == "QC" && e.millimetres() {
			e.end, e.snaps = "PUSH", true // a quick connection of so many millimetres takes a tube, or a hose
		}
		if e.end == "QC" && len(ends) == 2 && e.fam == nil && otherNamed(ends, e) {
			continue // coupling, male 1/2, thread female 1/2 NPT: the first is the coupling's own
		}
		if e.end == "QC" && e.fig != nil && (e.threaded || e.thread) {
			if e.thread {
				l.unjudged = append(l.unjudged, "the other end ("+notJudged[e.end]+")")
			}
			e.end, e.thread = "", true // quick coupling 1/2" IG: the thread on its body
		}
		if (e.end == "PUSH" || e.end == "COMPRESSION") && len(ends) == 2 && e.fig != nil && e.fig.kind == inchSize && (len(e.sexes) == 1 || e.thread) && e.fam == nil && (ends[0].millimetres() || ends[1].millimetres()) {
			e.end, e.thread = "", true // conexão instantânea macho 1/8 tubo 6 mm
		}
		if e.end == "PUSH" && len(ends) == 2 && e.endFirst && e.fig != nil && e.fig.kind == inchSize && len(e.sexes) == 1 && e.thread && e.fam == nil {
			if o := otherOf(ends, e); o.end == "TUBE" {
				o.end = "PUSH"
			}
			e.end = "" // conector rápido, rosca macho 1/4, tubo 1/4
		}
		if e.end == "TUBE" && e.round && e.fig != nil && e.fig.kind == inchSize && e.fig.marked && e.described() {
			e.end = "" // rosca interna Ø 3/4"
		}
		if e.end == "BARB" && e.endFirst && e.described() && e.fig != nil && !e.millimetres() && othersHave(ends, e, "BARB") {
			e.end = ""
		}
		if threadLike(e) && e.end != "" && e.fam != nil && e.end != "BARB" && !standsAlone(e) {
			e.also, e.end = e.end, ""
		}
	}
}

// otherOf is the other of two ends.
func otherOf(ends []*phrase, e *phrase) *phrase {
	if ends[0] == e {
		return ends[1]
	}
	return ends[0]
}

// otherNamed reports whether the family of another end is said.
func otherNamed(ends []*phrase, e *phrase) bool {
	return slices.ContainsFunc(ends, func(o *phrase) bool { return o != e && o.fam != nil && o.end == "" })
}

// unionSeal puts the flat seal of a union on its female side, where the nut is. A union of three pieces
// has its nut inside, and its seal between the halves: no thread that goes onto a pipe is closed by it.
func (l *line) unionSeal(ends []*phrase) {
	if !l.is(union) || len(ends) != 2 {
		return
	}
	flat, nut := false, l.twoPiece()
	for k, e := range ends {
		nut = nut || e.attr&(isNut|isSwivel) != 0 || !threadLike(e)
		flat = flat || e.attr&isWasher != 0 && e.sex() == threads.Male && ends[1-k].sex() == threads.Female
	}
	if !nut && l.shape.ends == 2 {
		l.halvesSeal(ends)
		return
	}
	for _, e := range ends {
		if flat && e.sex() == threads.Male {
			e.attr &^= isWasher
		} else if flat {
			e.attr |= isWasher
		}
	}
}

// halvesSeal takes a union's flat seal from its ends, and notes where it is.
func (l *line) halvesSeal(ends []*phrase) {
	for _, e := range ends {
		e.attr &^= isWasher | isFlat | isCone60
		if (e.fam == nil || e.fam.value == "BSP") && e.attr&isTaper != 0 && (l.threePiece() || l.conicWord()) {
			e.attr &^= isTaper // a union of three pieces closes on a flat or a cone between its halves
		}
	}
	for k := range l.tokens {
		it := &l.tokens[k]
		if v := it.value(classAttr); (v == "washer" || v == "flat-face" || v == "cone-seat" || v == "cone-60") && (it.is(classKind) == nil || it.is(classKind).shape.traits&foremost != 0) {
			l.ignore(l.words(it.from, it.to), "it closes between the halves of the union")
			it.word = l.lex.word("the")
		}
	}
}

// washerOfTaper moves a washer or the ring of a stud from an end that has none, a taper thread, a flare or a cone, to the other end.
func (l *line) washerOfTaper(ends []*phrase) {
	if l.one || len(ends) != 2 {
		return
	}
	const seals = isWasher | isStudSeal
	for k, e := range ends {
		if o := ends[1-k]; e.attr&seals != 0 && noWasher(e) && threadLike(o) && !noWasher(o) {
			o.attr |= e.attr & seals
			e.attr &^= seals
			return
		}
	}
}

// noWasher reports an end whose thread is named and seals without a washer or a ring on it: a taper thread, a flare, a cone.
func noWasher(c *phrase) bool {
	return taperFamily(c) || c.fam != nil && (flared(c.fam) || c.fam.series() != 0) || c.fig != nil && c.fig.kind == coneSize
}

// taperFamily reports an end whose thread's name is that of a taper one.
func taperFamily(c *phrase) bool {
	if c.fam == nil {
		return false
	}
	switch c.fam.value {
	case "NPT", "NPTF", "R", "RC":
		return true
	}
	return false
}

// wallWasher takes the nut that comes with it, and the washer, from the thread of a part that goes through a wall: it lies between the wall and the nut.
func (l *line) wallWasher(ends []*phrase) {
	if l.one || !l.is(bulkhead) && !(l.is(ownThread) && !l.is(valve)) {
		return
	}
	for k := range l.tokens {
		if it := &l.tokens[k]; k > 0 && it.value(classAttr) == "nut" && l.together(k-1) {
			for _, e := range ends {
				e.attr &^= isNut // it holds the part to the wall
			}
			l.ignore(l.words(it.from, it.to), "it comes with the part")
			it.word = l.lex.word("the")
		}
	}
	onWall := false
	for _, e := range ends {
		if e.attr&isWasher != 0 && threadLike(e) && e.attr&(isNut|isSwivel) == 0 {
			e.attr &^= isWasher
			onWall = true
		}
	}
	for k := range l.tokens {
		if it := &l.tokens[k]; onWall && it.value(classAttr) == "washer" {
			l.ignore(l.words(it.from, it.to), "it lies on the wall")
			it.word = l.lex.word("the")
		}
	}
}

// conicWord reports a word for a cone, which of a union is that of its seat, and none for a taper thread.
func (l *line) conicWord() bool {
	return slices.ContainsFunc(l.tokens, func(it token) bool {
		return it.value(classAttr) == "taper" && slices.ContainsFunc(list("conic"), func(w string) bool { return bytes.HasPrefix(l.norm[it.from:it.to], []byte(w)) })
	})
}

// threePiece reports a union of three pieces.
func (l *line) threePiece() bool {
	text := bytes.ReplaceAll(l.norm, []byte(" "), nil)
	for _, w := range list("three-piece") {
		if bytes.Contains(text, []byte(w)) {
			return true
		}
	}
	return false
}

// twoPiece reports a union of two pieces, whose nut is one of its ends.
func (l *line) twoPiece() bool {
	text := bytes.ReplaceAll(l.norm, []byte(" "), nil)
	for _, w := range list("two-piece") {
		if i := bytes.Index(text, []byte(w)); i >= 0 && !digit(byteAt(text, i-1)) {
			return true
		}
	}
	return false
}

// nutOfTail gives the nut that is named with a hose tail to the thread beside it.
func (l *line) nutOfTail(ends []*phrase) {
	if !l.is(tail) {
		return
	}
	for _, e := range ends {
		for _, o := range ends {
			if e.millimetres() && e.end == "BARB" && e.fam == nil && e.attr&isNut != 0 && threadLike(o) && o.end == "" && o.sex() != threads.Male {
				o.attr |= isNut
				e.attr &^= isNut
				e.thread = false
			}
		}
	}
}

// nutOfTail reports an inch size that the words for a tail with a nut stand before.
func (c *phrase) nutOfTail() bool {
	named := c.end == "BARB" || c.names(tail)
	return named && c.fig != nil && c.fig.kind == inchSize && c.attr&isNut != 0 && len(c.sexes) == 0
}

// sizeAlone reports a size of which no word speaks.
func (c *phrase) sizeAlone() bool {
	return c.fig != nil && c.fam == nil && c.end == "" && len(c.sexes) == 0 && c.attr&isNut == 0
}

// giveNut makes the end a hose's tail, and its nut the other end's.
func (c *phrase) giveNut(o *phrase) {
	const nut = isNut | isSwivel
	o.attr, o.thread = o.attr|c.attr&nut, true
	c.attr, c.thread, c.end, c.endFirst = c.attr&^nut, false, "BARB", true
}

// studRing puts the elastomer ring that is said last, for all ends, on the male ends: it lies in
// a groove of the stud.
func studRing(ends []*phrase) {
	for _, e := range ends {
		if e.attr&isStudSeal == 0 || e.sex() != threads.Female {
			continue
		}
		for _, o := range ends {
			if o.sex() == threads.Male && threadLike(o) {
				o.attr |= isStudSeal
				e.attr &^= isStudSeal
			}
		}
	}
}

// takesTube reports whether an end is one that takes a tube.
func takesTube(end string) bool {
	switch end {
	case "SOCKET", "SOLDER", "PRESS", "LAYER", "COMPRESSION", "PUSH":
		return true
	}
	return false
}

func othersHave(ends []*phrase, e *phrase, name string) bool {
	for _, o := range ends {
		if o != e && o.end == name {
			return true
		}
	}
	return false
}

// judgedAlone reports whether the words of the end stand behind its size, so
// that the end is theirs and not the part's.
func standsAlone(c *phrase) bool { return !c.endFirst && c.end != "TUBE" && c.fam == nil }

// reducedBore reports two nominal bores of a nipple, the second less than the first: no nipple is shorter than it is wide.
func (l *line) reducedBore(e, first *phrase) bool {
	return l.is(nipple) && first.millimetres() && l.ofIron(first) && l.ofIron(e) && e.fig.v < first.fig.v
}

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
		if k == 2 && len(ends) == 3 && l.shape.ends == 2 && e.bare() && e.fig != nil && (e.fig.v == ends[0].fig.v || e.fig.v == ends[1].fig.v) && e.fig.kind == inchSize {
			e.fig.role = asRepeat // 1/2 x 3/4 F-F, to go on a 3/4 valve
			continue
		}
		drop := false
		plain := e.bare() && e.fig.kind == inchSize
		if l.is(nipple) && k > 0 && !l.reducing && ends[0].bare() && e.fam != nil && (len(e.sexes) == 0 && e.fig.v >= 2*ends[0].fig.v || e.maleOrUnsaid() && e.fig.v >= 3 && e.fig.v >= 4*ends[0].fig.v) && e.fig.v == float64(int(e.fig.v)) {
			ends[0].fam, ends[0].sexes, plain = e.fam, e.sexes, true
		}
		if l.is(nipple) && k > 0 && !l.reducing && ends[0].bare() && e.maleOrUnsaid() && !plain && e.fig.kind == inchSize && lengthOfNipple(e.fig.v, ends[0].fig.v) {
			e.fig.perhaps = true // 1 x 1 1/2 NPT is a close nipple, or one that reduces
		}
		switch {
		case l.is(nipple) && k > 0 && plain && !l.reducing:
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

// strangeCap reports a size of a cap or plug with an unread word behind it: a second end
// that the word names (cap 4" TC to 1/2" NPT).
func (l *line) strangeCap(e *phrase) bool {
	return e.strange && l.is(plain) && e.fig.kind == inchSize && !l.one
}

// oneNut leaves a nut its thread: the tube that it holds, or the thread's other
// name, is no further end.
func (l *line) oneNut(ends []*phrase) []*phrase {
	if !l.is(nut) || len(ends) != 2 || l.one {
		return ends
	}
	for k, e := range ends {
		o := ends[1-k]
		if e.fam == nil || o.fam != nil {
			continue
		}
		if o.fig != nil && o.fig.kind == unSize && dashWord(e.fam) {
			o.fam = e.fam
			return []*phrase{o}
		}
		if o.end == "TUBE" || o.bare() {
			return []*phrase{e}
		}
	}
	return ends
}

func anyDescribed(ends []*phrase) bool {
	for _, e := range ends {
		if e.fam != nil {
			return true
		}
	}
	return false
}

// takeTeeSex keeps a sex that stands before the name of a branch or a run tee: it is that one
// end's, and holds for no other.
func (l *line) takeTeeSex(k int, s *shape) {
	if s.traits&(branch|run) == 0 || k == 0 {
		return
	}
	before := &l.tokens[k-1]
	if m := before.is(classSex); m != nil && len(m.sexes) == 1 && before.figure == nil {
		l.teeSex, before.word = m.sexes[0], nil
	}
}

// sideSexes gives a tee whose ends are of one size the sex that stands beside the word for its branch or its run: female, male
// branch. The other word for a sex, if there is one, is that of the rest.
func (l *line) sideSexes(ends []*phrase) {
	if l.one || !l.is(tee) || len(ends) != 3 || ends[0].fig != ends[1].fig || ends[1].fig != ends[2].fig {
		return
	}
	side := map[string]threads.Sex{}
	rest := threads.NoSex
	for k := range l.tokens {
		sexes := l.tokens[k].sexesSaid()
		if len(sexes) == 0 {
			continue
		}
		same := !slices.ContainsFunc(sexes, func(s threads.Sex) bool { return s != sexes[0] })
		where := l.sideBeside(k)
		switch {
		case !same || where != "" && len(sexes) > 1 && where == "branch":
			return
		case where != "":
			side[where] = sexes[0]
		default:
			rest = sexes[0]
		}
	}
	if side["branch"] == threads.NoSex && side["run"] == threads.NoSex {
		return
	}
	for k, where := range [...]string{"run", "run", "branch"} {
		if sex := side[where]; sex != threads.NoSex {
			ends[k].sexes = []threads.Sex{sex}
		} else if rest != threads.NoSex {
			ends[k].sexes = []threads.Sex{rest}
		} else {
			ends[k].sexes = nil
		}
	}
}

// sexesSaid are the sexes that a word says, for itself or with a thread's name.
func (it *token) sexesSaid() []threads.Sex {
	if m := it.is(classSex); m != nil {
		return m.sexes
	}
	if m := it.is(classFamily); m != nil {
		return m.sexes
	}
	return nil
}

// sideBeside is the side of a tee that the words beside a sex name: male branch, male on the branch, and where the first
// side stands before the first sex, branch male.
func (l *line) sideBeside(k int) string {
	side := func(it *token) string {
		if v := it.value(classNoise); v == "branch" || v == "run" {
			return v
		}
		return ""
	}
	if l.tokens[k].value(classAttr) == "one-sided" {
		return "branch" // Abgang AG
	}
	first := slices.IndexFunc(l.tokens, func(it token) bool { return side(&it) != "" || len(it.sexesSaid()) > 0 })
	if first >= 0 && side(&l.tokens[first]) != "" {
		return side(at(l.tokens, k-1))
	}
	for j := k + 1; j < min(k+4, len(l.tokens)); j++ {
		if v := side(&l.tokens[j]); v != "" {
			return v
		}
		if l.tokens[j].is(classNoise) == nil || l.tokens[j].figure != nil {
			return ""
		}
	}
	for j := k - 1; j > 0 && l.tokens[j].is(classNoise) != nil; j-- {
		if v := side(&l.tokens[j]); v != "" && slices.ContainsFunc(l.tokens[max(j-2, 0):j], func(it token) bool { return it.mark == ',' }) {
			return v // IG, Abgang AG; lados fêmea, saída central macho
		}
	}
	return ""
}

// sexOfTee gives the sex of a branch tee to its last end, and that of a run tee to its first.
func (l *line) sexOfTee(ends []*phrase) {
	l.sideSexes(ends)
	if l.teeSex == threads.NoSex || len(ends) != 3 {
		return
	}
	e := ends[2]
	if l.is(run) {
		e = ends[0]
	}
	if !threadLike(e) {
		e = firstThread(ends)
	}
	if e != nil && len(e.sexes) == 0 {
		e.sexes = []threads.Sex{l.teeSex}
	}
}
