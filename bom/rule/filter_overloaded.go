package rule

import (
	"fmt"

	"handtight/bom"
	"handtight/bom/build"
	"handtight/bom/duty"
	"handtight/bom/finding"
	"handtight/bom/graph"
	"handtight/catalog"
)

var filterOverloaded = Rule{
	Slug:  "filter-overloaded",
	Title: "More water runs through a filter than it is made for.",
	Why: `Too much flow packs a cartridge and pushes dirt through it. What a housing or a cartridge is made
for is on its sheet: write it as "flow".`,
	Wrong: `
[[item]]
id = "fine"
kind = "filter housing"
material = "pp"
micron = "5 micron"
flow = "5 L/min"
rated = "8 bar"
ports = { in = '19 mm barb', out = '19 mm barb' }
`,
	mend:  []string{`flow = "5 L/min"`, `flow = "20 L/min"`},
	block: "filter",
	plant: "watered",
	harm:  finding.Spoils,
	flows: findFilterOverloaded,
}

func findFilterOverloaded(s *bom.System, r *duty.Result) []finding.Finding {
	var out []finding.Finding
	var filters []*graph.Unit
	for _, u := range s.Graph.Units {
		if u.Item.Kind.Is(catalog.Filter | catalog.Strainer) {
			filters = append(filters, u)
		}
	}
	least := map[string]*build.Item{} // by housing: the cartridge that is made for the least
	for _, it := range s.Build.Items {
		if it.Kind.Is(catalog.Cartridge) && it.Flow != nil {
			if old := least[it.Inside]; old == nil || *it.Flow < *old.Flow {
				least[it.Inside] = it
			}
		}
	}
	for _, m := range r.Plants {
		if m.Lines == nil || !m.Lines.Solved {
			continue
		}
		for _, u := range filters {
			q, runs := m.Lines.Flow[u]
			if !runs {
				continue
			}
			most, who := u.Item.Flow, u.Name
			if it := least[u.Item.ID]; it != nil && (most == nil || *it.Flow < *most) {
				most, who = it.Flow, it.ID
			}
			if most == nil || q.Lo <= *most {
				continue
			}
			f := onPump(m, finding.Caution)
			f.Subject, f.Place = ofUnit(u), at(u.Mark)
			f.Reason = fmt.Sprintf("%s run through it, and %s is made for %s.", litresAMinute(q), who, most)
			f.Remedy = fmt.Sprintf("Take one for %s L/min or more, or two side by side.", upTo(q.Hi.LitresPerMinute(), 1))
			out = append(out, f)
		}
	}
	return out
}
