package rule

import (
	"fmt"

	"handtight/bom"
	"handtight/bom/finding"
	"handtight/catalog"
)

var probeMissing = Rule{
	Slug:  "probe-missing",
	Title: "Nothing measures how salty the product is.",
	Why: `A torn membrane or a slipped O-ring makes water that tastes of nothing at first and ruins
the tank. A probe in the product line shows it at once; a meter that is dipped into a glass does
as well, where somebody uses it at each start. One that is aboard already is written with
` + "`extra`" + `.`,
	Wrong: `
[[item]]
id = "jug"
kind = "drain"
[[run]]
name = "product"
path = ["vessel.product", "jug"]
`,
	mend: []string{`
kind = "drain"
`, `
kind = "drain"
[[item]]
id = "meter"
kind = "salinity probe"
about = "to dip into a glass"
extra = 1
`},
	block: "product",
	plant: "flushed",
	harm:  finding.Spoils,
	check: findNoProbe,
}

func findNoProbe(s *bom.System) []finding.Finding {
	for _, it := range s.Build.Items {
		if it.Kind.Is(catalog.SalinityProbe) && it.Extra > 0 {
			return nil // one that is dipped into a glass
		}
	}
	var g members
	for _, v := range vessels(s) {
		p, ok := port(v, "product")
		if ok && s.Graph.Ports[p].Joint != nil && len(reachedOf(s, p, onward(s, p), catalog.SalinityProbe)) == 0 {
			g.unit(v)
		}
	}
	if len(g.names) == 0 {
		return nil
	}
	f := finding.Finding{
		Severity: finding.Caution,
		Reason:   fmt.Sprintf("nothing measures how salty the product of %s is.", g.list()),
		Remedy:   "Put a salinity probe on a tee in the product line, before the selector, or carry a meter to dip into a glass (a salinity probe with `extra = 1`).",
	}
	g.at(&f)
	return []finding.Finding{f}
}
