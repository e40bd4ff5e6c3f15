package rule

import (
	"fmt"

	"handtight/bom"
	"handtight/bom/finding"
	"handtight/threads"
)

var oneClampBelowWaterline = Rule{
	Slug:  "one-clamp-below-waterline",
	Title: "A tail below the waterline is not said to be long enough for two clamps.",
	Why: `Below the waterline a hose that comes off sinks the boat. Two clamps, screws on
opposite sides, are good practice where the tail is long enough to carry both; a
clamp beyond the end of a short tail pulls the hose off. Write "long" on the tail's
end when it is.`,
	Wrong: `
[[item]]
id = "tail"
kind = "hose tail"
ports = { a = '1/2 NPT male', b = '19 mm barb' }
[[item]]
id = "stock"
kind = "hose stock"
bore = "19 mm"
rated = "6 bar"
[[hose]]
id = "hose"
of = "stock"
length = "1 m"
[[run]]
name = "line"
below_waterline = true
path = ["tail", "hose"]
`,
	mend:  []string{`ports = { a = '1/2 NPT male', b = '19 mm barb' }`, `ports = { a = '1/2 NPT male', b = '19 mm barb long' }`},
	harm:  finding.Floods,
	check: findShortTails,
}

func findShortTails(s *bom.System) []finding.Finding {
	var out []finding.Finding
	for _, j := range s.Graph.Joints {
		if !j.Run.Below {
			continue
		}
		for _, p := range []int{j.A, j.B} {
			n := &s.Graph.Ports[p]
			if e := n.Port.End.Candidates; len(e) == 0 || e[0].Family != threads.Barb || e[0].Long {
				continue
			}
			out = append(out, finding.Finding{
				Severity: finding.Caution, NotKnown: true, Cause: "clamp", Subject: ofJoint(s, j), Place: at(j.Mark),
				Reason: fmt.Sprintf("%s is clamped below the waterline, and its tail is not said to be long enough for two clamps.", n.Name()),
				Remedy: "Take a long tail and two clamps; where the tail is long already, write `long` on its end.",
			})
		}
	}
	return out
}
