package rule

import (
	"fmt"

	"handtight/bom"
	"handtight/bom/finding"
	"handtight/bom/workshop"
)

var hoseTooShort = Rule{
	Slug:  "hose-too-short",
	Title: "A hose is too short for the way that it turns.",
	Why: `A hose bent tighter than its maker allows kinks, or cracks at its ends within weeks. Its
way takes the arc of the bend, at the least radius, and at each end a straight piece of
one outside diameter (a judgement). Say how far it turns in all ("bend"); the radius
comes from the standard of the hose, or from its data sheet ("bend_radius").`,
	Wrong: `
[[hose]]
id = "hose"
material = "super duplex ends"
spec = "SAE 100R1"
bore = '3/8"'
length = "0.15 m"
bend = "180 deg"
bend_radius = "127 mm"
ends = ['3/8 NPT male', '3/8 NPT female swivel']
`,
	mend:  []string{`length = "0.15 m"`, `length = "0.6 m"        # room for the bend`},
	block: "hose",
	harm:  finding.Leaks,
	check: findTooShort,
}

func findTooShort(s *bom.System) []finding.Finding {
	var out []finding.Finding
	for _, h := range workshop.TooShort(s) {
		out = append(out, finding.Finding{
			Severity: finding.Caution, Subject: ofUnit(h.Unit), Place: at(h.Unit.Mark),
			Reason: fmt.Sprintf("%s is %s long and turns by %g degrees: at a radius of %s (%s) that takes %s at least.", h.Unit.Name, h.Planned, h.Unit.Item.Bend, h.Radius, h.RadiusWhy, h.Least),
			Remedy: fmt.Sprintf("Order it %s long or more, or take an elbow end.", h.Least),
		})
	}
	return out
}
