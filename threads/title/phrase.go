package title

import (
	"slices"

	"handtight/threads"
)

// phrase is what the words say of one end, before ends share what is said once.
type phrase struct {
	from, to  int
	fig       *figure
	fam       *sense
	fam2      *sense
	sexes     []threads.Sex
	end       string // BARB, TUBE, PRESS, ...
	weak      bool   // the sex is that of a word for a nut, which another word outranks
	pex       bool   // the tube is called PEX, which also takes a barb
	also      string // an end that the words name too, and that a thread has no room for
	endFirst  bool   // the word of the end stands before the size
	attr      attr
	thread    bool // a word says that there is a thread, and not which
	barbed    bool // a word says barb
	comma     bool // parted from the phrase before by a comma
	strong    bool // parted from the phrase before by an x
	part      *shape
	dealt     bool   // the sexes were given in one word, as MF
	hose      bool   // the word for hose itself names the end
	open      bool   // an adaptor's second size, of which nothing is said
	round     bool   // a diameter is said, of a tube or of a tail
	threaded  bool   // the word of the sex means a thread, as IG
	assumed   bool   // the sex is the usual one of the kind, and not said
	byKind    bool   // the sex is not said: what it is, it is by the kind of part
	unknown   bool   // it holds a word that is not understood
	either    bool   // the word of the end may be that of the other size
	plus      bool   // a plus parts it from the phrase before: another part
	strange   bool   // a word that can be its own is not understood
	bothSexes bool   // the text says both male and female of it
	nutted    bool   // what it says of the sex is a nut, which may be one that comes with the part
	doubt     bool   // a word that is not understood stands where a sex stands
	guess     bool   // the end is taken from the beginning of a compound word
	lent      bool   // the end is another's word, and a word of its own is not understood
	apart     bool   // a word that is not understood stands between the size and the word of the end
	custom    bool   // the sex is that of a word for a part that mostly has it
	snaps     bool   // its word is that of a quick coupling, which hoses have too
	lone      bool   // a tail's one size in inches: its hose's or its thread's
	paired    bool   // another such size stands beside it
	brine     bool   // the brine port of a vessel, taken to be as its feed
	doubled   bool   // the other end of an elbow whose one tail is said
	tubed     bool   // a word names the tube, or its outside
	outer     bool   // the size may be the outside of a tube or the nominal size of a pipe
	fused     bool   // a fitting of polyethylene, of whose ends nothing is said
	inner     bool   // the hose is said by an inside diameter alone
	byName    bool   // a tube's size, because fittings called so have it first
	swings    bool   // the swivel stands by the part's name, and mostly is the female end's
	turns     bool   // it is taken to turn as the end does whose words are all that is said
	contrary  string // the words of a size beside it that cannot be its own, if there are any
	outside   bool   // the text says the outside of a tube: OD
	foreign   bool   // a thread is named by a code that is not understood: W21.8 female
	unnamed   bool   // a word that is not understood stands where a thread's name stands: ACME female
	oldR      bool   // R on a part whose ends are mostly female, and no word gives the sex
}

// attr is a set of words about an end.
type attr uint32

const (
	isWasher attr = 1 << iota
	isNut
	isSwivel
	isTaper
	isParallel
	isChamfer
	isCone60
	isCone30
	isFlat
	isORing
	isStudSeal
	isPort
	isLong
	isPlastic
	isDouble
	isOldR
	isStreet
	isTwo
	isPair
	isLeft
	isEdge
	isConeRing
	isCone24
	isShort // of a dryseal taper
	isNominal
	isOneSided // its sex is that of one end, and of the other nothing is said
)

var attrNamed = map[string]attr{
	"washer": isWasher, "nut": isNut, "swivel": isSwivel, "taper": isTaper, "parallel": isParallel,
	"chamfer": isChamfer, "cone-60": isCone60, "cone-30": isCone30, "flat-face": isFlat, "o-ring": isORing,
	"ed": isStudSeal, "port": isPort, "long": isLong, "plastic": isPlastic, "double": isDouble, "old-r": isOldR,
	"street": isStreet, "two": isTwo, "pair": isPair,
	"left": isLeft, "metal-edge": isEdge, "cone-o-ring": isConeRing, "cone-24": isCone24, "short": isShort, "nominal": isNominal, "one-sided": isOneSided,
}

// sexOnly are the languages whose words for a sex say nothing of a thread.
var sexOnly = map[string]bool{"en": true, "fr": true, "it": true, "es": true, "pt": true, "el": true, "*": true}

// names reports whether the phrase names a part of that trait.
func (c *phrase) names(t trait) bool { return c.part != nil && c.part.traits&t != 0 }

func (c *phrase) bare() bool {
	return c.fam == nil && len(c.sexes) == 0 && c.end == "" && !c.thread
}

// described reports whether the phrase says something of a thread.
func (c *phrase) described() bool { return c.fam != nil || len(c.sexes) > 0 || c.thread }

// says reports whether a phrase without a size still speaks of an end.
func (c *phrase) says() bool { return c.fam != nil || len(c.sexes) > 0 || c.end != "" }

func (c *phrase) millimetres() bool { return c.fig != nil && c.fig.kind == mmSize }

func (f *figure) sized() bool {
	switch f.kind {
	case bare, pressureFigure, junkFigure:
		return false
	}
	return true
}

// phrases cuts tokens at what parts ends and reads each piece.
func (l *line) phrases(tokens []token) []*phrase {
	out := l.pad.list(4)
	start, strong, plus, comma := 0, false, false, false
	piece := func(to int) {
		n := len(out)
		if out = l.chunk(out, tokens[start:to], strong); len(out) > n {
			out[n].plus, out[n].comma = plus, comma
		}
	}
	for k := range tokens {
		if parts, x := separates(tokens, k); parts {
			piece(k)
			start, strong, plus, comma = k+1, x, tokens[k].mark == '+', tokens[k].mark == ','
		}
	}
	piece(len(tokens))
	return out
}

// separates reports whether the token parts ends, and whether it does so by an x
// or its like, behind which a new end stands even without a size of its own.
func separates(tokens []token, k int) (parts, strong bool) {
	it := &tokens[k]
	if m := it.is(classSep); m != nil {
		cross := m.value == "x" && !(it.to-it.from > 1 && at(tokens, k+1).unread) // by Somebody: no x
		return m.value == "x" || !couples(tokens, k), cross
	}
	prev, next := at(tokens, k-1), at(tokens, k+1)
	switch it.mark {
	case ',':
		return !listsSexes(tokens, k), false
	case '+':
		return prev.is(classSex) == nil || next.is(classSex) == nil || prev.figure != nil || at(tokens, k+2).figure != nil, false // F + F + M
	case '&':
		return prev.is(classSex) == nil || next.is(classSex) == nil || prev.figure != nil || at(tokens, k+2).figure != nil, false // male & female ends
	case ';', ':', '|':
		return true, false
	case '>', '=':
		return true, true
	case '-':
		if prev.figure != nil && next.figure != nil {
			return true, true
		}
		if prev.is(classFamily) != nil && next.is(classFamily) != nil && sizePair(tokens, k+2) {
			return true, true // BSP-DKOS 1/2-M22
		}
		return !it.glued && (!next.glued || next.is(classFamily) != nil), next.is(classKind) == nil // 1/2 M x 16 - hose connector
	case '/':
		left := prev.figure != nil || prev.is(classSex) != nil || prev.is(classFamily) != nil || prev.value(classAttr) == "swivel" && !it.glued
		if prev.is(classSex) != nil && next.value(classAttr) == "nut" || prev.value(classAttr) == "nut" && next.is(classSex) != nil {
			return true, true // IG/Ü-Mutter: an end each
		}
		if family := next.is(classFamily); prev.value(classEnd) == "SOCKET" && (next.value(classEnd) == "SOCKET" || family != nil && len(family.sexes) > 0) && len(sizesIn(tokens[:k])) > 1 {
			return true, true // 3/4 x 3/4 x 1/2 slip/slip/FPT
		}
		if prev.value(classAttr) == "nut" && next.is(classEnd) != nil && at(tokens, k+2).figure != nil {
			return true, true // 1" ÜM / Tülle 25 mm
		}
		if family := next.is(classFamily); left && !it.glued && !next.glued && prev.figure == nil && dashWord(family) && (at(tokens, k+2).figure != nil || at(tokens, k+2).mark == '-' && at(tokens, k+3).figure != nil) {
			return true, true // BSP 3/8 male / JIC -6 male
		}
		return left && (next.figure != nil || next.is(classFamily) != nil && next.is(classFamily).has("pre")), true
	}
	return false, false
}

// sizePair reports two sizes with a hyphen between them at k.
func sizePair(tokens []token, k int) bool {
	a, b := at(tokens, k).figure, at(tokens, k+2).figure
	return a != nil && b != nil && a.sized() && b.sized() && at(tokens, k+1).mark == '-'
}

// couples reports whether "and" stands between two sexes, one for each end of a size that is said once:
// 1/2" mit konischem AG und zylindrischem IG.
func couples(tokens []token, k int) bool {
	form := func(it *token) bool { v := it.value(classAttr); return v == "taper" || v == "parallel" }
	one := func(it *token) bool {
		m := it.is(classSex)
		return m != nil && len(m.sexes) == 1 && it.figure == nil
	}
	a, z := k-1, k+1
	if form(at(tokens, a)) {
		a--
	}
	if form(at(tokens, z)) {
		z++
	}
	if !one(at(tokens, a)) || !one(at(tokens, z)) || at(tokens, a).is(classSex).sexes[0] == at(tokens, z).is(classSex).sexes[0] {
		return false
	}
	if form(at(tokens, z+1)) {
		z++
	}
	return at(tokens, z+1).figure == nil || len(sizesIn(tokens[:a])) == 0
}

// listsSexes reports whether a comma stands in a list of sexes, one for each end: AG, IG, IG. A sex
// that a size follows begins another end. The thread's name may stand with each: NPT male, NPT female.
func listsSexes(tokens []token, k int) bool {
	one := func(it *token) bool {
		m, family := it.is(classSex), it.is(classFamily)
		return it.figure == nil && (m != nil && len(m.sexes) == 1 || family != nil && len(family.sexes) == 1)
	}
	next := k + 1
	if !one(at(tokens, next)) && at(tokens, next).is(classFamily) != nil {
		next++
	}
	after := at(tokens, next+1)
	return one(at(tokens, k-1)) && one(at(tokens, next)) && (next+1 >= len(tokens) || after.mark != 0 || one(after) || after.is(classKind) != nil || after.is(classNoise) != nil)
}

func at(tokens []token, k int) *token {
	if k < 0 || k >= len(tokens) {
		return &noToken
	}
	return &tokens[k]
}

// chunk reads the tokens between two separators: one phrase, or several where
// sizes follow each other without one (M 26/34 F 20/27; 1/2 IG 3/4 AG).
func (l *line) chunk(out []*phrase, tokens []token, strong bool) []*phrase {
	if len(tokens) == 0 {
		return out
	}
	var room [8]int
	sizes := l.restated(room[:0], tokens)
	if len(sizes) < 2 {
		return append(out, l.phrase(tokens, strong))
	}
	prefix, family := wordsFirst(tokens, sizes)
	start := 0
	for n := 0; n+1 < len(sizes); n++ {
		cut := splitBetween(tokens, sizes[n], sizes[n+1], prefix, family)
		out = append(out, l.phrase(tokens[start:cut], strong && n == 0))
		start = cut
	}
	return append(out, l.phrase(tokens[start:], false))
}

// wordsFirst reports whether the words stand before their sizes (M 26/34 F
// 20/27) and not behind them (1/2 IG 3/4 AG), and whether the family does too.
func wordsFirst(tokens []token, sizes []int) (prefix, family bool) {
	first, last := tokens[:sizes[0]], tokens[sizes[len(sizes)-1]+1:]
	sexesFirst, families := said(first)
	sexesAll, _ := said(tokens)
	sexesLast, familiesLast := said(last)
	after := at(tokens, sizes[0]+1).is(classFamily)
	switch {
	case sexesAll > 0 && sexesFirst == 0 && sexesLast == 0 && familiesLast == 0 && len(sizes) == 2 && tokens[sizes[0]].figure.kind == inchSize && tokens[sizes[1]].figure.kind == inchSize && endRightBefore(tokens, sizes[0]) && nearBefore(tokens, sizes[1]) && wordsBetween(tokens, sizes) == 1:
		return true, true // hose tail 3/8 male 1/4
	case sexesAll > 0 && sexesFirst == 0:
		tail := families > 0 && (tokens[sizes[0]].figure.kind == mmSize || after != nil && after.value == "THREAD")
		return tail && sexesLast == 0, false
	case sexesFirst > 0:
		return sexesLast == 0 || nearBefore(tokens, sizes[0]), namesThread(first)
	}
	return families > 0 && familiesLast == 0, families > 0
}

// endRightBefore reports a word for an end right before a size.
func endRightBefore(tokens []token, size int) bool {
	return size > 0 && tokens[size-1].is(classEnd) != nil
}

// wordsBetween counts the words between the first two sizes.
func wordsBetween(tokens []token, sizes []int) (n int) {
	for k := sizes[0] + 1; k < sizes[1]; k++ {
		if tokens[k].mark == 0 {
			n++
		}
	}
	return n
}

// namesThread reports whether tokens name a family of threads that follows its sizes.
func namesThread(tokens []token) bool {
	for k := range tokens {
		if m := tokens[k].is(classFamily); m != nil && !m.has("pre") && m.value != "THREAD" {
			return true
		}
	}
	return false
}

// said counts the sexes and the families or ends that tokens name.
func said(tokens []token) (sexes, families int) {
	for k := range tokens {
		m := tokens[k].is(classFamily)
		switch {
		case tokens[k].is(classSex) != nil || m != nil && len(m.sexes) > 0:
			sexes++
		case tokens[k].is(classEnd) != nil, m != nil && !m.has("pre") && m.value != "THREAD":
			families++
		}
	}
	return sexes, families
}

// nearBefore reports whether a sex stands right before the first size.
func nearBefore(tokens []token, size int) bool {
	return size > 0 && tokens[size-1].is(classSex) != nil && len(tokens[size-1].is(classSex).sexes) == 1
}

// splitBetween gives where the second of two sizes' words begin.
func splitBetween(tokens []token, a, b int, prefix, family bool) int {
	if tokens[a+1].value(classFamily) == "THREAD" && tokens[a].figure.kind == inchSize && tokens[b].figure.kind == mmSize && a+2 <= b {
		return a + 2 // 3/4" euro cone 16x2: no pipe of millimetres has the thread
	}
	if m := tokens[a+1].is(classFamily); m != nil && b == a+2 && tokens[a].figure.kind == inchSize && tokens[b].figure.kind == mmSize && (bspWord(m) || m.value == "NPT") && !m.has("pre") {
		return a + 2 // hose tail 1/2 BSP 13mm: no millimetres have the thread
	}
	if prefix {
		m := tokens[a+1].is(classFamily)
		if m != nil && !m.has("pre") && m.value != "THREAD" && (!family || tokens[a].figure.kind == inchSize && tokens[b].figure.kind == mmSize && (bspWord(m) || m.value == "NPT")) {
			return a + 2 // Steckverschraubung 1/4 NPT für Rohr 8 mm
		}
		return a + 1
	}
	if tokens[a+1].is(classEnd) != nil && tokens[b].figure.kind == mmSize && tokens[a].figure.kind != mmSize && !telling(tokens[b+1:]) && onlyUnread(tokens[a+2:b]) {
		return a + 1 // 1 1/4" tail 32 mm
	}
	if m := tokens[b-1].is(classSex); m != nil && len(m.sexes) == 1 && b-1 > a+1 && sexless(tokens[a].figure) && tokens[b-2].is(classSex) == nil && !sexless(tokens[b].figure) && at(tokens, b+1).is(classSex) == nil {
		return b - 1 // 12S elbow male 3/8: the sex of the thread
	}
	if m := tokens[b-1].is(classSex); m != nil && len(m.sexes) == 1 && b-1 > a+1 && tokens[b].figure.kind == coneSize && !sexless(tokens[a].figure) && !telling(tokens[a+1:b-1]) {
		return b - 1 // 1/4 2SC c/ terminal fêmea 8L: the sex of the cone
	}
	for k := a + 1; k < b-1; k++ {
		if tokens[k].value(classNoise) == "branch" && tokens[b].figure.kind == inchSize && len(tokens[b-1].saidSexes()) > 0 {
			return k // female branch male 3/8
		}
	}
	if tokens[b-1].value(classAttr) == "one-sided" && tokens[b].figure.kind == inchSize {
		return b - 1 // IG Abgang AG 3/8
	}
	last := b - 1
	if tokens[last].mark == '-' && last > a+1 {
		last-- // JIC -6
	}
	if tokens[a].figure.kind == inchSize && tokens[b].figure.kind == inchSize && b == a+2 && tokens[a+1].is(classSex) != nil && at(tokens, b+1).is(classFamily) != nil && namesHoseWord(at(tokens, a-1)) {
		return a + 1 // hose 3/8 male 3/8 NPT
	}
	hosed := func(it *token) bool { return namesHoseWord(it) || namesMadeUp(it) }
	if (tokens[b].figure.kind == dashSize || tokens[b].figure.kind == inchSize) && tokens[a].figure.kind == inchSize && dashWord(tokens[last].is(classFamily)) && anyToken(tokens[:a], hosed) {
		return a + 1 // mang. 1/2 FG JIC 08: all that stands between is the thread's
	}
	for k := last; k > a; k-- {
		m := tokens[k].is(classFamily)
		forward := m != nil && m.series() != 0 && at(tokens, k+1).figure != nil && at(tokens, k+1).figure.kind == coneSize && !sexless(tokens[a].figure) ||
			k == last && dashWord(m) && (tokens[b].figure.kind == dashSize || tokens[b].figure.kind == unSize) && tokens[a].figure.kind == inchSize && !anySexIn(tokens[a+1:b-1]) ||
			k == b-1 && k == a+1 && tokens[b].figure.kind == metricSize && tokens[a].figure.kind == dnSize && (tokens[k].value(classAttr) == "nut" || tokens[k].is(classSex) != nil && tokens[k].is(classSex).weak()) ||
			tokens[k].value(classEnd) == "TUBE" && at(tokens, k+1).value(classEnd) == "ROUND" || m != nil && (m.has("pre") || m.value == "THREAD") || (tokens[k].is(classEnd) != nil || tokens[k].value(classAttr) == "nut") && k > a+1 && at(tokens, k+1).mark != '(' || tokens[k].mark == '(' ||
			m != nil && k == b-1 && tokens[b].glued && !tokens[k].glued // GHT3/4
		if !forward {
			return k + 1
		}
	}
	return a + 1
}

// anySexIn reports a word for a sex among tokens.
func anySexIn(tokens []token) bool {
	return anyToken(tokens, func(it *token) bool { return it.is(classSex) != nil })
}

// telling reports whether one of the tokens says what an end is.
func telling(tokens []token) bool {
	for k := range tokens {
		if it := &tokens[k]; it.is(classSex) != nil || it.is(classFamily) != nil || it.is(classEnd) != nil {
			return true
		}
	}
	return false
}

// sexless reports the size of a cone or of millimetres, whose end has the sex of its kind or none.
func sexless(f *figure) bool { return f.kind == coneSize || f.kind == mmSize }

// onlyUnread reports whether none of the tokens is understood.
func onlyUnread(tokens []token) bool {
	for k := range tokens {
		if !tokens[k].unread {
			return false
		}
	}
	return true
}

// phrase gathers the words of one end.
func (l *line) phrase(tokens []token, strong bool) *phrase {
	c := l.pad.phrase()
	c.strong, c.from, c.to = strong, tokens[0].from, tokens[len(tokens)-1].to
	joined, gripped := false, -1
	for k := range tokens {
		it := &tokens[k]
		if it.figure != nil && it.figure.sized() {
			c.fig = it.figure
		}
		c.unknown = c.unknown || it.unread && !it.code
		c.doubt = c.doubt || it.unread && !it.code && (l.mayBeSex(tokens, k) || l.misspelt(it))
		c.strange = c.strange || (c.fig != nil || strong) && it.unread && !it.code
		for _, m := range it.word.all() {
			switch m.class {
			case classSex:
				weak := m.weak() // a word that mostly means so
				if weak && len(c.sexes) > 0 {
					continue
				}
				if c.weak {
					c.sexes = nil
				}
				c.weak, c.custom = weak, weak && m.value == "M~"
				c.addSexes(m.sexes, joined)
				c.threaded = c.threaded || !sexOnly[m.tongue]
			case classFamily:
				if at(tokens, k-1).mark == '(' && c.fam != nil && c.fam.value == m.value && len(c.sexes) == 1 && len(m.sexes) == 1 && m.sexes[0] == c.sexes[0] {
					continue // MNPT (MIP): the same in other words
				}
				c.addFamily(m)
			case classEnd:
				if takesTube(m.value) && at(tokens, k-1).is(classSex) != nil {
					gripped = len(c.sexes) - 1
				} else if m.value == "QC" && at(tokens, k+1).is(classSex) != nil {
					gripped = len(c.sexes) // engate rápido fêmea, rosca externa
				}
				l.endWord(c, tokens, k, m)
			case classAttr:
				c.attr |= m.attr
				c.thread = c.thread || m.value == "nut"
			case classKind:
				if prev := at(tokens, k-1); m.shape.traits&dial != 0 && prev.to > prev.from && withList.has(l.norm[prev.from:prev.to]) {
					continue // G 1/2 with a gauge: not the gauge's thread
				}
				if c.part == nil || m.shape.traits&ring == 0 {
					c.part = m.shape // a washer that comes with a part is not the part
				}
			}
		}
		name := it.is(classFamily) // NPT male, NPT female
		joined = (it.mark == '/' || it.mark == '-') && it.glued || it.mark == '+' || it.mark == ',' && listsSexes(tokens, k) || it.is(classSep) != nil || joined && name != nil && len(name.sexes) == 0
	}
	if gripped >= 0 && gripped < 2 && len(c.sexes) == 2 && !same(c.sexes) {
		c.sexes = slices.Delete(c.sexes[:2:2], gripped, gripped+1) // femelle à sertir, mâle à visser: the other is the thread's
	}
	if c.fig != nil && c.fig.coded && (c.end == "PUSH" || c.end == "TUBE") {
		c.end = "" // the thread of a push-in fitting's code
	}
	c.assumed = c.assumed || c.custom && !l.one
	c.apart = !l.one && c.end != "" && l.sunder(tokens)
	if !l.one {
		c.foreign, c.unnamed = l.namesForeign(c, tokens)
	}
	l.countSexes(c, tokens)
	c.trim(l, tokens)
	return c
}

// namesForeign reports an end that gives a sex and no size, and before the sex a code or a number behind the part's name that nobody
// understands: adapter W21.8 female x 1/4 NPT male. It is the name of a thread, and no size of another end is its own. A word there, as in adapter
// ACME female, may be one too, and is asked.
func (l *line) namesForeign(c *phrase, tokens []token) (code, word bool) {
	if c.fig != nil || c.fam != nil || c.end != "" || len(c.sexes) != 1 || c.attr&isNut != 0 {
		return false, false
	}
	later, strange := c.from > l.tokens[0].from, false
	noun := c.strong || !later && (l.shape == nil || tokens[0].unread && at(tokens, 1).is(classSex) != nil)
	for k := range tokens {
		it := &tokens[k]
		switch {
		case it.is(classSex) != nil && (it.to-it.from > 1 || at(tokens, k-1).figure == nil):
			return noun && code, noun && strange
		case it.is(classKind) != nil:
			noun, strange, code = true, false, false
		case it.unread && it.to-it.from >= shortestForeign:
			strange = true
		case it.figure != nil && it.glued && (it.figure.role == asCode || it.figure.role == asNothing):
			noun, code = noun || later, true
		}
	}
	return false, false
}

// shortestForeign is how many letters a name of a thread has at least that is not one of those known. A judgement.
const shortestForeign = 3

// sunder reports whether a word that is not understood stands between the size of an end and the word that
// says what takes it: 3/4 straght tap connector comp.
func (l *line) sunder(tokens []token) bool {
	seen, strange := false, false
	for k := range tokens {
		it := &tokens[k]
		switch {
		case it.figure != nil && it.figure.sized(), it.is(classEnd) != nil:
			if seen && strange {
				return true
			}
			seen, strange = true, false
		case it.unread && !it.code && it.to-it.from >= shortestMisspelt:
			strange = true
		}
	}
	return false
}
