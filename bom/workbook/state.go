package workbook

import (
	"fmt"
	"strings"

	"handtight/bom/facts"
)

// statesOf lists every state of the build: of each, the segments that stand otherwise
// than in normal running, and of the normal state all of them.
func statesOf(list []facts.State) []State {
	var out []State
	for i := range list {
		st := &list[i]
		row := State{Name: st.Name, Cause: st.Cause, Sort: st.Sort}
		before := len(out)
		for k := range st.Segments {
			if g := &st.Segments[k]; st.Name == "normal" || g.Changed {
				out = append(out, stateRow(row, g))
			}
		}
		if len(out) == before {
			out = append(out, row)
		}
	}
	return out
}

// stateRow fills in one segment of a state.
func stateRow(row State, g *facts.StateSegment) State {
	row.Segment, row.Normal, row.High, row.Unbounded, row.Holds = g.Name, bar(g.Normal), bar(g.Bar), g.Unbounded, bar(g.Holds)
	if g.Lowest.Value < 0 {
		row.Low = "vacuum"
	}
	if g.Holds.Known {
		row.Holds += fmt.Sprintf(" (%s)", g.Weakest)
	}
	var over, untold []string
	for _, o := range g.Overloads {
		over = append(over, fmt.Sprintf("%s (%s)", o.What, bar(o.Holds)))
	}
	for _, c := range g.Collapses {
		over = append(over, c.Hose+" (vacuum)")
	}
	for _, o := range g.Untold {
		untold = append(untold, o.What)
	}
	row.Over, row.Overloaded = strings.Join(over, ", "), len(over) > 0
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
