package rule

import (
	"fmt"

	"handtight/bom"
	"handtight/bom/finding"
	"handtight/bom/graph"
	"handtight/catalog"
)

var intakeWithoutValve = Rule{
	Slug:  "intake-without-valve",
	Title: "A hole below the waterline has no valve on it.",
	Why: `Whatever comes off inboard of a skin fitting lets the sea in, and nothing stops it but a
valve on the fitting itself. It is screwed straight onto it, and shut when nobody is aboard. A
valve that stands behind a hose does not help when the hose comes off. Outlets below the
waterline need one as well as intakes.`,
	Wrong: `
[[item]]
id = "skin"
kind = "through-hull"
ports = { inboard = '3/4 NPS male' }
[[item]]
id = "tail"
kind = "hose tail"
ports = { a = '3/4 NPS female', b = '19 mm barb long' }
[[item]]
id = "stock"
kind = "hose stock"
bore = "19 mm"
[[hose]]
id = "hose"
of = "stock"
length = "1 m"
[[item]]
id = "strainer"
kind = "strainer"
ports = { in = '19 mm barb long', out = '19 mm barb long' }
[[run]]
name = "raw water"
below_waterline = true
path = ["skin", "tail", "hose", "strainer"]
`,
	mend: []string{`
id = "tail"
kind = "hose tail"
ports = { a = '3/4 NPS female', b = '19 mm barb long' }
`, `
id = "cock"
kind = "seacock"
ports = { sea = '3/4 NPS female', inboard = '19 mm barb long' }
`, `path = ["skin", "tail", "hose", "strainer"]`, `path = ["skin", "cock", "hose", "strainer"]`},
	harm:  finding.Floods,
	check: findNoSeacock,
}

func findNoSeacock(s *bom.System) []finding.Finding {
	var out []finding.Finding
	for _, u := range ofKind(s, catalog.SkinFitting) {
		if u.Item.Kind.Closable() {
			continue
		}
		if !u.Below || len(u.Item.Ports) == 0 {
			continue
		}
		valve, behind := firstValve(s, u)
		f := finding.Finding{
			Severity: finding.Stop, Subject: ofUnit(u), Place: at(u.Mark),
			Reason: fmt.Sprintf("%s lies below the waterline, and no valve stands behind it: what comes off inboard of it lets the sea in.", u.Name),
			Remedy: fmt.Sprintf("Screw a seacock straight onto %s, or lead it out above the waterline.", u.Name),
		}
		switch {
		case valve != nil && behind == nil:
			continue
		case valve != nil:
			f.Severity = finding.Caution
			f.Reason = fmt.Sprintf("%s lies below the waterline, and the first valve, %s, stands behind %s: if that comes off, nothing shuts the sea out.", u.Name, valve.Name, behind.Name)
		}
		out = append(out, f)
	}
	return out
}

// firstValve finds the first unit behind a skin fitting that can be shut, and the first
// before it that is more than a fitting screwed on; nil where there is none.
func firstValve(s *bom.System, skin *graph.Unit) (valve, behind *graph.Unit) {
	seen := map[*graph.Unit]bool{skin: true}
	list := []*graph.Unit{skin}
	for len(list) > 0 && valve == nil {
		u := list[0]
		list = list[1:]
		for i := range u.Item.Ports {
			j := s.Graph.Ports[u.First+i].Joint
			if j == nil {
				continue
			}
			next := s.Graph.Ports[j.A].Unit
			if next == u {
				next = s.Graph.Ports[j.B].Unit
			}
			if seen[next] {
				continue
			}
			seen[next] = true
			for _, p := range next.Passages() {
				if p.Closable && p.Is == catalog.Open { // a throttle is no seacock
					return next, behind
				}
			}
			if !screwedOn(next) && behind == nil {
				behind = next
			}
			if !drives(next) {
				list = append(list, next)
			}
		}
	}
	return valve, behind
}

// drives reports whether something in a unit moves or stops the water by itself: behind it a
// valve shuts the sea out no more.
func drives(u *graph.Unit) bool {
	for _, p := range u.Passages() {
		if p.Is != catalog.Open {
			return true
		}
	}
	return len(u.Passages()) == 0
}

// screwedOn reports whether a unit is no more than a fitting between two threads: not a hose,
// nor a tail that a hose comes off.
func screwedOn(u *graph.Unit) bool {
	return !u.Item.Kind.Is(catalog.HoseTail|catalog.Hose) && !u.Item.Kind.Fixed && len(u.Item.Ports) > 0
}
