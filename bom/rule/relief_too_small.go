package rule

import (
	"fmt"

	"handtight/bom"
	"handtight/bom/finding"
)

var reliefTooSmall = Rule{
	Slug:  "relief-too-small",
	Title: "A relief valve does not pass the whole flow of its pump.",
	Why: `When everything is shut, the whole flow goes through the relief. One that is too small
lets the pressure rise past its setting.`,
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
set = "65 bar"
flow = "2 L/min"
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
	check: findSmall,
}

func findSmall(s *bom.System) []finding.Finding {
	var out []finding.Finding
	for _, p := range pumps(s) {
		near, _ := reliefsOf(s, p)
		for _, u := range near {
			var f finding.Finding
			switch flow := u.Item.Flow; {
			case flow == nil:
				f.Severity = finding.Note
				f.Reason = fmt.Sprintf("nothing says what flow %s passes.", u.Name)
				f.Remedy = "Ask for its capacity at the set pressure and write `flow`; it must pass the pump's whole flow."
			case p.Item.Flow != nil && *flow < *p.Item.Flow:
				f.Severity = finding.Stop
				f.Reason = fmt.Sprintf("%s passes %s, and %s delivers %s.", u.Name, flow, p.Name, p.Item.Flow)
				f.Remedy = fmt.Sprintf("Buy one that passes %s or more at its setting.", p.Item.Flow)
			default:
				continue
			}
			f.At, f.Place = u.Name, at(u.Mark)
			out = append(out, f)
		}
	}
	return out
}
