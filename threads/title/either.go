package title

import "handtight/pressure/quantity"

// orWords part two sizes of which the part has one.
var orWords = map[string]bool{"or": true, "oder": true, "ou": true, "eller": true, "tai": true, "lub": true, "nebo": true, "или": true, "або": true, "veya": true}

// either takes 3/4 or 5/8 for one size that is left open: the second is asked about, and
// the first is named as the other. So is 16/17 of a pipe, where no fitting joins two pipes
// a millimetre apart.
func (l *line) either() {
	for k := range l.tokens {
		it, a, b := &l.tokens[k], at(l.tokens, k-1).figure, at(l.tokens, k+1).figure
		if a == nil || b == nil || a.kind != b.kind || !a.sized() || !orWords[string(l.norm[it.from:it.to])] && !l.apart(k) {
			continue
		}
		b.or = l.words(l.tokens[k-1].from, l.tokens[k-1].to)
		it.word, it.unread = l.lex.word("the"), false
		a.drop(asEither)
	}
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
