package duty

import (
	"handtight/pressure/process/membrane"
	"handtight/pressure/quantity"
)

// Middling is the running at the middle of what is said.
func (m *Making) Middling() membrane.Running { return m.mid }

// PressureFor is the pressure at which the middle of what is said makes a product; ok is false
// where none does.
func (m *Making) PressureFor(product quantity.Flow) (quantity.Pressure, bool) {
	if len(m.row.Units) == 0 || !m.FeedKnown {
		return 0, false
	}
	p, err := m.row.PressureFor(product, m.mid)
	return p, err == nil
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

// MostPressure is what the element bears in bar, by the generous end where its sheet is not
// said.
func (m *Making) MostPressure() float64 {
	if l, ok := m.Limit("element_pressure"); ok {
		return l.Limit
	}
	u, _ := membrane.UsualOf("max_pressure")
	return u.High
}

// TestProduct is what the row's elements make in their tests.
func (m *Making) TestProduct() (sum quantity.Flow) {
	for _, v := range m.Rows[0] {
		for _, e := range v.Elements {
			sum += e.sheet.Test.Product * quantity.Flow(e.Count)
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
