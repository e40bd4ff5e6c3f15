package title

import "strings"

// plainCells gives a row of a dump, whose cells stand in quotes, with its cells parted as a list parts them: ('A1', 'elbow 1/2"', 3) is
// | A1 | elbow 1/2" | 3 |. Each sign stays at its place, so that what is read of the row can still be pointed at. A text that is no such row is given back.
func plainCells(text string) string {
	if !mayBeRow(text) {
		return text
	}
	out, quotes, depth := []byte(text), 0, 0
	for i := 0; i < len(text); i++ {
		switch b := text[i]; {
		case (b == '\'' || b == '"') && opensCell(text, i):
			end := closingQuote(text, i)
			if end < 0 {
				return text
			}
			out[i], out[end] = ' ', ' '
			quotes++
			i = end
		case b == ',':
			out[i] = '|'
		case b == '(' && strings.TrimSpace(text[:i]) == "":
			out[i] = ' '
			depth++
		case b == ')' && depth > 0 && strings.Trim(text[i+1:], " ,;") == "":
			out[i] = ' '
		}
	}
	if quotes == 0 {
		return text
	}
	return string(out)
}

// mayBeRow reports a text that begins as a row of a dump does: with a quote, a bracket and a quote or a number and a comma, and that has a quote
// beside a comma.
func mayBeRow(text string) bool {
	i := 0
	for i < len(text) && (text[i] == ' ' || text[i] == '(') {
		i++
	}
	if i == len(text) || text[i] != '\'' && text[i] != '"' && !(digit(text[i]) && i > 0) {
		return false
	}
	for _, beside := range [...]string{"',", "\",", ",'", ",\"", ", '", ", \""} {
		if strings.Contains(text, beside) {
			return true
		}
	}
	return false
}

// opensCell reports that the quote at i stands at the beginning of a cell.
func opensCell(text string, i int) bool {
	before := strings.TrimRight(text[:i], " ")
	return before == "" || before[len(before)-1] == ',' || before[len(before)-1] == '('
}

// closingQuote is the place of the quote that ends the cell which begins at i: one of the same sort, behind which the row ends or goes on with a comma and
// another cell. An inch mark before a comma in the cell is none. -1 if the cell does not end.
func closingQuote(text string, i int) int {
	for j := i + 1; j < len(text); j++ {
		if text[j] != text[i] {
			continue
		}
		rest := strings.TrimLeft(text[j+1:], " ")
		if rest == "" || rest[0] == ')' {
			return j
		}
		if rest[0] != ',' {
			continue
		}
		next := strings.TrimLeft(rest[1:], " ")
		if next == "" || next[0] == '\'' || next[0] == '"' || digit(next[0]) || next[0] == '-' || next[0] == ',' || strings.HasPrefix(strings.ToLower(next), "null") {
			return j
		}
	}
	return -1
}
