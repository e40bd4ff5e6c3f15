package rule

import (
	"fmt"

	"handtight/bom"
	"handtight/bom/finding"
)

var membraneWithoutPressure = Rule{
	Slug:  "membrane-without-pressure",
	Title: "In normal running the membrane does not come to the duty's pressure.",
	Why: `The brine throttle is what the pressure stands against: it belongs behind the vessel's brine
port, and nothing open may come before it. With the throttle before the vessel, without one, or
with a way round it, the water runs through the vessel at no pressure, and no product comes.`,
	Wrong: `
[[run]]
name = "brine"
path = ["vessel.brine", "discharge"]
[[run]]
name = "relief"
path = ["hp-tee.branch", "relief", "relief-out"]
`,
	mend:  []string{`path = ["vessel.brine", "discharge"]`, `path = ["vessel.brine", "throttle", "discharge"]`},
	block: "brine and relief",
	plant: "flushed",
	harm:  finding.Spoils,
	check: findUnpressed,
}

func findUnpressed(s *bom.System) []finding.Finding {
	var out []finding.Finding
	if s.Build.Duty.PressureTold { // of an energy-recovery pump: the most that it can come to, and no wish
		return nil
	}
	for _, x := range s.Running.Unpressed() {
		if !x.Driven {
			out = append(out, finding.Finding{
				Severity: finding.Stop, Subject: ofUnit(x.Vessel), Place: at(x.Vessel.Mark),
				Reason: fmt.Sprintf("the duty is %s, and no pump that gives it stands in the plant of %s: it stands at %s.", s.Build.Duty.Pressure, x.Vessel.Name, bars(x.Stands)),
				Remedy: "Place the high-pressure pump before the vessel; a feed pump or a plain passage in its place gives no pressure.",
			})
			continue
		}
		out = append(out, finding.Finding{
			Severity: finding.Stop, Subject: ofUnit(x.Vessel), Place: at(x.Vessel.Mark),
			Reason: fmt.Sprintf("in normal running %s stands at %s, and the duty is %s: nothing holds the pressure behind it.", x.Vessel.Name, bars(x.Stands), s.Build.Duty.Pressure),
			Remedy: fmt.Sprintf("Put the brine throttle behind %s.brine, and nothing that is open before it.", x.Vessel.Name),
		})
	}
	return out
}
