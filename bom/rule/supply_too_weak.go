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
supply = "12 V"
pressure = "55 bar"
[[item]]
id = "sea"
kind = "sea"
[[item]]
id = "pump"
kind = "plunger pump"
flow = "8 L/min"
ports = { in = '1/2 NPT female', out = '3/8 NPT female' }
rated = "100 bar"
motor = "DC"
[[item]]
id = "tee"
kind = "tee"
rated = "200 bar"
ports = { a = '3/8 NPT male', b = '3/8 NPT female', branch = '3/8 NPT female' }
[[item]]
id = "relief"
kind = "relief valve"
ports = { in = '3/8 NPT male', out = '3/8 NPT female' }
set = "65 bar"
flow = "10 L/min"
rated = "100 bar"
[[hose]]
id = "hose"
spec = "SAE 100R8"
bore = '3/8"'
length = "1 m"
ends = ['3/8 NPT male', '3/8 NPT male']
[[item]]
id = "throttle"
kind = "brine throttle"
rated = "200 bar"
ports = { in = '3/8 NPT female', out = '3/8 NPT female' }
[[item]]
id = "discharge"
kind = "overboard"
[[item]]
id = "relief-out"
kind = "overboard"
[[run]]
name = "suction"
path = ["sea", "pump"]
[[run]]
name = "high pressure"
path = ["pump", "tee", "hose", "throttle"]
[[run]]
name = "brine"
path = ["throttle", "discharge"]
[[run]]
name = "relief"
path = ["tee.branch", "relief", "relief-out"]
`,
	Right: `
[duty]
supply = "24 V"
pressure = "55 bar"
[[item]]
id = "sea"
kind = "sea"
[[item]]
id = "pump"
kind = "plunger pump"
flow = "8 L/min"
ports = { in = '1/2 NPT female', out = '3/8 NPT female' }
rated = "100 bar"
motor = "DC"
[[item]]
id = "tee"
kind = "tee"
rated = "200 bar"
ports = { a = '3/8 NPT male', b = '3/8 NPT female', branch = '3/8 NPT female' }
[[item]]
id = "relief"
kind = "relief valve"
ports = { in = '3/8 NPT male', out = '3/8 NPT female' }
set = "65 bar"
flow = "10 L/min"
rated = "100 bar"
[[hose]]
id = "hose"
spec = "SAE 100R8"
bore = '3/8"'
length = "1 m"
ends = ['3/8 NPT male', '3/8 NPT male']
[[item]]
id = "throttle"
kind = "brine throttle"
rated = "200 bar"
ports = { in = '3/8 NPT female', out = '3/8 NPT female' }
[[item]]
id = "discharge"
kind = "overboard"
[[item]]
id = "relief-out"
kind = "overboard"
[[run]]
name = "suction"
path = ["sea", "pump"]
[[run]]
name = "high pressure"
path = ["pump", "tee", "hose", "throttle"]
[[run]]
name = "brine"
path = ["throttle", "discharge"]
[[run]]
name = "relief"
path = ["tee.branch", "relief", "relief-out"]
`,
	check: findWeak,
}

func findWeak(s *bom.System) []finding.Finding {
	duty := s.Build.Duty
	if duty.Supply == nil || duty.Pressure == nil || duty.Supply.Volts() > 60 {
		return nil // mains or an engine drives it
	}
	var out []finding.Finding
	for _, p := range pumps(s) {
		if p.Item.Flow == nil {
			continue
		}
		power := pressure.WaterPower(*duty.Pressure, *p.Item.Flow).Watts() / driveEfficiency
		amps := power / duty.Supply.Volts()
		if amps <= mostAmperes {
			continue
		}
		out = append(out, finding.Finding{
			Severity: finding.Caution, At: p.Name, Place: at(p.Mark),
			Reason: fmt.Sprintf("%s at %s takes about %.0f W, which is %.0f A at %s.", p.Name, duty.Pressure, power, amps, duty.Supply),
			Remedy: "Take a smaller pump, a higher voltage, or an engine or mains drive.",
		})
	}
	return out
}

// What motor, belt and pump leave of the electric power, and the current that is
// taken as the most a small boat gives for hours (both common practice).
const (
	driveEfficiency = 0.6
	mostAmperes     = 80
)
