package rule

import (
	"fmt"
	"slices"

	"handtight/bom"
	"handtight/bom/duty"
	"handtight/bom/finding"
	"handtight/bom/graph"
	"handtight/pressure/quantity"
)

var reliefTooSmall = Rule{
	Slug:  "relief-too-small",
	Title: "A relief valve does not pass the whole flow of its pump.",
	Why: `When everything is shut, the whole flow goes through the relief. One that is too small
lets the pressure rise past its setting. Pumps that share a relief deliver together. What a
pump delivers is reckoned with its pulleys and its speed: a stop where it is more than the relief
passes, a caution where only a pump that lets nothing slip delivers so much.`,
	Wrong: `
[[item]]
id = "relief"
kind = "relief valve"
set = "65 bar"
flow = "2 L/min"
rated = "100 bar"
ports = { in = '3/8 NPT male', out = '3/8 NPT female' }
`,
	mend:  []string{`flow = "2 L/min"`, `flow = "10 L/min"`},
	block: "relief",
	harm:  finding.Bursts,
	check: findSmall,
}

// findSmall takes the pumps that share their reliefs together: what opens must pass the
// flow of all of them. Of pumps that share only some, all pumps and all reliefs that hang
// together are looked at as well.
func findSmall(s *bom.System) []finding.Finding {
	var out []finding.Finding
	for _, g := range reliefGroups(s) {
		f := finding.Finding{}
		placed := g.reliefs[0]
		who, passes := names(g.pumps), "passes"
		delivers := "delivers"
		if len(g.pumps) > 1 {
			delivers = "together deliver"
		}
		if len(g.reliefs) > 1 {
			passes = "together pass"
		}
		capacity, untold := g.capacity()
		flow, most, known := g.flow()
		switch {
		case known && capacity >= most:
			continue
		case len(untold) > 0:
			f.Severity, f.NotKnown, placed = finding.Note, true, untold[0]
			f.Reason = fmt.Sprintf("nothing says what flow %s passes.", names(untold))
			f.Remedy = fmt.Sprintf("Ask for its capacity at the set pressure and write `flow`; it must pass the whole flow of %s.", who)
		case flow > capacity:
			f.Severity = finding.Stop
			f.Reason = fmt.Sprintf("%s %s %s, and %s %s %s.", names(g.reliefs), passes, capacity, who, delivers, flow)
			f.Remedy = fmt.Sprintf("Buy one that passes %s or more at its setting.", flow)
		case most > capacity*(1+1e-9):
			f.Severity = finding.Caution
			f.Reason = fmt.Sprintf("%s %s %s, and %s %s up to %s where nothing slips in it.", names(g.reliefs), passes, capacity, who, delivers, most)
			f.Remedy = fmt.Sprintf("Buy one that passes %s or more at its setting.", most)
		default:
			continue
		}
		f.Subject, f.Place = ofUnit(placed), at(placed.Mark)
		out = append(out, f)
	}
	return out
}

// reliefGroup is pumps that have the same reliefs, with nothing between that shuts.
type reliefGroup struct{ pumps, reliefs []*graph.Unit }

func reliefGroups(s *bom.System) []*reliefGroup {
	var out []*reliefGroup
	of := map[string]*reliefGroup{}
	for _, p := range pumps(s) {
		near, _ := reliefsOf(s, p)
		if len(near) == 0 {
			continue
		}
		key := names(near)
		if of[key] == nil {
			of[key] = &reliefGroup{reliefs: near}
			out = append(out, of[key])
		}
		of[key].pumps = append(of[key].pumps, p)
	}
	return append(out, hangTogether(out)...)
}

// hangTogether joins groups that share a relief, where there are such.
func hangTogether(groups []*reliefGroup) []*reliefGroup {
	var sets []*reliefGroup
	joined := map[*reliefGroup]bool{}
	for _, g := range groups {
		whole := &reliefGroup{pumps: slices.Clone(g.pumps), reliefs: slices.Clone(g.reliefs)}
		var apart []*reliefGroup
		for _, set := range sets {
			if !slices.ContainsFunc(set.reliefs, func(u *graph.Unit) bool { return slices.Contains(whole.reliefs, u) }) {
				apart = append(apart, set)
				continue
			}
			joined[whole] = true
			whole.pumps = append(slices.Clone(set.pumps), whole.pumps...)
			for _, u := range set.reliefs {
				if !slices.Contains(whole.reliefs, u) {
					whole.reliefs = append(whole.reliefs, u)
				}
			}
		}
		sets = append(apart, whole)
	}
	return slices.DeleteFunc(sets, func(g *reliefGroup) bool { return !joined[g] })
}

// flow is what the pumps deliver together at what the reliefs stand at, and with no slip at all,
// as far as it is said; known where all of it is.
func (g *reliefGroup) flow() (sum, most quantity.Flow, known bool) {
	known = true
	for _, p := range g.pumps {
		at, _, ok := duty.PumpFlow(p.Item, g.stands())
		tight, _, _ := duty.PumpFlow(p.Item, 0)
		if !ok {
			known = false
			continue
		}
		sum, most = sum+at.Hi, most+tight.Hi
	}
	return sum, most, known
}

// stands is where the first of the reliefs passes its whole flow.
func (g *reliefGroup) stands() quantity.Pressure {
	for _, u := range g.reliefs {
		if u.Item.FullFlow != nil {
			return *u.Item.FullFlow
		}
		if u.Item.Set != nil {
			return *u.Item.Set
		}
	}
	return 0
}

// capacity is what the reliefs pass together, and those of which nothing says it.
func (g *reliefGroup) capacity() (sum quantity.Flow, untold []*graph.Unit) {
	for _, u := range g.reliefs {
		if u.Item.Flow == nil {
			untold = append(untold, u)
			continue
		}
		sum += *u.Item.Flow
	}
	return sum, untold
}
