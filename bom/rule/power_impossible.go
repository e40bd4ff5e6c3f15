package rule

import (
	"handtight/bom"
	"handtight/bom/duty"
	"handtight/bom/finding"
)

var powerImpossible = Rule{
	Slug:  "power-impossible",
	Title: "The electric figures cannot be: the water alone takes more.",
	Why: `Volts times amperes are the watts that go in; no pump gives the water more than that. Where
a plate says less than the water takes at the duty, the plate, the voltage or the flow is
wrong, whatever the efficiencies. 50 to 60 A at 12 V are 600 to 720 W (common practice names
such figures for pumps that need more): possible at 24 V, and not at 12.`,
	Wrong: `
[[item]]
id = "pump"
kind = "plunger pump"
material = "super duplex"
flow = "9 L/min"
motor = "24 V DC, belt"
motor_current = "22 A"
rated = "100 bar"
ports = { in = '19 mm barb', out = '3/8 NPT female' }
`,
	mend:  []string{`motor_current = "22 A"`, `motor_current = "52 A"`},
	block: "pump",
	plant: "watered",
	harm:  finding.Fire,
	flows: findPowerImpossible,
}

func findPowerImpossible(_ *bom.System, r *duty.Result) []finding.Finding {
	var out []finding.Finding
	for _, m := range r.Plants {
		if m.Power == nil || m.Power.Cannot == "" {
			continue
		}
		f := onPump(m, finding.Stop)
		f.Reason = m.Power.Cannot + "."
		f.Remedy = "Ask for the current at this flow and pressure, and at which voltage: the sheet is wrong, or it is of another voltage, flow or pressure."
		out = append(out, f)
	}
	return out
}
