package rule

import (
	"fmt"

	"handtight/bom"
	"handtight/bom/finding"
	"handtight/bom/graph"
)

var rigidOnPump = Rule{
	Slug:  "rigid-on-pump",
	Title: "The plunger pump is piped rigidly to the next fixed part.",
	Why: `A plunger pump gives its water in strokes, and shakes on its feet. Rigid pipe between it
and the next part that is screwed to the boat takes both: threads fret loose and
fittings crack where they are thinnest, after hours and not at once. A length of
high-pressure hose, or a hose and a damper, takes it up (common practice).`,
	Wrong: `
[duty]
pressure = "56 bar"
[[item]]
id = "pump"
kind = "plunger pump"
flow = "9 L/min"
ports = { in = '1/2 NPT female', out = '1/2 NPT female' }
[[item]]
id = "nipple"
kind = "nipple"
ports = { a = '1/2 NPT male', b = '1/2 NPT male' }
[[item]]
id = "vessel"
kind = "pressure vessel"
ports = { feed = '1/2 NPT female', brine = '1/2 NPT female', product = '1/4 NPT female' }
[[run]]
name = "high pressure"
path = ["pump", "nipple", "vessel.feed"]
`,
	mend: []string{`
[[item]]
id = "nipple"
kind = "nipple"
ports = { a = '1/2 NPT male', b = '1/2 NPT male' }
`, `
[[hose]]
id = "hose"
spec = "SAE 100R8"
bore = '3/8"'
length = "1 m"
ends = ['1/2 NPT male', '1/2 NPT male swivel']
`, `path = ["pump", "nipple", "vessel.feed"]`, `path = ["pump", "hose", "vessel.feed"]`},
	harm:  finding.LetsGo,
	check: findRigidPump,
}

func findRigidPump(s *bom.System) []finding.Finding {
	var out []finding.Finding
	for _, p := range pumps(s) {
		fixed := firstFixed(s, p)
		if fixed == nil {
			continue
		}
		out = append(out, finding.Finding{
			Severity: finding.Caution, Subject: ofUnit(p), Place: at(p.Mark),
			Reason: fmt.Sprintf("no hose stands between %s and %s, which is fixed: its strokes and its shaking go into the fittings between them.", p.Name, fixed.Name),
			Remedy: fmt.Sprintf("Put a length of high-pressure hose between %s and %s.", p.Name, fixed.Name),
		})
	}
	return out
}

// firstFixed is the first fixed unit that is reached from a pump's outlet without a
// hose, within the outlet's segment; nil if there is none.
func firstFixed(s *bom.System, pump *graph.Unit) *graph.Unit {
	start := outletOf(pump)
	home := s.Segments.SegmentOf(start)
	seen := map[*graph.Unit]bool{pump: true}
	queue := []int{start}
	for len(queue) > 0 {
		j := s.Graph.Ports[queue[0]].Joint
		p := queue[0]
		queue = queue[1:]
		if j == nil {
			continue
		}
		other := j.A
		if other == p {
			other = j.B
		}
		u := s.Graph.Ports[other].Unit
		if seen[u] || u.Item.IsHose() || s.Segments.SegmentOf(other) != home {
			continue
		}
		seen[u] = true
		if u.Item.Kind.Fixed {
			return u
		}
		for i := range u.Item.Ports {
			if q := u.First + i; q != other && s.Segments.SegmentOf(q) == home {
				queue = append(queue, q)
			}
		}
	}
	return nil
}
