package drawing

import (
	"strings"
	"unicode/utf8"

	"golang.org/x/text/width"
)

// Size of the letters and the distance of lines of text, in units. On paper a picture of
// 1040 units is 270 mm wide, so that a letter of 12 units is one of 8.8 points; a phone
// shows the narrow picture at about 1:1.
const (
	letter = 12.0
	leadin = 13.0
)

// advance holds the widths of the printable ASCII letters of the standard sans serif of
// PostScript, in thousandths of the letter's size.
// Source: the font's published metrics file (Core 14 AFM), from memory; the test in a
// browser holds drawn widths against it.
var advance = [95]int{
	278, 278, 355, 556, 556, 889, 667, 191, 333, 333, 389, 584, 278, 333, 278, 278, // space to /
	556, 556, 556, 556, 556, 556, 556, 556, 556, 556, 278, 278, 584, 584, 584, 556, // 0 to ?
	1015, 667, 667, 722, 722, 667, 611, 778, 722, 278, 500, 667, 556, 833, 722, 778, // @ to O
	667, 778, 722, 667, 611, 722, 667, 944, 667, 667, 611, 278, 278, 278, 469, 556, // P to _
	333, 556, 556, 500, 556, 556, 278, 556, 556, 222, 222, 500, 222, 833, 556, 556, // ` to o
	556, 556, 333, 500, 278, 556, 500, 722, 500, 500, 500, 334, 260, 334, 584, // p to ~
}

// allowance is what another sans serif may be wider than ours, and bold letters too.
const allowance = 1.08

// textWidth is the width that a text takes, at the most, in units.
func textWidth(s string) float64 {
	sum := 0
	for _, r := range s {
		switch {
		case r >= ' ' && r <= '~':
			sum += advance[r-' ']
		case wide(r) || r == '…':
			sum += 1000
		default:
			sum += 700
		}
	}
	return float64(sum) * letter / 1000 * allowance
}

// boldWidth is the width of a text in bold letters.
func boldWidth(s string) float64 { return textWidth(s) * 1.08 }

func wide(r rune) bool {
	k := width.LookupRune(r).Kind()
	return k == width.EastAsianWide || k == width.EastAsianFullwidth || r >= 0x1F000
}

// shorten cuts a text in the middle so that it fits; its whole stands in the title.
func shorten(s string, fit float64) string {
	if textWidth(s) <= fit {
		return s
	}
	runes := []rune(s)
	for keep := len(runes) - 1; keep > 1; keep-- {
		head := (keep + 1) / 2
		short := string(runes[:head]) + "…" + string(runes[len(runes)-(keep-head):])
		if textWidth(short) <= fit {
			return short
		}
	}
	return "…"
}

// breakName breaks a name at hyphens, slashes and spaces into at most `most` lines that
// fit; what still does not fit is shortened in the middle.
func breakName(s string, fit float64, most int) []string {
	s = strings.TrimSpace(s)
	var lines []string
	for len(lines) < most-1 && textWidth(s) > fit {
		cut := 0
		for i, r := range s {
			if !strings.ContainsRune("-/ ·,", r) {
				continue
			}
			end := i + utf8.RuneLen(r)
			if textWidth(strings.TrimSpace(s[:end])) > fit {
				break
			}
			cut = end
		}
		if cut == 0 || cut >= len(s) {
			break
		}
		lines = append(lines, strings.TrimSpace(s[:cut]))
		s = strings.TrimSpace(s[cut:])
	}
	return append(lines, shorten(s, fit))
}
