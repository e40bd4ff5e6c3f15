package rule

import (
	"fmt"
	"slices"

	"handtight/bom"
	"handtight/bom/build"
	"handtight/bom/finding"
	"handtight/bom/graph"
	"handtight/bom/state"
	"handtight/catalog"
	"handtight/pressure"
	"handtight/pressure/quantity"
)

var pressureOverElement = Rule{
	Slug:  "pressure-over-element",
	Title: "The membrane element sees more pressure than it is made for.",
	Why: `An element has a highest pressure of its own, whatever its vessel holds: the sheets of
seawater elements say 69 bar (1,000 psi) or 83 bar (1,200 psi), those of brackish-water ones
41 bar (600 psi). Above it the sheets are pressed flat and the glue lines let go. The duty must stay below
it, and the relief valve too when it passes the whole flow. Write it as ` + "`max_pressure`" + ` or ` + "`rated`" + ` on the element.`,
	Wrong: `
[[item]]
id = "element"
kind = "membrane element"
about = "brackish-water element 2.5 x 21"
rated = "41 bar"     # the duty is 56
inside = "vessel"
`,
	mend: []string{`
about = "brackish-water element 2.5 x 21"
rated = "41 bar"     # the duty is 56
`, `
about = "seawater element 2.5 x 21"
rated = "83 bar"
`},
	block: "element",
	plant: "flushed",
	harm:  finding.Spoils,
	check: findPressedElement,
}

// What data sheets of seawater elements say in bar: 1,000 psi for many older and narrow ones
// (memory), 1,200 psi for the most (two product sheets).
const (
	elementLeast = 69 * quantity.Bar
	elementMost  = 83 * quantity.Bar
)

func findPressedElement(s *bom.System) []finding.Finding {
	var out []finding.Finding
	said := map[*build.Item]bool{}
	for _, u := range vessels(s) {
		feed, ok := port(u, "feed")
		if !ok {
			continue
		}
		for _, it := range contents(s, u.Item, catalog.Element) {
			if said[it] {
				continue
			}
			load := *s.States.PortLoad(feed)
			if len(reachedOf(s, feed, onward(s, feed), catalog.Recovers)) > 0 && !s.Build.Duty.PressureTold {
				load = state.Load{} // what it can come to at the most is weighed by a rule of its own
			}
			if f, bad := pressedElement(s, it, &load); bad {
				said[it] = true
				f.Subject, f.Place = ofItem(it), at(it.Place)
				out = append(out, f)
			}
		}
	}
	return out
}

func pressedElement(s *bom.System, it *build.Item, load *state.Load) (f finding.Finding, bad bool) {
	duty := load.Normal
	if p := s.Build.Duty.Pressure; p != nil && !s.Build.Duty.PressureTold { // what a stall comes to is in the load, with the reliefs before it
		duty = max(duty, *p)
	}
	f.Stake = finding.Stake{Pressure: duty, Known: true}
	most := it.MostPressure()
	f.Severity, f.NotKnown = finding.Caution, most == nil
	holds, text := elementMost, fmt.Sprintf("no seawater element holds more than %s by its data sheet", bars(elementMost))
	if most != nil {
		holds, text = *most, fmt.Sprintf("%s is made for %s", it.ID, most)
	}
	f.Remedy = fmt.Sprintf("Hold less on the throttle and set the relief below %s, or buy an element for %s or more.", bars(holds), barsUp(max(duty, load.Act)))
	if !slices.ContainsFunc(s.Graph.Units, func(u *graph.Unit) bool { return u.Item.Kind.Is(catalog.Throttles) }) {
		f.Remedy = fmt.Sprintf("Guard the high side by a relief on the feed side, or take an energy-recovery pump of a larger rod, or buy an element for %s or more.", barsUp(max(duty, load.Act)))
	}
	switch {
	case pressure.Above(duty, holds):
		f.Severity, f.NotKnown = finding.Stop, false
		f.Reason = fmt.Sprintf("%s, and it sees %s in normal running.", text, bars(duty))
	case pressure.Above(load.Act, holds) && load.ByAct != nil:
		f.Reason, f.Stake.Pressure = fmt.Sprintf("%s, and it sees %s: %s.", text, bars(load.Act), load.ByAct.Cause), load.Act
	case most == nil && pressure.Above(duty, elementLeast):
		f.Reason = fmt.Sprintf("it sees %s, and nothing says what %s is made for: many elements hold no more than %s.", bars(duty), it.ID, bars(elementLeast))
		f.Remedy = fmt.Sprintf("Ask for the element's highest pressure and write it as `max_pressure` on `%s`.", it.ID)
	default:
		return f, false
	}
	return f, true
}
