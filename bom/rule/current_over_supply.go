package rule

import (
	"fmt"

	"handtight/bom"
	"handtight/bom/duty"
	"handtight/bom/finding"
)

var currentOverSupply = Rule{
	Slug:  "current-over-supply",
	Title: "The pump draws more than its supply gives.",
	Why: `A breaker trips over its figure, and a load that lasts hours should stay below 80 % of it (US
electrical code 210.20); an alternator gives no more than its plate; a battery gives a fifth
of its ampere hours for long (common practice).`,
	Wrong: `
[power]
battery = "600 Ah"
usable = "50 %"
solar = "900 W"
sun = "5 h"
cable = "50 mm2"
cable_length = "4 m"
breaker = "40 A"
`,
	mend:  []string{`breaker = "40 A"`, `breaker = "80 A"`},
	block: "power",
	plant: "watered",
	harm:  finding.Fire,
	flows: findCurrentOverSupply,
}

func findCurrentOverSupply(_ *bom.System, r *duty.Result) []finding.Finding {
	var out []finding.Finding
	ps := r.Build.Power
	if ps == nil {
		return nil
	}
	for _, m := range r.Plants {
		p := m.Power
		if p == nil || !p.Battery || !(p.All.Hi > 0) {
			continue
		}
		what := ""
		switch {
		case ps.Breaker != nil && float64(p.Middle()) > float64(*ps.Breaker):
			what = fmt.Sprintf("a breaker of %s", ps.Breaker)
		case ps.Alternator != nil && float64(p.Middle()) > float64(*ps.Alternator) && ps.Battery == nil:
			what = fmt.Sprintf("an alternator of %s", ps.Alternator)
		case ps.Battery != nil && float64(p.Middle()) > float64(*ps.Battery)/5:
			what = fmt.Sprintf("a battery of %s, which gives a fifth of it, %.0f A, for long", ps.Battery, float64(*ps.Battery)/5)
		default:
			continue
		}
		f := onPump(m, finding.Caution)
		f.Reason = fmt.Sprintf("it draws %.0f A (%.0f to %.0f) at %s, from %s.", float64(p.Middle()), float64(p.All.Lo), float64(p.All.Hi), p.Volts, what)
		bank := ""
		if ps.Battery != nil && float64(p.Middle()) > float64(*ps.Battery)/5 {
			bank = fmt.Sprintf(" and a battery of %s Ah", upTo(float64(p.Middle())*5, 10))
		}
		f.Remedy = fmt.Sprintf("Have the supply made for %s A with cable to suit by the local code%s, or take a smaller pump, a higher voltage or an engine.", upTo(float64(p.All.Hi)/0.8, 5), bank)
		out = append(out, f)
	}
	return out
}
