package pressure

import (
	"errors"

	"handtight/pressure/quantity"
)

// WaterPower returns the power that a pump gives the water: p q, in watts, for
// a rise of pressure p at flow q.
//
// Source: page "Hydraulic power", kW = bar x L/min / 600.
func WaterPower(p quantity.Pressure, q quantity.Flow) quantity.Power {
	return quantity.Power(float64(p) * float64(q))
}

// PumpCurrent returns the current that a pump draws: power / (voltage x
// efficiency), where power is what it gives the water, from [WaterPower], and
// efficiency is that of pump, belt and motor together, above 0 to 1.
//
// Errors: if the voltage is not above zero, the power is below zero, or the
// efficiency is outside its range.
func PumpCurrent(power quantity.Power, voltage quantity.Voltage, efficiency quantity.Share) (quantity.Current, error) {
	switch {
	case !(voltage > 0):
		return 0, errors.New("a pump needs a voltage above zero, such as 24 V; found " + voltage.String())
	case !(efficiency > 0 && efficiency <= 1):
		return 0, errors.New("an efficiency is above 0 and at most 100 %, such as 60 %; found " + efficiency.String())
	case !(power >= 0):
		return 0, errors.New("a pump gives the water power, such as 731 W; found " + power.String())
	}
	return quantity.Current(float64(power) / (float64(voltage) * float64(efficiency))), nil
}
