package sheet

import (
	"encoding/xml"
	"fmt"
	"strconv"
	"strings"
	"time"
)

// maxGap is how many rows may be missing before a sheet is taken to be over.
const maxGap = 2_000

// Sheet is one sheet: its rows that hold something.
type Sheet struct {
	Name   string
	Hidden bool
	Rows   []Row
}

// Row is a row; its number is the sheet's own, from 1.
type Row struct {
	Number int
	Hidden bool
	Cells  []Cell // up to the last that holds something
}

// Text gives the text of a column, counted from 0; "" beyond the row's end.
func (r *Row) Text(column int) string {
	if column < 0 || column >= len(r.Cells) {
		return ""
	}
	return r.Cells[column].Text
}

// Cell is what a cell shows. Text is as it was typed: with its line ends, and for a number
// the shortest decimal of the value. A date is written 2026-01-31.
type Cell struct {
	Text     string
	Number   bool
	Date     bool
	Struck   bool   // struck out
	Formula  bool   // Text is the value that was saved with it: no formula is ever worked out
	Unsolved bool   // a formula without a value, or with an error for one
	Format   string // of a number, as the workbook has it
}

// sheetReader reads the rows of one sheet.
type sheetReader struct {
	book  *reader
	out   Sheet
	row   Row
	last  int // number of the last row that held something
	over  bool
	cell  *xmlCell
	place int // column of the last cell
}

// xmlCell is a cell on its way in.
type xmlCell struct {
	column  int
	kind    string
	style   style
	formula bool
	inValue bool
	valued  bool // it has a value, be it an empty text
	inline  bool
	value   strings.Builder
	rich    rich
}

func (b *reader) readSheet(entry sheetEntry) (Sheet, error) {
	r := &sheetReader{book: b, out: Sheet{Name: entry.name, Hidden: entry.hidden}}
	err := b.scan(entry.part, func(_ *xml.Decoder, t xml.Token, _ int) error {
		if r.over {
			return nil
		}
		switch e := t.(type) {
		case xml.StartElement:
			return r.open(e)
		case xml.EndElement:
			return r.close(e.Name.Local)
		case xml.CharData:
			r.text(e)
		}
		return nil
	})
	return r.out, err
}

func (r *sheetReader) open(e xml.StartElement) error {
	if r.cell != nil && r.cell.inline {
		r.cell.rich.take(e)
		return nil
	}
	switch e.Name.Local {
	case "row":
		n, err := strconv.Atoi(attr(e, "r"))
		if err != nil || n < 1 {
			n = r.row.Number + 1
		}
		r.over = n-r.last > maxGap && r.last > 0
		r.row, r.place = Row{Number: n, Hidden: truth(attr(e, "hidden"))}, -1
	case "c":
		r.cell = r.newCell(e)
	case "f":
		if r.cell != nil {
			r.cell.formula = true
		}
	case "v":
		if r.cell != nil {
			r.cell.inValue, r.cell.valued = true, true
		}
	case "is":
		if r.cell != nil {
			r.cell.inline = true
		}
	}
	return nil
}

func (r *sheetReader) newCell(e xml.StartElement) *xmlCell {
	c := &xmlCell{kind: attr(e, "t"), column: columnOf(attr(e, "r"))}
	if c.column < 0 {
		c.column = r.place + 1
	}
	r.place = c.column
	if n, err := strconv.Atoi(attr(e, "s")); err == nil && n >= 0 && n < len(r.book.styles) {
		c.style = r.book.styles[n]
	}
	return c
}

func (r *sheetReader) text(t xml.CharData) {
	switch {
	case r.cell == nil:
	case r.cell.inline:
		r.cell.rich.take(t)
	case r.cell.inValue && r.cell.value.Len() <= r.book.limits.CellBytes:
		r.cell.value.Write(t)
	}
}

func (r *sheetReader) close(name string) error {
	switch {
	case name == "is" && r.cell != nil:
		r.cell.inline = false
	case r.cell != nil && r.cell.inline:
		r.cell.rich.take(xml.EndElement{Name: xml.Name{Local: name}})
	case name == "v" && r.cell != nil:
		r.cell.inValue = false
	case name == "c" && r.cell != nil:
		return r.closeCell()
	case name == "row":
		return r.closeRow()
	}
	return nil
}

func (r *sheetReader) closeCell() error {
	c := r.cell
	r.cell = nil
	got := r.book.cell(c)
	if len(got.Text) > r.book.limits.CellBytes {
		return &Error{Reason: fmt.Sprintf("a cell holds more than %d bytes", r.book.limits.CellBytes), Remedy: "shorten it", Sheet: r.out.Name, Row: r.row.Number}
	}
	if got.Text == "" && !got.Unsolved {
		return nil // blank cells may be formatted to the edge of the sheet
	}
	if c.column >= r.book.limits.Columns {
		return tooLarge(fmt.Sprintf("row %d of sheet %q has something in column %d", r.row.Number, r.out.Name, c.column+1))
	}
	for len(r.row.Cells) <= c.column {
		r.row.Cells = append(r.row.Cells, Cell{})
	}
	r.row.Cells[c.column] = got
	return nil
}

func (r *sheetReader) closeRow() error {
	if len(r.row.Cells) == 0 {
		return nil
	}
	if r.book.rows == r.book.limits.Rows {
		return tooLarge(fmt.Sprintf("it has more than %d rows", r.book.limits.Rows))
	}
	r.book.rows++
	r.last = r.row.Number
	r.out.Rows = append(r.out.Rows, r.row)
	return nil
}

// cell gives what a cell shows.
func (b *reader) cell(c *xmlCell) Cell {
	out := Cell{Struck: c.style.struck, Format: c.style.format, Formula: c.formula}
	value := c.value.String()
	switch c.kind {
	case "s":
		n, err := strconv.Atoi(strings.TrimSpace(value))
		if err == nil && n >= 0 && n < len(b.strings) {
			out.Text, out.Struck = b.strings[n].text, out.Struck || b.strings[n].struck
		}
	case "inlineStr":
		s := c.rich.shared()
		out.Text, out.Struck = s.text, out.Struck || s.struck
	case "str", "d":
		out.Text = unescape(value)
	case "b":
		out.Text = map[bool]string{true: "yes", false: "no"}[truth(strings.TrimSpace(value))]
	case "e":
		out.Unsolved = true
	default:
		out.Text, out.Number = decimal(strings.TrimSpace(value))
		if c.style.date && out.Number {
			out.Text, out.Number, out.Date = b.day(out.Text)
		}
	}
	out.Unsolved = out.Unsolved || c.formula && out.Text == "" && !(c.kind == "str" && c.valued) // a text may be empty
	return out
}

// decimal gives the shortest decimal of a value: programs save 6.35 as 6.3499999999999996.
func decimal(text string) (string, bool) {
	f, err := strconv.ParseFloat(text, 64)
	if err != nil || strings.ContainsAny(text, "xXpPnN_") { // only decimals are numbers of a sheet
		return text, false
	}
	if a := max(f, -f); a != 0 && (a < 1e-9 || a >= 1e15) {
		return strconv.FormatFloat(f, 'g', -1, 64), true
	}
	return strconv.FormatFloat(f, 'f', -1, 64), true
}

// day writes a date as 2026-01-31: a spreadsheet often made it of 1/2 or 3-4.
func (b *reader) day(text string) (string, bool, bool) {
	days, err := strconv.ParseFloat(text, 64)
	if err != nil || days < 1 || days > 2_958_465 { // the end of the year 9999
		return text, true, false
	}
	first := time.Date(1899, 12, 30, 0, 0, 0, 0, time.UTC)
	return first.AddDate(0, 0, int(days)+b.dates).Format("2006-01-02"), false, true
}

// columnOf reads the column of a cell's name: 0 for A1; -1 if there is none.
func columnOf(name string) int {
	n := 0
	for i := range len(name) {
		c := name[i]
		if c < 'A' || c > 'Z' {
			break
		}
		if n = n*26 + int(c-'A') + 1; n > 16_384 {
			return 16_384
		}
	}
	return n - 1
}
