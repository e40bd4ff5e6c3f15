package title

import (
	"slices"

	"handtight/threads"
)

// tillLetter takes the one letter behind the price that a line ends with, which a till prints for the tax, for no part and no sex:
// 6.79 T, 8.58 N.
func (l *line) tillLetter(k int) {
	it, price := &l.tokens[k], at(l.tokens, k-1)
	if l.one || k+1 < len(l.tokens) || it.to != it.from+1 || it.glued || !l.capital(it.from) || l.norm[it.from] == 'm' || l.norm[it.from] == 'f' || at(l.tokens, k-2).value(classSep) == "x" || price.figure == nil || price.figure.marked || !l.twoDecimals(price) || !l.sizeElsewhere(k-1) {
		return
	}
	it.word, it.unread = l.lex.word("the"), false
	price.figure.drop(asPrice)
}

// outdoors takes the word exterior behind a name that carries the other sex, as English says of a part for use out of doors: FPT exterior.
func (l *line) outdoors(k int) {
	it, prev := &l.tokens[k], at(l.tokens, k-1)
	if l.one || string(l.norm[it.from:it.to]) != "exterior" {
		return
	}
	if m := prev.is(classFamily); m != nil && slices.Contains(m.sexes, threads.Female) {
		it.word, it.unread = nil, true
	}
}

// insideOfHose reads the short word for inside, or the sign of a diameter, between the word for a hose and a number, or behind a sex of a hose
// tail: the number is what the tail goes into. It is no female.
func (l *line) insideOfHose(k int) {
	it, next := &l.tokens[k], at(l.tokens, k+1)
	f := next.figure
	if l.one || f == nil || !f.whole || f.marked || f.frac || f.v < 4 || f.v > longestBore || !hoseInsideList.has(l.norm[it.from:it.to]) {
		return
	}
	before := k - 1
	for before > 0 && hoseInsideList.has(l.norm[l.tokens[before].from:l.tokens[before].to]) {
		before-- // Ø int.
	}
	if !l.tubeWord(before) && !(l.is(tail) && at(l.tokens, k-1).is(classSex) != nil && l.otherSize(k+1)) || !l.namesTail() {
		return
	}
	it.word, it.unread = l.lex.word("the"), false
	f.kind = mmSize
}

// gaugeShort reads the short GA that a line begins with, but for a name, before the scale of a gauge.
func (l *line) gaugeShort(k int) {
	it := &l.tokens[k]
	if l.one || !l.leads(k) || l.shape != nil || !it.unread || string(l.norm[it.from:it.to]) != "ga" || !l.fromZero() {
		return
	}
	it.word, it.unread = l.lex.word("gauge"), false
}
