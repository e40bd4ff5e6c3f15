package rule

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"handtight/bom"
	"handtight/bom/build"
	"handtight/bom/finding"
	"handtight/bom/graph"
)

var stainlessGalls = Rule{
	Slug:  "stainless-galls",
	Title: "Stainless on stainless tapers weld themselves together.",
	Why: `Two stainless threads turned on each other under load pick up and weld cold; the joint
then neither tightens nor opens, and is cut off. Tape alone is cut through by the
crests. Clean threads, a paste that says anti-seize, a slow hand; and stop where it binds.
An item whose words say "anti-seize" clears the note.`,
	Wrong: `
[[item]]
id = "tee"
kind = "tee"
ports = { a = '3/8 NPT male', b = '3/8 NPT female', branch = '1/4 NPT female' }
material = "316"
[[item]]
id = "elbow"
kind = "elbow"
ports = { a = '3/8 NPT male', b = '3/8 NPT female' }
material = "316"
[[run]]
name = "line"
path = ["tee", "elbow"]
`,
	mend: []string{`
ports = { a = '3/8 NPT male', b = '3/8 NPT female' }
material = "316"
`, `
ports = { a = '3/8 NPT male', b = '3/8 NPT female' }
material = "316"
[[item]]
id = "paste"
kind = "tape"
about = "sealing paste with anti-seize, for stainless"
`},
	harm:  finding.DoesNotGoTogether,
	check: findGalling,
}

func findGalling(s *bom.System) []finding.Finding {
	for _, it := range s.Build.Items {
		if says(it, "anti-seize", "antiseize", "anti seize") {
			return nil
		}
	}
	var g members
	for _, j := range s.Graph.Joints {
		if j.Known && j.Mating.Verdict.Holds() && tapered(j) && stainless(s, j) {
			g.add("J"+strconv.Itoa(j.Number), ofJoint(s, j), j.Mark)
		}
	}
	if len(g.names) == 0 {
		return nil
	}
	f := finding.Finding{Severity: finding.Note}
	g.at(&f)
	f.Reason = fmt.Sprintf("stainless is screwed into stainless on tapers (%s): turned dry, or on tape alone, such threads weld cold.", g.list())
	f.Remedy = "Clean both threads, use a sealing paste with anti-seize over the tape, turn slowly, and stop where it binds. Add the paste as an item that says \"anti-seize\"."
	return []finding.Finding{f}
}

// tapered reports whether both threads of a joint are tapers.
func tapered(j *graph.Joint) bool {
	a, b := j.Mating.A.Form, j.Mating.B.Form
	return a != nil && b != nil && a.Taper > 0 && b.Taper > 0 && !j.Mating.A.Plastic && !j.Mating.B.Plastic
}

func stainless(s *bom.System, j *graph.Joint) bool {
	for _, p := range []int{j.A, j.B} {
		found := false
		for _, m := range made(s.Graph.Ports[p].Unit) {
			found = found || m.Stainless()
		}
		if !found {
			return false
		}
	}
	return true
}

// says reports whether the words of an item hold one of some phrases.
func says(it *build.Item, phrases ...string) bool {
	for _, text := range [...]string{it.ID, it.About, it.Title, it.Material, it.Spec} {
		text = strings.ToLower(text)
		if slices.ContainsFunc(phrases, func(p string) bool { return strings.Contains(text, p) }) {
			return true
		}
	}
	return false
}
