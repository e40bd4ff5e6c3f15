package facts

import "handtight/bom/finding"

// Finding is one thing that a check says.
type Finding struct {
	Severity    string    `json:"severity"`
	Slug        string    `json:"slug"`
	At          string    `json:"place"`
	File        string    `json:"file"`
	Line        int       `json:"line"`
	Column      int       `json:"column"`
	Reason      string    `json:"reason"`
	Remedy      string    `json:"remedy"`
	Subject     Subject   `json:"subject"`
	Also        []Subject `json:"also"` // what shares the fault
	Related     []Place   `json:"related"`
	Consequence string    `json:"consequence"`
	Stake       Number    `json:"stake_bar"` // null where it has no pressure, or no bound
	Unbounded   bool      `json:"stake_unbounded"`
	NotKnown    bool      `json:"not_known"` // something is not known; else it is known to be wrong
	Cause       string    `json:"cause"`     // the one thing that several findings of a rule come of; "" where it stands alone
	Group       int       `json:"group"`     // its entry for people, counted from 1 by danger ([finding.Entries])
	Remedies    []Remedy  `json:"remedies"`  // parts that mend a joint, the best first
	MayStay     string    `json:"may_stay"`  // of a joint: may I leave it? "" elsewhere

	Short   string `json:"-"` // its subject among others: a joint by its number
	Heading string `json:"-"` // what stands over all of its consequence
}

// Remedy is one way to mend a joint with parts to buy.
type Remedy struct {
	Do     string   `json:"do"` // "adapt": between the two; "change": in the place of one
	At     string   `json:"at"`
	Buy    []string `json:"buy"`
	Paste  string   `json:"paste"`
	Step   string   `json:"step"` // what is written in a path for it; "" where nothing is
	Before int      `json:"joints_before"`
	Joints int      `json:"joints_after"`
	Why    string   `json:"why"`
}

// Place says where in a file something stands.
type Place struct {
	File   string `json:"file"`
	Line   int    `json:"line"`
	Column int    `json:"column"`
}

// Subject is what a finding is about: the fields that its kind has.
type Subject struct {
	Kind    string `json:"kind"`
	Unit    string `json:"unit,omitempty"`
	Port    string `json:"port,omitempty"`
	Unit2   string `json:"unit_2,omitempty"`
	Port2   string `json:"port_2,omitempty"`
	Joint   int    `json:"joint,omitempty"`
	Segment string `json:"segment,omitempty"`
	Item    string `json:"item,omitempty"`
	State   string `json:"state,omitempty"`
	Build   string `json:"build,omitempty"`
	Line    string `json:"line,omitempty"`
	File    string `json:"file,omitempty"`
	Offer   string `json:"offer,omitempty"`
}

// Findings shows what a check says, in its order.
func Findings(list []finding.Finding) []Finding {
	out := make([]Finding, 0, len(list))
	for i := range list {
		f := &list[i]
		row := Finding{
			Severity: f.Severity.String(), Slug: f.Slug, At: f.At(), File: f.Place.File, Line: f.Place.Line, Column: f.Place.Column,
			Reason: f.Reason, Remedy: f.Remedy, Subject: subjectOf(f.Subject), Also: []Subject{}, Related: []Place{}, Remedies: []Remedy{},
			Consequence: f.Consequence.String(), Unbounded: f.Stake.Unbounded(), NotKnown: f.NotKnown, Cause: f.Cause,
			Short: f.Subject.Short(), Heading: f.Consequence.Heading(f.NotKnown),
		}
		if f.Stake.Known {
			row.Stake = bars(f.Stake.Pressure)
		}
		for _, x := range f.Also {
			row.Also = append(row.Also, subjectOf(x))
		}
		for _, p := range f.Related {
			row.Related = append(row.Related, Place(p))
		}
		out = append(out, row)
	}
	for n, entry := range finding.Entries(list) {
		for _, i := range entry {
			out[i].Group = n + 1
		}
	}
	return out
}

func subjectOf(x finding.Subject) Subject {
	return Subject{
		Kind: x.Kind.String(), Unit: x.Unit, Port: x.Port, Unit2: x.Unit2, Port2: x.Port2, Joint: x.Joint, Segment: x.Segment,
		Item: x.Item, State: x.State, Build: x.Build, Line: x.Line, File: x.File, Offer: x.Offer,
	}
}

// Count returns how many findings have a severity, by its word.
func Count(list []Finding, severity finding.Severity) int {
	n := 0
	for i := range list {
		if list[i].Severity == severity.String() {
			n++
		}
	}
	return n
}
