package rule

import (
	"fmt"

	"handtight/bom"
	"handtight/bom/build"
	"handtight/bom/finding"
	"handtight/catalog"
)

var filtersOutOfOrder = Rule{
	Slug:  "filters-out-of-order",
	Title: "A coarse filter stands behind a fine one.",
	Why: `The coarse cartridge takes the bulk, so that the fine one lasts:
coarse first, then fine (common practice). The other way round the fine one clogs in hours and the coarse one
stays clean.`,
	Wrong: `
[[item]]
id = "f20"
kind = "filter housing"
micron = "30 micron"
ports = { in = '3/4 NPT female', out = '3/4 NPT female' }
rated = "8 bar"
[[item]]
id = "f5"
kind = "filter housing"
micron = "5 micron"
ports = { in = '3/4 NPT female', out = '3/4 NPT female' }
rated = "8 bar"
[[item]]
id = "union"
kind = "union"
ports = { a = '3/4 NPT male', b = '3/4 NPT male' }
[[run]]
name = "filters"
path = ["f5", "union", "f20"]
`,
	mend:  []string{`path = ["f5", "union", "f20"]`, `path = ["f20", "union", "f5"]`},
	harm:  finding.Spoils,
	check: findOrder,
}

func findOrder(s *bom.System) []finding.Finding {
	var out []finding.Finding
	for _, run := range s.Build.Runs {
		var finest *build.Item
		for i := range run.Steps {
			it := run.Steps[i].Item
			if it.Micron == nil || it.Kind.Is(catalog.Carbon) {
				continue
			}
			if finest != nil && *it.Micron > *finest.Micron {
				out = append(out, finding.Finding{
					Severity: finding.Caution, Subject: ofItem(it), Place: at(run.Steps[i].Place),
					Reason: fmt.Sprintf("`%s` (%s) stands behind `%s` (%s): the fine one takes the dirt of both.", it.ID, it.Micron, finest.ID, finest.Micron),
					Remedy: "Put the coarse filter first.",
				})
			}
			if finest == nil || *it.Micron < *finest.Micron {
				finest = it
			}
		}
	}
	return out
}
