package main

import (
	"strings"
	"unicode"
)

// clean takes from a text what would drive the terminal and not be read on it: control
// characters, and marks that turn the direction of writing. Line ends stay, and so do
// the colour codes of this program where colour is on.
func clean(text string, colour bool) string {
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

// drives reports whether a character acts on the terminal.
func drives(r rune) bool {
	return unicode.IsControl(r) && r != '\n' || r >= '\u202a' && r <= '\u202e' || r >= '\u2066' && r <= '\u2069'
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
