package rule

import (
	"fmt"

	"handtight/bom"
	"handtight/bom/finding"
)

var flushMissesMembrane = Rule{
	Slug:  "flush-misses-membrane",
	Title: "The fresh-water flush does not reach a membrane.",
	Why: `Sea water that stands on a membrane grows life, and stands in the threads of every fitting
around it. The flush is there to rinse both; a one-way valve the wrong way round in its line, or
a joint behind the vessel, leaves them as they are.`,
	Wrong: flushedVessel + `
path = ["house", "valve", "check.out>in", "tee.branch"]
`,
	Right: flushedVessel + `
path = ["house", "valve", "check", "tee.branch"]
`,
	check: findUnflushed,
}

// flushedVessel is a plant with a vessel, up to the path of its flush.
const flushedVessel = `
[duty]
pressure = "55 bar"
[[item]]
id = "sea"
kind = "sea"
[[item]]
id = "tee"
kind = "tee"
rated = "16 bar"
ports = { a = '1/2 NPT male', b = '1/2 NPT male', branch = '1/2 NPT female' }
[[item]]
id = "pump"
kind = "plunger pump"
flow = "8 L/min"
rated = "100 bar"
ports = { in = '1/2 NPT female', out = '1/2 NPT female' }
[[item]]
id = "vessel"
kind = "pressure vessel"
rated = "83 bar"
ports = { feed = '1/2 NPT male', brine = '1/2 NPT male', product = '1/4 NPT female' }
[[item]]
id = "throttle"
kind = "brine throttle"
rated = "100 bar"
ports = { in = '1/2 NPT female', out = '3/8 NPT female' }
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
ports = { in = '1/2 NPT male', out = '1/2 NPT female' }
[[item]]
id = "check"
kind = "check valve"
rated = "10 bar"
ports = { in = '1/2 NPT male', out = '1/2 NPT male' }
[[run]]
name = "water"
path = ["sea", "tee", "pump", "vessel.feed>brine", "throttle", "out"]
[[run]]
name = "flush"`

func findUnflushed(s *bom.System) []finding.Finding {
	var out []finding.Finding
	for _, u := range s.Unflushed() {
		out = append(out, finding.Finding{
			Severity: finding.Caution, At: u.Name, Place: at(u.Mark),
			Reason: fmt.Sprintf("in the flush no fresh water reaches %s.", u.Name),
			Remedy: "Lead the flush in before the high-pressure pump, and look at the arrows on the one-way valves in its line.",
		})
	}
	return out
}
