package rule

import (
	"fmt"

	"handtight/bom"
	"handtight/bom/finding"
)

var flushRunsToSea = Rule{
	Slug:  "flush-runs-to-sea",
	Title: "In the flush the house water runs back out through the intake.",
	Why: `A centrifugal pump that stands still is an open pipe. Without a one-way valve between it
and the flush tee, the fresh water goes back through the strainer to the sea instead of
through the pump and the membrane, and the tank empties. A diaphragm pump's own valves
hold it.`,
	Wrong: `
[[item]]
id = "feed"
kind = "feed pump"
type = "centrifugal"
material = "super duplex"
flow = "10 L/min"
shutoff = "2 bar"
rated = "6 bar"
ports = { in = '19 mm barb long', out = '1/2 NPT male' }
`,
	mend:  []string{`type = "centrifugal"`, `type = "diaphragm"`},
	block: "feed pump",
	plant: "flushed",
	harm:  finding.Spoils,
	check: findFlushBack,
}

// findFlushBack speaks once of each intake that the flush runs out by.
func findFlushBack(s *bom.System) []finding.Finding {
	var out []finding.Finding
	for _, lost := range s.Running.LostFlushes() {
		f := finding.Finding{
			Severity: finding.Caution, Subject: ofUnit(lost.Intake), Place: at(lost.Intake.Mark),
			Reason: fmt.Sprintf("in the flush nothing holds the house water off %s: it runs back to the sea there.", lost.Intake.Name),
			Remedy: "Put a one-way valve between the intake and the flush tee.",
		}
		if p := lost.Pump; p != nil {
			f.Subject, f.Place = ofUnit(p), at(p.Mark)
			f.Reason = fmt.Sprintf("in the flush %s stands still and is open: the house water runs back through it to the sea, by %s.", p.Name, lost.Intake.Name)
			f.Remedy = fmt.Sprintf("Put a one-way valve between %s and the flush tee, or take a feed pump whose own valves hold (diaphragm).", p.Name)
		}
		out = append(out, f)
	}
	return out
}
