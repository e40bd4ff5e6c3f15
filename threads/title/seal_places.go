package title

import (
	"bytes"
	"slices"

	"handtight/threads"
)

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
			l.ignoreCone("the seat between the halves of the union")
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

// conicWord reports a word for a cone, which of a union is that of its seat, and none for a taper thread.
func (l *line) conicWord() bool {
	return anyToken(l.tokens, func(it *token) bool {
		return it.value(classAttr) == "taper" && slices.ContainsFunc(conicList.words(), func(w string) bool { return bytes.HasPrefix(l.norm[it.from:it.to], []byte(w)) })
	})
}

// threePiece reports a union of three pieces.
func (l *line) threePiece() bool {
	text := bytes.ReplaceAll(l.norm, []byte(" "), nil)
	for _, w := range threePieceList.words() {
		if bytes.Contains(text, []byte(w)) {
			return true
		}
	}
	return false
}

// twoPiece reports a union of two pieces, whose nut is one of its ends.
func (l *line) twoPiece() bool {
	if !l.mayContain(twoPieceList) {
		return false
	}
	text := bytes.ReplaceAll(l.norm, []byte(" "), nil)
	for _, w := range twoPieceList.words() {
		if i := bytes.Index(text, []byte(w)); i >= 0 && !digit(byteAt(text, i-1)) {
			return true
		}
	}
	return false
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
	return c.fam != nil && (c.fam.taper() || flared(c.fam) || c.fam.series() != 0) || c.fig != nil && c.fig.kind == coneSize
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

// ignoreCone names the word for the cone of a union's seat, once, with what it is.
func (l *line) ignoreCone(why string) {
	k := indexToken(l.tokens, func(it *token) bool { return it.value(classAttr) == "taper" })
	if k < 0 || slices.ContainsFunc(l.ignored, func(n threads.NotUsed) bool { return n.Why == why }) {
		return
	}
	l.ignore(l.words(l.tokens[k].from, l.tokens[k].to), why)
}
