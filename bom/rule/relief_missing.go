package rule

import (
	"fmt"
	"slices"
	"strings"

	"handtight/bom"
	"handtight/bom/build"
	"handtight/bom/finding"
	"handtight/bom/graph"
	"handtight/bom/state"
	"handtight/catalog"
)

var reliefMissing = Rule{
	Slug:  "relief-missing",
	Title: "No relief valve stands on a positive displacement pump.",
	Why: `The throttle is turned by hand, valves are forgotten, and a pump that has no way out
breaks the weakest part. The relief valve stands at the pump, before anything that
shuts, and lifts above the duty and below the weakest rating.`,
	Wrong: `
# no run leads to the relief valve
`,
	right: `
[[run]]
name = "relief"
path = ["tee.branch", "relief", "relief-out"]
`,
	block: "relief run",
	harm:  finding.Bursts,
	check: findMissing,
}

func findMissing(s *bom.System) []finding.Finding {
	var out []finding.Finding
	for _, p := range barePumps(s) {
		f := finding.Finding{
			Severity: finding.Stop, Subject: ofUnit(p), Place: at(p.Mark),
			Reason: fmt.Sprintf("no relief valve is reached from %s.", p.Name),
			Remedy: "Put a relief valve on a tee at its outlet, set above the duty and below the weakest rating, with a free outlet.",
		}
		if v := unloaderOf(s, p); v != nil {
			f.Reason = fmt.Sprintf("no relief valve is reached from %s; %s counts as one only where its maker says so (`relieves`).", p.Name, v.Name)
		}
		if u := turnedAbout(s, p); u != nil {
			f.Reason = fmt.Sprintf("%s stands the wrong way round, its outlet to %s: it never opens, and no other relief valve is reached.", u.Name, p.Name)
			f.Remedy = fmt.Sprintf("Turn %s about: its inlet to the pump.", u.Name)
		}
		if u := unplacedRelief(s); u != nil && turnedAbout(s, p) == nil {
			f.Reason += fmt.Sprintf(" `%s` is on the list, and in no run.", u.ID)
		}
		var causes []string
		for _, st := range s.States.All {
			if !s.States.NoBoundNormally(st) && raisedBy(s, st, []*graph.Unit{p}) {
				causes = append(causes, st.Cause)
			}
		}
		if len(causes) > 0 {
			f.Reason += fmt.Sprintf(" Nothing opens, and the pressure rises until something bursts, with %s.", strings.Join(causes, "; with "))
		}
		out = append(out, f)
	}
	return out
}

// unloaderOf is an unloader around a pump that is no relief; nil where there is none.
func unloaderOf(s *bom.System, pump *graph.Unit) *graph.Unit {
	for _, u := range s.Circuit.UnitsAround(outletOf(pump)) {
		if u.Item.Kind.Is(catalog.Unloads) && !u.Item.Process.Relieves {
			return u
		}
	}
	return nil
}

// turnedAbout finds a relief valve whose outlet a pump pushes at.
func turnedAbout(s *bom.System, pump *graph.Unit) *graph.Unit {
	for _, u := range s.Circuit.UnitsAround(outletOf(pump)) {
		if u.Item.Kind.Is(catalog.Relieves) && s.Circuit.Reaches(outletOf(pump), outletOf(u), true) {
			return u
		}
	}
	return nil
}

// unplacedRelief finds a relief valve that is on the list and in no run.
func unplacedRelief(s *bom.System) *build.Item {
	for _, it := range s.Build.Items {
		if it.Kind.Is(catalog.Relieves) && !slices.ContainsFunc(s.Graph.Units, func(u *graph.Unit) bool { return u.Item == it }) {
			return it
		}
	}
	return nil
}

// barePumps lists the pumps that reach no relief valve.
func barePumps(s *bom.System) []*graph.Unit {
	var out []*graph.Unit
	for _, p := range pumps(s) {
		if near, far := reliefsOf(s, p); len(near)+len(far) == 0 {
			out = append(out, p)
		}
	}
	return out
}

// raisedBy reports whether, in a state without bound, one of some pumps pushes without
// bound.
func raisedBy(s *bom.System, st *state.State, list []*graph.Unit) bool {
	for _, p := range list {
		if high, _, ok := s.States.Pressure(st, outletOf(p)); ok && high.Unbounded() {
			return true
		}
	}
	return false
}

// pumps lists the positive displacement pumps.
func pumps(s *bom.System) []*graph.Unit {
	var out []*graph.Unit
	for _, u := range s.Graph.Units {
		if u.Item.Kind.Is(catalog.DrivesHigh) {
			out = append(out, u)
		}
	}
	return out
}

// outletOf is the port of a directed unit that water leaves by.
func outletOf(u *graph.Unit) int { return u.First + u.Item.PortIndex("out") }

// reliefsOf lists the relief valves on a pump's outlet: near, with nothing between
// that shuts, and far, behind something that does.
func reliefsOf(s *bom.System, pump *graph.Unit) (near, far []*graph.Unit) {
	r := s.Circuit.ReliefsOf(pump)
	return r.Near, r.Far
}
