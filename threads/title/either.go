package title

import (
	"strings"

	"handtight/pressure/quantity"
)

// either takes 3/4 or 5/8 for one size that is left open: the second is asked about, and
// the first is named as the other. So is 16/17 of a pipe, where no fitting joins two pipes
// a millimetre apart, 1/8 & 1/4 of a part with one end, and a size behind a maybe.
func (l *line) either() {
	l.oldSizes()
	l.guessedSizes()
	first, last := len(l.tokens), 0
	for k := range l.tokens {
		if l.tokens[k].figure != nil {
			first, last = min(first, k), k
		}
	}
	for k := first + 1; k < last; k++ { // what stands between sizes
		it := &l.tokens[k]
		a, b := at(l.tokens, k-1).figure, at(l.tokens, k+1).figure
		switch {
		case a != nil && b != nil && a.kind == b.kind && a.sized() && (orList.has(l.norm[it.from:it.to]) || l.apart(k)):
		case l.ofOneEnd(k):
		case l.doubtsSize(k):
			a, b = l.sizeAround(k, -1), l.sizeAround(k, 1)
			if b.kind != a.kind {
				b.kind, b.role = a.kind, noRole // JIC 6 or 8
			}
		default:
			continue
		}
		b.or = a.words(l)
		it.word, it.unread = l.lex.word("the"), false
		a.drop(asEither)
	}
}

// ofOneEnd reports a sign for and, or a comma, between two sizes of a part with one end: plugs 1/8 & 1/4 NPT.
func (l *line) ofOneEnd(k int) bool {
	it, a, b := &l.tokens[k], at(l.tokens, k-1).figure, at(l.tokens, k+1).figure
	if l.one || l.shape == nil || l.shape.ends != 1 || !l.is(plain) || a == nil || b == nil || a.kind != inchSize || b.kind != inchSize || !a.frac || !b.frac || a.v == b.v {
		return false
	}
	return it.mark == '&' || it.mark == ',' || it.mark == '/' && !it.glued || it.mark == 0 && andList.has(l.norm[it.from:it.to])
}

// doubtsSize reports a word for or, or a maybe, between two sizes that are parted from it by words of their threads alone.
func (l *line) doubtsSize(k int) bool {
	it := &l.tokens[k]
	word := l.norm[it.from:it.to]
	if l.one || it.figure != nil || it.mark != 0 || !orList.has(word) && !maybeList.has(word) {
		return false
	}
	a, b := l.sizeAround(k, -1), l.sizeAround(k, 1)
	for j := k + 1; j < min(len(l.tokens), k+6); j++ {
		if l.tokens[j].value(classSep) == "x" {
			return false // 1/2 M x 3/4 F or 1/2 M x 1/2 F: whole sets
		}
	}
	return a != nil && b != nil && a != b && a.sized() && (a.kind == b.kind && a.v != b.v || a.kind == dashSize && b.digitsAsRead())
}

// digitsAsRead reports plain digits, whatever they were taken for.
func (f *figure) digitsAsRead() bool {
	return f != nil && f.whole && !f.marked && !f.frac && !f.dashed && f.role == asNothing
}

// sizeAround is the figure that stands next to k in a direction, with no more than small words, and the words of a thread, between.
func (l *line) sizeAround(k, step int) *figure {
	for j, n := k+step, 0; j >= 0 && j < len(l.tokens) && n < 5; j, n = j+step, n+1 {
		it := &l.tokens[j]
		switch {
		case it.figure != nil:
			return it.figure
		case it.value(classSep) == "x", it.is(classKind) != nil, it.mark == ',':
			return nil
		}
	}
	return nil
}

// oldSizes leaves out a size that the words before it say the part has not: 3/8 NPT, not 1/4; was 1/4, now 3/8.
func (l *line) oldSizes() {
	if l.one {
		return
	}
	for k := range l.tokens {
		if f := l.tokens[k].figure; f != nil && f.kind == inchSize && l.wordsBefore(k, oldSizeList) && l.otherSize(k) {
			f.drop(asDenied)
		}
	}
}

// guessedSizes notes a size that the text gives as a guess: about 1/2 BSP, ~1/2, 3/8ish.
func (l *line) guessedSizes() {
	for k := range l.tokens {
		f := l.tokens[k].figure
		if l.one || f == nil || !f.sized() {
			continue
		}
		before, behind := at(l.tokens, k-1), at(l.tokens, k+1)
		if behind.mark == '-' && behind.glued {
			behind = at(l.tokens, k+2)
		}
		sign := strings.TrimRight(l.as[:l.at[l.tokens[k].from]], " ")
		f.guessed = aboutList.has(l.norm[before.from:before.to]) && !l.capital(before.from) || behind.glued && hasText(l.norm, behind.from, "ish") && behind.to == behind.from+len("ish") || before.figure == nil && (strings.HasSuffix(sign, "~") || strings.HasSuffix(sign, "≈"))
	}
}

// wordsBefore reports one of the words or phrases of a list right before the token at k.
func (l *line) wordsBefore(k int, list wordList) bool {
	text, listed := l.oneBlank(l.norm[:l.tokens[k].from]), &wordLists()[list]
	if !listed.last.has(byteAt(text, len(text)-1)) {
		return false
	}
	for _, w := range listed.words {
		if from := len(text) - len(w); from >= 0 && string(text[from:]) == w && !alnum(byteAt(text, from-1)) {
			return true
		}
	}
	return false
}

// apart reports whether the stroke at k parts two outsides of pipe that differ by 1 mm.
func (l *line) apart(k int) bool {
	a, b := l.tokens[k-1].figure, l.tokens[k+1].figure
	near := a.kind == mmSize && a.whole && b.whole && a.v >= 10 && (b.v-a.v == 1 || a.v-b.v == 1)
	return near && l.tokens[k].mark == '/' && l.tokens[k].glued && l.tokens[k+1].glued
}

// words is the figure as it was written.
func (f *figure) words(l *line) string {
	for k := range l.tokens {
		if l.tokens[k].figure == f {
			return l.words(l.tokens[k].from, l.tokens[k].to)
		}
	}
	return quantity.Exact(f.v)
}
