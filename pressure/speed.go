package pressure

import (
	"math"

	"handtight/pressure/quantity"
)

// LineSpeed returns the mean speed of the water for a flow through a bore:
// v = 4 q / (pi d2), 21.22 q/d2 in litres a minute and millimetres.
// ok is false for a bore of nothing or a flow below zero.
func LineSpeed(q quantity.Flow, bore quantity.Length) (v quantity.Velocity, ok bool) {
	if !(bore > 0 && q >= 0) {
		return 0, false
	}
	d := bore.Metres()
	return quantity.Velocity(q.CubicMetresPerSecond()/(math.Pi/4*d*d)) * quantity.MetrePerSecond, true
}

// BoreFor returns the bore in which a flow has a speed: d = sqrt(4 q / (pi v)). ok
// is false for a speed that is not above zero.
func BoreFor(q quantity.Flow, v quantity.Velocity) (quantity.Length, bool) {
	if !(v > 0 && q >= 0) {
		return 0, false
	}
	return quantity.Length(math.Sqrt(q.CubicMetresPerSecond()/(math.Pi/4*v.MetresPerSecond()))) * quantity.Metre, true
}

// The speeds in a suction line: up to the first a pump draws
// well; above the second the pages on suction lines agree that it does not.
const (
	SuctionGood = 0.9 * quantity.MetrePerSecond // memory: handbooks of plunger pumps, 0.3 to 0.6, up to 0.9
	SuctionMost = 1.5 * quantity.MetrePerSecond // pages on suction lines of hydraulic pumps: 0.5 to 1.5, 0.9 to 1.5, at most 1.5
)
