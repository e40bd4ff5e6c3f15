package duty

import (
	"math"

	"handtight/pressure/process/membrane"
	"handtight/pressure/process/span"
	"handtight/pressure/quantity"
)

// limits puts what the elements bear beside what they get. A figure that the sheet says is
// both ends; a class has a strict and a generous end. Where rows or elements differ, the one that
// is nearest to its own limit, or furthest beyond it, stands for all.
func (m *Making) limits() {
	if !m.Made {
		return
	}
	for _, w := range m.ways {
		of := ""
		if len(m.ways) > 1 {
			of = " (" + w.vessels[0][0].Unit.Name + ")"
		}
		ways := float64(len(w.vessels))
		feed := span.Between(w.all.MostFeed.Lo.LitresPerMinute(), w.all.MostFeed.Hi.LitresPerMinute())
		middle := w.middle.MostFeed.LitresPerMinute()
		if len(m.ways) == 1 {
			feed, middle = flows(m.Feed, ways), m.mid.Feed.LitresPerMinute()/ways
		}
		m.feedLimit(w.first(), of, feed, middle)
		m.brineLimit(w.last(), of, w)
		for i, e := range w.elements {
			if i == 0 || e != w.elements[i-1] {
				m.elementLimits(e, of, w)
			}
		}
	}
}

// bound is a limit by an element's sheet, else by both ends of what is usual.
func bound(l Limit, said *float64, strict, generous float64, from string, memory bool) Limit {
	l.Strict, l.Limit, l.From, l.Memory = strict, generous, from, memory
	if said != nil {
		l.Strict, l.Limit, l.From, l.Memory = *said, *said, "by its sheet", false
	}
	return l
}

// figure is a quantity that a sheet says in a unit; nil where it does not.
func figure[Q any](said *Q, in func(Q) float64) *float64 {
	if said == nil {
		return nil
	}
	v := in(*said)
	return &v
}

// put takes a limit over, unless one of its name that stands already is nearer to failing.
func (m *Making) put(l Limit) {
	if math.IsNaN(l.Middle) {
		return
	}
	for i := range m.Limits {
		if old := &m.Limits[i]; old.Name == l.Name {
			if l.harder(old) {
				*old = l
			}
			return
		}
	}
	m.Limits = append(m.Limits, l)
}

// harder reports whether a limit is nearer to failing than another of its name.
func (l *Limit) harder(o *Limit) bool {
	if l.Fails() != o.Fails() {
		return l.Fails()
	}
	return l.Margin()*math.Abs(o.Strict) < o.Margin()*math.Abs(l.Strict)
}

func usual(name string) membrane.Usual { u, _ := membrane.UsualOf(name); return u }

func (m *Making) feedLimit(e *Elements, of string, feed span.Span[float64], middle float64) {
	said := figure(e.Item.Process.MaxFlow, quantity.Flow.LitresPerMinute)
	if e.class.Size == "" && said == nil {
		return
	}
	c := e.class.MaxFeed
	m.put(bound(Limit{Name: "feed_flow", Words: "feed of each vessel, at most" + of, Value: feed, Middle: middle, Unit: "L/min"},
		said, c.Lo.LitresPerMinute(), c.Hi.LitresPerMinute(), "by its size class "+e.Size, false))
}

func (m *Making) brineLimit(e *Elements, of string, w *way) {
	said := figure(e.Item.Process.MinBrine, quantity.Flow.LitresPerMinute)
	if e.class.Size == "" && said == nil {
		return
	}
	c := e.class.MinBrine
	m.put(bound(Limit{Name: "brine_flow", Words: "brine of the last element, at least" + of, Value: flows(w.all.LeastBrine, 1), Middle: w.middle.LeastBrine.LitresPerMinute(), Unit: "L/min", Least: true},
		said, c.Hi.LitresPerMinute(), c.Lo.LitresPerMinute(), "by its size class "+e.Size, e.class.Marks["brine"] == "memory"))
}

// elementLimits are those of an element wherever it stands in its row.
func (m *Making) elementLimits(e *Elements, of string, w *way) {
	pr, class := &e.Item.Process, "by its size class "+e.Size
	recovery, drop, pressure, water := usual("max_recovery"), usual("max_drop"), usual("max_pressure"), usual("max_water")
	m.put(bound(Limit{Name: "recovery", Words: "recovery of any one element, at most" + of, Value: span.Between(w.all.MostRecovery.Lo.Percent(), w.all.MostRecovery.Hi.Percent()), Middle: w.middle.MostRecovery.Percent(), Unit: "%"},
		figure(pr.MaxRecovery, quantity.Share.Percent), recovery.High, recovery.High, "usual for seawater elements", recovery.Mark == "memory"))
	m.put(bound(Limit{Name: "element_drop", Words: "loss along one element, at most" + of, Value: span.Between(w.all.MostLoss.Lo.Bar(), w.all.MostLoss.Hi.Bar()), Middle: w.middle.MostLoss.Bar(), Unit: "bar"},
		figure(pr.MaxDrop, quantity.Pressure.Bar), drop.Low, drop.High, class, false))
	m.put(bound(Limit{Name: "element_pressure", Words: "pressure of the element, at most" + of, Value: span.Between(m.Pressure.Lo.Bar(), m.Pressure.Hi.Bar()), Middle: m.mid.Pressure.Bar(), Unit: "bar"},
		figure(e.Item.MostPressure(), quantity.Pressure.Bar), pressure.Low, pressure.High, class, false))
	m.put(bound(Limit{Name: "water", Words: "temperature of the water, at most" + of, Value: span.Between(m.in.water.Lo.Celsius(), m.in.water.Hi.Celsius()), Middle: m.in.water.Middle().Celsius(), Unit: "C"},
		figure(pr.MaxWater, quantity.Temperature.Celsius), water.Low, water.High, class, false))
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
