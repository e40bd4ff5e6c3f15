package rule

import (
	"fmt"

	"handtight/bom"
	"handtight/bom/duty"
	"handtight/bom/finding"
	"handtight/pressure/process/power"
)

var cableTooThin = Rule{
	Slug:  "cable-too-thin",
	Title: "The cable of the pump drops too much voltage.",
	Why: `A motor that gets less voltage draws more current. The drop is 0.0164 x amperes x metres there and
back over square millimetres: 10 % is allowed for what is no safety equipment, 3 % is kinder to a
motor (ISO 10133's form). What current a cable may carry, and its fuse, are for the local code and a
licensed electrician: this sizes by drop alone.`,
	Wrong: `
[power]
battery = "600 Ah"
usable = "50 %"
solar = "900 W"
sun = "5 h"
cable = "6 mm2"
cable_length = "9 m"
breaker = "80 A"
`,
	mend: []string{`
cable = "6 mm2"
cable_length = "9 m"
`, `
cable = "50 mm2"
cable_length = "4 m"
`},
	block: "power",
	plant: "watered",
	harm:  finding.Fire,
	flows: findCableTooThin,
}

func findCableTooThin(_ *bom.System, r *duty.Result) []finding.Finding {
	var out []finding.Finding
	for _, m := range r.Plants {
		p := m.Power
		if p == nil || p.Cable == nil {
			continue
		}
		middle := float64(p.Cable.Drop.Lo+p.Cable.Drop.Hi) / 2 / float64(p.Volts)
		if middle <= float64(power.DropStrict) {
			continue
		}
		f := onPump(m, finding.Caution)
		if p.Cable.Share.Lo > power.DropAllowed {
			f.Severity = finding.Stop
		}
		f.Reason = fmt.Sprintf("its cable drops %.1f to %.1f %% of %s.", p.Cable.Share.Lo.Percent(), p.Cable.Share.Hi.Percent(), p.Volts)
		f.Remedy = fmt.Sprintf("Take %s mm2 or more for 3 %%, in a size that the local code allows for the current.", upTo(float64(p.Cable.Strict), 1))
		out = append(out, f)
	}
	return out
}
