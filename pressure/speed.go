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
