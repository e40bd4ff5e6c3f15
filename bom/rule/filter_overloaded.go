package rule

import (
	"fmt"

	"handtight/bom"
	"handtight/bom/duty"
	"handtight/bom/finding"
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
	Right: `
[[item]]
id = "fine"
kind = "filter housing"
material = "pp"
micron = "5 micron"
flow = "20 L/min"
rated = "8 bar"
ports = { in = '19 mm barb', out = '19 mm barb' }
`,
	block:   "filter",
	watered: true,
	harm:    finding.Spoils,
	flows:   findFilterOverloaded,
}

func findFilterOverloaded(s *bom.System, r *duty.Result) []finding.Finding {
	var out []finding.Finding
	for _, m := range r.Plants {
		if m.Lines == nil || !m.Lines.Solved {
			continue
		}
		for _, u := range s.Graph.Units {
			kind := u.Item.Kind
			q, runs := m.Lines.Flow[u]
			if !runs || !kind.Is(catalog.Filter|catalog.Strainer) {
				continue
			}
			most, who := u.Item.Flow, u.Name
			for _, it := range s.Build.Items {
				if it.Kind.Is(catalog.Cartridge) && it.Inside == u.Item.ID && it.Flow != nil && (most == nil || *it.Flow < *most) {
					most, who = it.Flow, it.ID
				}
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
