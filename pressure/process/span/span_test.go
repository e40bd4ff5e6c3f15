package span_test

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"handtight/pressure/process/span"
	"handtight/pressure/quantity"
)

// Common practice, no source: 8 L/min below. Check values, and no limit rests on them.

func ExampleBetween() {
	water := span.Between(15*quantity.Celsius, 25)
	fmt.Println(water, "middle", water.Middle())
	fmt.Println(span.Exactly(8 * quantity.LitrePerMinute))
	// Output:
	// 15 C to 25 C middle 20 C
	// 8 L/min
}

func ExampleCorners() {
	p, q := span.Between(54*quantity.Bar, 56*quantity.Bar), span.Between(quantity.Flow(7), 8)
	power := span.Empty[quantity.Power]()
	span.Corners(2, func(c span.Corner) {
		power = power.Reach(quantity.Power(span.At(c, 0, p).Bar() * float64(span.At(c, 1, q))))
	})
	fmt.Println(power)
	// Output: 378 W to 448 W
}

func TestCornersOfASteadyFunctionBoundIt(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		num := rapid.Float64Range(-100, 100)
		a, b := span.Between(num.Draw(t, "a"), num.Draw(t, "A")), span.Between(num.Draw(t, "b"), num.Draw(t, "B"))
		f := func(x, y float64) float64 { return 3*x - y*y*y }
		found := span.Empty[float64]()
		span.Corners(2, func(c span.Corner) { found = found.Reach(f(span.At(c, 0, a), span.At(c, 1, b))) })
		inner := f(rapid.Float64Range(a.Lo, a.Hi).Draw(t, "x"), rapid.Float64Range(b.Lo, b.Hi).Draw(t, "y"))
		require.GreaterOrEqual(t, inner, found.Lo-1e-9)
		require.LessOrEqual(t, inner, found.Hi+1e-9)
	})
}

func TestSpan(t *testing.T) {
	s := span.Between(5.0, 3.0)
	require.Equal(t, span.Span[float64]{Lo: 3, Hi: 5}, s, "the ends are put in order")
	require.True(t, s.Has(3) && s.Has(5) && !s.Has(5.1))
	require.True(t, s.Overlaps(span.Exactly(5.0)) && !s.Overlaps(span.Between(5.1, 6)))
	require.Equal(t, span.Between(-10.0, -6), s.Times(-2))
	require.Equal(t, span.Exactly(2.0), span.Empty[float64]().Reach(2))
	n := 0
	span.Corners(6, func(span.Corner) { n++ })
	require.Equal(t, 64, n)
}
