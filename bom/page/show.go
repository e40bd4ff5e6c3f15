package page

import (
	"fmt"
	"strings"

	"handtight/bom/facts"
	"handtight/bom/graph"
	"handtight/bom/stages"
	"handtight/pressure/quantity"
)

// What the template prints in a form of its own. Each turns a fact into words and reckons
// nothing.

// Bar prints a figure in bar.
func (p *Page) Bar(n facts.Number) string { return bar(n, false) }

// Figure prints a figure without its unit; a dash where it is not known.
func (p *Page) Figure(n facts.Number) string {
	if !n.Known {
		return "–"
	}
	if n.Value >= 100 || n.Value <= -100 {
		return quantity.Decimals(n.Value, 0)
	}
	return quantity.Decimals(n.Value, 1)
}

// One prints a plain number.
func (p *Page) One(v float64) string { return quantity.Decimals(v, 1) }

// Money prints a sum with its currency; "not known" without one.
func (p *Page) Money(m facts.Money) string {
	if !m.Known {
		return "not known"
	}
	return m.Amount.Number() + " " + m.Amount.CurrencyCode()
}

// Joints prints numbers of joints, runs drawn together: "J1 to J6, J20".
func (p *Page) Joints(list []*graph.Joint) string {
	var out []string
	for i := 0; i < len(list); {
		k := i
		for k+1 < len(list) && list[k+1].Number == list[k].Number+1 {
			k++
		}
		if k == i {
			out = append(out, fmt.Sprintf("J%d", list[i].Number))
		} else {
			out = append(out, fmt.Sprintf("J%d to J%d", list[i].Number, list[k].Number))
		}
		i = k + 1
	}
	return strings.Join(out, ", ")
}

// Percent prints a share.
func (p *Page) Percent(share float64) string {
	return quantity.Decimals(share*100, 0) + " %"
}

// Length prints a length of hose in metres, or a dash where none is known.
func (p *Page) Length(l *quantity.Length) string {
	if l == nil {
		return "not said"
	}
	return l.String()
}

// Step prints a step of rising pressure.
func (p *Page) Step(s stages.Step) string {
	return fmt.Sprintf("%s bar, %d min", quantity.Decimals(s.Pressure.Bar(), 1), s.Hold)
}

// Ordered prints how many are ordered, in the shop's unit.
func (p *Page) Ordered(l facts.Line) string {
	unit := l.Unit
	if l.Sold != "" {
		unit = l.Sold
	}
	return l.Order.String() + " " + unit
}
