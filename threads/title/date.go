package title

// calendar gives the end of a date in figures, 2026-11-29 or 29.11.2026; 0 if none begins at i.
func (sc *scanner) calendar(i int) int {
	if c := byteAt(sc.norm, i-1); alnum(c) || c == '-' || c == '/' || c == '.' {
		return 0
	}
	var part, width [3]int
	at, sign := i, byte(0)
	for n := range part {
		if n > 0 {
			c := byteAt(sc.norm, at)
			if c != '-' && c != '.' && c != '/' || n == 2 && c != sign {
				return 0
			}
			at, sign = at+1, c
		}
		v, end := sc.digits(at)
		if end == at {
			return 0
		}
		part[n], width[n], at = v, end-at, end
	}
	if width[0] == 2 || width[0] == 1 {
		part[0], part[2], width[0], width[2] = part[2], part[0], width[2], width[0]
	}
	year := width[0] == 4 && part[0] >= 1990 && part[0] < 2100
	if !year || part[1] < 1 || part[1] > 31 || part[2] < 1 || part[2] > 31 || min(part[1], part[2]) > 12 || alnum(byteAt(sc.norm, at)) {
		return 0
	}
	return at
}

// dayAndMonth gives the end of a day and a month behind a word for when a thing is sent, est ship 11/14; 0 if none begins at i.
func (sc *scanner) dayAndMonth(i int) int {
	n := len(sc.tokens)
	if n == 0 || sc.tokens[n-1].role(classBefore) != asTime {
		return 0
	}
	a, end := sc.digits(i)
	if c := byteAt(sc.norm, end); c != '/' && c != '.' && c != '-' {
		return 0
	}
	b, stop := sc.digits(end + 1)
	if stop == end+1 || a < 1 || b < 1 || a > 31 || b > 31 || min(a, b) > 12 || alnum(byteAt(sc.norm, stop)) || byteAt(sc.norm, stop) == '"' {
		return 0
	}
	return stop
}

// listNumber gives the end of the number that begins a line of a list, 12. or 3); 0 if none begins at i.
func (sc *scanner) listNumber(i int) int {
	if len(sc.tokens) > 0 {
		return 0
	}
	v, end := sc.digits(i)
	if dash := sc.blanks(end); dash > end && byteAt(sc.norm, dash) == '-' && isBlank(byteAt(sc.norm, dash+1)) && (letter(byteAt(sc.norm, sc.blanks(dash+1))) || byteAt(sc.norm, sc.blanks(dash+1)) >= 0x80) && v <= 999 {
		return dash + 1 // 12 - elbow
	}
	if c := byteAt(sc.norm, end); v > 999 || c != '.' && c != ')' && c != ':' || !isBlank(byteAt(sc.norm, end+1)) || sc.blanks(end+1) == len(sc.norm) {
		return 0
	}
	return end + 1
}

// months are the names that spreadsheets give months, by their first letters in
// the spelling of this package (no accents, small letters).
var months = map[string]int{
	"jan": 1, "feb": 2, "mar": 3, "apr": 4, "may": 5, "mai": 5, "jun": 6, "jul": 7, "aug": 8,
	"ene": 1, "fev": 2, "mrz": 3, "maa": 3, "abr": 4, "avr": 4, "maj": 5, "mag": 5, "giu": 6, "lug": 7, "ago": 8, "gen": 1,
}

// date reads a fraction that a spreadsheet has turned into a date: 4-Mar and 3-Apr
// are 3/4. 0 if it is none, or no fraction of an inch.
func (sc *scanner) date(day, end int) (float64, int) {
	if b := byteAt(sc.norm, end); b != '-' && b != '.' || !letter(byteAt(sc.norm, end+1)) {
		return 0, 0
	}
	from := sc.blanks(end + 1)
	stop := sc.run(from, false)
	if stop-from < 3 || stop-from > 4 {
		return 0, 0
	}
	month := months[string(sc.norm[from:from+3])]
	for _, f := range [...][2]int{{month, day}, {day, month}} {
		if top, bottom := f[0], f[1]; top > 0 && top < bottom && top%2 == 1 && (bottom == 2 || bottom == 4 || bottom == 8) {
			return float64(top) / float64(bottom), stop
		}
	}
	return 0, 0
}
