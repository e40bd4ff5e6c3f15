package title

import (
	"bytes"
	"slices"
	"strings"
	"sync"
)

// wordLists are the lists of lexicon/lists.csv by their names: words, or parts of words, that are sought in the text itself, and of
// which no sense of the lexicon is made.
var wordLists = sync.OnceValue(func() map[string][]string {
	out := map[string][]string{}
	for _, r := range lexiconRows("lists.csv") {
		words := strings.Split(r["words"], "|")
		for _, w := range words[:len(words):len(words)] {
			s := normalise(w)
			if folded := string(s.norm); folded != w && !slices.Contains(words, folded) {
				words = append(words, folded) // a text is sought without the points and strokes of its letters
			}
		}
		out[r["list"]] = words
	}
	return out
})

// list is the list of a name; none if there is no such list.
func list(name string) []string { return wordLists()[name] }

// contains reports one of the words of a list anywhere in the text.
func (l *line) contains(name string) bool {
	text := l.plainBlanks()
	return slices.ContainsFunc(list(name), func(w string) bool { return bytes.Contains(text, []byte(w)) })
}

// plainBlanks is the line with one blank between its words: how many part them says nothing.
func (l *line) plainBlanks() []byte { return oneBlank(l.norm) }

// oneBlank is a text with one blank between its words, and none around it.
func oneBlank(text []byte) []byte {
	if !bytes.Contains(text, []byte("  ")) && !bytes.ContainsAny(text, "\t\n\r") {
		return bytes.Trim(text, " ")
	}
	return bytes.Join(bytes.Fields(text), []byte(" "))
}

// containsWord reports whether a word of a list stands in the line by itself: série l is no série lourde.
func (l *line) containsWord(name string) bool {
	text := string(l.plainBlanks())
	for _, w := range list(name) {
		if hasWord(text, w) {
			return true
		}
	}
	return false
}
