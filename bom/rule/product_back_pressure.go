package rule

import (
	"fmt"

	"handtight/bom"
	"handtight/bom/duty"
	"handtight/bom/finding"
	"handtight/pressure/quantity"
)

var productBackPressure = Rule{
	Slug:  "product-back-pressure",
	Title: "The product must be pressed far up, or through lines that are too narrow.",
	Why: `What stands on the product side of the membrane is taken off the pressure that drives it, and
while the pump stands still it pushes at the membrane from behind, which a membrane bears badly:
half a bar is much, one bar is where makers begin to forbid it (both from memory). The height
of the tank over the pump counts a tenth of a bar a metre, its hoses and the meter the rest.`,
	Wrong: `
[[item]]
id = "tank"
kind = "tank"
height = "12 m"
ports = { in = '8 mm barb' }
`,
	mend:  []string{`height = "12 m"`, `height = "1.5 m"`},
	block: "tank",
	plant: "watered",
	harm:  finding.Spoils,
	flows: findProductBackPressure,
}

// What product side pressures are much, and too much (memory).
const (
	backMuch = 0.5 * quantity.Bar
	backMost = 1.0 * quantity.Bar
)

func findProductBackPressure(_ *bom.System, r *duty.Result) []finding.Finding {
	var out []finding.Finding
	for _, m := range r.Plants {
		if !m.Made || !m.Lines.Solved || m.Lines.Back.Middle() <= backMuch {
			continue
		}
		f := onPlant(m, finding.Note)
		if m.Lines.Back.Lo > backMost {
			f.Severity = finding.Caution
		}
		f.Reason = fmt.Sprintf("on the product side of the vessel stand %.2f to %.2f bar: the tank's height over the pump, and what the hoses and the meter lose.", m.Lines.Back.Lo.Bar(), m.Lines.Back.Hi.Bar())
		f.Remedy = "Let the product run into a lower tank, or through wider hose, so that less than half a bar is left; the element's sheet says what it bears from behind."
		out = append(out, f)
	}
	return out
}
