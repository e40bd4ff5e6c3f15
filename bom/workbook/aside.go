package workbook

import "slices"

// asideTyped is the column of a changed value.
const asideTyped = 7

var asideColumns = slices.Concat([]column{
	{title: "What it was", width: 44}, {title: "Shop", width: 16}, {title: "Ordered", width: 11},
	{title: "Received", width: 11}, {title: "Done", width: 9}, {title: "By whom", width: 14},
	{title: "Remark", width: 34}, {title: "Typed value", width: 13}, {title: "Why it stands here", width: 44},
}, hiddenColumns)

// asideSheet keeps what was typed into rows that are gone. It is read again the
// next time, so that a line that comes back has its marks again.
func (b *book) asideSheet() error {
	titles := b.asideTitles()
	s := b.newSheet(asideName, withAdded(asideColumns, titles), frame{tab: asideColor, headRow: 3, repeat: 3})
	s.title("Set aside", "Typed into an earlier issue of this book, and without a row in this one. Delete what is settled.")
	s.head()
	id := b.st.id
	words, strong, text := id(wordsLook), id(strongLook), id(look{wrap: true, border: true, format: "@"})
	for _, m := range b.placed.aside {
		lines := 1
		for i, part := range []struct {
			style int
			text  string
		}{
			{strong, m.Label}, {words, m.Shop}, {text, m.Ordered}, {text, m.Received}, {text, m.Done},
			{text, m.By}, {text, m.Remark}, {text, m.Typed}, {words, m.why},
		} {
			s.text(i, part.style, part.text)
			lines = s.tallest(i, part.text, lines)
		}
		lines = s.added(len(asideColumns)-len(hiddenColumns), text, titles, m.Added, lines)
		s.keys(m.Kind, m.Shop, m.Key, m.Given)
		s.endRow(rowHeight(lines, fontSize))
	}
	return s.finish()
}

// asideTitles gives the added columns that some mark on the sheet has a cell in.
func (b *book) asideTitles() []string {
	var out []string
	for _, title := range b.placed.titles {
		if slices.ContainsFunc(b.placed.aside, func(m asideMark) bool {
			return slices.ContainsFunc(m.Added, func(a Added) bool { return a.Column == title })
		}) {
			out = append(out, title)
		}
	}
	return out
}
