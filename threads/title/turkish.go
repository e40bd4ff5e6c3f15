package title

import (
	"slices"
	"strings"
)

// turkish tells diş (thread) from dış (outside), which are one word where the points of the
// letters are left away: dış diş is a male thread, iç diş a female one, iç-dış one of each.
// Without the points and without a hyphen or a stroke the last word is taken for the thread.
func (l *line) turkish(k int) {
	it := &l.tokens[k]
	if it.to-it.from < 3 || string(l.norm[it.to-3:it.to]) != "dis" || it.word == nil {
		return
	}
	written := l.words(it.from, it.to)
	last := []rune(written)[len([]rune(written))-3:]
	dotless := last[1] == 'ı' || last[1] == 'I' && (last[2] == 'Ş' || last[2] == 'ş')
	if it.to-it.from == 3 {
		keep := classFamily // a thread, of which no sex is said
		if dotless {
			keep = classSex
		}
		it.word = it.word.without(func(m *sense) bool { return (m.class == classFamily || m.class == classSex) && m.class != keep })
		return
	}
	sexes := 1
	if dotless || strings.ContainsAny(written, "-/") {
		sexes = 2
	}
	if alone := func(m *sense) bool { return m.class == classSex && len(m.sexes) == sexes }; slices.ContainsFunc(it.word.all(), alone) {
		it.word = it.word.without(func(m *sense) bool { return m.class == classSex && len(m.sexes) != sexes })
	}
}

// turkishOutside takes the sex from dış where iç çap, an inside diameter, stands behind it: it is the outside of a pipe.
func (l *line) turkishOutside(k int) {
	it := &l.tokens[k]
	inside := func(o *token) bool { return string(phraseKey(l.norm[o.from:o.to])) == "ic cap" }
	if string(l.norm[it.from:it.to]) == "dis" && at(l.tokens, k-1).figure != nil && anyToken(l.tokens[k:], inside) {
		it.word = l.lex.word("the")
	}
}

// turkishLetters reads İD and DD behind a size, short for iç diş and dış diş: an inside and an outside thread.
func (l *line) turkishLetters(k int) {
	it, size := &l.tokens[k], at(l.tokens, k-1).figure
	if it.to-it.from != 2 || size == nil || !size.frac && !size.marked {
		return
	}
	switch l.words(it.from, it.to) {
	case "İD", "İ.D":
		it.word, it.unread = l.lex.word("ig"), false
	case "DD":
		if l.speaks("tr") || strings.Contains(l.as, "İD") {
			it.word, it.unread = l.lex.word("ag"), false
		}
	}
}
