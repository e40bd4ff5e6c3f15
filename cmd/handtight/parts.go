package main

import (
	"fmt"
	"math"
	"slices"
	"strconv"

	"handtight/bom"
)

// partFacts is one placed unit in JSON, by the port that decides.
type partFacts struct {
	Unit        string `json:"unit"`
	Item        string `json:"item"`
	Kind        string `json:"kind"`
	Port        string `json:"port"`
	Segment     string `json:"segment"` // "" where nothing is joined to the port
	Normal      number `json:"normal_bar"`
	Worst       number `json:"worst_bar"`
	Unbounded   bool   `json:"unbounded"`
	Cause       string `json:"worst_cause"`
	Lowest      number `json:"lowest_bar"`
	LowestCause string `json:"lowest_cause"` // "" where there is no vacuum
	Rating      number `json:"rating_bar"`
	Basis       string `json:"rating_basis"`
	Status      string `json:"rating_status"` // how well the figure is known; "" where there is none
	Derated     bool   `json:"derated"`
	Estimate    bool   `json:"estimate"`
	Margin      number `json:"margin"`
	High        bool   `json:"high_pressure"`
}

func partFactsOf(sys *bom.System) []partFacts {
	out := []partFacts{}
	for _, p := range sys.Parts() {
		f := partFacts{
			Unit: p.Unit.Name, Item: p.Unit.Item.ID, Kind: p.Unit.Item.Kind.Name, Port: sys.Ports[p.Port].Name(),
			Normal: known(p.Normal), Worst: known(p.Worst), Unbounded: math.IsInf(p.Worst, 1), Lowest: known(p.Low),
			Derated: p.Hold.Derated, Estimate: p.Hold.Estimate, High: p.High(),
		}
		if p.Segment != nil {
			f.Segment = p.Segment.Name
		}
		if p.Cause != nil {
			f.Cause = p.Cause.Cause
		}
		if p.LowBy != nil {
			f.LowestCause = p.LowBy.Cause
		}
		if p.Hold.Known {
			r := p.Hold.Rating
			f.Rating, f.Basis, f.Status = known(r.Pressure.Bar()), r.Basis.String(), r.Status.String()
		}
		if m, ok := p.Margin(); ok {
			f.Margin = known(m)
		}
		out = append(out, f)
	}
	return out
}

// partColumns are the columns of the table of parts; all figures are in bar. A cause is
// the number of its line in the list below the table.
var partColumns = []column{
	{title: ""}, {title: "part (bar)", flex: true}, {title: "normal", right: true}, {title: "worst", right: true},
	{title: "cause", right: true}, {title: "lowest", right: true}, {title: "cause", right: true},
	{title: "holds", right: true}, {title: "margin", right: true}, {title: "known by"},
}

// printParts prints a line a placed unit, the worst first, and under the table what
// brings it about; on a narrow terminal each unit is folded.
func (a *app) printParts(sys *bom.System) {
	u, parts := a.ui, bom.WorstFirst(sys.Parts())
	if len(parts) == 0 {
		u.say("", "No part is placed but what the boat has.")
		u.line("")
		return
	}
	u.say(bold, "Pressure by part, the worst first: no bound, over what it holds, not known, then the least margin")
	var causes causeList
	var rows [][]string
	for i := range parts {
		rows = append(rows, partRow(&parts[i], &causes))
	}
	asTable := u.table(partColumns, rows)
	if !asTable {
		for i, row := range rows {
			a.foldPart(&parts[i], row)
		}
	}
	a.printPartNotes(sys, parts, asTable)
	if !asTable {
		return
	}
	if len(causes) > 0 {
		u.say(bold, "What brings the worst and the lowest about")
		for i, c := range causes {
			u.fold(fmt.Sprintf("  %d.", i+1), c)
		}
		u.line("")
	}
}

// printPartNotes explains the marks of the list.
func (a *app) printPartNotes(sys *bom.System, parts []bom.Part, asTable bool) {
	u := a.ui
	u.say("", "H = high pressure: above %.0f bar in normal running", bom.HighPressure)
	holds := make([]bom.Hold, len(parts))
	for i := range parts {
		holds[i] = parts[i].Hold
	}
	a.printBasisNotes(holds)
	if asTable {
		u.say("", "cause = its number in the list below; none where normal running is the worst")
	}
	if slices.ContainsFunc(sys.Joints, func(j *bom.Joint) bool { return sys.JointHold(j).Known }) {
		u.say("", "A clamped joint may hold less than its hose and its tail: `handtight check` counts it in, by segment.")
	}
	u.line("")
}

// causeList is the causes that a table names by number, each once.
type causeList []string

// number gives the number of a state's cause, from 1.
func (l *causeList) number(st *bom.State) string {
	i := slices.Index(*l, st.Cause)
	if i < 0 {
		i = len(*l)
		*l = append(*l, st.Cause)
	}
	return strconv.Itoa(i + 1)
}

func partRow(p *bom.Part, causes *causeList) []string {
	row := []string{" ", p.Unit.Name, figure(p.Normal), figure(p.Worst), "", "", "", "?", "", "not known"}
	if p.High() {
		row[0] = "H"
	}
	if worseThanNormal(p) {
		row[4] = causes.number(p.Cause)
	}
	if p.LowBy != nil {
		row[5], row[6] = figure(p.Low), causes.number(p.LowBy)
	}
	if p.Hold.Known {
		row[7], row[8], row[9] = figure(p.Hold.Rating.Pressure.Bar()), "none", basisOf(p.Hold)
	}
	if m, ok := p.Margin(); ok {
		row[8] = figure(m)
	}
	return row
}

// worseThanNormal reports whether some state is worse for the part than normal running.
func worseThanNormal(p *bom.Part) bool { return p.Cause != nil && p.Worst > p.Normal+0.001 }

func (a *app) foldPart(p *bom.Part, row []string) {
	u := a.ui
	u.fold("  "+row[0], p.Unit.Name)
	text := fmt.Sprintf("%s, worst %s", bars(p.Normal), bars(p.Worst))
	if worseThanNormal(p) {
		text += ", with " + p.Cause.Cause
	}
	u.fold("", text)
	if p.LowBy != nil {
		u.fold("", "vacuum, with "+p.LowBy.Cause)
	}
	if p.Hold.Known {
		u.fold("", fmt.Sprintf("holds %s bar (%s), margin %s", row[7], row[9], row[8]))
	} else {
		u.fold("", "what it holds is not known")
	}
}
