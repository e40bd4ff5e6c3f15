package rule

import (
	"fmt"

	"handtight/bom"
	"handtight/bom/finding"
	"handtight/pressure"
)

var ratedAboveStandard = Rule{
	Slug:  "rated-above-standard",
	Title: "A part is said to hold more than the standard it is sold to.",
	Why: `A maker may build better than the standard, or the figure may be the burst pressure, or
psi read as bar. Both figures are shown and the lower one is used.`,
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
flow = "10 L/min"
rated = "100 bar"
[[hose]]
id = "hose"
spec = "SAE 100R8"
rated = "700 bar"
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
	check: findAbove,
}

func findAbove(s *bom.System) []finding.Finding {
	var out []finding.Finding
	said := map[*bom.Item]bool{}
	for _, u := range s.Units {
		for i := range u.Item.Ports {
			h := s.PortHold(u.First + i)
			if said[u.Item] || h.Sheet == nil || h.Table == nil || h.Table.Basis == pressure.Estimate || h.Sheet.Pressure <= h.Table.Pressure*1.01 {
				continue
			}
			said[u.Item] = true
			out = append(out, finding.Finding{
				Severity: finding.Caution, At: u.Name, Place: at(u.Item.Place),
				Reason: fmt.Sprintf("`%s` is said to hold %s, and its standard gives %s (%s): the lower figure is used.", u.Item.ID, h.Sheet.Pressure, h.Table.Pressure, h.Table.Text),
				Remedy: "Check the data sheet: is it the working pressure, and of this size?",
			})
		}
	}
	return out
}
