package workbook

import (
	"encoding/json"
	"fmt"
	"strconv"

	"github.com/xuri/excelize/v2"
)

// issue is the hidden copy of a book: every row as it was written. What differs from it when
// the book comes back was typed.
type issue struct {
	rows  []issueRow
	index map[rowID]int
}

// issueRow is a row as it was written: a text, a number, or a formula with = before it, up to
// the last cell that holds something.
type issueRow struct {
	id    rowID
	cells []string
}

// The signs before a cell of the hidden copy: of a formula with its value behind a tab, of a
// straw cell, and of a text that begins with one of the three.
const (
	formulaSign = "="
	strawSign   = "~"
	textSign    = "'"
)

// columnsKey is the row of the copy that names a sheet's own columns.
const columnsKey = "columns"

// add notes a row that is being written.
func (i *issue) add(sheet, key string, cells []any, straw []bool) {
	out := make([]string, len(cells))
	for n, c := range cells {
		cell, _ := c.(*excelize.Cell)
		out[n] = written(cell, straw[n])
	}
	for len(out) > 0 && out[len(out)-1] == "" {
		out = out[:len(out)-1]
	}
	i.rows = append(i.rows, issueRow{rowID{sheet, key}, out})
}

// row finds a row as it was written; the last ones first, for that is where it is asked for.
func (i *issue) row(id rowID) []string {
	if len(i.index) != len(i.rows) {
		i.index = make(map[rowID]int, len(i.rows))
		for n := range i.rows {
			i.index[i.rows[n].id] = n
		}
	}
	if n, ok := i.index[id]; ok {
		return i.rows[n].cells
	}
	return nil
}

func written(c *excelize.Cell, straw bool) string {
	text := ""
	if c != nil {
		switch v := c.Value.(type) {
		case string:
			text = v
		case float64:
			text = strconv.FormatFloat(v, 'f', -1, 64)
		}
	}
	switch {
	case straw:
		return strawSign + text
	case c != nil && c.Formula != "":
		return formulaSign + c.Formula + "\t" + text
	case text != "" && (text[0] == '=' || text[0] == '~' || text[0] == '\''):
		return textSign + text
	}
	return text
}

// pieceLimit is how many characters of a row stand in one cell of the hidden sheet.
const pieceLimit = 30_000

// issueSheet writes the hidden sheet: at its head the format, the number of the issue, the
// build and what made it, then a row for each row of the book.
func (b *book) issueSheet() error {
	w, err := b.f.NewStreamWriter(issueName)
	if err != nil {
		return err
	}
	style := b.st.id(keyLook)
	head := []any{"handtight issue", strconv.Itoa(format), numberSign, clean(b.c.Title), b.c.Build}
	for i, v := range head {
		head[i] = excelize.Cell{StyleID: style, Value: v}
	}
	if err := w.SetRow("A1", head); err != nil {
		return err
	}
	cells := make([]excelize.Cell, 0, 8)
	row := make([]any, 0, 8)
	for n, r := range b.issue.rows {
		text, err := json.Marshal(r.cells)
		if err != nil {
			return err
		}
		cells = append(cells[:0], excelize.Cell{StyleID: style, Value: r.id.sheet}, excelize.Cell{StyleID: style, Value: r.id.key})
		for rest := string(text); ; {
			piece := rest
			if len(piece) > pieceLimit {
				piece = cutAt(rest, pieceLimit)
			}
			cells = append(cells, excelize.Cell{StyleID: style, Value: piece})
			if rest = rest[len(piece):]; rest == "" {
				break
			}
		}
		row = row[:0]
		for i := range cells {
			row = append(row, &cells[i])
		}
		if err := w.SetRow(at(0, n+2), row); err != nil {
			return fmt.Errorf("sheet %s: %w", issueName, err)
		}
	}
	return w.Flush()
}

// cutAt gives the first bytes of a text, up to the limit, without cutting a letter.
func cutAt(s string, limit int) string {
	for limit > 0 && s[limit]&0xC0 == 0x80 {
		limit--
	}
	return s[:limit]
}
