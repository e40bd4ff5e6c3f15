package rule

import (
	"fmt"

	"handtight/bom"
	"handtight/bom/finding"
	"handtight/bom/rating"
	"handtight/bom/running"
	"handtight/pressure"
	"handtight/pressure/quantity"
)

var valveShutsFast = Rule{
	Slug:  "valve-shuts-fast",
	Title: "A valve shuts so fast that the water it stops overloads a part.",
	Why: `Running water that is stopped at once presses on: the pipes bang, and a filter housing
cracks in the end. How much is reckoned from the speed in the narrowest hose, the length of the
line and the time in which a solenoid valve shuts, about two hundredths of a second
(Joukowsky's formula, less for a line that is short for that time). It is an estimate from
above: soft hose gives way. A supply whose ` + "`flow`" + ` is not written is not judged.`,
	Wrong: `
[[item]]
id = "house"
kind = "house supply"
pressure = "3 bar"
flow = "16 L/min"
[[item]]
id = "stock"
kind = "hose stock"
bore = "10 mm"       # narrow: the water runs fast
rated = "10 bar"
[[hose]]
id = "hose"
of = "stock"
length = "6 m"
[[item]]
id = "valve"
kind = "solenoid valve"
rated = "10 bar"
ports = { in = '10 mm barb', out = '1/2 NPT male' }
[[item]]
id = "out"
kind = "drain"
[[run]]
name = "flush"
path = ["house", "hose", "valve", "out"]
`,
	mend:  []string{`bore = "10 mm"       # narrow: the water runs fast`, `bore = "19 mm"       # wide: it runs slowly`, `ports = { in = '10 mm barb', out = '1/2 NPT male' }`, `ports = { in = '19 mm barb', out = '1/2 NPT male' }`},
	harm:  finding.Bursts,
	check: findSurge,
}

func findSurge(s *bom.System) []finding.Finding {
	var out []finding.Finding
	for _, x := range s.Running.Surges() {
		hold := x.Segment.Allowable
		if !hold.Known || x.Peak() <= hold.Rating.Pressure+pressure.Slack {
			continue
		}
		out = append(out, finding.Finding{
			Severity: finding.Caution, Subject: ofUnit(x.Valve), Place: at(x.Valve.Mark),
			Reason: fmt.Sprintf("%s stops %s at once, %.1f m/s in a bore of %s, over %s of hose: that adds up to %s to the %s there, and %s holds %s (an estimate).",
				x.Valve.Name, x.Flow, x.Speed, x.Bore, x.Length, bars(x.Rise), bars(x.Stands), hold.What, bars(hold.Rating.Pressure)),
			Remedy: fmt.Sprintf("Take wider or shorter hose, or a valve that shuts slowly (a flush timer valve, or one that is turned by hand)%s.", surgeProof(s, x)),
		})
	}
	return out
}

// surgeProof names the parts of the line that the surge overloads, and what they are to be
// bought for, those among them that are too weak without it too, so that they are bought once;
// nothing where that is too much to buy, or not to be had.
func surgeProof(s *bom.System, x running.Surge) string {
	all := holding(s, x.Segment, func(rating.Allowable, quantity.Pressure) bool { return true })
	weak := below(all, x.Peak())
	if !worthBuying(weak, x.Peak()) {
		return ""
	}
	return fmt.Sprintf(", or buy %s %s", whats(weak), forBar(s, weak, x.Peak()))
}
