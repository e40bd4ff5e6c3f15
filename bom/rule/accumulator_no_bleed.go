package rule

import (
	"fmt"

	"handtight/bom"
	"handtight/bom/circuit"
	"handtight/bom/finding"
	"handtight/catalog"
)

var accumulatorNoBleed = Rule{
	Slug:  "accumulator-no-bleed",
	Title: "An accumulator keeps its pressure when the plant is off: nothing lets it out.",
	Why: `Stored pressure drives out water with force long after the pump has stopped, when somebody opens a
joint. A valve or the throttle must lead from the accumulator to the open, so that it can be let down
and seen to be down before anything is opened.`,
	Wrong: `
[[item]]
id = "check"
kind = "check valve"
material = "super duplex"
rated = "200 bar"
ports = { in = '3/8 NPT male', out = '3/8 NPT female' }
[[run]]
name = "damper"
path = ["damper-tee.branch", "check", "accumulator"]
`,
	right: `
[[run]]
name = "damper"
path = ["damper-tee.branch", "accumulator"]
`,
	block: "damper",
	plant: "damped",
	harm:  finding.LetsGo,
	check: findNoBleed,
}

// findNoBleed follows the water that an accumulator gives back: through all that stands open or can
// be opened by hand, to a place that takes it.
func findNoBleed(s *bom.System) []finding.Finding {
	var out []finding.Finding
	for _, u := range accumulators(s) {
		if len(s.Circuit.ReliefsAround(u.First)) == 0 && !s.Segments.SegmentOf(u.First).High() {
			continue // a damper of the house water, which a tap lets down
		}
		reached := s.Circuit.Reach(s.Circuit.JunctionOf[u.First], func(e *circuit.Link, back bool) bool {
			return e.Is == catalog.Open || e.Is == catalog.Throttle || e.Is == catalog.OneWay && !back
		})
		open := false
		for _, v := range s.Circuit.UnitsAround(u.First) {
			for i := range v.Item.Ports {
				open = open || !v.Item.Kind.Supply && reached.Port(v.First+i) && s.Graph.AtBoundary(v.First+i)
			}
		}
		if open {
			continue
		}
		out = append(out, finding.Finding{
			Severity: finding.Caution, Subject: ofUnit(u), Place: at(u.Mark),
			Reason: fmt.Sprintf("no valve and no throttle leads from %s to the open: it keeps its pressure when the pump stands.", u.Name),
			Remedy: "Put a valve beside it that leads to a drain or overboard (a shut-off valve that says normal = \"shut\"), and a gauge; open it before any joint is opened.",
		})
	}
	return out
}
