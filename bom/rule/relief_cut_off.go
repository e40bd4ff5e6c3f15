package rule

import (
	"fmt"

	"handtight/bom"
	"handtight/bom/finding"
	"handtight/bom/graph"
	"handtight/bom/state"
)

var reliefCutOff = Rule{
	Slug:  "relief-cut-off",
	Title: "A relief valve can be cut off by a valve that somebody shuts.",
	Why: `A relief behind a valve is no relief when the valve is shut, and neither is one whose
outlet is led into a line that can be shut. Nothing that closes stands between the
pump and the relief, or behind the relief.`,
	Wrong: `
[[item]]
id = "valve"
kind = "shut-off valve"
rated = "200 bar"
ports = { in = '3/8 NPT male', out = '3/8 NPT female' }
[[run]]
name = "relief"
path = ["tee.branch", "valve", "relief", "relief-out"]
`,
	right: `
[[run]]
name = "relief"
path = ["tee.branch", "relief", "relief-out"]
`,
	block: "relief run",
	harm:  finding.Bursts,
	check: findCutOff,
}

func findCutOff(s *bom.System) []finding.Finding {
	var out []finding.Finding
	for _, p := range pumps(s) {
		near, far := reliefsOf(s, p)
		for _, u := range far {
			if len(near) > 0 {
				continue // another relief stands at the pump
			}
			out = append(out, cut(u, fmt.Sprintf("%s can be shut, and stands between %s and %s.", names(s.Circuit.Cuts(outletOf(p), u.First+u.Item.PortIndex("in"))), p.Name, u.Name)))
		}
		for _, u := range near {
			if st := shutOutlet(s, u); st != nil {
				out = append(out, cut(u, fmt.Sprintf("the outlet of %s is led into a line that can be shut: %s.", u.Name, st.Cause)))
			}
		}
	}
	return out
}

func cut(u *graph.Unit, reason string) finding.Finding {
	return finding.Finding{
		Severity: finding.Stop, Subject: ofUnit(u), Place: at(u.Mark), Reason: reason,
		Remedy: "Lead the relief straight from the pump's outlet, and its outlet to a place of its own: overboard above the waterline without a valve, or back to the pump's inlet (it heats there).",
	}
}

// shutOutlet finds an act that closes a relief's outlet while the pump runs.
func shutOutlet(s *bom.System, u *graph.Unit) *state.State {
	for _, st := range s.States.All {
		if out, ok := s.States.WayOut(st, outletOf(u)); ok && !st.Failure && st.PumpsRun() && out.Unbounded() {
			return st
		}
	}
	return nil
}
