package drawing

import (
	"embed"
	"sync"

	"handtight/pressure/rows"
)

// Symbol is a kind of part as it is drawn: a kind's name. The zero value is drawn as a
// plain box.
type Symbol string

// Flag is the pointer to another sheet.
const Flag Symbol = "flag"

// shape is a symbol's outline in a box of 40 x 40 units around 0,0, drawn for water that
// comes from the left.
type shape struct {
	path, filled string
	lines        string // meet: nothing but the lines that meet in it; along: part of its line, which it does not cover
}

//go:embed table/symbol.csv
var tables embed.FS

func symbolRows() []map[string]string {
	return rows.All[map[string]string]("drawing", tables, "table/symbol.csv")
}

// shapes is the symbols by kind.
var shapes = sync.OnceValue(func() map[Symbol]shape {
	out := map[Symbol]shape{}
	for _, r := range symbolRows() {
		out[Symbol(r["kind"])] = shape{path: r["path"], filled: r["filled"], lines: r["lines"]}
	}
	return out
})

// shapeOf is the outline of a symbol; a kind without one is a plain box.
func shapeOf(s Symbol) shape {
	if found, ok := shapes()[s]; ok {
		return found
	}
	return shapes()[plainBox]
}

// meets reports whether the symbol is nothing but the lines that meet in it.
func (s Symbol) meets() bool { return shapeOf(s).lines == "meet" }

// along reports whether the symbol is part of its line and does not cover it: a hose's wave.
func (s Symbol) along() bool { return shapeOf(s).lines == "along" }

// plainBox is the row of a plain box, for kinds without a symbol of their own.
const plainBox Symbol = "passage"
