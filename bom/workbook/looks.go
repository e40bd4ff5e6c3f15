package workbook

import (
	"slices"
	"strings"

	"github.com/xuri/excelize/v2"
)

// ownFills and ownInks are the colours that this package uses: any other is the buyer's.
var (
	ownFills = []string{"", headFill, shopFill, sumFill, typedFill, stopFill, warnFill, whiteColor, "E6EAEB"}
	ownInks  = []string{"", inkColor, faintColor, stopColor, warnColor, whiteColor, linkColor, "000000"}
)

// looksAndNotes gathers the buyer's colours and comments on a sheet of ours.
func (e *earlier) looksAndNotes(m *matcher) {
	rows := map[int]string{} // key by row number
	for n := range m.o.rows {
		key := m.keys[n]
		if key == "" {
			key = addedKey(m.o.rows[n].Number)
		}
		rows[m.o.rows[n].Number] = key
	}
	e.notes(m, rows)
	e.paints(m, rows)
}

// notes gathers the comments.
func (e *earlier) notes(m *matcher, rows map[int]string) {
	list, err := e.x.GetComments(m.o.called)
	if err != nil {
		return
	}
	for _, n := range list {
		col, row, err := excelize.CellNameToCoordinates(n.Cell)
		if err != nil {
			continue
		}
		key, ok := rows[row]
		if !ok {
			key = addedKey(row)
		}
		title := "column " + letters(col-1)
		if col-1 < len(m.o.titles) && m.o.titles[col-1] != "" {
			title = m.o.titles[col-1]
		}
		id := rowID{m.o.name, key}
		if m.c.labels[id] == "" {
			m.c.labels[id] = "sheet " + m.o.called + ", " + n.Cell
		}
		if m.c.notes[id] == nil {
			m.c.noted = append(m.c.noted, id)
		}
		n.AuthorID = 0
		m.c.notes[id] = append(m.c.notes[id], note{title, excelize.Comment{Author: n.Author, Text: noteText(n), Width: n.Width, Height: n.Height}})
	}
}

// noteText is what a comment says.
func noteText(c excelize.Comment) string {
	if len(c.Paragraph) == 0 {
		return c.Text
	}
	var out strings.Builder
	for _, p := range c.Paragraph {
		out.WriteString(p.Text)
	}
	if out.Len() == 0 {
		return c.Text
	}
	return out.String()
}

// paints gathers the colours: those that are none of ours.
func (e *earlier) paints(m *matcher, rows map[int]string) {
	foreign := e.foreignStyles()
	if len(foreign) == 0 {
		return
	}
	for number, key := range rows {
		for c, title := range m.o.titles {
			if title == "" {
				continue
			}
			id, err := e.x.GetCellStyle(m.o.called, at(c, number))
			if err != nil {
				continue
			}
			p, ok := foreign[id]
			if !ok {
				continue
			}
			row := rowID{m.o.name, key}
			if m.c.paints[row] == nil {
				m.c.paints[row] = map[string]paint{}
			}
			m.c.paints[row][title] = p
			if m.o.ours[c] < 0 && c != m.o.key && m.o.fills(c) {
				m.column(title)
			}
		}
	}
}

// foreignStyles lists the styles that the buyer made, by their number.
func (e *earlier) foreignStyles() map[int]paint {
	out := map[int]paint{}
	if e.x.Styles == nil || e.x.Styles.CellXfs == nil {
		if _, err := e.x.GetStyle(0); err != nil || e.x.Styles == nil || e.x.Styles.CellXfs == nil {
			return out
		}
	}
	for id := range len(e.x.Styles.CellXfs.Xf) {
		st, err := e.x.GetStyle(id)
		if err != nil {
			continue
		}
		var p paint
		if st.Fill.Type == "pattern" && st.Fill.Pattern == 1 && len(st.Fill.Color) > 0 {
			if fill := hex(st.Fill.Color[0]); !slices.Contains(ownFills, fill) {
				p.fill = fill
			}
		}
		if f := st.Font; f != nil {
			ink := hex(f.Color)
			if f.ColorTheme != nil && *f.ColorTheme > 1 {
				ink = hex(e.x.GetBaseColor("", 0, f.ColorTheme))
			}
			if !slices.Contains(ownInks, ink) {
				p.color = ink
			}
			p.italic, p.cross = f.Italic, f.Strike
			p.under = f.Underline != "" && f.Underline != "none" && ink != linkColor
		}
		if p != (paint{}) {
			out[id] = p
		}
	}
	return out
}

// hex is a colour's six digits, without its opacity.
func hex(c string) string {
	c = strings.ToUpper(strings.TrimPrefix(c, "#"))
	if len(c) == 8 {
		c = c[2:]
	}
	if len(c) != 6 {
		return ""
	}
	return c
}
