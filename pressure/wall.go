package pressure

import (
	"fmt"

	"handtight/pressure/quantity"
)

// millTolerance is what a seamless pipe's wall may fall short: 12.5 % (ASME B31.3
// practice, common to ASTM A312 and A106 pipe).
const millTolerance = 0.125

// NetWall returns the wall that carries the pressure in a threaded pipe end:
// 0.875 of the nominal wall less the depth of the thread. It may be zero or less,
// which [WallRating] refuses.
//
// Source: ASME B31.3 304.1.2 with the thread depth as allowance.
func NetWall(nominal, threadDepth quantity.Length) quantity.Length {
	return nominal*(1-millTolerance) - threadDepth
}

// WallRating estimates what a straight pipe of a metal holds: P = 2 S t / (D - 0.8 t)
// for an outside diameter D, a net wall t from [NetWall] and an allowable stress S
// (a Pressure; 20 000 psi for 316 to 38 C). It is always an [Estimate]. ok is false
// for a wall of nothing or of a sixth of the diameter and more, where the formula
// does not hold, and without a stress.
//
// Source: ASME B31.3 304.1.2 (3a) with E = W = 1 and Y = 0.4.
func WallRating(outside, net quantity.Length, allowable quantity.Pressure) (Rating, bool) {
	if !(net > 0 && net < outside/6 && allowable > 0) {
		return Rating{}, false
	}
	return Rating{
		Pressure: allowable * quantity.Pressure(2*net/(outside-0.8*net)),
		Basis:    Estimate, Status: Computed, Source: "ASME B31.3 304.1.2 (3a)",
		Text: fmt.Sprintf("outside %s, net wall %s, allowable stress %s MPa", outside, net, quantity.Significant(allowable.MPa(), 4)),
	}, true
}
