package rule

import (
	"fmt"

	"handtight/bom"
	"handtight/bom/duty"
	"handtight/bom/finding"
)

var waterTooWarm = Rule{
	Slug:  "water-too-warm",
	Title: "The water is warmer than the element bears.",
	Why: `Seawater elements bear 45 C (product sheet); the sheet of yours goes before. In water that
warm the salt passes as well. Do not run it there.`,
	Wrong: `
[duty]
pressure = "54 bar"
product = "50 L/h"
litres = "100 L"
salinity = "35 g/kg"
water = "40 to 48 C"
lift = "0.2 m"
supply = "24 V"
`,
	mend:  []string{`water = "40 to 48 C"`, `water = "14 to 22 C"`},
	block: "duty",
	plant: "watered",
	harm:  finding.Spoils,
	flows: findWaterTooWarm,
}

func findWaterTooWarm(_ *bom.System, r *duty.Result) []finding.Finding {
	var out []finding.Finding
	for _, m := range r.Plants {
		w := r.Build.Duty.Waters
		most := 45.0
		if l, ok := m.Limit("water"); ok {
			most = l.Limit
		}
		if w == nil || w.Hi.Celsius() <= most || len(m.Rows) == 0 {
			continue
		}
		f := onPlant(m, finding.Caution)
		if w.Lo.Celsius() > most {
			f.Severity = finding.Stop
		}
		f.Reason = fmt.Sprintf("water of %s, and the element bears %.0f C.", w, most)
		f.Remedy = "Do not run it in water that warm: write the water that it will run in."
		out = append(out, f)
	}
	return out
}
