package fix

import (
	"strings"
	"unicode/utf8"

	"handtight/bom/source"
)

type faultList = source.Faults

// offset is the place in a text of a line and a column, both counted from 1, columns in
// characters.
func offset(text string, line, column int) (int, bool) {
	at := 0
	for range line - 1 {
		i := strings.IndexByte(text[at:], '\n')
		if i < 0 {
			return 0, false
		}
		at += i + 1
	}
	for range column - 1 {
		if at >= len(text) {
			return 0, false
		}
		_, n := utf8.DecodeRuneInString(text[at:])
		at += n
	}
	return at, true
}

// addItems puts new items behind the last of the file's own, in its style of line ends.
func addItems(text string, items []string) string {
	if len(items) == 0 {
		return text
	}
	end := "\n"
	if strings.Contains(text, "\r\n") {
		end = "\r\n"
	}
	block := ""
	for _, it := range items {
		block += end + strings.ReplaceAll(strings.TrimSuffix(it, "\n"), "\n", end) + end
	}
	if text != "" && !strings.HasSuffix(text, "\n") {
		text += end
	}
	return text + block
}
