package rule

import (
	"fmt"

	"handtight/bom"
	"handtight/bom/finding"
	"handtight/bom/segment"
	"handtight/catalog"
)

var reliefSetLow = Rule{
	Slug:  "relief-set-low",
	Title: "A relief valve lifts at the duty or below it, or nothing says at what.",
	Why: `At or below the duty it lifts in normal running and no water is made. A tenth above the
duty is the guide for pumps with three plungers and more (pump handbook, relief valves).`,
	Wrong: `
[[item]]
id = "relief"
kind = "relief valve"
set = "50 bar"
flow = "10 L/min"
rated = "100 bar"
ports = { in = '3/8 NPT male', out = '3/8 NPT female' }
`,
	mend:  []string{`set = "50 bar"`, `set = "65 bar"`},
	block: "relief",
	harm:  finding.Spoils,
	check: findSetLow,
}

func findSetLow(s *bom.System) []finding.Finding {
	duty := s.Build.Duty.Pressure
	var out []finding.Finding
	for _, u := range s.Graph.Units {
		if !u.Item.Kind.Is(catalog.Relieves) || duty == nil {
			continue
		}
		var f finding.Finding
		g := s.Segments.SegmentOf(u.First + u.Item.PortIndex("in"))
		switch set := u.Item.Set; {
		case set == nil:
			f.Severity, f.NotKnown, f.Consequence = finding.Stop, true, finding.Bursts
			f.Reason = fmt.Sprintf("nothing says at what pressure %s lifts, so it guards nothing.", u.Name)
			f.Remedy = fmt.Sprintf("Write set = \"…\" on `%s`, above %s and below the weakest rating.", u.Item.ID, duty)
		case !g.High(), s.Build.Duty.PressureTold: // what an energy-recovery pump comes to is said by its own rules
			continue
		case *set <= *duty:
			f.Severity = finding.Stop
			f.Reason = fmt.Sprintf("%s lifts at %s, and the duty is %s: it is open in normal running.", u.Name, set, duty)
			f.Remedy = fmt.Sprintf("Set it at least a tenth above the duty: %s.", *duty*reliefMargin)
		default:
			continue
		}
		f.Subject, f.Place = ofUnit(u), at(u.Mark)
		out = append(out, f)
	}
	return out
}

const reliefMargin = segment.ReliefMargin
