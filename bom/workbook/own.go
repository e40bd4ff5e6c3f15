package workbook

import (
	"errors"
	"fmt"
	"slices"
	"strings"

	"github.com/xuri/excelize/v2"

	xlsx "handtight/bom/sheet"
)

// ownSheet is a sheet that the buyer added.
type ownSheet struct{ name string }

// ownSheets writes the buyer's own sheets behind ours: values, formulas that stay on their
// sheet, looks, widths, joined cells, comments and pictures.
func (b *book) ownSheets() error {
	for _, o := range b.carry.own {
		if err := b.ownSheet(o); err != nil {
			return fmt.Errorf("sheet %s, which is not ours: %w", o.name, err)
		}
	}
	return nil
}

func (b *book) ownSheet(o ownSheet) (err error) {
	defer func() {
		if r := recover(); r != nil {
			err = errors.New("it cannot be copied into the new book: take it into another book, and run the command again")
		}
	}()
	old, name := b.carry.old, freeName(b.f, o.name)
	if _, err := b.f.NewSheet(name); err != nil {
		return err
	}
	if visible, err := old.GetSheetVisible(o.name); err == nil && !visible {
		if err := b.f.SetSheetVisible(name, false); err != nil {
			return err
		}
	}
	c := &copier{b: b, old: old, from: o.name, to: name, styles: map[int]int{}}
	var rows []xlsx.Row
	for i := range b.carry.sheets {
		if b.carry.sheets[i].Name == o.name {
			rows = b.carry.sheets[i].Rows
		}
	}
	if err := c.beside(); err != nil {
		return err
	}
	w, err := b.f.NewStreamWriter(name)
	if err != nil {
		return err
	}
	if err := c.cells(w, rows); err != nil {
		return err
	}
	merged, err := old.GetMergeCells(o.name, true)
	if err != nil {
		return err
	}
	for _, m := range merged {
		if err := w.MergeCell(m.GetStartAxis(), m.GetEndAxis()); err != nil {
			return err
		}
	}
	if err := w.Flush(); err != nil {
		return err
	}
	b.issue.add(name, columnsKey, []any{&excelize.Cell{Value: "own"}}, make([]bool, 1))
	return nil
}

// freeName is a name for a sheet that no other has.
func freeName(f *excelize.File, name string) string {
	has := func(n string) bool {
		return n == issueName || slices.ContainsFunc(f.GetSheetList(), func(x string) bool { return strings.EqualFold(x, n) })
	}
	for n, first := 2, name; has(name); n++ {
		name = fmt.Sprintf("%.24s (%d)", first, n)
	}
	return name
}

// copier takes one sheet over.
type copier struct {
	b        *book
	old      *excelize.File
	from, to string
	styles   map[int]int
}

// style gives the new book's number for a style of the old one.
func (c *copier) style(cell string) int {
	id, err := c.old.GetCellStyle(c.from, cell)
	if err != nil || id == 0 {
		return 0
	}
	if to, ok := c.styles[id]; ok {
		return to
	}
	to := 0
	if st, err := c.old.GetStyle(id); err == nil {
		if n, err := c.b.f.NewStyle(st); err == nil {
			to = n
		}
	}
	c.styles[id] = to
	return to
}

// beside takes over what must be there before the cells are streamed.
func (c *copier) beside() error {
	notes, err := c.old.GetComments(c.from)
	if err != nil {
		return err
	}
	for _, n := range notes {
		if err := c.b.f.AddComment(c.to, excelize.Comment{Cell: n.Cell, Author: n.Author, Text: noteText(n), Width: n.Width, Height: n.Height}); err != nil {
			return err
		}
		c.b.carry.taken++
	}
	places, err := c.old.GetPictureCells(c.from)
	if err != nil {
		return nil // a drawing of another sort: it stays in the earlier file
	}
	for _, cell := range places {
		pictures, err := c.old.GetPictures(c.from, cell)
		if err != nil {
			continue
		}
		for i := range pictures {
			if err := c.b.f.AddPictureFromBytes(c.to, cell, &excelize.Picture{Extension: pictures[i].Extension, File: pictures[i].File, Format: pictures[i].Format}); err != nil {
				c.b.carry.lost = append(c.b.carry.lost, "a picture on sheet "+c.from)
			}
		}
	}
	return nil
}

// cells streams the cells. Marks of ours are left out: this is a sheet of the buyer's.
func (c *copier) cells(w *excelize.StreamWriter, rows []xlsx.Row) error {
	width := 0
	for i := range rows {
		width = max(width, len(rows[i].Cells))
	}
	for col := range min(width, maxColumns) {
		if wide, err := c.old.GetColWidth(c.from, letters(col)); err == nil && wide > 0 {
			if err := w.SetColWidth(col+1, col+1, wide); err != nil {
				return err
			}
		}
	}
	for i := range rows {
		r := &rows[i]
		cells := make([]any, len(r.Cells))
		for col := range r.Cells {
			name := at(col, r.Number)
			cell := excelize.Cell{StyleID: c.style(name)}
			v := typed{Text: r.Cells[col].Text, Number: r.Cells[col].Number}
			if strings.HasPrefix(v.Text, headKey) {
				continue
			}
			if r.Cells[col].Date { // stays a date of the spreadsheet's
				if raw, err := c.old.GetCellValue(c.from, name, excelize.Options{RawCellValue: true}); err == nil && plainNumberOrMore(raw) {
					v = typed{Text: raw, Number: true}
				}
			}
			if r.Cells[col].Formula {
				if f, err := c.old.GetCellFormula(c.from, name); err == nil && f != "" {
					f = strings.TrimPrefix(f, "=")
					if strings.Contains(f, "!") && v.Text == "" {
						v.Text = "=" + f
					} else if !strings.Contains(f, "!") {
						v.Formula = f
					}
				}
			}
			if v.empty() && cell.StyleID == 0 {
				continue
			}
			cells[col] = v.cell(cell.StyleID)
			if !v.empty() {
				c.b.carry.taken++
			}
		}
		if err := w.SetRow(at(0, r.Number), cells); err != nil {
			return err
		}
	}
	return nil
}

// plainNumberOrMore reports whether a text is a decimal of any length.
func plainNumberOrMore(s string) bool {
	_, ok := decimalOf(s)
	return ok
}
