package rule

import (
	"fmt"
	"slices"

	"handtight/bom"
	"handtight/bom/duty"
	"handtight/bom/finding"
	"handtight/bom/graph"
	"handtight/pressure/process/span"
	"handtight/pressure/quantity"
)

var supplyTooWeak = Rule{
	Slug:  "supply-too-weak",
	Title: "The pump would draw more current than a boat of that voltage gives.",
	Why: `Pushing 9 litres a minute against 56 bar takes 840 watts in the water alone, and the
motor, the belt and the pump lose a third more (a range is given). At 12 V that is about 100 A, which
cables, batteries and charging seldom give. A smaller pump, or a 24 V supply. A voltage in the pump's "motor" ("24 V DC") comes
before the supply; a pump whose "motor" is an engine, a clutch, hydraulics or the mains
is not judged.`,
	Wrong: `
[duty]
pressure = "56 bar"
supply = "12 V"
`,
	mend:  []string{`supply = "12 V"`, `supply = "24 V"`},
	block: "duty",
	harm:  finding.Fire,
	check: findWeak, // it asks for less than the flows do: a pump alone
}

// drive is the pumps that one battery voltage drives.
type drive struct {
	volts quantity.Voltage
	pumps []*graph.Unit
	watts span.Span[quantity.Power]
}

// findWeak adds up the pumps of each voltage; those that an engine, hydraulics or the
// mains drive take nothing from the batteries.
func findWeak(s *bom.System) []finding.Finding {
	asked := s.Build.Duty
	if asked.Pressure == nil {
		return nil
	}
	var drives []drive
	for _, p := range pumps(s) {
		volts, ok := p.Item.Battery(asked.Supply)
		if !ok {
			continue
		}
		watts, known := duty.Takes(p.Item, s.Build)
		if !known {
			continue
		}
		at := slices.IndexFunc(drives, func(d drive) bool { return d.volts == volts })
		if at < 0 {
			at = len(drives)
			drives = append(drives, drive{volts: volts})
		}
		drives[at].pumps = append(drives[at].pumps, p)
		drives[at].watts = span.Between(drives[at].watts.Lo+watts.Lo, drives[at].watts.Hi+watts.Hi)
	}
	var out []finding.Finding
	for _, d := range drives {
		if d.watts.Middle().Watts()/d.volts.Volts() > mostAmperes {
			out = append(out, d.tooWeak(*asked.Pressure))
		}
	}
	return out
}

func (d *drive) tooWeak(held quantity.Pressure) finding.Finding {
	f := finding.Finding{
		Severity: finding.Caution, Subject: ofUnit(d.pumps[0]), Also: ofUnits(d.pumps[1:]), Place: at(d.pumps[0].Mark),
		Remedy: "Take a smaller pump, a motor and a `supply` of a higher voltage, or an engine or mains drive, and write it as the pump's `motor`.",
	}
	takes := "takes"
	for _, p := range d.pumps[1:] {
		takes = "together take"
		f.Related = append(f.Related, at(p.Mark))
	}
	volts := d.volts.Volts()
	f.Reason = fmt.Sprintf("%s at %s %s %.0f to %.0f W, which is %.0f to %.0f A at %s, and more than %d A at the middle.", names(d.pumps), held, takes,
		d.watts.Lo.Watts(), d.watts.Hi.Watts(), d.watts.Lo.Watts()/volts, d.watts.Hi.Watts()/volts, d.volts, mostAmperes)
	return f
}

// mostAmperes is the current that is taken as the most a small boat gives for hours (common
// practice).
const mostAmperes = 80
