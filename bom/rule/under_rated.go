package rule

import (
	"fmt"
	"strings"

	"handtight/bom"
	"handtight/bom/finding"
	"handtight/pressure"
)

var underRated = Rule{
	Slug:  "under-rated",
	Title: "A part sees more pressure than it holds.",
	Why: `The weakest part decides, and it decides in the worst state: not only in normal
running, but with a valve left shut. A cast fitting of class 150 holds 20.7 bar of
cold water and stands in shops beside others that look alike; a clamped hose holds
under 14. A person's act that overloads a part is a stop; a part's failure that does is
a caution, and a stop above the proof pressure.`,
	Wrong: `
[duty]
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
spec = "SAE 100R6"
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
	check: findUnderRated,
}

// findUnderRated looks at each unit once, at the port where it lacks most.
func findUnderRated(s *bom.System) []finding.Finding {
	var out []finding.Finding
	for _, u := range s.Units {
		var worst finding.Finding
		lack := 0.0
		for i := range u.Item.Ports {
			p := u.First + i
			hold := s.PortHold(p)
			if !hold.Known {
				continue
			}
			if f, by := overload(s, hold, s.PortLoad(p)); by > lack && !reliefSaysIt(s, p, hold) {
				worst, lack = f, by
			}
		}
		if lack > 0 {
			worst.At, worst.Place = u.Name, at(u.Mark)
			out = append(out, worst)
		}
	}
	for _, j := range s.Joints {
		hold := s.JointHold(j)
		if !hold.Known {
			continue
		}
		if f, by := overload(s, hold, s.PortLoad(j.A)); by > 0 {
			f.At, f.Place = fmt.Sprintf("J%d %s", j.Number, s.JointName(j)), at(j.Mark)
			out = append(out, f)
		}
	}
	return out
}

// overload compares what a part holds with what it sees.
func overload(s *bom.System, hold bom.Hold, load *bom.Load) (finding.Finding, float64) {
	holds := hold.Rating.Pressure.Bar()
	seen, state, severity := load.Act, load.ByAct, finding.Stop
	if seen <= holds+slack {
		seen, state, severity = load.Fail, load.ByFail, finding.Caution
		if proof, ok := pressure.Proof(hold.Rating); ok && seen > proof.Bar() {
			severity = finding.Stop
		}
	}
	if seen <= holds+slack || state == nil {
		return finding.Finding{}, 0
	}
	reason := fmt.Sprintf("%s holds %s (%s: %s) and sees %s: %s.", hold.What, bars(holds), hold.Rating.Basis, hold.Rating.Text, bars(seen), state.Cause)
	if duty := s.Build.Duty.Pressure; duty != nil && strings.Contains(hold.Rating.Text, "150") && load.Normal > bom.HighPressure {
		reason += " " + pressure.CastClassTrap(*duty)
	}
	return finding.Finding{Severity: severity, Reason: reason, Remedy: remedyFor(seen, state)}, seen - holds
}

// slack keeps a rating that equals the pressure from being a finding by a rounding
// of units: a thousandth of a bar.
const slack = 0.001

func remedyFor(seen float64, state *bom.State) string {
	buy := fmt.Sprintf("Buy it for %s or more", bars(seen))
	if state.Unit == nil {
		return buy + "."
	}
	return buy + fmt.Sprintf(", or take away what lets it happen: %s must not be able to stop the flow, or the line needs its own relief with a free outlet.", state.Unit.Name)
}

// reliefSaysIt reports whether the part is overloaded only because the relief is set
// above it, which is found by its own rule.
func reliefSaysIt(s *bom.System, port int, hold bom.Hold) bool {
	g := s.SegmentOf(port)
	for _, u := range g.Units {
		if u.Item.Set != nil && u.Item.Set.Bar() > hold.Rating.Pressure.Bar() && s.SegmentOf(u.First) == g && g.Load.Normal <= hold.Rating.Pressure.Bar() {
			return true
		}
	}
	return false
}
