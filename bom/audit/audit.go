package audit

import (
	"cmp"
	"fmt"
	"slices"
	"time"

	"handtight/bom"
	"handtight/bom/build"
	"handtight/bom/graph"
	"handtight/pressure/quantity"
	"handtight/threads/evidence"
)

// Section is a part of the order of work. The zero value is invalid.
type Section uint8

// The sections, in the order in which they are worked through.
const (
	Wrong   Section = iota + 1 // known to be wrong: not to be run
	Open                       // to be opened first
	Measure                    // it is not known what it is
	Prove                      // a right pair at high pressure that no test has proved
	Watch                      // left, and looked at again
	Fine
)

var sectionWords = [...]string{Wrong: "known wrong", Open: "open this first", Measure: "measure this", Prove: "prove by test", Watch: "leave and watch", Fine: "fine"}

// String gives the section's word in output.
func (s Section) String() string {
	if s == 0 || int(s) >= len(sectionWords) {
		return "no section"
	}
	return sectionWords[s]
}

// Sections lists all sections in their order.
func Sections() []Section { return []Section{Wrong, Open, Measure, Prove, Watch, Fine} }

// Joint is one joint with what is to be believed of it.
type Joint struct {
	Joint   *graph.Joint
	Section Section
	Belief  evidence.Belief
	Fit     evidence.Fit
	Read    bool              // something is known of both ends
	Cost    float64           // of its being bad, by table/cost.csv
	Harm    string            // what happens then
	Worst   quantity.Pressure // over all states
	High    bool
	Below   bool
	Why     string // in one or more sentences
	Look    time.Time
	Prior   *build.AuditedJoint // what an earlier audit said of it; nil if none
}

// Risk is the probability that the joint is bad, times what that costs.
func (j *Joint) Risk() float64 { return j.Belief.Bad * j.Cost }

// Line is one line of the order of work.
type Line struct {
	Section  Section
	Joints   []*Joint
	At       string // what is to be worked on: a joint, an end, a segment
	Do       string
	Why      string
	Cost     string            // what it would cost to be wrong
	Worth    float64           // of a measurement: what it is worth, by table/cost.csv
	Pressure quantity.Pressure // to prove to; 0 where it is no proof, or none can be
	Look     time.Time         // zero: no date
	Stay     string            // may I leave it? "" where it is fine
}

// Plan is the whole order of work.
type Plan struct {
	On     time.Time // the day that it is reckoned on
	From   string    // where that day was taken from
	Joints []*Joint  // in the order of the walk
	Lines  []Line    // section by section
	Gone   []string  // joints that the record of an earlier audit names and the build has no more

	sys *bom.System
}

// DayError says that a plan cannot be reckoned on a day.
type DayError struct{ Reason, Remedy string }

// Error gives the reason and the remedy.
func (e *DayError) Error() string { return e.Reason + ": " + e.Remedy }

// Of makes the order of work on a day. A zero day is taken from the build: that of the record of
// an earlier audit, else the latest that is named in it; without any, no time counts.
//
// Errors: *[DayError] for a day before something that the build says has been.
func Of(s *bom.System, on time.Time) (*Plan, error) {
	p := &Plan{On: on, From: "as asked", sys: s}
	if on.IsZero() {
		p.On, p.From = Day(s.Build)
	} else if last, what := latest(s.Build); last.After(on) {
		return nil, &DayError{fmt.Sprintf("the audit's day, %s, lies before %s, %s", on.Format(time.DateOnly), what, last.Format(time.DateOnly)), "give the day of the audit, or mend the date in the build"}
	}
	for _, j := range s.Graph.Joints {
		if judged(s, j) {
			p.Joints = append(p.Joints, Judge(s, j, p.On))
		}
	}
	p.Gone = gone(s)
	p.lines()
	return p, nil
}

// gone lists the joints of an earlier record that were changed since.
func gone(s *bom.System) []string {
	if s.Build.Audited == nil {
		return nil
	}
	here := map[[2]string]bool{}
	for _, j := range s.Graph.Joints {
		a, b := s.Graph.Ports[j.A].Name(), s.Graph.Ports[j.B].Name()
		here[[2]string{a, b}], here[[2]string{b, a}] = true, true
	}
	var out []string
	for i := range s.Build.Audited.Joints {
		r := &s.Build.Audited.Joints[i]
		if a, b := r.At[0].Name(), r.At[1].Name(); !here[[2]string{a, b}] {
			out = append(out, fmt.Sprintf("%s - %s (%s)", a, b, r.Is))
		}
	}
	return out
}

// Day is the day that a build names itself: of its last audit, else the latest of its facts.
func Day(b *build.Build) (day time.Time, from string) {
	if b.Audited != nil && b.Audited.On.Known() {
		if last, _ := latest(b); !last.After(b.Audited.On.From) {
			return b.Audited.On.From, "the day of the last audit"
		}
	}
	day, what := latest(b)
	if day.IsZero() {
		return day, "no day is named: no time counts"
	}
	return day, "the latest day that the build names: " + what
}

// latest is the latest day that the build says has been: the first day that it may be.
func latest(b *build.Build) (day time.Time, what string) {
	take := func(w build.When, of string) {
		if w.Known() && w.From.After(day) {
			day, what = w.From, of
		}
	}
	for _, n := range b.Noted {
		take(n.MadeUp, "when a joint was made up")
		take(n.DrySince, "since when a joint is dry")
		take(n.WeptIn, "when a joint wept")
		if n.Tested != nil {
			take(n.Tested.On, "when a joint was tested")
		}
	}
	if !b.Rates.Date.IsZero() {
		if b.Rates.Date.After(day) {
			day, what = b.Rates.Date, "when the rates were looked up"
		}
	}
	return day, what
}

// judged reports whether a joint is one to judge: a pipe led into a drain or a tank without an
// end said is none.
func judged(s *bom.System, j *graph.Joint) bool {
	for _, p := range []int{j.A, j.B} {
		n := &s.Graph.Ports[p]
		if n.Unit.Item.Kind.Boats && !n.Port.Said && !n.Unit.Item.Kind.Supply {
			return false
		}
	}
	return true
}

// In lists the joints of a section.
func (p *Plan) In(s Section) []*Joint {
	var out []*Joint
	for _, j := range p.Joints {
		if j.Section == s {
			out = append(out, j)
		}
	}
	return out
}

// byRisk sorts joints by what they risk, the worst first, then by their number.
func byRisk(list []*Joint) []*Joint {
	out := slices.Clone(list)
	slices.SortStableFunc(out, func(a, b *Joint) int {
		return cmp.Or(cmp.Compare(b.Risk(), a.Risk()), cmp.Compare(a.Joint.Number, b.Joint.Number))
	})
	return out
}
