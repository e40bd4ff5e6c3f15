package title

import (
	"bytes"
	"strings"
	"unicode/utf8"

	"handtight/pressure/nearest"
)

// strange reports a part that no word names, or none that is understood, and that has a size of
// a pipe thread: a fraction of an inch. Its ends are read, and are asked about.
func (l *line) strange() bool {
	if l.one || l.shape != nil || l.pipeSign() {
		return false
	}
	size := false
	for k := range l.tokens {
		if f := l.tokens[k].figure; f != nil && f.kind == inchSize {
			if !f.frac || f.v > 2 {
				return false
			}
			size = true
		}
	}
	return size
}

// pipeSign reports the Chinese and Japanese sign for pipe where every word is understood and none names a part: PVC管 3/4吋 is pipe by itself.
func (l *line) pipeSign() bool {
	pipe := bytes.Contains(l.norm, []byte("管"))
	return pipe && !anyToken(l.tokens, func(it *token) bool {
		return it.unread && !it.code || it.is(classKind) != nil || it.is(classEnd) != nil || it.is(classSex) != nil || it.is(classFamily) != nil
	})
}

// strangeGrip reports a line whose first word is not understood, names no part that is, and gives one
// size in millimetres with the word of a grip: Afsluitplaatje knel 15 mm.
func (l *line) strangeGrip() bool {
	if l.one || l.shape != nil || !l.takesTubes() && !l.namesHose() || !anyToken(l.tokens, func(it *token) bool { return it.unread && !it.code && it.to-it.from >= shortestNoun }) {
		return false
	}
	sizes := 0
	for k := range l.tokens {
		if f := l.tokens[k].figure; f != nil && f.sized() {
			if f.kind != mmSize {
				return false
			}
			sizes++
		}
	}
	return sizes == 1
}

// shortestNoun is the length in letters from which a first word that is not understood may be the
// part's name. A judgement.
const shortestNoun = 6

// strangeWords are the words that are not understood, quoted.
func (l *line) strangeWords() string {
	var out []string
	for _, w := range l.unknown() {
		if len(out) < 3 {
			out = append(out, quote(w))
		}
	}
	return strings.Join(out, ", ")
}

// saysThread reports whether the line says that there is a thread, and of which sex.
func (l *line) saysThread() bool {
	thread, sex := false, false
	for k := range l.tokens {
		thread = thread || l.tokens[k].is(classFamily) != nil
		if m := l.tokens[k].is(classSex); m != nil {
			sex, thread = true, thread || !m.weak() && !sexOnly[m.tongue]
		}
	}
	return thread && sex
}

// saddleBranch reports a size of a thread on a saddle.
func (l *line) saddleBranch() bool {
	return anyToken(l.tokens, func(it *token) bool {
		f := it.figure
		return f != nil && (f.kind == inchSize || f.kind == dnSize || f.kind == fenSize || f.kind == frenchSize) || it.is(classFamily) != nil || it.value(classEnd) == "BARB"
	})
}

// flareNut reports a nut and a thread that is named with it.
func (l *line) flareNut() bool {
	family := anyToken(l.tokens, func(it *token) bool { return dashWord(it.is(classFamily)) })
	return family && anyToken(l.tokens, func(it *token) bool { return it.value(classAttr) == "nut" })
}

// sexedSize reports whether a sex stands right beside an inch size, or holds for both ends.
func (l *line) sexedSize() bool {
	for k := range l.tokens {
		f, prev, next := l.tokens[k].figure, at(l.tokens, k-1), at(l.tokens, k+1)
		if f != nil && (f.kind == inchSize || f.kind == fenSize) && (f.frac || f.marked || f.kind == fenSize) && (prev.is(classSex) != nil || next.is(classSex) != nil) || l.both && l.tokens[k].is(classSex) != nil {
			return true
		}
	}
	return false
}

// joinsEnds reports two sizes of an inch with an x or a to between them, each with the word for a tail or a sex right behind it.
func (l *line) joinsEnds() bool {
	said := func(k int) bool {
		f := l.tokens[k].figure
		if f == nil || !f.frac && !f.marked {
			return false
		}
		next := at(l.tokens, k+1)
		return next.is(classSex) != nil || next.value(classEnd) == "BARB"
	}
	first := -1
	for k := range l.tokens {
		switch {
		case said(k) && first >= 0:
			return anyToken(l.tokens[first:k], func(it *token) bool { return it.value(classSep) == "x" })
		case said(k):
			first = k
		}
	}
	return false
}

// unnamed says why the part is not known.
func (l *line) unnamed() string {
	if words := l.strangeWords(); words != "" {
		return "Not understood: " + words + "."
	}
	return "No word of the text names it."
}

// plainNuts are the words for a nut of any sort, a bolt's too.
var plainNuts = map[string]bool{"ecrou": true, "tuerca": true, "tuercas": true, "porca": true, "porcas": true, "mutter": true}

// plainNut reports whether a nut of which nothing more is said is all that the line names.
func (l *line) plainNut() bool {
	nut := false
	for k := range l.tokens {
		it := &l.tokens[k]
		if it.is(classFamily) != nil || it.is(classSex) != nil || it.is(classEnd) != nil {
			return false
		}
		switch v := it.value(classAttr); {
		case v == "nut" && plainNuts[string(l.norm[it.from:it.to])]:
			nut = true
		case v != "" && v != "left":
			return false
		}
	}
	return nut
}

// litres takes 15L for a volume where nothing but a name that is not understood
// stands beside it; else it is the tube of a cone.
func (l *line) litres() {
	if l.shape != nil && (l.shape.name == "expansion vessel" || l.shape.name == "tank") {
		for k := range l.tokens {
			if f := l.tokens[k].figure; f != nil && f.kind == coneSize && f.series == 'l' {
				f.drop(asVolume) // what it holds
			}
		}
	}
	if l.evidence {
		return
	}
	unread := false
	for k := range l.tokens {
		unread = unread || l.tokens[k].unread
	}
	for k := range l.tokens {
		if f := l.tokens[k].figure; f != nil && f.kind == coneSize {
			if unread && f.series == 'l' {
				f.drop(asVolume)
				continue
			}
			l.evidence = true
		}
	}
}

// mayBeSex reports whether a word that is not understood stands where shops write a sex: beside the
// word for a thread (سن خارجي), or as up to four capitals right behind a size or a family (1/2" MŽ).
func (l *line) mayBeSex(tokens []token, k int) bool {
	it, before, after := &tokens[k], at(tokens, k-1), at(tokens, k+1)
	if before.value(classFamily) == "THREAD" || after.value(classFamily) == "THREAD" {
		return true
	}
	if (before.figure == nil || !before.figure.sized()) && before.is(classFamily) == nil {
		return false
	}
	word := l.words(it.from, it.to)
	return utf8.RuneCountInString(word) <= 4 && strings.ToUpper(word) == word && strings.ToLower(word) != word
}

// misspelt reports whether a word that is not understood is a letter away from a word for a sex, or
// has two of its letters swapped: mael, femal, maco.
func (l *line) misspelt(it *token) bool {
	word := l.norm[it.from:it.to]
	if len(word) < shortestMisspelt-1 || wide(l.norm, it.from) {
		return false
	}
	for _, sex := range l.lex.sexWords {
		// One letter more, fewer or changed, or two swapped, leave the first or the last as it is.
		if d := len(sex) - len(word); d < -2 || d > 2 || sex[0] != word[0] && sex[len(sex)-1] != word[len(word)-1] {
			continue
		}
		if nearest.Distance(string(word), sex, 1) == 1 {
			return true
		}
	}
	return false
}

// shortestMisspelt is the length in letters from which a word for a sex is still told from other
// words with a letter wrong. A judgement.
const shortestMisspelt = 4

// sundered finds the first name of several words, or figure with its unit or the word before it, that
// a word which is not understood stands in: "hose zwquv nipple", "8 zwquv mm". What the two sides say
// apart is not what they say together.
func (l *line) sundered() string {
	for k := range l.tokens {
		it, before, after := &l.tokens[k], at(l.tokens, k-1), at(l.tokens, k+1)
		if !it.unread || it.code || k == 0 || k+1 == len(l.tokens) {
			continue
		}
		measure := before.figure != nil && before.figure.kind == bare && !before.figure.frac && (after.is(classUnit) != nil || after.is(classAfter) != nil)
		called := after.figure != nil && before.is(classBefore) != nil
		nominal := before.figure != nil && before.figure.kind == mmSize && after.is(classFamily) != nil // 20 mm zwquv BSP
		if measure || called || nominal || l.nameAround(k) {
			return l.words(before.from, after.to)
		}
	}
	return ""
}

// nameAround reports whether the words on both sides of a token are one name of the lexicon.
func (l *line) nameAround(k int) bool {
	word := func(it *token) bool { return it.mark == 0 && it.figure == nil }
	for from := k - 1; from >= max(0, k-3) && word(&l.tokens[from]); from-- {
		left := phraseKey(l.norm[l.tokens[from].from:l.tokens[k-1].to])
		for to := k + 1; to < min(len(l.tokens), k+4) && word(&l.tokens[to]); to++ {
			name := append(append(left[:len(left):len(left)], ' '), phraseKey(l.norm[l.tokens[k+1].from:l.tokens[to].to])...)
			if l.lex.word(string(name)) != nil {
				return true
			}
		}
	}
	return false
}
