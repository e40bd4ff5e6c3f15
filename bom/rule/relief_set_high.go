package rule

import (
	"fmt"
	"math"

	"handtight/bom"
	"handtight/bom/finding"
	"handtight/pressure/quantity"
)

var reliefSetHigh = Rule{
	Slug:  "relief-set-high",
	Title: "A relief valve is set above the weakest part that it guards.",
	Why: `A relief protects what holds more than it is set to, and nothing else. The set
pressure lies a tenth below the lowest rating in its line (a judgement: settings drift, and it
rises as it passes water), the duty at least a tenth below it. Above the rating it is a stop,
within the tenth a caution.`,
	Wrong: `
[[item]]
id = "relief"
kind = "relief valve"
set = "300 bar"
flow = "10 L/min"
rated = "400 bar"
ports = { in = '3/8 NPT male', out = '3/8 NPT female' }
`,
	Right: `
[[item]]
id = "relief"
kind = "relief valve"
set = "65 bar"
flow = "10 L/min"
rated = "100 bar"
ports = { in = '3/8 NPT male', out = '3/8 NPT female' }
`,
	block: "relief",
	check: findSetHigh,
}

func findSetHigh(s *bom.System) []finding.Finding {
	var out []finding.Finding
	for _, u := range reliefs(s) {
		g := s.SegmentOf(u.First + u.Item.PortIndex("in"))
		if !g.Hold.Known {
			continue
		}
		if holds := g.Hold.Rating.Pressure.Bar(); u.Item.Set.Bar() <= holds+slack {
			if f, ok := tight(s, u, g); ok {
				out = append(out, f)
			}
			continue
		}
		out = append(out, finding.Finding{
			Severity: finding.Stop, At: u.Name, Place: at(u.Mark),
			Reason: fmt.Sprintf("%s is set at %s, and %s in its line holds %s (%s).", u.Name, u.Item.Set, g.Hold.What, g.Hold.Rating.Pressure, g.Hold.Rating.Text),
			Remedy: lowerSet(s, g),
		})
	}
	return out
}

// tight finds a relief that is set below its weakest part, and by less than a tenth: where
// what it stands at in full flow is above that part, that is found already.
func tight(s *bom.System, u *bom.Unit, g *bom.Segment) (finding.Finding, bool) {
	holds := g.Hold.Rating.Pressure
	worst, _ := g.Load.Worst()
	if *u.Item.Set*reliefMargin <= holds+slack*quantity.Bar || worst > holds.Bar()+slack {
		return finding.Finding{}, false
	}
	return finding.Finding{
		Severity: finding.Caution, At: u.Name, Place: at(u.Mark),
		Reason: fmt.Sprintf("%s is set at %s, and %s in its line holds %s (%s): less than a tenth above it, and settings drift.", u.Name, u.Item.Set, g.Hold.What, holds, g.Hold.Rating.Text),
		Remedy: lowerSet(s, g),
	}, true
}

// lowerSet says how far down the relief may be set; where that leaves no room above
// the duty, the part that is too weak must go first.
func lowerSet(s *bom.System, g *bom.Segment) string {
	holds, what := g.Hold.Rating.Pressure, g.Hold.What
	if duty := s.Build.Duty.Pressure; duty != nil && holds < *duty*reliefMargin*reliefMargin {
		return fmt.Sprintf("Buy %s for more, then set the relief between %s (a tenth above the duty) and the lowest rating in its line.", what, *duty*reliefMargin)
	}
	return fmt.Sprintf("Set it to %s or less (a tenth below %s), or buy that for more.", bars(math.Floor(holds.Bar()/reliefMargin)), what)
}

// reliefs lists the placed relief valves whose set pressure is known.
func reliefs(s *bom.System) []*bom.Unit {
	var out []*bom.Unit
	for _, u := range s.Units {
		if u.Item.Kind.Name == "relief valve" && u.Item.Set != nil {
			out = append(out, u)
		}
	}
	return out
}
