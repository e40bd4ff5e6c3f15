package rule

import (
	"fmt"

	"handtight/bom"
	"handtight/bom/duty"
	"handtight/bom/finding"
)

var pressureFarFromGood = Rule{
	Slug:  "pressure-far-from-good",
	Title: "Little is left of the pressure at the last element.",
	Why: `The last element of a row sees the saltiest water and the least pressure. With less than 5
bar of net driving pressure there (a judgement) it makes hardly any water, and salty.`,
	Wrong: `
[duty]
pressure = "30 bar"
product = "1 L/h"
litres = "100 L"
salinity = "35 g/kg"
water = "14 to 22 C"
lift = "0.2 m"
supply = "24 V"
`,
	mend: []string{`
pressure = "30 bar"
product = "1 L/h"
`, `
pressure = "54 bar"
product = "50 L/h"
`},
	block: "duty",
	plant: "watered",
	harm:  finding.Spoils,
	flows: findPressureFarFromGood,
}

func findPressureFarFromGood(_ *bom.System, r *duty.Result) []finding.Finding {
	var out []finding.Finding
	for _, m := range r.Plants {
		if !m.Made || m.MidGap <= 0 || m.Middle.Last.Drive.Bar() >= leastDrive {
			continue
		}
		f := onPlant(m, finding.Caution)
		f.Reason = fmt.Sprintf("the net driving pressure at the last element is %.1f bar, of %s held.", m.Middle.Last.Drive.Bar(), m.Middling().Pressure)
		f.Remedy = "Hold more pressure, or take an element out of the row, or give it more feed."
		out = append(out, f)
	}
	return out
}

// leastDrive is what the last element should have, in bar (judgement).
const leastDrive = 5
