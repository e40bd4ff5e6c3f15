package rule

import (
	"fmt"

	"handtight/bom"
	"handtight/bom/finding"
	"handtight/catalog"
)

var throttleIsQuickValve = Rule{
	Slug:  "throttle-is-quick-valve",
	Title: "The throttle is a valve that a quarter of a turn shuts.",
	Why: `The pressure is raised on the throttle over a minute or more, and held there. A ball valve
goes from nothing to a dead stop in a quarter of a turn: the pump's pressure jumps by hundreds of
bar in a second, before the relief lifts, and its seat is cut by the jet. A needle valve or a
pressure regulator is made for it (common practice).`,
	Wrong: `
[[item]]
id = "throttle"
kind = "brine throttle"
about = "ball valve with lever"
material = "super duplex"
rated = "200 bar"
ports = { in = '3/8 NPT male swivel', out = '3/8 NPT female' }
`,
	mend:  []string{`about = "ball valve with lever"`, `about = "needle valve"`},
	block: "throttle",
	plant: "flushed",
	harm:  finding.Bursts,
	check: findQuickThrottle,
}

func findQuickThrottle(s *bom.System) []finding.Finding {
	var out []finding.Finding
	for _, u := range ofKind(s, catalog.Throttles) {
		if !says(u.Item, "ball valve", "ball-valve", "ballvalve", "quarter turn", "quarter-turn", "1/4 turn", "butterfly", "plug valve", "plug cock", "kugelhahn", "robinet à bille", "válvula de bola", "valvola a sfera", "kogelkraan") {
			continue
		}
		out = append(out, finding.Finding{
			Severity: finding.Caution, Subject: ofUnit(u), Place: at(u.Mark),
			Reason: fmt.Sprintf("%s is a valve that a quarter of a turn shuts: the pressure jumps with it.", u.Name),
			Remedy: "Take a needle valve, or a regulator that is made to hold pressure.",
		})
	}
	return out
}
