package rule

import (
	"fmt"
	"strings"

	"handtight/bom"
	"handtight/bom/finding"
	"handtight/bom/graph"
	"handtight/catalog"
)

var brineIntoTank = Rule{
	Slug:  "brine-into-tank",
	Title: "The brine can run into a drinking-water tank.",
	Why: `What leaves the throttle is saltier than the sea, litres of it each minute: a tank of
drinking water is spoiled in a moment. One selector turned, or one valve left open, is enough, so
every way that water can take is looked at. The brine has a line of its own, and it ends overboard.`,
	Wrong: `
[[item]]
id = "tank-2"
kind = "tank"
[[run]]
name = "brine"
path = ["vessel.brine", "throttle", "tank-2"]
[[run]]
name = "relief"
path = ["hp-tee.branch", "relief", "relief-out"]
`,
	mend: []string{`
[[item]]
id = "tank-2"
kind = "tank"
`, `
`, `path = ["vessel.brine", "throttle", "tank-2"]`, `path = ["vessel.brine", "throttle", "discharge"]`},
	block: "brine and relief",
	plant: "flushed",
	harm:  finding.Spoils,
	check: findBrineInTank,
}

func findBrineInTank(s *bom.System) []finding.Finding {
	var out []finding.Finding
	for _, x := range brineEnds(s, catalog.Store) {
		out = append(out, finding.Finding{
			Severity: finding.Stop, Subject: ofUnit(x.end), Place: at(x.end.Mark),
			Reason: fmt.Sprintf("the brine of %s can run into %s (tank).", x.vessel.Name, x.end.Name),
			Remedy: "Lead the brine overboard by a line of its own, that no valve and no selector joins to the tank.",
		})
	}
	return out
}

// brineEnd is where the brine of a vessel can run to.
type brineEnd struct{ vessel, end *graph.Unit }

// brineEnds lists the units of a kind that the brine can run into, each once.
func brineEnds(s *bom.System, role catalog.Role) []brineEnd {
	var out []brineEnd
	said := map[*graph.Unit]bool{}
	for _, v := range vessels(s) {
		brine, ok := port(v, "brine")
		if !ok {
			continue
		}
		for _, u := range reachedOf(s, brine, onward(s, brine), role) {
			if !said[u] {
				said[u] = true
				out = append(out, brineEnd{v, u})
			}
		}
	}
	return out
}

var brineIntoBilge = Rule{
	Slug:  "brine-into-bilge",
	Title: "The brine runs into the bilge.",
	Why: `Ten parts in eleven of what the pump draws leave as brine, all the time that the plant
runs. Led into the bilge it fills the boat as fast as an open hose, and a bilge pump that fails
makes it a leak. A drain that leads overboard is written as kind = "overboard".`,
	Wrong: `
[[item]]
id = "bilge"
kind = "drain"
about = "the bilge under the engine"
[[run]]
name = "brine"
path = ["vessel.brine", "throttle", "bilge"]
[[run]]
name = "relief"
path = ["hp-tee.branch", "relief", "relief-out"]
`,
	mend: []string{`
[[item]]
id = "bilge"
kind = "drain"
about = "the bilge under the engine"
`, `
`, `path = ["vessel.brine", "throttle", "bilge"]`, `path = ["vessel.brine", "throttle", "discharge"]`},
	block: "brine and relief",
	plant: "flushed",
	harm:  finding.Floods,
	check: findBrineInBilge,
}

func findBrineInBilge(s *bom.System) []finding.Finding {
	var out []finding.Finding
	for _, x := range brineEnds(s, catalog.Drain) {
		f := finding.Finding{
			Severity: finding.Stop, Subject: ofUnit(x.end), Place: at(x.end.Mark),
			Reason: fmt.Sprintf("the brine of %s runs into %s, inside the boat, all the time that the plant runs.", x.vessel.Name, x.end.Name),
			Remedy: "Lead the brine overboard, above the waterline and without a valve.",
		}
		if words := wordsOf(x.end.Item); !strings.Contains(words, "bilge") && !strings.Contains(words, "sump") {
			f.Severity, f.NotKnown = finding.Caution, true
			f.Reason = fmt.Sprintf("the brine of %s runs into %s, and nothing says where that ends.", x.vessel.Name, x.end.Name)
			f.Remedy = fmt.Sprintf("Where it leads overboard, write `%s` as kind = \"overboard\"; else lead the brine overboard.", x.end.Item.ID)
		}
		out = append(out, f)
	}
	return out
}
