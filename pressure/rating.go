package pressure

import (
	"fmt"

	"handtight/pressure/quantity"
)

// Basis is what a rating rests on. The zero value is no basis.
type Basis uint8

// The bases, from the part's own word to a guess.
const (
	DataSheet    Basis = iota + 1 // the part's own data sheet or marking
	HoseStandard                  // the table of the hose standard it is sold to
	FittingClass                  // the class or standard of the fitting
	HoseJoint                     // a shank in a hose, with its clamp
	TubeTable                     // a table of tube or pipe by its outside and wall
	Claim                         // what makers commonly claim of such parts, by no standard
	Estimate                      // worked from something alike; never clears a high-pressure segment
	MakersSeries                  // one maker's series of a standard that gives no figure of its own for the size
	OtherSize                     // another size's figure: the standard's table does not have the size
	Closing                       // what closes a joint, such as the washer of a garden hose
	basisEnd
)

var basisWords = [basisEnd]string{
	"no basis", "data sheet", "hose standard", "fitting class", "hose joint", "tube table", "common claim", "estimate",
	"a maker's series, not the standard", "size not in the table", "what closes it",
}

// Guess reports whether a figure of this basis never clears a high-pressure segment: an
// estimate, one maker's series, and another size's figure.
func (b Basis) Guess() bool { return b == Estimate || b == MakersSeries || b == OtherSize }

// String gives the basis in words: "hose standard".
func (b Basis) String() string {
	if b >= basisEnd {
		return basisWords[0]
	}
	return basisWords[b]
}

// Status says how well a figure is known. The zero value is no status.
type Status uint8

// The states of knowledge, best first.
const (
	Seen           Status = iota + 1 // read in the named source
	Computed                         // worked out by a named formula
	Mixed                            // the figures seen, their sizes remembered
	Stated                           // what the build file says of the part
	CommonPractice                   // a fact of the trade without a source
	Judgement                        // this project's own choice
	Memory                           // remembered, not read: check before relying on it
	statusEnd
)

var statusWords = [statusEnd]string{"no status", "seen", "computed", "mixed", "stated", "common practice", "judgement", "memory"}

// String gives the status in words, as the tables write it: "memory".
func (s Status) String() string {
	if s >= statusEnd {
		return statusWords[0]
	}
	return statusWords[s]
}

func statusNamed(word string) Status {
	for s, w := range statusWords {
		if w == word && s > 0 {
			return Status(s)
		}
	}
	panic("pressure: a table has the status " + word)
}

// Rating is the highest pressure that a part may hold at work, and how that is known.
// The zero value is no rating.
type Rating struct {
	Pressure quantity.Pressure
	Basis    Basis
	Text     string // what was looked up, with the figure as it is printed
	Source   string // the original source
	Status   Status
}

// OfDataSheet makes the rating that a part's own data sheet or marking states.
// The source says where, such as the item's name.
func OfDataSheet(p quantity.Pressure, source string) Rating {
	return Rating{Pressure: p, Basis: DataSheet, Text: "data sheet: " + p.String(), Source: source, Status: Stated}
}

// OfClosing makes the rating of a joint that seals, and to a limit only, by what closes it. Whatever
// the source says of such ends, that it holds for this joint is this project's judgement.
func OfClosing(p quantity.Pressure, by, source string) Rating {
	return Rating{Pressure: p, Basis: Closing, Text: by + ": " + p.String(), Source: source, Status: Judgement}
}

// Lower returns the lowest of the ratings, the earlier one on a tie: the weakest
// part of a chain. Ratings without a basis are passed over; ok is false if none is left.
//
// Source: SAE J517 (2003 and 2020) section 1 for an assembly; page "Pressure
// ratings for hydraulic adapters" for a fitting with two ends.
func Lower(ratings ...Rating) (lowest Rating, ok bool) {
	for _, r := range ratings {
		if r.Basis == 0 || r.Basis >= basisEnd {
			continue
		}
		if !ok || r.Pressure < lowest.Pressure {
			lowest, ok = r, true
		}
	}
	return lowest, ok
}

// Governing returns the rating of one part of which several are known: the lower
// of its data sheet and its standard. A guess ([Basis.Guess]) counts only when there is
// nothing else; but one maker's series and another size's figure lower what is known, which
// they do not make a guess of. ok is false when nothing is known.
func Governing(ratings ...Rating) (Rating, bool) {
	var known, limits []Rating
	for _, r := range ratings {
		switch {
		case !r.Basis.Guess():
			known = append(known, r)
		case r.Basis != Estimate:
			limits = append(limits, r)
		}
	}
	r, ok := Lower(known...)
	if !ok {
		return Lower(ratings...)
	}
	if limit, any := Lower(limits...); any && limit.Pressure < r.Pressure {
		r.Pressure, r.Text = limit.Pressure, fmt.Sprintf("%s, and %s: %s", r.Text, limit.Basis, limit.Text)
	}
	return r, true
}

// Ratios of proof and burst to the working pressure.
const (
	HoseProofRatio  = 2   // SAE J517 hydraulic hose, 1 : 2 : 4 (page "The complicated world of SAE standards", overview table)
	HoseBurstRatio  = 4   // RMA IP-2 (2003) p.50: liquids, and water above 150 psi
	OtherProofRatio = 1.5 // ASME B31.3-2016 345.4.2(a): hydrostatic test of metallic piping
)

// Proof returns the pressure that a part of this rating is tested to: twice the
// rating for hose by its standard, one and a half times for everything else.
// ok is false for a rating without a basis, and for a guess.
//
// Source: [HoseProofRatio], [OtherProofRatio].
func Proof(r Rating) (p quantity.Pressure, ok bool) {
	switch r.Basis {
	case HoseStandard:
		return r.Pressure * HoseProofRatio, true
	case DataSheet, FittingClass, HoseJoint, TubeTable, Claim:
		return r.Pressure * OtherProofRatio, true
	}
	return 0, false
}

// String gives the rating as one line: "275.8 bar (hose standard: SAE 100R8 -6, 4000 psi)".
func (r Rating) String() string {
	if r.Basis == 0 {
		return "unknown"
	}
	return fmt.Sprintf("%s (%s: %s)", r.Pressure, r.Basis, r.Text)
}

// figure is the pressure as its source prints it, psi first when that is asked for.
func (p printed) figure(psiFirst bool) string {
	if p.hasPSI && (psiFirst || !p.hasBar) {
		return quantity.Exact(p.psi) + " psi"
	}
	return quantity.Exact(p.bar) + " bar"
}
