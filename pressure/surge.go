package pressure

import (
	"math"

	"handtight/pressure/quantity"
)

// Water that is stopped presses on: water hammer.

// Surge returns the pressure by which a line rises when its water is stopped at
// once: rho c dv, for a density in kg/m3, a wave speed in m/s and a loss of speed
// in m/s. It is the whole rise only when the valve shuts faster than the wave runs to
// the line's end and back, and it is no ceiling: reflections add to it.
//
// Source: Joukowsky's formula, as on the page "Water hammer pressure".
func Surge(density, waveSpeed, lossOfSpeed float64) quantity.Pressure {
	return quantity.Pressure(density * waveSpeed * lossOfSpeed)
}

// WaveSpeed returns the speed of a pressure wave in m/s in a pipe of inside
// diameter d, wall t and modulus of elasticity e, filled with a water of density
// kg/m3 and bulk modulus k: sqrt((k/rho) / (1 + k d/(e t))). ok is false where a
// figure is not above zero.
//
// Source: page "Water hammer", formula for elastic pipe.
func WaveSpeed(k quantity.Pressure, density float64, d, t quantity.Length, e quantity.Pressure) (metresPerSecond float64, ok bool) {
	if !(k > 0 && density > 0 && d > 0 && t > 0 && e > 0) {
		return 0, false
	}
	return math.Sqrt(float64(k) / density / (1 + float64(k/e)*float64(d/t))), true
}

// RigidWaveSpeed is the speed of a pressure wave in m/s in a pipe that does not give: that
// of sound in water, sqrt(K/rho) with a bulk modulus of 2.2 GPa. In any real hose or pipe
// it is less, so that it bounds a surge from above.
//
// Source: page "Water hammer", formula for elastic pipe, with walls that do not give.
const RigidWaveSpeed = 1483

// SolenoidCloses is the time in seconds in which a quick solenoid valve shuts: a judgement,
// after the column "Shock to the system" on PDI standard WH-201, where a run of 80 ft,
// critical at 40 ms, takes in most solenoid valves.
const SolenoidCloses = 0.02

// ClosingSurge returns the pressure by which a line of a length rises when a valve at
// its end stops the water within a time in seconds: rho c dv where it shuts within 2L/c,
// and less by as much as it is slower: 2 rho L dv / t. ok is false where a figure is not
// above zero.
//
// Source: PDI standard WH-201 for the critical time 2L/c, as told in the column "Shock to
// the system"; a page on fluid hammer for slow closure, rho c dv (2L/c)/t.
func ClosingSurge(density, waveSpeed, lossOfSpeed float64, length quantity.Length, seconds float64) (rise quantity.Pressure, ok bool) {
	if !(density > 0 && waveSpeed > 0 && lossOfSpeed > 0 && length > 0 && seconds > 0) {
		return 0, false
	}
	critical := CriticalTime(length, waveSpeed)
	return Surge(density, waveSpeed, lossOfSpeed) * quantity.Pressure(min(1, critical/seconds)), true
}

// CriticalTime returns the time in seconds in which a pressure wave of a speed in m/s runs
// through a line and back, 2L/c: a valve that shuts within it gives the whole surge.
//
// Source: PDI standard WH-201, as told in the column "Shock to the system".
func CriticalTime(length quantity.Length, waveSpeed float64) float64 {
	return 2 * length.Metres() / waveSpeed
}
