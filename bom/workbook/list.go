package workbook

import (
	"fmt"
	"path/filepath"
	"strings"

	"handtight/pressure/pattern"
)

// listRow is a row of a list: its key, and its cells but for the straw ones.
type listRow struct {
	key   string
	cells []string
}

// plainList is a sheet of rows; the buyer writes into its straw columns alone.
type plainList struct {
	name, title, about string
	tab                string
	columns            []column
	rows               []listRow
	looks              func(col int, text string) look // nil: words
	least              float64                         // height of a row
	foot               []string                        // sentences under the list
	under              func(s *sheet)                  // writes what stands below it; nil for nothing
	more               float64                         // how high that is, about, in points
}

// plainNumber is a text that is shown as a number: no sign, no leading zero.
var plainNumber = pattern.New(`^(0|[1-9][0-9]{0,11})(\.[0-9]{1,3})?$`)

// listHead is the row of a list's heads.
const listHead = 3

func (b *book) list(l plainList) error {
	columns, wide := l.onPaper()
	s := b.newSheet(l.name, columns, frame{tab: l.tab, head: listHead, freeze: listHead, wide: wide, locked: true})
	s.title(l.title, l.about)
	s.head()
	for _, row := range l.rows {
		s.listRow(row, l.looks, l.least)
	}
	for i, text := range l.foot {
		s.wide(fmt.Sprint("foot|", i), text, look{})
	}
	if l.under != nil {
		l.under(s)
	}
	return s.finish()
}

// filled leaves out the columns in which no row says anything: their width goes to the
// others.
func filled(columns []column, rows []listRow) []column {
	var kept []column
	free, rest := 0.0, 0.0
	for i, c := range columns {
		c.from = i
		said := c.straw || len(rows) == 0
		for k := 0; k < len(rows) && !said; k++ {
			said = i < len(rows[k].cells) && rows[k].cells[i] != ""
		}
		if !said {
			free += c.width
			continue
		}
		if kept = append(kept, c); !c.straw {
			rest += c.width
		}
	}
	for i := range kept {
		if !kept[i].straw {
			kept[i].width += free * kept[i].width / rest
		}
	}
	return kept
}

// fitted narrows or widens columns to what fits on paper; the straw ones are never widened.
func fitted(columns []column, most float64) []column {
	sum, straw := 0.0, 0.0
	for _, c := range columns {
		sum += c.width
		if c.straw {
			straw += c.width
		}
	}
	for i := range columns {
		switch {
		case sum > most:
			columns[i].width *= most / sum
		case !columns[i].straw && sum > straw:
			columns[i].width *= (most - straw) / (sum - straw)
		}
	}
	return columns
}

func (s *sheet) listRow(row listRow, looks func(col int, text string) look, least float64) {
	lines := 1
	for i := range s.own {
		c := s.columns[i]
		if c.straw {
			lines = s.straw(i, s.b.st.id(typedLook), row.key, lines)
			continue
		}
		text := ""
		if c.from < len(row.cells) {
			text = c.folded(row.cells[c.from])
		}
		l := wordsLook
		if looks != nil {
			l = looks(c.from, text)
		}
		if l == wordsLook && plainNumber.MatchString(text) {
			s.auto(i, s.b.st.id(numberLook), text)
		} else {
			s.text(i, s.b.st.id(l), text)
		}
		lines = s.tallest(i, text, lines)
	}
	s.endRow(row.key, max(rowHeight(lines, fontSize), least))
}

// folded gives a text of a column, its lines beside each other where they fit on one.
func (c *column) folded(text string) string {
	if !c.fold || !strings.Contains(text, "\n") {
		return text
	}
	if one := strings.ReplaceAll(text, "\n", ", "); textLines(one, c.width, fontSize) == 1 {
		return one
	}
	return text
}

func strongFirst(col int, _ string) look {
	if col == 0 {
		return strongLook
	}
	return wordsLook
}

// leak writes the stages of the leak test, with room for what is seen.
func (b *book) leak() error {
	l := plainList{
		name: "Leak test", title: "Leak test, stage by stage", tab: middleColor,
		about: "Never tighten a joint under pressure, and never feel for a leak with a hand. Stop at the first leak: pressure down, then mend, then the stage again.",
		columns: []column{
			{title: "Stage", width: 11}, {title: "Water driven by", width: 15}, {title: "How everything stands", width: 22}, {title: "Wet for the first time", width: 12},
			{title: "Steps, and what to look at", width: 62}, {title: "Date, who", width: 8, straw: true}, {title: "Bar, from and to", width: 7, straw: true}, {title: "Which joints weep or run", width: 8, straw: true},
		},
		looks: func(col int, text string) look {
			if strings.HasPrefix(text, "NOT TO BE MADE") {
				return stopLook
			}
			return strongFirst(col, text)
		},
	}
	plants := map[string]bool{}
	for _, t := range b.c.Test {
		plants[t.Plant] = true
	}
	for _, t := range b.c.Test {
		name := t.Name
		if t.Number >= 0 {
			name = fmt.Sprintf("%d %s", t.Number, t.Name)
		}
		if len(plants) > 1 {
			name = t.Plant + ": " + name
		}
		l.rows = append(l.rows, listRow{"stage|" + clean(t.Plant) + "|" + t.Name, []string{name, t.How, t.Stands, t.First, t.Notes}})
	}
	return b.list(l)
}

func (b *book) questions() error {
	l := plainList{
		name: "Questions", title: "Ask before you order", tab: asideColor,
		about: "Write the answer into the straw-coloured cell, and into the build file: then the list knows it.",
		columns: []column{
			{title: "About", width: 20}, {title: "Whom", width: 9}, {title: "Question", width: 56}, {title: "Settles", width: 9}, {title: "Answer", width: 28, straw: true},
		},
		looks: strongFirst,
	}
	for _, q := range b.c.Questions {
		l.rows = append(l.rows, listRow{"question|" + clean(q.Shop) + "|" + clean(q.About) + "|" + clean(q.Ask), []string{q.About, q.Shop, q.Ask, q.Settles}})
	}
	return b.list(l)
}

func some(n int, word string) string {
	if n == 1 {
		return "1 " + word
	}
	return fmt.Sprintf("%d %ss", n, word)
}

func findingLook(col int, text string) look {
	switch {
	case col == 0 && text == "STOP":
		return stopLook
	case col == 0 && text == "CAUTION":
		return warnLook
	case col == 0, col == 1:
		return strongLook
	}
	return look{wrap: true, border: true, format: "@"}
}

func placeText(file string, line int) string {
	if file != "" {
		file = filepath.Base(file) // the list is given away: it names no folders
	}
	if line == 0 {
		return file
	}
	return fmt.Sprintf("%s, line %d", file, line)
}
