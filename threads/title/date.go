package title

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
