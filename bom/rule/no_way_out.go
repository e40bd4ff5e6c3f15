package rule

import (
	"fmt"
	"slices"
	"strings"

	"handtight/bom"
	"handtight/bom/finding"
	"handtight/bom/graph"
	"handtight/bom/state"
)

var noWayOut = Rule{
	Slug:  "no-way-out",
	Title: "With a valve left shut nothing opens, and the pressure has no bound.",
	Why: `A positive displacement pump does not stop for a shut valve: it pushes until
something opens or bursts. Behind a shut overboard valve the throttle drops nothing,
so the full pressure stands on the clamped brine hose; and a relief that is led into
the same line cannot open either. It needs a relief with an outlet of its own, and a
brine line that cannot be shut.`,
	Wrong: `
[[item]]
id = "out-tee"
kind = "tee"
material = "super duplex"
rated = "200 bar"
ports = { a = '3/8 NPT male', b = '3/8 NPT female', branch = '3/8 NPT male' }
[[item]]
id = "out-valve"
kind = "shut-off valve"
material = "super duplex"
rated = "200 bar"
ports = { in = '3/8 NPT male', out = '3/8 NPT female' }
[[run]]
name = "brine"
path = ["vessel.brine", "throttle", "out-tee", "out-valve", "discharge"]
[[run]]
name = "relief"
path = ["hp-tee.branch", "relief", "out-tee.branch"]
`,
	right: `
[[run]]
name = "brine"
path = ["vessel.brine", "throttle", "discharge"]
[[run]]
name = "relief"
path = ["hp-tee.branch", "relief", "relief-out"]
`,
	block: "brine and relief",
	plant: "flushed",
	harm:  finding.Bursts,
	check: findNoWayOut,
}

// findNoWayOut speaks once for each state in which some pressure has no bound. A pump
// that has no relief valve at all is found as that, and so is a relief that all the water
// goes over already.
func findNoWayOut(s *bom.System) []finding.Finding {
	bare, open := barePumps(s), s.Running.OpenReliefs()
	var out []finding.Finding
	for _, st := range s.States.All {
		if !st.NoBound || st.Name != "normal" && (s.States.NoBoundNormally(st) || raisedBy(s, st, bare)) {
			continue // where nothing opens in normal running, that is the finding
		}
		if st.Failure && slices.Contains(open, st.Unit) {
			continue
		}
		if f, ok := unbounded(s, st); ok {
			out = append(out, f)
		}
	}
	return out
}

func unbounded(s *bom.System, st *state.State) (finding.Finding, bool) {
	var first *graph.Port
	var reaches []string
	for _, j := range s.Graph.Joints {
		high, _, ok := s.States.Pressure(st, j.A)
		if !ok || !high.Unbounded() {
			continue
		}
		if first == nil {
			first = &s.Graph.Ports[j.A]
		}
		if name := s.Segments.SegmentOf(j.A).Name; !slices.Contains(reaches, name) {
			reaches = append(reaches, name)
		}
	}
	if first == nil {
		return finding.Finding{}, false
	}
	f := finding.Finding{
		Severity: finding.Stop, Subject: ofState(st), Place: at(first.Unit.Mark),
		Reason: fmt.Sprintf("%s: nothing opens, and the pressure rises until something bursts, in %s.", st.Cause, strings.Join(reaches, "; ")),
		Remedy: "Give the pump a relief valve that passes its whole flow, with a free outlet (its own, or back to the pump's inlet), and let nothing shut the line behind the throttle.",
	}
	if st.Unit != nil {
		f.Place = at(st.Unit.Mark)
	}
	if st.Name == "normal" {
		f.Remedy = "Look along the line from the pump to the throttle: which one-way valve points back, which valve says `normal = \"shut\"`? And give the pump a relief valve whose outlet is free."
	}
	if st.Failure {
		f.Severity = finding.Caution
	}
	return f, true
}
