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
