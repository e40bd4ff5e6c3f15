package rule

import (
	"handtight/bom"
	"handtight/bom/duty"
	"handtight/bom/finding"
)

// CheckDuty runs the rules that rest on a flow alone, by a reckoning that is at hand.
func CheckDuty(s *bom.System, r *duty.Result) []finding.Finding {
	var out []finding.Finding
	for _, rule := range All() {
		if rule.flows == nil {
			continue
		}
		for _, f := range rule.flows(s, r) {
			f.Slug = rule.Slug
			out = append(out, f)
		}
	}
	out = withoutRepeats(out)
	finding.Sort(out)
	return out
}

// hides says which finding of a plant makes which others needless: they come of it.
var hides = map[string][]string{
	"feed-too-small":           {"brine-flow-low", "recovery-too-high"},
	"power-impossible":         {"motor-too-weak", "cable-too-thin", "current-over-supply", "supply-too-weak"},
	"current-over-supply":      {"supply-too-weak"},
	"pressure-below-osmotic":   {"product-below-wanted", "pressure-far-from-good", "water-too-salty"},
	"recovery-too-high":        {"product-more-than-pump"},
	"energy-recovery-mismatch": {"product-below-wanted"},
}

// withoutRepeats leaves one report a cause: of findings on one subject, or on one plant.
func withoutRepeats(list []finding.Finding) []finding.Finding {
	speaks := map[string]bool{}
	for _, f := range list {
		for _, slug := range hides[f.Slug] {
			speaks[slug+" "+f.Cause] = true
		}
	}
	var out []finding.Finding
	for _, f := range list {
		if !speaks[f.Slug+" "+f.Cause] {
			out = append(out, f)
		}
	}
	return out
}
