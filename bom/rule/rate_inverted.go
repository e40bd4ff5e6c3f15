package rule

import (
	"fmt"

	"handtight/bom"
	"handtight/bom/finding"
	"handtight/bom/worth"
)

var rateInverted = Rule{
	Slug:  "rate-inverted",
	Title: "A rate of exchange looks written the wrong way round.",
	Why: `A rate says what one of the foreign currency costs in the build's own. Written the other
way round, cheap goods look dear and dear ones cheap by the square of it, and every choice
between shops is wrong. Rates move; that is asked only where the figure is far from
what is usual and its reciprocal is near it (what is usual: from memory).`,
	Wrong: `
[rates]
date = 2026-11-20
TRY = "48.8"
`,
	mend:  []string{`TRY = "48.8"`, `TRY = "0.0205"`},
	harm:  finding.Money,
	check: findInverted,
}

func findInverted(s *bom.System) []finding.Finding {
	var out []finding.Finding
	rates := &s.Build.Rates
	for _, code := range rates.Codes() {
		rate := rates.Of[code].Number()
		if !worth.Inverted(rates.Base, code, rate) {
			continue
		}
		out = append(out, finding.Finding{
			Severity: finding.Note, Subject: finding.Subject{Kind: finding.Build, Build: "rates"}, Place: at(s.Build.RateAt[code]), NotKnown: true,
			Reason: fmt.Sprintf("one %s is to cost %s %s: does one %s not cost %s %s?", code, rate, rates.Base, rates.Base, rate, code),
			Remedy: fmt.Sprintf("Look the rate up again; write under [rates] what one %s costs in %s.", code, rates.Base),
		})
	}
	return out
}
