package rule

import (
	"fmt"
	"slices"

	"handtight/bom"
	"handtight/bom/build"
	"handtight/bom/finding"
)

var itemNotPlaced = Rule{
	Slug:  "item-not-placed",
	Title: "An item is on the list and in no run.",
	Why: `Either it is not needed, and money is saved, or a run has forgotten it. Contents of a
unit are placed by "inside"; spares and stores by "extra" or a "life".`,
	Wrong: `
[[item]]
id = "elbow"
kind = "elbow"
ports = { a = '1/2 NPT male', b = '1/2 NPT female' }
`,
	mend: []string{`
ports = { a = '1/2 NPT male', b = '1/2 NPT female' }
`, `
ports = { a = '1/2 NPT male', b = '1/2 NPT female' }
extra = 1
`},
	harm:  finding.Money,
	check: findUnplaced,
}

func findUnplaced(s *bom.System) []finding.Finding {
	used := map[string]bool{}
	for _, u := range s.Graph.Units {
		used[u.Item.ID] = true
		used[u.Item.Of] = true
	}
	for _, o := range s.Build.Options {
		used[o.Item] = true
		if it := s.Build.ByID[o.Item]; it != nil {
			used[it.Of] = true // the stock that it would be cut from
		}
	}
	var out []finding.Finding
	for _, it := range s.Build.Items {
		k := it.Kind
		if used[it.ID] || k.Generic || k.Boats || it.Extra > 0 || it.Inside != "" && used[it.Inside] || k.Loose && (it.Life != nil || it.Fails != nil) && it.Inside == "" {
			continue
		}
		out = append(out, finding.Finding{
			Severity: finding.Caution, Subject: ofItem(it), Place: at(it.Place),
			Reason: fmt.Sprintf("`%s` (%s) is on the list, and no run uses it.", it.ID, k.Name),
			Remedy: "Place it in a run, name the unit it is `inside` of, write `extra` if it is a store, or take it off the list" + offersToo(s, it) + ".",
		})
	}
	return out
}

// offersToo says that the offers of an item go with it: an offer of nothing is a fault of the file.
func offersToo(s *bom.System, it *build.Item) string {
	if slices.ContainsFunc(s.Build.Offers, func(o *build.Offer) bool { return o.Item == it.ID }) {
		return ", and its [[offer]] with it"
	}
	return ""
}
