package rule

import (
	"fmt"
	"strings"

	"handtight/bom"
	"handtight/bom/duty"
	"handtight/bom/finding"
)

var waterTooSalty = Rule{
	Slug:  "water-too-salty",
	Title: "The fresh water is too salty to drink with pleasure.",
	Why: `A taste panel calls up to 300 mg/L of salt excellent, to 600 good, to 900 fair, and over 1200
not acceptable; palatability ends at 1000 (WHO background document on dissolved solids, 1996). Warm
water, old elements and too little pressure let more salt through.`,
	Wrong: `
[duty]
pressure = "36 bar"
product = "10 L/h"
litres = "100 L"
salinity = "35 g/kg"
water = "28 to 30 C"
lift = "0.2 m"
supply = "24 V"
`,
	mend: []string{`
pressure = "36 bar"
product = "10 L/h"
`, `
pressure = "54 bar"
product = "50 L/h"
`, `water = "28 to 30 C"`, `water = "14 to 22 C"`},
	block: "duty",
	plant: "watered",
	harm:  finding.Spoils,
	flows: findWaterTooSalty,
}

func findWaterTooSalty(_ *bom.System, r *duty.Result) []finding.Finding {
	var out []finding.Finding
	for _, m := range r.Plants {
		if !m.Made || m.Recovered != nil || m.MidGap <= 0 || m.Middle.Salt <= goodWater {
			continue
		}
		f := onPlant(m, finding.Caution)
		if float64(m.All.Salt.Lo) > palatable {
			f.Severity = finding.Stop
		}
		f.Reason = fmt.Sprintf("%.0f mg/L of salt with %s at the middle of what is said (%.0f to %.0f over all of it); 600 are good water, 1000 the end of it.", float64(m.Middle.Salt), m.ElementsAge(), float64(m.All.Salt.Lo), float64(m.All.Salt.Hi))
		var ways []string
		if p, ok := m.PressureForSalt(goodWater, m.MostPressure()); ok {
			ways = append(ways, fmt.Sprintf("hold %s bar, if the element, the vessel, the relief and the motor allow it", upTo(p.Bar(), 1)))
		}
		if c, ok := m.WaterForSalt(goodWater); ok {
			ways = append(ways, fmt.Sprintf("run in water of %.0f C or cooler", c.Celsius()))
		}
		f.Remedy = capital(strings.Join(append(ways, "take an element that holds back more"), ", or ")) + "."
		out = append(out, f)
	}
	return out
}

// Salt in drinking water in mg/L: good, and the end of what is pleasant.
const (
	goodWater = 600
	palatable = 1000
)

// capital begins a text with a capital letter.
func capital(text string) string { return strings.ToUpper(text[:1]) + text[1:] }
