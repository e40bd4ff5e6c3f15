package rule

import (
	"fmt"

	"handtight/bom"
	"handtight/bom/finding"
	"handtight/pressure"
)

var reliefMarginThin = Rule{
	Slug:  "relief-margin-thin",
	Title: "The relief valve is set less than a tenth above the duty.",
	Why: `A plunger pump's pressure swings with each stroke, and a relief valve begins to weep before
it lifts. One that is set just above the duty is wet all the time: its seat is worn by the jet,
and what it lets by is missing from the membrane. A tenth above the duty is the least.`,
	Wrong: `
[[item]]
id = "relief"
kind = "relief valve"
material = "super duplex"
set = "60 bar"       # the duty is 56
flow = "10 L/min"
rated = "100 bar"
ports = { in = '3/8 NPT male', out = '3/8 NPT female' }
`,
	mend:  []string{`set = "60 bar"       # the duty is 56`, `set = "65 bar"`},
	block: "relief",
	harm:  finding.Spoils,
	check: findThinMargin,
}

func findThinMargin(s *bom.System) []finding.Finding {
	duty := s.Build.Duty.Pressure
	if duty == nil {
		return nil
	}
	var out []finding.Finding
	for _, u := range reliefs(s) {
		set := *u.Item.Set
		if !s.Segments.SegmentOf(u.First+u.Item.PortIndex("in")).High() || set <= *duty || set >= *duty*reliefMargin-pressure.Slack {
			continue
		}
		out = append(out, finding.Finding{
			Severity: finding.Caution, Subject: ofUnit(u), Place: at(u.Mark),
			Reason: fmt.Sprintf("%s lifts at %s, less than a tenth above the duty of %s.", u.Name, set, duty),
			Remedy: fmt.Sprintf("Set it to %s or more, while the weakest part holds that.", *duty*reliefMargin),
		})
	}
	return out
}
