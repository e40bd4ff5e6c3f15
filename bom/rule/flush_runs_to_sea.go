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
	Wrong: fmt.Sprintf(flushedPlant, "centrifugal"),
	Right: fmt.Sprintf(flushedPlant, "diaphragm"),
	check: findFlushBack,
}

// flushedPlant is a plant with a feed pump of some type, and a flush.
const flushedPlant = `
[duty]
pressure = "55 bar"
[[item]]
id = "intake"
kind = "seacock"
rated = "16 bar"
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
type = "%s"
shutoff = "2 bar"
rated = "6 bar"
ports = { in = '19 mm barb long', out = '1/2 NPT male' }
[[item]]
id = "tee"
kind = "tee"
rated = "16 bar"
ports = { a = '1/2 NPT female', b = '1/2 NPT male', branch = '1/2 NPT female' }
[[item]]
id = "pump"
kind = "plunger pump"
flow = "8 L/min"
rated = "100 bar"
ports = { in = '1/2 NPT female', out = '3/8 NPT female' }
[[item]]
id = "throttle"
kind = "brine throttle"
rated = "100 bar"
ports = { in = '3/8 NPT male', out = '3/8 NPT female' }
[[item]]
id = "out"
kind = "overboard"
[[item]]
id = "house"
kind = "house supply"
pressure = "3 bar"
ports = { out = '1/2 NPT female' }
[[item]]
id = "valve"
kind = "solenoid valve"
rated = "10 bar"
ports = { in = '1/2 NPT male', out = '1/2 NPT male' }
[[run]]
name = "raw water"
path = ["intake", "hose", "feed", "tee", "pump", "throttle", "out"]
[[run]]
name = "flush"
path = ["house", "valve", "tee.branch"]
`

// findFlushBack speaks once of each intake that the flush runs out by.
func findFlushBack(s *bom.System) []finding.Finding {
	var out []finding.Finding
	for _, lost := range s.LostFlushes() {
		f := finding.Finding{
			Severity: finding.Caution, At: lost.Intake.Name, Place: at(lost.Intake.Mark),
			Reason: fmt.Sprintf("in the flush nothing holds the house water off %s: it runs back to the sea there.", lost.Intake.Name),
			Remedy: "Put a one-way valve between the intake and the flush tee.",
		}
		if p := lost.Pump; p != nil {
			f.At, f.Place = p.Name, at(p.Mark)
			f.Reason = fmt.Sprintf("in the flush %s stands still and is open: the house water runs back through it to the sea, by %s.", p.Name, lost.Intake.Name)
			f.Remedy = fmt.Sprintf("Put a one-way valve between %s and the flush tee, or take a feed pump whose own valves hold (diaphragm).", p.Name)
		}
		out = append(out, f)
	}
	return out
}
