package main

import (
	"strings"
)

// column is one column of a printed table. Its width is that of its longest cell;
// the one that is flexible takes what the line has left, and is wrapped.
type column struct {
	title string
	right bool // figures stand to the right
	flex  bool
}

// leastFlex is the width below which a flexible column is no help to a reader.
const leastFlex = 24

// gap stands between two columns.
const gap = "  "

// table prints rows under their titles, aligned. It reports false, and prints
// nothing, where the terminal is too narrow: the caller folds the rows instead.
func (u *ui) table(columns []column, rows [][]string) bool {
	widths := widthsOf(columns, rows)
	if !fitFlex(columns, widths, u.width) {
		return false
	}
	titles := make([]string, len(columns))
	for i, c := range columns {
		titles[i] = c.title
	}
	if strings.Join(titles, "") != "" {
		u.row(columns, widths, titles)
	}
	for _, r := range rows {
		u.row(columns, widths, r)
	}
	return true
}

func widthsOf(columns []column, rows [][]string) []int {
	widths := make([]int, len(columns))
	for i, c := range columns {
		widths[i] = widthOf(c.title)
		for _, r := range rows {
			widths[i] = max(widths[i], widthOf(r[i]))
		}
	}
	return widths
}

// fitFlex narrows the flexible column until a line fits; false if it cannot.
func fitFlex(columns []column, widths []int, room int) bool {
	total, flex := len(gap)*(len(columns)-1), -1
	for i := range columns {
		total += widths[i]
		if columns[i].flex {
			flex = i
		}
	}
	if total <= room {
		return true
	}
	if flex < 0 || widths[flex]-(total-room) < leastFlex {
		return false
	}
	widths[flex] -= total - room
	return true
}

// row prints one row; its flexible cell goes on below itself.
func (u *ui) row(columns []column, widths []int, cells []string) {
	more := []string{}
	var b strings.Builder
	indent := 0
	for i, c := range columns {
		text := cells[i]
		if c.flex {
			lines := wrap(text, widths[i])
			text, more = lines[0], lines[1:]
			indent = widthOf(b.String())
		}
		pad := strings.Repeat(" ", max(0, widths[i]-widthOf(text)))
		if c.right {
			b.WriteString(pad + text)
		} else {
			b.WriteString(text + pad)
		}
		b.WriteString(gap)
	}
	u.line("%s", strings.TrimRight(b.String(), " "))
	for _, l := range more {
		u.line("%s%s", strings.Repeat(" ", indent), l)
	}
}
