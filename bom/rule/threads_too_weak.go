package rule

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"handtight/bom"
	"handtight/bom/finding"
	"handtight/bom/graph"
	"handtight/bom/joint"
	"handtight/bom/segment"
	"handtight/pressure"
	"handtight/pressure/quantity"
)

var threadsTooWeak = Rule{
	Slug:  "threads-too-weak",
	Title: "By an estimate, the threads of a joint bear less than the joint sees.",
	Why: `The water pushes the two parts of a joint apart, and the threads that are screwed
into each other hold them. What they bear is estimated by the length that is screwed in
by hand, at the loosest parts that the standard allows, and by the weaker material of the
two. A plastic thread, or one that takes few turns, may bear less than the rating of the
parts on either side. It is an estimate: it is shown, it warns, and it clears nothing.`,
	Wrong: `
[duty]
pressure = "56 bar"
[[item]]
id = "sea"
kind = "sea"
[[item]]
id = "pump"
kind = "plunger pump"
material = "316"
flow = "9 L/min"
stall = "150 bar"
ports = { in = '1/2 NPT female', out = '3/8 NPT female' }
[[item]]
id = "throttle"
kind = "brine throttle"
material = "316"
ports = { in = '3/8 NPT female', out = '3/8 NPT female' }
[[item]]
id = "discharge"
kind = "overboard"
[[run]]
name = "line"
path = ["sea", "pump", "nipple", "throttle", "discharge"]
[[item]]
id = "nipple"
kind = "nipple"
ports = { a = '3/8 NPT male', b = '3/8 NPT male' }
material = "PVC"
`,
	mend:  []string{`material = "PVC"`, `material = "316"`},
	harm:  finding.LetsGo,
	check: findWeakThreads,
}

// findWeakThreads compares what the threads of each joint bear with the highest pressure
// that has a bound; joints of one segment are one report, the weakest first. A pressure
// without bound is more than any thread bears, and is found by its own rule.
func findWeakThreads(s *bom.System) []finding.Finding {
	type weakJoint struct {
		joint *graph.Joint
		bears quantity.Pressure
	}
	weakIn := map[*segment.Segment][]weakJoint{}
	estimates := joint.NewEstimates(s.Graph)
	for _, j := range s.Graph.Joints {
		load := s.States.PortLoad(j.A)
		sees := max(load.Act, load.Fail) - pressure.Slack
		if sees <= 0 {
			continue
		}
		bears, ok := estimates.Bears(j)
		if !ok || bears >= sees {
			continue
		}
		g := s.Segments.SegmentOf(j.A)
		weakIn[g] = append(weakIn[g], weakJoint{j, bears})
	}
	var out []finding.Finding
	for _, g := range s.Segments.All {
		list := weakIn[g]
		if len(list) == 0 {
			continue
		}
		slices.SortStableFunc(list, func(a, b weakJoint) int { return cmp.Compare(a.bears, b.bears) })
		first := list[0].joint
		load := s.States.PortLoad(first.A)
		seen, state := load.Act, load.ByAct
		if load.Fail > seen {
			seen, state = load.Fail, load.ByFail
		}
		f := finding.Finding{
			Severity: finding.Caution, NotKnown: true, Subject: ofJoint(s, first), Place: at(first.Mark),
			Reason: fmt.Sprintf("by an estimate its threads bear %s, screwed together by hand, and it sees %s: %s.", bars(list[0].bears), bars(seen), state.Cause),
			Remedy: "Buy the weaker part of a stronger material, or ask its maker what the threaded joint holds. Never run high pressure through it on the estimate alone.",
		}
		var others []string
		for _, w := range list[1:] {
			others = append(others, fmt.Sprintf("J%d %s (%s)", w.joint.Number, s.Graph.JointName(w.joint), bars(w.bears)))
			f.Also, f.Related = append(f.Also, ofJoint(s, w.joint)), append(f.Related, at(w.joint.Mark))
		}
		if len(others) > 0 {
			f.Reason += fmt.Sprintf(" So it is with %s.", strings.Join(others, ", "))
		}
		out = append(out, f)
	}
	return out
}
