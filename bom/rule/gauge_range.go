package rule

import (
	"fmt"
	"math"

	"handtight/bom"
	"handtight/bom/finding"
	"handtight/bom/graph"
	"handtight/catalog"
	"handtight/pressure"
)

var gaugeRange = Rule{
	Slug:  "gauge-range",
	Title: "A gauge reads past its end, or in the first quarter of its dial.",
	Why: `A gauge lives in the middle of its dial: the duty between a quarter and three quarters
of full scale, and full scale above the worst that it can see (common practice). One
that has been past its end reads wrong from then on.`,
	Wrong: `
[[item]]
id = "gauge"
kind = "gauge"
scale = "60 bar"
rated = "100 bar"
ports = { in = '1/4 NPT male' }
`,
	Right: `
[[item]]
id = "gauge"
kind = "gauge"
scale = "100 bar"
rated = "100 bar"
ports = { in = '1/4 NPT male' }
`,
	block: "gauge",
	harm:  finding.Spoils,
	check: findGauge,
}

func findGauge(s *bom.System) []finding.Finding {
	var out []finding.Finding
	for _, u := range s.Graph.Units {
		if u.Item.Scale == nil || !isGauge(u) || weakGauge(s, u) {
			continue
		}
		load, full := s.States.PortLoad(u.First), u.Item.Scale.Bar()
		f := finding.Finding{Severity: finding.Caution}
		switch {
		case load.Act > full+pressure.Slack:
			f.Reason = fmt.Sprintf("%s reads to %s and sees %s: %s.", u.Name, u.Item.Scale, bars(load.Act), load.ByAct.Cause)
			f.Remedy = fmt.Sprintf("Take one that reads to %s or more.", bars(gaugeScale(load.Act)))
		case load.Fail > full+pressure.Slack:
			f.Severity = finding.Note
			f.Reason = fmt.Sprintf("%s reads to %s and would see %s: %s.", u.Name, u.Item.Scale, bars(load.Fail), load.ByFail.Cause)
			f.Remedy = fmt.Sprintf("Take one that reads to %s or more.", bars(gaugeScale(load.Fail)))
		case load.Normal > 0.75*full, load.Normal > 0 && load.Normal < 0.25*full:
			f.Severity = finding.Note
			f.Reason = fmt.Sprintf("%s reads to %s, and normal running is at %s: outside the middle half of the dial.", u.Name, u.Item.Scale, bars(load.Normal))
			f.Remedy = fmt.Sprintf("Take one that reads to about %s.", bars(math.Ceil(load.Normal*2)))
		default:
			continue
		}
		f.Subject, f.Place = ofUnit(u), at(u.Mark)
		out = append(out, f)
	}
	return out
}

func isGauge(u *graph.Unit) bool { return u.Item.Kind.Is(catalog.Gauge) }

// weakGauge reports whether the gauge holds less than it sees: another must be bought, and
// which one is said there.
func weakGauge(s *bom.System, u *graph.Unit) bool {
	hold := s.Ratings.PortHold(u.First)
	return overloaded(hold, s.States.PortLoad(u.First)) != nil && !reliefSaysIt(s, u.First, hold)
}

// gaugeScale is the full scale in bar that suits a worst pressure: in tens, and a quarter of
// the dial to spare.
func gaugeScale(worst float64) float64 { return math.Ceil(worst/0.75/10) * 10 }
