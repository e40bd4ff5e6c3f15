package rule

import (
	"fmt"
	"math"

	"handtight/bom"
	"handtight/bom/duty"
	"handtight/bom/finding"
	"handtight/bom/graph"
)

var meterRange = Rule{
	Slug:  "meter-range",
	Title: "A flow meter does not read what runs through it.",
	Why: `A meter is read well between a tenth over the bottom of its scale and 95 % of its top. What runs
through it is the product at its least and its greatest: cold water and old elements, and warm
water and new ones.`,
	Wrong: `
[[item]]
id = "meter"
kind = "flow meter"
material = "pom"
scale = "100 to 600 L/h"
rated = "8 bar"
ports = { in = '8 mm barb', out = '8 mm barb' }
`,
	mend:  []string{`scale = "100 to 600 L/h"`, `scale = "10 to 110 L/h"`},
	block: "meter",
	plant: "watered",
	harm:  finding.Money,
	flows: findMeterRange,
}

// runsNot is less than anything that runs, and more than the flows are solved to: L/h.
const runsNot = 0.05

func findMeterRange(s *bom.System, r *duty.Result) []finding.Finding {
	var out []finding.Finding
	var meters []*graph.Unit
	for _, u := range s.Graph.Units {
		if u.Item.Process.MeterFrom != nil {
			meters = append(meters, u)
		}
	}
	for _, m := range r.Plants {
		if m.Lines == nil || !m.Lines.Solved || !m.Made {
			continue
		}
		for _, u := range meters {
			scale := u.Item.Process.MeterFrom
			q, runs := m.Lines.Flow[u]
			if !runs || q.Hi.LitresPerHour() < runsNot {
				continue // that nothing runs is another's fault
			}
			middle := m.Lines.Middle[u]
			if middle >= scale.Lo*1.1 && middle <= scale.Hi*0.95 {
				continue
			}
			f := onPump(m, finding.Caution)
			f.Subject, f.Place = ofUnit(u), at(u.Mark)
			f.Reason = fmt.Sprintf("%s run through it, and it reads %s.", litresAnHour(q), scale)
			f.Remedy = fmt.Sprintf("Take one that reads from %.0f to %s L/h or more.", math.Floor(q.Lo.LitresPerHour()*0.9), upTo(q.Hi.LitresPerHour()*1.06, 10))
			out = append(out, f)
		}
	}
	return out
}
