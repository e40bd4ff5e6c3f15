package cart

import (
	"slices"

	"handtight/threads"
)

// passedOver lists the words of a line that covers a need and that nothing here understands or
// weighs, as on which side its lever is: neither the reader of ends, nor the tables of what shops call kinds and sorts of parts, nor
// the words of the need itself. They take nothing from it, so they are named, lest somebody
// takes them for checked.
func passedOver(l *Line, n *need) []string {
	var out []string
	list := wordList(l.Text)
	for _, word := range l.Reading.Unread {
		parts := wordList(word)
		if !slices.ContainsFunc(parts, func(w string) bool { return !understood(list, w, n) }) {
			continue
		}
		if !slices.Contains(out, word) {
			out = append(out, word)
		}
	}
	for _, words := range l.facts.notes {
		if !slices.Contains(out, words) {
			out = append(out, words)
		}
	}
	for _, u := range l.Reading.NotUsed {
		if u.Why == threads.SideOfThePart && !slices.Contains(out, u.Words) {
			out = append(out, u.Words)
		}
	}
	return out
}

// understood reports whether one of the tables, or the need, has a word of a line.
func understood(list []string, word string, n *need) bool {
	if slices.Contains(n.facts.words, word) || isMaterial(word) {
		return true
	}
	for class := range classes() {
		if is(class, word) {
			return true
		}
	}
	for i := range list {
		for _, book := range []phraseBook{kindWords(), traitWords().words} {
			if p, ok := book.at(list, i); ok && slices.Contains(list[i:min(i+len(p.words), len(list))], word) {
				return true
			}
		}
	}
	return false
}
