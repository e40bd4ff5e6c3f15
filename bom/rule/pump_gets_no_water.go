package rule

import (
	"fmt"

	"handtight/bom"
	"handtight/bom/finding"
)

var pumpGetsNoWater = Rule{
	Slug:  "pump-gets-no-water",
	Title: "No water reaches a pump in normal running.",
	Why: `A one-way valve the wrong way round, a pump turned about, a valve that is written as shut:
the pump runs dry, which ruins its seals within minutes, and pulls a vacuum on every hose
before it. Look at the arrows on the bodies.`,
	Wrong: `
[[item]]
id = "raw-check"
kind = "check valve"
material = "super duplex"
rated = "16 bar"
ports = { in = '1/2 NPT female', out = '1/2 NPT male' }
[[run]]
name = "raw water"
path = ["intake", "hose", "feed", "raw-check.out>in", "tee", "pump"]
`,
	Right: `
[[item]]
id = "raw-check"
kind = "check valve"
material = "super duplex"
rated = "16 bar"
ports = { in = '1/2 NPT female', out = '1/2 NPT male' }
[[run]]
name = "raw water"
path = ["intake", "hose", "feed", "raw-check", "tee", "pump"]
`,
	block:   "raw water",
	flushed: true,
	check:   findDry,
}

func findDry(s *bom.System) []finding.Finding {
	var out []finding.Finding
	for _, p := range s.Waterless() {
		out = append(out, finding.Finding{
			Severity: finding.Stop, At: p.Name, Place: at(p.Mark),
			Reason: fmt.Sprintf("in normal running no water reaches %s.", p.Name),
			Remedy: fmt.Sprintf("Look along the line before %s: which one-way valve points back, which pump is turned about, which valve says `normal = \"shut\"`?", p.Name),
		})
	}
	return out
}
