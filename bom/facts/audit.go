package facts

import (
	"fmt"

	"handtight/bom"
	"handtight/bom/audit"
	"handtight/bom/finding"
	"handtight/threads/evidence"
)

// Audit is the order of work on a plant that stands.
type Audit struct {
	Build      string           `json:"build"`
	On         *string          `json:"on"` // null where the build names no day: no time counts then
	From       string           `json:"on_from"`
	Lines      []AuditLine      `json:"lines"`
	Joints     []AuditJoint     `json:"joints"` // in the order of the walk
	Counts     map[string]int   `json:"counts"` // joints, by section
	Gone       []string         `json:"gone"`   // joints that the record before names and the build has no more
	Judgements []AuditJudgement `json:"judgements,omitempty"`

	File     string   `json:"-"`
	Cautions []string `json:"-"`
}

// AuditLine is one line of the order of work.
type AuditLine struct {
	Section string  `json:"section"`
	At      string  `json:"place"`
	Joints  []int   `json:"joints"`
	Do      string  `json:"do"`
	Why     string  `json:"why"`
	Cost    string  `json:"if_wrong"`
	Worth   Number  `json:"worth"`    // of a measurement; null elsewhere
	Bar     Number  `json:"test_bar"` // null where it is no test, or none can be
	Look    *string `json:"next_look"`
	Stay    string  `json:"may_stay"`
}

// AuditJoint is one joint with what is to be believed of it.
type AuditJoint struct {
	Number   int            `json:"number"`
	A        string         `json:"a"`
	B        string         `json:"b"`
	Section  string         `json:"section"`
	Was      string         `json:"was"` // its section in the audit before; "" without one
	Bad      Number         `json:"bad"`
	Cost     Number         `json:"cost"`
	Worst    Number         `json:"worst_bar"`
	Readings []AuditReading `json:"readings"`
	Seen     []string       `json:"seen"` // what the build says was seen of it and of its ends, as written, whether it weighs or not
	Why      string         `json:"why"`
	Look     *string        `json:"next_look"`
}

// AuditReading is one reading of both ends of a joint.
type AuditReading struct {
	A           string `json:"a"`
	B           string `json:"b"`
	Verdict     string `json:"verdict"`
	Probability Number `json:"probability"`
}

// AuditJudgement is one figure that somebody chose.
type AuditJudgement struct {
	Name   string            `json:"name"`
	Values map[string]Number `json:"values"`
	Note   string            `json:"note"`
}

// AuditOf shows an order of work; with why, the figures that it rests on too.
func AuditOf(sys *bom.System, p *audit.Plan, why bool) *Audit {
	f := &Audit{
		Build: sys.Build.Name, File: sys.Build.File, From: p.From, On: dayOf(audit.DayText(p.On)),
		Lines: []AuditLine{}, Joints: []AuditJoint{}, Counts: map[string]int{}, Cautions: Cautions(sys), Gone: append([]string{}, p.Gone...),
	}
	for _, s := range audit.Sections() {
		f.Counts[s.String()] = len(p.In(s))
	}
	for i := range p.Lines {
		l := &p.Lines[i]
		row := AuditLine{Section: l.Section.String(), At: l.At, Joints: []int{}, Do: l.Do, Why: l.Why, Cost: l.Cost, Look: dayOf(audit.DayText(l.Look)), Stay: l.Stay}
		for _, x := range l.Joints {
			row.Joints = append(row.Joints, x.Joint.Number)
		}
		if l.Section == audit.Measure {
			row.Worth = Figure(l.Worth)
		}
		if l.Pressure > 0 {
			row.Bar = bars(l.Pressure)
		}
		f.Lines = append(f.Lines, row)
	}
	for _, x := range p.Joints {
		f.Joints = append(f.Joints, auditJoint(sys, x))
	}
	if why {
		f.Judgements = auditJudgements()
	}
	return f
}

func auditJoint(sys *bom.System, x *audit.Joint) AuditJoint {
	row := AuditJoint{
		Number: x.Joint.Number, A: sys.Graph.Ports[x.Joint.A].Name(), B: sys.Graph.Ports[x.Joint.B].Name(), Section: x.Section.String(),
		Bad: Figure(x.Belief.Bad), Cost: Figure(x.Cost), Worst: bars(x.Worst), Readings: []AuditReading{}, Why: x.Why, Look: dayOf(audit.DayText(x.Look)),
	}
	row.Seen = seenOf(sys, x)
	if x.Prior != nil {
		row.Was = x.Prior.Is
	}
	for i := range x.Belief.Pairs {
		p := &x.Belief.Pairs[i]
		row.Readings = append(row.Readings, AuditReading{p.Mating.A.String(), p.Mating.B.String(), p.Mating.Verdict.String(), Figure(p.Probability)})
	}
	return row
}

// seenOf is what the notes of a joint and of its two ends say.
func seenOf(sys *bom.System, x *audit.Joint) []string {
	out := []string{}
	if n := x.Joint.Note; n != nil {
		out = append(out, n.Written...)
	}
	for _, at := range []int{x.Joint.A, x.Joint.B} {
		if p := &sys.Graph.Ports[at]; p.Note != nil {
			for _, w := range p.Note.Written {
				out = append(out, p.Name()+": "+w)
			}
		}
	}
	return out
}

func auditJudgements() []AuditJudgement {
	var out []AuditJudgement
	for _, j := range evidence.Judgements() {
		row := AuditJudgement{Name: j.Name, Note: j.Note, Values: map[string]Number{}}
		for name, v := range j.Values {
			if name == "" {
				name = "value"
			}
			row.Values[name] = Figure(v)
		}
		out = append(out, row)
	}
	for _, j := range audit.Judgements() {
		note := j.Note
		if j.Words != "" {
			note = fmt.Sprintf("%s: %s", j.Words, j.Note)
		}
		out = append(out, AuditJudgement{Name: j.Name, Note: note, Values: map[string]Number{"value": Figure(j.Value)}})
	}
	return out
}

// mayStay answers of a joint that does not hold whether it may be left: by its verdict, and where
// something is known of it, by that.
func mayStay(sys *bom.System, f *finding.Finding) string {
	if f.Subject.Kind != finding.Joint {
		return ""
	}
	j := sys.Graph.Joints[f.Subject.Joint-1]
	if j.Note != nil {
		day, _ := audit.Day(sys.Build)
		if x := audit.Judge(sys, j, day); x.Section <= audit.Measure || !j.Mating.Verdict.Holds() {
			return x.Stay()
		}
		return ""
	}
	if !j.Known || j.Mating.Verdict.Holds() || // the finding is of something else
		!j.Mating.A.Family.Threaded() || !j.Mating.B.Family.Threaded() {
		return ""
	}
	return j.Mating.MayStay()
}

func dayOf(text string) *string {
	if text == "" {
		return nil
	}
	return &text
}
