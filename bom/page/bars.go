package page

import (
	"fmt"
	"strconv"

	"handtight/bom/drawing"
	"handtight/bom/facts"
	"handtight/pressure/quantity"
)

// bars draws what each segment sees at worst against what it holds, and what each shop's part
// of the order comes to.
func (p *Page) bars(f *facts.Facts) {
	b := drawing.Bars{Title: "the worst pressure of each segment, bar", Desc: "a bar is the worst that a segment sees; the upright mark is what its weakest part holds"}
	for i := range f.Segments {
		s := &f.Segments[i]
		row := drawing.Bar{Name: s.Name, Over: s.Over, Text: bar(s.Worst, s.Unbounded)}
		if s.Worst.Known && !s.Unbounded {
			row.Value = max(0, s.Worst.Value)
		}
		if holds := s.Allowable.Bar; holds.Known {
			row.Mark = holds.Value
			row.Text += ", holds " + quantity.Decimals(holds.Value, 1)
		} else {
			row.Text += ", holds ?"
		}
		b.Rows = append(b.Rows, row)
	}
	p.Pressures, _ = b.View("pressures")
	if p.Order == nil {
		return
	}
	m := drawing.Bars{Title: "what each shop's part comes to, landed, in " + p.Order.Currency, Desc: "goods, freight, customs and tax, at the build's rates"}
	for i := range p.Order.Shops {
		v := &p.Order.Shops[i]
		if !v.InBuild.Known {
			continue
		}
		length, err := strconv.ParseFloat(v.InBuild.Amount.Number(), 64)
		if err != nil {
			continue
		}
		m.Rows = append(m.Rows, drawing.Bar{Name: v.Name, Value: length, Text: fmt.Sprintf("%s %s", v.InBuild.Amount.Number(), v.InBuild.Amount.CurrencyCode())})
	}
	p.Budget, _ = m.View("budget")
}
