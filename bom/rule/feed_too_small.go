package rule

import (
	"fmt"

	"handtight/bom"
	"handtight/bom/duty"
	"handtight/bom/finding"
)

var feedTooSmall = Rule{
	Slug:  "feed-too-small",
	Title: "The pump gives too little water for its elements.",
	Why: `Each element needs enough brine to carry its salt away. The feed must leave the least brine
of the last element, with no element taking over 15 %: below that by the better end of
everything, the elements are starved and scale.`,
	Wrong: `
[[item]]
id = "pump"
kind = "plunger pump"
material = "super duplex"
flow = "3.5 L/min"
motor = "24 V DC, belt"
motor_power = "0.8 kW"
rated = "100 bar"
ports = { in = '19 mm barb', out = '3/8 NPT female' }
`,
	mend:  []string{`flow = "3.5 L/min"`, `flow = "9 L/min"`, `motor_power = "0.8 kW"`, `motor_power = "1.5 kW"`},
	block: "pump",
	plant: "watered",
	harm:  finding.Spoils,
	flows: findFeedTooSmall,
}

func findFeedTooSmall(_ *bom.System, r *duty.Result) []finding.Finding {
	var out []finding.Finding
	for _, m := range r.Plants {
		if !m.Made || m.Recovered != nil {
			continue
		}
		brine, ok := m.Limit("brine_flow")
		if !ok || !brine.Fails() {
			continue
		}
		f := onPlant(m, severityOf(brine))
		f.Reason = fmt.Sprintf("it delivers %s, which leaves %.2f to %.2f L/min of brine at the last element; the least is %.2f L/min, %s.", litresAMinute(m.Feed), brine.Value.Lo, brine.Value.Hi, brine.Limit, brine.From)
		f.Remedy = "Take a bigger pump or a smaller element."
		if q, ok := m.FeedFor(mostTaken); ok {
			f.Remedy = fmt.Sprintf("Take a pump of %s L/min or more on its plate, with a motor and a relief valve to suit, or a smaller element.", upTo(q.LitresPerMinute()/0.92, 1))
		}
		out = append(out, f)
	}
	return out
}
