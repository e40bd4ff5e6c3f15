package rule

import (
	"fmt"

	"handtight/bom"
	"handtight/bom/duty"
	"handtight/bom/finding"
)

var motorTooWeak = Rule{
	Slug:  "motor-too-weak",
	Title: "The motor is too weak for its pump.",
	Why: `The shaft must give the water's power and what pump and belt lose: bar times litres a minute
over 600 are kilowatts in the water, and a seventh to three tenths more at the motor's shaft. What a
feed pump gives is taken off where it is over a twentieth of the pressure. A stop where even the best
efficiencies ask for more than the motor's plate, a caution where the middle does.`,
	Wrong: `
[[item]]
id = "pump"
kind = "plunger pump"
material = "super duplex"
flow = "9 L/min"
motor = "24 V DC, belt"
motor_power = "0.8 kW"
rated = "100 bar"
ports = { in = '19 mm barb', out = '3/8 NPT female' }
`,
	mend:  []string{`motor_power = "0.8 kW"`, `motor_power = "1.5 kW"`},
	block: "pump",
	plant: "watered",
	harm:  finding.Fire,
	flows: findMotorTooWeak,
}

func findMotorTooWeak(_ *bom.System, r *duty.Result) []finding.Finding {
	var out []finding.Finding
	for _, m := range r.Plants {
		if m.Power == nil {
			continue
		}
		for _, p := range m.Power.Pumps {
			has := p.Unit.Item.Process.MotorPower
			if has == nil || p.MidMotor <= *has {
				continue
			}
			f := finding.Finding{Severity: finding.Caution, Cause: m.Name, Subject: ofUnit(p.Unit), Place: at(p.Unit.Mark)}
			if p.Motor.Lo > *has {
				f.Severity = finding.Stop
			}
			f.Reason = fmt.Sprintf("its motor of %s is asked for %.0f to %.0f W: %.0f to %.0f W are in the water alone.", has, float64(p.Motor.Lo), float64(p.Motor.Hi), float64(p.Water.Lo), float64(p.Water.Hi))
			f.Remedy = fmt.Sprintf("Take a motor of %s W or more, or hold less pressure.", upTo(float64(p.Motor.Hi), 50))
			out = append(out, f)
		}
	}
	return out
}
