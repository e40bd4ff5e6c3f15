package rule

import (
	"fmt"

	"handtight/bom"
	"handtight/bom/finding"
)

var accumulatorGas = Rule{
	Slug:  "accumulator-gas",
	Title: "An accumulator is filled with a gas that may burn it.",
	Why: `Accumulators are filled with dry nitrogen (common practice, and what makers' sheets ask for). Oxygen
under pressure sets oil, grease and rubber alight; compressed air does so less, and brings water
that corrodes it within.`,
	Wrong: `
[[item]]
id = "accumulator"
kind = "accumulator"
material = "super duplex"
precharge = "30 bar"
gas = "oxygen"
rated = "200 bar"
ports = { in = '3/8 NPT male' }
`,
	mend:  []string{`gas = "oxygen"`, `gas = "nitrogen"`},
	block: "accumulator",
	plant: "damped",
	harm:  finding.Fire,
	check: findGas,
}

func findGas(s *bom.System) []finding.Finding {
	var out []finding.Finding
	for _, u := range accumulators(s) {
		f := finding.Finding{Severity: finding.Caution, Subject: ofUnit(u), Place: at(u.Mark)}
		switch {
		case u.Item.Process.Gas == "oxygen":
			f.Severity = finding.Stop
			f.Reason = fmt.Sprintf("%s is filled with oxygen: with any grease it burns, and under pressure it explodes.", u.Name)
		case u.Item.Process.Gas == "air" && s.Segments.SegmentOf(u.First).High():
			f.Reason = fmt.Sprintf("%s is filled with air, at high pressure.", u.Name)
		default:
			continue
		}
		f.Remedy = "Have it emptied and filled with dry nitrogen by who fills accumulators, and write gas = \"nitrogen\"."
		out = append(out, f)
	}
	return out
}
