package workbook

import "strconv"

// letters names a column counted from 0: A, B … Z, AA.
func letters(col int) string {
	if col < 26 {
		return string(rune('A' + col))
	}
	return letters(col/26-1) + string(rune('A'+col%26))
}

// at names a cell by its column, counted from 0, and its row, counted from 1.
func at(col, row int) string { return letters(col) + strconv.Itoa(row) }

// span names the cells of one column between two rows.
func span(col, from, to int) string { return at(col, from) + ":" + at(col, to) }

// fixed names a cell so that it stays the same when copied.
func fixed(col, row int) string { return "$" + letters(col) + "$" + strconv.Itoa(row) }
