package rule

import (
	"fmt"

	"handtight/bom"
	"handtight/bom/finding"
)

var reliefTooSmall = Rule{
	Slug:  "relief-too-small",
	Title: "A relief valve does not pass the whole flow of its pump.",
	Why: `When everything is shut, the whole flow goes through the relief. One that is too small
lets the pressure rise past its setting.`,
	Wrong: `
[[item]]
id = "relief"
kind = "relief valve"
set = "65 bar"
flow = "2 L/min"
rated = "100 bar"
ports = { in = '3/8 NPT male', out = '3/8 NPT female' }
`,
	Right: `
[[item]]
id = "relief"
kind = "relief valve"
set = "65 bar"
flow = "10 L/min"
rated = "100 bar"
ports = { in = '3/8 NPT male', out = '3/8 NPT female' }
`,
	block: "relief",
	check: findSmall,
}

func findSmall(s *bom.System) []finding.Finding {
	var out []finding.Finding
	for _, p := range pumps(s) {
		near, _ := reliefsOf(s, p)
		for _, u := range near {
			var f finding.Finding
			switch flow := u.Item.Flow; {
			case flow == nil:
				f.Severity = finding.Note
				f.Reason = fmt.Sprintf("nothing says what flow %s passes.", u.Name)
				f.Remedy = "Ask for its capacity at the set pressure and write `flow`; it must pass the pump's whole flow."
			case p.Item.Flow != nil && *flow < *p.Item.Flow:
				f.Severity = finding.Stop
				f.Reason = fmt.Sprintf("%s passes %s, and %s delivers %s.", u.Name, flow, p.Name, p.Item.Flow)
				f.Remedy = fmt.Sprintf("Buy one that passes %s or more at its setting.", p.Item.Flow)
			default:
				continue
			}
			f.At, f.Place = u.Name, at(u.Mark)
			out = append(out, f)
		}
	}
	return out
}
