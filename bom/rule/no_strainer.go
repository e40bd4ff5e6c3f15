package rule

import (
	"fmt"

	"handtight/bom"
	"handtight/bom/circuit"
	"handtight/bom/finding"
	"handtight/bom/graph"
	"handtight/catalog"
)

var noStrainer = Rule{
	Slug:  "no-strainer",
	Title: "No strainer stands between the sea and the first pump.",
	Why: `Weed, shells and jellyfish come in with the water. They stop the valves of a feed pump,
and fill a fine cartridge in a minute. A strainer or a screen of some millimetres or less, that
can be opened and rinsed, takes them out (common practice).`,
	Wrong: `
[[run]]
name = "raw water"
path = ["intake", "hose/+", "filter", "hose/+", "feed", "tee", "pump"]
`,
	mend:  []string{`path = ["intake", "hose/+", "filter", "hose/+", "feed", "tee", "pump"]`, `path = ["intake", "hose/+", "strainer", "hose/+", "filter", "hose/+", "feed", "tee", "pump"]`},
	block: "raw water",
	plant: "flushed",
	harm:  finding.Spoils,
	check: findNoStrainer,
}

// findNoStrainer speaks once of each pump that draws from the sea itself: the first of its line.
func findNoStrainer(s *bom.System) []finding.Finding {
	var out []finding.Finding
	for _, u := range s.Graph.Units {
		in, _ := circuit.PumpEnds(u)
		if in < 0 {
			continue
		}
		pumped := func(v *graph.Unit) bool { _, out := circuit.PumpEnds(v); return out >= 0 }
		to := u.First + in
		if !without(s, to, pumped) || !without(s, to, func(v *graph.Unit) bool { return pumped(v) || v.Item.Kind.Is(catalog.Strainer) || screened(v) }) || screenedIntake(s, to) {
			continue
		}
		out = append(out, finding.Finding{
			Severity: finding.Caution, Subject: ofUnit(u), Place: at(u.Mark),
			Reason: fmt.Sprintf("no strainer stands between the sea and %s.", u.Name),
			Remedy: fmt.Sprintf("Put a strainer before %s, where it can be reached and opened.", u.Name),
		})
	}
	return out
}

// screened reports whether the words of a unit say that it has a screen.
func screened(u *graph.Unit) bool {
	return says(u.Item, "with screen", "with a screen", "with strainer", "with a strainer", "scoop strainer", "with grate", "with a grate", "mesh screen")
}

// screenedIntake reports whether every intake that a port is fed by has a screen of its own.
func screenedIntake(s *bom.System, to int) bool {
	found := false
	for _, u := range s.Circuit.UnitsAround(to) {
		if s.Waters.Intake(u) {
			if !screened(u) {
				return false
			}
			found = true
		}
	}
	return found
}

var noFineFilter = Rule{
	Slug:  "no-fine-filter",
	Title: "The high-pressure pump draws sea water that no fine filter has passed.",
	Why: `Sand wears the seats of the pump, and silt fills the spacer of the element for good. The
makers of elements ask for a cartridge of 5 micron or finer before them (common practice); a
strainer is a hundred times as coarse. Every way that sea water can take to the pump is looked at.`,
	Wrong: `
[[run]]
name = "raw water"
path = ["intake", "hose/+", "strainer", "hose/+", "feed", "tee", "pump"]
`,
	mend:  []string{`path = ["intake", "hose/+", "strainer", "hose/+", "feed", "tee", "pump"]`, `path = ["intake", "hose/+", "strainer", "hose/+", "filter", "hose/+", "feed", "tee", "pump"]`},
	block: "raw water",
	plant: "flushed",
	harm:  finding.Spoils,
	check: findNoFilter,
}

// fine is the coarsest cartridge, in micron, that keeps silt off a membrane (common practice).
const fine = 5.0

func findNoFilter(s *bom.System) []finding.Finding {
	var out []finding.Finding
	for _, p := range pumps(s) {
		in, ok := port(p, "in")
		if !ok || !without(s, in, func(*graph.Unit) bool { return false }) {
			continue
		}
		housing := func(u *graph.Unit) bool { return u.Item.Kind.Is(catalog.Filter) && !u.Item.Kind.Is(catalog.Carbon) }
		f := finding.Finding{Subject: ofUnit(p)}
		switch {
		case without(s, in, housing):
			f.Severity = finding.Stop
			f.Reason = fmt.Sprintf("sea water reaches %s without passing a filter.", p.Name)
			f.Remedy = fmt.Sprintf("Put a filter housing with a cartridge of %.0f micron before %s, and a coarser one before that.", fine, p.Name)
		case !without(s, in, func(u *graph.Unit) bool { return housing(u) && fineAs(s, u) == isFine }):
			continue
		case !without(s, in, func(u *graph.Unit) bool { return housing(u) && fineAs(s, u) != isCoarse }):
			f.Severity, f.NotKnown = finding.Caution, true
			f.Reason = fmt.Sprintf("nothing says how fine the filters before %s are.", p.Name)
			f.Remedy = "Write `micron` on the cartridges, or on their housings."
		default:
			f.Severity = finding.Caution
			f.Reason = fmt.Sprintf("sea water reaches %s without passing a filter of %.0f micron or finer.", p.Name, fine)
			f.Remedy = fmt.Sprintf("Put a cartridge of %.0f micron into the last housing before %s.", fine, p.Name)
		}
		f.Place = at(p.Mark)
		out = append(out, f)
	}
	return out
}

// The answers to how fine a filter is.
const (
	notSaid = iota
	isFine
	isCoarse
)

// fineAs says how fine a housing filters: as its cartridge does where that is said.
func fineAs(s *bom.System, u *graph.Unit) int {
	micron := u.Item.Micron
	for _, it := range contents(s, u.Item, catalog.Cartridge) {
		if it.Micron != nil {
			micron = it.Micron
		}
	}
	switch {
	case micron == nil:
		return notSaid
	case micron.Microns() <= fine+0.05:
		return isFine
	}
	return isCoarse
}
