package title

import (
	"bytes"
	"math"

	"handtight/pressure/quantity"
	"handtight/threads"
)

// secondNames drops a size given again under another name: 1/2" (15/21), 4分 15A,
// 3/4" Ду20, 3/8" (9,52 mm).
func (l *line) secondNames() {
	kinds := l.kindsOfSizes()
	if kinds&(1<<dnSize) != 0 {
		l.allNominal()
	}
	l.leadingOne()
	l.apartOrMixed()
	order := [...]figureKind{inchSize, frenchSize, fenSize, dnSize}
	if kinds&(1<<frenchSize) != 0 {
		l.frenchOr()
	}
	for n, main := range order {
		for _, second := range order[n+1:] {
			if kinds&(1<<main) != 0 && kinds&(1<<second) != 0 {
				l.dropSecond(main, second)
			}
		}
	}
	for k := range l.tokens {
		f := l.tokens[k].figure
		if f != nil && f.kind == mmSize {
			l.dropConverted(k, f)
		}
	}
	if kinds&(1<<dnSize) != 0 {
		l.dropBareBore()
	}
	if kinds&(1<<dashSize) != 0 {
		l.dashAndThread()
	}
}

// dashAndThread drops a dash size that its thread stands in brackets behind, -6 (9/16-18 UNF), where a
// family that is sized by dash has the one as the other's; else the two are asked.
func (l *line) dashAndThread() {
	for k := range l.tokens {
		dash, thread := l.tokens[k].figure, at(l.tokens, k+2).figure
		if dash != nil && thread != nil && dash.kind == dashSize && thread.kind == inchSize && thread.frac && at(l.tokens, k+1).mark == '(' && at(l.tokens, k+3).mark == ')' {
			for _, f := range [...]threads.Family{threads.JIC, threads.ORB, threads.SAE45, threads.ORFS} {
				if form, ok := threads.Find(f, "-"+quantity.Exact(dash.v)); ok && math.Abs(form.Major.Inches()-thread.v) < 0.02 {
					thread.drop(asRepeat) // -6 (9/16")
					break
				}
			}
		}
		if dash == nil || thread == nil || dash.kind != dashSize || thread.kind != unSize || at(l.tokens, k+1).mark != '(' {
			continue
		}
		for _, f := range [...]threads.Family{threads.JIC, threads.ORB, threads.SAE45, threads.ORFS} {
			form, ok := threads.Find(f, "-"+quantity.Exact(dash.v))
			if ok && math.Abs(form.Major.Inches()-thread.v) < 0.02 && math.Abs(form.TPI-thread.pitch) < 0.01 {
				dash.drop(asRepeat)
			}
		}
		if dash.role != asRepeat {
			dash.or = thread.words(l) // -6 (3/4-16): the two are not one size
			thread.drop(asRepeat)
		}
	}
}

// frenchOr keeps a size of the French trade and the other size that a bracket behind it names for it, 12x17
// (1/2"): which is right is asked.
func (l *line) frenchOr() {
	for k := range l.tokens {
		f, bracket, inch := l.tokens[k].figure, at(l.tokens, k+1), at(l.tokens, k+2).figure
		if f == nil || f.kind != frenchSize || bracket.mark != '(' || inch == nil || inch.kind != inchSize || inch.v == f.v || at(l.tokens, k+3).mark != ')' {
			continue
		}
		f.or = l.words(l.tokens[k+2].from, l.tokens[k+2].to)
		inch.drop(asEither)
	}
}

// leadingOne leaves open whether the one at the beginning of a line counts the parts, 1 1/4 NPT tee, or is of the size, where
// the fraction behind it is named again by itself.
func (l *line) leadingOne() {
	f := at(l.tokens, 0).figure
	if l.one || f == nil || f.kind != inchSize || f.v <= 1 || f.v >= 2 || bytes.IndexByte(l.norm[:l.tokens[0].to], ' ') < 0 || at(l.tokens, 1).value(classSep) == "x" {
		return
	}
	for k := 1; k < len(l.tokens); k++ {
		if o := l.tokens[k].figure; o != nil && o.kind == inchSize && o.v == f.v-1 {
			f.or = inchText(o.v)
		}
	}
}

// apartOrMixed leaves open whether a whole number and a fraction that a hyphen stands between, 1 - 1/2", are one size that is not what it seems: a part that takes
// one size to another may have both; of another the two are 1 1/2, or so many parts of 1/2.
func (l *line) apartOrMixed() {
	if l.one || l.reducing || l.is(unequal) || l.is(bush) || l.is(adaptor) || l.is(tee) || l.shape == nil {
		return
	}
	for k := 0; k+2 < len(l.tokens); k++ {
		whole, hyphen, part := l.tokens[k].figure, &l.tokens[k+1], &l.tokens[k+2]
		if whole == nil || !whole.whole || whole.marked || whole.frac || whole.v < 1 || whole.v > 3 || whole.kind != bare && whole.kind != inchSize || hyphen.mark != '-' || hyphen.glued || part.glued || part.figure == nil || !part.figure.frac || part.figure.v >= 1 || part.figure.kind != inchSize || at(l.tokens, k-1).value(classSep) == "x" {
			continue
		}
		whole.drop(asEither)
		part.figure.or = inchText(whole.v + part.figure.v)
	}
}

// kindsOfSizes are the kinds of the line's figures, by their bits.
func (l *line) kindsOfSizes() (out uint32) {
	for k := range l.tokens {
		if f := l.tokens[k].figure; f != nil {
			out |= 1 << f.kind
		}
	}
	return out
}

// dropSecond drops the figures of one kind of which another kind has the size.
func (l *line) dropSecond(main, second figureKind) {
	french := second == frenchSize
	var again []*figure
	for k := range l.tokens {
		if f := l.tokens[k].figure; f != nil && f.kind == second && anyToken(l.tokens, func(o *token) bool { return o.figure != nil && o.figure.kind == main && o.figure.v == f.v }) {
			again = append(again, f)
		}
	}
	for _, f := range again {
		if second == dnSize && l.boreOfHose(f) {
			f.drop(asBoreBeside) // 10 mm bore hose ... 3/8 BSPP: of the hose, though the thread has the size
			continue
		}
		f.drop(asRepeat)
		if second == dnSize {
			l.markBore(f)
		}
		if french {
			l.markFrench(f.v)
		}
	}
}

// boreOfHose reports a bore that a word behind it names, in a line that names hose.
func (l *line) boreOfHose(f *figure) bool {
	if !l.namesHose() {
		return false
	}
	for k := range l.tokens {
		if l.tokens[k].figure == f {
			return l.beside(k, 1).role(classAfter) == asBore
		}
	}
	return false
}

// markBore gives the inch size that a nominal bore repeats the figure of that bore, so that
// the letter of 1/2" R15 is read as that of R15.
func (l *line) markBore(bore *figure) {
	for k := range l.tokens {
		if l.tokens[k].figure != bore {
			continue
		}
		if m := at(l.tokens, k-1).is(classFamily); m == nil || m.value != "R" || !l.tokens[k].glued {
			return
		}
	}
	for k := range l.tokens {
		if f := l.tokens[k].figure; f != nil && f.kind == inchSize && f.v == bore.v {
			f.dn = bore.dn
		}
	}
}

// dropConverted drops millimetres that repeat an inch size beside them. Of a tail it is the inches in brackets that repeat:
// barb 10 mm (3/8).
func (l *line) dropConverted(k int, f *figure) {
	barb := func(it *token) bool { return it.value(classEnd) == "BARB" || it.value(classEnd) == "HOSE" }
	if inch := at(l.tokens, k+2).figure; inch != nil && inch.kind == inchSize && at(l.tokens, k+1).mark == '(' && at(l.tokens, k+3).mark == ')' && barb(at(l.tokens, k-1)) && math.Abs(inch.v*25.4-f.v) < 0.8 && at(l.tokens, k+4).is(classFamily) == nil && at(l.tokens, k+4).is(classSex) == nil {
		inch.drop(asRepeat)
		return
	}
	if inch := at(l.tokens, k-2).figure; inch != nil && inch.kind == inchSize && at(l.tokens, k-1).mark == '(' && at(l.tokens, k+1).mark == ')' && l.galvanised() && !l.one {
		f.drop(asMeasure) // 3/4" (16 mm) of galvanised iron
		return
	}
	if inch := at(l.tokens, k+2).figure; inch != nil && inch.kind == inchSize && at(l.tokens, k+1).mark == '/' && l.galvanised() && inch.v == plasticBores[f.v] {
		f.drop(asMeasure) // GI nipple 25mm/3/4inch
		return
	}
	if inch := at(l.tokens, k+2).figure; inch != nil && inch.kind == inchSize && at(l.tokens, k+1).mark == '/' && (l.says("BARB") || l.namesHose()) && !l.one && math.Abs(inch.v*25.4-f.v) < 0.8 && f.v >= 10 && at(l.tokens, k+3).is(classFamily) == nil && at(l.tokens, k+3).is(classSex) == nil {
		inch.drop(asRepeat) // 25 mm / 1" hose
		return
	}
	if l.is(tail) && at(l.tokens, k-1).mark != '(' && at(l.tokens, k+1).mark != ')' && l.otherSize(k) && f.whole && !l.threadNamed(k) {
		return // hose tail 13 mm 1/2: the tail and the thread
	}
	grip := l.says("PUSH") || l.says("COMPRESSION") || l.says("QC")
	if bracketed := at(l.tokens, k-1).mark == '(' || at(l.tokens, k+1).mark == '(' || at(l.tokens, k+1).mark == '/' || at(l.tokens, k-1).mark == '/'; grip && !bracketed && !l.one && f.whole && (tubeOutsides[f.v] || f.v == 4 || f.v == 6 || f.v == 8) && f.v <= largestGrip {
		return // push-in elbow 8 mm 1/4: the tube and the thread
	}
	for _, j := range [...]int{k - 2, k - 1, k + 1, k + 2, k + 3} {
		if j < 0 || j >= len(l.tokens) || l.tokens[j].figure == nil || l.tokens[j].figure.kind != inchSize && l.tokens[j].figure.kind != frenchSize {
			continue
		}
		if j != k-1 && j != k+1 && l.tokens[(j+k)/2].mark != '(' && !(j == k-2 && l.is(tail) && l.tokens[k-1].is(classEnd) != nil && l.threadNamed(k)) || j == k+3 && l.tokens[k+2].is(classFamily) == nil {
			continue
		}
		inch := l.tokens[j].figure
		beside := j == k+1 || j == k-1
		switch {
		case beside && !l.one && l.sexBesideInch(j) && (f.v < smallestIron || l.says("PUSH") || l.says("BARB") || l.says("COMPRESSION")), beside && !l.one && f.v < smallestIron && l.says("PUSH"):
			continue // Steckwinkel 8 mm 1/4" AG: a tube and a thread
		case l.tubeBeside(k, j, inch), (j == k+1 || j == k-1) && (l.material == "copper" || l.takesTubes()) && !l.one && l.sexBesideInch(j):
			continue
		case math.Abs(inch.v*25.4-f.v) < 0.15 && inch.v < 1 && inch.kind == inchSize:
			f.drop(asRepeat)
			inch.hose = true
		case l.lex.bores[int(f.v)] == inch.v || math.Abs(inch.v*25.4-f.v) < 0.5:
			f.drop(asRepeat)
		default:
			if g, ok := threads.Find(threads.G, inchText(inch.v)); ok && math.Abs(float64(g.Major)-f.v) < 0.6 {
				f.drop(asRepeat)
			}
		}
	}
}

// smallestIron is the smallest outside or bore in mm that iron pipe is called by in the countries that write it beside the inches.
const smallestIron = 15

// largestGrip is the largest tube, in mm, that push-in and compression ends beside a thread of its bore have. A judgement.
const largestGrip = 22

// plasticBores are the sizes in inches of the outsides in mm of plastic pipe, by which shops that sell both name iron too.
// Common practice.
var plasticBores = map[float64]float64{20: 0.5, 25: 0.75, 32: 1, 40: 1.25, 50: 1.5, 63: 2}

// sexBesideInch reports a sex right beside the inches at j: copper elbow 15 mm 1/2 male has a tube and a thread.
func (l *line) sexBesideInch(j int) bool {
	return at(l.tokens, j+1).is(classSex) != nil || at(l.tokens, j-1).is(classSex) != nil
}

// threadNamed reports a size with the name of its thread behind the figure, and another before it, so that the
// millimetres of a tail are the inches before them: espiga 1/2" para manguera 13 mm con rosca G 1/2.
func (l *line) threadNamed(k int) bool {
	named := false
	for j := k + 1; j < len(l.tokens); j++ {
		f := l.tokens[j].figure
		named = named || f != nil && f.kind == inchSize && (l.tokens[j-1].is(classFamily) != nil || at(l.tokens, j+1).is(classFamily) != nil)
	}
	return named && l.sizeBefore(k)
}

// tubeBeside reports millimetres behind a word for a tube, of an elbow or an adaptor, right before the
// inches of a thread: tubo PU 6 mm 1/4". A tube of 1/4 inch is 6.35 mm, which is written with its figures.
func (l *line) tubeBeside(k, j int, inch *figure) bool {
	if j != k+1 || inch.kind != inchSize || l.shape == nil || !l.is(elbow) && !l.is(adaptor) || math.Abs(inch.v*25.4-l.tokens[k].figure.v) < 0.3 {
		return false
	}
	for n := range l.tokens[:k] {
		if v := l.tokens[n].value(classEnd); v == "TUBE" || v == "TUBING" {
			return true
		}
	}
	return false
}

// dropBareBore drops a nominal bore of a hose or valve whose ends are given
// another way (DN10 DKO-L 15L).
func (l *line) dropBareBore() {
	other := false
	for k := range l.tokens {
		if f := l.tokens[k].figure; f != nil {
			other = other || f.kind == inchSize || f.kind == frenchSize || f.kind == metricSize || f.kind == coneSize || f.kind == unSize || f.kind == dashSize
		}
	}
	for k := range l.tokens {
		f := l.tokens[k].figure
		if f == nil || f.kind != dnSize || !other {
			continue
		}
		prev, next := l.beside(k, -1), l.beside(k, 1)
		if l.hyphenated(k) {
			continue
		}
		if next.value(classSep) == "x" && pipeOutsides[f.dn] && f.dn >= 20 && !l.one && plasticMaterials[l.material] && l.says("COMPRESSION") {
			f.kind, f.v, f.dn = mmSize, f.dn, 0 // raccord compression PE DN32 x 1": the pipe
			continue
		}
		own := sizedByBore(next.is(classFamily)) || next.is(classSex) != nil
		if prev.role(classBefore) == asBore && l.says("FERRULE") {
			continue // a clamp ferrule's own size
		}
		if prev.role(classBefore) == asBore && (!own || l.bodyBore(k)) {
			f.drop(asBoreBeside)
		}
	}
}

// bodyBore reports whether the nominal bore at k is that of the body, as the words behind it are those
// of the thread that follows them: valve DN15 G 3/4, valve DN8 (female G 1/2). A part with unequal
// ends, or with a branch, can have both.
func (l *line) bodyBore(k int) bool {
	if l.shape == nil || l.is(unequal) || l.is(tee) || l.reducing {
		return false
	}
	designated := false
	for j := k + 1; j < len(l.tokens); j++ {
		it := &l.tokens[j]
		m := it.is(classFamily)
		switch {
		case it.figure != nil:
			return designated && it.figure.kind == inchSize
		case it.mark == '(', m != nil && m.has("pre"):
			designated = true
		case m == nil && it.is(classSex) == nil:
			return false
		}
	}
	return false
}

// sizeAgain drops the size in a bracket that is the one right before it under another name of its thread: G1/2(PF1/2), R1/2 (1/2" BSPT).
func (l *line) sizeAgain() {
	if l.one || !l.seen.marks.has('(') {
		return
	}
	for k := range l.tokens {
		before := at(l.tokens, k-1).figure
		if before == nil {
			before = at(l.tokens, k-2).figure
		}
		if l.tokens[k].mark != '(' || before == nil || !before.frac && !before.marked {
			continue
		}
		var again *figure
		named := false
		end := k + 1
		for ; end < len(l.tokens) && end < k+6 && l.tokens[end].mark != ')'; end++ {
			it := &l.tokens[end]
			switch {
			case it.figure != nil && again == nil:
				again = it.figure
			case it.figure != nil || it.is(classSex) != nil || it.is(classEnd) != nil:
				end = len(l.tokens)
			case it.is(classFamily) != nil:
				named = true
			}
		}
		if end >= len(l.tokens) || l.tokens[end].mark != ')' || again == nil || !named || again.v != before.v || !again.frac && !again.marked {
			continue
		}
		again.drop(asRepeat)
		for j := k + 1; j < end; j++ {
			if m := l.tokens[j].is(classFamily); m != nil && l.familyBefore(k) {
				l.tokens[j].word = l.lex.word("the")
			}
		}
	}
}

// familyBefore reports the name of a thread right before the size that stands before k.
func (l *line) familyBefore(k int) bool {
	for j := k - 1; j >= max(0, k-3); j-- {
		if l.tokens[j].is(classFamily) != nil {
			return true
		}
	}
	return false
}
