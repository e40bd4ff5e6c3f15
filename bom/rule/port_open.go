package rule

import (
	"fmt"
	"slices"

	"handtight/bom"
	"handtight/bom/build"
	"handtight/bom/finding"
	"handtight/bom/graph"
)

var portOpen = Rule{
	Slug:  "port-open",
	Title: "A port is joined to nothing.",
	Why: `An open port is a leak of full bore. Plug it, join it, or say that it is meant to be:
"plugged" for what its maker plugged, "left_open" for what stands open on purpose.`,
	Wrong: `
[[item]]
id = "tee"
kind = "tee"
ports = { a = '1/2 NPT female', b = '1/2 NPT female', branch = '1/2 NPT female' }
[[item]]
id = "nipple"
kind = "nipple"
ports = { a = '1/2 NPT male', b = '1/2 NPT male' }
[[item]]
id = "cap"
kind = "cap"
ports = { a = '1/2 NPT female' }
[[run]]
name = "line"
path = ["cap", "nipple", "tee", "nipple/+", "cap/+"]
`,
	right: `
[[item]]
id = "tee"
kind = "tee"
ports = { a = '1/2 NPT female', b = '1/2 NPT female', branch = '1/2 NPT female' }
[[item]]
id = "plug"
kind = "plug"
ports = { a = '1/2 NPT male' }
[[run]]
name = "line"
path = ["plug", "tee", "plug/+"]
[[run]]
name = "branch"
path = ["tee.branch", "plug/+"]
`,
	check: findOpen,
}

func findOpen(s *bom.System) []finding.Finding {
	meant := map[string]bool{}
	for _, refs := range [][]build.PortRef{s.Build.Plugged, s.Build.LeftOpen} {
		for _, r := range refs {
			meant[r.Unit+"."+r.Port] = true
		}
	}
	var out []finding.Finding
	for p := range s.Graph.Ports {
		n := &s.Graph.Ports[p]
		if n.Joint != nil || s.Graph.AtBoundary(p) || n.Unit.Item.Kind.Boats || meant[n.Name()] {
			continue
		}
		out = append(out, finding.Finding{
			Severity: finding.Stop, Subject: ofPort(n), Place: at(n.Unit.Mark),
			Reason: fmt.Sprintf("%s (%s) is joined to nothing.", n.Name(), n.Port.Words()),
			Remedy: remedyOpen(n),
		})
	}
	return out
}

// remedyOpen says what to do with an open port: what a part may lack is plugged; what water
// must leave by is joined, and never capped.
func remedyOpen(n *graph.Port) string {
	k := n.Unit.Item.Kind
	if slices.Contains(k.Optional, n.Port.Name) {
		return fmt.Sprintf("Put a plug or cap on it. If its maker plugged it, write \"%s\" under `plugged`.", n.Name())
	}
	if k.Directed && len(k.Ports) > 1 {
		return fmt.Sprintf("Lead it on in a run: water must pass here, so it must not be capped. If it stands open on purpose, write \"%s\" under `left_open`.", n.Name())
	}
	return fmt.Sprintf("Join it in a run, put a plug or cap on it, or write \"%s\" under `plugged` or `left_open`.", n.Name())
}
