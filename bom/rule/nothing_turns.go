package rule

import (
	"fmt"

	"handtight/bom"
	"handtight/bom/finding"
	"handtight/bom/graph"
	"handtight/catalog"
	"handtight/pressure/network/connected"
	"handtight/pressure/pattern"
	"handtight/threads"
)

var nothingTurns = Rule{
	Slug:  "nothing-turns",
	Title: "A rigid chain between two fixed ports has nothing that turns last.",
	Why: `To screw a nipple into one fixed port you turn it; to screw its other end into a
second fixed port you would have to turn the pump or the boat. Somewhere between two
fixed ports there must be a swivel, a union, a tube nut, or a hose pushed on a tail.
A made-up hose with two fixed ends is the same case: its second end twists the hose.
A throttle, a meter or a strainer counts as fixed where its words say what it is screwed to
("panel", "bracket"); else it hangs in its line, and is turned with the fitting it is on.`,
	Wrong: `
[[item]]
id = "housing"
kind = "filter housing"
ports = { in = '3/4 NPT female', out = '3/4 NPT female' }
rated = "8 bar"
[[item]]
id = "meter"
kind = "flow meter"
about = "panel meter"
ports = { in = '3/4 NPT female', out = '3/4 NPT female' }
rated = "8 bar"
[[item]]
id = "nipple"
kind = "nipple"
ports = { a = '3/4 NPT male', b = '3/4 NPT male' }
[[run]]
name = "line"
path = ["housing", "nipple", "meter"]
`,
	mend: []string{`
id = "nipple"
kind = "nipple"
`, `
id = "union"
kind = "union"
`, `path = ["housing", "nipple", "meter"]`, `path = ["housing", "union", "meter"]`},
	harm:  finding.DoesNotGoTogether,
	check: findRigid,
}

// findRigid groups ports that are rigid on each other: through the units that can
// be turned as a whole, and through joints that do not turn. A group that holds two
// fixed ports cannot be closed.
func findRigid(s *bom.System) []finding.Finding {
	g := connected.NewSets(len(s.Graph.Ports))
	for _, u := range s.Graph.Units {
		if fixed(s, u) || u.Item.Kind.Turns {
			continue
		}
		for p := 1; p < len(u.Item.Ports); p++ {
			g.Join(u.First, u.First+p)
		}
	}
	holds := map[int]int{} // by group, the first fixed port
	var out []finding.Finding
	stiff := make([]*graph.Joint, 0, len(s.Graph.Joints)) // joints that do not turn
	for _, j := range s.Graph.Joints {
		if !turns(s, j) {
			g.Join(j.A, j.B)
			stiff = append(stiff, j)
		}
	}
	reported := map[int]bool{}
	for _, j := range stiff {
		for _, p := range []int{j.A, j.B} {
			if !fixed(s, s.Graph.Ports[p].Unit) {
				continue
			}
			root := g.Find(p)
			first, seen := holds[root]
			if !seen {
				holds[root] = p
				continue
			}
			if first == p || reported[root] {
				continue
			}
			reported[root] = true
			out = append(out, rigid(s, j, first, p))
		}
	}
	return out
}

// fixed reports whether a unit is screwed to the boat. A seacock on a skin fitting is screwed
// onto that, and turns until its own outlet is made.
func fixed(s *bom.System, u *graph.Unit) bool {
	if u.Item.Kind.Is(catalog.SkinFitting) && u.Item.Kind.Closable() {
		if sea := u.Item.PortIndex("sea"); sea >= 0 && s.Graph.Port(u, sea).Joint != nil {
			return false
		}
	}
	return u.Item.Kind.Fixed && (!u.Item.Kind.Hung || mounted.MatchString(wordsOf(u.Item)))
}

// mounted finds the words for what a part is screwed to. A throttle, a meter or a strainer
// without one may hang in its line, and is turned on a fitting as a whole (common practice).
var mounted = pattern.New(`\b(?:panel|bulkhead|bracket|mounted|flanged|feet|base plate|baseplate)\b`)

func rigid(s *bom.System, j *graph.Joint, first, second int) finding.Finding {
	return finding.Finding{
		Severity: finding.Stop, Subject: ofJoint(s, j), Place: at(j.Mark),
		Reason: fmt.Sprintf("between %s and %s every joint must be turned to be made, and both are fixed: the last one cannot be.",
			s.Graph.Ports[first].Name(), s.Graph.Ports[second].Name()),
		Remedy: "Put something that turns last between them: a union, an end with a swivel nut, or a hose on a tail.",
	}
}

// turns reports whether a joint can be made without turning either part.
func turns(s *bom.System, j *graph.Joint) bool {
	for _, p := range []int{j.A, j.B} {
		for _, e := range s.Graph.Ports[p].Port.End.Candidates {
			if e.Swivel || !e.Family.Threaded() || e.Family == threads.Cone24L || e.Family == threads.Cone24S {
				return true
			}
		}
	}
	return !j.Known // an end that is not said is asked about, not judged
}
