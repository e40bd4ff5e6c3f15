package main

import (
	"fmt"
	"slices"
	"strings"

	"handtight/bom/facts"
	"handtight/bom/state"
	"handtight/pressure/quantity"
)

// segmentColumns are the columns of the pressure table; all figures are in bar.
var segmentColumns = []column{
	{title: ""}, {title: "segment (bar)", flex: true}, {title: "normal", right: true}, {title: "worst", right: true},
	{title: "holds", right: true}, {title: "margin", right: true}, {title: "weakest member", flex: true},
}

// printSegments prints a line a segment, and under the table what brings the worst
// about; on a narrow terminal each segment is folded.
func (a *app) printSegments(list []facts.Segment) {
	u := a.ui
	if len(list) == 0 {
		return
	}
	u.say(bold, "Pressure by segment: normal and worst, and what the weakest member holds")
	var rows [][]string
	var holds []facts.Allowable
	for i := range list {
		rows, holds = append(rows, segmentRow(&list[i])), append(holds, list[i].Allowable)
	}
	if !u.table(segmentColumns, rows) {
		for i := range list {
			a.foldSegment(&list[i])
		}
	} else {
		for i := range list {
			if text := unrated(&list[i]); text != "" {
				u.fold("?", fmt.Sprintf("%s: %s", list[i].Name, text))
			}
			if text := clearedFromMemory(&list[i]); text != "" {
				u.fold("m", fmt.Sprintf("%s: %s", list[i].Name, text))
			}
		}
	}
	u.say("", "H = high pressure: above %.0f bar in normal running", state.HighPressure.Bar())
	a.printBasisNotes(holds)
	u.line("")
	a.printWorst(list)
}

func segmentRow(g *facts.Segment) []string {
	row := []string{" ", g.Name, figure(g.Normal), figure(g.Worst), "?", "", "not known"}
	if g.High {
		row[0] = "H"
	}
	if g.Bar.Known {
		row[4], row[6] = figure(g.Bar), fmt.Sprintf("%s (%s)", g.Weakest, basisOf(&g.Allowable))
	} else if g.AtMost.Known {
		row[6] = "not all known"
	}
	row[5] = marginText(g.Margin, &g.Allowable)
	return row
}

// marginText is a margin in a table: nothing where it is not known what is held, and "none"
// where no pressure bounds what it sees.
func marginText(m facts.Number, held *facts.Allowable) string {
	switch {
	case m.Known:
		return figure(m)
	case held.Bar.Known:
		return "none"
	}
	return ""
}

// marginBar is a margin with its unit, where it stands in no table that says it.
func marginBar(text string) string {
	if text == "" || text == "none" {
		return text
	}
	return text + " bar"
}

// unrated says of which members of a segment nothing tells what they hold, and what the
// others do; "" where all are known.
func unrated(g *facts.Segment) string {
	unknown := slices.Concat(g.Unrated, g.Guessed)
	if len(unknown) == 0 || g.Bar.Known {
		return ""
	}
	text := "nothing that counts on high pressure says what " + strings.Join(unknown, ", ") + " holds"
	if len(g.Guessed) == 0 {
		text = "nothing says what " + strings.Join(unknown, ", ") + " holds"
	}
	if len(unknown) > 1 {
		text = strings.TrimSuffix(text, "s")
	}
	if g.AtMost.Known {
		text += fmt.Sprintf("; of the others the weakest is %s, %s bar (%s)", g.Weakest, figure(g.AtMost), basisOf(&g.Allowable))
	}
	return text
}

// clearedFromMemory says which members of a segment are cleared by a figure that nobody has looked up
// in its source; "" where none is.
func clearedFromMemory(g *facts.Segment) string {
	if len(g.Memory) == 0 {
		return ""
	}
	return "cleared from memory, so ask for the data sheet: " + strings.Join(g.Memory, "; ")
}

func (a *app) foldSegment(g *facts.Segment) {
	row := segmentRow(g)
	a.ui.fold("  "+row[0], g.Name)
	a.ui.fold("", fmt.Sprintf("%s, worst %s", bars(g.Normal), bars(g.Worst)))
	if g.Bar.Known {
		a.ui.fold("", fmt.Sprintf("%s holds %s bar, margin %s", row[6], row[4], marginBar(row[5])))
	} else {
		a.ui.fold("", "what it holds is not known")
		if text := unrated(g); text != "" {
			a.ui.fold("", text)
		}
	}
	if text := clearedFromMemory(g); text != "" {
		a.ui.fold("", text)
	}
}

// printWorst says what brings about the worst pressures and the vacuum, once for
// each cause.
func (a *app) printWorst(list []facts.Segment) {
	u := a.ui
	var causes []string
	reach := map[string][]string{}
	add := func(cause, segment string) {
		if reach[cause] == nil {
			causes = append(causes, cause)
		}
		reach[cause] = append(reach[cause], segment)
	}
	for i := range list {
		g := &list[i]
		if g.Raised {
			add(fmt.Sprintf("%s, with %s", bars(g.Worst), g.Cause), g.Name)
		}
		if g.LowCause != "" {
			add("vacuum, with "+g.LowCause, g.Name)
		}
	}
	if len(causes) == 0 {
		return
	}
	u.say(bold, "What brings the worst about")
	for _, c := range causes {
		u.fold("  -", c+": in "+strings.Join(reach[c], "; "))
	}
	u.line("")
}

// figure is a pressure in a table.
func figure(n facts.Number) string {
	if n.Unbounded() {
		return "no bound"
	}
	return quantity.Decimals(n.Value, 1)
}

// bars writes a pressure for people.
func bars(n facts.Number) string {
	if n.Unbounded() {
		return "pressure without bound"
	}
	return figure(n) + " bar"
}
