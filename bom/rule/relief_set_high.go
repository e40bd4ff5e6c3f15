package rule

import (
	"fmt"
	"math"
	"slices"

	"handtight/bom"
	"handtight/bom/circuit"
	"handtight/bom/finding"
	"handtight/bom/graph"
	"handtight/bom/rating"
	"handtight/bom/segment"
	"handtight/catalog"
	"handtight/pressure"
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
	mend:  []string{`set = "300 bar"`, `set = "65 bar"`, `rated = "400 bar"`, `rated = "100 bar"`},
	block: "relief",
	harm:  finding.Bursts,
	check: findSetHigh,
}

// findSetHigh compares each relief with the weakest of the parts that it guards. What is too
// weak for normal running already is no fault of the relief, and a line on which nothing
// pushes needs none.
func findSetHigh(s *bom.System) []finding.Finding {
	var out []finding.Finding
	lacking := undriven(s)
	for _, u := range reliefs(s) {
		g := s.Segments.SegmentOf(u.First + u.Item.PortIndex("in"))
		parts := guarded(s, g)
		worst, _ := g.Load.Worst()
		if low := lacking[g]; low > 0 { // parts that the missing pump would stand before
			parts = slices.DeleteFunc(parts, func(h rating.Allowable) bool { return h.Rating.Pressure < low })
		}
		if len(parts) == 0 || worst <= 0 {
			continue
		}
		weakest, set := parts[0], *u.Item.Set
		holds := weakest.Rating.Pressure
		severity, end := finding.Stop, "."
		switch {
		case set > holds+pressure.Slack:
		case set*reliefMargin > holds+pressure.Slack && worst <= holds+pressure.Slack: // a part that full flow overloads is found already
			severity, end = finding.Caution, ": less than a tenth above it, and settings drift."
		default:
			continue
		}
		out = append(out, finding.Finding{
			Severity: severity, Subject: ofUnit(u), Place: at(u.Mark),
			Reason: fmt.Sprintf("%s is set at %s, and %s in its line holds %s (%s)", u.Name, u.Item.Set, weakest.What, weakest.Rating.Pressure, weakest.Rating.Text) + end,
			Remedy: lowerSet(s, u, g, parts),
		})
	}
	return out
}

// undriven is the duty of each segment in which no pump gives it, so that the whole line is one down to the
// sea: [membraneWithoutPressure] says it.
func undriven(s *bom.System) map[*segment.Segment]quantity.Pressure {
	out := map[*segment.Segment]quantity.Pressure{}
	for _, x := range s.Running.Unpressed() {
		if feed, ok := port(x.Vessel, "feed"); ok && !x.Driven {
			out[s.Segments.SegmentOf(feed)] = *s.Build.Duty.Pressure
		}
	}
	return out
}

// lowerSet says how far down the relief may be set, or what to buy so that it may stay; a
// part that holds too little for any setting must go.
func lowerSet(s *bom.System, relief *graph.Unit, g *segment.Segment, parts []rating.Allowable) string {
	need := reliefNeeds(relief)
	if to, ok := lowered(s, relief, g, parts[0]); ok {
		weak := below(parts, need)
		if !worthBuying(weak, need) {
			return fmt.Sprintf("Set it to %s.", to)
		}
		return fmt.Sprintf("Set it to %s, or buy %s %s.", to, whats(weak), forBar(s, weak, need))
	}
	weak := parts
	for i, h := range parts {
		to, ok := lowered(s, relief, g, h)
		if !ok {
			continue
		}
		if weak = parts[:i]; to.most < *relief.Item.Set {
			return fmt.Sprintf("Buy %s %s, and set the relief to %s.", whats(weak), forBar(s, weak, to.most.Times(rises(relief))), to)
		}
		break
	}
	return fmt.Sprintf("Buy %s %s (a tenth above what the relief is set to).", whats(weak), forBar(s, weak, need))
}

// setting is how far down a relief is to be set.
type setting struct {
	most   quantity.Pressure
	relief *graph.Unit // nil for one that is not there yet
	below  string      // the part that it is to guard
}

// String gives the setting and how it comes about: "9 bar or less (a tenth below brine-hose)".
func (x setting) String() string {
	text := fmt.Sprintf("%s or less", bars(x.most))
	switch {
	case x.relief == nil:
		return text
	case x.relief.Item.FullFlow == nil:
		return fmt.Sprintf("%s (a tenth below %s)", text, x.below)
	}
	return fmt.Sprintf("%s (so that it stays below %s when it passes the whole flow; write its `full_flow` anew)", text, x.below)
}

// lowered is how far down a relief of a segment is to be set to guard a part; ok is false
// where that is not a tenth above what stands there in normal running. The relief is nil for
// one that is not there yet.
func lowered(s *bom.System, relief *graph.Unit, g *segment.Segment, part rating.Allowable) (to setting, ok bool) {
	least := g.Load.Normal
	if duty := s.Build.Duty.Pressure; duty != nil && g.High() {
		least = max(least, *duty)
	}
	to = setting{relief: relief, below: part.What}
	for _, step := range []quantity.Pressure{quantity.Bar, quantity.Bar / 10} { // a round figure where there is room for one
		to.most = quantity.Pressure(math.Floor(float64((part.Rating.Pressure.Times(1/rises(relief))+pressure.Slack)/step))) * step
		if to.most >= 10*step && to.most >= least*reliefMargin-pressure.Slack {
			return to, true
		}
	}
	return to, false
}

// rises is what a relief's line must hold as a multiple of the set: a tenth more, or by as
// much as it is said to rise when it passes the whole flow.
func rises(u *graph.Unit) float64 {
	if u == nil {
		return reliefMargin
	}
	return float64(reliefNeeds(u) / *u.Item.Set)
}

// reliefNeeds is what the parts of a relief's line must hold: a tenth above its set,
// and where it stands when it passes the whole flow.
func reliefNeeds(u *graph.Unit) quantity.Pressure {
	return max(*u.Item.Set*reliefMargin, standsOpen(u))
}

// standsOpen is where a relief stands when it passes the pump's whole flow.
func standsOpen(u *graph.Unit) quantity.Pressure {
	if u.Item.FullFlow != nil {
		return *u.Item.FullFlow
	}
	return *u.Item.Set * circuit.FullFlowFactor
}

// reliefs lists the placed relief valves whose set pressure is known.
func reliefs(s *bom.System) []*graph.Unit {
	var out []*graph.Unit
	for _, u := range s.Graph.Units {
		if u.Item.Kind.Is(catalog.Relieves) && u.Item.Set != nil {
			out = append(out, u)
		}
	}
	return out
}
