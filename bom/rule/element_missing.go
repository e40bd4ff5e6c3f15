package rule

import (
	"fmt"

	"handtight/bom"
	"handtight/bom/build"
	"handtight/bom/finding"
	"handtight/catalog"
)

var elementMissing = Rule{
	Slug:  "element-missing",
	Title: "A pressure vessel has no membrane element in it.",
	Why: `The vessel is a tube; the element inside it makes the water, and is sold apart. With
none in it the sea water goes straight on to the product side, and no pressure builds up. An
element that is aboard already is written too, with ` + "`have = 1`" + `.`,
	Wrong: `
[[item]]
id = "rings"
kind = "seal kit"
about = "O-rings of the vessel's ends"
inside = "vessel"
fails = "5000 h"
`,
	right: `
[[item]]
id = "element"
kind = "membrane element"
about = "seawater element 2.5 x 21"
inside = "vessel"
`,
	block: "element",
	plant: "flushed",
	harm:  finding.Spoils,
	check: findNoElement,
}

func findNoElement(s *bom.System) []finding.Finding {
	var out []finding.Finding
	said := map[*build.Item]bool{}
	for _, u := range vessels(s) {
		if said[u.Item] || len(contents(s, u.Item, catalog.Element)) > 0 {
			continue
		}
		said[u.Item] = true
		out = append(out, finding.Finding{
			Severity: finding.Stop, Subject: ofUnit(u), Place: at(u.Mark),
			Reason: fmt.Sprintf("the list has no membrane element that is inside %s: it would let the sea water through.", u.Item.ID),
			Remedy: fmt.Sprintf("Add the element as an item of kind = \"membrane element\" with inside = \"%s\", and have = 1 where it is aboard already.", u.Item.ID),
		})
	}
	return out
}
