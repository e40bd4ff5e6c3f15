package rule

import (
	"fmt"

	"handtight/bom"
	"handtight/bom/duty"
	"handtight/bom/finding"
)

var engineRangeWide = Rule{
	Slug:  "engine-range-wide",
	Title: "Between idle and cruising speed the pump's flow leaves its range.",
	Why: `A pump on a belt delivers as the engine turns. At idle the elements must not starve, at
cruising speed they must not get more than they bear; what is too much goes over the relief
and heats. An unloader, a clutch, or a named speed: with an unloader whose setting is said, what is too
much goes back by it, and only idle is judged.`,
	Wrong: `
[[item]]
id = "pump"
kind = "plunger pump"
material = "super duplex"
flow = "9 L/min"
motor = "engine, belt"
speed = "1450 rpm"
pulley = "80:112"
engine_speed = "700 to 3200 rpm"
rated = "100 bar"
ports = { in = '19 mm barb', out = '3/8 NPT female' }
`,
	mend:  []string{`engine_speed = "700 to 3200 rpm"`, `engine_speed = "1800 to 2000 rpm"`},
	block: "pump",
	plant: "watered",
	harm:  finding.Spoils,
	flows: findEngineRangeWide,
}

func findEngineRangeWide(_ *bom.System, r *duty.Result) []finding.Finding {
	var out []finding.Finding
	for _, m := range r.Plants {
		for _, u := range m.Pumps {
			if u.Item.Process.EngineSpeed == nil || !m.Made || len(m.Pumps) != 1 {
				continue
			}
			brine, okBrine := m.Limit("brine_flow")
			feed, okFeed := m.Limit("feed_flow")
			what := ""
			switch {
			case okBrine && brine.Value.Lo < brine.Limit:
				what = fmt.Sprintf("at idle %.1f L/min of brine are left, and %.1f are the least", brine.Value.Lo, brine.Limit)
			case okFeed && feed.Value.Hi > feed.Limit && !m.Unloads():
				what = fmt.Sprintf("at cruising speed each vessel gets %.1f L/min, and %.1f are the most", feed.Value.Hi, feed.Limit)
			default:
				continue
			}
			f := onPump(m, finding.Caution)
			f.Reason = fmt.Sprintf("from %s the pump delivers %s: %s.", u.Item.Process.EngineSpeed, litresAMinute(m.Feed), what)
			f.Remedy = "Write the engine speeds that it will run at, narrower, and keep to them; else an unloader or a clutch." + lessWater
			out = append(out, f)
		}
	}
	return out
}
