package rule

import (
	"handtight/bom"
	"handtight/bom/build"
	"handtight/bom/duty"
	"handtight/bom/finding"
)

var elementSizeUnknown = Rule{
	Slug:  "element-size-unknown",
	Title: "Nothing says the size of an element.",
	Why: `The size says how much membrane there is: 2521 is 2.5 inches across and 21 long. Without it, or the
sheet's area and product, nothing about the fresh water is reckoned, and nothing is guessed.`,
	Wrong: `
[[item]]
id = "element"
kind = "membrane element"
inside = "vessel"
about = "seawater element"
`,
	mend:  []string{`about = "seawater element"`, `size = "2540"`},
	block: "element",
	plant: "watered",
	harm:  finding.Money,
	flows: findElementSizeUnknown,
}

func findElementSizeUnknown(_ *bom.System, r *duty.Result) []finding.Finding {
	var out []finding.Finding
	seen := map[*build.Item]bool{}
	for _, m := range r.Plants {
		for _, row := range m.Rows {
			for _, v := range row {
				for _, e := range v.Elements {
					if e.Known() || seen[e.Item] {
						continue
					}
					f := onPlant(m, finding.Caution)
					seen[e.Item] = true
					f.Subject, f.Place, f.NotKnown = ofItem(e.Item), at(e.Item.Place), true
					f.Reason = e.Fault() + ": nothing about its fresh water is reckoned."
					f.Remedy = "Ask, and write `size = \"2540\"` (or 2521, 4021, 4040), or the sheet's `area` and `product`."
					out = append(out, f)
				}
			}
		}
	}
	return out
}
