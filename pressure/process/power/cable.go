package power

import (
	"fmt"

	"handtight/pressure/quantity"
)

// Ohm is a resistance.
type Ohm float64

// SquareMillimetre is a conductor's section, and CircularMil the same in the American way.
type (
	SquareMillimetre float64
	CircularMil      float64
)

// Resistivity of copper as the standards' forms take it: 0.0164 ohm mm2/m, and 10.75 ohm for
// a circular mil and a foot.
//
// Source: the form of ISO 10133 and ABYC E-11, seen on pages on volt drop.
const (
	Resistivity     = 0.0164
	ResistivityFoot = 10.75
)

// The drops of voltage that the forms are used with: the strict one and the one that is
// allowed for what is no safety equipment.
const (
	DropStrict  quantity.Share = 0.03
	DropAllowed quantity.Share = 0.10
)

// Cable is a conductor there and back.
type Cable struct {
	Section SquareMillimetre
	Length  quantity.Length // there and back
}

// Resistance of the whole way: 0.0164 L/S.
//
// Errors: a section that is not above zero.
func (c Cable) Resistance() (Ohm, error) {
	if !(c.Section > 0 && c.Length >= 0) {
		return 0, fmt.Errorf("a cable has a section above zero; found %.3g mm2", float64(c.Section))
	}
	return Ohm(Resistivity * c.Length.Metres() / float64(c.Section)), nil
}

// Drop is the voltage that a current loses on the way.
//
// Errors: those of [Cable.Resistance].
func (c Cable) Drop(i quantity.Current) (quantity.Voltage, error) {
	r, err := c.Resistance()
	return quantity.Voltage(float64(r) * float64(i)), err
}

// Section is what a current needs for a drop: 0.0164 I L/E. The next size that is sold is
// up from it, and the local code may ask for more.
//
// Errors: a drop that is not above zero.
func Section(i quantity.Current, there quantity.Length, drop quantity.Voltage) (SquareMillimetre, error) {
	if !(drop > 0) {
		return 0, fmt.Errorf("a cable is sized for a drop above zero; found %s", drop)
	}
	return SquareMillimetre(Resistivity * float64(i) * there.Metres() / float64(drop)), nil
}

// Mils is the same in circular mils: 10.75 I L/E, L in feet.
//
// Errors: those of [Section].
func Mils(i quantity.Current, there quantity.Length, drop quantity.Voltage) (CircularMil, error) {
	if _, err := Section(i, there, drop); err != nil {
		return 0, err
	}
	return CircularMil(ResistivityFoot * float64(i) * float64(there/quantity.Foot) / float64(drop)), nil
}
