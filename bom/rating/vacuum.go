package rating

import (
	"handtight/bom/build"
	"handtight/pressure"
)

// PumpPulls is the vacuum in bar that a suction hose must stand: that of the one hose
// standard that asks for any. The last of an atmosphere is lost to vapour and leaks (a
// judgement).
//
// Source: SAE J517 100R4, 25 inches of mercury, from memory.
const PumpPulls = 0.85

// StandsVacuum is the vacuum in bar that a hose stands by its data sheet, else by its
// standard; ok is false where nothing says that it stands any.
func StandsVacuum(i *build.Item) (bar float64, ok bool) {
	if i.Vacuum != nil {
		return i.Vacuum.Bar(), true
	}
	if spec, known := pressure.HoseSpec(i.Spec); known && i.Bore != nil {
		if r, rated := pressure.VacuumRating(spec, *i.Bore); rated {
			return r.Pressure.Bar(), true
		}
	}
	return 0, false
}
