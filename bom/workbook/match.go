package workbook

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	xlsx "handtight/bom/sheet"
)

// matcher finds for each row of an earlier sheet the row that was written, and what was typed.
type matcher struct {
	e *earlier
	o *oldSheet
	c *carry

	keys  []string        // by row: the key that it stands for; "" for a row that was added
	given map[string]bool // keys that have their row
}

// carryOver gathers all that was typed into a book.
func (e *earlier) carryOver() *carry {
	c := newCarry()
	c.issue, c.was, c.old, c.lost = e.number, e.was, e.x, e.lost
	for i := range e.sheets {
		m := &matcher{e: e, o: &e.sheets[i], c: c, given: map[string]bool{}}
		m.match()
		for n := range m.o.rows {
			m.row(n)
		}
		e.looksAndNotes(m)
	}
	for _, name := range e.own {
		c.own = append(c.own, ownSheet{name})
	}
	c.sheets = e.all
	c.asideBack()
	c.moved()
	c.under()
	return c
}

// identity is what a row says of itself: the text cells of ours at its left.
func identity(cells []string) string {
	var out []string
	for _, c := range cells[:min(len(cells), 3)] {
		if !strings.HasPrefix(c, formulaSign) && !strings.HasPrefix(c, strawSign) {
			out = append(out, tidy(strings.TrimPrefix(c, textSign)))
		}
	}
	return strings.Join(out, "\x00")
}

// tidy makes texts alike that programs save differently.
func tidy(s string) string {
	return strings.TrimSpace(strings.ReplaceAll(s, "\r\n", "\n"))
}

// identityOf is the same of a row as it was found.
func (m *matcher) identityOf(r *xlsx.Row, like []string) string {
	cells := make([]string, min(len(like), 3))
	for c, at := range m.o.ours {
		if at >= 0 && at < len(cells) {
			cells[at] = r.Text(c)
		}
	}
	for i := range cells {
		if strings.HasPrefix(like[i], formulaSign) || strings.HasPrefix(like[i], strawSign) {
			cells[i] = like[i]
		}
	}
	return identity(cells)
}

// match gives each row its key: the key beside it where the row still says what was written
// there; else, where it says what another one said (sorted in part, pasted over), that one's;
// else the key beside it, once. The second row of one key was copied.
func (m *matcher) match() {
	o := m.o
	m.keys = make([]string, len(o.rows))
	held := make([]string, len(o.rows))
	written := map[string][]string{} // keys by identity
	for id, cells := range m.c.was {
		if id.sheet == o.name && id.key != columnsKey && identity(cells) != "" {
			written[identity(cells)] = append(written[identity(cells)], id.key)
		}
	}
	for n := range o.rows {
		if held[n] = o.keyAt(n); held[n] == "" {
			continue
		}
		if was, ok := m.c.was[rowID{o.name, held[n]}]; ok && m.identityOf(&o.rows[n], was) == identity(was) {
			m.give(n, held[n])
		}
	}
	for n := range o.rows {
		if m.keys[n] != "" {
			continue
		}
		if n == o.head && o.key < 0 {
			m.give(n, headKey+o.name)
			continue
		}
		if key := m.alike(&o.rows[n], written); key != "" {
			m.give(n, key)
		}
	}
	for n := range o.rows {
		if m.keys[n] == "" && held[n] != "" {
			m.give(n, held[n])
		}
	}
}

// give takes a key for a row, if no other row has it.
func (m *matcher) give(n int, key string) {
	if !m.given[key] {
		m.keys[n], m.given[key] = key, true
	}
}

// alike finds the one written row, without a row of its own yet, that says what this one does.
func (m *matcher) alike(r *xlsx.Row, written map[string][]string) string {
	cells := make([]string, 3)
	for c, at := range m.o.ours {
		if at >= 0 && at < 3 {
			cells[at] = r.Text(c)
		}
	}
	found := ""
	for _, try := range [][]string{cells, cells[:2], cells[:1]} {
		id := identity(try)
		if strings.Trim(id, "\x00") == "" {
			continue
		}
		for _, key := range written[id] {
			was := m.c.was[rowID{m.o.name, key}]
			if m.given[key] || m.identityOf(r, was) != identity(was) {
				continue
			}
			if found != "" && found != key {
				return "" // two rows said the same: it is not guessed which
			}
			found = key
		}
	}
	return found
}

// keyAt is the key beside a row.
func (o *oldSheet) keyAt(n int) string {
	if o.key < 0 {
		return ""
	}
	return o.rows[n].Text(o.key)
}

// row takes up what was typed into one row.
func (m *matcher) row(n int) {
	o, r, key := m.o, &m.o.rows[n], m.keys[n]
	id := rowID{o.name, key}
	was, copied := m.c.was[id]
	if key == "" {
		m.addedRow(n)
		return
	}
	m.c.labels[id] = label(id, was, r)
	for c := range min(len(r.Cells), len(o.titles)) {
		cell := &r.Cells[c]
		if c == o.key || cell.Text == "" && !cell.Formula {
			continue
		}
		at := cellID{o.name, key, o.titles[c]}
		switch mine := o.ours[c]; {
		case n == o.head && mine < 0:
			m.column(o.titles[c])
		case mine < 0:
			m.column(o.titles[c])
			m.c.keep(at, m.typed(r, c))
		case !copied && (m.e.whole || !slices.Contains(strawTitles, at.title)):
			if m.e.whole { // the buyer wrote a key: nothing is known of its row
				m.c.keep(at, m.typed(r, c))
			}
		case !copied, straw(was, mine):
			m.c.keep(at, m.typed(r, c))
		case o.name == buyName && !strings.HasPrefix(part(was, mine), formulaSign) && hiddenTitle(at.title) && m.elsewhere(mine, cell.Text):
			// the unit or the money of another line: sorted in part
		default:
			m.ours(at, was, mine, r, c)
		}
	}
}

func straw(was []string, i int) bool { return i < len(was) && strings.HasPrefix(was[i], strawSign) }

func part(was []string, i int) string {
	if i < len(was) {
		return was[i]
	}
	return ""
}

// elsewhere reports whether some row was written with that text in a column.
func (m *matcher) elsewhere(i int, text string) bool {
	for id, was := range m.c.was {
		if id.sheet == m.o.name && part(was, i) == text {
			return true
		}
	}
	return false
}

// column notes a column that the buyer added, if anything stands in it.
func (m *matcher) column(title string) {
	if !slices.Contains(m.c.added[m.o.name], title) {
		m.c.added[m.o.name] = append(m.c.added[m.o.name], title)
	}
}

// ours compares a cell of ours with what was written.
func (m *matcher) ours(id cellID, was []string, i int, r *xlsx.Row, c int) {
	cell, before := &r.Cells[c], ""
	if i < len(was) {
		before = was[i]
	}
	if rest, ok := strings.CutPrefix(before, formulaSign); ok {
		formula, value, _ := strings.Cut(rest, "\t")
		now := m.formula(r, c)
		if now != "" && alikeFormula(now, formula) || now == "" && sameText(cell.Text, value) || now != "" && cell.Formula && m.e.x == nil {
			return
		}
		before = value
		if now != "" {
			m.c.changes = append(m.c.changes, change{id, "=" + formula, "=" + now})
			return
		}
	} else {
		before = strings.TrimPrefix(before, textSign)
	}
	if v := m.typed(r, c); !sameText(v.Text, before) || v.Formula != "" {
		m.c.changes = append(m.c.changes, change{id, before, v.shown()})
	}
}

// sameText compares two cells as spreadsheets keep them.
func sameText(a, b string) bool { return tidy(a) == tidy(b) || sameNumber(a, b) }

// sameNumber compares two decimals as a spreadsheet keeps them.
func sameNumber(a, b string) bool {
	x, errX := strconv.ParseFloat(a, 64)
	y, errY := strconv.ParseFloat(b, 64)
	return errX == nil && errY == nil && x == y
}

// alikeFormula compares formulas without the places that they look at: these move with rows
// and columns.
func alikeFormula(a, b string) bool { return shape(a) == shape(b) }

// shape is a formula with each cell's name as one sign, and without spaces.
func shape(f string) string {
	var out strings.Builder
	quoted := false
	for i := 0; i < len(f); {
		c := f[i]
		switch {
		case c == '"':
			quoted = !quoted
			out.WriteByte(c)
			i++
		case quoted:
			out.WriteByte(c)
			i++
		case c == ' ' || c == '$' || c == '=' && i == 0:
			i++
		case isLetter(c) || isDigit(c) || c == '.' || c == '_' || c == '\'':
			k := i
			for k < len(f) && (isLetter(f[k]) || isDigit(f[k]) || f[k] == '.' || f[k] == '_' || f[k] == '$' || f[k] == '\'') {
				k++
			}
			word := strings.ToUpper(strings.NewReplacer("$", "", "'", "").Replace(f[i:k]))
			if isCell(word) {
				word = "#"
			}
			out.WriteString(word)
			i = k
		default:
			out.WriteByte(c)
			i++
		}
	}
	return out.String()
}

func isLetter(c byte) bool { return c >= 'A' && c <= 'Z' || c >= 'a' && c <= 'z' }
func isDigit(c byte) bool  { return c >= '0' && c <= '9' }

// isCell reports whether a word is a cell's name, such as AB12.
func isCell(word string) bool {
	i := 0
	for i < len(word) && isLetter(word[i]) {
		i++
	}
	if i == 0 || i > 3 || i == len(word) {
		return false
	}
	for _, c := range []byte(word[i:]) {
		if !isDigit(c) {
			return false
		}
	}
	return true
}

// formula gives a cell's formula as it stands; "" if it has none.
func (m *matcher) formula(r *xlsx.Row, c int) string {
	if !r.Cells[c].Formula || m.e.x == nil {
		return ""
	}
	f, err := m.e.x.GetCellFormula(m.o.called, at(c, r.Number))
	if err != nil {
		return ""
	}
	return strings.TrimPrefix(strings.TrimSpace(f), "=")
}

// typed is what stands in a cell. A formula that looks at no other cell stays one; of another
// the value stays, for its row will stand elsewhere, or its text where no value was saved.
func (m *matcher) typed(r *xlsx.Row, c int) typed {
	cell := &r.Cells[c]
	v := typed{Text: cell.Text, Number: cell.Number}
	f := m.formula(r, c)
	switch {
	case f == "":
	case !strings.Contains(shape(f), "#") && !strings.Contains(f, "!"):
		v.Formula = f
	case v.Text == "":
		v = typed{Text: "=" + f}
	}
	return v
}

// addedRow takes up a row that the buyer put in: on the sheet to buy by it goes under the
// table and counts there; elsewhere it is set aside.
func (m *matcher) addedRow(n int) {
	o, r := m.o, &m.o.rows[n]
	id := rowID{o.name, addedKey(r.Number)}
	buying := o.name == buyName && n > o.head
	var cells []int
	for c := range min(len(r.Cells), len(o.titles)) {
		cell := &r.Cells[c]
		if c == o.key || cell.Text == "" && !cell.Formula {
			continue
		}
		if o.ours[c] >= 0 && buying && (!besidesTakes(o.titles[c]) && cell.Formula || hiddenTitle(o.titles[c]) && m.elsewhere(o.ours[c], cell.Text)) {
			continue // of a line that was copied
		}
		if o.ours[c] >= 0 && o.key < 0 && cell.Formula {
			continue // of ours: the keys are gone, and nobody writes such a formula
		}
		cells = append(cells, c)
	}
	if len(cells) == 0 {
		return
	}
	if buying {
		m.c.inserted = append(m.c.inserted, id)
	}
	m.c.labels[id] = fmt.Sprintf("row %d, added on sheet %s", r.Number, o.called)
	for _, c := range cells {
		if o.ours[c] < 0 {
			m.column(o.titles[c])
		}
		m.c.keep(cellID{id.sheet, id.key, o.titles[c]}, m.typed(r, c))
	}
}

// addedKey names a row that has no key.
func addedKey(number int) string { return fmt.Sprintf("added row %d", number) }

func besidesTakes(title string) bool {
	return slices.ContainsFunc([]int{colShop, colItem, colCode, colOrder, colPrice, colOrdered, colPaid, colReceived, colRemark}, func(i int) bool {
		return buyColumns[i].title == title
	})
}

func hiddenTitle(title string) bool {
	return slices.ContainsFunc(buyColumns, func(c column) bool { return c.hidden && c.title == title })
}

// label says in words what a row was.
func label(id rowID, was []string, r *xlsx.Row) string {
	if parts := strings.SplitN(id.key, "|", 3); parts[0] == "line" && len(parts) == 3 {
		item := strings.ReplaceAll(parts[2], shareSign, ", ")
		if parts[1] == "" {
			return item
		}
		return item + ", " + parts[1]
	}
	var words []string
	for _, text := range was {
		if strings.HasPrefix(text, formulaSign) || strings.HasPrefix(text, strawSign) {
			continue
		}
		if text = tidy(strings.TrimPrefix(text, textSign)); text != "" && len(words) < 2 && len(text) < 200 {
			words = append(words, text)
		}
	}
	if len(words) == 0 {
		return fmt.Sprintf("row %d of sheet %s", r.Number, id.sheet)
	}
	return strings.Join(words, ", ")
}
