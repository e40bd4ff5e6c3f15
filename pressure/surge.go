package pressure

import (
	"math"

	"handtight/pressure/quantity"
)

// Water that is stopped presses on: water hammer.

// Surge returns the pressure by which a line rises when its water is stopped at
// once: rho c dv, for a density, a wave speed and a loss of speed. It is the whole rise only when the valve shuts faster than the wave runs to
// the line's end and back, and it is no ceiling: reflections add to it.
//
// Source: Joukowsky's formula, as on the page "Water hammer pressure".
func Surge(density quantity.Density, wave, loss quantity.Velocity) quantity.Pressure {
	return quantity.Pressure(float64(density)*float64(wave)*float64(loss)) * quantity.Pascal
}

// WaveSpeed returns the speed of a pressure wave in a pipe of inside diameter d, wall t
// and modulus of elasticity e, filled with a water of a density and bulk modulus k: sqrt((k/rho) / (1 + k d/(e t))). ok is false where a
// figure is not above zero.
//
// Source: page "Water hammer", formula for elastic pipe.
func WaveSpeed(k quantity.Pressure, density quantity.Density, d, t quantity.Length, e quantity.Pressure) (v quantity.Velocity, ok bool) {
	if !(k > 0 && density > 0 && d > 0 && t > 0 && e > 0) {
		return 0, false
	}
	return quantity.Velocity(math.Sqrt(float64(k)/float64(density)/(1+float64(k/e)*float64(d/t)))) * quantity.MetrePerSecond, true
}

// RigidWaveSpeed is the speed of a pressure wave in a pipe that does not give: that
// of sound in water, sqrt(K/rho) with a bulk modulus of 2.2 GPa. In any real hose or pipe
// it is less, so that it bounds a surge from above.
//
// Source: page "Water hammer", formula for elastic pipe, with walls that do not give.
const RigidWaveSpeed = 1483 * quantity.MetrePerSecond

// SolenoidCloses is the time in which a quick solenoid valve shuts: a judgement,
// after the column "Shock to the system" on PDI standard WH-201, where a run of 80 ft,
// critical at 40 ms, takes in most solenoid valves.
const SolenoidCloses = 0.02 * quantity.Second

// ClosingSurge returns the pressure by which a line of a length rises when a valve at
// its end stops the water within a time: rho c dv where it shuts within 2L/c,
// and less by as much as it is slower: 2 rho L dv / t. ok is false where a figure is not
// above zero.
//
// Source: PDI standard WH-201 for the critical time 2L/c, as told in the column "Shock to
// the system"; a page on fluid hammer for slow closure, rho c dv (2L/c)/t.
func ClosingSurge(density quantity.Density, wave, loss quantity.Velocity, length quantity.Length, within quantity.Duration) (rise quantity.Pressure, ok bool) {
	if !(density > 0 && wave > 0 && loss > 0 && length > 0 && within > 0) {
		return 0, false
	}
	critical := CriticalTime(length, wave)
	return Surge(density, wave, loss) * quantity.Pressure(min(1, critical/within)), true
}

// CriticalTime returns the time in which a pressure wave of a speed runs through a line and back, 2L/c: a valve that shuts within it gives the whole surge.
//
// Source: PDI standard WH-201, as told in the column "Shock to the system".
func CriticalTime(length quantity.Length, wave quantity.Velocity) quantity.Duration {
	return quantity.Duration(2*length.Metres()/wave.MetresPerSecond()) * quantity.Second
}
