package compare

import (
	"math"

	"handtight/bom/finding"
)

// same is what tells a finding of one build in the other: how bad, which rule, about what.
type same struct {
	severity finding.Severity
	slug     string
	subject  finding.Subject
}

// sames lists what tells a finding, of its subject first: one that speaks of several units is
// the same while it speaks of some of them. Names of the old build are those of the new one.
func (c *comparer) sames(f *finding.Finding, old bool) []same {
	rename := func(unit string) string {
		if u, ok := c.old.Graph.Unit(unit); ok && old && c.to[u] != nil {
			return c.to[u].Name
		}
		return unit
	}
	out := []same{{f.Severity, f.Slug, f.Subject.Alike(rename)}}
	for _, x := range f.Also {
		out = append(out, same{f.Severity, f.Slug, x.Alike(rename)})
	}
	return out
}

// findings tells the new from those that were there: first those about the same subject, then
// those that share one with others.
func (c *comparer) findings(before, after []finding.Finding) {
	was := make([][]same, len(before))
	for i := range before {
		was[i] = c.sames(&before[i], true)
	}
	stays := make([]bool, len(before))
	there := make([]bool, len(after))
	c.pair(was, after, stays, there, 1)
	c.pair(was, after, stays, there, math.MaxInt)
	alikeWords(before, after, stays, there)
	c.report.Cleared = true
	for i, f := range after {
		if !there[i] {
			c.report.New = append(c.report.New, f)
			c.report.Cleared = c.report.Cleared && f.Severity != finding.Stop
		}
	}
	for i, f := range before {
		if !stays[i] {
			c.report.Gone = append(c.report.Gone, f)
		}
	}
}

// alikeWords ties what is left of both and says the same words: it is one finding, whatever
// it is said to be about.
func alikeWords(before, after []finding.Finding, stays, there []bool) {
	type words struct {
		severity     finding.Severity
		slug, reason string
	}
	left := map[words][]int{}
	for i, f := range before {
		if !stays[i] {
			k := words{f.Severity, f.Slug, f.Reason}
			left[k] = append(left[k], i)
		}
	}
	for i, f := range after {
		k := words{f.Severity, f.Slug, f.Reason}
		if list := left[k]; !there[i] && len(list) > 0 {
			stays[list[0]], there[i] = true, true
			left[k] = list[1:]
		}
	}
}

// pair ties each new finding to the first old one that is left and shares a subject with it;
// of each finding the first so many subjects are looked at.
func (c *comparer) pair(was [][]same, after []finding.Finding, stays, there []bool, most int) {
	of := map[same][]int{}
	for i, list := range was {
		for _, x := range list[:min(most, len(list))] {
			if !stays[i] {
				of[x] = append(of[x], i)
			}
		}
	}
	for i := range after {
		now := c.sames(&after[i], false)
		for _, x := range now[:min(most, len(now))] {
			for len(of[x]) > 0 && stays[of[x][0]] {
				of[x] = of[x][1:]
			}
			if !there[i] && len(of[x]) > 0 {
				stays[of[x][0]], there[i] = true, true
			}
		}
	}
}
