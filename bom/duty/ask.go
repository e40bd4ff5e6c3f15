package duty

import (
	"handtight/bom/graph"
	"math"

	"handtight/pressure/process/membrane"
	"handtight/pressure/quantity"
)

// Middling is the running at the middle of what is said.
func (m *Making) Middling() membrane.Running { return m.mid }

// Units are the parts of the plant that stand in its runs, in the build's order.
func (p *Plant) Units() []*graph.Unit { return p.units }

// PressureFor is the pressure at which the middle of what is said makes a product; ok is false
// where none does.
func (m *Making) PressureFor(product quantity.Flow) (quantity.Pressure, bool) {
	if len(m.row.Units) == 0 || !m.FeedKnown {
		return 0, false
	}
	p, err := m.row.PressureFor(product, m.mid)
	return p, err == nil
}

// PressureForSalt is the least pressure up to a limit, in steps of one bar, at which the product holds
// no more salt than so much, at the middle of what is said; ok is false where none does.
func (m *Making) PressureForSalt(salt membrane.MilligramPerLitre, most quantity.Pressure) (quantity.Pressure, bool) {
	if len(m.row.Units) == 0 || !m.FeedKnown {
		return 0, false
	}
	run := m.mid
	for p := quantity.Bar.Times(math.Ceil(m.mid.Pressure.Bar())); p <= most; p += quantity.Bar {
		run.Pressure = p
		if out, err := m.row.Solve(run, nil); err == nil && out.Salt <= salt {
			return run.Pressure, true
		}
	}
	return 0, false
}

// WaterForSalt is the warmest water in whole degrees, down to 5 C, in which the product holds no more
// salt than so much, all else as in the middle of what is said; ok is false where none does.
func (m *Making) WaterForSalt(salt membrane.MilligramPerLitre) (quantity.Temperature, bool) {
	if len(m.row.Units) == 0 || !m.FeedKnown {
		return 0, false
	}
	run := m.mid
	for c := math.Floor(m.mid.Temperature.Celsius()); c >= 5; c-- {
		run.Temperature = quantity.Temperature(c) * quantity.Celsius
		if out, err := m.row.Solve(run, nil); err == nil && out.Salt <= salt {
			return run.Temperature, true
		}
	}
	return 0, false
}

// FeedFor is the delivered feed at which no element takes more than a share of its own, at the
// middle of what is said, with the least brine of the class left.
func (m *Making) FeedFor(recovery quantity.Share) (quantity.Flow, bool) {
	if !m.Made {
		return 0, false
	}
	brine := quantity.Flow(0)
	if l, ok := m.Limit("brine_flow"); ok {
		brine = quantity.Flow(l.Limit) * quantity.LitrePerMinute
	}
	q, err := m.row.FeedFor(recovery, brine, m.mid)
	return q, err == nil
}

// MostPressure is what the element bears, by the generous end where its sheet is not
// said.
func (m *Making) MostPressure() quantity.Pressure {
	if l, ok := m.Limit("element_pressure"); ok {
		return quantity.Bar.Times(l.Limit)
	}
	u, _ := membrane.UsualOf("max_pressure")
	return quantity.Bar.Times(u.High)
}

// TestProduct is what the row's elements make in their tests, of unlike rows the mean.
func (m *Making) TestProduct() (sum quantity.Flow) {
	for _, row := range m.Rows {
		for _, v := range row {
			for _, e := range v.Elements {
				sum += e.sheet.Test.Product * quantity.Flow(e.Count) / quantity.Flow(len(m.Rows))
			}
		}
	}
	return sum
}

// Known reports whether the element can be reckoned with; Fault says why it cannot.
func (e *Elements) Known() bool { return e.known }

// Fault says why the element cannot be reckoned with.
func (e *Elements) Fault() string { return e.fault }

// Middle is the current at the middle, the feed pump with it.
func (p *Power) Middle() quantity.Current {
	if p.MidAmps == p.Feeder.Middle() {
		return p.MidAmps // the feed pump is all there is
	}
	return p.MidAmps + p.Feeder.Middle()
}
