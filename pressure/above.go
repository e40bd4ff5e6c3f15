package pressure

// Slack is the lack in bar that is taken for none: it comes of turning one unit of measure
// into another and back (a judgement).
const Slack = 0.001

// Above reports whether a pressure is higher than another, both in bar, by more than [Slack].
// Everything that asks whether a part holds what it sees asks this.
func Above(bar, limit float64) bool { return bar > limit+Slack }
