package drawing

import (
	"strings"
	"unicode/utf8"

	advance "handtight/bom/letter"
)

// Size of the letters and the distance of lines of text, in units. On paper a picture of
// 1040 units is 270 mm wide, so that a letter of 12 units is one of 8.8 points; a phone
// shows the narrow picture at about 1:1.
const (
	letter = 12.0
	leadin = 13.0
)

// allowance is what another sans serif may be wider than ours, and bold letters too.
const allowance = 1.08

// textWidth is the width that a text takes, at the most, in units.
func textWidth(s string) float64 {
	sum := 0
	for _, r := range s {
		sum += advance.Advance(r)
	}
	return float64(sum) * letter / 1000 * allowance
}

// boldWidth is the width of a text in bold letters.
func boldWidth(s string) float64 { return textWidth(s) * 1.08 }

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
