package rule

import (
	"fmt"
	"math"

	"handtight/bom"
	"handtight/bom/duty"
	"handtight/bom/finding"
)

var productBelowWanted = Rule{
	Slug:  "product-below-wanted",
	Title: "The plant makes less fresh water than is wanted.",
	Why: `What comes through is reckoned over the whole range of what is said: the water's temperature
and salt, the pump's flow, the elements as new and as old. A stop where even the best of all
that is less than wanted, a caution where it makes less at the middle, with elements of the ` + "`age`" + `
that is said, else new.`,
	Wrong: `
[duty]
pressure = "54 bar"
product = "120 L/h"
litres = "100 L"
salinity = "35 g/kg"
water = "14 to 22 C"
lift = "0.2 m"
supply = "24 V"
`,
	mend:  []string{`product = "120 L/h"`, `product = "50 L/h"`},
	block: "duty",
	plant: "watered",
	harm:  finding.Money,
	flows: findProductBelowWanted,
}

func findProductBelowWanted(_ *bom.System, r *duty.Result) []finding.Finding {
	var out []finding.Finding
	want := r.Build.Duty.Product
	if want == nil {
		return nil
	}
	for _, m := range r.Plants {
		// Nothing hangs on less than the model itself is sure of.
		_, sure, _ := m.FilmSpread()
		if !m.Made || float64(m.Middle.Product)*(1+math.Max(0, sure)) >= float64(*want) {
			continue
		}
		f := onPlant(m, finding.Caution)
		if m.All.Product.Hi < *want {
			f.Severity = finding.Stop
		}
		f.Reason = fmt.Sprintf("%s wanted, and it makes %.1f L/h with %s at the middle of what is said (%s over all of it).", want, m.Middle.Product.LitresPerHour(), m.ElementsAge(), litresAnHour(m.All.Product))
		f.Remedy = "Take another element with a pump to suit, or want less."
		if p, ok := m.PressureFor(*want); ok && p <= m.MostPressure() {
			f.Remedy = fmt.Sprintf("Hold %s bar on the throttle, if the element, the vessel, the relief and the motor allow it.", upTo(p.Bar(), 1))
		} else if text := m.UpgradeText(); text != "" {
			f.Remedy = "No pressure that the element bears gives it. " + text
		}
		out = append(out, f)
	}
	return out
}
