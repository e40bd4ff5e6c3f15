package workbook

import (
	"fmt"

	"github.com/xuri/excelize/v2"
)

// column is one column of a sheet.
type column struct {
	title  string
	width  float64 // in digits of the book's default font
	tilt   bool    // the head stands upright, over narrow figures
	hidden bool
}

// sheet streams one sheet, row after row. The first error is kept and returned
// by finish; after it nothing more is written.
type sheet struct {
	b       *book
	name    string
	columns []column
	shown   int // columns that are not hidden; the hidden ones stand last
	hidden  int // style of these, once it is known
	w       *excelize.StreamWriter
	row     int // the last one written
	cells   []any
	store   []excelize.Cell
	err     error
}

// frame says how a sheet is framed: its tab, what stays in view and on paper.
type frame struct {
	tab       string // colour
	headRow   int    // the head; rows down to it stay in view
	repeat    int    // first of the rows repeated on every page
	freezeCol int    // columns that stay in view
	locked    bool
	room      int // columns to the right that the buyer may fill with his own
}

// newSheet sets up a sheet that the book has already. What must come before the
// first row is done here: a setting made too late is lost without an error.
func (b *book) newSheet(name string, columns []column, fr frame) *sheet {
	s := &sheet{b: b, name: name, columns: columns}
	for _, c := range columns {
		if !c.hidden {
			s.shown++
		}
	}
	s.cells, s.store = make([]any, len(columns)), make([]excelize.Cell, len(columns))
	yes := true
	s.try(b.f.SetSheetProps(name, &excelize.SheetPropsOptions{FitToPage: &yes, TabColorRGB: &fr.tab}))
	grid := false
	s.try(b.f.SetSheetView(name, -1, &excelize.ViewOptions{ShowGridLines: &grid}))
	s.paper(fr)
	if fr.locked {
		s.try(b.f.ProtectSheet(name, &excelize.SheetProtectionOptions{
			SelectLockedCells: true, SelectUnlockedCells: true,
			FormatCells: true, FormatColumns: true, FormatRows: true,
		}))
	}
	if s.err == nil {
		s.w, s.err = b.f.NewStreamWriter(name)
	}
	s.panes(fr)
	return s
}

// paper sets the page: A4 landscape, one page wide, with page numbers.
func (s *sheet) paper(fr frame) {
	a4, way, wide, high := 9, "landscape", 1, 0
	s.try(s.b.f.SetPageLayout(s.name, &excelize.PageLayoutOptions{
		Size: &a4, Orientation: &way, FitToWidth: &wide, FitToHeight: &high,
	}))
	side, top, bottom, foot := 0.3, 0.4, 0.55, 0.25
	s.try(s.b.f.SetPageMargins(s.name, &excelize.PageLayoutMarginsOptions{
		Left: &side, Right: &side, Top: &top, Bottom: &bottom, Header: &foot, Footer: &foot,
	}))
	s.try(s.b.f.SetHeaderFooter(s.name, &excelize.HeaderFooterOptions{OddFooter: "&L&A&RPage &P of &N"}))
	s.define("_xlnm.Print_Titles", fmt.Sprintf("'%s'!$%d:$%d", s.name, fr.repeat, fr.headRow))
}

// panes sets the widths and what stays in view.
func (s *sheet) panes(fr frame) {
	for i, c := range s.columns {
		if s.err != nil {
			return
		}
		s.try(s.w.SetColWidth(i+1, i+1, c.width))
		if c.hidden {
			s.try(s.w.SetColVisible(i+1, i+1, false))
		}
	}
	if last := len(s.columns); fr.room > 0 && s.err == nil {
		s.try(s.w.SetColStyle(last+1, last+fr.room, s.b.st.id(look{typed: true, wrap: true})))
	}
	pane := "bottomLeft"
	if fr.freezeCol > 0 {
		pane = "bottomRight"
	}
	if s.err == nil {
		s.try(s.w.SetPanes(&excelize.Panes{
			Freeze: true, XSplit: fr.freezeCol, YSplit: fr.headRow,
			TopLeftCell: at(fr.freezeCol, fr.headRow+1), ActivePane: pane,
		}))
	}
}

func (s *sheet) define(name, refersTo string) {
	s.try(s.b.f.SetDefinedName(&excelize.DefinedName{Name: name, RefersTo: refersTo, Scope: s.name}))
}

func (s *sheet) try(err error) {
	if s.err == nil {
		s.err = err
	}
}

// text puts a text into a cell of the row to come.
func (s *sheet) text(col, style int, text string) {
	if text == "" {
		s.put(col, excelize.Cell{StyleID: style})
		return
	}
	s.put(col, excelize.Cell{StyleID: style, Value: clean(text)})
}

// auto puts a text that is a plain number as one, so that no program marks it as
// a number kept as text.
func (s *sheet) auto(col, style int, text string) {
	if plainNumber.MatchString(text) {
		s.number(col, style, textToCell(text))
		return
	}
	s.text(col, style, text)
}

// number puts a number into a cell of the row to come.
func (s *sheet) number(col, style int, n float64) {
	s.put(col, excelize.Cell{StyleID: style, Value: n})
}

// formula puts a formula and its result into a cell of the row to come.
func (s *sheet) formula(col, style int, formula string, value any) {
	s.put(col, excelize.Cell{StyleID: style, Formula: formula, Value: value})
}

func (s *sheet) put(col int, c excelize.Cell) {
	s.store[col] = c
	s.cells[col] = &s.store[col]
}

// fill gives every shown cell of the row to come a style; text and numbers put
// after it stand on that ground.
func (s *sheet) fill(style int) {
	for i := range s.shown {
		s.put(i, excelize.Cell{StyleID: style})
	}
}

// endRow writes the row under the last one.
func (s *sheet) endRow(height float64) {
	s.row++
	if s.err == nil {
		s.err = s.w.SetRow(at(0, s.row), s.cells, excelize.RowOpts{Height: height})
	}
	clear(s.cells)
}

// tallest counts the lines of the tallest text among the row to come.
func (s *sheet) tallest(col int, text string, lines int) int {
	if text == "" {
		return lines
	}
	return max(lines, textLines(text, s.columns[col].width, fontSize))
}

// title writes a sheet's first rows: its name and one line about it.
func (s *sheet) title(title, about string) {
	s.text(0, s.b.st.id(titleLook), title)
	s.endRow(24)
	s.text(0, s.b.st.id(subLook), about)
	s.endRow(16)
}

// head writes the column heads.
func (s *sheet) head() {
	plain, tilt, hidden := s.b.st.id(headLook), s.b.st.id(tiltLook), s.b.st.id(look{})
	lines, tall := 1, 0.0
	for i, c := range s.columns {
		switch {
		case c.hidden:
			s.text(i, hidden, c.title)
		case c.tilt:
			s.text(i, tilt, c.title)
			tall = max(tall, textWidth(c.title, fontSize*boldWider)*0.75+8)
		default:
			s.text(i, plain, c.title)
			lines = max(lines, textLines(c.title, c.width, fontSize*boldWider))
		}
	}
	s.endRow(max(rowHeight(lines, fontSize)+4, tall))
}

// merge joins cells of the row just written.
func (s *sheet) merge(from, to int) {
	if s.err == nil {
		s.try(s.w.MergeCell(at(from, s.row), at(to, s.row)))
	}
}

// finish sets the print area and closes the sheet.
func (s *sheet) finish() error {
	s.define("_xlnm.Print_Area", fmt.Sprintf("'%s'!$A$1:$%s$%d", s.name, letters(s.shown-1), s.row))
	if s.err == nil {
		s.err = s.b.st.err
	}
	if s.err == nil {
		s.err = s.w.Flush()
	}
	if s.err != nil {
		return fmt.Errorf("sheet %s: %w", s.name, s.err)
	}
	return nil
}
