package rule

import (
	"fmt"

	"handtight/bom"
	"handtight/bom/duty"
	"handtight/bom/finding"
	"handtight/pressure/quantity"
)

var feedPumpTooSmall = Rule{
	Slug:  "feed-pump-too-small",
	Title: "The feed pump does not keep up with the pressure pump.",
	Why: `A plunger pump that is not fed pulls a vacuum, knocks and wears. A feed pump must still give
0.2 bar at the flow that the pressure pump takes, with its filters clean; aim at twice the
flow, for filters get dirty. A stop where even its better curve falls short.`,
	Wrong: `
[[item]]
id = "feed-pump"
kind = "feed pump"
type = "diaphragm"
material = "pp"
motor = "24 V DC"
flow = "6 L/min"
shutoff = "2.5 bar"
self_priming = "2 m"
current = "6 A"
rated = "6 bar"
ports = { in = '19 mm barb', out = '19 mm barb' }
`,
	mend:  []string{`flow = "6 L/min"`, `flow = "22 L/min"`},
	block: "feed pump",
	plant: "watered",
	harm:  finding.Spoils,
	flows: findFeedPumpTooSmall,
}

func findFeedPumpTooSmall(_ *bom.System, r *duty.Result) []finding.Finding {
	var out []finding.Finding
	for _, m := range r.Plants {
		if m.Recovered != nil || m.Lines == nil || !m.Lines.Solved {
			continue
		}
		for _, i := range m.Lines.Inlets {
			if !i.HasFeed || !i.FeedKnown || i.Middle >= leastInlet {
				continue
			}
			f := onPump(m, finding.Caution)
			if i.Pressure.Hi < 0 {
				f.Severity = finding.Stop
			}
			fed := "the feed pump"
			if len(m.FeedPumps) == 1 {
				f.Subject, f.Place, fed = ofUnit(m.FeedPumps[0]), at(m.FeedPumps[0].Mark), m.FeedPumps[0].Name
			}
			f.Reason = fmt.Sprintf("%s leaves %.2f bar before %s with clean filters (%.2f to %.2f over all of it); 0.2 bar are the least.", fed, i.Middle.Bar(), i.Pump.Name, i.Pressure.Lo.Bar(), i.Pressure.Hi.Bar())
			f.Remedy = fmt.Sprintf("Take a feed pump of %s L/min or more, twice what %s takes.", upTo(2*m.Feed.Hi.LitresPerMinute(), 1), i.Pump.Name)
			if i.LineLoss > mostBefore {
				f.Remedy += fmt.Sprintf(" Take wider hose as well: %.2f bar are lost in what is there.", i.LineLoss.Bar())
			}
			out = append(out, f)
		}
	}
	return out
}

// leastInlet is what a pressure pump should find before it.
const leastInlet = 0.2 * quantity.Bar
