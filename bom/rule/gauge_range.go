package rule

import (
	"fmt"
	"math"

	"handtight/bom"
	"handtight/bom/duty"
	"handtight/bom/finding"
	"handtight/bom/graph"
	"handtight/catalog"
	"handtight/pressure"
	"handtight/pressure/process/span"
	"handtight/pressure/quantity"
)

var gaugeRange = Rule{
	Slug:  "gauge-range",
	Title: "A gauge reads past its end, or in the first quarter of its dial.",
	Why: `A gauge is read in the middle of its dial: the duty between a quarter and three quarters
of full scale, and full scale above the worst that it can see (common practice; EN 837-2 names
three quarters of it for a steady pressure, from memory). What it reads in normal running is
reckoned with the flows: behind filters and hoses less than the pump's shut-off. One that has been past its end reads wrong from then on.`,
	Wrong: `
[[item]]
id = "gauge"
kind = "gauge"
scale = "60 bar"
rated = "100 bar"
ports = { in = '1/4 NPT male' }
`,
	mend:  []string{`scale = "60 bar"`, `scale = "100 bar"`},
	block: "gauge",
	harm:  finding.Spoils,
	flows: findGauge,
}

func findGauge(s *bom.System, r *duty.Result) []finding.Finding {
	var out []finding.Finding
	lacking := undriven(s)
	for _, u := range s.Graph.Units {
		if u.Item.Scale == nil || !isGauge(u) || weakGauge(s, u) {
			continue
		}
		load, full := s.States.PortLoad(u.First), *u.Item.Scale
		stands := standsAt(s, r, u)
		f := finding.Finding{Severity: finding.Caution}
		switch {
		case load.Act > full+pressure.Slack:
			f.Reason = fmt.Sprintf("%s reads to %s and sees %s: %s.", u.Name, u.Item.Scale, bars(load.Act), load.ByAct.Cause)
			f.Remedy = fmt.Sprintf("Take one that reads to %s or more.", bars(gaugeScale(load.Act)))
		case load.Fail > full+pressure.Slack:
			f.Severity = finding.Note
			f.Reason = fmt.Sprintf("%s reads to %s and would see %s: %s.", u.Name, u.Item.Scale, bars(load.Fail), load.ByFail.Cause)
			f.Remedy = fmt.Sprintf("Take one that reads to %s or more.", bars(gaugeScale(load.Fail)))
		case lacking[s.Segments.SegmentOf(u.First)] > 0: // it reads low because the pump is not there
			continue
		case stands.Middle() > 0.75*full, stands.Hi > 0 && stands.Middle() < 0.25*full && full > dial(load.Act):
			f.Severity = finding.Note
			at := bars(stands.Lo)
			if bars(stands.Hi) != at {
				at = fmt.Sprintf("%.3g to %s", max(stands.Lo, 0).Bar(), bars(stands.Hi))
			}
			f.Reason = fmt.Sprintf("%s reads to %s, and normal running is at %s: outside the middle half of the dial.", u.Name, u.Item.Scale, at)
			f.Remedy = fmt.Sprintf("Take one that reads to about %s.", bars(dial(max(load.Act, stands.Middle()/0.75))))
		default:
			continue
		}
		f.Subject, f.Place = ofUnit(u), at(u.Mark)
		out = append(out, f)
	}
	return out
}

// dials are the full scales in bar that gauges are made in (EN 837-1, from memory).
var dials = []quantity.Pressure{0.6, 1, 1.6, 2.5, 4, 6, 10, 16, 25, 40, 60, 100, 160, 250, 400, 600, 1000}

// dial is the least full scale that reads a pressure.
func dial(p quantity.Pressure) quantity.Pressure {
	for _, d := range dials {
		if !pressure.Above(p, d*quantity.Bar) {
			return d * quantity.Bar
		}
	}
	return p
}

// standsAt is what a gauge reads in normal running: by the flows where they are reckoned,
// with friction and the hand on the throttle, else what its segment stands at.
func standsAt(s *bom.System, r *duty.Result, u *graph.Unit) span.Span[quantity.Pressure] {
	for _, m := range r.Plants {
		if p, ok := m.Stands(u.First, s.Segments.SegmentOf(u.First).High()); ok {
			return p
		}
	}
	return span.Exactly(s.States.PortLoad(u.First).Normal)
}

func isGauge(u *graph.Unit) bool { return u.Item.Kind.Is(catalog.Gauge) }

// weakGauge reports whether the gauge holds less than it sees: another must be bought, and
// which one is said there.
func weakGauge(s *bom.System, u *graph.Unit) bool {
	hold := s.Ratings.Port(u.First)
	return overloaded(hold, s.States.PortLoad(u.First)) != nil && !reliefSaysIt(s, u.First, hold)
}

// gaugeScale is the full scale that suits a worst pressure: in tens, and a quarter of
// the dial to spare.
func gaugeScale(worst quantity.Pressure) quantity.Pressure {
	return quantity.Bar.Times(math.Ceil(worst.Bar()/0.75/10) * 10)
}
