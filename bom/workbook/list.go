package workbook

import (
	"fmt"
	"path/filepath"
	"regexp"
	"strings"
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
}

// plainNumber is a text that is shown as a number: no sign, no leading zero.
var plainNumber = regexp.MustCompile(`^(0|[1-9][0-9]{0,11})(\.[0-9]{1,3})?$`)

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
			text = row.cells[c.from]
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

func strongFirst(col int, _ string) look {
	if col == 0 {
		return strongLook
	}
	return wordsLook
}

// details says of each line what did not fit on the sheet to buy by.
func (b *book) details() error {
	l := plainList{
		name: detailsName, title: "Details and spares: why so many, and where they go", tab: middleColor,
		about: "Need = placed + planned changes + spare + extra - aboard; the order is rounded up to whole packs. What a part must hold, and what it holds, in bar.",
		columns: []column{
			{title: "Item", width: 18}, {title: "Shop", width: 7}, {title: "Placed", width: 7}, {title: "Planned", width: 7.5}, {title: "Spare", width: 6},
			{title: "Extra", width: 6}, {title: "Aboard", width: 7}, {title: "Need", width: 6}, {title: "Must hold", width: 15}, {title: "It holds", width: 16},
			{title: "Lead", width: 8}, {title: "Joints it serves", width: 20}, {title: "Spares for fitted: reason", width: 10},
		},
		looks: strongFirst,
	}
	if len(b.carry.now.details) > 0 {
		l.columns = append(l.columns, column{title: changedTitle, width: 16})
	}
	notes := spareNotes{list: b.c.Spares, notes: map[string]int{}, said: map[string]bool{}}
	for i := range b.c.shops {
		s := &b.c.shops[i]
		for j := range s.Lines {
			x, q := &s.Lines[j], s.lines[j]
			key := lineKey(s.ID, x.Key)
			l.rows = append(l.rows, listRow{key, []string{
				x.Item, s.ID, some0(q.placed), some0(q.planned), some0(q.spare), some0(q.extra), some0(q.have), q.need.String(),
				x.RatingNeeded, x.RatingFound, x.Lead, x.Joints, notes.of(x.Item), b.carry.now.details[key],
			}})
		}
	}
	for i := range b.c.Spares { // of what is on no line
		if s := &b.c.Spares[i]; !notes.said[s.Item] {
			cells := make([]string, len(l.columns))
			cells[0], cells[12] = s.Item, notes.say(s)
			l.rows = append(l.rows, listRow{"spare|" + clean(s.Item) + "|" + s.Rule, cells})
		}
	}
	l.foot = notes.foot
	return b.list(l)
}

// changedTitle heads the column that says what changed in a line since the book was last
// issued. A book without such a line has no such column.
const changedTitle = "Changed since"

// some0 leaves a nought out.
func some0(q thousandth) string {
	if q == 0 {
		return ""
	}
	return q.String()
}

// spareNotes says how many spares a line has, and why: the reasons stand once, under the list.
type spareNotes struct {
	list  []Spare
	notes map[string]int
	said  map[string]bool
	foot  []string
}

// of is what is said of an item's spares at its first line; "" for none.
func (n *spareNotes) of(item string) string {
	if n.said[item] {
		return ""
	}
	n.said[item] = true
	var out []string
	for i := range n.list {
		if n.list[i].Item == item {
			out = append(out, n.say(&n.list[i]))
		}
	}
	return strings.Join(out, "\n")
}

func (n *spareNotes) say(s *Spare) string {
	why := s.Rule + ": " + s.Why
	k, ok := n.notes[why]
	if !ok {
		k = len(n.notes) + 1
		n.notes[why] = k
		n.foot = append(n.foot, fmt.Sprintf("Spares %d: %s", k, why))
	}
	return fmt.Sprintf("%s for %s: %d", s.Count, s.Fitted, k)
}

func (b *book) hoses() error {
	l := plainList{
		name: "Hoses", title: "Hoses to cut, and to have made up", tab: middleColor,
		about: "Write its name on each piece at both ends before you fit it. Measure aboard once more before you cut.",
		columns: []column{
			{title: "Hose", width: 12}, {title: "From", width: 19}, {title: "To", width: 19}, {title: "Planned", width: 8}, {title: "Cut at", width: 8},
			{title: "Why that long", width: 18}, {title: "Least bend radius", width: 14}, {title: "It needs", width: 16}, {title: "Done", width: 8, straw: true},
		},
		looks: strongFirst,
	}
	reasons := map[string]int{}
	for _, h := range b.c.Hoses {
		how := h.How
		if n, ok := reasons[how]; ok {
			how = fmt.Sprintf("note %d", n)
		} else if len(how) > 20 {
			reasons[how] = len(reasons) + 1
			l.foot = append(l.foot, fmt.Sprintf("Note %d: %s.", len(reasons), how))
			how = fmt.Sprintf("note %d", len(reasons))
		}
		l.rows = append(l.rows, listRow{"hose|" + clean(h.Name), []string{h.Name, h.From, h.To, h.Planned, h.Cut, how, h.Bend, h.Needs}})
	}
	return b.list(l)
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
