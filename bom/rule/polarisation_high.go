package rule

import (
	"fmt"

	"handtight/bom"
	"handtight/bom/duty"
	"handtight/bom/finding"
)

var polarisationHigh = Rule{
	Slug:  "polarisation-high",
	Title: "Salt piles up at the membrane.",
	Why: `Where little water passes a large membrane, the salt at its face is much more than in the
stream: over 1.4 times it, the element makes less than its area and scales sooner. A small
pump on a 4-inch element does that.`,
	Wrong: `
[[item]]
id = "element"
kind = "membrane element"
inside = "vessel"
size = "4040"
`,
	mend:  []string{`size = "4040"`, `size = "2540"`},
	block: "element",
	plant: "watered",
	harm:  finding.Money,
	flows: findPolarisationHigh,
}

func findPolarisationHigh(_ *bom.System, r *duty.Result) []finding.Finding {
	var out []finding.Finding
	for _, m := range r.Plants {
		if !m.Made || m.Middle.Polarisation <= mostPolarised {
			continue
		}
		f := onPlant(m, finding.Note)
		f.Reason = fmt.Sprintf("the salt at the membrane is %.2f times that in the stream: the flow is small for its area.", m.Middle.Polarisation)
		f.Remedy = "Take a smaller element, or more feed."
		out = append(out, f)
	}
	return out
}

// mostPolarised is the salt at the membrane over that in the stream (memory).
const mostPolarised = 1.4
