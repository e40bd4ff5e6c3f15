// Package finding holds what a check says of a build it could read: how bad,
// which rule, where, why, and what to do. It imports nothing of ours.
package finding

import (
	"cmp"
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
	Slug     string // words joined by hyphens, never a number
	At       string // what it is about: a joint, a unit, a segment
	Place    Place
	Reason   string
	Remedy   string
	Related  []Place
}

// Sort puts findings in the order people read them: worst first, then by file,
// line, column, slug and reason, so that the same build prints the same text.
func Sort(list []Finding) {
	slices.SortStableFunc(list, func(a, b Finding) int {
		return cmp.Or(
			cmp.Compare(a.Severity, b.Severity), cmp.Compare(a.Place.File, b.Place.File),
			cmp.Compare(a.Place.Line, b.Place.Line), cmp.Compare(a.Place.Column, b.Place.Column),
			cmp.Compare(a.Slug, b.Slug), cmp.Compare(a.At, b.At), cmp.Compare(a.Reason, b.Reason),
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
