package rule

import (
	"fmt"
	"strings"

	"handtight/bom"
	"handtight/bom/build"
	"handtight/bom/finding"
)

var titleNotUsed = Rule{
	Slug:  "title-not-used",
	Title: "A title states something that nothing here uses.",
	Why: `A shop's title may say more than the check can weigh: a test pressure, a temperature, a
standard, a word that is not known. What is not used is named, so that nobody takes it for
checked. Words that matter go into keys of the item.`,
	Wrong: `
[[item]]
id = "elbow"
title = "Elbow 1/2 NPT male x 1/2 NPT female, 316, frobnicated, tested to 90 bar"
extra = 1
`,
	Right: `
[[item]]
id = "elbow"
title = "Elbow 1/2 NPT male x 1/2 NPT female, 316"
extra = 1
`,
	harm:  finding.Money,
	check: findTitleWords,
}

// findTitleWords names what titles state and nothing uses, all items in one finding.
func findTitleWords(s *bom.System) []finding.Finding {
	var said []string
	var first *build.Item
	items := 0
	for _, it := range s.Build.Items {
		var words []string
		for _, w := range it.Unread {
			words = append(words, fmt.Sprintf("%q (not understood)", w))
		}
		for _, n := range it.NotUsed {
			words = append(words, fmt.Sprintf("%q (%s)", n.Words, n.Why))
		}
		if len(words) == 0 {
			continue
		}
		if first == nil {
			first = it
		}
		items++
		said = append(said, fmt.Sprintf("`%s`: %s", it.ID, strings.Join(words, ", ")))
	}
	if first == nil {
		return nil
	}
	return []finding.Finding{{
		Severity: finding.Note, Subject: ofItem(first), Place: at(first.Place),
		Reason: "The titles state what nothing here uses: " + strings.Join(said, "; ") + ".",
		Remedy: "Write in keys of the item what matters of it: `rated`, `class`, `set`, `ports`.",
	}}
}
