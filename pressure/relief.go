package pressure

import "handtight/pressure/quantity"

// LowPressureLimit parts low from high pressure: a segment whose normal
// pressure is above it is a high-pressure segment. It is this project's own
// boundary (a judgement): clamped hose and plastic housings live below it.
const LowPressureLimit = 10 * quantity.Bar

// ReliefOverDuty is how far above the duty a relief valve is set at the least, so
// that the pulses of a pump with three or more plungers do not lift it.
//
// Source: pump handbook chapter, relief valves (a guide value; 1.25 for a duplex
// double-acting pump).
const ReliefOverDuty = 1.1

// ReliefWindow returns the lowest and the highest setting of a relief valve: at
// least 1.1 times the duty, at most the lowest rating of what it protects. ok is
// false if nothing lies between them, or if either pressure is not above zero.
//
// Source: [ReliefOverDuty]; ASME VIII UG rules for the upper end, as quoted on the
// page "PD pump internal PRV vs external relief".
func ReliefWindow(duty, lowest quantity.Pressure) (from, to quantity.Pressure, ok bool) {
	from, to = duty*ReliefOverDuty, lowest
	return from, to, duty > 0 && lowest > 0 && from <= to
}
