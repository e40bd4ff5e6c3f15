package workbook

import (
	"slices"
	"strings"
)

// How many units of column width a sheet of paper takes in type of no less than 8 points, with
// the margins of [sheet.paper], on A4 and Letter; and how many points of rows, in the same
// scale, stand on a page of the shorter of them.
const (
	upright     = 125.0
	across      = 164.0
	uprightRows = 800.0
	acrossRows  = 560.0
)

// measured is how many rows of a list its widths are chosen by: the first ones stand for
// the rest.
const measured = 120

// widthStep is by how much a column gives to another, in units.
const widthStep = 1.5

// spread chooses the widths of a list's columns, which together take a sheet of paper, so that
// its rows are as low as can be and no word of usual length is broken. It gives the height of the rows.
func spread(columns []column, rows []listRow, least, most float64) ([]column, float64) {
	columns = fitted(slices.Clone(columns), most)
	rows = rows[:min(len(rows), measured)]
	m := measure{rows: rows, least: least, lines: make([]map[float64][]int, len(columns))}
	low := make([]float64, len(columns))
	for i, c := range columns {
		m.lines[i] = map[float64][]int{}
		low[i] = m.narrowest(c)
	}
	m.raise(columns, low)
	best := m.height(columns)
	for range 60 {
		from, to, found := -1, -1, best
		for i := range columns {
			if columns[i].straw || columns[i].width-widthStep < low[i] {
				continue
			}
			for k := range columns {
				if k == i || columns[k].straw {
					continue
				}
				columns[i].width, columns[k].width = columns[i].width-widthStep, columns[k].width+widthStep
				if h := m.height(columns); h < found {
					from, to, found = i, k, h
				}
				columns[i].width, columns[k].width = columns[i].width+widthStep, columns[k].width-widthStep
			}
		}
		if from < 0 {
			break
		}
		columns[from].width, columns[to].width, best = columns[from].width-widthStep, columns[to].width+widthStep, found
	}
	return columns, best
}

// measure keeps what was measured of a list.
type measure struct {
	rows  []listRow
	least float64
	lines []map[float64][]int // by column and width: of each row
}

// raise widens columns that would break a word, at the cost of the widest one.
func (m *measure) raise(columns []column, low []float64) {
	for i := range columns {
		short := low[i] - columns[i].width
		if short <= 0 {
			continue
		}
		from := -1
		for k, c := range columns {
			if k != i && !c.straw && c.width-low[k] > short && (from < 0 || c.width-low[k] > columns[from].width-low[from]) {
				from = k
			}
		}
		if from >= 0 {
			columns[i].width, columns[from].width = low[i], columns[from].width-short
		}
	}
}

// longestWord is how wide a column becomes, at the most, for a word of its own.
const longestWord = 16.0

// narrowest is the width that breaks no word of a column, and none of its head.
func (m *measure) narrowest(c column) float64 {
	w := 0.0
	for word := range strings.FieldsSeq(c.title) {
		w = max(w, textWidth(word, fontSize*boldWider))
	}
	for _, r := range m.rows {
		if c.from >= len(r.cells) {
			continue
		}
		for word := range strings.FieldsSeq(r.cells[c.from]) {
			w = max(w, textWidth(word, fontSize*boldWider))
		}
	}
	return min(longestWord, (w*1.05+cellMargin+1)/digitWidth)
}

func (m *measure) height(columns []column) float64 {
	most := make([]int, len(m.rows))
	for i, c := range columns {
		if c.straw {
			continue
		}
		lines, ok := m.lines[i][c.width]
		if !ok {
			lines = make([]int, len(m.rows))
			for n, r := range m.rows {
				if c.from < len(r.cells) && r.cells[c.from] != "" {
					lines[n] = textLines(c.folded(r.cells[c.from]), c.width, fontSize)
				}
			}
			m.lines[i][c.width] = lines
		}
		for n := range most {
			most[n] = max(most[n], lines[n])
		}
	}
	sum := 0.0
	for _, n := range most {
		sum += max(rowHeight(n, fontSize), m.least)
	}
	return sum
}

// onPaper chooses for a list whether its paper stands upright or lies across: what takes fewer
// pages, and upright where it is the same.
func (l *plainList) onPaper() ([]column, bool) {
	columns := filled(l.columns, l.rows)
	foot := func(width float64) (sum float64) {
		for _, text := range append([]string{l.title, l.about, "head\nhead"}, l.foot...) {
			sum += rowHeight(textLines(text, width, fontSize), fontSize)
		}
		return sum + l.more
	}
	up, high := spread(columns, l.rows, l.least, upright)
	if (high + foot(upright)) <= uprightRows {
		return up, false
	}
	wide, low := spread(columns, l.rows, l.least, across)
	if int((low+foot(across))/acrossRows) < int((high+foot(upright))/uprightRows) {
		return wide, true
	}
	return up, false
}
