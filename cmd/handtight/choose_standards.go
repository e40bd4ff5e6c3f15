package main

import (
	"context"
	"fmt"
	"strconv"
	"strings"

	"handtight/bom"
	"handtight/bom/choose"
)

// standardFacts is the build in one way: as it is, in one standard, or the best.
type standardFacts struct {
	Name     string      `json:"name"`
	None     string      `json:"none"` // why there is no such way; "" where there is
	Only     []string    `json:"only"` // parts made in another standard alone
	Total    *string     `json:"total"`
	NoOffer  int         `json:"no_offer"` // pieces to buy without a price, in no total
	Joints   int         `json:"joints"`
	Adaptors int         `json:"adaptors"`
	Families []string    `json:"families"`
	Cautions int         `json:"cautions"`
	Stops    int         `json:"stops"`
	Proved   bool        `json:"proved"`
	NoLess   *string     `json:"no_less_than"` // null where nothing is known of the cost of all ways
	Taken    []takenItem `json:"taken"`
	Needs    []jointNeed `json:"joints_need"`
}

type takenItem struct {
	For  string `json:"for"`
	Item string `json:"item"`
	Buy  string `json:"buy"` // a generic fitting in shop words; "" for an item of the build
}

type jointNeed struct {
	Joint string   `json:"joint"`
	Buy   []string `json:"buy"`
}

// standardsOf sets the ways side by side; none where no option and no goal is given.
func standardsOf(sys *bom.System, goal string) ([]standardFacts, error) {
	out := []standardFacts{}
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
		out = append(out, standardOf(&plans[i]))
	}
	return out, nil
}

func standardOf(p *choose.Plan) standardFacts {
	f := standardFacts{
		Name: p.Name, None: p.None, Only: names(p.Only), NoOffer: p.Unpriced, Joints: p.Joints, Adaptors: p.Adaptors, Families: names(p.Families),
		Cautions: p.Cautions, Stops: p.Stops, Proved: p.Proved, Taken: []takenItem{}, Needs: []jointNeed{},
	}
	if p.None != "" {
		return f
	}
	total := p.Order.Total.Number()
	f.Total = &total
	if p.Bound.CurrencyCode() != "" {
		bound := p.Bound.Number()
		f.NoLess = &bound
	}
	for _, t := range p.Taken {
		f.Taken = append(f.Taken, takenItem{t.For, t.Item, t.Title})
	}
	for _, j := range p.Fitted {
		n := jointNeed{Joint: j.Joint}
		for _, q := range j.Chain.Pieces {
			n.Buy = append(n.Buy, q.Title)
		}
		f.Needs = append(f.Needs, n)
	}
	return f
}

var standardColumns = []column{
	{}, {title: "landed", right: true}, {title: "no offer", right: true}, {title: "joints", right: true}, {title: "adaptors", right: true},
	{title: "cautions", right: true}, {title: "stops", right: true}, {title: "families", flex: true},
}

// printStandards prints the ways side by side, and then what each takes.
func (a *app) printStandards(list []standardFacts, currency, goal string) {
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

func (a *app) printStandard(f *standardFacts, currency, goal string) {
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
