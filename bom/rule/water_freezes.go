package rule

import (
	"fmt"

	"handtight/bom"
	"handtight/bom/duty"
	"handtight/bom/finding"
	"handtight/pressure/process/sea"
	"handtight/pressure/quantity"
)

var waterFreezes = Rule{
	Slug:  "water-freezes",
	Title: "The water or the space can freeze.",
	Why: `Ice bursts pumps, filters and vessels, and a membrane that was frozen is lost. Sea water
freezes at about -1.9 C, the fresh water of a flush at 0. A plant that stands in the cold is
drained or filled with glycol that its maker allows.`,
	Wrong: `
[duty]
pressure = "54 bar"
product = "50 L/h"
litres = "100 L"
salinity = "35 g/kg"
water = "-2.2 to 4 C"
lift = "0.2 m"
supply = "24 V"
`,
	mend:  []string{`water = "-2.2 to 4 C"`, `water = "14 to 22 C"`},
	block: "duty",
	plant: "watered",
	harm:  finding.Bursts,
	flows: findWaterFreezes,
}

func findWaterFreezes(_ *bom.System, r *duty.Result) []finding.Finding {
	var out []finding.Finding
	for _, m := range r.Plants {
		if len(m.Rows) == 0 {
			continue
		}
		d := &r.Build.Duty
		salt := quantity.Salinity(35)
		if d.Salinities != nil {
			salt = min(d.Salinities.Lo, 42)
		}
		ice, err := sea.Freezing(salt)
		if err != nil {
			continue
		}
		what, severity := "", finding.Stop
		switch {
		case d.Waters != nil && d.Waters.Lo < ice:
			what = fmt.Sprintf("the water comes to %s, and freezes at %.1f C", d.Waters.Lo, ice.Celsius())
		case d.Waters != nil && d.Waters.Lo < ice+quantity.Temperature(quantity.Celsius):
			severity = finding.Caution
			what = fmt.Sprintf("the water comes to %s, less than a degree above the %.1f C at which it freezes", d.Waters.Lo, ice.Celsius())
		case d.Space != nil && *d.Space < 1:
			what = fmt.Sprintf("the air around it comes to %s, and the fresh water of a flush freezes at 0 C", d.Space)
		default:
			continue
		}
		f := onPlant(m, severity)
		f.Reason = what + ": ice bursts vessels and ends a membrane."
		f.Remedy = "Drain it or fill it with glycol before the frost, and write the water that it will run in."
		out = append(out, f)
	}
	return out
}
