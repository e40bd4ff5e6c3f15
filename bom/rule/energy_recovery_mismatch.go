package rule

import (
	"fmt"

	"handtight/bom"
	"handtight/bom/duty"
	"handtight/bom/finding"
)

var energyRecoveryMismatch = Rule{
	Slug:  "energy-recovery-mismatch",
	Title: "The membrane asks an energy-recovery pump for more, or less, than suits it.",
	Why: `The rod's share of the piston fixes the recovery, and the membrane comes to the pressure that
passes it: higher in cold water and with old elements, lower in warm water, which lets salt
through. A stop where the coldest water asks for more than the element or the feed pump
bears, a caution where elements of the ` + "`age`" + ` that is said,
else new, let over 600 mg/L through in the warmest water.`,
	Wrong: `
[[item]]
id = "pump"
kind = "energy recovery pump"
material = "super duplex"
ratio = "24 %"
leak = "1 %"
friction = "0.4 bar"
rated = "100 bar"
ports = { in = '13 mm barb', out = '3/8 NPT female', brine = '3/8 NPT female', waste = '13 mm barb' }
[[item]]
id = "relief"
kind = "relief valve"
material = "super duplex"
set = "71 bar"
full_flow = "74 bar"
flow = "16 L/min"
rated = "100 bar"
ports = { in = '3/8 NPT male', out = '3/8 NPT female' }
`,
	mend:  []string{`ratio = "24 %"`, `ratio = "11 %"`},
	block: "pump",
	plant: "recovered",
	harm:  finding.Spoils,
	flows: findEnergyRecoveryMismatch,
}

func findEnergyRecoveryMismatch(_ *bom.System, r *duty.Result) []finding.Finding {
	var out []finding.Finding
	for _, m := range r.Plants {
		rec := m.Recovered
		if rec == nil {
			continue
		}
		f := onPlant(m, finding.Stop)
		most := m.MostPressure()
		switch {
		case rec.Stalls:
			f.Reason = "in the coldest and saltiest water with old elements the membrane asks for more pressure than the feed pump's curve gives."
			if !m.Made {
				f.Reason = "the membrane asks for more pressure than the feed pump's curve gives."
			}
			f.Remedy = "Take a pump of a smaller rod, or a feed pump of more pressure." + lessWater
		case m.Made && rec.Hardest.Held > most:
			f.Reason = fmt.Sprintf("in the coldest water the membrane comes to %.0f bar, and the element bears %.0f.", rec.Hardest.Held.Bar(), most.Bar())
			f.Remedy = "Take a pump of a smaller rod, or a larger element." + lessWater
		case m.Made && rec.Warmest.Salt > goodWater:
			f.Severity = finding.Caution
			f.Reason = fmt.Sprintf("in the warmest water the membrane needs but %.0f bar, and lets %.0f mg/L of salt through; 600 are good water.", rec.Easiest.Held.Bar(), float64(rec.Warmest.Salt))
			f.Remedy = "Take a smaller element, or one that holds back more, or do not run it in water that warm." + lessWater
		default:
			continue
		}
		out = append(out, f)
	}
	return out
}
