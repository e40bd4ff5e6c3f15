// Package table reads the CSV tables that are built into the packages under
// threads. What goes in is a file with a heading line; what comes out is one [Row]
// a line, by column heading.
//
// The tables are part of the program and each row is read by its package's tests,
// so a fault in one is a broken build: the functions panic and return no error.
package table

import (
	"encoding/csv"
	"fmt"
	"io/fs"
	"strconv"
	"strings"
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
	text, err := fs.ReadFile(files, name)
	if err != nil {
		panic("threads: " + err.Error())
	}
	lines, err := csv.NewReader(strings.NewReader(string(text))).ReadAll()
	if err != nil {
		panic("threads: " + name + ": " + err.Error())
	}
	out := make([]Row, 0, len(lines)-1)
	for _, line := range lines[1:] {
		r := Row{}
		for i, heading := range lines[0] {
			r[heading] = line[i]
		}
		out = append(out, r)
	}
	return out
}
