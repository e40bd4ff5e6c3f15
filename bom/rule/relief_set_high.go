package rule

import (
	"fmt"

	"handtight/bom"
	"handtight/bom/finding"
)

var reliefSetHigh = Rule{
	Slug:  "relief-set-high",
	Title: "A relief valve is set above the weakest part that it guards.",
	Why: `A relief protects what holds more than it is set to, and nothing else. The set
pressure lies at or below the lowest rating in its line, the duty at least a tenth
below it.`,
	Wrong: `
[duty]
pressure = "55 bar"
[[item]]
id = "sea"
kind = "sea"
[[item]]
id = "pump"
kind = "plunger pump"
flow = "8 L/min"
ports = { in = '1/2 NPT female', out = '3/8 NPT female' }
rated = "100 bar"
[[item]]
id = "tee"
kind = "tee"
rated = "200 bar"
ports = { a = '3/8 NPT male', b = '3/8 NPT female', branch = '3/8 NPT female' }
[[item]]
id = "relief"
kind = "relief valve"
ports = { in = '3/8 NPT male', out = '3/8 NPT female' }
set = "300 bar"
flow = "10 L/min"
rated = "400 bar"
[[hose]]
id = "hose"
spec = "SAE 100R8"
bore = '3/8"'
length = "1 m"
ends = ['3/8 NPT male', '3/8 NPT male']
[[item]]
id = "throttle"
kind = "brine throttle"
rated = "200 bar"
ports = { in = '3/8 NPT female', out = '3/8 NPT female' }
[[item]]
id = "discharge"
kind = "overboard"
[[item]]
id = "relief-out"
kind = "overboard"
[[run]]
name = "suction"
path = ["sea", "pump"]
[[run]]
name = "high pressure"
path = ["pump", "tee", "hose", "throttle"]
[[run]]
name = "brine"
path = ["throttle", "discharge"]
[[run]]
name = "relief"
path = ["tee.branch", "relief", "relief-out"]
`,
	Right: `
[duty]
pressure = "55 bar"
[[item]]
id = "sea"
kind = "sea"
[[item]]
id = "pump"
kind = "plunger pump"
flow = "8 L/min"
ports = { in = '1/2 NPT female', out = '3/8 NPT female' }
rated = "100 bar"
[[item]]
id = "tee"
kind = "tee"
rated = "200 bar"
ports = { a = '3/8 NPT male', b = '3/8 NPT female', branch = '3/8 NPT female' }
[[item]]
id = "relief"
kind = "relief valve"
ports = { in = '3/8 NPT male', out = '3/8 NPT female' }
set = "65 bar"
flow = "10 L/min"
rated = "100 bar"
[[hose]]
id = "hose"
spec = "SAE 100R8"
bore = '3/8"'
length = "1 m"
ends = ['3/8 NPT male', '3/8 NPT male']
[[item]]
id = "throttle"
kind = "brine throttle"
rated = "200 bar"
ports = { in = '3/8 NPT female', out = '3/8 NPT female' }
[[item]]
id = "discharge"
kind = "overboard"
[[item]]
id = "relief-out"
kind = "overboard"
[[run]]
name = "suction"
path = ["sea", "pump"]
[[run]]
name = "high pressure"
path = ["pump", "tee", "hose", "throttle"]
[[run]]
name = "brine"
path = ["throttle", "discharge"]
[[run]]
name = "relief"
path = ["tee.branch", "relief", "relief-out"]
`,
	check: findSetHigh,
}

func findSetHigh(s *bom.System) []finding.Finding {
	var out []finding.Finding
	for _, u := range reliefs(s) {
		g := s.SegmentOf(u.First + u.Item.PortIndex("in"))
		if !g.Hold.Known || u.Item.Set.Bar() <= g.Hold.Rating.Pressure.Bar() {
			continue
		}
		out = append(out, finding.Finding{
			Severity: finding.Stop, At: u.Name, Place: at(u.Mark),
			Reason: fmt.Sprintf("%s is set at %s, and %s in its line holds %s (%s).", u.Name, u.Item.Set, g.Hold.What, g.Hold.Rating.Pressure, g.Hold.Rating.Text),
			Remedy: lowerSet(s, g),
		})
	}
	return out
}

// lowerSet says how far down the relief may be set; where that leaves no room above
// the duty, the part that is too weak must go first.
func lowerSet(s *bom.System, g *bom.Segment) string {
	holds, what := g.Hold.Rating.Pressure, g.Hold.What
	if duty := s.Build.Duty.Pressure; duty != nil && holds < *duty*reliefMargin {
		return fmt.Sprintf("Buy %s for more, then set the relief between %s (a tenth above the duty) and the lowest rating in its line.", what, *duty*reliefMargin)
	}
	return fmt.Sprintf("Set it to %s or less, or buy %s for more.", holds, what)
}

// reliefs lists the placed relief valves whose set pressure is known.
func reliefs(s *bom.System) []*bom.Unit {
	var out []*bom.Unit
	for _, u := range s.Units {
		if u.Item.Kind.Name == "relief valve" && u.Item.Set != nil {
			out = append(out, u)
		}
	}
	return out
}
