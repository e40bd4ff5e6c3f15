package rule

import (
	"fmt"

	"handtight/bom"
	"handtight/bom/build"
	"handtight/bom/finding"
	"handtight/bom/rating"
	"handtight/pressure"
)

var ratedAboveStandard = Rule{
	Slug:  "rated-above-standard",
	Title: "A part is said to hold more than the standard it is sold to.",
	Why: `A maker may build better than the standard, or the figure may be the burst pressure, or
psi read as bar. Both figures are shown and the lower one is used.`,
	Wrong: `
[[hose]]
id = "hose"
spec = "SAE 100R8"
rated = "700 bar"
bore = '3/8"'
length = "1 m"
ends = ['3/8 NPT male', '3/8 NPT female swivel']
`,
	mend:  []string{`rated = "700 bar"`, `rated = "250 bar"`},
	block: "hose",
	harm:  finding.Bursts,
	check: findAbove,
}

func findAbove(s *bom.System) []finding.Finding {
	var out []finding.Finding
	said := map[*build.Item]bool{}
	for _, u := range s.Graph.Units {
		for i := range u.Item.Ports {
			h := s.Ratings.Port(u.First + i)
			if said[u.Item] || h.Sheet == nil || h.Table == nil || h.Table.Basis == pressure.Estimate || h.Sheet.Pressure <= h.Table.Pressure*1.01 {
				continue
			}
			said[u.Item] = true
			out = append(out, finding.Finding{
				Severity: finding.Caution, NotKnown: true, Subject: ofUnit(u), Place: at(u.Item.Place),
				Reason: fmt.Sprintf("`%s` is said to hold %s, and the table for it gives %s (%s): the lower figure is used.", u.Item.ID, saidToHold(s, u.Item, h), h.Table.Pressure, h.Table.Text),
				Remedy: "Check the data sheet: is it the working pressure, and of this size?",
			})
		}
	}
	return out
}

// saidToHold gives the figure as the build says it, and what heat leaves of it: the table's
// figure beside it is lowered too.
func saidToHold(s *bom.System, it *build.Item, h rating.Allowable) string {
	if h.Sheet.Pressure == *it.Rated {
		return it.Rated.String()
	}
	return fmt.Sprintf("%s, of which %s is left at %s", it.Rated, h.Sheet.Pressure, s.Ratings.Hottest())
}
