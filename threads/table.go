package threads

import (
	"embed"
	"encoding/csv"
	"fmt"
	"strconv"
	"strings"
)

//go:embed table/*.csv
var tables embed.FS

// row is one line of an embedded table, by column heading.
type row map[string]string

// number returns a column that must hold a number. The tables are part of the
// program and every row is read by the tests, so a fault here is a broken build.
func (r row) number(column string) float64 {
	v, err := strconv.ParseFloat(r[column], 64)
	if err != nil {
		panic(fmt.Sprintf("threads: table column %s holds %q, a number is due", column, r[column]))
	}
	return v
}

// inch returns a column printed in inches.
func (r row) inch(column string) Length { return Length(r.number(column)) * Inch }

// mm returns a column printed in millimetres.
func (r row) mm(column string) Length { return Length(r.number(column)) }

func (r row) has(column string) bool { return r[column] != "" }

// readTable reads an embedded CSV with a heading line.
func readTable(name string) []row {
	text, err := tables.ReadFile("table/" + name)
	if err != nil {
		panic("threads: " + err.Error())
	}
	lines, err := csv.NewReader(strings.NewReader(string(text))).ReadAll()
	if err != nil {
		panic("threads: " + name + ": " + err.Error())
	}
	out := make([]row, 0, len(lines)-1)
	for _, line := range lines[1:] {
		r := row{}
		for i, heading := range lines[0] {
			r[heading] = line[i]
		}
		out = append(out, r)
	}
	return out
}
