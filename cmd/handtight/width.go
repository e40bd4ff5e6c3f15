package main

import (
	"github.com/mattn/go-runewidth"
)

// cells measures text by the columns that it takes on a terminal: a Chinese, Japanese or
// Korean letter takes two, a mark that combines none. Letters whose width the standard
// leaves open (Unicode Standard Annex 11) count as narrow, as terminals draw them outside
// East Asia.
var cells = &runewidth.Condition{StrictEmojiNeutral: true}

// widthOf gives how many columns a text takes.
func widthOf(text string) int {
	n := 0
	for _, r := range text {
		if !narrow(r) {
			return cells.StringWidth(text)
		}
		n++
	}
	return n
}

// narrow reports whether a letter takes one column, for the letters and marks of most texts:
// those of Western Europe, dashes, quotation marks, the ellipsis. The library builds a table
// of all of Unicode at the first letter that it is asked for.
func narrow(r rune) bool {
	return r >= ' ' && r <= '~' || r >= 0xa0 && r <= 0x17f && r != 0xad || r >= 0x2010 && r <= 0x2027
}

// cut shortens text to a width, by whole letters, and marks that it did so.
func (u *ui) cut(text string, width int) string {
	if widthOf(text) <= width {
		return text
	}
	n, end := 0, 0 // of text, before the letter that has no room beside the mark
	for i, r := range text {
		if !narrow(r) {
			return cells.Truncate(text, max(1, width), "…")
		}
		if n++; n == max(1, width) {
			end = i
		}
	}
	return text[:end] + "…"
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
