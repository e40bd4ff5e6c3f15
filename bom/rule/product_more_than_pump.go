package rule

import (
	"fmt"

	"handtight/bom"
	"handtight/bom/duty"
	"handtight/bom/finding"
	"handtight/pressure/quantity"
)

var productMoreThanPump = Rule{
	Slug:  "product-more-than-pump",
	Title: "The fresh water wanted is more than the pump's water allows.",
	Why: `An element takes 15 % of its feed at most (memory; makers ask for less). The wanted product
over that share is the least feed, whatever the pressure.`,
	Wrong: `
[duty]
pressure = "54 bar"
product = "170 L/h"
litres = "100 L"
salinity = "35 g/kg"
water = "14 to 22 C"
lift = "0.2 m"
supply = "24 V"
`,
	mend:  []string{`product = "170 L/h"`, `product = "50 L/h"`},
	block: "duty",
	plant: "watered",
	harm:  finding.Money,
	flows: findProductMoreThanPump,
}

func findProductMoreThanPump(_ *bom.System, r *duty.Result) []finding.Finding {
	var out []finding.Finding
	want := r.Build.Duty.Product
	if want == nil {
		return nil
	}
	for _, m := range r.Plants {
		if m.Recovered != nil || !m.FeedKnown || m.Elements*max(m.Ways, 1) != 1 {
			continue
		}
		least := quantity.Flow(float64(*want) / mostTaken)
		if least <= m.Feed.Hi {
			continue
		}
		f := onPlant(m, finding.Caution)
		f.Reason = fmt.Sprintf("%s are more than 15 %% of the %s that the pump gives.", want, litresAMinute(m.Feed))
		f.Remedy = fmt.Sprintf("Take a pump of %s L/min or more, with a motor to suit, or want less.", upTo(least.LitresPerMinute(), 1))
		out = append(out, f)
	}
	return out
}

// mostTaken is the share of its feed that one element may take (memory).
const mostTaken = 0.15
