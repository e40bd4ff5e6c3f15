package rule

import (
	"fmt"

	"handtight/bom"
	"handtight/bom/finding"
)

var chlorineOnMembrane = Rule{
	Slug:  "chlorine-on-membrane",
	Title: "House water reaches the membrane without a carbon filter.",
	Why: `Water taken ashore has chlorine in it, which keeps it clean in the tank and eats the
membrane within days of contact. A carbon filter in the flush line takes it out; it is
changed by the calendar, since wet carbon wears out unused. The tank's water may be free of it
today and not after the next filling.`,
	Wrong: `
[[item]]
id = "house"
kind = "house supply"
pressure = "3 bar"
ports = { out = 'R 1/2' }
[[item]]
id = "valve"
kind = "solenoid valve"
ports = { in = 'Rp 1/2', out = 'Rp 1/2' }
[[item]]
id = "nipple"
kind = "nipple"
ports = { a = 'R 1/2', b = '1/2 NPT male swivel' }
[[item]]
id = "vessel"
kind = "pressure vessel"
ports = { feed = '1/2 NPT female', brine = '1/2 NPT female', product = '1/4 NPT female' }
[[run]]
name = "flush"
path = ["house", "valve", "nipple", "vessel.feed"]
`,
	mend: []string{`
ports = { out = 'R 1/2' }
[[item]]
`, `
ports = { out = 'R 1/2' }
[[item]]
id = "carbon"
kind = "carbon filter"
ports = { in = 'Rp 1/2 swivel', out = 'R 1/2' }
[[item]]
`, `path = ["house", "valve", "nipple", "vessel.feed"]`, `path = ["house", "carbon", "valve", "nipple", "vessel.feed"]`},
	harm:  finding.Spoils,
	check: findChlorine,
}

// findChlorine speaks once of each house supply whose water reaches a membrane unfiltered.
func findChlorine(s *bom.System) []finding.Finding {
	var out []finding.Finding
	for _, house := range s.Graph.Units {
		if !house.Item.Kind.Supply || house.Item.Holds == "product" || says(house.Item, "product water", "own water", "permeate", "of product", "desalinated", "distilled", "demineral") {
			continue
		}
		var g members
		for _, u := range s.Waters.Unfiltered(house) {
			g.unit(u)
		}
		if len(g.names) == 0 {
			continue
		}
		out = append(out, finding.Finding{
			Severity: finding.Caution, Subject: ofUnit(house), Place: at(house.Mark),
			Reason: fmt.Sprintf("the water of %s reaches the membrane in %s without passing a carbon filter: chlorine in it destroys the membrane.", house.Name, g.list()),
			Remedy: fmt.Sprintf("Put a carbon filter into the flush line, before its valve, and change its cartridge every six months; or write holds = \"product\" on `%s` if nothing but this plant's own water is ever in it.", house.Item.ID),
		})
	}
	return out
}
