package workbook

import (
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"

	"handtight/bom/facts"
)

// From lays out the facts of a checked build, of all its states and of its order as the
// Content of a workbook. It reckons nothing.
func From(f *facts.Facts, states []facts.State, order *facts.Order) Content {
	c := Content{
		Title: f.Build, Currency: order.Currency, RatesDate: order.RatesDate, Findings: f.Findings, Cautions: f.Cautions,
		Total: order.Total.Amount, Joints: jointsOf(f.Joints), Segments: segmentsOf(f.Segments), States: statesOf(states), Parts: partsOf(f.WorstFirst), Duty: dutyOf(f.Duty),
	}
	for _, a := range f.Assumptions {
		c.Assumptions = append(c.Assumptions, Assumption(a))
	}
	for _, s := range order.Spares {
		c.Spares = append(c.Spares, Spare{Item: s.Item, About: s.About, Rule: s.Rule, Fitted: s.Fitted.String(), Count: s.Count.String(), Why: s.Why})
	}
	for _, s := range order.Shops {
		c.Shops = append(c.Shops, shopOf(s))
	}
	if len(order.Unoffered) > 0 {
		c.Shops = append(c.Shops, Shop{Name: "No shop named yet", Lines: linesOf(order.Unoffered)})
	}
	for _, r := range order.Rates {
		c.Rates = append(c.Rates, Rate(r))
	}
	return c
}

func shopOf(s facts.Shop) Shop {
	return Shop{
		ID: s.ID, Name: s.Name, Currency: s.Currency, Freight: s.AskFreight, Customs: s.CustomsRate, Tax: s.TaxRate, Lines: linesOf(s.Lines),
		Goods: s.Goods.Amount, CustomsSum: s.Customs.Amount, TaxSum: s.Tax.Amount, Sum: s.Total.Amount, InBuild: s.InBuild.Amount,
	}
}

func linesOf(lines []facts.Line) []Line {
	var out []Line
	for i := range lines {
		out = append(out, lineOf(&lines[i]))
	}
	return out
}

func lineOf(l *facts.Line) Line {
	line := Line{
		Key: l.Item, Item: l.Item, About: l.About, Ends: l.Ends, Material: l.Material, RatingNeeded: needed(l.Sees), RatingFound: found(l),
		Placed: l.Placed.String(), Planned: l.Planned.String(), Spare: l.Spare.String(), Extra: l.Extra.String(), Have: l.Have.String(),
		Order: l.Order.String(), Unit: l.Sold, Lead: l.Lead, Joints: numbers(l.Joints), Question: l.Question, Code: l.Code,
		Price: l.Price.Amount, HasPrice: l.Price.Known, Total: l.Total.Amount,
	}
	if l.Shop != "" {
		line.Pack = l.Pack.String()
	}
	return line
}

// needed is the rating that a part must have, by what it sees.
func needed(x facts.Sees) string {
	switch {
	case x.Vacuum:
		return "vacuum"
	case !x.Worst.Known:
		return ""
	case x.Raised:
		return fmt.Sprintf("%s normal, %s worst", bar(x.Normal), bar(x.Worst))
	}
	return bar(x.Worst)
}

func found(l *facts.Line) string {
	switch {
	case !l.Sees.Rated:
		return ""
	case !l.Holds.Bar.Known:
		return "not known"
	}
	return fmt.Sprintf("%s, %s", bar(l.Holds.Bar), l.Holds.Basis)
}

// bar writes a pressure; one without bound, and one that is not known, in words.
func bar(n facts.Number) string {
	switch {
	case !n.Known:
		return "not known"
	case n.Unbounded():
		return "no bound"
	}
	return strconv.FormatFloat(math.Round(n.Value*10)/10+0, 'f', -1, 64) + " bar"
}

// about writes an estimate: to two figures, since it is known no better.
func about(v float64) string {
	unit := math.Pow(10, math.Floor(math.Log10(v))-1)
	return bar(facts.Figure(math.Floor(v/unit) * unit))
}

func numbers(list []int) string {
	var out []string
	for _, n := range list {
		out = append(out, "J"+strconv.Itoa(n))
	}
	return strings.Join(out, ", ")
}

func jointsOf(list []facts.Joint) []Joint {
	var out []Joint
	for i := range list {
		j := &list[i]
		row := Joint{
			Number: "J" + strconv.Itoa(j.Number), Run: j.Run, A: j.A, B: j.B, EndA: j.EndA, EndB: j.EndB,
			Verdict: "not judged", Reason: j.Reason, Closes: j.Remedy, WorstBar: bar(j.Worst), Below: j.Below,
		}
		if j.Makeup != "" {
			row.Closes = sentenceOf(j.Makeup, j.Care)
		}
		if j.Verdict != nil {
			row.Verdict = *j.Verdict
		}
		if t := j.Turns; t != nil {
			row.HandTurns = fmt.Sprintf("%s to %s", turns(t.Tightest), turns(t.Loosest))
		}
		if j.Verdict != nil && j.Thread.Known {
			row.Bears = about(j.Thread.Value)
		}
		out = append(out, row)
	}
	return out
}

func turns(n facts.Number) string {
	if !n.Known {
		return "never"
	}
	return fmt.Sprintf("%.1f", n.Value)
}

func segmentsOf(list []facts.Segment) []Segment {
	var out []Segment
	for i := range list {
		g := &list[i]
		row := Segment{
			Name: g.Name, Runs: strings.Join(g.Runs, ", "), Normal: bar(g.Normal), Worst: bar(g.Worst), Cause: g.Cause, Weakest: g.Weakest,
			Rating: bar(g.Bar), Basis: basis(&g.Allowable), Proof: bar(g.Proof), High: g.High, Over: g.Over,
		}
		if len(g.Unrated) > 0 {
			row.Basis = "not known: " + strings.Join(g.Unrated, ", ")
			if g.AtMost.Known {
				row.Basis += fmt.Sprintf("; at most %s bar: %s", bar(g.AtMost), g.Text)
			}
		}
		if g.LowCause != "" {
			row.Cause += "; vacuum: " + g.LowCause
		}
		if g.Margin.Known {
			row.Margin = bar(g.Margin)
		}
		out = append(out, row)
	}
	return out
}

// sentenceOf joins what closes a joint and how to make it.
func sentenceOf(parts ...string) string {
	return strings.Join(slices.DeleteFunc(parts, func(s string) bool { return s == "" }), ". ")
}

// basis says where a rating comes from; a data sheet's text says so itself.
func basis(a *facts.Allowable) string {
	if a.Sheet || !a.Bar.Known {
		return a.Text
	}
	return a.Basis + ": " + a.Text
}
