package threads

import (
	"embed"
	"iter"

	"handtight/pressure/rows"
	"handtight/threads/internal/table"
)

//go:embed table/*.csv
var tables embed.FS

// row is one line of an embedded table, by column heading.
type row map[string]string

// number returns a column that must hold a number.
func (r row) number(column string) float64 { return table.Row(r).Number(column) }

// inch returns a column printed in inches.
func (r row) inch(column string) Length { return Length(r.number(column)) * Inch }

// mm returns a column printed in millimetres.
func (r row) mm(column string) Length { return Length(r.number(column)) }

func (r row) has(column string) bool { return r[column] != "" }

// eachRow gives the lines of an embedded CSV below its heading. The row is filled again for
// the next line: what outlives the loop takes cells, or [readTable].
func eachRow(name string) iter.Seq2[int, row] {
	return rows.Each[row]("threads", tables, "table/"+name)
}

// readTable reads an embedded CSV with a heading line.
func readTable(name string) []row {
	return rows.All[row]("threads", tables, "table/"+name)
}
