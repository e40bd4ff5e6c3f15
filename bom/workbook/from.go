package workbook

import (
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"

	"handtight/bom/facts"
)

// From lays out the facts of a checked build, its order and what is done aboard as the
// Content of a workbook. It reckons nothing.
func From(f *facts.Facts, order *facts.Order, boat *facts.Boat) Content {
	c := Content{
		Title: f.Build, Currency: order.Currency, RatesDate: order.RatesDate, Findings: f.Findings, Cautions: f.Cautions,
		Total: order.Total.Amount, Joints: jointsOf(f.Joints), Hoses: boat.Hoses, Test: boat.Test, Duty: dutyOf(f.Duty),
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
	c.Questions = questionsOf(f, c.Shops)
	return c
}

// questionsOf lists what is to be asked: of the shops by line, then of the joints.
func questionsOf(f *facts.Facts, shops []Shop) []Question {
	var out []Question
	for _, s := range shops {
		for _, l := range s.Lines {
			if l.Question != "" {
				out = append(out, Question{About: l.Item, Shop: s.ID, Ask: l.Question})
			}
		}
	}
	for _, q := range f.Questions {
		settles := fmt.Sprintf("%d joints", q.Joints)
		if q.Joints == 1 {
			settles = "1 joint"
		}
		if i := slices.IndexFunc(out, func(o Question) bool { return o.Ask == q.Ask && strings.HasPrefix(q.Port, o.About) }); i >= 0 {
			out[i].Settles = settles
			continue
		}
		out = append(out, Question{About: q.Port, Ask: q.Ask, Settles: settles})
	}
	return out
}

func shopOf(s facts.Shop) Shop {
	return Shop{
		ID: s.ID, Name: s.Name, Currency: s.Currency, Freight: s.AskFreight, FreeFrom: s.FreeFrom, Customs: s.CustomsRate, Tax: s.TaxRate,
		Lines: linesOf(s.Lines), Goods: s.Goods.Amount, CustomsSum: s.Customs.Amount, TaxSum: s.Tax.Amount, Sum: s.Total.Amount, InBuild: s.InBuild.Amount,
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
		Key: l.Item, Item: l.Item, About: l.About, Words: l.Words, URL: l.URL, RatingNeeded: needed(l.Sees), RatingFound: found(l),
		Placed: l.Placed.String(), Planned: l.Planned.String(), Spare: l.Spare.String(), Extra: l.Extra.String(), Have: l.Have.String(),
		Order: l.Order.String(), Unit: l.Sold, Lead: l.Lead, Joints: numbers(l.Joints), Question: l.Question, Code: l.Code,
		Price: l.Price.Amount, HasPrice: l.Price.Known, Total: l.Total.Amount, Danger: danger(l.Sees),
	}
	if l.Mark != "" {
		line.Key += shareSign + l.Mark
	}
	if l.Shares > 0 {
		line.Share = fmt.Sprintf("share %d of %d", l.Share, l.Shares)
	}
	if l.Shop != "" {
		line.Pack = l.Pack.String()
	}
	return line
}

// shareSign stands in a key between an item and what tells a second share of it, at one shop,
// from the first.
const shareSign = " || "

// danger ranks what a line's parts see: no bound, then by pressure, then a vacuum, then
// nothing.
func danger(x facts.Sees) float64 {
	switch {
	case x.Vacuum:
		return 0.5
	case x.Worst.Known:
		return x.Worst.Value
	}
	return 0
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

// numbers names joints, three or more in a row as one: "J1, J4 to J9".
func numbers(list []int) string {
	var out []string
	for i := 0; i < len(list); {
		k := i
		for k+1 < len(list) && list[k+1] == list[k]+1 {
			k++
		}
		if k < i+2 {
			k = i
		}
		word := "J" + strconv.Itoa(list[i])
		if k > i {
			word += " to J" + strconv.Itoa(list[k])
		}
		out = append(out, word)
		i = k + 1
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
			row.Closes, row.Care = j.Makeup, j.Care
		}
		if j.Verdict != nil {
			row.Verdict = *j.Verdict
		}
		if t := j.Turns; t != nil {
			row.HandTurns = fmt.Sprintf("%s to %s", turns(t.Tightest), turns(t.Loosest))
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
