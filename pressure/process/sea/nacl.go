package sea

import (
	"fmt"
	"math"

	"handtight/pressure/quantity"
)

// Solution is cooking salt in water at 25 C, what elements are tested with.
type Solution struct {
	Density            KilogramPerCubicMetre
	Viscosity          PascalSecond
	OsmoticCoefficient float64
	OsmoticPressure    quantity.Pressure
}

// NaCl answers for a mass share of salt at 25 C: density 995 + 756 x, viscosity
// 9.80e-4 + 2.15e-3 x, phi 0.918 + 0.0889 x + 4.92 x2, pressure 2 phi m 1000 R T.
//
// Errors: outside 0 to 26 %, where the solution is saturated.
// Source: J. Membrane Science 573 (2019) 682-693, as coded in watertap-org/watertap
// NaCl_prop_pack.py.
func NaCl(share quantity.Share) (Solution, error) {
	x := share.Fraction()
	if !(x >= 0 && x <= 0.26) {
		return Solution{}, fmt.Errorf("a solution of cooking salt holds 0 to 26 %% of it; found %s", share)
	}
	const molar, kelvin = 0.05844, 298.15
	s := Solution{
		Density:            KilogramPerCubicMetre(995 + 756*x),
		Viscosity:          PascalSecond(9.80e-4 + 2.15e-3*x),
		OsmoticCoefficient: 0.918 + 8.89e-2*x + 4.92*x*x,
	}
	s.OsmoticPressure = quantity.Pressure(2 * s.OsmoticCoefficient * x / (1 - x) / molar * 1000 * GasConstant * kelvin)
	return s, nil
}

// NaClShare is the mass share of a concentration in g/L, by the density of [NaCl]:
// c = x (995 + 756 x).
func NaClShare(gramsPerLitre float64) quantity.Share {
	return quantity.Share((math.Sqrt(995*995+4*756*gramsPerLitre) - 995) / (2 * 756))
}
