package rating

import (
	"handtight/bom/build"
	"handtight/pressure"
	"handtight/pressure/quantity"
)

// PumpPulls is the vacuum that a suction hose must stand: that of the one hose
// standard that asks for any. The last of an atmosphere is lost to vapour and leaks (a
// judgement).
//
// Source: SAE J517 100R4, 25 inches of mercury, from memory.
const PumpPulls = 0.85 * quantity.Bar

// StandsVacuum is the vacuum that a hose stands by its data sheet, else by its
// standard; ok is false where nothing says that it stands any.
func StandsVacuum(i *build.Item) (vacuum quantity.Pressure, ok bool) {
	if i.Vacuum != nil {
		return *i.Vacuum, true
	}
	if spec, known := pressure.HoseSpec(i.Spec); known && i.Bore != nil {
		if r, rated := pressure.VacuumRating(spec, *i.Bore); rated {
			return r.Pressure, true
		}
	}
	return 0, false
}
