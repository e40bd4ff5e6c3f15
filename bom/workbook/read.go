package workbook

import (
	"fmt"
	"io"
	"slices"
	"strconv"
	"strings"

	xlsx "handtight/bom/sheet"
)

// The bounds within which a book is read. A book of ours is far inside them.
const (
	maxFile    = 64 << 20
	maxCells   = 200 // of a row
	maxSheets  = 50
	headWithin = 40 // rows in which the head must stand
)

var bookLimits = xlsx.Limits{Rows: 200_000, Columns: 16_384, CellBytes: 4 * cellLimit}

// notOurs says why a book cannot be read for marks.
type notOurs struct{ why string }

func (e *notOurs) Error() string { return e.why }

// ReadMarks reads what was typed into a book that this package wrote. It reads
// at most 64 MiB, packed or unpacked, and stops early on sheets without end.
//
// Errors: when r holds no workbook, one that is not ours or from a newer format,
// one that is broken or too large, or one with sheets that were added by hand and
// would be lost with it.
func ReadMarks(r io.Reader) (Marks, error) {
	was, err := readBook(r)
	return was.marks, err
}

// readBook reads the marks, and what the lines said.
func readBook(r io.Reader) (earlier, error) {
	data, err := io.ReadAll(io.LimitReader(r, maxFile+1))
	if err != nil {
		return earlier{}, err
	}
	if len(data) > maxFile {
		return earlier{}, &notOurs{fmt.Sprintf("it is larger than %d MB", maxFile>>20)}
	}
	b, err := xlsx.Read(data, bookLimits)
	if err != nil {
		return earlier{}, &notOurs{"it cannot be opened as a workbook (" + err.Error() + ")"}
	}
	// A book without the property may still be ours: not every program keeps it.
	if v, has := b.Properties[formatName]; has && v != strconv.Itoa(format) {
		return earlier{}, &notOurs{fmt.Sprintf("it is of format %s, and this handtight knows format %d", v, format)}
	}
	return readSheets(b)
}

// readSheets reads every sheet: the set-aside one last, so that a mark in its
// row comes before an older one without.
func readSheets(b *xlsx.Book) (earlier, error) {
	if len(b.Sheets) > maxSheets {
		return earlier{}, &notOurs{"it has too many sheets to be ours"}
	}
	was := earlier{lines: map[markKey]lineWas{}, title: b.Title}
	var marks, aside Marks
	var added []string
	found := false
	for i := range b.Sheets {
		s := &b.Sheets[i]
		t, err := readRows(s)
		if err != nil {
			return earlier{}, err
		}
		var got Marks
		marked := t != nil
		if marked {
			got = t.marks()
			if err := was.merge(t); err != nil {
				return earlier{}, err
			}
		}
		switch {
		case marked && s.Name == asideName:
			aside = append(aside, got...)
		case marked:
			found, marks = true, append(marks, got...)
		case partsSheet(s), dutySheet(s):
		case !slices.Contains([]string{"Spares", "Segments", "States", "Findings", "Assumptions"}, s.Name):
			added = append(added, strconv.Quote(s.Name))
		}
	}
	switch {
	case !found:
		return earlier{}, &notOurs{"no sheet in it has the mark of an order of ours"}
	case len(added) > 0:
		return earlier{}, &notOurs{"it has what was added by hand and would be lost: sheet " + strings.Join(added, ", sheet ")}
	}
	was.marks = append(marks, aside...)
	return was, nil
}

// table is what was read of a sheet with the mark.
type table struct {
	kind   int            // column of the first hidden cell
	titles map[string]int // column by its head
	rows   []Mark
	added  []addedColumn
	lines  map[markKey]lineWas
}

// readRows reads a sheet's rows under its marked head; nil if it has none.
func readRows(s *xlsx.Sheet) (*table, error) {
	var t *table
	for i := range s.Rows {
		r := &s.Rows[i]
		cells := make([]string, len(r.Cells))
		for n, c := range r.Cells {
			cells[n] = c.Text
		}
		switch {
		case len(cells) > maxCells:
			return nil, &notOurs{fmt.Sprintf("sheet %q is too large to be ours", s.Name)}
		case t == nil && r.Number > headWithin:
			return nil, nil
		case t == nil:
			var err error
			if t, err = findHead(cells); err != nil {
				return nil, err
			}
		default:
			t.read(cells)
		}
	}
	return t, nil
}

// findHead recognises a head by its mark; nil if the row is not one.
func findHead(cells []string) (*table, error) {
	for i, text := range cells {
		if !strings.HasPrefix(text, formatPrefix) || i+3 >= len(cells) || cells[i+1] != "shop" || cells[i+2] != "key" {
			continue
		}
		if text != formatMark {
			return nil, &notOurs{fmt.Sprintf("it is marked %q, and this handtight knows %q", text, formatMark)}
		}
		t := &table{kind: i, titles: map[string]int{}, lines: map[markKey]lineWas{}}
		t.heads(cells, i)
		return t, nil
	}
	return nil, nil
}

// read takes one row's marks, empty or not.
func (t *table) read(cells []string) {
	m := Mark{
		Kind: cell(cells, t.kind), Shop: cell(cells, t.kind+1), Key: cell(cells, t.kind+2), Given: cell(cells, t.kind+3),
		Ordered: t.typed(cells, "Ordered"), Received: t.typed(cells, "Received"), Remark: t.typed(cells, "Remark"),
		Done: t.typed(cells, "Done"), By: t.typed(cells, "By whom"), Typed: t.value(cells),
		Label: t.label(cells), Due: t.typed(cells, orderColumns[colOrder].title),
		Added: t.own(cells),
	}
	t.was(m, cells)
	if m.Kind == "" {
		m.Kind, m.Typed = kindLoose, ""
		if m.empty() {
			m.Kind = ""
		}
	}
	t.rows = append(t.rows, m)
}

// cell gives a row's cell, "" beyond its end.
func cell(cells []string, i int) string {
	if i < len(cells) {
		return cells[i]
	}
	return ""
}

func (t *table) typed(cells []string, title string) string {
	i, ok := t.titles[title]
	if !ok {
		return ""
	}
	return strings.TrimSpace(cell(cells, i))
}

// value gives the number that may have been typed over the given one.
func (t *table) value(cells []string) string {
	for _, title := range []string{orderColumns[colPrice].title, rateColumns[rateColumn].title, asideColumns[asideTyped].title} {
		if text := t.typed(cells, title); text != "" {
			return text
		}
	}
	return ""
}

// label says in words what the row was.
func (t *table) label(cells []string) string {
	for _, heads := range [][]string{
		{asideColumns[0].title}, {orderColumns[colItem].title, orderColumns[colAbout].title},
		{jointColumns[0].title, jointColumns[2].title},
	} {
		var words []string
		for _, title := range heads {
			if text := t.typed(cells, title); text != "" {
				words = append(words, text)
			}
		}
		if len(words) > 0 {
			return strings.Join(words, ", ")
		}
	}
	return ""
}

// marks gives what was typed: for a line its mark, and apart from it a price that
// was typed; for the other values the ones that were changed.
func (t *table) marks() Marks {
	var out Marks
	for _, m := range t.rows {
		value := Mark{Kind: m.Kind, Shop: m.Shop, Key: m.Key, Given: m.Given, Typed: m.Typed}
		if m.Kind != kindLine {
			m.Due = ""
		}
		if m.isValue() {
			value.Remark = m.Remark // on the set-aside sheet
		}
		m.Given, m.Typed = "", ""
		if m.Kind == kindLine || value.isValue() {
			if m.Kind == kindLine {
				value.Kind = kindPrice
			}
			if value.changed() {
				value.Label = value.name(m.Label)
				out = append(out, value)
			}
		}
		if m.isValue() && len(m.Added) > 0 {
			out = append(out, Mark{Kind: kindLoose, Label: value.name(m.Label), Added: m.Added})
		}
		if !m.empty() && !m.isValue() {
			out = append(out, m)
		}
	}
	return out
}

// changed reports whether something was typed that is not the given number.
func (m Mark) changed() bool { return m.Typed != "" && !sameNumber(m.Given, m.Typed) }

// name says which value was changed.
func (m Mark) name(label string) string {
	if label != "" && m.Kind != kindPrice || strings.HasPrefix(label, "Price of ") {
		return label
	}
	switch m.Kind {
	case kindPrice:
		return "Price of " + label
	case kindRate:
		return "Rate of " + m.Key
	}
	return strings.ToUpper(m.Kind[:1]) + m.Kind[1:] + " at shop " + m.Shop
}
