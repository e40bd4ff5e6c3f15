package rule

import (
	"fmt"

	"handtight/bom"
	"handtight/bom/finding"
	"handtight/bom/graph"
	"handtight/catalog"
)

var gaugeMissing = Rule{
	Slug:  "gauge-missing",
	Title: "No gauge shows the pressure that the hand holds on the throttle.",
	Why: `The duty is held by hand: the throttle is turned until the gauge shows it. Without a gauge
between the pump and the throttle nobody knows what the membrane gets, or that the relief is
about to lift (common practice). Take one whose middle half holds the duty.`,
	Wrong: `
# no run leads to the gauge
[[item]]
id = "plug"
kind = "plug"
material = "super duplex"
rated = "100 bar"
ports = { a = '1/4 NPT male' }
[[run]]
name = "plug"
path = ["gauge-tee.branch", "plug"]
`,
	right: `
[[run]]
name = "gauge"
path = ["gauge-tee.branch", "gauge"]
`,
	block: "gauge",
	plant: "flushed",
	harm:  finding.Bursts,
	check: findBlind,
}

func findBlind(s *bom.System) []finding.Finding {
	var out []finding.Finding
	for _, p := range pumps(s) {
		if !throttled(s, p) || shown(s, p) {
			continue
		}
		out = append(out, finding.Finding{
			Severity: finding.Caution, Subject: ofUnit(p), Place: at(p.Mark),
			Reason: fmt.Sprintf("no gauge shows the pressure behind %s, and it is held by hand on the throttle.", p.Name),
			Remedy: fmt.Sprintf("Put a gauge on a tee between %s and the throttle.", p.Name),
		})
	}
	return out
}

// shown reports whether a gauge stands on a pump's outlet, behind a valve or not.
func shown(s *bom.System, pump *graph.Unit) bool {
	for _, u := range s.Circuit.UnitsAround(outletOf(pump)) {
		if u.Item.Kind.Is(catalog.Gauge) && s.Circuit.Reaches(outletOf(pump), u.First, true) {
			return true
		}
	}
	return false
}

// throttled reports whether a pump pushes to a throttle.
func throttled(s *bom.System, pump *graph.Unit) bool {
	for _, u := range s.Circuit.UnitsAround(outletOf(pump)) {
		if u.Item.Kind.Is(catalog.Throttles) && s.Circuit.Reaches(outletOf(pump), u.First+u.Item.PortIndex("in"), true) {
			return true
		}
	}
	return false
}
