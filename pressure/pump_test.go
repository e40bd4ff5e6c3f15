package pressure

import (
	"testing"

	"github.com/stretchr/testify/require"

	"handtight/pressure/quantity"
)

func TestWaterPower(t *testing.T) {
	for _, c := range []struct {
		why    string
		p      quantity.Pressure
		q      quantity.Flow
		watts  float64
		within float64
		source string
	}{
		{"20 gpm at 1500 psi are 17.5 hp", 1500 * quantity.PSI, 20 * quantity.USGPM, 17.5 * 745.7, 0.05 * 745.7, `page "Hydraulic oil pump - horsepower"`},
		{"24 gpm at 2300 psi are 32.21 hp", 2300 * quantity.PSI, 24 * quantity.USGPM, 32.21 * 745.7, 0.02 * 745.7, `computed by the formula of the same page`},
		{"a small desalinator: 2.1 gpm at 800 psi", 800 * quantity.PSI, 2.1 * quantity.USGPM, 731, 0.5, "common practice"},
	} {
		t.Run(c.why, func(t *testing.T) {
			require.InDelta(t, c.watts, WaterPower(c.p, c.q).Watts(), c.within, c.source)
		})
	}
}

func TestPumpCurrent(t *testing.T) {
	got, err := PumpCurrent(WaterPower(60*quantity.Bar, 8*quantity.LitrePerMinute), 1, 0.85)
	require.NoError(t, err)
	require.InDelta(t, 941, got.Amperes(), 1, `60 bar x 8 L/min / (600 x 0.85) = 0.941 kW, page "Hydraulic power"; at 1 V the current is the power`)
	got, err = PumpCurrent(731, 24, 0.6)
	require.NoError(t, err)
	require.InDelta(t, 50.8, got.Amperes(), 0.05, "731 / (24 x 0.6), worked by hand")
	for _, c := range []struct {
		why        string
		power      quantity.Power
		voltage    quantity.Voltage
		efficiency quantity.Share
		want       string
	}{
		{"no voltage", 731, 0, 0.6, "a pump needs a voltage above zero, such as 24 V; found 0 V"},
		{"no efficiency", 731, 24, 0, "an efficiency is above 0 and at most 100 %, such as 60 %; found 0 %"},
		{"more out than in", 731, 24, 1.2, "an efficiency is above 0 and at most 100 %, such as 60 %; found 120 %"},
		{"power backward", -1, 24, 0.6, "a pump gives the water power, such as 731 W; found -1 W"},
	} {
		t.Run(c.why, func(t *testing.T) {
			_, err := PumpCurrent(c.power, c.voltage, c.efficiency)
			require.EqualError(t, err, c.want)
		})
	}
}

func TestReliefWindow(t *testing.T) {
	for _, c := range []struct {
		why          string
		duty, lowest float64
		from, to     float64
		ok           bool
	}{
		{"room between", 55, 69, 60.5, 69, true},
		{"just none", 55, 60, 60.5, 60, false},
		{"no duty", 0, 69, 0, 69, false},
		{"nothing rated", 55, 0, 60.5, 0, false},
	} {
		t.Run(c.why, func(t *testing.T) {
			from, to, ok := ReliefWindow(quantity.Pressure(c.duty)*quantity.Bar, quantity.Pressure(c.lowest)*quantity.Bar)
			require.Equal(t, c.ok, ok)
			require.InDelta(t, c.from, from.Bar(), 1e-9)
			require.InDelta(t, c.to, to.Bar(), 1e-9)
		})
	}
}

func TestWallRating(t *testing.T) {
	r, ok := WallRating(762, 11.889, 1427.215*quantity.Bar)
	require.True(t, ok)
	require.InDelta(t, 45.1, r.Pressure.Bar(), 0.01, "worked sheet, ASME B31.3 (2008) eq. 3a: 45.1 bar needs 11.889 mm of 762 mm")
	require.Equal(t, Estimate, r.Basis)
	for _, c := range []struct {
		why          string
		outside, net quantity.Length
		allowable    quantity.Pressure
	}{
		{"the thread cuts through", 21.3, NetWall(1, 1.4), 1e8},
		{"too thick for the formula", 21.3, 4, 1e8},
		{"no stress", 21.3, 2, 0},
	} {
		t.Run(c.why, func(t *testing.T) {
			_, ok := WallRating(c.outside, c.net, c.allowable)
			require.False(t, ok)
		})
	}
}
