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
		require.InDelta(t, c.want, got, 0.005, "v = 21.22 Q/d2, worked by hand for 7.95 L/min in %s", c.bore)
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
		require.InEpsilon(t, 4, narrow/wide, 1e-9, "half the bore is four times the speed")
	})
}

func TestSurge(t *testing.T) {
	require.InDelta(t, 24, Surge(1000, 1200, 2).Bar(), 0.01, `page "Water hammer pressure": 1000 kg/m3, 1200 m/s and 2 m/s give 24 bar`)
	require.InDelta(t, 348, Surge(1000, 1200, 2).PSI(), 0.5, "the same page, in psi")
}

func TestWaveSpeed(t *testing.T) {
	c, ok := WaveSpeed(2070*quantity.MPa, 1000, 12.7, 2, 200000*quantity.MPa)
	require.True(t, ok)
	require.InDelta(t, 1394, c, 2, `page "Water hammer", its formula worked by hand for 12.7 mm steel tube of 2 mm`)
	for _, bad := range []quantity.Length{0, -1} {
		_, ok = WaveSpeed(2070*quantity.MPa, 1000, 12.7, bad, 200000*quantity.MPa)
		require.False(t, ok)
	}
	rigid, _ := WaveSpeed(2200*quantity.MPa, 1000, 10, 1, 1e12*quantity.MPa)
	require.InDelta(t, 1483, rigid, 1, "in a rigid pipe it is the speed of sound in water, sqrt(K/rho), worked by hand")
}
