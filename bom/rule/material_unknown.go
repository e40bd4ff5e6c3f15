package rule

import (
	"fmt"

	"handtight/bom"
	"handtight/bom/finding"
	"handtight/bom/graph"
	"handtight/bom/segment"
	"handtight/bom/wetting"
)

var materialUnknown = Rule{
	Slug:  "material-unknown",
	Title: "Nothing says what a part in sea water is made of.",
	Why: `A brass fitting with a bright plating looks like stainless, and a gauge's socket is
brass unless its data sheet says otherwise. Ask, and write "material": "316", "bronze",
"pp". In a low-pressure line the question is a note; at high pressure it is a caution,
since what corrodes there injects or bursts.`,
	Wrong: `
[[item]]
id = "hull"
kind = "through-hull"
ports = { inboard = '3/4 NPT male' }
material = "bronze"
[[item]]
id = "tail"
kind = "hose tail"
ports = { a = '3/4 NPT female', b = '19 mm barb long' }
[[run]]
name = "raw water"
below_waterline = true
path = ["hull", "tail"]
`,
	mend: []string{`
ports = { a = '3/4 NPT female', b = '19 mm barb long' }
`, `
ports = { a = '3/4 NPT female', b = '19 mm barb long' }
material = "bronze"
`},
	check: findNoMaterial,
}

// findNoMaterial speaks once of each high-pressure segment, and once of all others; of
// each unit once, where its pressure is highest.
func findNoMaterial(s *bom.System) []finding.Finding {
	waters := s.Waters
	where := map[*segment.Segment]*members{}
	var order []*segment.Segment
	for _, u := range s.Graph.Units {
		if u.Item.Kind.Boats || len(made(u)) > 0 || u.Item.IsHose() && (u.Item.Of != "" || u.Item.Material != "") {
			continue
		}
		g := wettest(s, waters, u)
		if g == nil {
			continue
		}
		if !g.High() {
			g = nil // all low-pressure segments are one
		}
		if where[g] == nil {
			where[g] = &members{}
			order = append(order, g)
		}
		where[g].unit(u)
	}
	var out []finding.Finding
	for _, g := range order {
		f := finding.Finding{Severity: finding.Note, NotKnown: true}
		side := ""
		if g != nil {
			f.Severity, side = finding.Caution, fmt.Sprintf(", at %s", bars(g.Load.Normal))
		}
		list := where[g]
		list.at(&f)
		f.Reason = fmt.Sprintf("nothing that is understood says what %s of, in sea water%s.", areMade(list), side)
		f.Remedy = "Ask the shop, and write `material`: brass, 304 and plated iron are not for sea water."
		out = append(out, f)
	}
	return out
}

func areMade(g *members) string {
	if len(g.names) == 1 {
		return g.list() + " is made"
	}
	return g.list() + " are made"
}

// wettest is the segment of highest pressure in which sea water wets a unit; nil if
// none does.
func wettest(s *bom.System, waters *wetting.Waters, u *graph.Unit) *segment.Segment {
	var best *segment.Segment
	for i := range u.Item.Ports {
		if p := u.First + i; waters.Sea(p) {
			if g := s.Segments.SegmentOf(p); len(g.Joints) > 0 && (best == nil || g.Load.Normal > best.Load.Normal) {
				best = g
			}
		}
	}
	return best
}
