package main

import (
	"fmt"
	"strings"

	"handtight/bom"
	"handtight/bom/facts"
	"handtight/bom/segment"
	"handtight/pressure/nearest"
)

// viewsAsked lays out the states that were asked for: one by its name, or all.
func viewsAsked(sys *bom.System, name string, all bool) ([]segment.StateView, error) {
	if all {
		return sys.Segments.Views(), nil
	}
	if name == "" {
		return nil, nil
	}
	names := sys.Segments.StateNames()
	v, ok := sys.Segments.View(name)
	if !ok {
		hint := ""
		if near, found := nearest.Of(name, names); found {
			hint = fmt.Sprintf("did you mean %q? ", near)
		}
		return nil, fmt.Errorf("there is no state %q: %sthe states of this build are %s", name, hint, strings.Join(names, ", "))
	}
	return []segment.StateView{v}, nil
}

var stateColumns = []column{
	{title: "segment (bar)", flex: true}, {title: "normal", right: true}, {title: "here", right: true},
	{title: "lowest", right: true}, {title: "holds", right: true}, {title: "margin", right: true},
}

// printState prints one state: every segment, and what it overloads.
func (a *app) printState(v *facts.State) {
	a.printStateHead(v)
	a.printStateRows(v.Segments)
	if !a.printOverloads(v) {
		a.ui.say(green, "Nothing sees more than it holds.")
		a.ui.line("")
	}
}

// sorts says which sort of state it is, in a sentence.
var sorts = map[string]string{"failure": "a failure", "normal course": "the normal course", "act": "an act"}

func (a *app) printStateHead(v *facts.State) {
	a.ui.say(bold, "State: %s", v.Name)
	a.ui.say("", "%s (%s)", v.Cause, sorts[v.Sort])
}

func (a *app) printStateRows(list []facts.StateSegment) {
	var rows [][]string
	for i := range list {
		rows = append(rows, stateRow(&list[i]))
	}
	if !a.ui.table(stateColumns, rows) {
		for i := range list {
			g, row := &list[i], rows[i]
			here := row[2]
			if !g.Unbounded {
				here += " bar"
			}
			text := fmt.Sprintf("%s: %s (normal %s), holds %s", row[0], here, row[1], row[4])
			if g.Lowest.Value < 0 {
				text += ", and a vacuum"
			}
			a.ui.fold("  -", text)
		}
	}
	a.ui.line("")
}

func stateRow(g *facts.StateSegment) []string {
	row := []string{g.Name, figure(g.Normal), figure(g.Bar), "", "?", ""}
	if g.Lowest.Value < 0 {
		row[3] = figure(g.Lowest)
	}
	if g.Holds.Known {
		row[4], row[5] = figure(g.Holds), "none"
		if g.Margin.Known {
			row[5] = figure(g.Margin)
		}
	}
	return row
}

// printOverloads prints what a state overloads, what it may flatten, and of what nothing says
// what it holds; false where it has nothing to say.
func (a *app) printOverloads(v *facts.State) bool {
	u := a.ui
	if len(v.Overloads) > 0 {
		u.say(bold, "What sees more than it holds")
	}
	for _, o := range v.Overloads {
		u.fold("  -", fmt.Sprintf("%s holds %s and sees %s", o.What, bars(o.Holds), bars(o.Sees)))
	}
	if len(v.Collapses) > 0 {
		u.say(bold, "What the vacuum may flatten")
	}
	for _, c := range v.Collapses {
		if c.Stands.Known {
			u.fold("  -", fmt.Sprintf("%s stands a vacuum of %s only", c.Hose, bars(c.Stands)))
		} else {
			u.fold("  -", c.Hose+": nothing says that it stands a vacuum")
		}
	}
	if len(v.Untold) > 0 {
		u.say(bold, "Not known to hold it")
	}
	for _, o := range v.UntoldSees {
		u.fold("  -", fmt.Sprintf("%s sees %s, and nothing says what it holds", o.What, bars(o.Sees)))
	}
	if len(v.Overloads)+len(v.Collapses)+len(v.Untold) == 0 {
		return false
	}
	u.line("")
	return true
}

// printStates prints all states: of each, the segments that it changes.
func (a *app) printStates(list []facts.State) {
	for i := range list {
		v := &list[i]
		a.printStateHead(v)
		var changed []facts.StateSegment
		for _, g := range v.Segments {
			if v.Name == "normal" || g.Changed {
				changed = append(changed, g)
			}
		}
		if len(changed) == 0 {
			a.ui.say("", "No segment stands otherwise than in normal running.")
			a.ui.line("")
			continue
		}
		a.printStateRows(changed)
		a.printOverloads(v)
	}
}
