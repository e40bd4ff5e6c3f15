package workbook

import (
	"fmt"
	"math"
	"strings"

	"handtight/bom"
)

// statesOf lists every state of the build: of each, the segments that stand otherwise
// than in normal running, and of the normal state all of them.
func statesOf(sys *bom.System) []State {
	var out []State
	for _, v := range sys.Views() {
		row := State{Name: v.Name, Cause: v.Cause, Sort: "act"}
		switch {
		case v.Failure:
			row.Sort = "failure"
		case v.Name == "normal" || v.Name == "flush":
			row.Sort = "normal course"
		}
		before := len(out)
		for _, g := range v.Segments {
			if v.Name == "normal" || g.Changed() {
				out = append(out, stateRow(row, g, &v))
			}
		}
		if len(out) == before {
			out = append(out, row)
		}
	}
	return out
}

// stateRow fills in one segment of a state.
func stateRow(row State, g bom.SegmentView, v *bom.StateView) State {
	row.Segment, row.Normal, row.High = g.Segment.Name, bar(g.Segment.Load.Normal), bar(g.High)
	row.Unbounded = math.IsInf(g.High, 1)
	if g.Low < 0 {
		row.Low = "vacuum"
	}
	row.Holds = "not known"
	if h := g.Segment.Hold; h.Known {
		row.Holds = fmt.Sprintf("%s (%s)", bar(h.Rating.Pressure.Bar()), h.What)
	}
	var over []string
	for _, o := range v.Overloads {
		if o.Segment == g.Segment {
			over = append(over, fmt.Sprintf("%s (%s)", o.What, bar(o.Holds)))
		}
	}
	for _, c := range v.Collapses {
		if c.Segment == g.Segment {
			over = append(over, c.Hose.Name+" (vacuum)")
		}
	}
	row.Over, row.Overloaded = strings.Join(over, ", "), len(over) > 0
	var untold []string
	for _, o := range v.Untold {
		if o.Segment == g.Segment {
			untold = append(untold, o.What)
		}
	}
	if len(untold) > 0 {
		row.Over = strings.TrimPrefix(row.Over+"; not known: "+strings.Join(untold, ", "), "; ")
	}
	return row
}

// states writes the sheet of states.
func (b *book) states() error {
	l := plainList{
		name: "States", title: "States: what each act and failure does", tab: middleColor,
		about: "One valve left shut, one part that fails, one pump run alone: the segments whose pressure it changes, and the parts that do not hold it, or of which nothing says so.",
		none:  "Nothing in the build pushes water.",
		columns: []column{
			{title: "State", width: 20}, {title: "What happens", width: 30}, {title: "Sort", width: 14},
			{title: "Segment", width: 36}, {title: "Normal", width: 10}, {title: "In this state", width: 12},
			{title: "Suction", width: 10}, {title: "Weakest part holds", width: 22}, {title: "Does not hold it", width: 44},
		},
		looks: stateLook,
	}
	for _, s := range b.c.States {
		segment := s.Segment
		if segment == "" {
			segment = "all as in normal running"
		}
		over := s.Over
		if s.Overloaded {
			over = "OVER: " + over
		}
		l.rows = append(l.rows, []string{s.Name, s.Cause, s.Sort, segment, s.Normal, s.High, s.Low, s.Holds, over})
	}
	return b.list(l)
}

func stateLook(col int, text string) look {
	switch {
	case strings.HasPrefix(text, "OVER: "), text == "no bound":
		return stopLook
	case col == 0:
		return strongLook
	}
	return wordsLook
}
