// Package sea answers how heavy, how thick and how hard to press through a membrane
// sea water is, from its temperature and its salinity, by published correlations.
//
// [At] makes an [Isotherm], which answers for any salinity at one temperature;
// [Density], [Viscosity], [OsmoticCoefficient] and [OsmoticPressure] ask for one figure
// and refuse what their correlation was not made for, with an [*OutsideError].
// [NaCl] is the solution of cooking salt that elements are tested with: it is not
// sea salt, and its osmotic pressure is about a tenth higher for the same mass.
//
// Sources: Sharqawy, Lienhard and Zubair, Desalination and Water Treatment 16 (2010)
// 354-380 (density eq. 8, viscosity eq. 22 and 23, osmotic coefficient eq. 49 with the
// corrections of 2017); Nayar and others, Desalination 390 (2016) 1-24, eq. 48 (osmotic
// pressure). The osmotic pressure reads 0.14 to 0.7 % above TEOS-10.
package sea

import (
	"fmt"

	"handtight/pressure/quantity"
)

// KilogramPerCubicMetre is a density.
type KilogramPerCubicMetre float64

// PascalSecond is a dynamic viscosity.
type PascalSecond float64

// What the correlations were made for.
const (
	Coldest     quantity.Temperature = 0
	Warmest     quantity.Temperature = 180
	MostSalt    quantity.Salinity    = 150 // density and viscosity
	MostOsmotic quantity.Salinity    = 120 // osmotic coefficient
	// LeastOsmotic is where the osmotic coefficient's correlation begins. Below it that
	// coefficient is held: less than 3 % off (judgement).
	LeastOsmotic quantity.Salinity = 10
)

// OutsideError says that a correlation was not made for the water.
type OutsideError struct {
	What        string // "osmotic pressure"
	Temperature quantity.Temperature
	Salinity    quantity.Salinity
	Most        quantity.Salinity
}

// Error names the water and what the correlation covers.
func (e *OutsideError) Error() string {
	return fmt.Sprintf("the %s of water of %s at %s is outside its correlation (%s to %s, up to %s)",
		e.What, e.Salinity, e.Temperature, Coldest, Warmest, e.Most)
}

func within(what string, t quantity.Temperature, s, most quantity.Salinity) error {
	if t >= Coldest && t <= Warmest && s >= 0 && s <= most {
		return nil
	}
	return &OutsideError{what, t, s, most}
}
