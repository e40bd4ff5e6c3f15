package title

import (
	"slices"
	"strings"
)

// together reports a word that says what comes with the part.
func (l *line) together(k int) bool {
	if k > 0 && l.tokens[k].figure != nil && l.tokens[k].figure.whole {
		k-- // c/w 2 clamps
	}
	it := &l.tokens[k]
	if l.shortWith(k) {
		return true
	}
	text := func(k int) []byte { return l.norm[l.tokens[k].from:l.tokens[k].to] }
	if andList.has(text(k)) {
		for j := range l.tokens[:k] {
			if withList.has(text(j)) {
				return true
			}
		}
		return false
	}
	if withList.has(text(k)) {
		return true
	}
	if it.mark == '/' && k > 0 && (string(text(k-1)) == "w" || string(text(k-1)) == "c" && it.glued) {
		return true // w/ bracket, c/empaque
	}
	return it.mark == '+' || it.mark == '&'
}

// meantFor reports a word that says what a part is for, or what it goes by; an article may stand between.
func (l *line) meantFor(k int) bool {
	if k >= 0 && l.tokens[k].figure != nil {
		k-- // voor 6 mm slang
	}
	if k < 0 {
		return false
	}
	first, _, _ := strings.Cut(string(l.norm[l.tokens[k].from:l.tokens[k].to]), " ") // for the
	switch first {
	case "the", "la", "le", "el", "die", "den", "das", "de", "het", "il", "lo":
		return k > 0 && l.tokens[k-1].is(classKind) == nil && l.meantFor(k-1)
	}
	switch first {
	case "am", "zum", "zur", "beim", "for", "pour", "per", "para", "für", "fur", "fuer", "voor", "dla", "для", "till", "til", "a":
		return true
	}
	return false
}

// shortWith reports the m. of "m. Dichtung" and "m. keerklep", and the m/ of the north before a size: with, and no male.
func (l *line) shortWith(k int) bool {
	it, next := &l.tokens[k], at(l.tokens, k+1)
	if next.mark == '/' && it.to-it.from == 1 && l.norm[it.from] == 'm' && !l.capital(it.from) && !it.glued && k > 0 && next.glued && !at(l.tokens, k+2).glued && at(l.tokens, k+2).figure != nil && l.speaks("no", "da", "sv") {
		return true // filter m/ 1" innv. gjenger
	}
	return it.to-it.from == 1 && l.norm[it.from] == 'm' && !it.glued && !l.capital(it.from) &&
		byteAt(l.norm, it.to) == '.' && (isBlank(byteAt(l.norm, it.to+1)) || next.from == it.to+1 && next.to-next.from > 2) && next.to > next.from && (letter(l.norm[next.from]) || next.figure != nil && at(l.tokens, k+2).value(classSep) == "x" && at(l.tokens, k+2).glued)
}

// withWord reads the m. that [line.shortWith] reports.
func (l *line) withWord(k int) {
	if l.shortWith(k) {
		l.tokens[k].word, l.tokens[k].unread = l.lex.word("with"), false
	}
}

// partShortWith parts the m. of "NPT m. Dichtung" from the name before it, with which it would be a male.
func (l *line) partShortWith() {
	if !l.seen.word(classFamily) {
		return
	}
	for k := 0; k < len(l.tokens); k++ {
		if l.tokens[k].is(classFamily) == nil {
			continue
		}
		it := l.tokens[k]
		m := it.to - 1
		if m-it.from < 2 || l.norm[m] != 'm' || !isBlank(l.norm[m-1]) {
			continue
		}
		l.tokens = slices.Insert(l.tokens, k+1, token{from: m, to: it.to, word: l.lex.word("m")})
		if !l.shortWith(k + 1) {
			l.tokens = slices.Delete(l.tokens, k+1, k+2)
			continue
		}
		name := strings.TrimSpace(string(l.norm[it.from:m]))
		l.tokens[k].to, l.tokens[k].word = it.from+len(name), l.lex.word(name)
	}
}

// plusBefore reports whether a plus stands between a part's name and the name or the size
// before it: elbow 3/8 + ball valve.
func (l *line) plusBefore(k int) bool {
	if at(l.tokens, k-1).mark == '+' && anyToken(l.tokens[:k-1], func(it *token) bool { return it.figure != nil && it.figure.sized() }) && at(l.tokens, k-2).figure == nil {
		return true // G 1/4 fill port + plug
	}
	for j := k - 1; j >= 0 && l.tokens[j].is(classKind) == nil; j-- {
		if l.tokens[j].mark == '+' {
			return true
		}
		if f := l.tokens[j].figure; f != nil && (f.kind != bare || f.frac) {
			return false
		}
	}
	return false
}

// unknownPart reports a word that is not understood before the plus at which another part begins.
func (l *line) unknownPart(k int) bool {
	return k > 1 && anyToken(l.tokens[:k-1], func(it *token) bool { return it.unread && !it.code })
}

// forWord reads the f. before a noun of German, which is the short für: f. Druckluft. A sex is written so too, and
// stands before an x, a size or the end.
func (l *line) forWord(k int) {
	it, next := &l.tokens[k], at(l.tokens, k+1)
	if l.one || it.to-it.from != 1 || l.norm[it.from] != 'f' || it.glued || l.capital(it.from) || byteAt(l.norm, it.to) != '.' || next.to-next.from < 4 || next.figure != nil || !letter(l.norm[next.from]) {
		return
	}
	for j := range l.tokens {
		if j != k && len(l.tokens[j].word.all()) > 0 && l.tokens[j].word.all()[0].tongue == "en" {
			return // nipple 1/2 f. Water
		}
	}
	if !l.capital(next.from) || !l.bothCases() || next.is(classMaterial) != nil || next.is(classFamily) != nil || next.is(classSex) != nil {
		return
	}
	it.word, it.unread = l.lex.word("für"), false
}

// asideOfEnds reports whether the token stands in a bracket or behind a comma, and before that an end of some
// size is described: what is said aside is no name of the part.
func (l *line) asideOfEnds(k int) bool {
	for k--; k > 0; k-- {
		switch l.tokens[k].mark {
		case ',', ';', '(', '+':
			return anyToken(l.tokens[:k], func(it *token) bool { return it.figure != nil && it.figure.sized() }) &&
				anyToken(l.tokens[:k], func(it *token) bool {
					return it.is(classFamily) != nil || it.is(classSex) != nil || it.is(classEnd) != nil
				})
		}
	}
	return false
}

// forBefore reports whether between the name of a part before it and the word at k stands a word for what the part is for, and
// none for another part: nut for 1/2 compression elbow.
func (l *line) forBefore(k int) bool {
	for j := k - 1; j > 0; j-- {
		it := &l.tokens[j]
		if it.figure != nil {
			continue
		}
		if it.mark != 0 || it.is(classKind) != nil || it.value(classSep) != "" {
			return false
		}
		switch string(l.norm[it.from:it.to]) {
		case "for", "für", "fur", "fuer", "pour", "para", "voor", "dla", "для", "till", "til":
			return true
		}
	}
	return false
}

// hoseBefore reports a word for hose before the one at k, and a thread with its name between them.
func (l *line) hoseBefore(k int) bool {
	named := false
	for j := k - 1; j >= 0; j-- {
		it := &l.tokens[j]
		if m := it.is(classFamily); m != nil && m.value != "THREAD" {
			named = true
		}
		if m := it.is(classKind); it.value(classEnd) == "HOSE" || m != nil && m.shape.traits&hose != 0 {
			return named
		}
	}
	return false
}

// spareFor reports whether the line begins with what has no end, and then says what it is for.
func (l *line) spareFor(k int) bool {
	if l.shape == nil || l.shape.ends >= 0 {
		return false
	}
	for j := range l.tokens[:k] {
		if m := l.tokens[j].is(classKind); m != nil {
			if j++; l.tokens[j].mark == ',' {
				j++ // clamp, for 3/4 hose barb
			}
			return m.shape == l.shape && j < k && l.meantFor(j) && l.tokens[j].figure == nil
		}
		if l.tokens[j].is(classNoise) == nil && l.tokens[j].is(classMaterial) == nil && l.tokens[j].figure == nil {
			return false
		}
	}
	return false
}

// sparesOf reports whether the word at k stands right behind the name of the part that it is for, and no figure before it.
func (l *line) sparesOf(k int) bool {
	return k > 0 && !l.one && l.shape != nil && l.tokens[k-1].is(classKind) != nil && !l.figured(k) && l.plural(&l.tokens[k])
}

// includedBehind reports a word among the three behind the name of a part that says the part comes with it: bouchons inclus, cap included.
func (l *line) includedBehind(k int) bool {
	for j := k + 1; j < min(len(l.tokens), k+4); j++ {
		it := &l.tokens[j]
		if it.figure != nil || it.mark != 0 || it.is(classSex) != nil || it.is(classFamily) != nil {
			return false
		}
		if withItList.has(l.norm[it.from:it.to]) {
			return at(l.tokens, j+1).figure == nil // incl. 20 % MwSt
		}
	}
	return false
}

// plugBeside takes the thread of a plug that comes with a valve, a strainer or a pump from its ends, and names it: ball valve G 1/2 female both ends, with plug
// G 1/4; Schmutzfänger G 3/4 IG, Ablassschraube G 1/4. A comma or a with stands before it, and a size before that.
func (l *line) plugBeside(k int, s *shape) bool {
	if l.one || s.kind != "plug" || k == 0 || l.shape == nil || l.shape.kind == "plug" || !l.is(valve) && !l.is(through) && !l.is(pump) && l.shape.name != "strainer" || l.sizesBefore(k) == 0 {
		return false
	}
	if l.tokens[k-1].mark != ',' && !l.together(k-1) && !(l.tokens[k-1].unread && at(l.tokens, k-2).mark == ',') {
		return false
	}
	to := k + 1
	for to < len(l.tokens) && !l.endsBreath(to) {
		to++
	}
	l.ignore(l.words(l.tokens[k].from, l.tokens[to-1].to), "it comes with the part")
	for j := k; j < to; j++ {
		if f := l.tokens[j].figure; f != nil {
			f.drop(asWhatFor)
			f.used = true // named with its words
		}
		l.tokens[j].word, l.tokens[j].unread = l.lex.word("the"), false
	}
	return true
}
