package rule

import (
	"fmt"

	"handtight/bom"
	"handtight/bom/duty"
	"handtight/bom/finding"
)

var elementDropHigh = Rule{
	Slug:  "element-drop-high",
	Title: "The water loses too much pressure along an element.",
	Why: `Over 1 bar of loss along one element (a product sheet of a 4 x 40 element) its wrap is pushed
out of shape. Less flow, or vessels side by side.`,
	Wrong: `
[[item]]
id = "element"
kind = "membrane element"
inside = "vessel"
size = "2540"
max_drop = "0.1 bar"
`,
	mend: []string{`
max_drop = "0.1 bar"
`, `
`},
	block: "element",
	plant: "watered",
	harm:  finding.Spoils,
	flows: findElementDropHigh,
}

func findElementDropHigh(_ *bom.System, r *duty.Result) []finding.Finding {
	var out []finding.Finding
	for _, m := range r.Plants {
		l, ok := m.Limit("element_drop")
		if !ok || !l.Doubtful() {
			continue
		}
		f := onPlant(m, finding.Caution)
		f.Reason = fmt.Sprintf("one element loses %.2f bar; it bears %.2f bar, %s.", l.Middle, l.Strict, l.From)
		f.Remedy = "Put vessels side by side, or give it less flow." + lessWater
		out = append(out, f)
	}
	return out
}
