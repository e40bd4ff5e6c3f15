package pressure

import "handtight/pressure/quantity"

// Slack is the lack that is taken for none: it comes of turning one unit of measure
// into another and back (a judgement).
const Slack = 0.001 * quantity.Bar

// Above reports whether a pressure is higher than another by more than [Slack].
// Everything that asks whether a part holds what it sees asks this.
func Above(p, limit quantity.Pressure) bool { return p > limit+Slack }
