package rule

import (
	"fmt"

	"handtight/bom"
	"handtight/bom/duty"
	"handtight/bom/finding"
)

var feedPumpNotSaid = Rule{
	Slug:  "feed-pump-not-said",
	Title: "A pressure pump stands above the water without a feed pump.",
	Why: `A plunger pump lifts badly and its filters take what little pressure there is. Above the
water, or behind filters, it needs a feed pump, or must be set below the waterline and find what
its maker asks for at its inlet (npsh).`,
	Wrong: `
[[item]]
id = "feed-pump"
kind = "shut-off valve"
material = "bronze"
rated = "6 bar"
ports = { in = '19 mm barb', out = '19 mm barb' }
`,
	mend: []string{`
kind = "shut-off valve"
material = "bronze"
`, `
kind = "feed pump"
type = "diaphragm"
material = "pp"
motor = "24 V DC"
flow = "22 L/min"
shutoff = "2.5 bar"
self_priming = "2 m"
current = "6 A"
`},
	block: "feed pump",
	plant: "watered",
	harm:  finding.Spoils,
	flows: findFeedPumpNotSaid,
}

func findFeedPumpNotSaid(_ *bom.System, r *duty.Result) []finding.Finding {
	var out []finding.Finding
	lift := r.Build.Duty.Lift
	for _, m := range r.Plants {
		if len(m.FeedPumps) > 0 || m.Lines == nil || !m.Lines.Solved || m.Recovered != nil {
			continue
		}
		for _, i := range m.Lines.Inlets {
			if i.HasFeed || lift == nil && len(i.Filters) == 0 || lift != nil && *lift <= 0 && len(i.Filters) == 0 {
				continue
			}
			if i.NeedsSaid && i.NPSHKnown && i.NPSH.Lo >= i.Good() && (lift == nil || *lift <= 0) {
				continue // it is flooded, and finds what its maker asks for
			}
			where := "behind filters"
			if lift != nil && *lift > 0 {
				where = fmt.Sprintf("%s above the water", lift)
			}
			f := onPump(m, finding.Caution)
			f.Subject, f.Place = ofUnit(i.Pump), at(i.Pump.Mark)
			f.Reason = fmt.Sprintf("it draws for itself, %s.", where)
			f.Remedy = fmt.Sprintf("Put a feed pump of about %s L/min before the filters.", upTo(2*m.Feed.Hi.LitresPerMinute(), 1))
			out = append(out, f)
		}
	}
	return out
}
