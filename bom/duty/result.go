package duty

import (
	"handtight/bom/build"
	"handtight/pressure/process/line"
	"handtight/pressure/process/membrane"
	"handtight/pressure/process/pump"
	"handtight/pressure/process/span"
	"handtight/pressure/quantity"
)

// Result is what a build makes and takes.
type Result struct {
	Build  *build.Build
	Plants []*Making
}

// Making is what one plant of a build makes and takes.
type Making struct {
	*Plant
	Name  string
	Notes []Note   // what the figures rest on
	Asks  []string // what nobody said, and what is not reckoned for want of it

	Feed      span.Span[quantity.Flow] // of all piston pumps at the duty; of the feed pump for an energy-recovery pump
	FeedKnown bool
	Box       membrane.Box // of "all"

	Made     bool // the membrane could be reckoned
	WhyNot   string
	Elements int             // in a row, the longest
	Ways     int             // rows side by side
	Middle   membrane.Result // the middle of "new"
	New, All membrane.Band
	Pressure span.Span[quantity.Pressure] // at the vessel, over "all"
	Drives   bool                         // at the middle the pressure overcomes the salt
	BestGap  quantity.Pressure            // what is left of the pressure at the best corner, before any product
	MidGap   quantity.Pressure            // and at the middle

	Recovered *Recovered
	Limits    []Limit
	Power     *Power
	Lines     *Lines

	Conditions []Condition // ways of running beside the normal one
	Unsolved   []string    // those that were not found, each with its reason

	ways  []*way // rows that are alike
	row   membrane.Row
	ends  [2]membrane.Row
	mid   membrane.Running
	water line.Water
	in    inputs
	back  quantity.Pressure // on the product side

	frames  *frame
	product func(port int) bool // product water wets it
	plan    *build.Build
}

// Condition finds a way of running by its name; nil where the plant has none of it, or it is not
// known.
func (m *Making) Condition(name string) *Condition {
	for i := range m.Conditions {
		if m.Conditions[i].Name == name {
			return &m.Conditions[i]
		}
	}
	return nil
}

// Recovered is how an energy-recovery pump runs: at the middle, and in the hardest and the
// easiest water.
type Recovered struct {
	Middle, Hardest, Easiest pump.Run
	Warmest                  membrane.Result // in the warmest water, elements as at the middle
	Highest                  quantity.Pressure
	Stalls                   bool              // in the hardest water the feed pump does not do
	Longer                   membrane.Result   // the middle with one element more in each row
	LongerHeld               quantity.Pressure // and the pressure that it comes to
	LongerKnown              bool
	Device                   pump.Recovery
	Curve                    *pump.Curve
	Takes                    span.Span[quantity.Flow] // of its feed pump, what leaks past the piston in it
	Dirty                    pump.Run                 // at the middle with all filters at the end of their life
	DirtyErr                 error                    // why that does not run

	leak     span.Span[quantity.Share]
	friction span.Span[quantity.Pressure]
}

// Fact is a figure with its ends.
type Fact struct {
	Name   string
	Words  string // for people
	Lo, Hi float64
	Unit   string
	From   []string
}

// Limit is a bound of an element or a part, and how far from it the plant stays.
type Limit struct {
	Name   string
	Words  string
	Value  span.Span[float64] // over "all"
	Middle float64            // of "new"
	Limit  float64            // the end that stops
	Strict float64            // the end that cautions; the same where a sheet says it
	Unit   string
	Least  bool // the value must stay above the limit
	Memory bool // the limit is from memory: it raises a note, and a caution where even its generous end fails
	From   string
}

// Margin is how far the middle stays from the strict end; below zero it is beyond.
func (l Limit) Margin() float64 {
	if l.Least {
		return l.Middle - l.Strict
	}
	return l.Strict - l.Middle
}

// Fails reports whether even the better end of "all" is beyond the generous limit.
func (l Limit) Fails() bool {
	if l.Least {
		return l.Value.Hi < l.Limit
	}
	return l.Value.Lo > l.Limit
}

// Doubtful reports whether the middle of "new" is beyond the strict limit.
func (l Limit) Doubtful() bool { return l.Margin() < 0 }
