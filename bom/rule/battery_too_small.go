package rule

import (
	"fmt"

	"handtight/bom"
	"handtight/bom/duty"
	"handtight/bom/finding"
)

var batteryTooSmall = Rule{
	Slug:  "battery-too-small",
	Title: "The day's water takes more than battery and sun give.",
	Why: `Ampere hours of the day are hours times current. What of the battery may be used, with what
the panels bring in the fewest hours of full sun (65 % of their power arrives), must cover the middle
of what the day takes; else it is the engine's or the shore's to charge. Both ends stand in duty.`,
	Wrong: `
[duty]
pressure = "54 bar"
product = "50 L/h"
litres = "900 L"
salinity = "35 g/kg"
water = "14 to 22 C"
lift = "0.2 m"
supply = "24 V"
`,
	mend:  []string{`litres = "900 L"`, `litres = "100 L"`},
	block: "duty",
	plant: "watered",
	harm:  finding.Money,
	flows: findBatteryTooSmall,
}

func findBatteryTooSmall(_ *bom.System, r *duty.Result) []finding.Finding {
	var out []finding.Finding
	ps := r.Build.Power
	if ps == nil || ps.Battery == nil {
		return nil
	}
	for _, m := range r.Plants {
		p := m.Power
		if p == nil || !p.DayKnown || !p.Battery {
			continue
		}
		usable, said := 0.5, ps.Usable != nil
		if said {
			usable = float64(*ps.Usable)
		}
		gives := float64(*ps.Battery) * usable
		sun := 0.0
		if ps.Solar != nil {
			hours := 3.0
			if ps.Sun != nil {
				hours = ps.Sun.Lo.Hours()
			}
			sun = float64(*ps.Solar) * hours * 0.65 / float64(p.Volts)
		}
		middle := (p.Ah.Lo + p.Ah.Hi) / 2
		if middle <= gives+sun {
			continue
		}
		f := onPump(m, finding.Caution)
		f.Reason = fmt.Sprintf("%s a day take %.0f to %.0f Ah; the battery gives %.0f Ah of its %s and the sun %.0f Ah.", r.Build.Duty.Litres, p.Ah.Lo, p.Ah.Hi, gives, ps.Battery, sun)
		f.Remedy = fmt.Sprintf("Make less water a day, or run it with the engine: %.1f to %.1f hours.", p.Hours.Lo, p.Hours.Hi)
		out = append(out, f)
	}
	return out
}
