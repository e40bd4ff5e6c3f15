package rule

import (
	"fmt"

	"handtight/bom"
	"handtight/bom/duty"
	"handtight/bom/finding"
)

var brineFlowLow = Rule{
	Slug:  "brine-flow-low",
	Title: "The last element is left with little brine.",
	Why: `The brine must carry the salt and the silt away. Below the strict end of an element's class
(5 L/min for 2.5-inch, 15 for 4-inch; memory) it is a note, and a caution if its sheet says so;
below the generous end the feed is too small.`,
	Wrong: `
[[item]]
id = "pump"
kind = "plunger pump"
material = "super duplex"
flow = "5.2 L/min"
motor = "24 V DC, belt"
motor_power = "1.5 kW"
rated = "100 bar"
ports = { in = '19 mm barb', out = '3/8 NPT female' }
`,
	mend:  []string{`flow = "5.2 L/min"`, `flow = "9 L/min"`},
	block: "pump",
	plant: "watered",
	harm:  finding.Spoils,
	flows: findBrineFlowLow,
}

func findBrineFlowLow(_ *bom.System, r *duty.Result) []finding.Finding {
	var out []finding.Finding
	for _, m := range r.Plants {
		l, ok := m.Limit("brine_flow")
		if !ok || !l.Doubtful() || l.Fails() && m.Recovered == nil {
			continue
		}
		f := onPlant(m, severityOf(l))
		f.Reason = fmt.Sprintf("%.2f L/min of brine leave the last element; %.1f L/min are asked for, %s.", l.Middle, l.Strict, l.From)
		f.Remedy = fmt.Sprintf("Take a pump of %s L/min or more on its plate, or fewer elements in the row.", upTo((l.Strict+m.Middle.Product.LitresPerMinute())/0.96*1.02, 1))
		out = append(out, f)
	}
	return out
}
