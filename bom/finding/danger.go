package finding

import (
	"cmp"
	"math"

	"handtight/pressure/quantity"
)

// Consequence says what comes of a finding that nobody minds. The zero value is invalid.
type Consequence uint8

// The consequences, from the worst: the pressure, the sea, fire, then what only costs.
const (
	Bursts            Consequence = iota + 1 // a part bursts
	Floods                                   // the sea comes in
	Fire                                     // a cable or a motor burns
	LetsGo                                   // high pressure lets go or sprays
	Leaks                                    // it leaks at low pressure
	Spoils                                   // a pump, a membrane or the water is spoiled
	DoesNotGoTogether                        // it cannot be put together
	Money                                    // it costs
)

var consequenceWords = [...]string{
	Bursts: "bursts", Floods: "floods", Fire: "fire", LetsGo: "lets go", Leaks: "leaks", Spoils: "spoils",
	DoesNotGoTogether: "does not go together", Money: "money",
}

// String gives the consequence's word in output.
func (c Consequence) String() string {
	if c == 0 || int(c) >= len(consequenceWords) {
		return "no consequence"
	}
	return consequenceWords[c]
}

// headings stand over what comes of findings: where it is known, and where it may be.
var headings = [...][2]string{
	Bursts: {"BURSTS", "MAY BURST: NOT KNOWN"}, Floods: {"FLOODS", "MAY FLOOD: NOT KNOWN"}, Fire: {"BURNS", "MAY BURN: NOT KNOWN"},
	LetsGo: {"LETS GO AT HIGH PRESSURE", "MAY LET GO AT HIGH PRESSURE: NOT KNOWN"}, Leaks: {"LEAKS", "MAY LEAK: NOT KNOWN"},
	Spoils:            {"SPOILS PUMP, MEMBRANE OR WATER", "MAY SPOIL PUMP, MEMBRANE OR WATER: NOT KNOWN"},
	DoesNotGoTogether: {"DOES NOT GO TOGETHER", "MAY NOT GO TOGETHER: NOT KNOWN"}, Money: {"COSTS MONEY", "MAY COST MONEY: NOT KNOWN"},
}

// Heading is what stands over findings of the consequence; notKnown, where something is not
// known of which it may come.
func (c Consequence) Heading(notKnown bool) string {
	if c == 0 || int(c) >= len(headings) {
		return "NO CONSEQUENCE"
	}
	return headings[c][truth(notKnown)]
}

// Stake is the highest pressure that stands at a finding's subject:
// infinite where nothing bounds it; Known is false where the subject has no pressure.
type Stake struct {
	Pressure quantity.Pressure
	Known    bool
}

// Unbounded reports whether nothing bounds the pressure at stake.
func (s Stake) Unbounded() bool { return s.Known && s.Pressure.Unbounded() }

// danger is the order in which findings need looking at: by severity, then by what comes of
// them, what is known to be wrong before what is not known, then the highest pressure at stake,
// then the number of the joint.
func (f *Finding) danger(o *Finding) int {
	return cmp.Or(
		cmp.Compare(f.Severity, o.Severity), cmp.Compare(f.Consequence, o.Consequence),
		cmp.Compare(truth(f.NotKnown), truth(o.NotKnown)), cmp.Compare(o.Stake.order(), f.Stake.order()),
		cmp.Compare(f.Subject.Joint, o.Subject.Joint),
	)
}

// order is what stakes are sorted by: none stands below all.
func (s Stake) order() quantity.Pressure {
	if !s.Known {
		return quantity.Pressure(math.Inf(-1))
	}
	return s.Pressure
}

func truth(b bool) int {
	if b {
		return 1
	}
	return 0
}
