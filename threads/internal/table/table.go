// Package table reads the CSV tables that are built into the packages under
// threads. What goes in is a file with a heading line; what comes out is one [Row]
// a line, by column heading.
//
// The tables are part of the program and each row is read by its package's tests,
// so a fault in one is a broken build: the functions panic and return no error.
package table

import (
	"fmt"
	"io/fs"
	"strconv"
	"strings"

	"handtight/pressure/rows"
)

// Row is one line of a table, by column heading.
type Row map[string]string

// Has reports whether a column is filled in.
func (r Row) Has(column string) bool { return r[column] != "" }

// Number returns a column that must hold a number, in the unit that its heading
// names. It panics on anything else.
func (r Row) Number(column string) float64 {
	v, err := strconv.ParseFloat(r[column], 64)
	if err != nil {
		panic(fmt.Sprintf("threads: table column %s holds %q, a number is due", column, r[column]))
	}
	return v
}

// List splits a column whose parts stand between upright strokes; none if empty.
func (r Row) List(column string) []string {
	if !r.Has(column) {
		return nil
	}
	return strings.Split(r[column], "|")
}

// Read reads a table. It panics if the file is missing or is no table.
func Read(files fs.FS, name string) []Row {
	return rows.All[Row]("threads", files, name)
}
