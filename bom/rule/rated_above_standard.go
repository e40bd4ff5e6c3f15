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
	Title: "A part is said to hold more than the standard it is sold to, or than its own description says.",
	Why: `A maker may build better than the standard, or the figure may be the burst pressure, or
psi read as bar. Both figures are shown and the lower one is used. A strength in ` + "`about`" + ` or in the words of an end rates
nothing; where it is less than what the part sees, and the key or the standard beside it is more,
one of the two is not of this part.`,
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
	return append(out, wordsAgainst(s)...)
}

// wordsAgainst names both where a description says less than what rates the part, and less than it sees. It stops
// where only a standard says more: the words are then all that is said of this very part.
func wordsAgainst(s *bom.System) []finding.Finding {
	var out []finding.Finding
	for _, x := range findWordsBelow(s) {
		said := ""
		if bars(x.said) != x.words {
			said = fmt.Sprintf(" (%s)", bars(x.said))
		}
		out = append(out, finding.Finding{
			Severity: cautionUnless(x.holds.Sheet == nil), NotKnown: true, Subject: ofUnit(x.unit), Place: at(x.item.Place),
			Reason: fmt.Sprintf("`%s` is described as %q, which says %s%s, and it is taken to hold %s (%s) where it sees %s.", x.item.ID, x.text, x.words, said, bars(x.holds.Rating.Pressure), basis(x.holds), bars(x.seen)),
			Remedy: fmt.Sprintf("Look at what stands on the part and in its data sheet, and take the wrong one out of the file; where the words are right, buy one for %s or more.", barsUp(x.seen)),
		})
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
