package rule

import (
	"errors"
	"fmt"

	"handtight/bom"
	"handtight/bom/finding"
	"handtight/pressure"
)

var partTooWarm = Rule{
	Slug:  "part-too-warm",
	Title: "A part is used at a temperature for which nothing rates it.",
	Why: `A rating is given with a temperature. Hose with water in it is rated from 0 to 70 C, and
threaded PVC to 43 C; a plastic loses strength long before: PVC holds 0.62 of its rating
at 38 C. Inside its table a rating is lowered for the water and for the air around it, and the
lower figure is shown; outside it nothing is known.`,
	Wrong: `
[duty]
pressure = "55 bar"
space = "80 C"
[[item]]
id = "pipe"
kind = "nipple"
material = "PVC"
ports = { a = '1/2 NPT male plastic', b = '1/2 NPT male plastic' }
rated = "16 bar"
[[item]]
id = "socket"
kind = "coupling"
material = "316"
ports = { a = '1/2 NPT female', b = '1/2 NPT female' }
[[run]]
name = "line"
path = ["pipe", "socket"]
`,
	Right: `
[duty]
pressure = "55 bar"
space = "40 C"
[[item]]
id = "pipe"
kind = "nipple"
material = "PVC"
ports = { a = '1/2 NPT male plastic', b = '1/2 NPT male plastic' }
rated = "16 bar"
[[item]]
id = "socket"
kind = "coupling"
material = "316"
ports = { a = '1/2 NPT female', b = '1/2 NPT female' }
[[run]]
name = "line"
path = ["pipe", "socket"]
`,
	check: findWarm,
}

// findWarm speaks once of each standard or material that is outside its table.
func findWarm(s *bom.System) []finding.Finding {
	var list gathered[string]
	limits := map[string]*pressure.RangeError{}
	for _, u := range s.Units {
		var outside *pressure.RangeError
		if u.Item.Kind.Boats || !errors.As(s.OutsideTemperature(u.Item), &outside) {
			continue
		}
		list.add(outside.What, u.Name, u.Mark)
		limits[outside.What] = outside
	}
	var out []finding.Finding
	for _, what := range list.keys {
		x := limits[what]
		f := finding.Finding{Severity: finding.Caution}
		list.of[what].at(&f)
		f.Reason = fmt.Sprintf("it is %s here, and %s is rated from %s to %s: %s.", x.At, x.What, x.From, x.To, list.of[what].list())
		f.Remedy = "Move it to where it is cooler, or buy it of a material that is rated there."
		out = append(out, f)
	}
	return out
}
