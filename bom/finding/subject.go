package finding

import (
	"fmt"
	"strings"
)

// Kind says what sort of thing a finding is about. The zero value is invalid.
type Kind uint8

// The kinds of subject.
const (
	Joint   Kind = iota + 1 // two ports that meet
	Unit                    // one placed part
	Port                    // one port of a placed part
	Segment                 // a stretch of one pressure
	Item                    // a thing of the list, placed or not
	State                   // one way the build can stand
	Build                   // the build as a whole
	Line                    // a line of an order, a cart or another list
	File                    // a file
	Offer                   // what a shop offers for an item
)

var kindWords = [...]string{
	Joint: "joint", Unit: "unit", Port: "port", Segment: "segment", Item: "item", State: "state", Build: "build",
	Line: "line", File: "file", Offer: "offer",
}

// String gives the kind's word in output.
func (k Kind) String() string {
	if k == 0 || int(k) >= len(kindWords) {
		return "no subject"
	}
	return kindWords[k]
}

// Subject is what a finding is about. Which fields are set follows from the kind; the others
// are empty, but for Segment, which says where a unit or joint stands that shares its fault
// with others of the same segment.
type Subject struct {
	Kind    Kind
	Unit    string // of a joint the first unit; of a state the unit that is shut or fails
	Port    string
	Unit2   string // of a joint
	Port2   string
	Joint   int // its number, which is another in another build
	Segment string
	Item    string
	State   string
	Build   string
	Line    string
	File    string
	Offer   string
}

// String names the subject for people: "J12 tee.a - hose.b", "pump", "tee.branch".
func (s Subject) String() string {
	switch s.Kind {
	case Joint:
		return fmt.Sprintf("J%d %s.%s - %s.%s", s.Joint, s.Unit, s.Port, s.Unit2, s.Port2)
	case Unit:
		return s.Unit
	case Port:
		return s.Unit + "." + s.Port
	case Segment:
		return s.Segment
	case Item:
		return s.Item
	case State:
		return s.State
	case Build:
		return s.Build
	case Line:
		return s.Line
	case File:
		return s.File
	case Offer:
		return s.Offer
	}
	return ""
}

// Short names the subject among others: a joint by its number alone.
func (s Subject) Short() string {
	if s.Kind == Joint {
		return fmt.Sprintf("J%d", s.Joint)
	}
	return s.String()
}

// Alike is the subject without what is another in a build that only counts otherwise: a
// joint has no number and is the same from either side, and of several units of one name
// ("tail/+2") it is not said which. rename gives a unit its name in the other build.
func (s Subject) Alike(rename func(unit string) string) Subject {
	name := func(unit string) string {
		if unit == "" {
			return ""
		}
		unit = rename(unit)
		if at := strings.LastIndex(unit, "/+"); at >= 0 && digits(unit[at+2:]) {
			unit = unit[:at+2]
		}
		return unit
	}
	if rest, ok := strings.CutPrefix(s.State, s.Unit); ok && s.Unit != "" {
		s.State = rest
	}
	s.Unit, s.Unit2 = name(s.Unit), name(s.Unit2)
	if s.Kind == Joint {
		s.Joint = 0
		if s.Unit2 < s.Unit || s.Unit2 == s.Unit && s.Port2 < s.Port {
			s.Unit, s.Port, s.Unit2, s.Port2 = s.Unit2, s.Port2, s.Unit, s.Port
		}
	}
	if s.Kind != Segment {
		s.Segment = ""
	}
	return s
}

func digits(text string) bool {
	return strings.IndexFunc(text, func(r rune) bool { return r < '0' || r > '9' }) < 0
}
