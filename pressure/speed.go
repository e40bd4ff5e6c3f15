package pressure

import (
	"math"

	"handtight/pressure/quantity"
)

// LineSpeed returns the mean speed of the water in metres a second, for a flow
// through a bore: v = 4 q / (pi d2), 21.22 q/d2 in litres a minute and millimetres.
// ok is false for a bore of nothing or a flow below zero.
func LineSpeed(q quantity.Flow, bore quantity.Length) (metresPerSecond float64, ok bool) {
	if !(bore > 0 && q >= 0) {
		return 0, false
	}
	d := bore.Metres()
	return q.CubicMetresPerSecond() / (math.Pi / 4 * d * d), true
}

// BoreFor returns the bore in which a flow has a speed: d = sqrt(4 q / (pi v)). ok
// is false for a speed that is not above zero.
func BoreFor(q quantity.Flow, metresPerSecond float64) (quantity.Length, bool) {
	if !(metresPerSecond > 0 && q >= 0) {
		return 0, false
	}
	return quantity.Length(math.Sqrt(q.CubicMetresPerSecond()/(math.Pi/4*metresPerSecond))) * quantity.Metre, true
}

// The speeds in a suction line, in metres a second: up to the first a pump draws
// well; above the second the pages on suction lines agree that it does not.
const (
	SuctionGood = 0.9 // memory: handbooks of plunger pumps, 0.3 to 0.6, up to 0.9
	SuctionMost = 1.5 // pages on suction lines of hydraulic pumps: 0.5 to 1.5, 0.9 to 1.5, at most 1.5
)

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
