package rule

import (
	"fmt"

	"handtight/bom"
	"handtight/bom/finding"
	"handtight/bom/graph"
	"handtight/catalog"
)

var productNoDrainWay = Rule{
	Slug:  "product-no-drain-way",
	Title: "The product goes to the tank, and nowhere else.",
	Why: `The first water of each start is salty, that of a new or a pickled membrane carries what it
was kept in, and a torn membrane makes sea water. All of it must go to a drain until it has been
tasted or measured. A selector between the drain and the tank does it, or a hose that is held
into a jug.`,
	Wrong: `
[[item]]
id = "tank"
kind = "tank"
[[run]]
name = "product"
path = ["vessel.product", "tank"]
`,
	right: `
[[item]]
id = "tank"
kind = "tank"
[[item]]
id = "jug"
kind = "drain"
[[item]]
id = "selector"
kind = "selector valve"
between = "open"
material = "316"
rated = "200 bar"
ports = { common = '1/4 NPT male swivel', a = '1/4 NPT female', b = '1/4 NPT female' }
[[run]]
name = "product"
path = ["vessel.product", "selector.common"]
[[run]]
name = "to tank"
path = ["selector.a", "tank"]
[[run]]
name = "to drain"
path = ["selector.b", "jug"]
`,
	block: "product",
	plant: "flushed",
	harm:  finding.Spoils,
	check: findNoDrain,
}

func findNoDrain(s *bom.System) []finding.Finding {
	var out []finding.Finding
	said := map[*graph.Unit]bool{}
	for _, v := range vessels(s) {
		p, ok := port(v, "product")
		if !ok || s.Graph.Ports[p].Joint == nil {
			continue
		}
		from := onward(s, p)
		tanks := reachedOf(s, p, from, catalog.Store)
		if len(tanks) == 0 || said[tanks[0]] || leftOpen(s, from) || openEnd(s, p) ||
			len(reachedOf(s, p, from, catalog.Drain|catalog.Outlet|catalog.Sea|catalog.SkinFitting)) > 0 {
			continue
		}
		said[tanks[0]] = true
		out = append(out, finding.Finding{
			Severity: finding.Caution, Subject: ofUnit(v), Place: at(v.Mark),
			Reason: fmt.Sprintf("the product of %s can go to %s only: the first water of a start, and salty water, have no way to a drain.", v.Name, names(tanks)),
			Remedy: "Put a selector into the product line, open between its positions, with the drain at its other way.",
		})
	}
	return out
}
