// Package pump answers what a pump delivers: piston pumps by their speed, feed pumps by
// their curve, and pumps that take the brine's pressure back.
//
// [Piston] is a positive displacement pump, [Curve] a pump whose flow falls with its
// pressure, [Recovery] an energy-recovery pump (a pressure intensifier).
package pump

import (
	"errors"
	"fmt"
	"math"

	"handtight/pressure/process/span"
	"handtight/pressure/quantity"
)

// Displacement is the flow of plungers: number x pi/4 bore2 x stroke x turns a minute x
// volumetric efficiency.
//
// Errors: a figure that is not above zero, an efficiency above 100 %.
func Displacement(plungers int, bore, stroke quantity.Length, n quantity.Speed, volumetric quantity.Share) (quantity.Flow, error) {
	if !(plungers > 0 && bore > 0 && stroke > 0 && n > 0 && volumetric > 0 && volumetric <= 1) {
		return 0, errors.New("a pump's flow needs plungers, a bore, a stroke and a speed above zero, and a volumetric efficiency up to 100 %")
	}
	swept := float64(plungers) * math.Pi / 4 * bore.Metres() * bore.Metres() * stroke.Metres()
	return quantity.Flow(swept * n.TurnsPerMinute() / 60 * float64(volumetric)), nil
}

// UsualVolumetric is what a plunger pump delivers of what it sweeps, where nobody says (memory; the page
// "Positive Displacement Pump Sizing: Reciprocating & Rotary Fundamentals" has 90 to 97 %).
var UsualVolumetric = span.Between[quantity.Share](0.92, 0.95)

// Piston is a positive displacement pump: what it would sweep at its rated speed, and how
// much of it slips back at its rated pressure.
type Piston struct {
	Swept  quantity.Flow     // at the rated speed, without slip
	Slip   quantity.Flow     // at the rated pressure; laminar, so in proportion to it (judgement)
	Rated  quantity.Pressure // 0: the slip is the same at any pressure
	Faster float64           // running speed over the rated one; 0 is 1
}

// Delivered is what leaves the pump against a pressure, never below zero.
func (p Piston) Delivered(against quantity.Pressure) quantity.Flow {
	faster := p.Faster
	if faster == 0 {
		faster = 1
	}
	slip := p.Slip
	if p.Rated > 0 {
		slip = quantity.Flow(float64(p.Slip) * float64(against/p.Rated))
	}
	return max(0, quantity.Flow(float64(p.Swept)*faster)-slip)
}

// Speed is a pump's speed behind a belt: motor x its pulley / the pump's.
//
// Errors: a figure that is not above zero.
func Speed(motor quantity.Speed, motorPulley, pumpPulley quantity.Length) (quantity.Speed, error) {
	if !(motor > 0 && motorPulley > 0 && pumpPulley > 0) {
		return 0, fmt.Errorf("a belt's speeds and pulleys are above zero; found %s, %s and %s", motor, motorPulley, pumpPulley)
	}
	return motor * quantity.Speed(motorPulley/pumpPulley), nil
}
