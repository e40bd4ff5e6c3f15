package pressure

import (
	"embed"
	"fmt"
	"iter"
	"strconv"
	"strings"
	"sync"

	"handtight/pressure/quantity"
	"handtight/pressure/rows"
)

//go:embed table/*.csv
var tables embed.FS

// row is one line of an embedded table, by column heading.
type row map[string]string

// eachRow gives the lines of an embedded CSV below its heading. The row is filled again for
// the next line: what outlives the loop takes cells, or [readTable].
func eachRow(name string) iter.Seq2[int, row] {
	return rows.Each[row]("pressure", tables, "table/"+name+".csv")
}

// readTable reads an embedded CSV with a heading line. The tables are part of
// the program and the tests read every row: a fault here is a broken build.
func readTable(name string) []row {
	return rows.All[row]("pressure", tables, "table/"+name+".csv")
}

// number returns a column as a number; ok is false where it is empty.
func (r row) number(column string) (v float64, ok bool) {
	if r[column] == "" {
		return 0, false
	}
	v, err := strconv.ParseFloat(r[column], 64)
	if err != nil {
		panic(fmt.Sprintf("pressure: column %s holds %q, a number is due", column, r[column]))
	}
	return v, true
}

// list returns a column of several values parted by bars, nil where it is empty.
func (r row) list(column string) []string {
	if r[column] == "" {
		return nil
	}
	return strings.Split(r[column], "|")
}

// printed is a pressure as its source prints it: in bar, in psi, or in both.
type printed struct {
	bar, psi       float64
	hasBar, hasPSI bool
}

func (r row) printed(bar, psi string) (p printed) {
	p.bar, p.hasBar = r.number(bar)
	p.psi, p.hasPSI = r.number(psi)
	return p
}

// inBar is the pressure by the bar column, else by the psi column.
func (p printed) inBar() quantity.Pressure {
	if p.hasBar {
		return quantity.Pressure(p.bar) * quantity.Bar
	}
	return quantity.Pressure(p.psi) * quantity.PSI
}

// inPSI is the pressure by the psi column, else by the bar column.
func (p printed) inPSI() quantity.Pressure {
	if p.hasPSI {
		return quantity.Pressure(p.psi) * quantity.PSI
	}
	return quantity.Pressure(p.bar) * quantity.Bar
}

// sourceTexts maps the key on each row to the original source.
var sourceTexts = sync.OnceValue(func() map[string]string {
	out := map[string]string{}
	for _, r := range eachRow("source") {
		out[r["key"]] = r["source"]
	}
	return out
})

func sourceText(key string) string {
	text, ok := sourceTexts()[key]
	if !ok {
		panic("pressure: source.csv has no key " + key)
	}
	return text
}
