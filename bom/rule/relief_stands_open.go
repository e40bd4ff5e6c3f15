package rule

import (
	"fmt"
	"slices"

	"handtight/bom"
	"handtight/bom/finding"
	"handtight/bom/graph"
)

var reliefStandsOpen = Rule{
	Slug:  "relief-stands-open",
	Title: "In normal running the pump's whole flow goes over the relief valve.",
	Why: `A relief valve is there for the day when something is shut. Where the way to the throttle is
shut in normal running, by a one-way valve that points back or a valve that is written as shut,
all the water goes over the relief from the first minute: the pump runs at the relief's pressure,
the membrane gets nothing, and the valve's seat wears out.`,
	Wrong: `
[[item]]
id = "hp-check"
kind = "check valve"
material = "super duplex"
rated = "100 bar"
ports = { in = '3/8 NPT male', out = '3/8 NPT female' }
[[run]]
name = "high pressure"
path = ["pump", "hp-tee", "gauge-tee", "hp-hose", "hp-check.out>in", "vessel.feed"]   # entered by its outlet
`,
	mend:  []string{`path = ["pump", "hp-tee", "gauge-tee", "hp-hose", "hp-check.out>in", "vessel.feed"]   # entered by its outlet`, `path = ["pump", "hp-tee", "gauge-tee", "hp-hose", "hp-check", "vessel.feed"]`},
	block: "high pressure",
	plant: "flushed",
	harm:  finding.Spoils,
	check: findOpenRelief,
}

func findOpenRelief(s *bom.System) []finding.Finding {
	var out []finding.Finding
	for _, u := range s.Running.OpenReliefs() {
		blocks := blocked(s, u)
		f := finding.Finding{
			Severity: finding.Stop, Subject: ofUnit(u), Place: at(u.Mark),
			Reason: fmt.Sprintf("in normal running nothing but %s lets the pump's water out, and it stands open from the start%s.", u.Name, because(blocks)),
			Remedy: "Look along the line from the pump to the throttle: which one-way valve points back, which valve says `normal = \"shut\"`?",
		}
		if len(blocks) > 0 {
			f.Remedy = putRight
		}
		out = append(out, f)
	}
	return out
}

// blocked says what keeps the water of the pumps that a relief guards from the throttle.
func blocked(s *bom.System, relief *graph.Unit) []string {
	for _, p := range pumps(s) {
		if near, far := reliefsOf(s, p); slices.Contains(near, relief) || slices.Contains(far, relief) {
			return s.Running.BlocksBehind(p)
		}
	}
	return nil
}
