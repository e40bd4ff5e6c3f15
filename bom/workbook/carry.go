package workbook

import (
	"strconv"
	"strings"

	"github.com/xuri/excelize/v2"

	xlsx "handtight/bom/sheet"
)

// cellID finds a cell in any issue of a book: by its sheet, its row's key and its column's head.
type cellID struct{ sheet, key, title string }

// rowID finds a row.
type rowID struct{ sheet, key string }

// typed is what a buyer put into a cell.
type typed struct {
	Text    string
	Number  bool
	Formula string // as the cell has it, without the sign before it; "" for none
}

// cell writes it again. A formula stands with the value that was saved with it.
func (v typed) cell(style int) excelize.Cell {
	c := excelize.Cell{StyleID: style, Formula: v.Formula}
	switch {
	case v.Text == "":
	case v.Number:
		c.Value = textToCell(v.Text)
	default:
		c.Value = clean(v.Text)
	}
	return c
}

// shown is what the cell says, for a list in words.
func (v typed) shown() string {
	if v.Formula != "" && v.Text == "" {
		return "=" + v.Formula
	}
	return v.Text
}

// paint is what a buyer made of a cell's look.
type paint struct {
	fill, color          string
	italic, under, cross bool
}

func (p paint) over(l look) look {
	if p.fill != "" {
		l.fill = p.fill
	}
	if p.color != "" {
		l.color = p.color
	}
	l.italic, l.under, l.cross = l.italic || p.italic, l.under || p.under, l.cross || p.cross
	return l
}

// carry is all that is taken over from an earlier book, and what became of it: what no row
// of the new one takes is set aside.
type carry struct {
	issue    int // number of the earlier issue; 0 for none
	cells    map[cellID]typed
	order    []cellID // of cells, as they stood
	why      map[cellID]string
	paints   map[rowID]map[string]paint
	notes    map[rowID][]note
	noted    []rowID             // of notes, as they stood
	added    map[string][]string // heads of the buyer's columns, by sheet
	labels   map[rowID]string    // what a row was, in words
	changes  []change            // cells of ours that the buyer wrote over
	changed  map[rowID]string    // said beside the row
	inserted []rowID             // rows that the buyer put into the table
	besides  int                 // rows under the table that something stands in
	own      []ownSheet
	sheets   []xlsx.Sheet // of the earlier book, for the sheets of the buyer
	asides   []asideRow   // rows of the sheet "Set aside" that stay
	lost     []string     // what is not carried over, and stays in the earlier file
	was      map[rowID][]string
	heads    map[string][]string // of was, by sheet
	old      *excelize.File      // open while the new book is made; nil for none

	now   since
	taken int // cells that stand in their rows again
}

// since is what changed in the lines since the last issue.
type since struct {
	details map[string]string // by line, for the sheet of details
}

// note is a comment.
type note struct {
	title string // of the column
	c     excelize.Comment
}

// change is a cell of ours that the buyer wrote over.
type change struct {
	id         cellID
	was, typed string
}

func newCarry() *carry {
	return &carry{
		cells: map[cellID]typed{}, why: map[cellID]string{}, paints: map[rowID]map[string]paint{}, notes: map[rowID][]note{},
		added: map[string][]string{}, labels: map[rowID]string{}, changed: map[rowID]string{}, was: map[rowID][]string{}, heads: map[string][]string{},
	}
}

// keep notes what was typed into a cell.
func (c *carry) keep(id cellID, v typed) {
	if _, ok := c.cells[id]; !ok {
		c.order = append(c.order, id)
	}
	c.cells[id] = v
}

// take gives what was typed into a cell, once.
func (c *carry) take(id cellID) (typed, bool) {
	v, ok := c.cells[id]
	if ok {
		delete(c.cells, id)
		c.taken++
	}
	return v, ok
}

// peek gives it without taking it.
func (c *carry) peek(id cellID) typed { return c.cells[id] }

// paint colours the row to come as the buyer had it.
func (c *carry) paint(s *sheet, key string) {
	row, ok := c.paints[rowID{s.name, key}]
	if !ok {
		return
	}
	for i := range s.columns {
		p, ok := row[s.columns[i].title]
		if !ok || s.columns[i].hidden {
			continue
		}
		if s.cells[i] == nil {
			s.put(i, excelize.Cell{StyleID: s.b.st.id(look{typed: true, wrap: true})})
		}
		s.store[i].StyleID = s.b.st.id(p.over(s.b.st.looks[s.store[i].StyleID]))
	}
}

// note puts the comments of the row that is being written beside its cells.
func (b *book) note(s *sheet, key string) {
	id := rowID{s.name, key}
	var rest []note
	for _, n := range b.carry.notes[id] {
		placed := false
		for i := range s.columns {
			if s.columns[i].title == n.title && !s.columns[i].hidden {
				n.c.Cell = at(i, s.row)
				s.notes, placed = append(s.notes, n.c), true
				b.carry.taken++
				break
			}
		}
		if !placed {
			rest = append(rest, n)
		}
	}
	if b.carry.notes[id] != nil {
		b.carry.notes[id] = rest
	}
}

// decimalOf reads a number that a buyer typed, also one kept as text and with a comma.
func decimalOf(text string) (string, bool) {
	text = strings.TrimSpace(text)
	if strings.Count(text, ",") == 1 && !strings.Contains(text, ".") {
		text = strings.Replace(text, ",", ".", 1)
	}
	if f, err := strconv.ParseFloat(text, 64); err != nil || f < 0 || f > 1e12 || strings.ContainsAny(text, "xXpPeEnN_+") {
		return "", false
	}
	return text, true
}
