package rule

import (
	"handtight/bom"
	"handtight/bom/finding"
)

var flushMissesMembrane = Rule{
	Slug:  "flush-misses-membrane",
	Title: "The fresh-water flush does not reach a membrane.",
	Why: `Sea water that stands on a membrane grows life, and stands in the threads of every fitting
around it. The flush is there to rinse both; a one-way valve the wrong way round in its line, or
a joint behind the vessel, leaves them as they are.`,
	Wrong: `
[[run]]
name = "flush"
path = ["house", "carbon", "valve", "check.out>in", "tee.branch"]
`,
	mend:  []string{`path = ["house", "carbon", "valve", "check.out>in", "tee.branch"]`, `path = ["house", "carbon", "valve", "check", "tee.branch"]`},
	block: "flush",
	plant: "flushed",
	harm:  finding.Spoils,
	check: findUnflushed,
}

func findUnflushed(s *bom.System) []finding.Finding {
	return ofEach(s.Running.Unflushed(), finding.Caution,
		"in the flush no fresh water reaches %s.",
		"Lead the flush in before the high-pressure pump, and look at the arrows on the one-way valves in its line.")
}
