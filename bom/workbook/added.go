package workbook

import (
	"fmt"
	"slices"
	"strconv"
	"strings"
)

// maxAdded is the most columns of the buyer's own that are kept.
const maxAdded = 20

// changedTitle heads the column that says what changed in a line since the book
// was last issued. A book without such a line has no such column.
const changedTitle = "Changed since"

// Added is one cell of a column that the buyer added, as it was shown.
type Added struct{ Column, Text string }

// addedColumn is a column of the buyer's own, by its head.
type addedColumn struct {
	at    int
	title string
}

// earlier is what a book of ours said before it is issued again.
type earlier struct {
	marks  Marks
	lines  map[markKey]lineWas
	titles []string // of the columns that the buyer added, in their order
	title  string   // the build that the book was made for
}

// lineWas is what a line said that may have changed since.
type lineWas struct{ order, price, rating string }

// ownTitles gives the heads of ours on the sheets that may hold added columns;
// nil on the others, where every head counts as ours.
func ownTitles(heads []string) []string {
	var own []string
	columns := asideColumns
	switch {
	case slices.Contains(heads, orderColumns[colOrder].title):
		columns = orderColumns
	case !slices.Contains(heads, asideColumns[0].title):
		return nil
	}
	for _, c := range columns {
		if !c.hidden {
			own = append(own, c.title)
		}
	}
	return append(own, changedTitle)
}

// heads tells our columns from the buyer's. The first of two like heads is ours.
func (t *table) heads(cells []string, kind int) {
	own := ownTitles(cells[:kind])
	used := map[string]bool{}
	for i, title := range cells {
		title = strings.TrimSpace(title)
		_, twice := t.titles[title]
		switch {
		case title == "", i >= kind && i < kind+len(hiddenColumns):
		case own == nil && i < kind:
			t.titles[title] = i
		case own == nil:
		case i < kind && !twice && slices.Contains(own, title):
			t.titles[title] = i
		default:
			name := title
			for n := 2; used[name]; n++ {
				name = title + " (" + strconv.Itoa(n) + ")"
			}
			used[name] = true
			t.added = append(t.added, addedColumn{i, name})
		}
	}
}

// own gives a row's cells in the buyer's columns.
func (t *table) own(cells []string) []Added {
	var out []Added
	for _, c := range t.added {
		if text := strings.TrimSpace(cell(cells, c.at)); text != "" {
			out = append(out, Added{c.title, text})
		}
	}
	return out
}

// merge takes up one sheet's added columns and lines.
func (e *earlier) merge(t *table) error {
	for _, c := range t.added {
		if !slices.Contains(e.titles, c.title) {
			e.titles = append(e.titles, c.title)
		}
	}
	if len(e.titles) > maxAdded {
		return &notOurs{fmt.Sprintf("it has %d added columns, and at most %d are kept", len(e.titles), maxAdded)}
	}
	for k, was := range t.lines {
		e.lines[k] = was
	}
	return nil
}

// was notes what a line said.
func (t *table) was(m Mark, cells []string) {
	if _, ok := t.titles[orderColumns[colOrder].title]; ok && m.Kind == kindLine {
		t.lines[markKey{m.Kind, m.Shop, m.Key}] = lineWas{m.Due, m.Given, t.typed(cells, orderColumns[colNeeded].title)}
	}
}

// since finds what changed in each line, and tells it once.
func (p *placement) since(c *counted, lines map[markKey]lineWas) {
	for i := range c.shops {
		s := &c.shops[i]
		for j := range s.Lines {
			l := &s.Lines[j]
			k := markKey{kindLine, clean(s.ID), clean(l.Key)}
			was, ok := lines[k]
			if !ok {
				continue
			}
			price := ""
			if l.HasPrice {
				price = l.Price.Number()
			}
			changes := changesOf(was, lineWas{s.lines[j].order.String(), price, strings.TrimSpace(clean(l.RatingNeeded))})
			if len(changes) == 0 {
				continue
			}
			p.changes[k] = strings.Join(changes, "\n")
			if p.told[k] { // its number has been told already
				changes = changes[1:]
			}
			if len(changes) > 0 {
				p.changed = append(p.changed, l.Item+", "+l.About+": "+strings.Join(changes, "; "))
			}
		}
	}
}

// changesOf says what differs, the order number first.
func changesOf(was, now lineWas) []string {
	var out []string
	tell := func(what, a, b string) {
		if a != b && !sameNumber(a, b) {
			out = append(out, what+" "+orNone(a)+" -> "+orNone(b))
		}
	}
	if was.order != "" {
		tell("order", was.order, now.order)
	}
	tell("price", was.price, now.price)
	tell("rating needed", was.rating, now.rating)
	return out
}

func orNone(s string) string {
	if s == "" {
		return "none"
	}
	return s
}

// withAdded puts columns of these heads before the hidden ones.
func withAdded(columns []column, titles []string) []column {
	shown := len(columns) - len(hiddenColumns)
	out := slices.Clone(columns[:shown])
	for _, title := range titles {
		out = append(out, column{title: title, width: 14})
	}
	return append(out, hiddenColumns...)
}

// added puts a row's added cells into the columns from first on, and counts the
// lines of the tallest. A number stays one where it is shown as it was.
func (s *sheet) added(first, style int, titles []string, cells []Added, lines int) int {
	for i, title := range titles {
		text := ""
		for _, a := range cells {
			if a.Column == title {
				text = a.Text
			}
		}
		if f, err := strconv.ParseFloat(text, 64); err == nil && plainNumber.MatchString(text) &&
			strconv.FormatFloat(f, 'f', -1, 64) == text {
			s.number(first+i, style, f)
		} else {
			s.text(first+i, style, text)
		}
		lines = s.tallest(first+i, text, lines)
	}
	return lines
}

// ownHeads gives the heads between Remark and the hidden columns.
func (p *placement) ownHeads() []string {
	if len(p.changes) == 0 {
		return p.titles
	}
	return append([]string{changedTitle}, p.titles...)
}

// own writes a line's cells right of Remark.
func (o *orderSheet) own(s *countedShop, l *Line, mark Mark, st lineStyles, lines int) int {
	first := colRemark + 1
	if len(o.b.placed.changes) > 0 {
		text := o.b.placed.changes[markKey{kindLine, clean(s.ID), clean(l.Key)}]
		o.text(first, st.words, text)
		lines = o.tallest(first, text, lines)
		first++
	}
	return o.added(first, st.typed, o.b.placed.titles, mark.Added, lines)
}
