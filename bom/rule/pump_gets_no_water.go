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
	Wrong: fmt.Sprintf(fedPlant, "check.out>in"),
	Right: fmt.Sprintf(fedPlant, "check"),
	check: findDry,
}

// fedPlant is a plant with a check valve before its pump, some way round.
const fedPlant = `
[duty]
pressure = "55 bar"
[[item]]
id = "sea"
kind = "sea"
[[item]]
id = "check"
kind = "check valve"
rated = "16 bar"
ports = { in = '1/2 NPT male', out = '1/2 NPT male' }
[[item]]
id = "pump"
kind = "plunger pump"
flow = "8 L/min"
rated = "100 bar"
ports = { in = '1/2 NPT female', out = '3/8 NPT female' }
[[item]]
id = "throttle"
kind = "brine throttle"
rated = "100 bar"
ports = { in = '3/8 NPT male', out = '3/8 NPT female' }
[[item]]
id = "out"
kind = "overboard"
[[run]]
name = "water"
path = ["sea", "%s", "pump", "throttle", "out"]
`

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
