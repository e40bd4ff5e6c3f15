package main

import (
	"fmt"
	"math"
	"strings"

	"handtight/bom"
	"handtight/pressure/nearest"
)

// stateFacts is one state in JSON.
type stateFacts struct {
	Name      string          `json:"name"`
	Cause     string          `json:"cause"`
	Failure   bool            `json:"failure"`
	Segments  []stateSegment  `json:"segments"`
	Overloads []overloadFacts `json:"overloads"`
	Collapses []collapseFacts `json:"collapses"`
	Untold    []string        `json:"rating_unknown"` // parts that see pressure, and nothing says what they hold
}

type collapseFacts struct {
	Hose   string `json:"hose"`
	Stands number `json:"stands_vacuum_bar"` // null where nothing says it
}

type stateSegment struct {
	Name      string `json:"name"`
	Bar       number `json:"bar"`
	Unbounded bool   `json:"unbounded,omitempty"`
	Lowest    number `json:"lowest_bar"`
}

type overloadFacts struct {
	What      string `json:"what"`
	Sees      number `json:"sees_bar"`
	Unbounded bool   `json:"unbounded,omitempty"`
	Holds     number `json:"holds_bar"`
}

func stateFactsOf(views []bom.StateView) []stateFacts {
	out := []stateFacts{}
	for _, v := range views {
		f := stateFacts{Name: v.Name, Cause: v.Cause, Failure: v.Failure, Segments: []stateSegment{}, Overloads: []overloadFacts{}, Collapses: []collapseFacts{}, Untold: []string{}}
		for _, g := range v.Segments {
			f.Segments = append(f.Segments, stateSegment{g.Segment.Name, known(g.High), math.IsInf(g.High, 1), known(g.Low)})
		}
		for _, o := range v.Overloads {
			f.Overloads = append(f.Overloads, overloadFacts{o.What, known(o.Sees), math.IsInf(o.Sees, 1), known(o.Holds)})
		}
		for _, c := range v.Collapses {
			x := collapseFacts{Hose: c.Hose.Name}
			if c.Known {
				x.Stands = known(c.Stands)
			}
			f.Collapses = append(f.Collapses, x)
		}
		for _, o := range v.Untold {
			f.Untold = append(f.Untold, o.What)
		}
		out = append(out, f)
	}
	return out
}

// viewsAsked lays out the states that were asked for: one by its name, or all.
func viewsAsked(sys *bom.System, name string, all bool) ([]bom.StateView, error) {
	if all {
		return sys.Views(), nil
	}
	if name == "" {
		return nil, nil
	}
	names := sys.StateNames()
	v, ok := sys.View(name)
	if !ok {
		hint := ""
		if near, found := nearest.Of(name, names); found {
			hint = fmt.Sprintf("did you mean %q? ", near)
		}
		return nil, fmt.Errorf("there is no state %q: %sthe states of this build are %s", name, hint, strings.Join(names, ", "))
	}
	return []bom.StateView{v}, nil
}

var stateColumns = []column{
	{title: "segment (bar)", flex: true}, {title: "normal", right: true}, {title: "here", right: true},
	{title: "lowest", right: true}, {title: "holds", right: true}, {title: "margin", right: true},
}

// printState prints one state: every segment, and what it overloads.
func (a *app) printState(v bom.StateView) {
	a.printStateHead(v)
	a.printStateRows(v.Segments)
	if !a.printOverloads(v) {
		a.ui.say(green, "Nothing sees more than it holds.")
		a.ui.line("")
	}
}

func (a *app) printStateHead(v bom.StateView) {
	a.ui.say(bold, "State: %s", v.Name)
	sort := "an act"
	switch {
	case v.Failure:
		sort = "a failure"
	case v.Name == "normal" || v.Name == "flush":
		sort = "the normal course"
	}
	a.ui.say("", "%s (%s)", v.Cause, sort)
}

func (a *app) printStateRows(list []bom.SegmentView) {
	var rows [][]string
	for _, g := range list {
		rows = append(rows, stateRow(g))
	}
	if !a.ui.table(stateColumns, rows) {
		for _, g := range list {
			row := stateRow(g)
			here := row[2]
			if !math.IsInf(g.High, 1) {
				here += " bar"
			}
			text := fmt.Sprintf("%s: %s (normal %s), holds %s", row[0], here, row[1], row[4])
			if g.Low < 0 {
				text += ", and a vacuum"
			}
			a.ui.fold("  -", text)
		}
	}
	a.ui.line("")
}

func stateRow(g bom.SegmentView) []string {
	row := []string{g.Segment.Name, figure(g.Segment.Load.Normal), figure(g.High), "", "?", ""}
	if g.Low < 0 {
		row[3] = figure(g.Low)
	}
	if hold := g.Segment.Hold; hold.Known {
		row[4], row[5] = figure(hold.Rating.Pressure.Bar()), "none"
		if !math.IsInf(g.High, 1) {
			row[5] = figure(hold.Rating.Pressure.Bar() - g.High)
		}
	}
	return row
}

// printOverloads prints what a state overloads, what it may flatten, and of what nothing says
// what it holds; false where it has nothing to say.
func (a *app) printOverloads(v bom.StateView) bool {
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
		if c.Known {
			u.fold("  -", fmt.Sprintf("%s stands a vacuum of %s only", c.Hose.Name, bars(c.Stands)))
		} else {
			u.fold("  -", c.Hose.Name+": nothing says that it stands a vacuum")
		}
	}
	if len(v.Untold) > 0 {
		u.say(bold, "Not known to hold it")
	}
	for _, o := range v.Untold {
		u.fold("  -", fmt.Sprintf("%s sees %s, and nothing says what it holds", o.What, bars(o.Sees)))
	}
	if len(v.Overloads)+len(v.Collapses)+len(v.Untold) == 0 {
		return false
	}
	u.line("")
	return true
}

// printStates prints all states: of each, the segments that it changes.
func (a *app) printStates(views []bom.StateView) {
	for _, v := range views {
		a.printStateHead(v)
		var changed []bom.SegmentView
		for _, g := range v.Segments {
			if v.Name == "normal" || g.Changed() {
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
