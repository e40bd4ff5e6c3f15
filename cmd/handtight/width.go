package main

import (
	"strings"

	"github.com/mattn/go-runewidth"
)

// cells measures text by the columns that it takes on a terminal: a Chinese, Japanese or
// Korean letter takes two, a mark that combines none. Letters whose width the standard
// leaves open (Unicode Standard Annex 11) count as narrow, as terminals draw them outside
// East Asia.
var cells = &runewidth.Condition{StrictEmojiNeutral: true}

// widthOf gives how many columns a text takes.
func widthOf(text string) int {
	for i := range len(text) {
		if text[i] < ' ' || text[i] > '~' {
			return cells.StringWidth(text)
		}
	}
	return len(text)
}

// cut shortens text to a width, by whole letters, and marks that it did so.
func (u *ui) cut(text string, width int) string {
	if widthOf(text) <= width {
		return text
	}
	return cells.Truncate(text, max(1, width), "…")
}

// cutWords shortens text as cut does, behind a whole word where one ends near enough.
func (u *ui) cutWords(text string, width int) string {
	const near = 16
	short := u.cut(text, width)
	if short == text {
		return text
	}
	if at := strings.LastIndexByte(short, ' '); at > 0 && widthOf(short[at:]) <= near {
		return strings.TrimRight(short[:at], " ,;:") + " …"
	}
	return short
}

// broken cuts words that are wider than a line, and have letters of two columns, before
// such a letter.
func broken(words []string, width int) []string {
	for i, word := range words {
		if len(word) <= width || widthOf(word) <= width || width < 2 {
			continue
		}
		out := append([]string{}, words[:i]...)
		for _, w := range words[i:] {
			out = append(out, pieces(w, width)...)
		}
		return out
	}
	return words
}

// pieces cuts one word.
func pieces(word string, width int) []string {
	var out []string
	from, used, at := 0, 0, 0 // at: the last place to cut
	for i, r := range word {
		n := cells.RuneWidth(r)
		if n > 1 && i > from {
			at = i
		}
		if used+n > width && at > from {
			out = append(out, word[from:at])
			from, used = at, widthOf(word[at:i])
		}
		used += n
	}
	return append(out, word[from:])
}
