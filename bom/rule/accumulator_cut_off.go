package rule

import (
	"fmt"

	"handtight/bom"
	"handtight/bom/finding"
	"handtight/bom/graph"
)

var accumulatorCutOff = Rule{
	Slug:  "accumulator-cut-off",
	Title: "A valve stands between an accumulator and the relief that guards it.",
	Why: `What is stored in an accumulator grows with its heat and with every stroke; a valve that is shut
between it and the relief leaves it without either. A relief stands on the accumulator's side of
every valve (common practice; the pressure equipment rules of many countries ask for one).`,
	Wrong: `
[[item]]
id = "stop"
kind = "shut-off valve"
material = "super duplex"
rated = "200 bar"
ports = { in = '3/8 NPT male', out = '3/8 NPT female' }
[[run]]
name = "damper"
path = ["damper-tee.branch", "stop", "accumulator"]
`,
	right: `
[[run]]
name = "damper"
path = ["damper-tee.branch", "accumulator"]
`,
	block: "damper",
	plant: "damped",
	harm:  finding.Bursts,
	check: findAccumulatorCutOff,
}

func findAccumulatorCutOff(s *bom.System) []finding.Finding {
	var out []finding.Finding
	for _, u := range accumulators(s) {
		reliefs := s.Circuit.ReliefsAround(u.First)
		if len(reliefs) == 0 {
			continue // that one is missing is said elsewhere
		}
		near, cuts := false, []*graph.Unit(nil)
		for _, v := range reliefs {
			in := v.First + v.Item.PortIndex("in")
			near = near || s.Circuit.Reaches(u.First, in, false)
			if s.Circuit.Reaches(u.First, in, true) {
				cuts = s.Circuit.Cuts(u.First, in)
			}
		}
		if near || len(cuts) == 0 {
			continue
		}
		out = append(out, finding.Finding{
			Severity: finding.Caution, Subject: ofUnit(u), Place: at(u.Mark),
			Reason: fmt.Sprintf("%s, once shut, keeps %s from every relief valve.", names(cuts), u.Name),
			Remedy: "Put the valve elsewhere, or a relief valve on the accumulator's side of it.",
		})
	}
	return out
}
