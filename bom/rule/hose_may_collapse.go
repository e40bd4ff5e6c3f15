package rule

import (
	"fmt"

	"handtight/bom"
	"handtight/bom/finding"
)

var hoseMayCollapse = Rule{
	Slug:  "hose-may-collapse",
	Title: "A suction hose is not known to stand the vacuum of a shut intake.",
	Why: `With the seacock shut or the strainer full of weed the pump pulls a vacuum. A hose
without a wire helix flattens, and its liner may come loose and stop the water for
good. Ask for the vacuum rating; most delivery hoses have none.`,
	Wrong: `
[[item]]
id = "intake"
kind = "seacock"
rated = "10 bar"
ports = { inboard = '19 mm barb long' }
[[item]]
id = "stock"
kind = "hose stock"
bore = "19 mm"
rated = "6 bar"
[[hose]]
id = "hose"
of = "stock"
length = "1 m"
[[item]]
id = "feed"
kind = "feed pump"
shutoff = "2.5 bar"
rated = "6 bar"
ports = { in = '19 mm barb long', out = '1/2 NPT female' }
[[item]]
id = "out"
kind = "drain"
[[run]]
name = "suction"
path = ["intake", "hose", "feed", "out"]
`,
	Right: `
[[item]]
id = "intake"
kind = "seacock"
rated = "10 bar"
ports = { inboard = '19 mm barb long' }
[[item]]
id = "stock"
kind = "hose stock"
bore = "19 mm"
rated = "6 bar"
vacuum = "0.9 bar"
[[hose]]
id = "hose"
of = "stock"
length = "1 m"
[[item]]
id = "feed"
kind = "feed pump"
shutoff = "2.5 bar"
rated = "6 bar"
ports = { in = '19 mm barb long', out = '1/2 NPT female' }
[[item]]
id = "out"
kind = "drain"
[[run]]
name = "suction"
path = ["intake", "hose", "feed", "out"]
`,
	check: findCollapse,
}

func findCollapse(s *bom.System) []finding.Finding {
	var out []finding.Finding
	for _, u := range s.Units {
		if !u.Item.IsHose() {
			continue
		}
		load := s.PortLoad(u.First)
		if load.Low >= 0 {
			continue
		}
		rated, known := bom.StandsVacuum(u.Item)
		f := finding.Finding{Severity: finding.Caution}
		switch {
		case !known:
			f.Reason = fmt.Sprintf("%s sees a vacuum (%s), and nothing says that it stands one.", u.Name, load.ByLow.Cause)
			f.Remedy = "Take suction hose with a wire helix and a vacuum rating, and write `vacuum`."
		case rated < bom.PumpPulls:
			f.Severity = finding.Stop
			f.Reason = fmt.Sprintf("%s stands a vacuum of %s and may see a whole one (%s): a suction hose should stand %s.", u.Name, bars(rated), load.ByLow.Cause, bars(bom.PumpPulls))
			f.Remedy = fmt.Sprintf("Take a hose rated for a vacuum of %s or more.", bars(bom.PumpPulls))
		default:
			continue
		}
		if load.ByLow.Failure {
			f.Severity = finding.Caution
		}
		f.At, f.Place = u.Name, at(u.Mark)
		out = append(out, f)
	}
	return out
}
