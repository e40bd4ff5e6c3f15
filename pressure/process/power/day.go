package power

import (
	"errors"

	"handtight/pressure/quantity"
)

// Day is a day's water.
type Day struct {
	Litres  float64
	Product quantity.Flow
	Current quantity.Current // at the battery
	Voltage quantity.Voltage
	Panels  quantity.Power    // of all panels, 0 for none
	Sun     quantity.Duration // hours of full sun
	System  quantity.Share    // what of the panels' power arrives
}

// Need is what a day's water takes.
type Need struct {
	Hours           quantity.Duration
	Charge          quantity.Charge
	WattHours       float64
	WattHoursALitre float64
	SunShare        quantity.Share // of the energy; may be above 1
}

// Need reckons a day: hours = litres / product, charge = hours x current, the sun gives
// panels x sun x system.
//
// Errors: a product or a voltage that is not above zero.
func (d Day) Need() (Need, error) {
	if !(d.Product > 0 && d.Voltage > 0 && d.Litres >= 0) {
		return Need{}, errors.New("a day's water needs a product and a voltage above zero")
	}
	n := Need{Hours: quantity.Duration(d.Litres / d.Product.LitresPerHour())}
	n.Charge = quantity.Charge(n.Hours.Hours() * float64(d.Current))
	n.WattHours = float64(n.Charge) * float64(d.Voltage)
	n.WattHoursALitre = float64(d.Current) * float64(d.Voltage) / d.Product.LitresPerHour()
	if n.WattHours > 0 {
		n.SunShare = quantity.Share(float64(d.Panels) * d.Sun.Hours() * float64(d.System) / n.WattHours)
	}
	return n, nil
}
