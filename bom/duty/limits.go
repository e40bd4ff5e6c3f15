package duty

import (
	"math"

	"handtight/pressure/process/membrane"
	"handtight/pressure/process/span"
	"handtight/pressure/quantity"
)

// limits puts what the elements bear beside what they get. A figure that the sheet says is
// both ends; a class has a strict and a generous end.
func (m *Making) limits() {
	if !m.Made {
		return
	}
	l := m.Rows[0][0].Elements[0]
	pr := &l.Item.Process
	class := "by its size class " + l.Size
	usual := func(name string) membrane.Usual { u, _ := membrane.UsualOf(name); return u }
	pick := func(said *float64, strict, generous float64) (float64, float64, string) {
		if said != nil {
			return *said, *said, "by its sheet"
		}
		return strict, generous, class
	}
	add := func(l Limit) {
		if !math.IsNaN(l.Middle) {
			m.Limits = append(m.Limits, l)
		}
	}
	num := func(v float64) *float64 { return &v }
	var said *float64

	ways := float64(max(m.Ways, 1))
	if said = nil; pr.MaxFlow != nil {
		said = num(pr.MaxFlow.LitresPerMinute())
	}
	if l.class.Size != "" || said != nil {
		strict, generous, from := pick(said, l.class.MaxFeed.Lo.LitresPerMinute(), l.class.MaxFeed.Hi.LitresPerMinute())
		add(Limit{Name: "feed_flow", Words: "feed of each vessel, at most", Value: flows(m.Feed, ways), Middle: m.mid.Feed.LitresPerMinute() / ways, Limit: generous, Strict: strict, Unit: "L/min", From: from})
	}
	if said = nil; pr.MinBrine != nil {
		said = num(pr.MinBrine.LitresPerMinute())
	}
	if l.class.Size != "" || said != nil {
		strict, generous, from := pick(said, l.class.MinBrine.Hi.LitresPerMinute(), l.class.MinBrine.Lo.LitresPerMinute())
		add(Limit{Name: "brine_flow", Words: "brine of the last element, at least", Value: flows(m.All.Brine, ways), Middle: m.Middle.Brine.LitresPerMinute() / ways, Limit: generous, Strict: strict, Unit: "L/min", Least: true, From: from, Memory: said == nil && l.class.Marks["brine"] == "memory"})
	}
	if said = nil; pr.MaxRecovery != nil {
		said = num(pr.MaxRecovery.Percent())
	}
	most := usual("max_recovery").High
	strict, generous, from := pick(said, most, most)
	if said == nil {
		from = "usual for seawater elements"
	}
	add(Limit{Name: "recovery", Words: "recovery of any one element, at most", Value: span.Between(m.All.MostRecovery.Lo.Percent(), m.All.MostRecovery.Hi.Percent()),
		Middle: m.Middle.MostRecovery.Percent(), Limit: generous, Strict: strict, Unit: "%", From: from, Memory: said == nil && usual("max_recovery").Mark == "memory"})
	if said = nil; pr.MaxDrop != nil {
		said = num(pr.MaxDrop.Bar())
	}
	strict, generous, from = pick(said, usual("max_drop").Low, usual("max_drop").High)
	add(Limit{Name: "element_drop", Words: "loss along one element, at most", Value: span.Between(m.All.MostLoss.Lo.Bar(), m.All.MostLoss.Hi.Bar()),
		Middle: m.Middle.MostLoss.Bar(), Limit: generous, Strict: strict, Unit: "bar", From: from})
	if said = nil; l.Item.MostPressure() != nil {
		said = num(l.Item.MostPressure().Bar())
	}
	strict, generous, from = pick(said, usual("max_pressure").Low, usual("max_pressure").High)
	add(Limit{Name: "element_pressure", Words: "pressure of the element, at most", Value: span.Between(m.Pressure.Lo.Bar(), m.Pressure.Hi.Bar()),
		Middle: m.mid.Pressure.Bar(), Limit: generous, Strict: strict, Unit: "bar", From: from})
	if said = nil; pr.MaxWater != nil {
		said = num(pr.MaxWater.Celsius())
	}
	strict, generous, from = pick(said, usual("max_water").Low, usual("max_water").High)
	add(Limit{Name: "water", Words: "temperature of the water, at most", Value: span.Between(m.in.water.Lo.Celsius(), m.in.water.Hi.Celsius()),
		Middle: m.in.water.Middle().Celsius(), Limit: generous, Strict: strict, Unit: "C", From: from})
}

func flows(s span.Span[quantity.Flow], ways float64) span.Span[float64] {
	return span.Between(s.Lo.LitresPerMinute()/ways, s.Hi.LitresPerMinute()/ways)
}

// Limit finds a limit by its name.
func (m *Making) Limit(name string) (Limit, bool) {
	for _, l := range m.Limits {
		if l.Name == name {
			return l, true
		}
	}
	return Limit{}, false
}
