package threads

import (
	"strconv"

	"handtight/pressure/quantity"
)

// Turns counts turns of one part in another, by hand or by wrench.
type Turns float64

// Degrees is an angle. A full turn is 360.
type Degrees float64

// SquareMillimetres is an area.
type SquareMillimetres float64

// Length is a length or a diameter in millimetres. An inch is exactly 25.4 mm.
type Length float64

// Units of length. Both conversions are exact.
const (
	Millimetre = Length(quantity.Millimetre)
	Inch       = Length(quantity.Inch)
)

// Millimetres returns the length as a plain number of millimetres.
func (l Length) Millimetres() float64 { return float64(l) }

// Inches returns the length as a plain number of inches.
func (l Length) Inches() float64 { return float64(l / Inch) }

// String gives the length in millimetres to a hundredth, without trailing zeros.
func (l Length) String() string {
	return strconv.FormatFloat(float64(round(l, 100)), 'f', -1, 64) + " mm"
}

func round(l Length, per float64) float64 {
	v := float64(l) * per
	if v < 0 {
		return float64(int64(v-0.5)) / per
	}
	return float64(int64(v+0.5)) / per
}
