package drawing

import (
	_ "embed"
	"encoding/csv"
	"strings"
	"sync"
)

// Symbol is a kind of part as it is drawn: a kind's name. The zero value is drawn as a
// plainBox box.
type Symbol string

// Flag is the pointer to another sheet.
const Flag Symbol = "flag"

// shape is a symbol's outline in a box of 40 x 40 units around 0,0, drawn for water that
// comes from the left.
type shape struct {
	words, path, filled string
	lines               string // meet: nothing but the lines that meet in it; along: part of its line, which it does not cover
}

//go:embed table/symbol.csv
var symbolTable string

// shapes is the symbols by kind. The table is part of the program: a row that cannot be
// read is a fault that a test finds.
var shapes = sync.OnceValue(func() map[Symbol]shape {
	rows, err := csv.NewReader(strings.NewReader(symbolTable)).ReadAll()
	if err != nil {
		return nil
	}
	out := map[Symbol]shape{}
	for _, r := range rows[1:] {
		out[Symbol(r[0])] = shape{words: r[1], path: r[2], filled: r[3], lines: r[4]}
	}
	return out
})

// shapeOf is the outline of a symbol; a kind without one is a plainBox box.
func shapeOf(s Symbol) shape {
	if found, ok := shapes()[s]; ok {
		return found
	}
	return shapes()[plainBox]
}

// Words says in words what a symbol looks like.
func (s Symbol) Words() string { return shapeOf(s).words }

// Symbols lists every symbol that has a drawing of its own, in the table's order.
func Symbols() []Symbol {
	rows, err := csv.NewReader(strings.NewReader(symbolTable)).ReadAll()
	if err != nil {
		return nil
	}
	var out []Symbol
	for _, r := range rows[1:] {
		out = append(out, Symbol(r[0]))
	}
	return out
}

// meets reports whether the symbol is nothing but the lines that meet in it.
func (s Symbol) meets() bool { return shapeOf(s).lines == "meet" }

// along reports whether the symbol is part of its line and does not cover it: a hose's wave.
func (s Symbol) along() bool { return shapeOf(s).lines == "along" }

// plainBox is the row of a plainBox box, for kinds without a symbol of their own.
const plainBox Symbol = "passage"
