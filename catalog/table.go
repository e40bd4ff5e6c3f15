package catalog

import (
	"embed"
	"iter"

	"handtight/pressure/rows"
)

//go:embed table/*.csv
var tables embed.FS

// eachRow gives the lines of an embedded CSV below its heading: see [rows.Each].
func eachRow(name string) iter.Seq2[int, map[string]string] {
	return rows.Each[map[string]string]("catalog", tables, "table/"+name+".csv")
}
