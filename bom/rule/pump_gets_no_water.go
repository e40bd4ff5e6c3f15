package rule

import (
	"fmt"
	"strings"

	"handtight/bom"
	"handtight/bom/finding"
)

var pumpGetsNoWater = Rule{
	Slug:  "pump-gets-no-water",
	Title: "No water reaches a pump in normal running.",
	Why: `A one-way valve the wrong way round, a pump turned about, a valve that is written as shut:
the pump runs dry, which ruins its seals within minutes, and pulls a vacuum on every hose
before it. Look at the arrows on the bodies.`,
	Wrong: `
[[item]]
id = "raw-check"
kind = "check valve"
material = "super duplex"
rated = "16 bar"
ports = { in = '1/2 NPT female', out = '1/2 NPT male' }
[[run]]
name = "raw water"
path = ["intake", "hose/+", "strainer", "hose/+", "filter", "hose/+", "feed", "raw-check.out>in", "tee", "pump"]   # entered by its outlet
`,
	mend:  []string{`path = ["intake", "hose/+", "strainer", "hose/+", "filter", "hose/+", "feed", "raw-check.out>in", "tee", "pump"]   # entered by its outlet`, `path = ["intake", "hose/+", "strainer", "hose/+", "filter", "hose/+", "feed", "raw-check", "tee", "pump"]`},
	block: "raw water",
	plant: "flushed",
	harm:  finding.Spoils,
	check: findDry,
}

// findDry speaks once of the pumps of one part of the build: one thing is wrong before, or in,
// the first of them.
func findDry(s *bom.System) []finding.Finding {
	var out []finding.Finding
	for _, dry := range s.Running.Waterless() {
		var g members
		for _, p := range dry {
			g.unit(p)
		}
		blocks := s.Running.BlocksBefore(dry[0])
		f := finding.Finding{
			Severity: finding.Stop,
			Reason:   fmt.Sprintf("in normal running no water reaches %s%s.", names(dry), because(blocks)),
			Remedy:   fmt.Sprintf("Look along the line up to %s: which one-way valve points back, which pump is turned about, which valve says `normal = \"shut\"`, which selector stands at its second way?", dry[0].Name),
		}
		if len(blocks) > 0 {
			f.Remedy = putRight
		}
		g.at(&f)
		out = append(out, f)
	}
	return out
}

// putRight is what to do about what is known to be in the way.
const putRight = "Turn about what stands the wrong way round (the arrow on its body points where the water goes), and open what is shut."

// because says what is in the way, where that is known.
func because(blocks []string) string {
	if len(blocks) == 0 {
		return ""
	}
	return ": " + strings.Join(blocks, "; ")
}
