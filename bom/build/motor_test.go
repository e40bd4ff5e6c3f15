package build_test

import (
	"testing"

	"github.com/stretchr/testify/require"

	"handtight/bom/build"
	"handtight/pressure/quantity"
)

func TestWhichBatteryDrivesAPump(t *testing.T) {
	const none = quantity.Voltage(0)
	for _, c := range []struct {
		motor  string
		supply quantity.Voltage
		want   quantity.Voltage // none: no battery
	}{
		{"", 12, 12},
		{"", none, none},
		{"", 230, none},
		{"belt drive", 24, 24},
		{"24 V DC, belt drive", 12, 24},
		{"24VDC", none, 24},
		{"12-volt motor, in the engine room", 24, 12},
		{"12/24 V", 24, 12},
		{"24 V, two V-belts", 12, 24},
		{"2 V-belts", 24, 24},
		{"24 V DC, or 230 V AC by its other winding", 12, 24},
		{"230 V, 1.5 kW", 12, none},
		{"115 V AC, 2 hp", 12, none},
		{"110 V", 12, none},
		{"230VAC", 12, none},
		{"mains", 12, none},
		{"1.5 kW, three-phase", 24, none},
		{"engine, belt and electric clutch", 12, none},
		{"main engine, V-belt", 24, none},
		{"engine, 12 V clutch", 12, none},
		{"hydraulic motor", 24, none},
		{"Diesel", 24, none},
	} {
		t.Run(c.motor, func(t *testing.T) {
			var supply *quantity.Voltage
			if c.supply != none {
				supply = &c.supply
			}
			got, ok := (&build.Item{Motor: c.motor}).Battery(supply)
			require.Equal(t, c.want != none, ok)
			require.Equal(t, c.want, got)
		})
	}
}
