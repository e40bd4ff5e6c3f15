package line

import (
	"fmt"
	"math"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"handtight/pressure/quantity"
)

// Common practice, no source: 8 L/min below. Check values, and no limit rests on them.

const mm = quantity.Millimetre

func sea20(t require.TestingT) Water {
	w, err := Of(20, 35)
	require.NoError(t, err)
	return w
}

func ExampleBore_Loss() {
	water, _ := Of(20, 35)
	hose := Bore{Diameter: 12.7 * mm, Length: quantity.Metre, Roughness: 0.005 * mm}
	loss, _ := hose.Loss(8*quantity.LitrePerMinute, water)
	fmt.Printf("%.2f m/s, %.1f mbar\n", hose.Speed(8*quantity.LitrePerMinute), loss.Bar()*1000)
	// Output: 1.05 m/s, 13.3 mbar
}

func ExampleFriction() {
	fmt.Printf("%.4f\n", Friction(128, 0))
	// Output: 0.5000
}

func ExampleBarb() {
	k, _ := Barb(9.5*mm, 12.7*mm)
	fmt.Printf("%.2f\n", k)
	// Output: 1.32
}

func ExampleValve() {
	k, _ := Valve(500, 154*mm)
	fmt.Printf("%.1f\n", k)
	// Output: 3.6
}

func ExampleMinor() {
	water, _ := Of(20, 35)
	fmt.Printf("%.1f mbar\n", Minor(1, 8*quantity.LitrePerMinute, 12.7*mm, water).Bar()*1000)
	// Output: 5.7 mbar
}

func ExampleAcceleration() {
	hose := Bore{Diameter: 19 * mm}
	least, _ := Acceleration(quantity.Metre, hose.Speed(8*quantity.LitrePerMinute), 950, ThrowLeast)
	most, _ := Acceleration(quantity.Metre, hose.Speed(8*quantity.LitrePerMinute), 950, ThrowMost)
	fmt.Printf("%.1f to %.1f m\n", least.Metres(), most.Metres())
	// Output: 2.0 to 3.3 m
}

func ExampleSuction_Available() {
	water, _ := Of(20, 35)
	head, _ := Suction{Surface: Atmosphere, Vapour: 2290, Lift: quantity.Metre / 2, Water: water}.Available()
	fmt.Printf("%.1f m\n", head.Metres())
	// Output: 9.4 m
}

// CalebBell/fluids, docstrings of fluids/friction.py and core.py; Technical Paper 410.
func TestPublished(t *testing.T) {
	require.InDelta(t, 0.018513866, Friction(1e5, 1e-4), 0.003*0.0185, "Colebrook; Churchill is within 0.3 %")
	require.InDelta(t, 0.5, Friction(128, 0), 1e-6, "laminar: 64/128")
	require.InDelta(t, 0.03164, Friction(10000, 0), 0.03*0.0316, "Blasius, smooth")
	k, err := Valve(500, 154*mm)
	require.NoError(t, err)
	require.InDelta(t, 3.6, k, 0.01, "TP-410 example 7-2")
	// K 10 at 3 m/s in water of 1000: 45,000 Pa.
	d := 100 * mm
	q := quantity.Flow(3 * math.Pi / 4 * 0.01)
	require.InDelta(t, 45000, Minor(10, q, d, Water{1000, 1e-3}).Pascals(), 1e-6)
	require.InDelta(t, 38200.66, Bore{Diameter: 250 * mm}.Reynolds(quantity.Flow(2.5*math.Pi/4*0.0625), Water{1.1613, 1.9e-5}), 0.01)
	// TP-410 example 7-32: a tank at 5 psi gauge, 25 ft below the pump, 6 ft of loss, water of
	// 62.364 lb/ft3 that boils at 0.256 psi: 13.887 ft by the library.
	rho := 62.364 * 16.01846
	loss := 6 * 0.3048 * rho * Gravity
	head, err := Suction{Surface: Atmosphere + 5*quantity.PSI, Vapour: 0.256 * quantity.PSI, Losses: quantity.Pressure(loss),
		Lift: 25 * quantity.Foot, Water: Water{Density: 999}}.Available()
	require.NoError(t, err)
	require.InDelta(t, 13.887, head.Metres()/0.3048, 0.05)
	require.InDelta(t, 26, Needed(20*quantity.Foot).Metres()/0.3048, 1e-9, "20 ft x 1.3")
	// Hydraulics of a wiki on hose sizing: 13 gal/min at 5 ft/s needs 1.03 in.
	require.InDelta(t, 5*0.3048, Bore{Diameter: 1.03 * quantity.Inch}.Speed(13*quantity.USGPM).MetresPerSecond(), 0.02)
}

// Worked by hand for 8 L/min of sea water, 35 g/kg at 20 C, roughness 0.005 mm.
func TestOurFlows(t *testing.T) {
	w := sea20(t)
	q := 8 * quantity.LitrePerMinute
	for _, c := range []struct {
		bore, speed, mbar float64
		least, most       float64 // m of acceleration head, 1 m at 950 rpm
	}{{12.7, 1.053, 13.3, 4.5, 7.3}, {19, 0.470, 1.96, 2.0, 3.3}, {25.4, 0.263, 0, 1.1, 1.8}} {
		b := Bore{quantity.Length(c.bore), quantity.Metre, 0.005 * mm}
		require.InDelta(t, c.speed, b.Speed(q).MetresPerSecond(), 0.001)
		loss, err := b.Loss(q, w)
		require.NoError(t, err)
		if c.mbar > 0 {
			require.InDelta(t, c.mbar, loss.Bar()*1000, 0.04*c.mbar)
		}
		low, err := Acceleration(quantity.Metre, b.Speed(q), 950, ThrowLeast)
		require.NoError(t, err)
		high, err := Acceleration(quantity.Metre, b.Speed(q), 950, ThrowMost)
		require.NoError(t, err)
		require.InDelta(t, c.least, low.Metres(), 0.06)
		require.InDelta(t, c.most, high.Metres(), 0.06)
	}
	require.InDelta(t, 5.7, Minor(1, q, 12.7*mm, w).Bar()*1000, 0.04*5.7)
	// Lift 0.5 m, 1 m of 19 mm with K 8: 7.24 to 5.99 m; with half a bar of dirty filter 4.27 m.
	b := Bore{19 * mm, quantity.Metre, 0.005 * mm}
	loss, _ := b.Loss(q, w)
	loss += Minor(8, q, 19*mm, w)
	head := func(extra quantity.Pressure, throw Throw) float64 {
		a, _ := Acceleration(quantity.Metre, b.Speed(q), 950, throw)
		h, err := Suction{Surface: Atmosphere, Vapour: 2290, Losses: loss + extra, Lift: quantity.Metre / 2, Acceleration: a, Water: w}.Available()
		require.NoError(t, err)
		return h.Metres()
	}
	require.InDelta(t, 7.24, head(0, ThrowLeast), 0.03*7.24)
	require.InDelta(t, 5.99, head(0, ThrowMost), 0.03*5.99)
	require.InDelta(t, 4.27, head(0.5*quantity.Bar, Throw{0, 1}), 0.03*4.27)
}

func TestRefused(t *testing.T) {
	w := sea20(t)
	_, err := Bore{}.Loss(1, w)
	require.Error(t, err)
	_, err = Barb(0, 1)
	require.Error(t, err)
	_, err = Valve(0, 1)
	require.Error(t, err)
	_, err = Acceleration(1, 1, 1, Throw{})
	require.Error(t, err)
	_, err = Suction{}.Available()
	require.Error(t, err)
	_, err = Of(200, 35)
	require.Error(t, err)
}

func TestLossProperties(t *testing.T) {
	w := sea20(t)
	rapid.Check(t, func(t *rapid.T) {
		b := Bore{quantity.Length(rapid.Float64Range(3, 60).Draw(t, "bore")), quantity.Metre, 0.005 * mm}
		q := quantity.Flow(rapid.Float64Range(1e-7, 1e-3).Draw(t, "q"))
		loss, err := b.Loss(q, w)
		require.NoError(t, err)
		back, _ := b.Loss(-q, w)
		require.Equal(t, loss, -back, "the other way it is the same, with the other sign")
		more, _ := b.Loss(q*1.01, w)
		require.Greater(t, more, loss)
		wider := b
		wider.Diameter *= 1.02
		less, _ := wider.Loss(q, w)
		require.Less(t, less, loss)
	})
}
