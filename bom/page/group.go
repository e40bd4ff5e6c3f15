package page

import (
	"path/filepath"
	"slices"

	"handtight/bom/facts"
)

// Group is the findings that come of one cause: one entry for people, every place named.
type Group struct {
	Severity, Slug, Consequence string
	Reason, Remedy              string
	Places                      []Place
}

// Place is one finding of a group.
type Place struct {
	Number int // of the finding, as the pictures' marks say it
	At     string
	Joint  int // its card; 0: none
	File   string
	Line   int
	Reason string // where it differs from the group's
}

// grouped draws findings of one cause together, in the order of their consequences: the
// gravest first, then by the pressure at stake.
func grouped(list []facts.Finding) []Group {
	var out []Group
	at := map[string]int{}
	stake := map[string]float64{}
	for i := range list {
		f := &list[i]
		key := f.Severity + "|" + f.Slug + "|" + f.Cause
		if f.Cause == "" {
			key += "|" + f.At + "|" + f.Reason
		}
		k, ok := at[key]
		if !ok {
			k = len(out)
			at[key] = k
			out = append(out, Group{Severity: f.Severity, Slug: f.Slug, Consequence: f.Consequence, Reason: f.Reason, Remedy: f.Remedy})
		}
		place := Place{Number: i + 1, At: f.At, Joint: f.Subject.Joint, File: filepath.Base(f.File), Line: f.Line}
		if f.Reason != out[k].Reason {
			place.Reason = f.Reason
		}
		out[k].Places = append(out[k].Places, place)
		v := f.Stake.Value
		if f.Unbounded {
			v = 1e12
		}
		stake[f.Slug+f.At] = v
	}
	slices.SortStableFunc(out, func(a, b Group) int {
		if x, y := gravity(a.Consequence), gravity(b.Consequence); x != y {
			return x - y
		}
		x, y := stake[a.Slug+a.Places[0].At], stake[b.Slug+b.Places[0].At]
		switch {
		case x > y:
			return -1
		case x < y:
			return 1
		}
		return 0
	})
	return out
}

// gravity orders consequences; those not named come last.
func gravity(word string) int {
	i := slices.Index([]string{"bursts", "floods", "fire", "lets go", "leaks", "spoils", "does not go together", "money"}, word)
	if i < 0 {
		return 99
	}
	return i
}
