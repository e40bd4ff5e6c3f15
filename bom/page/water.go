package page

import (
	"fmt"
	"math"

	"handtight/bom"
	"handtight/bom/drawing"
	"handtight/bom/duty"
	"handtight/bom/facts"
	"handtight/bom/finding"
)

// water gathers what the plant makes and takes, with its curves.
func (p *Page) water(sys *bom.System, list []finding.Finding) {
	d := facts.DutyOf(duty.Of(sys), nil, nil, true)
	for i := range d.Plants {
		if !d.Plants[i].Made {
			continue
		}
		p.Duty = d
		c := d.Plants[i].Curves
		if c == nil {
			continue
		}
		p.chart(fmt.Sprintf("curve-pressure-%d", i+1), "product, L/h, against the pressure, bar", "pressure, bar", c.Pressure)
		p.chart(fmt.Sprintf("curve-temperature-%d", i+1), "product, L/h, against the water's temperature, C", "water, C", c.Temperature)
	}
}

func (p *Page) chart(id, title, x string, points []facts.DutyPoint) {
	c := drawing.Chart{Title: title, XWord: x, YWord: "L/h", Desc: "the grey band is from the least to the most that may come; the line is the middle of what is said"}
	for _, q := range points {
		c.Points = append(c.Points, drawing.ChartPoint{X: q.At, Low: value(q.ProductLow), Middle: value(q.Product), High: value(q.ProductTop)})
	}
	if v, ok := c.View(id); ok {
		p.Charts = append(p.Charts, Chart{View: v, Points: thinned(points), XWord: x})
	}
}

func value(n facts.Number) float64 {
	if !n.Known {
		return math.NaN()
	}
	return n.Value
}

// thinned is about six of a curve's points, for the figures beside it.
func thinned(list []facts.DutyPoint) []facts.DutyPoint {
	step := max(1, len(list)/6)
	var out []facts.DutyPoint
	for i := 0; i < len(list); i += step {
		out = append(out, list[i])
	}
	return out
}
