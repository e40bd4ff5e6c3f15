package rule

import (
	"fmt"
	"slices"
	"strings"

	"handtight/bom"
	"handtight/bom/build"
	"handtight/bom/finding"
	"handtight/threads"
)

var titleNotUsed = Rule{
	Slug:  "title-not-used",
	Title: "A title, a description or a key states something that nothing here uses.",
	Why: `A shop's title may say more than the check can weigh: a test pressure, a temperature, a
standard, a word that is not known. What is not used is named, so that nobody takes it for
checked. Words that matter go into keys of the item. So it is with a figure of
strength in ` + "`about`" + `, which is a description, and with a key that nothing weighs in a part of its
kind, such as ` + "`wall`" + ` where ` + "`rated`" + ` is said.`,
	Wrong: `
[[item]]
id = "elbow"
title = "Elbow 1/2 NPT male x 1/2 NPT female, 316, frobnicated, tested to 90 bar"
extra = 1
`,
	mend:  []string{`title = "Elbow 1/2 NPT male x 1/2 NPT female, 316, frobnicated, tested to 90 bar"`, `title = "Elbow 1/2 NPT male x 1/2 NPT female, 316"`},
	harm:  finding.Money,
	check: findTitleWords,
}

// findTitleWords names what titles state and nothing uses, all items in one finding.
func findTitleWords(s *bom.System) []finding.Finding {
	var said []string
	var first *build.Item
	items := 0
	against := findWordsBelow(s)
	for _, it := range s.Build.Items {
		var words []string
		for _, w := range it.Unread {
			words = append(words, fmt.Sprintf("%q (not understood)", w))
		}
		for _, n := range it.NotUsed {
			if slices.ContainsFunc(against, func(x wordsBelow) bool { return x.item == it && x.words == n.Words }) {
				continue // a finding of its own
			}
			words = append(words, fmt.Sprintf("%q (%s)", n.Words, n.Why))
		}
		for i := range it.Ports {
			for _, n := range it.Ports[i].End.NotUsed {
				if n.Why == threads.SaysNothingNew {
					continue
				}
				words = append(words, fmt.Sprintf("%q of `%s` (%s)", n.Words, it.Ports[i].Name, n.Why))
			}
		}
		for _, c := range it.Carried {
			if c.Note {
				words = append(words, fmt.Sprintf("`%s` (%s)", c.Key, c.Why))
			}
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
		Reason: "Titles, descriptions and keys state what nothing here uses: " + strings.Join(said, "; ") + ".",
		Remedy: "Write in keys of the item what matters of a title: `rated`, `class`, `set`, `ports`; of a key that is not used, see why, or take it out.",
	}}
}
