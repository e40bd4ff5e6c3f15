package workbook

import (
	"math"
	"strings"
	"unicode"
	"unicode/utf16"
	"unicode/utf8"

	"handtight/bom/letter"
)

// cellLimit is the most UTF-16 units that a cell holds.
// Source: ECMA-376 part 1, 5th edition, and the published limits of spreadsheet
// programs (common practice): 32,767.
const cellLimit = 32767

// cutMark stands where a text was too long for a cell.
const cutMark = " … (cut: longer than a cell holds)"

// clean makes a text safe for a cell: bytes that are not text, and control
// characters, become the replacement character, line ends become \n, a tab a
// space, and a text too long for a cell is cut where the reader can see it.
func clean(s string) string {
	if plain(s) {
		return s
	}
	s = strings.NewReplacer("\r\n", "\n", "\r", "\n", "\t", " ").Replace(s)
	s = strings.Map(func(r rune) rune {
		if r != '\n' && unicode.IsControl(r) || r == 0xFFFE || r == 0xFFFF {
			return utf8.RuneError
		}
		return r
	}, s)
	return cut(s)
}

// plain reports whether a text needs no cleaning: short, printable ASCII.
func plain(s string) bool {
	if len(s) > cellLimit {
		return false
	}
	for i := range len(s) {
		if s[i] < ' ' || s[i] > '~' {
			return false
		}
	}
	return true
}

// cut shortens a text to what a cell holds, with cutMark at its end.
func cut(s string) string {
	units, room := 0, cellLimit-utf8.RuneCountInString(cutMark)
	keep := len(s)
	for i, r := range s {
		n := max(utf16.RuneLen(r), 1)
		if units+n > room && keep == len(s) {
			keep = i
		}
		units += n
	}
	if units <= cellLimit {
		return s
	}
	return s[:keep] + cutMark
}

// The type that the sheets are set in, and its measures in points and pixels
// (96 to the inch, as spreadsheet programs count).
const (
	fontName   = "Arial"
	fontSize   = 9.0
	lineHeight = 11.25 // of fontSize, points: 15 pixels, as spreadsheet programs give a line of Arial 9 (memory)
	digitWidth = 6.67  // pixels of one unit of column width: a digit of Arial 9
	cellMargin = 5.0   // pixels lost at both sides of a cell
	maxHeight  = 409.0
)

// looseness is how much wider than by its letters' widths a text is taken to be: programs
// round them to pixels, and a face put in Arial's place is a little wider in some letters
// than in its digits, in which columns are counted.
const looseness = 1.025

// boldWider is how much wider bold is, at most (memory).
const boldWider = 1.1

// textWidth gives the width of a text on one line, in pixels.
func textWidth(s string, size float64) float64 {
	sum := 0
	for _, r := range s {
		sum += letter.Advance(r)
	}
	return float64(sum) / 1000 * looseness * size * 96 / 72
}

// textLines counts the lines that a text takes in a column of that width,
// broken at spaces, and inside a word only when the word alone is too wide.
func textLines(s string, width, size float64) int {
	room := width*digitWidth - cellMargin
	if len(s) < int(room/(0.9*size*96/72)) && !strings.Contains(s, "\n") {
		return 1
	}
	lines := 0
	for part := range strings.SplitSeq(s, "\n") {
		lines += paragraphLines(part, room, size)
		if lines >= mostLines {
			return mostLines
		}
	}
	return lines
}

// mostLines is more than fit into the tallest row: counting stops there.
const mostLines = 40

func paragraphLines(s string, room, size float64) int {
	lines, used := 1, 0.0
	space := textWidth(" ", size)
	for word := range strings.FieldsSeq(s) {
		w := textWidth(word[:min(len(word), 4000)], size) // far more than fit
		if used > 0 && used+space+w > room {
			lines, used = lines+1, 0
		}
		if used > 0 {
			used += space
		}
		if lines >= mostLines {
			return mostLines
		}
		if used += w; used > room {
			more := int(used / room)
			lines, used = lines+more, used-float64(more)*room
		}
	}
	return lines
}

// rowHeight gives the height in points of a row whose tallest cell has that
// many lines.
func rowHeight(lines int, size float64) float64 {
	h := float64(max(lines, 1))*lineHeight*size/fontSize + 0.75
	return math.Min(math.Ceil(h*4)/4, maxHeight)
}
