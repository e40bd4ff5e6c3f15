package rule

import (
	"fmt"

	"handtight/bom"
	"handtight/bom/finding"
	"handtight/pressure"
)

var supplyTooWeak = Rule{
	Slug:  "supply-too-weak",
	Title: "The pump would draw more current than a boat of that voltage gives.",
	Why: `Pushing 8 litres a minute against 55 bar takes over 730 watts in the water alone, and
the motor, the belt and the pump lose a good third more (common practice: 50 to 60 A at
24 V). At 12 V the same is over 100 A, which cables, batteries and charging seldom
give. A smaller pump, or a 24 V supply.`,
	Wrong: `
[duty]
pressure = "55 bar"
supply = "12 V"
`,
	Right: `
[duty]
pressure = "55 bar"
supply = "24 V"
`,
	block: "duty",
	check: findWeak,
}

func findWeak(s *bom.System) []finding.Finding {
	duty := s.Build.Duty
	if duty.Supply == nil || duty.Pressure == nil || duty.Supply.Volts() <= 0 || duty.Supply.Volts() > 60 {
		return nil // mains or an engine drives it
	}
	var driven []*bom.Unit
	watts := 0.0
	for _, p := range pumps(s) {
		if p.Item.Flow != nil {
			driven = append(driven, p)
			watts += pressure.WaterPower(*duty.Pressure, *p.Item.Flow).Watts() / driveEfficiency
		}
	}
	amps := watts / duty.Supply.Volts()
	if len(driven) == 0 || amps <= mostAmperes {
		return nil
	}
	f := finding.Finding{
		Severity: finding.Caution, At: driven[0].Name, Place: at(driven[0].Mark),
		Remedy: "Take a smaller pump, a higher voltage, or an engine or mains drive.",
	}
	takes := "takes"
	for _, p := range driven[1:] {
		takes = "together take"
		f.Related = append(f.Related, at(p.Mark))
	}
	f.Reason = fmt.Sprintf("%s at %s %s about %.0f W, which is %.0f A at %s.", names(driven), duty.Pressure, takes, watts, amps, duty.Supply)
	return []finding.Finding{f}
}

// What motor, belt and pump leave of the electric power, and the current that is
// taken as the most a small boat gives for hours (both common practice).
const (
	driveEfficiency = 0.6
	mostAmperes     = 80
)
