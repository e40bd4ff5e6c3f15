package quantity_test

import (
	"fmt"

	"handtight/pressure/quantity"
)

// Common practice, no source: 55 bar and 800 psi below. Check values, and no limit rests on them.

func ExampleParsePressure() {
	p, _ := quantity.ParsePressure("800 psi")
	fmt.Println(p)
	_, err := quantity.ParsePressure("55")
	fmt.Println(err)
	// Output:
	// 55.2 bar
	// "55" has no unit; write "55 bar" if that is what it is, or another of its units: bar, psi, Pa, kPa, MPa, kg/cm2, inHg, mmHg
}

func ExampleParseLength() {
	l, _ := quantity.ParseLength(`1-1/2"`)
	fmt.Println(l)
	// Output: 38.1 mm
}
