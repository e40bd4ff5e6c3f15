package rule

import (
	"fmt"

	"handtight/bom"
	"handtight/bom/duty"
	"handtight/bom/finding"
)

var pressureBelowOsmotic = Rule{
	Slug:  "pressure-below-osmotic",
	Title: "The pressure does not overcome the salt of the water.",
	Why: `Water passes a membrane only with what the pressure is above the osmotic pressure: about 25
bar for the open ocean, more in warm and salty seas, less in the Baltic. Below it there is
no fresh water at all, whatever the pump. A stop where even the coldest and freshest water
named is too much for it, a caution where the middle of what is said is.`,
	Wrong: `
[duty]
pressure = "24 bar"
product = "50 L/h"
litres = "100 L"
salinity = "35 g/kg"
water = "14 to 22 C"
lift = "0.2 m"
supply = "24 V"
`,
	mend:  []string{`pressure = "24 bar"`, `pressure = "54 bar"`},
	block: "duty",
	plant: "watered",
	harm:  finding.Spoils,
	flows: findPressureBelowOsmotic,
}

func findPressureBelowOsmotic(_ *bom.System, r *duty.Result) []finding.Finding {
	var out []finding.Finding
	for _, m := range r.Plants {
		if !m.Made || m.Recovered != nil || m.MidGap > 0 {
			continue
		}
		f := onPlant(m, finding.Caution)
		if m.BestGap <= 0 {
			f.Severity = finding.Stop
		}
		f.Reason = fmt.Sprintf("the salt holds back %s, and the duty is %s: no water passes the membrane.", m.Middling().Pressure-m.MidGap, m.Middling().Pressure)
		f.Remedy = "Hold more pressure on the throttle, as far as the element, the vessel and the relief allow; what is wanted besides takes another pump or element."
		if p, ok := m.PressureFor(wanted(r, m)); ok && p <= m.MostPressure() {
			f.Remedy = fmt.Sprintf("Hold %s bar on the throttle, if the element, the vessel, the relief and the motor allow it: that gives %s.", upTo(p.Bar(), 1), wanted(r, m))
		}
		out = append(out, f)
	}
	return out
}
