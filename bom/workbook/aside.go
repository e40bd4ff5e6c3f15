package workbook

import (
	"encoding/json"
	"fmt"
	"slices"
	"strconv"
	"strings"
)

var asideColumns = []column{
	{title: "What it was", width: 32}, {title: "Which cell", width: 14}, {title: "You typed", width: 24, straw: true},
	{title: "It was", width: 15}, {title: "It is now", width: 15}, {title: "Why it stands here", width: 26},
}

// asideRow is one thing that was typed and has no place in this issue.
type asideRow struct {
	key, what, cell string
	typed           typed
	was, now, why   string
}

// The kinds of rows on the sheet "Set aside": a straw cell without its row, a cell of ours
// that was written over, a comment without its cell.
const (
	asideTyped = "typed"
	asideOver  = "over"
	asideNote  = "note"
)

func asideKey(kind string, id cellID, more string) string {
	text, _ := json.Marshal([]string{kind, id.sheet, id.key, id.title, more})
	return string(text)
}

// asideBack takes the rows that stood on the sheet "Set aside" up again: what has its row once
// more goes back into it, and the rest is set aside again. A row that the buyer deleted there
// is dealt with.
func (c *carry) asideBack() {
	order := slices.Clone(c.order)
	for _, at := range order {
		if at.sheet != asideName || at.title != asideColumns[2].title {
			continue
		}
		var parts []string
		if err := json.Unmarshal([]byte(at.key), &parts); err != nil || len(parts) != 5 {
			continue
		}
		v := c.cells[at]
		delete(c.cells, at)
		row := c.was[rowID{asideName, at.key}]
		read := func(i int) string {
			if i < len(row) {
				return strings.TrimPrefix(row[i], textSign)
			}
			return ""
		}
		id := cellID{parts[1], parts[2], parts[3]}
		switch _, taken := c.cells[id]; {
		case parts[0] == asideOver:
			was := read(3)
			if !slices.ContainsFunc(c.changes, func(x change) bool { return x.id == id && sameText(x.typed, v.shown()) }) {
				c.changes = append(c.changes, change{id, was, v.shown()})
			}
			c.label(id, read(0))
		case parts[0] == asideTyped && !taken:
			c.keep(id, v)
			c.label(id, read(0))
			c.why[id] = read(5)
		default:
			c.asides = append(c.asides, asideRow{at.key, read(0), read(1), v, read(3), read(4), read(5)})
		}
	}
}

// label says what a row was, if nothing does yet.
func (c *carry) label(id cellID, what string) {
	if r := (rowID{id.sheet, id.key}); c.labels[r] == "" {
		c.labels[r] = what
	}
}

// under gives the rows that the buyer put into the table their place under it.
func (c *carry) under() {
	most := 0
	count := func(id rowID) {
		if n, ok := strings.CutPrefix(id.key, "besides|"); ok && id.sheet == buyName {
			if i, err := strconv.Atoi(n); err == nil && i < 100_000 {
				most = max(most, i)
			}
		}
	}
	for id := range c.cells {
		count(rowID{id.sheet, id.key})
	}
	for id := range c.notes {
		count(id)
	}
	for _, id := range c.inserted {
		to := besidesKey(most)
		most++
		for i, at := range c.order {
			if at.sheet == id.sheet && at.key == id.key {
				moved := cellID{at.sheet, to, at.title}
				c.cells[moved] = c.cells[at]
				delete(c.cells, at)
				c.order[i] = moved
			}
		}
		next := rowID{id.sheet, to}
		c.labels[next], c.paints[next], c.notes[next] = c.labels[id], c.paints[id], c.notes[id]
		delete(c.paints, id)
		delete(c.notes, id)
		for i := range c.noted {
			if c.noted[i] == id {
				c.noted[i] = next
			}
		}
	}
	c.besides = most
}

// leftovers lists what was typed and found no row.
func (b *book) leftovers() []asideRow {
	c := b.carry
	var out []asideRow
	for _, x := range c.changes {
		now, there := b.nowAt(x.id)
		if there && sameText(now, x.typed) {
			continue // the build has taken it over
		}
		why := "This is reckoned, or comes from the build file: write it there to use it."
		if !there {
			why = "Its row is no longer there."
		}
		out = append(out, asideRow{asideKey(asideOver, x.id, ""), c.labels[rowID{x.id.sheet, x.id.key}], x.id.sheet + ": " + x.id.title, typedText(x.typed), x.was, now, why})
	}
	for _, id := range c.order {
		v, left := c.cells[id]
		if !left || id.sheet == asideName {
			continue
		}
		why := c.why[id]
		if why == "" {
			why = "Its row is no longer there."
		}
		out = append(out, asideRow{asideKey(asideTyped, id, ""), c.labels[rowID{id.sheet, id.key}], id.sheet + ": " + id.title, v, "", "", why})
	}
	for _, id := range c.noted {
		for n, x := range c.notes[id] {
			out = append(out, asideRow{asideKey(asideNote, cellID{id.sheet, id.key, x.title}, strconv.Itoa(n)), c.labels[id], "comment on " + id.sheet + ": " + x.title,
				typed{Text: noteText(x.c)}, "", "", "Its cell is no longer there."})
		}
	}
	return append(out, c.asides...)
}

// typedText makes a number of a text that is one.
func typedText(s string) typed {
	_, err := strconv.ParseFloat(s, 64)
	return typed{Text: s, Number: err == nil && plainNumber.MatchString(s)}
}

// nowAt is what a cell says in the book that is being written.
func (b *book) nowAt(id cellID) (string, bool) {
	row := b.issue.row(rowID{id.sheet, id.key})
	i := slices.Index(b.issue.row(rowID{id.sheet, columnsKey}), id.title)
	if row == nil || i < 0 {
		return "", false
	}
	if i >= len(row) {
		return "", true
	}
	text := row[i]
	if _, value, ok := strings.Cut(text, "\t"); ok && strings.HasPrefix(text, formulaSign) {
		return value, true
	}
	return strings.TrimPrefix(strings.TrimPrefix(text, strawSign), textSign), true
}

// asideSheet keeps what was typed into rows that are gone, and over what is ours. It is read
// again the next time, so that a line that comes back has its figures again.
func (b *book) asideSheet() error {
	rows := b.leftovers()
	if len(rows) > 0 {
		if _, err := b.f.NewSheet(asideName); err != nil {
			return err
		}
		s := b.newSheet(asideName, asideColumns, frame{tab: asideColor, head: listHead, freeze: listHead})
		s.title("Set aside", "Typed into an earlier issue of this book, and without a place in this one. Delete the rows that are settled.")
		s.head()
		words, strong := b.st.id(wordsLook), b.st.id(strongLook)
		for _, r := range rows {
			lines := 1
			for i, text := range []string{r.what, r.cell, "", r.was, r.now, r.why} {
				style := words
				if i == 0 {
					style = strong
				}
				s.text(i, style, text)
				lines = s.tallest(i, text, lines)
			}
			s.put(2, r.typed.cell(b.st.id(look{wrap: true, border: true, typed: true, fill: typedFill, left: true})))
			s.typed[2] = true
			lines = s.tallest(2, r.typed.Text, lines)
			s.endRow(r.key, rowHeight(lines, fontSize))
			b.aside++
		}
		if err := s.finish(); err != nil {
			return err
		}
	}
	return nil
}

// told says in a sentence how a cell stands that both the buyer and the build changed.
func told(label, title, was, typed, now string) string {
	return fmt.Sprintf("%s: %s was %s, you typed %s, and the build now says %s", label, strings.ToLower(title), orNone(was), typed, orNone(now))
}

func orNone(s string) string {
	if s == "" {
		return "none"
	}
	return s
}
