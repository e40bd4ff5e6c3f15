// Package flow answers how much water runs in each link of a plant, and at what pressure
// each node stands, in one condition.
//
// A [Network] is nodes and links; each link has a [Law] that gives its loss for a flow.
// Some nodes are at a known pressure (the sea, a tank), some give or take a known flow (a
// piston pump), a [Throttle] holds the pressure before it, and a [Vessel] takes product
// out of what passes it. [Network.Solve] balances the water at every node.
//
// The method is the global gradient of Todini and Pilati (1987; from memory): Newton on
// flows and pressures together, its linear equations by elimination in the order of least
// degree, which for a plant, nearly a tree, fills in next to nothing.
//
// These pressures are with friction. What a part must bear is for the pressure engine,
// which counts none.
package flow

import (
	"math"

	"handtight/pressure/process/line"
	"handtight/pressure/process/pump"
	"handtight/pressure/quantity"
)

// Law is how a link loses pressure.
type Law interface {
	// Loss is the pressure from a link's From to its To at a flow, and how it grows there in
	// Pa for a m3/s: above zero for every flow, both ways.
	Loss(q quantity.Flow) (loss quantity.Pressure, slope float64)
}

// Pipe is a length of hose or pipe with what stands in it.
type Pipe struct {
	Bore  line.Bore
	K     float64 // of all fittings, on the speed in the bore
	Water line.Water
	Times float64 // factor on the friction, for corrugated hose; 0 is 1
}

// Loss is friction and fittings; see [line.Bore.Loss] and [line.Minor].
func (p Pipe) Loss(q quantity.Flow) (quantity.Pressure, float64) {
	at := func(q quantity.Flow) quantity.Pressure {
		loss, err := p.Bore.Loss(q, p.Water)
		if err != nil {
			return quantity.Pressure(math.NaN()) // not nothing: Solve names the link
		}
		if p.Times > 0 {
			loss *= quantity.Pressure(p.Times)
		}
		return loss + line.Minor(p.K, q, p.Bore.Diameter, p.Water)
	}
	step := max(abs(q)*1e-5, 1e-10)
	loss := at(q)
	return loss, float64(at(q+step)-loss) / float64(step)
}

// Square is a part that loses a pressure at a flow, and four times that at twice the flow:
// filters, valves, strainers.
type Square struct {
	At    quantity.Flow
	Loses quantity.Pressure
}

// Loss is Loses (q/At)2 with the sign of the flow.
func (s Square) Loss(q quantity.Flow) (quantity.Pressure, float64) {
	x := float64(q / s.At)
	return s.Loses * quantity.Pressure(x*float64(abs(q)/s.At)), 2 * float64(s.Loses) * float64(abs(q)/s.At) / float64(s.At)
}

// Linear is a part that loses in proportion to the flow: a cartridge in laminar flow.
type Linear struct {
	At    quantity.Flow
	Loses quantity.Pressure
}

// Loss is Loses q/At.
func (l Linear) Loss(q quantity.Flow) (quantity.Pressure, float64) {
	slope := float64(l.Loses) / float64(l.At)
	return quantity.Pressure(slope * float64(q)), slope
}

// Rise is a link that goes up by a pressure's worth of water (down: below zero).
type Rise struct{ Pressure quantity.Pressure }

// Loss is the rise at any flow.
func (r Rise) Loss(quantity.Flow) (quantity.Pressure, float64) { return r.Pressure, 0 }

// Feed is a pump with a curve, or a supply that gives out as more is taken. Water does not run back
// through it.
type Feed struct{ Curve pump.Curve }

// Loss is what the pump adds, with the other sign.
func (f Feed) Loss(q quantity.Flow) (quantity.Pressure, float64) {
	if q < 0 {
		return -f.Curve.Shutoff() + quantity.Pressure(shut*float64(q)), shut
	}
	p, slope := f.Curve.At(q)
	return -p, -slope
}

// OneWay is a link that lets nothing back.
type OneWay struct{ Law }

// Loss is that of the link forward, and without bound backward.
func (o OneWay) Loss(q quantity.Flow) (quantity.Pressure, float64) {
	if q < 0 {
		loss, slope := o.Law.Loss(0)
		return loss + quantity.Pressure(shut*float64(q)), shut + slope
	}
	return o.Law.Loss(q)
}

// Laws is links in a line, taken as one.
type Laws []Law

// Loss is the sum.
func (l Laws) Loss(q quantity.Flow) (loss quantity.Pressure, slope float64) {
	for _, one := range l {
		p, s := one.Loss(q)
		loss, slope = loss+p, slope+s
	}
	return loss, slope
}

// shut is the slope of what is shut, in Pa for a m3/s: 1 bar lets a millionth of a litre a
// minute pass.
const shut = 1e5 / (1e-6 * 0.001 / 60)

func abs[Q ~float64](q Q) Q {
	if q < 0 {
		return -q
	}
	return q
}
