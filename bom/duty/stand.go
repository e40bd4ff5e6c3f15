package duty

import (
	"handtight/bom/graph"
	"handtight/catalog"
	"handtight/pressure/process/flow"
	"handtight/pressure/process/line"
	"handtight/pressure/process/span"
	"handtight/pressure/quantity"
)

// pressures takes what stands at each port in the clean cases. The network counts from the
// waterline; what stands on the pump's height has so much less.
func (l *Lines) pressures(nets []*net, answers []*flow.Answer) {
	m := nets[0].m
	for _, u := range m.units {
		for k := range u.Item.Ports {
			p := span.Empty[quantity.Pressure]()
			for c, n := range nets {
				if !n.dirty {
					p = p.Reach(answers[c].Pressure[n.node[u.First+k]] - n.lifted())
				}
			}
			l.Pressure[u.First+k] = p
		}
	}
	l.Back = span.Empty[quantity.Pressure]()
	for _, row := range m.Rows {
		for _, v := range row {
			if at := v.Unit.Item.PortIndex("product"); at >= 0 && m.Made {
				p := l.Pressure[v.Unit.First+at]
				l.Back = l.Back.Reach(p.Lo).Reach(p.Hi)
			}
		}
	}
}

// lifted is what the pump's height over the water takes of a pressure.
func (n *net) lifted() quantity.Pressure {
	return quantity.Pressure(float64(n.m.water.Density) * line.Gravity * n.lift.Metres())
}

// stoodUp is what the highest tank of a plant stands over its pump, where its height is said: the
// product must be pressed up there. It is never below zero: the last hose runs empty.
func stoodUp(m *Making) quantity.Pressure {
	most := quantity.Pressure(0)
	for _, u := range m.units {
		h := u.Item.Process.Height
		if h == nil || !m.tankOf(u) {
			continue
		}
		lift := quantity.Length(0)
		if l := m.plan.Duty.Lift; l != nil {
			lift = *l
		}
		most = max(most, quantity.Pressure(float64(m.water.Density)*line.Gravity*(*h-lift).Metres()))
	}
	return most
}

// tankOf reports whether a tank takes the plant's product.
func (m *Making) tankOf(u *graph.Unit) bool { return m.product(u.First) }

// Stands is what stands at a port in normal running; ok is false where the flows are not
// reckoned, or the port is of another plant. On the high side of a plant the hand on the throttle
// counts, and of an energy-recovery pump what the membrane comes to.
func (m *Making) Stands(port int, high bool) (p span.Span[quantity.Pressure], ok bool) {
	if m.Lines == nil || !m.Lines.Solved {
		return p, false
	}
	p, ok = m.Lines.Pressure[port]
	switch {
	case !ok || !high:
		return p, ok
	case m.Recovered != nil:
		return m.Pressure, m.Made
	case !m.in.hasPressure:
		return p, false
	}
	return span.Between(p.Lo-byHand, p.Hi+byHand), true
}

// Unloads reports whether an unloader of a known setting leads back what the vessels do not take.
func (m *Making) Unloads() bool {
	for _, u := range m.units {
		if u.Item.Kind.Has(catalog.Unload) && u.Item.Set != nil {
			return true
		}
	}
	return false
}
