package rule

import (
	"fmt"

	"handtight/bom"
	"handtight/bom/audit"
	"handtight/bom/finding"
)

var jointWept = Rule{
	Slug:  "joint-wept",
	Title: "A right pair was seen to weep.",
	Why: `A joint of two ends that fit and still weeps has a cause: a scratched cone, a worn washer,
a crack, sealant that was turned back. Turning it tighter hides the cause and spoils what
closes it. Open it without pressure, look, and make it up anew; then write when it was made
up, and take the line of its weeping out. At high pressure or below the waterline it is a stop.`,
	Wrong: `
[[item]]
id = "left"
kind = "nipple"
ports = { a = '1/2 NPT male', b = '1/2 NPT male' }
[[item]]
id = "right"
kind = "coupling"
ports = { a = '1/2 NPT female', b = '1/2 NPT female' }
[[run]]
name = "line"
path = ["left", "right"]
[[joint]]
at = ["left.b", "right.a"]
wept = "2024, a drop an hour"
`,
	mend: []string{`wept = "2024, a drop an hour"`, `made_up = 2025`},
	check: func(s *bom.System) []finding.Finding {
		var out []finding.Finding
		for _, x := range standing(s) {
			n := x.Joint.Note
			if n == nil || n.Wept == "" || x.Section == audit.Wrong || x.Section == audit.Watch && !x.Joint.Mating.Verdict.Holds() {
				continue // a wrong pair is found as such
			}
			out = append(out, ofStanding(s, x, grave(x), fmt.Sprintf("it wept: %s. Its ends fit, so something else is wrong with it.", n.Wept),
				"Open it without pressure and look at what closes it; do not turn it tighter. Made up anew, write made_up, and take `wept` out."))
		}
		return out
	},
}
