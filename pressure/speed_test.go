package pressure

import (
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"handtight/pressure/quantity"
)

func TestLineSpeed(t *testing.T) {
	for _, c := range []struct {
		bore quantity.Length
		want float64
	}{{9.5, 1.87}, {12.7, 1.05}, {16, 0.66}, {19, 0.47}, {25.4, 0.26}} {
		got, ok := LineSpeed(7.95*quantity.LitrePerMinute, c.bore)
		require.True(t, ok)
		require.InDelta(t, c.want, got.MetresPerSecond(), 0.005, "v = 21.22 Q/d2, worked by hand for 7.95 L/min in %s", c.bore)
		back, ok := BoreFor(7.95*quantity.LitrePerMinute, got)
		require.True(t, ok)
		require.InDelta(t, float64(c.bore), float64(back), 1e-9)
	}
	_, ok := LineSpeed(1, 0)
	require.False(t, ok, "a bore of nothing")
	_, ok = BoreFor(1, 0)
	require.False(t, ok, "no speed")
	rapid.Check(t, func(t *rapid.T) {
		q := quantity.Flow(rapid.Float64Range(1e-6, 1).Draw(t, "q"))
		d := quantity.Length(rapid.Float64Range(1, 100).Draw(t, "d"))
		narrow, _ := LineSpeed(q, d)
		wide, _ := LineSpeed(q, d*2)
		require.InEpsilon(t, 4, float64(narrow/wide), 1e-9, "half the bore is four times the speed")
	})
}
