package main

import (
	"strings"
)

// column is one column of a printed table. Its width is that of its longest cell;
// those that are flexible share what the line has left, and are wrapped.
type column struct {
	title string
	right bool // figures stand to the right
	flex  bool
}

// leastFlex is the width below which a flexible column is no help to a reader, and
// leastShared that of one of several.
const (
	leastFlex   = 24
	leastShared = 14
)

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

// fitFlex narrows the flexible columns until a line fits, always the widest of them; false
// if it cannot.
func fitFlex(columns []column, widths []int, room int) bool {
	total, least := len(gap)*(len(columns)-1), leastFlex
	var flexible []int
	for i := range columns {
		total += widths[i]
		if columns[i].flex {
			flexible = append(flexible, i)
		}
	}
	if len(flexible) > 1 {
		least = leastShared
	}
	for ; total > room; total-- {
		widest := -1
		for _, i := range flexible {
			if widths[i] > least && (widest < 0 || widths[i] > widths[widest]) {
				widest = i
			}
		}
		if widest < 0 {
			return false
		}
		widths[widest]--
	}
	return true
}

// row prints one row; its flexible cells go on below themselves.
func (u *ui) row(columns []column, widths []int, cells []string) {
	wrapped := make([][]string, len(columns))
	height := 1
	for i, c := range columns {
		wrapped[i] = []string{cells[i]}
		if c.flex {
			wrapped[i] = wrap(cells[i], widths[i])
		}
		height = max(height, len(wrapped[i]))
	}
	for n := range height {
		var b strings.Builder
		for i, c := range columns {
			text := ""
			if n < len(wrapped[i]) {
				text = wrapped[i][n]
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
	}
}
