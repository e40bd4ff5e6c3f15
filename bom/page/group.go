package page

import (
	"fmt"
	"path/filepath"

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

// grouped draws findings of one cause together, in the order in which every report has them.
func grouped(list []facts.Finding) []Group {
	var out []Group
	at := map[string]int{}
	for _, i := range facts.InOrder(list) {
		f := &list[i]
		key := fmt.Sprint(f.Group, "|", f.Slug, "|", f.Cause)
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
	}
	return out
}
