package title

import (
	"strings"
	"unicode/utf8"
)

// strange reports a part that no word names, or none that is understood, and that has a size of
// a pipe thread: a fraction of an inch. Its ends are read, and are asked about.
func (l *line) strange() bool {
	if l.one || l.shape != nil {
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
		thread = thread || l.tokens[k].value(classFamily) == "THREAD"
		sex = sex || l.tokens[k].is(classSex) != nil
	}
	return thread && sex
}

// unnamed says why the part is not known.
func (l *line) unnamed() string {
	if words := l.strangeWords(); words != "" {
		return "Not understood: " + words + "."
	}
	return "No word of the text names it."
}

// litres takes 15L for a volume where nothing but a name that is not understood
// stands beside it; else it is the tube of a cone.
func (l *line) litres() {
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
