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
type = "centrifugal"
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
`,
	Right: `
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
type = "diaphragm"
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
`,
	check: findFlushBack,
}

// findFlushBack looks at each plunger pump's inlet in the flush: where water finds a
// way out there at no pressure, it does not go through the pump.
func findFlushBack(s *bom.System) []finding.Finding {
	var out []finding.Finding
	for _, st := range s.States {
		if st.Name != "flush" {
			continue
		}
		for _, p := range pumps(s) {
			in := p.First + p.Item.PortIndex("in")
			way, ok := s.WayOut(st, in)
			high, _, _ := s.Pressure(st, in)
			if !ok || way > 0 || high <= 0 {
				continue
			}
			out = append(out, finding.Finding{
				Severity: finding.Caution, At: p.Name, Place: at(p.Mark),
				Reason: fmt.Sprintf("in the flush nothing holds the house water before %s: it runs back to the sea.", p.Name),
				Remedy: "Put a one-way valve between the feed pump and the flush tee, or a feed pump whose own valves hold (diaphragm).",
			})
		}
	}
	return out
}
