package workbook

import (
	"bytes"
	"encoding/json"
	"fmt"
	"slices"
	"strconv"
	"strings"

	"github.com/xuri/excelize/v2"

	xlsx "handtight/bom/sheet"
)

// The bounds within which a book is read. A book of ours is far inside them.
const (
	maxFile    = 64 << 20
	maxSheets  = 60
	maxColumns = 200 // of a sheet of ours
	headWithin = 400 // rows in which the heads must stand: shops stand above them
	maxAdded   = 20  // columns that a buyer added to a sheet
)

var bookLimits = xlsx.Limits{Rows: 400_000, Columns: 16_384, CellBytes: 4 * cellLimit}

// notOurs says why a book cannot be read.
type notOurs struct{ why string }

func (e *notOurs) Error() string { return e.why }

// earlier is a book of ours as the buyer left it.
type earlier struct {
	title  string
	number int  // of the issue
	whole  bool // its hidden copy is there
	sheets []oldSheet
	all    []xlsx.Sheet
	own    []string // names of sheets that the buyer added
	was    map[rowID][]string
	x      *excelize.File
	lost   []string
	marks  *carry // of a book of the first format; else nil
}

// oldSheet is a sheet of ours in it.
type oldSheet struct {
	name, called string // ours, and as it is called now
	rows         []xlsx.Row
	head         int // index in rows
	key          int // column of the keys, -1 if it is gone
	titles       []string
	ours         []int // by column: index among our columns as written, or -1
}

// readEarlier reads a book of ours.
//
// Errors: *notOurs when it is no workbook, not one of ours, or from a newer format.
func readEarlier(data []byte) (e *earlier, err error) {
	b, err := xlsx.Read(data, bookLimits)
	if err != nil {
		return nil, &notOurs{"it cannot be opened as a workbook (" + err.Error() + ")"}
	}
	if v, has := b.Properties[formatName]; has && v != "1" && v != strconv.Itoa(format) {
		return nil, &notOurs{fmt.Sprintf("it is of format %s, and this handtight knows format %d", v, format)}
	}
	if len(b.Sheets) > maxSheets {
		return nil, &notOurs{"it has too many sheets to be ours"}
	}
	e = &earlier{title: b.Title, was: map[rowID][]string{}, all: b.Sheets}
	for i := range b.Sheets {
		if b.Sheets[i].Name == issueName {
			e.readIssue(&b.Sheets[i])
		}
	}
	if err := e.find(b); err != nil {
		return nil, err
	}
	if len(e.sheets) == 0 {
		return readFirstFormat(b)
	}
	if err := e.open(data); err != nil {
		return nil, err
	}
	return e, nil
}

// open opens the book once more with the library that knows formulas, colours and comments.
// What it does not bear is a book that stays as it is.
func (e *earlier) open(data []byte) (err error) {
	defer func() {
		if r := recover(); r != nil {
			err = &notOurs{fmt.Sprintf("it cannot be opened as a workbook (%v)", r)}
		}
	}()
	e.x, err = excelize.OpenReader(bytes.NewReader(data), excelize.Options{UnzipSizeLimit: unzippedLimit * 2, UnzipXMLSizeLimit: unzippedLimit})
	if err != nil {
		return &notOurs{"it cannot be opened as a workbook (" + err.Error() + ")"}
	}
	e.lost = lostOf(data)
	return nil
}

// readIssue reads the hidden copy.
func (e *earlier) readIssue(s *xlsx.Sheet) {
	if len(s.Rows) == 0 || s.Rows[0].Text(0) != "handtight issue" {
		return
	}
	e.whole = true
	e.number, _ = strconv.Atoi(s.Rows[0].Text(2))
	for i := range s.Rows[1:] {
		r := &s.Rows[i+1]
		var text strings.Builder
		for c := 2; c < len(r.Cells); c++ {
			text.WriteString(r.Text(c))
		}
		var cells []string
		if err := json.Unmarshal([]byte(text.String()), &cells); err != nil {
			continue // the row is then taken for one without a copy
		}
		e.was[rowID{r.Text(0), r.Text(1)}] = cells
	}
}

// find tells our sheets from the buyer's. A copy that the buyer made of one of ours is his.
func (e *earlier) find(b *xlsx.Book) error {
	for i := range b.Sheets {
		s := &b.Sheets[i]
		if s.Name == issueName && e.whole {
			continue
		}
		o, err := e.recognise(s)
		if err != nil {
			return err
		}
		if o == nil || slices.ContainsFunc(e.sheets, func(x oldSheet) bool { return x.name == o.name }) {
			e.own = append(e.own, s.Name)
			continue
		}
		e.sheets = append(e.sheets, *o)
	}
	return nil
}

// recognise finds the heads of a sheet of ours: by the mark behind them, else, where the
// hidden column is gone, by the heads themselves on a sheet that is called as ours.
func (e *earlier) recognise(s *xlsx.Sheet) (*oldSheet, error) {
	best, most := -1, 0
	heads := e.was[rowID{s.Name, columnsKey}]
	for i := range s.Rows {
		r := &s.Rows[i]
		if i > headWithin {
			break
		}
		hits := 0
		for c := range r.Cells {
			text := r.Cells[c].Text
			if name, ok := strings.CutPrefix(text, headKey); ok && name != "" {
				if len(r.Cells) > maxColumns {
					return nil, &notOurs{fmt.Sprintf("sheet %q is too large to be ours", s.Name)}
				}
				o := &oldSheet{name: name, called: s.Name, rows: s.Rows, head: i, key: c}
				return o, o.heads(e.was[rowID{name, columnsKey}])
			}
			if text != "" && slices.Contains(heads, text) {
				hits++
			}
		}
		if hits > most {
			best, most = i, hits
		}
	}
	if best < 0 || most < 3 || most*2 < len(heads) {
		return nil, nil
	}
	o := &oldSheet{name: s.Name, called: s.Name, rows: s.Rows, head: best, key: -1}
	return o, o.heads(heads)
}

// heads tells our columns from the buyer's. The first of two like heads is ours. Without the
// hidden copy, ours are those that this version writes.
func (o *oldSheet) heads(ours []string) error {
	if ours == nil {
		ours = columnTitles(o.name)
	}
	width := 0
	for i := range o.rows {
		width = max(width, min(len(o.rows[i].Cells), maxColumns))
	}
	used := map[string]bool{}
	added := 0
	for c := range width {
		title := strings.TrimSpace(o.rows[o.head].Text(c))
		at := slices.Index(ours, title)
		switch {
		case c == o.key:
			title, at = "", -1
		case title != "" && at >= 0 && !used[title]:
		default:
			at = -1
			if title == "" {
				title = "column " + letters(c)
			}
			for n, first := 2, title; used[title] || slices.Contains(ours, title); n++ {
				title = first + " (" + strconv.Itoa(n) + ")"
			}
			if o.fills(c) {
				added++
			}
		}
		used[title] = true
		o.titles, o.ours = append(o.titles, title), append(o.ours, at)
	}
	if added > maxAdded {
		return &notOurs{fmt.Sprintf("sheet %q has %d added columns, and at most %d are kept", o.called, added, maxAdded)}
	}
	return nil
}

// fills reports whether a column holds anything.
func (o *oldSheet) fills(c int) bool {
	for i := range o.rows {
		if o.rows[i].Text(c) != "" {
			return true
		}
	}
	return false
}

// columnTitles gives our heads of a sheet, for a book without its hidden copy.
func columnTitles(name string) []string {
	var out []string
	for _, c := range map[string][]column{buyName: buyColumns, ratesName: rateColumns, asideName: asideColumns}[name] {
		out = append(out, c.title)
	}
	return out
}

// strawTitles are the heads of straw columns, where the hidden copy is gone.
var strawTitles = []string{"Ordered", "Paid each", "Received", "Remark", "Done", "By whom", "Answer", answerTitle, "Date, who", "Bar, from and to", "Which joints weep or run", "You typed"}

// lostOf says what of the buyer's is not carried over: it stays in the earlier file.
func lostOf(data []byte) []string {
	var out []string
	for _, part := range []struct{ name, what string }{
		{"xl/charts/", "charts"}, {"xl/pivottables/", "pivot tables"}, {"xl/slicers/", "slicers"}, {"xl/ctrlprops/", "controls"},
		{"xl/externallinks/", "links to other workbooks"},
	} {
		if bytes.Contains(bytes.ToLower(tail(data)), []byte(part.name)) {
			out = append(out, part.what)
		}
	}
	return out
}

// tail is the end of a file, where an archive names its parts.
func tail(data []byte) []byte {
	return data[max(0, len(data)-256<<10):]
}
