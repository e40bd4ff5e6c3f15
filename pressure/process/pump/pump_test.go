package pump

import (
	"errors"
	"fmt"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"handtight/pressure/process/membrane"
	"handtight/pressure/quantity"
)

// Common practice, no source: 8 L/min below. Check values, and no limit rests on them.

const (
	bar = quantity.Bar
	lpm = quantity.LitrePerMinute
)

func ExampleDisplacement() {
	q, _ := Displacement(3, 12*quantity.Millimetre, 14*quantity.Millimetre, 1450, 0.94)
	fmt.Println(q)
	// Output: 6.47 L/min
}

func ExamplePiston_Delivered() {
	p := Piston{Swept: 9 * quantity.LitrePerMinute, Slip: 0.6 * quantity.LitrePerMinute, Rated: 70 * quantity.Bar, Faster: 80.0 / 112}
	fmt.Println(p.Delivered(50 * quantity.Bar))
	// Output: 6 L/min
}

func ExampleSpeed() {
	n, _ := Speed(1750, 80, 112)
	fmt.Println(n)
	// Output: 1250 rpm
}

func ExampleNewCurve() {
	_, err := NewCurve(Point{0, 2 * quantity.Bar}, Point{6 * quantity.LitrePerMinute, 3 * quantity.Bar})
	fmt.Println(err)
	// Output: point 2 of the curve does not fall: each has more flow and less pressure than the one before
}

func ExampleCurve_Pressure() {
	lower, upper, _ := Between(2.5*quantity.Bar, 14*quantity.LitrePerMinute)
	q := 8 * quantity.LitrePerMinute
	fmt.Printf("%.3f to %.3f bar\n", lower.Pressure(q).Bar(), upper.Pressure(q).Bar())
	// Output: 1.071 to 1.684 bar
}

func ExampleCurve_Flow() {
	lower, _, _ := Between(2.5*quantity.Bar, 14*quantity.LitrePerMinute)
	fmt.Println(lower.Flow(1 * quantity.Bar))
	// Output: 8.4 L/min
}

func ExampleRecovery_At() {
	r := Recovery{Ratio: 0.12, Friction: 0.4 * quantity.Bar, Waste: 0.3 * quantity.Bar}
	run, _ := r.At(9*quantity.LitrePerMinute, func(_, _ quantity.Flow) (held, loss quantity.Pressure, err error) {
		return 48 * quantity.Bar, 0.2 * quantity.Bar, nil
	})
	fmt.Printf("%s of product, %.1f bar to feed\n", run.Product, run.Inlet.Bar())
	// Output: 64.8 L/h of product, 6.6 bar to feed
}

func ExampleRecovery_Highest() {
	p, _ := Recovery{Ratio: 0.12}.Highest(8 * quantity.Bar)
	fmt.Println(p)
	// Output: 66.7 bar
}

func vessel(t require.TestingT, celsius float64) Vessel {
	c, _ := membrane.ClassOf("2540")
	u, err := c.Element().Calibrate()
	require.NoError(t, err)
	row := membrane.Row{Units: []membrane.Unit{u}}
	return func(product, feed quantity.Flow) (held, loss quantity.Pressure, err error) {
		run := membrane.Running{Feed: feed, Temperature: quantity.Temperature(celsius), Salinity: 35, Back: 0.2 * bar}
		if held, err = row.PressureFor(product, run); err != nil {
			return 0, 0, err
		}
		run.Pressure = held
		out, err := row.Solve(run, nil)
		return held, out.Loss, err
	}
}

// Worked in the design: ratio 0.10, 8 L/min, one 2540 element.
func TestWorkedRecovery(t *testing.T) {
	r := Recovery{Ratio: 0.10, Leak: 0.01, Friction: 0.4 * bar, Waste: 0.3 * bar}
	near := func(want, got float64) { t.Helper(); require.InDelta(t, want, got, 0.03*want) }
	run, err := r.At(8*lpm, vessel(t, 15))
	require.NoError(t, err)
	near(45.0, run.Held.Bar())
	near(5.30, run.Inlet.Bar())
	require.InDelta(t, 43.2, run.Product.LitresPerHour(), 1e-6)
	near(70.7, run.Water.Watts())
	near(1.64, run.Water.Watts()/run.Product.LitresPerHour())
	tight := r
	tight.Leak = 0
	run, err = tight.At(8*lpm, vessel(t, 15))
	require.NoError(t, err)
	near(47.3, run.Held.Bar())
	require.InDelta(t, 48.0, run.Product.LitresPerHour(), 1e-6)
	for celsius, bars := range map[float64]float64{5: 53.1, 10: 48.5, 20: 42.3, 30: 38.8} {
		run, err = r.At(8*lpm, vessel(t, celsius))
		require.NoError(t, err)
		near(bars, run.Held.Bar())
	}
	curve, err := NewCurve(Point{0, 8 * bar}, Point{6 * lpm, 7 * bar}, Point{9 * lpm, 5 * bar}, Point{12 * lpm, 0})
	require.NoError(t, err)
	run, err = r.On(curve, vessel(t, 15))
	require.NoError(t, err)
	near(45.8, run.Held.Bar())
	near(8.42, run.Feed.LitresPerMinute())
	near(45.5, run.Product.LitresPerHour())
	weak, err := NewCurve(Point{0, 2 * bar}, Point{12 * lpm, 0})
	require.NoError(t, err)
	_, err = r.On(weak, vessel(t, 15))
	require.ErrorIs(t, err, ErrStalls)
}

// A feed pump of 14 L/min and 2.5 bar: worked in the design.
func TestWorkedFeedPump(t *testing.T) {
	lower, _, err := Between(2.5*bar, 14*lpm)
	require.NoError(t, err)
	p := lower.Pressure(8 * lpm)
	require.InDelta(t, 1.071, p.Bar(), 0.001)
	lift := quantity.Pressure(1025 * 9.80665 * 0.3)
	require.InDelta(t, 0.79, (p - 0.25*bar - lift).Bar(), 0.005)
	require.InDelta(t, -0.16, (p - 1.2*bar - lift).Bar(), 0.005)
	require.InDelta(t, 0.84, (p - 0.2*bar - lift).Bar(), 0.01, "the loss that leaves 0.2 bar")
}

// Mirrors the page on displacement: flow is speed times what is swept.
func TestDisplacementIsPlainGeometry(t *testing.T) {
	q, err := Displacement(1, quantity.Metre, quantity.Metre, 60, 1)
	require.NoError(t, err)
	require.InDelta(t, 0.7853981633974483, float64(q), 1e-12)
}

func TestRefused(t *testing.T) {
	_, err := Displacement(0, 1, 1, 1, 1)
	require.Error(t, err)
	_, err = Displacement(1, 1, 1, 1, 7)
	require.Error(t, err, "an efficiency of 7")
	_, err = Speed(0, 1, 1)
	require.Error(t, err)
	_, err = NewCurve(Point{0, 1})
	require.Error(t, err)
	_, err = NewCurve(Point{0, 1}, Point{-1, 0})
	require.Error(t, err)
	var rises *RiseError
	_, err = NewCurve(Point{0, 1}, Point{1, 1})
	require.ErrorAs(t, err, &rises)
	for _, r := range []Recovery{{}, {Ratio: 1}, {Ratio: 0.1, Leak: 0.1}, {Ratio: 0.1, Friction: -1}} {
		_, err = r.At(1, nil)
		require.Error(t, err)
		_, err = r.Highest(1)
		require.Error(t, err)
	}
	_, err = Recovery{Ratio: 0.1}.At(0, nil)
	require.Error(t, err)
	broken := errors.New("broken")
	_, err = Recovery{Ratio: 0.1}.At(1, func(_, _ quantity.Flow) (quantity.Pressure, quantity.Pressure, error) { return 0, 0, broken })
	require.ErrorIs(t, err, broken)
	require.Zero(t, Piston{Swept: 1, Slip: 2}.Delivered(1), "a pump that leaks all of it delivers nothing, not less")
}

// What the feed puts in is what leaves: the product at the held pressure, the spent brine,
// friction, the leak and the vessel's loss.
func TestRecoveryBalancesItsPower(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		f := func(name string, lo, hi float64) float64 { return rapid.Float64Range(lo, hi).Draw(t, name) }
		r := Recovery{Ratio: quantity.Share(f("ratio", 0.05, 0.3)), Friction: quantity.Pressure(f("friction", 0, 1)) * bar, Waste: quantity.Pressure(f("waste", 0, 1)) * bar}
		r.Leak = quantity.Share(f("leak", 0, float64(r.Ratio)*0.5))
		held, loss := quantity.Pressure(f("held", 20, 70))*bar, quantity.Pressure(f("loss", 0, 1))*bar
		run, err := r.At(8*lpm, func(_, _ quantity.Flow) (quantity.Pressure, quantity.Pressure, error) { return held, loss, nil })
		require.NoError(t, err)
		watts := func(q quantity.Flow, p quantity.Pressure) float64 { return float64(q) * float64(p) }
		spent := run.Feed * quantity.Flow(1-r.Ratio)
		out := watts(run.Product, held) + watts(run.Feed*quantity.Flow(r.Leak), held) + watts(spent, r.Waste) + watts(spent, loss) + watts(run.Feed, r.Friction)
		require.InEpsilon(t, float64(run.Water), out, 1e-9)
		require.InEpsilon(t, float64(run.High), float64(run.Product)+float64(spent), 1e-9, "water in is water out")
	})
}

func TestCurveThereAndBack(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		lower, upper, err := Between(quantity.Pressure(rapid.Float64Range(1, 9).Draw(t, "bar"))*bar, quantity.Flow(rapid.Float64Range(2, 40).Draw(t, "open"))*lpm)
		require.NoError(t, err)
		q := lower.Open() * quantity.Flow(rapid.Float64Range(0.01, 0.99).Draw(t, "share"))
		for _, c := range []Curve{lower, upper} {
			require.InEpsilon(t, float64(q), float64(c.Flow(c.Pressure(q))), 1e-6)
		}
		require.LessOrEqual(t, lower.Pressure(q), upper.Pressure(q))
	})
}
