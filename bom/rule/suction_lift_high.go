package rule

import (
	"fmt"

	"handtight/bom"
	"handtight/bom/duty"
	"handtight/bom/finding"
)

var suctionLiftHigh = Rule{
	Slug:  "suction-lift-high",
	Title: "The pump stands higher above the water than it can lift.",
	Why: `A pump that is not flooded must first pull its hose empty of air. What it lifts dry is on its
sheet; a centrifugal pump lifts nothing.`,
	Wrong: `
[duty]
pressure = "54 bar"
product = "50 L/h"
litres = "100 L"
salinity = "35 g/kg"
water = "14 to 22 C"
lift = "3 m"
supply = "24 V"
`,
	mend:  []string{`lift = "3 m"`, `lift = "0.2 m"`},
	block: "duty",
	plant: "watered",
	harm:  finding.Spoils,
	flows: findSuctionLiftHigh,
}

func findSuctionLiftHigh(_ *bom.System, r *duty.Result) []finding.Finding {
	var out []finding.Finding
	lift := r.Build.Duty.Lift
	if lift == nil {
		return nil
	}
	for _, m := range r.Plants {
		for _, u := range m.FeedPumps {
			can := u.Item.Process.SelfPriming
			if can == nil || *lift <= *can {
				continue
			}
			f := onPump(m, finding.Stop)
			f.Subject, f.Place = ofUnit(u), at(u.Mark)
			f.Reason = fmt.Sprintf("it stands %s above the water, and lifts %s when dry.", lift, can)
			f.Remedy = fmt.Sprintf("Set it %s or less above the water, or take one that lifts more.", can)
			out = append(out, f)
		}
	}
	return out
}
