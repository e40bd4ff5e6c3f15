package rule

import (
	"fmt"

	"handtight/bom"
	"handtight/bom/duty"
	"handtight/bom/finding"
)

var suctionNpsh = Rule{
	Slug:  "suction-npsh",
	Title: "The pressure pump is not sure to get its water.",
	Why: `What presses the water into the pump is the air, a feed pump, and depth; hose, filters, lift
and, in a plunger pump, the start and stop of the column at each stroke take from it. What
is left must be a metre over what the pump's sheet asks for. The column's part is for rigid pipe: soft
hose near the pump takes less, so it is a caution. It needs the pump's "npsh" and speed.`,
	Wrong: `
[[item]]
id = "pump"
kind = "plunger pump"
material = "super duplex"
flow = "9 L/min"
motor = "24 V DC, belt"
motor_power = "1.5 kW"
speed = "1450 rpm"
npsh = "40 m"
rated = "100 bar"
ports = { in = '19 mm barb', out = '3/8 NPT female' }
`,
	mend:  []string{`npsh = "40 m"`, `npsh = "2 m"`},
	block: "pump",
	plant: "watered",
	harm:  finding.Spoils,
	flows: findSuctionNpsh,
}

func findSuctionNpsh(_ *bom.System, r *duty.Result) []finding.Finding {
	var out []finding.Finding
	for _, m := range r.Plants {
		if m.Lines == nil || !m.Lines.Solved {
			continue
		}
		for _, i := range m.Lines.Inlets {
			if !i.NPSHKnown || !i.NeedsSaid || i.HasFeed && !i.FeedKnown || i.NPSH.Lo >= i.Good() {
				continue
			}
			f := onPump(m, finding.Caution)
			f.Subject, f.Place = ofUnit(i.Pump), at(i.Pump.Mark)
			if i.NPSH.Hi < i.Needs.Lo {
				f.Severity = finding.Stop
			}
			f.Reason = fmt.Sprintf("%.1f to %.1f m of water stand before it, the strokes counted in at the lower end; its sheet asks for %.1f m, and %.1f are a good margin.", i.NPSH.Lo.Metres(), i.NPSH.Hi.Metres(), i.Needs.Lo.Metres(), i.Good().Metres())
			f.Remedy = "Make the hose before it wider and shorter, set it lower, or take a feed pump of more pressure."
			if i.LineLoss > mostBefore {
				f.Remedy = fmt.Sprintf("Turn the pump slower, and make the hose before it wider and shorter: %.2f bar are lost in it.%s", i.LineLoss.Bar(), lessWater)
				if i.HasFeed && i.Middle < leastInlet {
					f.Remedy += " Take a feed pump that keeps up with it."
				}
			}
			out = append(out, f)
		}
	}
	return out
}
