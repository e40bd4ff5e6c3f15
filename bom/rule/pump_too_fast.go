package rule

import (
	"fmt"

	"handtight/bom"
	"handtight/bom/duty"
	"handtight/bom/finding"
)

var pumpTooFast = Rule{
	Slug:  "pump-too-fast",
	Title: "The pump turns faster than it is rated.",
	Why: `A plunger pump's flow and life are rated at a speed. Behind its pulleys it must not turn
faster: its valves do not close in time, and its packings burn.`,
	Wrong: `
[[item]]
id = "pump"
kind = "plunger pump"
material = "super duplex"
flow = "9 L/min"
motor = "24 V DC, belt"
speed = "1450 rpm"
motor_speed = "2800 rpm"
pulley = "80:112"
rated = "100 bar"
ports = { in = '19 mm barb', out = '3/8 NPT female' }
`,
	mend:  []string{`motor_speed = "2800 rpm"`, `motor_speed = "1750 rpm"`},
	block: "pump",
	plant: "watered",
	harm:  finding.Spoils,
	flows: findPumpTooFast,
}

func findPumpTooFast(_ *bom.System, r *duty.Result) []finding.Finding {
	var out []finding.Finding
	for _, m := range r.Plants {
		for _, u := range m.Pumps {
			turning := duty.Turning(u.Item)
			if turning.Hi <= 1.001 {
				continue
			}
			f := onPump(m, finding.Caution)
			f.Subject, f.Place = ofUnit(u), at(u.Mark)
			rated := *u.Item.Process.Speed
			f.Reason = fmt.Sprintf("it turns at %.0f rpm, and is rated for %s.", turning.Hi*float64(rated), rated)
			f.Remedy = fmt.Sprintf("Take pulleys that bring it to %s or less: a motor pulley %.0f %% of what it is.", rated, 100/turning.Hi) + lessWater
			out = append(out, f)
		}
	}
	return out
}
