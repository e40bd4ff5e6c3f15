package rule

import (
	"fmt"

	"handtight/bom"
	"handtight/bom/finding"
)

var houseWaterRuns = Rule{
	Slug:  "house-water-runs",
	Title: "House water runs into the plant all the time.",
	Why: `Between the drinking water and the plant stands a valve that is opened for the flush and shut
otherwise. Without one, or with one that stands open, the pump takes its water from the tank
as well as from the sea, and the tank empties while nobody looks.`,
	Wrong: `
[[item]]
id = "house"
kind = "house supply"
pressure = "3 bar"
ports = { out = '1/2 NPT female' }
[[item]]
id = "check"
kind = "check valve"
rated = "10 bar"
ports = { in = '1/2 NPT male', out = '1/2 NPT male' }
[[item]]
id = "out"
kind = "overboard"
[[run]]
name = "flush"
path = ["house", "check", "out"]
`,
	Right: `
[[item]]
id = "house"
kind = "house supply"
pressure = "3 bar"
ports = { out = '1/2 NPT female' }
[[item]]
id = "valve"
kind = "shut-off valve"
normal = "flush"
rated = "10 bar"
ports = { in = '1/2 NPT male', out = '1/2 NPT male' }
[[item]]
id = "out"
kind = "overboard"
[[run]]
name = "flush"
path = ["house", "valve", "out"]
`,
	check: findRunaway,
}

func findRunaway(s *bom.System) []finding.Finding {
	var out []finding.Finding
	for _, u := range s.Runaways() {
		out = append(out, finding.Finding{
			Severity: finding.Caution, At: u.Name, Place: at(u.Mark),
			Reason: fmt.Sprintf("nothing shuts %s off in normal running: its water runs out into the plant.", u.Name),
			Remedy: "Put a flush valve (a solenoid, a timer, or a shut-off valve that says `normal = \"flush\"`) into its line.",
		})
	}
	return out
}
