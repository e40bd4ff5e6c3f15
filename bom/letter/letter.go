// Package letter knows how wide letters are drawn, for what is laid out without a font at hand.
package letter

import "golang.org/x/text/width"

// advance holds the widths of the printable ASCII letters of the standard sans serif of
// PostScript, in thousandths of the letter's size. Faces made to its measure share them.
// Source: the font's published metrics file (Core 14 AFM), from memory; equal to the advance
// widths in the tables of Liberation Sans 1.07.4, read on 2026-11-28.
var advance = [95]int{
	278, 278, 355, 556, 556, 889, 667, 191, 333, 333, 389, 584, 278, 333, 278, 278, // space to /
	556, 556, 556, 556, 556, 556, 556, 556, 556, 556, 278, 278, 584, 584, 584, 556, // 0 to ?
	1015, 667, 667, 722, 722, 667, 611, 778, 722, 278, 500, 667, 556, 833, 722, 778, // @ to O
	667, 778, 722, 667, 611, 722, 667, 944, 667, 667, 611, 278, 278, 278, 469, 556, // P to _
	333, 556, 556, 500, 556, 556, 278, 556, 556, 222, 222, 500, 222, 833, 556, 556, // ` to o
	556, 556, 333, 500, 278, 556, 500, 722, 500, 500, 500, 334, 260, 334, 584, // p to ~
}

// Advance gives the width of a letter in thousandths of its size; of one beyond ASCII no
// less than it is in common faces.
func Advance(r rune) int {
	switch {
	case r >= ' ' && r <= '~':
		return advance[r-' ']
	case wide(r) || r == '…':
		return 1000
	}
	return 700
}

// wide reports whether a letter takes a whole square.
func wide(r rune) bool {
	k := width.LookupRune(r).Kind()
	return k == width.EastAsianWide || k == width.EastAsianFullwidth || r >= 0x1F000
}
