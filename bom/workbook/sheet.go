package workbook

import (
	"fmt"
	"strings"

	"github.com/xuri/excelize/v2"
)

// column is one column of a sheet.
type column struct {
	title  string
	width  float64 // in digits of the book's default font
	hidden bool
	straw  bool // the buyer's to fill in
	from   int  // of a list: which of a row's cells it shows
	fold   bool // of a list: lines of a text stand beside each other where they fit on one
}

// sheet streams one sheet, row after row. The first error is kept and returned
// by finish; after it nothing more is written. Behind its columns stand those that the
// buyer added, and last a hidden one with the key of each row.
type sheet struct {
	b       *book
	name    string
	columns []column
	own     int // of columns: ours; the buyer's stand behind them
	w       *excelize.StreamWriter
	row     int // the last one written
	cells   []any
	store   []excelize.Cell
	typed   []bool         // of the row to come: straw cells
	seen    map[string]int // rows by key
	notes   []excelize.Comment
	err     error
}

// frame says how a sheet is framed: its tab, what stays in view and on paper.
type frame struct {
	tab    string // colour
	head   int    // row of the column heads, repeated on every page
	freeze int    // rows down to this one stay in view; 0 is none
	filter int    // last row of a filter from the head on; 0 is none
	locked bool
	wide   bool // landscape
}

// newSheet sets up a sheet that the book has already. What must come before the
// first row is done here: a setting made too late is lost without an error, and the filter
// takes the sheet's properties with it, so it comes first.
func (b *book) newSheet(name string, columns []column, fr frame) *sheet {
	s := &sheet{b: b, name: name, columns: columns, own: len(columns), seen: map[string]int{}}
	for _, title := range b.carry.added[name] {
		s.columns = append(s.columns[:len(s.columns):len(s.columns)], column{title: title, width: 12, straw: true})
	}
	heads := make([]any, s.own)
	for i := range s.own {
		heads[i] = &excelize.Cell{Value: s.columns[i].title}
	}
	s.typed = make([]bool, len(s.columns)+1)
	b.issue.add(name, columnsKey, heads, s.typed)
	s.cells, s.store = make([]any, len(s.columns)+1), make([]excelize.Cell, len(s.columns)+1)
	if fr.filter > fr.head {
		s.try(b.f.AutoFilter(name, at(0, fr.head)+":"+at(s.shown()-1, fr.filter), nil))
	}
	yes := true
	s.try(b.f.SetSheetProps(name, &excelize.SheetPropsOptions{FitToPage: &yes, TabColorRGB: &fr.tab}))
	grid := false
	s.try(b.f.SetSheetView(name, -1, &excelize.ViewOptions{ShowGridLines: &grid}))
	s.paper(fr)
	if fr.locked {
		s.try(b.f.ProtectSheet(name, &excelize.SheetProtectionOptions{
			SelectLockedCells: true, SelectUnlockedCells: true, AutoFilter: true, Sort: true, InsertRows: true,
			FormatCells: true, FormatColumns: true, FormatRows: true, EditObjects: true,
		}))
	}
	if s.err == nil {
		s.w, s.err = b.f.NewStreamWriter(name)
	}
	s.panes(fr)
	return s
}

// shown is how many columns stand before the first hidden one of ours.
func (s *sheet) shown() int {
	for i, c := range s.columns[:s.own] {
		if c.hidden {
			return i
		}
	}
	return len(s.columns)
}

// paper sets the page: A4, one page wide, with page numbers. On Letter it is as wide.
func (s *sheet) paper(fr frame) {
	a4, way, wide, high := 9, "portrait", 1, 0
	if fr.wide {
		way = "landscape"
	}
	s.try(s.b.f.SetPageLayout(s.name, &excelize.PageLayoutOptions{Size: &a4, Orientation: &way, FitToWidth: &wide, FitToHeight: &high}))
	side, top, bottom, foot := 0.25, 0.25, 0.4, 0.2
	s.try(s.b.f.SetPageMargins(s.name, &excelize.PageLayoutMarginsOptions{
		Left: &side, Right: &side, Top: &top, Bottom: &bottom, Header: &foot, Footer: &foot,
	}))
	mark := strings.ReplaceAll(clean(s.b.c.Title), "&", "&&")
	if s.b.c.Build != "" {
		mark += " " + s.b.c.Build
	}
	unscaled := false
	if len(mark) > 120 {
		mark = s.b.c.Build
	}
	s.try(s.b.f.SetHeaderFooter(s.name, &excelize.HeaderFooterOptions{ScaleWithDoc: &unscaled, OddFooter: "&L&9" + mark + ", &A&R&9Page &P of &N"}))
	if fr.head > 0 {
		s.define("_xlnm.Print_Titles", fmt.Sprintf("'%s'!$%d:$%d", s.name, fr.head, fr.head))
	}
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
	if s.err == nil {
		last := len(s.columns) + 1
		s.try(s.w.SetColWidth(last, last, 12))
		s.try(s.w.SetColVisible(last, last, false))
		s.try(s.w.SetColStyle(last+1, last+20, s.b.st.id(look{typed: true, wrap: true})))
	}
	if s.err == nil && fr.freeze > 0 {
		s.try(s.w.SetPanes(&excelize.Panes{Freeze: true, YSplit: fr.freeze, TopLeftCell: at(0, fr.freeze+1), ActivePane: "bottomLeft"}))
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
	for i := range s.shown() {
		s.put(i, excelize.Cell{StyleID: style})
	}
}

// uniqueKey gives the key of the row to come: a second row of one key is told apart.
func (s *sheet) uniqueKey(key string) string {
	s.seen[key]++
	if n := s.seen[key]; n > 1 {
		return fmt.Sprintf("%s #%d", key, n)
	}
	return key
}

// straw puts what the buyer typed into a straw cell of the row to come, and counts its lines.
func (s *sheet) straw(col, style int, key string, lines int) int {
	v, ok := s.b.carry.take(cellID{s.name, key, s.columns[col].title})
	s.typed[col] = true
	if !ok {
		s.text(col, style, "")
		return lines
	}
	s.put(col, v.cell(style))
	return s.tallest(col, v.Text, lines)
}

// endRow writes the row under the last one, with the buyer's own columns, colours and
// comments. The key finds it again; one that is used already on the sheet is told apart.
func (s *sheet) endRow(key string, height float64) {
	s.row++
	if key != "" {
		key = s.uniqueKey(key)
	}
	for i := s.own; i < len(s.columns); i++ {
		if v, ok := s.b.carry.take(cellID{s.name, key, s.columns[i].title}); ok && s.cells[i] == nil {
			s.put(i, v.cell(s.b.st.id(typedLook)))
			s.typed[i] = true
		}
	}
	s.b.carry.paint(s, key)
	s.b.note(s, key)
	if key != "" { // an empty row to be filled in has none
		s.b.issue.add(s.name, key, s.cells[:len(s.columns)], s.typed)
		s.text(len(s.columns), s.b.st.id(keyLook), key)
	}
	clear(s.typed)
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
	s.endRow("title", 18)
	s.wide("about", about, subLook)
}

// head writes the column heads. The hidden cell behind them is the sheet's mark.
func (s *sheet) head() {
	plain := s.b.st.id(headLook)
	lines := 1
	for i, c := range s.columns {
		s.text(i, plain, c.title)
		if !c.hidden {
			lines = max(lines, textLines(c.title, c.width, fontSize*boldWider))
		}
	}
	s.endRow(headKey+s.name, rowHeight(lines, fontSize)+2)
}

// merge joins cells of the row just written.
func (s *sheet) merge(from, to int) {
	if s.err == nil {
		s.try(s.w.MergeCell(at(from, s.row), at(to, s.row)))
	}
}

// wide writes one text over the whole width of the sheet.
func (s *sheet) wide(key, text string, l look) {
	width := 0.0
	shown := s.shown()
	if shown > s.own {
		shown = s.own
	}
	for _, c := range s.columns[:shown] {
		width += c.width
	}
	l.wrap = true
	s.text(0, s.b.st.id(l), text)
	size := fontSize
	if l.size > 0 {
		size = l.size
	}
	s.endRow(key, rowHeight(textLines(text, width, size), size))
	s.merge(0, shown-1)
}

// finish sets the print area, puts the buyer's comments back, and closes the sheet.
func (s *sheet) finish() error {
	s.define("_xlnm.Print_Area", fmt.Sprintf("'%s'!$A$1:$%s$%d", s.name, letters(s.shown()-1), max(s.row, 1)))
	for _, n := range s.notes {
		s.try(s.b.f.AddComment(s.name, n))
	}
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
