package evidence

import (
	"embed"
	"slices"
	"sync"

	"handtight/threads/internal/table"
)

//go:embed table/*.csv
var tables embed.FS

// Column is a column of table/likelihood.csv: what a pair of ends does.
type column uint8

const (
	seals column = iota
	sealsWith
	lowWithin
	lowAbove
	leaks
	binds
	loose
	columns
)

var columnNames = [columns]string{"seals", "seals-with", "low-within", "low-above", "leaks", "binds", "loose"}

// rows are the judgements by what was seen.
var rows = sync.OnceValue(func() map[string][columns]float64 {
	out := map[string][columns]float64{}
	for _, r := range table.Read(tables, "table/likelihood.csv") {
		var v [columns]float64
		for c, name := range columnNames {
			v[c] = r.Number(name)
		}
		out[r["evidence"]] = v
	}
	return out
})

var weights = sync.OnceValue(func() map[string]float64 {
	out := map[string]float64{}
	for _, r := range table.Read(tables, "table/weight.csv") {
		out[r["name"]] = r.Number("value")
	}
	return out
})

func weight(name string) float64 { return weights()[name] }

// Reckoned is the probability below which a reading is not reckoned with; Cleared what the
// readings that seal must come to together before a joint is cleared (both judgements).
func Reckoned() float64 { return weight("reckoned") }

// Cleared: see [Reckoned].
func Cleared() float64 { return weight("cleared") }

var rightSealants = sync.OnceValue(func() map[string][]string {
	out := map[string][]string{}
	for _, r := range table.Read(tables, "table/sealant.csv") {
		out[r["make"]] = r.List("right")
	}
	return out
})

// Sealants are the words for what was found on a joint.
func Sealants() []string {
	return []string{"tape", "paste", "hemp", "washer", "o-ring", "bedding", "glue", "none", "not seen"}
}

// notSeen says nothing.
const notSeen = "not seen"

// Judgement is one figure that somebody chose.
type Judgement struct {
	Name, Note string
	Values     map[string]float64 // by column, or "" for one alone
}

// Judgements lists every figure that the belief rests on, in the order of the tables.
func Judgements() []Judgement {
	var out []Judgement
	for _, r := range table.Read(tables, "table/likelihood.csv") {
		j := Judgement{Name: r["evidence"], Note: r["note"], Values: map[string]float64{}}
		for _, name := range columnNames {
			j.Values[name] = r.Number(name)
		}
		out = append(out, j)
	}
	for _, r := range table.Read(tables, "table/weight.csv") {
		out = append(out, Judgement{Name: r["name"], Note: r["note"], Values: map[string]float64{"": r.Number("value")}})
	}
	return out
}

// Columns lists what pairs of ends do, in the order of the table.
func Columns() []string { return slices.Clone(columnNames[:]) }
