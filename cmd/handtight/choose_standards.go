package main

import (
	"context"
	"fmt"
	"strconv"
	"strings"

	"handtight/bom"
	"handtight/bom/choose"
	"handtight/bom/facts"
)

// standardsOf sets the ways side by side; none where no option and no goal is given.
func standardsOf(sys *bom.System, goal string) ([]facts.Standard, error) {
	out := []facts.Standard{}
	g := choose.Landed
	if goal != "" {
		var err error
		if g, err = choose.GoalNamed(goal); err != nil {
			return nil, err
		}
	} else if len(sys.Build.Options) == 0 {
		return out, nil
	}
	plans, err := choose.Plans(context.Background(), sys, g)
	if err != nil {
		return nil, err
	}
	for i := range plans {
		out = append(out, facts.StandardOf(&plans[i]))
	}
	return out, nil
}

var standardColumns = []column{
	{}, {title: "landed", right: true}, {title: "no offer", right: true}, {title: "joints", right: true}, {title: "adaptors", right: true},
	{title: "cautions", right: true}, {title: "stops", right: true}, {title: "families", flex: true},
}

// printStandards prints the ways side by side, and then what each takes.
func (a *app) printStandards(list []facts.Standard, currency, goal string) {
	if len(list) == 0 {
		return
	}
	u := a.ui
	u.line("")
	u.say(bold, "One standard throughout, in %s", currency)
	var rows [][]string
	for _, f := range list {
		row := []string{f.Name, "", "", "", "", "", "", "not possible"}
		if f.None == "" {
			row = []string{f.Name, *f.Total, strconv.Itoa(f.NoOffer), strconv.Itoa(f.Joints), strconv.Itoa(f.Adaptors), strconv.Itoa(f.Cautions), strconv.Itoa(f.Stops), strings.Join(f.Families, ", ")}
		}
		rows = append(rows, row)
	}
	if !u.table(standardColumns, rows) {
		for _, r := range rows {
			u.fold("  -", fmt.Sprintf("%s: landed %s, pieces without an offer %s, joints %s, adaptors %s, cautions %s, stops %s, families %s", r[0], r[1], r[2], r[3], r[4], r[5], r[6], r[7]))
		}
	}
	for _, f := range list {
		a.printStandard(&f, currency, goal)
	}
}

func (a *app) printStandard(f *facts.Standard, currency, goal string) {
	u := a.ui
	if f.None != "" {
		u.fold("  "+f.Name, "not possible: "+f.None)
	}
	if len(f.Only) > 0 {
		u.fold("  "+f.Name, "made in the other standard only, so that it is not all: "+few(f.Only))
	}
	for _, t := range f.Taken {
		text := fmt.Sprintf("%s in place of %s", t.Item, t.For)
		if t.Buy != "" {
			text = fmt.Sprintf("in place of %s: %s; no offer", t.For, t.Buy)
		}
		u.fold("  "+f.Name, text)
	}
	for _, n := range f.Needs {
		u.fold("  "+f.Name, fmt.Sprintf("%s still needs %s", n.Joint, strings.Join(n.Buy, "; and ")))
	}
	switch {
	case f.None != "" || f.Name != "best":
	case f.Proved:
		if goal == "" {
			goal = choose.Landed.String()
		}
		u.say(green, "Proved: no way of choosing is better for %s.", goal)
	case f.NoLess != nil:
		u.say(yellow, "Not proved: the search ended at its bound. No way costs less than %s %s.", *f.NoLess, currency)
	}
}
