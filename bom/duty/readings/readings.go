// Package readings reads the log of a running plant from a table: a line a reading, with
// headings in the words of several languages and the unit of each column in its heading.
//
// [Read] takes a CSV text or an XLSX workbook. Every fault is told at once, with its line and
// column. A cell that is empty was not read; one that holds no number is a fault.
package readings

import (
	"bytes"
	"embed"
	"encoding/csv"
	"fmt"
	"slices"
	"strings"
	"sync"
	"time"
	"unicode"
	"unicode/utf8"

	"golang.org/x/text/encoding/charmap"
	"golang.org/x/text/runes"
	"golang.org/x/text/transform"
	"golang.org/x/text/unicode/norm"

	"handtight/bom/sheet"
	"handtight/bom/source"
	"handtight/pressure/pattern"
	"handtight/pressure/process/membrane"
	"handtight/pressure/process/trend"
	"handtight/pressure/quantity"
	"handtight/pressure/rows"
)

//go:embed table/heading.csv
var tables embed.FS

// heading is a column and one way to write it, plain.
type heading struct{ column, words string }

var headings = sync.OnceValue(func() []heading {
	var out []heading
	for _, r := range rows.Each[map[string]string]("readings", tables, "table/heading.csv") {
		for _, w := range strings.Split(r["words"], "|") {
			out = append(out, heading{r["column"], w})
		}
	}
	// The longest first: "sea salinity" before "salinity".
	slices.SortStableFunc(out, func(a, b heading) int { return len(b.words) - len(a.words) })
	return out
})

// mostLines bounds a log: a reading a day for a hundred years.
const mostLines = 40_000

// Read reads a log: an XLSX workbook, of which the first sheet that is not hidden and names a
// date and a reading is taken, or a text whose cells are parted by commas, semicolons or tabs. Headings
// that name no reading are given as unused.
func Read(name string, text []byte) (log []trend.Reading, unused []string, faults source.Faults) {
	if bytes.HasPrefix(text, []byte("PK")) {
		return readBook(name, text)
	}
	plain := string(text)
	if !utf8.Valid(text) {
		if b, err := charmap.Windows1252.NewDecoder().Bytes(text); err == nil {
			plain = string(b)
		}
	}
	plain = strings.TrimPrefix(plain, "\ufeff")
	r := csv.NewReader(strings.NewReader(plain))
	r.Comma, r.FieldsPerRecord, r.LazyQuotes = separator(plain), -1, true
	rows, err := r.ReadAll()
	if err != nil {
		return nil, nil, source.Faults{{Place: source.Place{File: name}, Reason: "it is no table: " + err.Error(), Remedy: "save it as CSV, a line a reading, with headings in the first line"}}
	}
	return rowsOf(name, rows)
}

// readBook reads a workbook within bounds; what a formula shows is its saved value.
func readBook(name string, data []byte) ([]trend.Reading, []string, source.Faults) {
	book, err := sheet.Read(data, sheet.Limits{Rows: mostLines, Columns: 64, CellBytes: 1 << 12})
	if err != nil {
		return nil, nil, source.Faults{{Place: source.Place{File: name}, Reason: err.Error(), Remedy: "save it again as XLSX, or as CSV"}}
	}
	var first [][]string
	for _, s := range book.Sheets {
		if s.Hidden {
			continue
		}
		var rows [][]string
		for _, r := range s.Rows {
			for len(rows) < min(r.Number, mostLines)-1 {
				rows = append(rows, nil) // the lines keep their numbers
			}
			var cells []string
			for i := range r.Cells {
				cells = append(cells, r.Text(i))
			}
			rows = append(rows, cells)
		}
		if top, _ := head(rows); top >= 0 {
			return rowsOf(name, rows)
		}
		if first == nil {
			first = rows
		}
	}
	return rowsOf(name, first)
}

// separator is what parts the first line into most cells.
func separator(text string) rune {
	line, _, _ := strings.Cut(text, "\n")
	best, most := ',', 0
	for _, c := range ";\t," {
		if n := strings.Count(line, string(c)); n > most {
			best, most = c, n
		}
	}
	return best
}

// column is a column that is understood.
type column struct {
	name, unit string
	at         int
}

// rowsOf reads a log from cells; the first row that names a date and a product is the headings.
func rowsOf(name string, rows [][]string) (log []trend.Reading, unused []string, faults source.Faults) {
	fault := func(line, col int, reason, remedy string) {
		if len(faults) < 20 {
			faults = append(faults, source.Fault{Place: source.Place{File: name, Line: line, Column: col}, Reason: reason, Remedy: remedy})
		}
	}
	if len(rows) > mostLines {
		fault(0, 0, fmt.Sprintf("it has %d lines", len(rows)), fmt.Sprintf("keep the last %d", mostLines))
		return nil, nil, faults
	}
	top, columns := head(rows)
	if top < 0 {
		fault(1, 0, "no line names a date and another reading", "write headings with their units: date, feed pressure (bar), brine pressure (bar), product (L/h), salinity (mg/L), water temperature (C), before filters (bar), after filters (bar)")
		return nil, nil, faults
	}
	for _, c := range columns {
		if c.name != "date" && c.unit == "" {
			fault(top+1, c.at+1, fmt.Sprintf("`%s` has no unit", rows[top][c.at]), "write it into the heading, like \"feed pressure (bar)\" or \"product (L/h)\"")
		}
	}
	if len(faults) > 0 {
		return nil, nil, faults
	}
	day := dayFirst(rows[top+1:], columns)
	for at, cell := range rows[top] {
		if cell = strings.TrimSpace(cell); cell != "" && !slices.ContainsFunc(columns, func(c column) bool { return c.at == at }) {
			unused = append(unused, cell)
		}
	}
	var out []trend.Reading
	for i, row := range rows[top+1:] {
		if strings.TrimSpace(strings.Join(row, "")) == "" {
			continue
		}
		var reading trend.Reading
		for _, c := range columns {
			if c.at >= len(row) || strings.TrimSpace(row[c.at]) == "" || dash(row[c.at]) {
				continue
			}
			if reason, remedy := c.read(&reading, strings.TrimSpace(row[c.at]), day); reason != "" {
				fault(top+2+i, c.at+1, reason, remedy)
			}
		}
		if reading.Date.IsZero() && len(faults) == 0 {
			fault(top+2+i, 1, "the reading has no date", "write it as 2026-11-20")
		}
		out = append(out, reading)
	}
	if len(faults) > 0 {
		return nil, nil, faults
	}
	return out, unused, nil
}

func dash(s string) bool {
	return slices.Contains([]string{"-", "–", "—", "n/a", "?"}, strings.TrimSpace(strings.ToLower(s)))
}

// head finds the row of headings.
func head(rows [][]string) (int, []column) {
	for i, row := range rows {
		if i > 20 {
			break
		}
		var columns []column
		for at, cell := range row {
			name, unit := headingOf(cell)
			if name != "" && !slices.ContainsFunc(columns, func(c column) bool { return c.name == name }) {
				columns = append(columns, column{name, unit, at})
			}
		}
		if len(columns) > 1 && slices.ContainsFunc(columns, func(c column) bool { return c.name == "date" }) {
			return i, columns
		}
	}
	return -1, nil
}

var unitForm = pattern.New(`[(\[]\s*([^)\]]+?)\s*[)\]]|\bin\s+(\S+)\s*$|,\s*(\S+)\s*$`)

// headingOf reads a heading: its column and its unit.
func headingOf(cell string) (name, unit string) {
	text := strings.TrimSpace(cell)
	if m := unitForm.FindStringSubmatchIndex(text); m != nil {
		for g := 2; g < len(m); g += 2 {
			if m[g] >= 0 {
				unit = text[m[g]:m[g+1]]
			}
		}
		text = text[:m[0]] + " " + text[m[1]:]
	}
	words := plain(text)
	for _, h := range headings() {
		if words == h.words {
			return h.column, unit
		}
	}
	for _, h := range headings() {
		if strings.Contains(" "+words+" ", " "+h.words+" ") && len(h.words) > 3 {
			return h.column, unit
		}
	}
	return "", ""
}

// plain is a text in small letters without marks above or below them.
func plain(text string) string {
	t := transform.Chain(norm.NFD, runes.Remove(runes.In(unicode.Mn)), norm.NFC)
	if out, _, err := transform.String(t, strings.ToLower(text)); err == nil {
		text = out
	}
	text = strings.ReplaceAll(text, "ß", "ss")
	return strings.Join(strings.FieldsFunc(text, func(r rune) bool { return !unicode.IsLetter(r) && !unicode.IsDigit(r) }), " ")
}

// read takes one cell.
func (c column) read(to *trend.Reading, cell string, dayFirst bool) (reason, remedy string) {
	if c.name == "date" {
		d, ok := date(cell, dayFirst)
		if !ok {
			return fmt.Sprintf("`%s` is no date", cell), "write it as 2026-11-20"
		}
		to.Date = d
		return "", ""
	}
	text := cell + " " + c.unit
	if strings.ContainsFunc(cell, unicode.IsLetter) {
		text = cell // has its own unit
	}
	var err error
	switch c.name {
	case "before":
		to.BeforeFilters, err = got(quantity.ParsePressure(text))
	case "after":
		minus := strings.HasPrefix(text, "-")
		to.AfterFilters, err = got(quantity.ParsePressure(strings.TrimPrefix(text, "-")))
		if minus {
			to.AfterFilters.Value = -to.AfterFilters.Value // a filter that starves its pump
		}
	case "feed":
		to.Feed, err = got(quantity.ParsePressure(text))
	case "brine":
		to.Brine, err = got(quantity.ParsePressure(text))
	case "product":
		to.Product, err = got(quantity.ParseFlow(text))
	case "salt":
		var s trend.Maybe[quantity.Concentration]
		s, err = got(quantity.ParseConcentration(text))
		to.Salt = trend.Maybe[membrane.MilligramPerLitre]{Value: membrane.MilligramPerLitre(s.Value * 1000), Read: s.Read}
	case "water":
		to.Water, err = got(quantity.ParseTemperature(text))
	case "sea":
		to.Salinity, err = got(quantity.ParseSalinity(text))
	}
	if err != nil {
		return err.Error(), "leave the cell empty where it was not read"
	}
	return "", ""
}

func got[Q ~float64](q Q, err error) (trend.Maybe[Q], error) {
	return trend.Maybe[Q]{Value: q, Read: err == nil}, err
}

var numeric = pattern.New(`^(\d{1,4})[./-](\d{1,2})[./-](\d{2,4})(?:[T ].*)?$`)

// dayFirst reports whether dates like 3/11/2026 have the day first: some day above 12 says so,
// or a point parts them; else the second figure above 12 says that it does not.
func dayFirst(rows [][]string, columns []column) bool {
	at := columns[slices.IndexFunc(columns, func(c column) bool { return c.name == "date" })].at
	for _, row := range rows {
		if at >= len(row) {
			continue
		}
		m := numeric.FindStringSubmatch(strings.TrimSpace(row[at]))
		if m == nil || len(m[1]) == 4 {
			continue
		}
		if len(m[2]) == 2 && m[2] > "12" {
			return false
		}
	}
	return true
}

func date(cell string, dayFirst bool) (time.Time, bool) {
	m := numeric.FindStringSubmatch(cell)
	if m == nil {
		return time.Time{}, false
	}
	layout, text := "2006-1-2", m[1]+"-"+m[2]+"-"+m[3]
	if len(m[1]) < 4 {
		year := m[3]
		if len(year) == 2 {
			year = "20" + year
		}
		d, mo := m[1], m[2]
		if !dayFirst {
			d, mo = mo, d
		}
		text = year + "-" + mo + "-" + d
	}
	t, err := time.Parse(layout, text)
	return t, err == nil
}
