package rule

import (
	"fmt"

	"handtight/bom"
	"handtight/bom/duty"
	"handtight/bom/finding"
)

var feedFlowOverElement = Rule{
	Slug:  "feed-flow-over-element",
	Title: "An element gets more water than it bears.",
	Why: `Too much flow pushes an element's wrap out of its end. The sheet names the most; by size class
2.5-inch elements take 15 to 23 L/min, 4-inch ones 60 to 75 (part seen, part memory).`,
	Wrong: `
[[item]]
id = "pump"
kind = "plunger pump"
material = "super duplex"
flow = "30 L/min"
motor = "engine, belt"
motor_power = "6 kW"
rated = "100 bar"
ports = { in = '19 mm barb', out = '3/8 NPT female' }
`,
	mend: []string{`
flow = "30 L/min"
motor = "engine, belt"
motor_power = "6 kW"
`, `
flow = "9 L/min"
motor = "24 V DC, belt"
motor_power = "1.5 kW"
`},
	block: "pump",
	plant: "watered",
	harm:  finding.Spoils,
	flows: findFeedFlowOverElement,
}

func findFeedFlowOverElement(_ *bom.System, r *duty.Result) []finding.Finding {
	var out []finding.Finding
	for _, m := range r.Plants {
		l, ok := m.Limit("feed_flow")
		if !ok || !l.Doubtful() {
			continue
		}
		f := onPlant(m, finding.Caution)
		if l.Fails() && l.From == "by its sheet" {
			f.Severity = finding.Stop
		}
		f.Reason = fmt.Sprintf("each vessel gets %.1f L/min; an element bears %.1f L/min, %s.", l.Middle, l.Strict, l.From)
		f.Remedy = "Put vessels side by side, so that each gets its share, or take a smaller pump." + lessWater
		out = append(out, f)
	}
	return out
}

// lessWater ends a remedy that takes flow from the membrane: what is wanted is to be looked at again.
const lessWater = " Less flow, less water: write anew what `product` is wanted."
