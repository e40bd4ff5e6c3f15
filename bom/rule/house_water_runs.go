package rule

import (
	"handtight/bom"
	"handtight/bom/finding"
)

var houseWaterRuns = Rule{
	Slug:  "house-water-runs",
	Title: "House water runs into the plant all the time.",
	Why: `Between the drinking water and the plant stands a valve that is opened for the flush and shut
otherwise. Without one, or with one that stands open, the pump takes its water from the tank
as well as from the sea, and the tank empties while nobody looks.`,
	Wrong: `
[[run]]
name = "flush"
path = ["house", "carbon", "check", "tee.branch"]
`,
	mend:  []string{`path = ["house", "carbon", "check", "tee.branch"]`, `path = ["house", "carbon", "valve", "check", "tee.branch"]`},
	block: "flush",
	plant: "flushed",
	harm:  finding.Spoils,
	check: findRunaway,
}

func findRunaway(s *bom.System) []finding.Finding {
	return ofEach(s.Running.Runaways(), finding.Caution,
		"nothing shuts %s off in normal running: its water runs out into the plant.",
		"Put a flush valve (a solenoid, a timer, or a shut-off valve that says `normal = \"flush\"`) into its line.")
}
