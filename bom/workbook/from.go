package workbook

import (
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"
	"time"

	"handtight/bom"
	"handtight/bom/finding"
	"handtight/pressure"
	"handtight/pressure/quantity"
)

// From lays out what a check and an order found as the Content of a workbook.
func From(sys *bom.System, order *bom.Order, findings []finding.Finding, cautions []string) Content {
	b := sys.Build
	c := Content{
		Title: b.Name, Currency: b.Currency, Findings: findings, Cautions: cautions, Total: order.Total,
		Spares: sparesOf(order), Joints: jointsOf(sys), Segments: segmentsOf(sys), States: statesOf(sys), Parts: partsOf(sys),
		Assumptions: assumptionsOf(sys),
	}
	for _, v := range order.Vendors {
		c.Shops = append(c.Shops, shopOf(v))
	}
	if rest := linesOf(order.Unoffered()); len(rest) > 0 {
		c.Shops = append(c.Shops, Shop{Name: "No shop named yet", Lines: rest})
	}
	c.Rates = ratesOf(b, order)
	if len(c.Rates) > 0 {
		c.RatesDate = b.Rates.Date.Format(time.DateOnly)
	}
	return c
}

// ratesOf lists the rates that the order uses.
func ratesOf(b *bom.Build, order *bom.Order) []Rate {
	var out []Rate
	for _, code := range b.Rates.Codes() {
		used := slices.ContainsFunc(order.Vendors, func(v *bom.VendorOrder) bool { return v.Vendor.Currency == code })
		if rate, ok := b.Rates.Rate(code); ok && used {
			out = append(out, Rate{Currency: code, Rate: rate.Number()})
		}
	}
	return out
}

func shopOf(v *bom.VendorOrder) Shop {
	t := v.Vendor.Terms
	if v.FreightFree {
		t.Freight = v.Sums.Freight
	}
	return Shop{
		ID: v.Vendor.ID, Name: v.Vendor.Name, Currency: v.Vendor.Currency, Freight: t.Freight,
		Customs: t.Customs.Number(), Tax: t.Tax.Number(), Lines: linesOf(v.Lines),
		Goods: v.Sums.Goods, CustomsSum: v.Sums.Customs, TaxSum: v.Sums.Tax, Sum: v.Sums.Total, InBuild: v.InBuild,
	}
}

func linesOf(lines []*bom.Line) []Line {
	var out []Line
	for _, l := range lines {
		out = append(out, lineOf(l))
	}
	return out
}

func lineOf(l *bom.Line) Line {
	n := l.Need
	line := Line{
		Key: n.Key, Item: n.Key, About: n.About, Placed: n.Placed.String(), Planned: n.Planned.String(), Spare: n.Spare.String(),
		Extra: n.Extra.String(), Have: n.Have.String(), Order: l.Order.String(), Unit: n.Unit,
		Joints: numbers(n.Joints), Question: n.Question, RatingNeeded: needed(&n.Load), RatingFound: found(n),
	}
	if n.Item != nil {
		line.Ends, line.Material = n.Item.Ends(), n.Item.Material
	}
	if o := l.Offer; o != nil {
		line.Code, line.Pack = o.Code, o.Pack.String()
		if o.Unit != "" {
			line.Unit = o.Unit
		}
		if o.Lead != nil {
			line.Lead = o.Lead.Calendar()
		}
		if o.Price != nil {
			line.Price, line.HasPrice = *o.Price, true
		}
	}
	if l.Total != nil {
		line.Total = *l.Total
	}
	return line
}

// needed is the rating that a part must have, by what it sees.
func needed(l *bom.Load) string {
	worst, state := l.Worst()
	switch {
	case state == nil:
		return ""
	case worst < 0.001 && l.Low < 0:
		return "vacuum"
	case worst < 0.001:
		return ""
	case worst > l.Normal+0.001:
		return fmt.Sprintf("%s normal, %s worst", bar(l.Normal), bar(worst))
	}
	return bar(worst)
}

func found(n *bom.Need) string {
	switch {
	case n.Item == nil || n.Item.Kind.Loose:
		return ""
	case !n.Hold.Known:
		return "not known"
	}
	return fmt.Sprintf("%s, %s", bar(n.Hold.Rating.Pressure.Bar()), n.Hold.Rating.Basis)
}

// bar writes a pressure; one without bound in words.
func bar(v float64) string {
	if math.IsInf(v, 1) {
		return "no bound"
	}
	return strconv.FormatFloat(math.Round(v*10)/10, 'f', -1, 64) + " bar"
}

// about writes an estimate: to two figures, since it is known no better.
func about(v float64) string {
	unit := math.Pow(10, math.Floor(math.Log10(v))-1)
	return bar(math.Floor(v/unit) * unit)
}

func numbers(list []int) string {
	var out []string
	for _, n := range list {
		out = append(out, "J"+strconv.Itoa(n))
	}
	return strings.Join(out, ", ")
}

func sparesOf(order *bom.Order) []Spare {
	var out []Spare
	for _, l := range order.Lines {
		n := l.Need
		for _, w := range n.Advice {
			out = append(out, Spare{Item: n.Key, About: n.About, Rule: w.Rule, Fitted: n.Placed.String(), Count: w.Count.String(), Why: w.Text})
		}
		if n.Extra > 0 {
			out = append(out, Spare{Item: n.Key, About: n.About, Rule: "asked for", Fitted: n.Placed.String(), Count: n.Extra.String(), Why: "the build asks for it by `extra`"})
		}
	}
	return out
}

func jointsOf(sys *bom.System) []Joint {
	var out []Joint
	for _, j := range sys.Joints {
		a, b := &sys.Ports[j.A], &sys.Ports[j.B]
		worst, _ := sys.PortLoad(j.A).Worst()
		row := Joint{
			Number: "J" + strconv.Itoa(j.Number), Run: j.Run.Name, A: a.Name(), B: b.Name(), EndA: a.Port.Words(), EndB: b.Port.Words(),
			Verdict: "not judged", Reason: "an end is not known", WorstBar: bar(worst), Below: j.Run.Below,
		}
		if j.Known {
			m := &j.Mating
			row.Verdict, row.Reason, row.Closes = m.Verdict.String(), m.Reason(), sys.MakeupText(j)
			if row.Closes == "" {
				row.Closes = m.Remedy()
			} else {
				row.Closes = sentenceOf(row.Closes, sys.MakeupCare(j))
			}
			if m.Hand.Known {
				row.HandTurns = fmt.Sprintf("%.1f to %.1f", m.Hand.Tightest, m.Hand.Loosest)
			}
			if r, ok := sys.JointEstimate(j); ok {
				row.Bears = about(r.Pressure.Bar())
			}
		}
		out = append(out, row)
	}
	return out
}

func segmentsOf(sys *bom.System) []Segment {
	var out []Segment
	for _, g := range sys.Segments {
		worst, state := g.Load.Worst()
		row := Segment{Name: g.Name, Normal: bar(g.Load.Normal), Worst: bar(worst), Rating: "not known", Proof: "not known", High: g.High()}
		if p, ok := sys.Proof(g); ok {
			row.Proof = bar(p)
		}
		var runs []string
		for _, r := range g.Runs {
			runs = append(runs, r.Name)
		}
		row.Runs = strings.Join(runs, ", ")
		if state != nil {
			row.Cause = state.Cause
		}
		if g.Load.Low < 0 {
			row.Cause += "; vacuum: " + g.Load.ByLow.Cause
		}
		if g.Hold.Known {
			row.Weakest, row.Rating, row.Basis = g.Hold.What, bar(g.Hold.Rating.Pressure.Bar()), basis(g.Hold.Rating)
		}
		if m, ok := g.Margin(); ok {
			row.Margin = bar(m)
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
func basis(r pressure.Rating) string {
	if r.Basis == pressure.DataSheet {
		return r.Text
	}
	return r.Basis.String() + ": " + r.Text
}

// assumptionsOf lists what the list rests on: the duty, the spares' wishes, and the
// judgements of the tool.
func assumptionsOf(sys *bom.System) []Assumption {
	b := sys.Build
	var out []Assumption
	add := func(what, value, basis string) { out = append(out, Assumption{what, value, basis}) }
	if p := b.Duty.Pressure; p != nil {
		add("Pressure held on the throttle", p.String(), "the build file")
	}
	for _, t := range []struct {
		what string
		at   *quantity.Temperature
	}{{"Sea water, for the ratings", b.Duty.Water}, {"Air around the parts, for the ratings", b.Duty.Space}} {
		if t.at != nil {
			add(t.what, t.at.String(), "the build file; a data sheet is taken to speak of cold water")
		}
	}
	for _, s := range []struct{ key, what, value string }{
		{"away", "Time between shops", b.Spares.Away.Calendar()},
		{"hours", "Running hours in that time", b.Spares.Hours.String()},
		{"confidence", "Chance of having enough spares", percent(b.Spares.Confidence)},
		{"spoil", "Chance that a fitting is spoiled while fitting", percent(b.Spares.Spoil)},
	} {
		basis := "the build file"
		if slices.Contains(b.Spares.Assumed, s.key) {
			basis = "assumed, since the build file does not say (judgement)"
		}
		add(s.what, s.value, basis)
	}
	add("High pressure begins above", bar(bom.HighPressure), "judgement")
	add("A relief passing the whole flow stands at", fmt.Sprintf("%.1f times its set pressure", bom.FullFlowFactor), "judgement, unless its data sheet says (`full_flow`)")
	add("A tail fits a bore within", "0.6 mm; with a clamp at low pressure to 1.5 mm", "judgement")
	add("Tape", "half as much again for joints that are made twice", "common practice")
	add("Rounding", "half up: each line in the shop's currency, then customs, then tax; each shop's total converted once", "the tool's rule")
	add("Proof of the weakest", "one and a half times its rating, twice for a hose by its standard", "ASME B31.3-2016 345.4.2(a), SAE J517; a limit for a shop's test with gauges and relief taken off: on the boat the first test goes to the relief's setting and no further")
	add("What threads bear", "an estimate by the area that would shear, screwed together by hand, at the loosest parts", "FED-STD-H28/2, ASME B31.3 table A-1: it rates nothing")
	add("Friction in the lines", "left out: the highest pressure decides what bursts", "the tool's rule")
	return out
}

func percent(f float64) string { return strconv.FormatFloat(math.Round(f*1000)/10, 'f', -1, 64) + " %" }
