package rule

import (
	"fmt"
	"math"
	"slices"

	"handtight/bom"
	"handtight/bom/duty"
	"handtight/bom/finding"
	"handtight/bom/graph"
	"handtight/pressure/process/span"
	"handtight/pressure/quantity"
)

// CheckDuty runs the rules that rest on a flow alone, by a reckoning that is at hand.
func CheckDuty(s *bom.System, r *duty.Result) []finding.Finding {
	return finish(s, withoutRepeats(flowing(s, r)))
}

func flowing(s *bom.System, r *duty.Result) []finding.Finding {
	return ran(func(rule *Rule) []finding.Finding {
		if rule.flows == nil {
			return nil
		}
		return rule.flows(s, r)
	})
}

// hides says which finding of a plant makes which others needless: they come of it.
var hides = map[string][]string{
	"feed-too-small":           {"brine-flow-low", "recovery-too-high"},
	"power-impossible":         {"motor-too-weak", "cable-too-thin", "current-over-supply", "supply-too-weak"},
	"current-over-supply":      {"supply-too-weak"},
	"pressure-below-osmotic":   {"product-below-wanted", "pressure-far-from-good", "water-too-salty", "meter-range"},
	"recovery-too-high":        {"product-more-than-pump"},
	"energy-recovery-mismatch": {"product-below-wanted"},
}

// withoutRepeats leaves one report a cause: of findings on one plant, or on one subject.
func withoutRepeats(list []finding.Finding) []finding.Finding {
	speaks := map[string]bool{}
	for i := range list {
		f := &list[i]
		for _, slug := range hides[f.Slug] {
			speaks[slug+" "+f.Cause], speaks[slug+" at "+f.Subject.String()] = true, true
		}
	}
	return slices.DeleteFunc(list, func(f finding.Finding) bool {
		return f.Cause != "" && speaks[f.Slug+" "+f.Cause] || speaks[f.Slug+" at "+f.Subject.String()]
	})
}

// onPlant is a finding about a plant's first vessel.
func onPlant(m *duty.Making, s finding.Severity) finding.Finding {
	f := finding.Finding{Severity: s, Cause: m.Name}
	if len(m.Rows) > 0 {
		u := m.Rows[0][0].Unit
		f.Subject, f.Place = ofUnit(u), at(u.Mark)
		return f
	}
	return onPump(m, s)
}

// onPump is a finding about a plant's pump.
func onPump(m *duty.Making, s finding.Severity) finding.Finding {
	f := finding.Finding{Severity: s, Cause: m.Name}
	list := append(append(append([]*graph.Unit(nil), m.Pumps...), m.FeedPumps...), m.Recovery)
	if m.Recovery != nil {
		list = []*graph.Unit{m.Recovery}
	}
	if u := list[0]; u != nil {
		f.Subject, f.Place = ofUnit(u), at(u.Mark)
	}
	return f
}

// wanted is the product that the duty names, else half of what new elements would make at
// the class's test: enough to name a pressure by.
func wanted(r *duty.Result, m *duty.Making) quantity.Flow {
	if w := r.Build.Duty.Product; w != nil {
		return *w
	}
	return m.TestProduct() / 2
}

// upTo is a figure rounded up to a step, for a remedy that is enough when it is followed.
func upTo(v, step float64) string {
	return quantity.Exact(math.Ceil(v/step-1e-9) * step)
}

func litresAnHour(q span.Span[quantity.Flow]) string {
	return fmt.Sprintf("%.1f to %.1f L/h", q.Lo.LitresPerHour(), q.Hi.LitresPerHour())
}

func litresAMinute(q span.Span[quantity.Flow]) string {
	if q.Known() {
		return fmt.Sprintf("%.1f L/min", q.Lo.LitresPerMinute())
	}
	return fmt.Sprintf("%.1f to %.1f L/min", q.Lo.LitresPerMinute(), q.Hi.LitresPerMinute())
}

// severityOf is how bad it is to be beyond a limit: a limit from memory raises a note, and a
// caution where even its generous end fails over all that can be; one that is seen a caution; and
// the sheet's own a stop where all fails.
func severityOf(l duty.Limit) finding.Severity {
	switch {
	case l.Memory && !l.Fails():
		return finding.Note
	case !l.Memory && l.Fails():
		return finding.Stop
	}
	return finding.Caution
}
