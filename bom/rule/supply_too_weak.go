package rule

import (
	"fmt"
	"slices"

	"handtight/bom"
	"handtight/bom/finding"
	"handtight/bom/graph"
	"handtight/pressure"
	"handtight/pressure/quantity"
)

var supplyTooWeak = Rule{
	Slug:  "supply-too-weak",
	Title: "The pump would draw more current than a boat of that voltage gives.",
	Why: `Pushing 9 litres a minute against 56 bar takes 840 watts in the water alone, and the
motor, the belt and the pump lose a good third more. At 12 V that is over 100 A, which
cables, batteries and charging seldom give. A smaller pump, or a 24 V supply. A voltage in the pump's "motor" ("24 V DC") comes
before the supply; a pump whose "motor" is an engine, a clutch, hydraulics or the mains
is not judged.`,
	Wrong: `
[duty]
pressure = "56 bar"
supply = "12 V"
`,
	Right: `
[duty]
pressure = "56 bar"
supply = "24 V"
`,
	block: "duty",
	harm:  finding.Fire,
	check: findWeak,
}

// drive is the pumps that one battery voltage drives.
type drive struct {
	volts quantity.Voltage
	pumps []*graph.Unit
	watts float64
}

// findWeak adds up the pumps of each voltage; those that an engine, hydraulics or the
// mains drive take nothing from the batteries.
func findWeak(s *bom.System) []finding.Finding {
	duty := s.Build.Duty
	if duty.Pressure == nil {
		return nil
	}
	var drives []drive
	for _, p := range pumps(s) {
		volts, ok := p.Item.Battery(duty.Supply)
		if !ok || p.Item.Flow == nil {
			continue
		}
		at := slices.IndexFunc(drives, func(d drive) bool { return d.volts == volts })
		if at < 0 {
			at = len(drives)
			drives = append(drives, drive{volts: volts})
		}
		drives[at].pumps = append(drives[at].pumps, p)
		drives[at].watts += pressure.WaterPower(*duty.Pressure, *p.Item.Flow).Watts() / driveEfficiency
	}
	var out []finding.Finding
	for _, d := range drives {
		if d.watts/d.volts.Volts() > mostAmperes {
			out = append(out, d.tooWeak(*duty.Pressure))
		}
	}
	return out
}

func (d *drive) tooWeak(held quantity.Pressure) finding.Finding {
	f := finding.Finding{
		Severity: finding.Caution, Subject: ofUnit(d.pumps[0]), Also: ofUnits(d.pumps[1:]), Place: at(d.pumps[0].Mark),
		Remedy: "Take a smaller pump, a higher voltage, or an engine or mains drive, and write it as the pump's `motor`.",
	}
	takes := "takes"
	for _, p := range d.pumps[1:] {
		takes = "together take"
		f.Related = append(f.Related, at(p.Mark))
	}
	f.Reason = fmt.Sprintf("%s at %s %s about %.0f W, which is %.0f A at %s.", names(d.pumps), held, takes, d.watts, d.watts/d.volts.Volts(), d.volts)
	return f
}

// What motor, belt and pump leave of the electric power, and the current that is
// taken as the most a small boat gives for hours (both common practice).
const (
	driveEfficiency = 0.6
	mostAmperes     = 80
)
