package main

import (
	"fmt"
	"math"
	"strings"

	"handtight/bom"
	"handtight/bom/source"
)

// stateFacts is one state in JSON.
type stateFacts struct {
	Name      string          `json:"name"`
	Cause     string          `json:"cause"`
	Failure   bool            `json:"failure"`
	Segments  []stateSegment  `json:"segments"`
	Overloads []overloadFacts `json:"overloads"`
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
		f := stateFacts{Name: v.Name, Cause: v.Cause, Failure: v.Failure, Segments: []stateSegment{}, Overloads: []overloadFacts{}}
		for _, g := range v.Segments {
			f.Segments = append(f.Segments, stateSegment{g.Segment.Name, known(g.High), math.IsInf(g.High, 1), known(g.Low)})
		}
		for _, o := range v.Overloads {
			f.Overloads = append(f.Overloads, overloadFacts{o.What, known(o.Sees), math.IsInf(o.Sees, 1), known(o.Holds)})
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
		if near, found := source.Nearest(name, names); found {
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
	a.printOverloads(v.Overloads)
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
			a.ui.fold("  -", fmt.Sprintf("%s: %s bar (normal %s), holds %s", row[0], row[2], row[1], row[4]))
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

func (a *app) printOverloads(list []bom.Overload) {
	if len(list) == 0 {
		a.ui.say(green, "Nothing sees more than it holds.")
		a.ui.line("")
		return
	}
	a.ui.say(bold, "What sees more than it holds")
	for _, o := range list {
		a.ui.fold("  -", fmt.Sprintf("%s holds %s and sees %s", o.What, bars(o.Holds), bars(o.Sees)))
	}
	a.ui.line("")
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
		if len(v.Overloads) > 0 {
			a.printOverloads(v.Overloads)
		}
	}
}
