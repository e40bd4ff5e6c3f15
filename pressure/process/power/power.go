// Package power answers what a pump asks of an engine or of a battery: shaft, motor and
// battery power, current behind a cable, the cable's size, hours and ampere hours a day.
//
// It gives ranges where efficiencies are not known. It sizes a cable by volt drop only:
// what current a cable may carry, and its fuse, are for the local code and for people
// who are licensed to say so.
package power

import (
	"errors"
	"fmt"
	"math"

	"handtight/pressure/process/span"
	"handtight/pressure/quantity"
)

// Hydraulic is the power that goes into the water: q (p - inlet). 1 bar L/min is 1.6667 W.
func Hydraulic(q quantity.Flow, p, inlet quantity.Pressure) quantity.Power {
	return quantity.Power(float64(q) * float64(p-inlet))
}

// Boosted is the shaft power of a pump whose inlet stands under pressure: q p / efficiency,
// less q inlet (efficiency - 3 points) where the inlet is over 5 % of the pressure.
//
// Errors: an efficiency outside 3 to 100 %, or a flow or pressure below zero.
// Source: engineering forum, thread on the shaft power of plunger pumps; its case of
// 10.3 gal/min from 300 to 700 psi is in the tests.
func Boosted(q quantity.Flow, p, inlet quantity.Pressure, efficiency quantity.Share) (quantity.Power, error) {
	if !(efficiency > 0.03 && efficiency <= 1) {
		return 0, fmt.Errorf("a pump's efficiency is above 3 and at most 100 %%; found %s", efficiency)
	}
	if !(q >= 0 && p >= 0 && inlet >= 0) {
		return 0, errors.New("a pump's flow and pressures are not below zero")
	}
	w := float64(q) * float64(p) / float64(efficiency)
	if inlet > p/20 {
		w -= float64(q) * float64(inlet) * (float64(efficiency) - 0.03)
	}
	return quantity.Power(w), nil
}

// Train is what stands between the water and where its power comes from, each a share; 1
// for what is not there.
type Train struct{ Pump, Belt, Motor, Inverter quantity.Share }

// Trains is a range of trains, from the worst to the best.
type Trains struct{ Worst, Best Train }

// Usual is a train of which nothing is said, by a belt and a brushed motor on direct
// current: pump 0.83 to 0.90 (part seen), belt 0.93 to 0.97 and motor 0.75 to 0.85 (memory).
var Usual = Trains{Train{0.83, 0.93, 0.75, 1}, Train{0.90, 0.97, 0.85, 1}}

func (t Train) check() error {
	for _, s := range []quantity.Share{t.Pump, t.Belt, t.Motor, t.Inverter} {
		if !(s > 0 && s <= 1) {
			return fmt.Errorf("an efficiency is above 0 and at most 100 %%; found %s", s)
		}
	}
	return nil
}

// Electric is the power at the battery, at the motor's shaft and at the pump's for a power
// of the water.
//
// Errors: an efficiency outside 0 to 100 %, a power below zero.
func Electric(water quantity.Power, t Train) (battery, motor, shaft quantity.Power, err error) {
	if err := t.check(); err != nil {
		return 0, 0, 0, err
	}
	if !(water >= 0) {
		return 0, 0, 0, fmt.Errorf("a power of the water is not below zero; found %s", water)
	}
	shaft = quantity.Power(float64(water) / float64(t.Pump))
	motor = quantity.Power(float64(shaft) / float64(t.Belt))
	battery = quantity.Power(float64(motor) / float64(t.Motor*t.Inverter))
	return battery, motor, shaft, nil
}

// Range is the power at the battery from the best to the worst train.
//
// Errors: those of [Electric].
func Range(water quantity.Power, t Trains) (span.Span[quantity.Power], error) {
	best, _, _, err := Electric(water, t.Best)
	if err != nil {
		return span.Span[quantity.Power]{}, err
	}
	worst, _, _, err := Electric(water, t.Worst)
	return span.Between(best, worst), err
}

// ErrTooMuch says that a cable cannot carry a power at any current.
var ErrTooMuch = errors.New("the cable cannot carry that power at any current")

// Current is what flows for a power at the far end of a cable: the lesser root of
// R I2 - V I + W = 0, written as 2 W / (V + sqrt(V2 - 4 R W)), which keeps its figures
// where the resistance is small.
//
// Errors: [ErrTooMuch] where the root is of a negative; a voltage that is not above zero.
func Current(w quantity.Power, v quantity.Voltage, cable Ohm) (quantity.Current, error) {
	if !(v > 0 && w >= 0 && cable >= 0) {
		return 0, fmt.Errorf("a current needs a voltage above zero; found %s", v)
	}
	root := float64(v)*float64(v) - 4*float64(cable)*float64(w)
	if root < 0 {
		return 0, ErrTooMuch
	}
	return quantity.Current(2 * float64(w) / (float64(v) + math.Sqrt(root))), nil
}

// Possible reports whether a current at a voltage can give the water its power at all,
// whatever the efficiencies.
func Possible(i quantity.Current, v quantity.Voltage, water quantity.Power) bool {
	return float64(i)*float64(v) >= float64(water)
}

// Torque is what turns a shaft that gives a power: W / (2 pi n), n in turns a minute.
//
// Errors: a speed that is not above zero.
func Torque(w quantity.Power, n quantity.Speed) (quantity.Torque, error) {
	if !(n > 0) {
		return 0, errors.New("a torque needs a speed above zero")
	}
	return quantity.Torque(float64(w) / (2 * math.Pi * n.TurnsPerMinute() / 60)), nil
}
