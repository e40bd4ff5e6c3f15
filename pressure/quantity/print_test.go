package quantity

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/require"
)

// Common practice, no source: 55 bar, 60 L/h and 8 L/min below. Check values, and no limit rests on them.

func TestString(t *testing.T) {
	for _, c := range []struct {
		why  string
		q    fmt.Stringer
		want string
	}{
		{"whole bar have no decimals", 55 * Bar, "55 bar"},
		{"tenths are kept", 0.9 * Bar, "0.9 bar"},
		{"300 psi as fitters know it", 300 * PSI, "20.7 bar"},
		{"four figures from a hundred on", 4000 * PSI, "275.8 bar"},
		{"no pressure", Pressure(0), "0 bar"},
		{"a difference may be negative", -5 * Bar, "-5 bar"},
		{"just under a hundred", 99.97 * Bar, "99.97 bar"},
		{"product", 60 * LitrePerHour, "60 L/h"},
		{"a pump", 8 * LitrePerMinute, "8 L/min"},
		{"a harbour main", 90 * CubicMetrePerHour, "90 m3/h"},
		{"millimetres", 19 * Millimetre, "19 mm"},
		{"three quarters of an inch keeps its hundredths", 0.75 * Inch, "19.05 mm"},
		{"three eighths of an inch, held as a hair less than its half", 0.375 * Inch, "9.53 mm"},
		{"a metre and more", 1400 * Millimetre, "1.4 m"},
		{"almost a metre is a metre", 999.97 * Millimetre, "1 m"},
		{"filters are told by the micron", 5 * Micron, "5 micron"},
		{"no length", Length(0), "0 mm"},
		{"frost", -5.04 * Celsius, "-5 C"},
		{"just under nought is nought", -0.04 * Celsius, "0 C"},
		{"volts", 24 * Volt, "24 V"},
		{"amperes", 35.84 * Ampere, "35.8 A"},
		{"watts", 731 * Watt, "731 W"},
		{"kilowatts", 1500 * Watt, "1.5 kW"},
		{"ampere hours", 400 * AmpereHour, "400 Ah"},
		{"salinity", 35 * GramPerKilogram, "35 g/kg"},
		{"running hours stay hours", 250 * Hour, "250 h"},
		{"whole months are months", 9 * Month, "9 months"},
		{"one month", Month, "1 month"},
		{"percent", 95 * Percent, "95 %"},
		{"a tenth of a percent", 0.125 * Percent, "0.125 %"},
		{"torque", 40 * NewtonMetre, "40 N m"},
	} {
		t.Run(c.why, func(t *testing.T) { require.Equal(t, c.want, c.q.String()) })
	}
}

func TestCalendar(t *testing.T) {
	for _, c := range []struct {
		why  string
		d    Duration
		want string
	}{
		{"a shop's lead time", 14 * Day, "14 days"},
		{"weeks when there are many", 10 * Week, "10 weeks"},
		{"months", 9 * Month, "9 months"},
		{"a day and a half", 36 * Hour, "36 h"},
		{"one day", Day, "1 day"},
		{"odd hours in days", 250 * Hour, "10.4 days"},
	} {
		t.Run(c.why, func(t *testing.T) { require.Equal(t, c.want, c.d.Calendar()) })
	}
}
