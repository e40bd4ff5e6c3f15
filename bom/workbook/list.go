package workbook

import (
	"fmt"
	"path/filepath"
	"strings"

	"handtight/bom/facts"
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
	first := map[string]*facts.TestStage{}
	for i := range b.c.Test {
		t := &b.c.Test[i]
		name := t.Name
		if t.Number >= 0 {
			name = fmt.Sprintf("%d %s", t.Number, t.Name)
		}
		if len(plants) > 1 {
			name = t.Plant + ": " + name
		}
		l.rows = append(l.rows, listRow{"stage|" + clean(t.Plant) + "|" + t.Name, []string{name, t.How, stands(first[t.Plant], t), t.First, t.Notes}})
		if first[t.Plant] == nil {
			first[t.Plant] = t
		}
	}
	l.under, l.more = func(s *sheet) { s.cautions() }, 13*float64(len(b.c.Cautions))
	return b.list(l)
}

// stands says how everything stands at a stage: whole at the first one, and at each other what
// is not as it was there.
func stands(first, t *facts.TestStage) string {
	if first == nil || first.Stands == "" {
		return t.Stands
	}
	was := strings.Split(first.Stands, ", ")
	var other []string
	for i, part := range strings.Split(t.Stands, ", ") {
		if i >= len(was) || was[i] != part {
			other = append(other, part)
		}
	}
	short := fmt.Sprintf("as at %d", first.Number)
	if len(other) > 0 {
		short += ", but " + strings.Join(other, ", ")
	}
	if len(short) >= len(t.Stands) {
		return t.Stands
	}
	return short
}

// questionSpans are the columns that a question's cells take: about what and whom to ask, the
// question, and the answer.
var questionSpans = [][2]int{{0, 1}, {2, 5}, {6, 6}}

// questions writes under the findings what to ask before anything is ordered.
func (s *sheet) questions() {
	list := s.b.c.Questions
	if len(list) == 0 {
		return
	}
	s.endRow("", 6)
	s.wide("questions", "Ask before you order. Write the answer into the straw-coloured cell, and into the build file: then the list knows it.", look{bold: true})
	s.spanRow("questions head", questionSpans, []string{"About, and whom to ask", "Question", "Your answer"}, func(int, string) look { return headLook })
	for _, q := range list {
		about, ask := q.About, q.Ask
		if q.Shop != "" {
			about += ", " + q.Shop
		}
		if q.Settles != "" {
			ask += " (settles " + q.Settles + ")"
		}
		s.spanRow("question|"+clean(q.Shop)+"|"+clean(q.About)+"|"+clean(q.Ask), questionSpans, []string{about, ask}, strongFirst)
	}
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
