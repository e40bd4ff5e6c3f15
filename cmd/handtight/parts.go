package main

import (
	"fmt"
	"slices"
	"strconv"

	"handtight/bom/facts"
	"handtight/bom/state"
)

// partColumns are the columns of the table of parts; all figures are in bar. What brings
// a pressure about is the number of its line in the list below the table.
var partColumns = []column{
	{title: ""}, {title: "part (bar)", flex: true}, {title: "normal", right: true}, {title: "worst", right: true},
	{title: "by", right: true}, {title: "low", right: true}, {title: "by", right: true},
	{title: "holds", right: true}, {title: "margin", right: true}, {title: "known by", flex: true},
}

// printParts prints a line a placed unit, the worst first, and under the table what
// brings it about; on a narrow terminal each unit is folded.
func (a *app) printParts(f *facts.Facts) {
	u, parts := a.ui, f.WorstFirst
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
	a.printPartNotes(f, asTable)
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
func (a *app) printPartNotes(f *facts.Facts, asTable bool) {
	u := a.ui
	u.say("", "H = high pressure: above %.0f bar in normal running", state.HighPressure.Bar())
	var holds []facts.Allowable
	for i := range f.WorstFirst {
		holds = append(holds, f.WorstFirst[i].Allowable)
	}
	a.printBasisNotes(holds)
	if asTable {
		u.say("", "by = what brings it about, by its number in the list below; none where normal running does")
	}
	if f.Clamped {
		u.say("", "A clamped joint may hold less than its hose and its tail: `handtight check` counts it in, by segment.")
	}
	u.line("")
}

// causeList is the causes that a table names by number, each once.
type causeList []string

// number gives the number of a cause, from 1.
func (l *causeList) number(cause string) string {
	i := slices.Index(*l, cause)
	if i < 0 {
		i = len(*l)
		*l = append(*l, cause)
	}
	return strconv.Itoa(i + 1)
}

func partRow(p *facts.Part, causes *causeList) []string {
	row := []string{" ", p.Unit, figure(p.Normal), figure(p.Worst), "", "", "", "?", marginText(p.Margin, &p.Allowable), "not known"}
	if p.High {
		row[0] = "H"
	}
	if p.Raised {
		row[4] = causes.number(p.Cause)
	}
	if p.LowestCause != "" {
		row[5], row[6] = figure(p.Lowest), causes.number(p.LowestCause)
	}
	if p.Bar.Known {
		row[7], row[9] = figure(p.Bar), basisOf(&p.Allowable)
	}
	return row
}

func (a *app) foldPart(p *facts.Part, row []string) {
	u := a.ui
	u.fold("  "+row[0], p.Unit)
	text := fmt.Sprintf("%s, worst %s", bars(p.Normal), bars(p.Worst))
	if p.Raised {
		text += ", with " + p.Cause
	}
	u.fold("", text)
	if p.LowestCause != "" {
		u.fold("", "vacuum, with "+p.LowestCause)
	}
	if p.Bar.Known {
		u.fold("", fmt.Sprintf("holds %s bar (%s), margin %s", row[7], row[9], marginBar(row[8])))
	} else {
		u.fold("", "what it holds is not known")
	}
}
