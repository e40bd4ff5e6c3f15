// Package finding holds what a check says of a build it could read: how bad,
// which rule, where, why, and what to do. Of ours it knows the units of
// pressure alone.
package finding

import (
	"cmp"
	"fmt"
	"slices"
)

// Severity says how bad a finding is. The zero value is invalid.
type Severity uint8

// The severities, from worst: a stop says do not order or pressurise.
const (
	Stop Severity = iota + 1
	Caution
	Note
)

// String gives the severity's word in output.
func (s Severity) String() string {
	switch s {
	case Stop:
		return "stop"
	case Caution:
		return "caution"
	case Note:
		return "note"
	}
	return "no severity"
}

// Place says where in the build files a finding points. Line and Column are
// counted from 1, columns in characters; 0 means the file as a whole.
type Place struct {
	File   string
	Line   int
	Column int
}

// Finding is one thing that a check says. Every finding has a remedy.
type Finding struct {
	Severity Severity
	Slug     string    // words joined by hyphens, never a number
	Subject  Subject   // what it is about
	Also     []Subject // what shares the fault
	Place    Place
	Reason   string
	Remedy   string
	Related  []Place // of those that share the fault

	Consequence Consequence // what comes of it
	Stake       Stake       // the pressure at stake
	NotKnown    bool        // something is not known; else it is known to be wrong
	Cause       string      // the one thing that several findings of a rule come of; "" where it stands alone
}

// At names for people what the finding is about, and how many share the fault:
// "J12 tee.a - hose.b", "tail/+2 and 3 more in raw water: sea to pump".
func (f *Finding) At() string {
	text := f.Subject.String()
	if len(f.Also) == 0 {
		return text
	}
	text = fmt.Sprintf("%s and %d more", text, len(f.Also))
	if f.Subject.Segment != "" && f.Subject.Kind != Segment {
		text += " in " + f.Subject.Segment
	}
	return text
}

// Sort puts findings in the order people read them: worst first, then by file,
// line, column, slug and reason, so that the same build prints the same text.
func Sort(list []Finding) {
	slices.SortStableFunc(list, func(a, b Finding) int {
		return cmp.Or(
			cmp.Compare(a.Severity, b.Severity), cmp.Compare(a.Place.File, b.Place.File),
			cmp.Compare(a.Place.Line, b.Place.Line), cmp.Compare(a.Place.Column, b.Place.Column),
			cmp.Compare(a.Slug, b.Slug), cmp.Compare(a.At(), b.At()), cmp.Compare(a.Reason, b.Reason),
		)
	})
}

// Count returns how many findings have the severity.
func Count(list []Finding, s Severity) int {
	n := 0
	for _, f := range list {
		if f.Severity == s {
			n++
		}
	}
	return n
}
