package main

import (
	"strings"
	"unicode"
	"unicode/utf8"
)

// clean takes from a text what would drive the terminal and not be read on it: control
// characters, and marks that turn the direction of writing. Line ends stay, and so do
// the colour codes of this program where colour is on.
func clean(text string, colour bool) string {
	text = strings.ToValidUTF8(text, string(unicode.ReplacementChar))
	if !strings.ContainsFunc(text, drives) {
		return text
	}
	var b strings.Builder
	for i, r := range text {
		if drives(r) && !(colour && r == '\x1b' && isColour(text[i:])) {
			r = unicode.ReplacementChar
		}
		b.WriteRune(r)
	}
	return b.String()
}

// drives reports whether a character acts on the terminal: a control character (C0 and
// C1), or one that turns the direction of writing (Unicode Standard Annex 9) or begins a
// line.
func drives(r rune) bool {
	switch {
	case r == '\n':
		return false
	case r < utf8.RuneSelf:
		return r < ' ' || r == 0x7f
	case r == '\u061c', r == '\u200e', r == '\u200f', r == '\u2028', r == '\u2029':
		return true
	}
	return r < 0xa0 || r >= '\u202a' && r <= '\u202e' || r >= '\u2066' && r <= '\u2069'
}

// isColour reports whether a text begins with one of the colour codes that paint writes.
func isColour(text string) bool {
	for _, code := range []string{"0", red, yellow, cyan, green, bold} {
		if strings.HasPrefix(text, "\x1b["+code+"m") {
			return true
		}
	}
	return false
}
