package build

import (
	"fmt"
	"time"

	"handtight/pressure/quantity"
	"handtight/threads/evidence"
	"handtight/threads/identify"
)

// When is a day, a month or a year, as people remember it. The zero value is: not said.
type When struct {
	From, To time.Time // the first and the last day that it may be, UTC
	Text     string    // as written
}

// Known reports whether it is said.
func (w When) Known() bool { return w.Text != "" }

// WhenOf reads "2019", "2021-06" or "2024-03-02"; ok is false for anything else.
func WhenOf(text string) (w When, ok bool) {
	for _, layout := range []struct {
		form          string
		years, months int
	}{{time.DateOnly, 0, 0}, {"2006-01", 0, 1}, {"2006", 1, 0}} {
		if from, err := time.Parse(layout.form, text); err == nil {
			to := from
			if layout.years+layout.months > 0 {
				to = from.AddDate(layout.years, layout.months, -1)
			}
			return When{from, to, text}, true
		}
	}
	return When{}, false
}

// JointNote is what is known of a joint that stands: a [[joint]] of the build file.
type JointNote struct {
	At       [2]PortRef
	MadeUp   When
	DrySince When // at its running pressure
	Wept     string
	WeptIn   When // the year or day that the text of Wept begins with
	Tested   *Tested
	Sealant  string          // what was found on it, of [evidence.Sealants]; "" if not said
	Turned   identify.Turned // by hand, before it stopped
	Turns    string          // as written
	Access   string          // "easy", "behind", "haul out"; "" if not said
	Written  []string        // all that it says, as written: "sealant = tape"
	Place    Mark
}

// Tested is a pressure that a joint was held at, and stayed dry.
type Tested struct {
	Pressure quantity.Pressure
	On       When
}

// Stands reports whether the note says that the joint has been made.
func (n *JointNote) Stands() bool {
	return n != nil && (n.MadeUp.Known() || n.DrySince.Known() || n.Wept != "" || n.Tested != nil || n.Turned.Known)
}

// EndNote is what is known of one end of one unit: an [[end]] of the build file.
type EndNote struct {
	At      PortRef
	Said    string            // as printed or remembered
	Found   evidence.Readings // what it may be, by its words and by what was measured
	Taken   identify.Measured // what was measured
	Port    Port              // the item's port as the note makes it
	Written []string          // all that it says, as written
	Place   Mark
}

// Audited is the record of an earlier audit, in the block of the build file that it writes.
type Audited struct {
	On     When
	Joints []AuditedJoint
}

// AuditedJoint is one line of a record.
type AuditedJoint struct {
	At   [2]PortRef
	Is   string // the section that it stood in
	Look When   // when it is to be looked at again
}

// Name gives the port in full: "elbow/2.a".
func (r PortRef) Name() string { return fmt.Sprintf("%s.%s", r.Unit, r.Port) }
