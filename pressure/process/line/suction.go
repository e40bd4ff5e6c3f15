package line

import (
	"errors"

	"handtight/pressure/quantity"
)

// Throw is the numbers of the acceleration head: C of the pump's make and K of the water.
type Throw struct{ C, K float64 }

// The two ends that are published or remembered for a pump of three plungers: C 0.066 (memory)
// and 0.10 (page on acceleration head), K 1.5 and 1.4 (memory).
var (
	ThrowLeast = Throw{0.066, 1.5}
	ThrowMost  = Throw{0.10, 1.4}
)

// Acceleration is the head of water that goes into starting and stopping the
// column at every stroke: L v n C / (g K), n in turns a minute. It
// is for rigid pipe: soft hose near the pump lowers it, so it is an upper end.
//
// Errors: if K is not above zero or a figure is below zero.
// Source: page on acceleration head of reciprocating pumps, ha = L V N C / (g K).
func Acceleration(length quantity.Length, v quantity.Velocity, n quantity.Speed, t Throw) (head quantity.Length, err error) {
	if !(t.K > 0 && t.C >= 0 && length >= 0 && v >= 0 && n >= 0) {
		return 0, errors.New("an acceleration head needs a length, a speed and turns a minute of zero or more, and a K above zero")
	}
	return quantity.Metre * quantity.Length(length.Metres()*v.MetresPerSecond()*n.TurnsPerMinute()*t.C/(Gravity*t.K)), nil
}

// Suction is what stands before a pump's inlet.
type Suction struct {
	Surface      quantity.Pressure // absolute, on the water drawn from; [Atmosphere] where it is open
	Feed         quantity.Pressure // what a feed pump adds
	Vapour       quantity.Pressure // absolute
	Losses       quantity.Pressure // of hose, fittings and filters
	Lift         quantity.Length   // the pump above the water; below zero where it is flooded
	Acceleration quantity.Length   // of water
	Water        Water
}

// Atmosphere is the standard pressure of the air at the sea, absolute.
const Atmosphere quantity.Pressure = 101325

// Available is the net positive suction head of water:
// (surface + feed - vapour - losses) / (rho g) - lift - acceleration.
//
// Errors: if the water has no density.
func (s Suction) Available() (head quantity.Length, err error) {
	if !(s.Water.Density > 0) {
		return 0, errors.New("the head at a pump's inlet needs the density of the water")
	}
	stands := float64(s.Surface+s.Feed-s.Vapour-s.Losses) / (float64(s.Water.Density) * Gravity)
	return quantity.Metre*quantity.Length(stands) - s.Lift - s.Acceleration, nil
}

// Needed is the head that a pump should find, from the one that its sheet asks for: a metre
// or three tenths more, whichever is more.
//
// Source: page on acceleration head (1.0 to 1.5 m over); Technical Paper 410 example 7-32 (20 ft x 1.3).
func Needed(npsh quantity.Length) quantity.Length { return max(npsh+quantity.Metre, npsh*1.3) }
