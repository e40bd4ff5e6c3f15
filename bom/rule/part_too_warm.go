package rule

import (
	"fmt"

	"handtight/bom"
	"handtight/bom/finding"
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

// findWarm speaks once of each item.
func findWarm(s *bom.System) []finding.Finding {
	var out []finding.Finding
	said := map[*bom.Item]bool{}
	for _, u := range s.Units {
		if said[u.Item] || u.Item.Kind.Boats {
			continue
		}
		said[u.Item] = true
		if err := s.OutsideTemperature(u.Item); err != nil {
			out = append(out, finding.Finding{
				Severity: finding.Caution, At: u.Name, Place: at(u.Mark),
				Reason: fmt.Sprintf("`%s` is rated at other temperatures than this build's: %s.", u.Item.ID, err),
				Remedy: "Move it to where it is cooler, or buy it of a material that is rated there.",
			})
		}
	}
	return out
}
