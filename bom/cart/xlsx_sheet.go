package cart

import (
	"encoding/xml"
	"fmt"
	"strconv"
	"strings"
	"time"
)

// maxGap is how many rows may be missing before a sheet is taken to be over.
const maxGap = 2_000

// sheetReader reads the rows of one sheet.
type sheetReader struct {
	book  *book
	out   sheet
	row   row
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
	inline  bool
	value   strings.Builder
	rich    rich
}

func (b *book) readSheet(entry sheetEntry) (sheet, error) {
	r := &sheetReader{book: b, out: sheet{name: entry.name, hidden: entry.hidden}}
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
			n = r.row.number + 1
		}
		r.over = n-r.last > maxGap && r.last > 0
		r.row, r.place = row{number: n, hidden: truth(attr(e, "hidden"))}, -1
	case "c":
		r.cell = r.newCell(e)
	case "f":
		if r.cell != nil {
			r.cell.formula = true
		}
	case "v":
		if r.cell != nil {
			r.cell.inValue = true
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
	case r.cell.inValue && r.cell.value.Len() <= maxCell*4:
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
	if len(got.text) > maxCell*4 {
		return longCell(r.book.name, r.row.number)
	}
	if got.text == "" && !got.unsolved {
		return nil // blank cells may be formatted to the edge of the sheet
	}
	if c.column >= maxColumns {
		return tooLarge(fmt.Sprintf("row %d of sheet %q has something in column %d", r.row.number, r.out.name, c.column+1))
	}
	for len(r.row.cells) <= c.column {
		r.row.cells = append(r.row.cells, cell{})
	}
	r.row.cells[c.column] = got
	return nil
}

func (r *sheetReader) closeRow() error {
	if len(r.row.cells) == 0 {
		return nil
	}
	if len(r.out.rows) == maxRows {
		return tooMany(r.book.name)
	}
	r.last = r.row.number
	r.out.rows = append(r.out.rows, r.row)
	return nil
}

// cell gives what a cell shows. A formula is never worked out: its saved value is
// taken, and without one the cell is unsolved.
func (b *book) cell(c *xmlCell) cell {
	out := cell{struck: c.style.struck, currency: c.style.currency}
	value := c.value.String()
	switch c.kind {
	case "s":
		n, err := strconv.Atoi(strings.TrimSpace(value))
		if err == nil && n >= 0 && n < len(b.strings) {
			out.text, out.struck = b.strings[n].text, out.struck || b.strings[n].struck
		}
	case "inlineStr":
		s := c.rich.shared()
		out.text, out.struck = s.text, out.struck || s.struck
	case "str", "d":
		out.text = clean(unescape(value))
	case "b":
		out.text = map[bool]string{true: "yes", false: "no"}[truth(strings.TrimSpace(value))]
	case "e":
		out.unsolved = true
	default:
		out.text, out.number = decimalText(strings.TrimSpace(value))
		if c.style.date && out.number {
			out.text, out.number, out.date = b.day(out.text)
		}
	}
	out.unsolved = out.unsolved || c.formula && out.text == ""
	return out
}

// day writes a date as 2026-01-31: a spreadsheet often made it of 1/2 or 3-4.
func (b *book) day(text string) (string, bool, bool) {
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
