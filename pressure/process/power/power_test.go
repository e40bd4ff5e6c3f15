package power

import (
	"fmt"
	"math"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"handtight/pressure/process/span"
	"handtight/pressure/quantity"
)

// Common practice, no source: 2.1 US gal, 55 bar and 800 psi below. Check values, and no limit rests on them.

func ExampleHydraulic() {
	fmt.Println(Hydraulic(9*quantity.LitrePerMinute, 50*quantity.Bar, 0))
	// Output: 750 W
}

func ExampleRange() {
	w, _ := Range(750, Usual)
	fmt.Printf("%.0f to %.0f W\n", float64(w.Lo), float64(w.Hi))
	// Output: 1011 to 1296 W
}

func ExampleElectric() {
	_, motor, shaft, _ := Electric(750, Usual.Best)
	fmt.Printf("shaft %.0f W, motor %.0f W\n", float64(shaft), float64(motor))
	// Output: shaft 833 W, motor 859 W
}

func ExampleCurrent() {
	r, _ := Cable{Section: 10, Length: 5 * quantity.Metre}.Resistance()
	i, _ := Current(1118, 24, r)
	fmt.Println(i)
	_, err := Current(9000, 12, r)
	fmt.Println(err)
	// Output:
	// 47.3 A
	// the cable cannot carry that power at any current
}

func ExamplePossible() {
	fmt.Println(Possible(60, 12, 731), Possible(60, 24, 731))
	// Output: false true
}

func ExampleSection() {
	s, _ := Section(47.35, 5*quantity.Metre, 0.03*24)
	fmt.Printf("%.2f mm2\n", float64(s))
	// Output: 5.39 mm2
}

func ExampleTorque() {
	t, _ := Torque(900, 1200)
	fmt.Printf("%.1f N m\n", float64(t))
	// Output: 7.2 N m
}

func ExampleDay_Need() {
	n, _ := Day{Litres: 120, Product: 65 * quantity.LitrePerHour, Current: 50, Voltage: 24, Panels: 400, Sun: 5, System: 0.75}.Need()
	fmt.Printf("%.2f h, %.1f Ah, %.1f Wh/L, sun %.0f %%\n", n.Hours.Hours(), float64(n.Charge), n.WattHoursALitre, n.SunShare.Percent())
	// Output: 1.85 h, 92.3 Ah, 18.5 Wh/L, sun 68 %
}

func ExampleBoosted() {
	w, _ := Boosted(10.3*quantity.USGPM, 700*quantity.PSI, 300*quantity.PSI, 0.86)
	fmt.Printf("%.1f hp\n", w.Horsepower())
	// Output: 3.4 hp
}

// 2.1 US gal/min at 800 psi, the case that each page on the matter works.
func TestWorkedExample(t *testing.T) {
	water := Hydraulic(2.1*quantity.USGPM, 800*quantity.PSI, 0)
	require.InDelta(t, 731, water.Watts(), 1)
	require.InDelta(t, 0.98, water.Horsepower(), 0.002)
	w, err := Range(water, Usual)
	require.NoError(t, err)
	require.InDelta(t, 985, w.Lo.Watts(), 2)
	require.InDelta(t, 1262, w.Hi.Watts(), 2)
	middle, _, _, err := Electric(water, Train{0.865, 0.945, 0.80, 1})
	require.NoError(t, err)
	require.InDelta(t, 1118, middle.Watts(), 2)
	for _, c := range []struct {
		volts  quantity.Voltage
		lo, hi float64
	}{{24, 41, 53}, {12, 82, 105}} {
		lo, err := Current(w.Lo, c.volts, 0)
		require.NoError(t, err)
		hi, err := Current(w.Hi, c.volts, 0)
		require.NoError(t, err)
		require.InDelta(t, c.lo, float64(lo), 0.6)
		require.InDelta(t, c.hi, float64(hi), 0.6)
		// Common practice, no source: 50 to 60 A. True at 24 V, impossible at 12.
		require.Equal(t, c.volts == 24, span.Between(50.0, 60).Overlaps(span.Between(float64(lo), float64(hi))))
		require.Equal(t, c.volts == 24, Possible(60, c.volts, water))
	}
	require.InDelta(t, 81.2, float64(water)/0.75/12, 0.2)
	require.InDelta(t, 40.6, float64(water)/0.75/24, 0.1)
	r, err := Cable{10, 5 * quantity.Metre}.Resistance()
	require.NoError(t, err)
	i, err := Current(1118, 24, r)
	require.NoError(t, err)
	require.InDelta(t, 47.35, float64(i), 0.01)
	s, err := Section(1118.0/24, 5*quantity.Metre, 0.03*24)
	require.NoError(t, err)
	require.InDelta(t, 5.31, float64(s), 0.01, "by the current without a drop")
	// A second element at 55 bar: 8.12 L/min.
	w, err = Range(Hydraulic(8.12*quantity.LitrePerMinute, 55*quantity.Bar, 0), Usual)
	require.NoError(t, err)
	require.InDelta(t, 1002, w.Lo.Watts(), 0.01*1002)
	require.InDelta(t, 1285, w.Hi.Watts(), 0.01*1285)
}

func TestPublished(t *testing.T) {
	w, err := Boosted(10.3*quantity.USGPM, 700*quantity.PSI, 300*quantity.PSI, 0.86)
	require.NoError(t, err)
	require.InDelta(t, 3.4, w.Horsepower(), 0.02, "engineering forum, shaft power of plunger pumps")
	// A wiki on hydraulic hose: 28 hp at 3000 psi move 15.997 gal/min.
	require.InDelta(t, 28, Hydraulic(15.997*quantity.USGPM, 3000*quantity.PSI, 0).Horsepower(), 0.02)
	// TP-410 example 7-15: 100 gal/min, 421 ft of water at 70 F (62.3 lb/ft3), 70 %: 15.2 hp.
	head := quantity.Pressure(421 * 62.3 / 144 * float64(quantity.PSI))
	w, err = Boosted(100*quantity.USGPM, head, 0, 0.70)
	require.NoError(t, err)
	require.InDelta(t, 15.2, w.Horsepower(), 0.01*15.2)
	// A machine design article: 20 W out of a motor of 55 % and of 70 %, at 24 V.
	for efficiency, amps := range map[quantity.Share]float64{0.55: 1.52, 0.70: 1.19} {
		b, _, _, err := Electric(20, Train{1, 1, efficiency, 1})
		require.NoError(t, err)
		i, err := Current(b, 24, 0)
		require.NoError(t, err)
		require.InDelta(t, amps, float64(i), 0.01)
	}
	// A chandler's page on 3 %: 10 A, 21 ft there and back, 12 V: 6271 circular mils.
	m, err := Mils(10, 21*quantity.Foot, 0.36)
	require.NoError(t, err)
	require.InDelta(t, 6271, float64(m), 1)
	m, err = Mils(81.2, 20*quantity.Foot, 0.36)
	require.NoError(t, err)
	require.InDelta(t, 48494, float64(m), 5)
	v, err := Cable{35, 6.1 * quantity.Metre}.Drop(81.2)
	require.NoError(t, err)
	require.InDelta(t, 0.232, float64(v), 0.002)
	// Chandlers' tables for 3 %: 80 A, 20 ft, 12 V is 2 AWG (66,360 circular mils) and not 4 (41,740);
	// 40 A, 20 ft, 24 V is 8 AWG (16,510) and not 10 (10,380).
	m, _ = Mils(80, 20*quantity.Foot, 0.36)
	require.True(t, m > 41740 && m <= 66360)
	m, _ = Mils(40, 20*quantity.Foot, 0.72)
	require.True(t, m > 10380 && m <= 16510)
}

func TestRefused(t *testing.T) {
	_, _, _, err := Electric(1, Train{7, 1, 1, 1})
	require.Error(t, err)
	_, _, _, err = Electric(-1, Train{1, 1, 1, 1})
	require.Error(t, err)
	_, err = Boosted(1, 1, 1, 7)
	require.Error(t, err)
	_, err = Current(1, 0, 0)
	require.Error(t, err)
	_, err = Section(1, 1, 0)
	require.Error(t, err)
	_, err = Mils(1, 1, 0)
	require.Error(t, err)
	_, err = Cable{}.Resistance()
	require.Error(t, err)
	_, err = Torque(1, 0)
	require.Error(t, err)
	_, err = Day{}.Need()
	require.Error(t, err)
}

// What leaves the battery is what the cable warms with and what the motor takes.
func TestPowerBalance(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		w := quantity.Power(rapid.Float64Range(10, 3000).Draw(t, "W"))
		v := quantity.Voltage(rapid.SampledFrom([]float64{12, 24, 48}).Draw(t, "V"))
		r := Ohm(rapid.Float64Range(1e-5, 0.05).Draw(t, "ohm"))
		i, err := Current(w, v, r)
		if err != nil {
			require.ErrorIs(t, err, ErrTooMuch)
			return
		}
		out := float64(i) * float64(v)
		require.InEpsilon(t, out, float64(w)+float64(i)*float64(i)*float64(r), 1e-9)
		require.False(t, math.IsNaN(out))
		require.GreaterOrEqual(t, float64(i), float64(w)/float64(v)*(1-1e-9), "a cable never saves current")
	})
}
