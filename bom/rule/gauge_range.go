package rule

import (
	"fmt"
	"math"

	"handtight/bom"
	"handtight/bom/finding"
)

var gaugeRange = Rule{
	Slug:  "gauge-range",
	Title: "A gauge reads past its end, or in the first quarter of its dial.",
	Why: `A gauge lives in the middle of its dial: the duty between a quarter and three quarters
of full scale, and full scale above the worst that it can see (common practice). One
that has been past its end reads wrong from then on.`,
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
[[item]]
id = "cross"
kind = "tee"
rated = "200 bar"
ports = { a = '3/8 NPT male', b = '3/8 NPT female', branch = '1/4 NPT female' }
[[item]]
id = "gauge"
kind = "gauge"
rated = "60 bar"
scale = "60 bar"
ports = { in = '1/4 NPT male' }
[[run]]
name = "suction"
path = ["sea", "pump"]
[[run]]
name = "high pressure"
path = ["pump", "tee", "cross", "hose", "throttle"]
[[run]]
name = "brine"
path = ["throttle", "discharge"]
[[run]]
name = "relief"
path = ["tee.branch", "relief", "relief-out"]
[[run]]
name = "gauge"
path = ["cross.branch", "gauge"]
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
[[item]]
id = "cross"
kind = "tee"
rated = "200 bar"
ports = { a = '3/8 NPT male', b = '3/8 NPT female', branch = '1/4 NPT female' }
[[item]]
id = "gauge"
kind = "gauge"
rated = "100 bar"
scale = "100 bar"
ports = { in = '1/4 NPT male' }
[[run]]
name = "suction"
path = ["sea", "pump"]
[[run]]
name = "high pressure"
path = ["pump", "tee", "cross", "hose", "throttle"]
[[run]]
name = "brine"
path = ["throttle", "discharge"]
[[run]]
name = "relief"
path = ["tee.branch", "relief", "relief-out"]
[[run]]
name = "gauge"
path = ["cross.branch", "gauge"]
`,
	check: findGauge,
}

func findGauge(s *bom.System) []finding.Finding {
	var out []finding.Finding
	for _, u := range s.Units {
		if u.Item.Scale == nil || u.Item.Kind.Name != "gauge" {
			continue
		}
		load, full := s.PortLoad(u.First), u.Item.Scale.Bar()
		f := finding.Finding{Severity: finding.Caution}
		switch {
		case load.Act > full+slack:
			f.Reason = fmt.Sprintf("%s reads to %s and sees %s: %s.", u.Name, u.Item.Scale, bars(load.Act), load.ByAct.Cause)
			f.Remedy = fmt.Sprintf("Take one that reads to %s or more.", bars(math.Ceil(load.Act/0.75/10)*10))
		case load.Normal > 0.75*full, load.Normal > 0 && load.Normal < 0.25*full:
			f.Severity = finding.Note
			f.Reason = fmt.Sprintf("%s reads to %s, and normal running is at %s: outside the middle half of the dial.", u.Name, u.Item.Scale, bars(load.Normal))
			f.Remedy = fmt.Sprintf("Take one that reads to about %s.", bars(math.Ceil(load.Normal*2)))
		default:
			continue
		}
		f.At, f.Place = u.Name, at(u.Mark)
		out = append(out, f)
	}
	return out
}
