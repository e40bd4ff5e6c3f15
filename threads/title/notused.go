package title

import (
	"strings"

	"handtight/threads"
)

// notUsed lists what was understood and changes nothing: figures that are no
// size of an end and have no field of their own, codes, and words of an end that
// could not be put on one.
func (l *line) notUsed() []threads.NotUsed {
	var out []threads.NotUsed
	for k := 0; k < len(l.tokens); k++ {
		if end := l.codeEnd(k); end > k {
			out = append(out, threads.NotUsed{Words: l.words(l.tokens[k].from, l.tokens[end-1].to), Why: "taken for a code"})
			k = end - 1
			continue
		}
		f := l.tokens[k].figure
		if f == nil || f.used || f.role.used() {
			continue
		}
		out = append(out, threads.NotUsed{Words: l.words(l.tokens[k].from, l.figureEnd(k)), Why: l.why(f)})
	}
	return append(out, l.ignored...)
}

// why says why a figure is no end's.
func (l *line) why(f *figure) string {
	if why := whyNot[f.role]; why != "" {
		return why
	}
	switch {
	case l.shape != nil && l.shape.ends < 0 && l.shape.kind != "":
		return article(l.shape.kind) + " has no end"
	case l.shape != nil && l.shape.ends < 0:
		return "no end: the words name no part with one"
	case f.kind == mmSize && !l.evidence:
		return "a measure: nothing says that it is of an end"
	}
	return "no end has it"
}

// figureEnd takes the unit glued or set behind a figure into its words.
func (l *line) figureEnd(k int) int {
	end := l.tokens[k].to
	if k+1 < len(l.tokens) {
		next := &l.tokens[k+1]
		if next.figure == nil && next.mark == 0 && (next.is(classUnit) != nil && next.is(classFamily) == nil || next.is(classAfter) != nil) {
			end = next.to
		}
	}
	return end
}

// codeEnd is where a code ends that begins at a token: letters that mean nothing
// run together with figures (AB-1234, TK412M3). It gives k where none begins.
func (l *line) codeEnd(k int) int {
	if k+1 == len(l.tokens) || !l.tokens[k+1].glued {
		return k
	}
	return l.gluedEnd(k)
}

// gluedEnd is where a code ends that begins at a token which another is glued to.
func (l *line) gluedEnd(k int) int {
	if first := &l.tokens[k]; len(first.word.all()) > 0 && wide(l.norm, first.from) {
		return k
	}
	end, letters, figures := k+1, l.tokens[k].unread, l.numbered(k)
	for end < len(l.tokens) && l.tokens[end].glued && end-k < longestCode {
		it := &l.tokens[end]
		if it.mark != 0 && it.mark != '-' && it.mark != '/' || it.figure != nil && it.figure.used {
			break
		}
		if len(it.word.all()) > 0 && wide(l.norm, it.from) {
			break // scripts without blanks: what is understood behind a code is no part of it
		}
		letters, figures = letters || it.unread, figures || l.numbered(end)
		end++
	}
	for end > k && l.tokens[end-1].mark != 0 {
		end--
	}
	if !letters || !figures || end-k < 2 || l.tokens[k].figure != nil && l.tokens[k].figure.used {
		return k
	}
	return end
}

// longestCode is how many letters, figures and marks run together a code has at most: what runs on longer is none, and shall not be looked
// through again from each of its places.
const longestCode = 40

// numbered reports a figure, or a number that was a word.
func (l *line) numbered(k int) bool {
	it := &l.tokens[k]
	return it.figure != nil || it.unread && digit(l.norm[it.from])
}

// inCode reports whether a token is part of a code.
func (l *line) inCode(k int) bool {
	from := k
	for from > 0 && l.tokens[from].glued && k-from < longestCode {
		from--
	}
	for ; from <= k; from++ {
		if end := l.codeEnd(from); end > k {
			return true
		}
	}
	return false
}

// ignore notes a word that was understood and could not be put on an end.
func (l *line) ignore(words, why string) {
	if words = strings.TrimSpace(words); words != "" {
		l.ignored = append(l.ignored, threads.NotUsed{Words: words, Why: why})
	}
}
