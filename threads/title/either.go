package title

// orWords part two sizes of which the part has one.
var orWords = map[string]bool{"or": true, "oder": true, "ou": true, "eller": true, "tai": true, "lub": true, "nebo": true, "или": true, "або": true, "veya": true}

// either takes 3/4 or 5/8 for one size that is left open: the second is asked about, and
// the first is named as the other.
func (l *line) either() {
	for k := range l.tokens {
		it, a, b := &l.tokens[k], at(l.tokens, k-1).figure, at(l.tokens, k+1).figure
		if a == nil || b == nil || a.kind != b.kind || !a.sized() || !orWords[string(l.norm[it.from:it.to])] {
			continue
		}
		b.or = l.words(l.tokens[k-1].from, l.tokens[k-1].to)
		it.word, it.unread = l.lex.words["the"], false
		a.drop(asEither)
	}
}

// words is the figure as it was written.
func (f *figure) words(l *line) string {
	for k := range l.tokens {
		if l.tokens[k].figure == f {
			return l.words(l.tokens[k].from, l.tokens[k].to)
		}
	}
	return trim(f.v)
}
