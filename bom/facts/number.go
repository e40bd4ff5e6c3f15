package facts

import (
	"math"
	"strconv"

	"handtight/bom/money"
	"handtight/pressure/quantity"
)

// Number is a figure that may not be known, or have no bound. The zero value is not known.
type Number struct {
	Value float64 // infinite where nothing bounds it
	Known bool
}

// Figure is a known figure; one that is not a number is not known.
func Figure(v float64) Number { return Number{v, !math.IsNaN(v)} }

// bars is a known pressure as a figure in bar.
func bars(p quantity.Pressure) Number { return Figure(p.Bar()) }

// Unbounded reports whether nothing bounds the figure from above.
func (n Number) Unbounded() bool { return n.Known && math.IsInf(n.Value, 1) }

// places is how far figures are rounded in JSON, so that a change of unit and back
// does not show.
const places = 1e6

// MarshalJSON writes the figure without an exponent; null where it is not known or has no
// bound.
func (n Number) MarshalJSON() ([]byte, error) {
	if !n.Known || math.IsInf(n.Value, 0) {
		return []byte("null"), nil
	}
	v := math.Round(n.Value*places) / places
	if v == 0 {
		v = 0 // no negative zero
	}
	return strconv.AppendFloat(nil, v, 'f', -1, 64), nil
}

// pieces is a quantity as a figure.
func pieces(q money.Quantity) Number { return Figure(float64(q) / float64(money.Piece)) }

// orEmpty is a list that is empty in JSON rather than null.
func orEmpty(list []string) []string {
	if list == nil {
		return []string{}
	}
	return list
}
