package pressure

import (
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"handtight/pressure/quantity"
)

func TestSurge(t *testing.T) {
	require.InDelta(t, 24, Surge(1000, 1200, 2).Bar(), 0.01, `page "Water hammer pressure": 1000 kg/m3, 1200 m/s and 2 m/s give 24 bar`)
	require.InDelta(t, 348, Surge(1000, 1200, 2).PSI(), 0.5, "the same page, in psi")
}

func TestWaveSpeed(t *testing.T) {
	c, ok := WaveSpeed(2070*quantity.MPa, 1000, 12.7, 2, 200000*quantity.MPa)
	require.True(t, ok)
	require.InDelta(t, 1394, c.MetresPerSecond(), 2, `page "Water hammer", its formula worked by hand for 12.7 mm steel tube of 2 mm`)
	for _, bad := range []quantity.Length{0, -1} {
		_, ok = WaveSpeed(2070*quantity.MPa, 1000, 12.7, bad, 200000*quantity.MPa)
		require.False(t, ok)
	}
	rigid, _ := WaveSpeed(2200*quantity.MPa, 1000, 10, 1, 1e12*quantity.MPa)
	require.InDelta(t, RigidWaveSpeed.MetresPerSecond(), rigid.MetresPerSecond(), 1, "in a rigid pipe it is the speed of sound in water, sqrt(K/rho), worked by hand")
}

// The two runs of the column "Shock to the system" on PDI standard WH-201: 80 ft is
// critical at 40 ms, and so 40 ft at 20 ms, in water whose wave runs 4,000 ft a second.
func TestCriticalTime(t *testing.T) {
	require.InDelta(t, 0.040, CriticalTime(80*quantity.Foot, quantity.Velocity((4000*quantity.Foot).Metres())).Seconds(), 1e-12)
	require.InDelta(t, 0.020, CriticalTime(40*quantity.Foot, quantity.Velocity((4000*quantity.Foot).Metres())).Seconds(), 1e-12)
}

func TestClosingSurge(t *testing.T) {
	for _, c := range []struct {
		why     string
		length  quantity.Length
		seconds float64
		want    float64 // bar
	}{
		{`page "Water hammer pressure": at once, 24 bar`, 30 * quantity.Metre, 0.01, 24},
		{"just within 2L/c = 50 ms, worked by hand", 30 * quantity.Metre, 0.05, 24},
		{"in twice that time, half of it", 30 * quantity.Metre, 0.1, 12},
		{"2 rho L dv / t = 2 x 1000 x 3 x 2 / 0.02 Pa, worked by hand", 3 * quantity.Metre, 0.02, 6},
	} {
		got, ok := ClosingSurge(1000, 1200, 2, c.length, quantity.Duration(c.seconds)*quantity.Second)
		require.True(t, ok)
		require.InDelta(t, c.want, got.Bar(), 0.01, c.why)
	}
	for _, bad := range []float64{0, -1} {
		_, ok := ClosingSurge(1000, 1200, 2, 1, quantity.Duration(bad))
		require.False(t, ok)
		_, ok = ClosingSurge(1000, 1200, quantity.Velocity(bad), 1, 1)
		require.False(t, ok)
	}
	rapid.Check(t, func(t *rapid.T) {
		length := quantity.Length(rapid.Float64Range(0.1, 50).Draw(t, "length")) * quantity.Metre
		fast := quantity.Duration(rapid.Float64Range(0.001, 1).Draw(t, "fast")) * quantity.Second
		slow := quantity.Duration(rapid.Float64Range(1, 10).Draw(t, "slow")) * quantity.Second
		a, _ := ClosingSurge(1000, 1200, 2, length, fast)
		b, _ := ClosingSurge(1000, 1200, 2, length, slow)
		require.LessOrEqual(t, b, a, "a slower valve gives no more")
		require.LessOrEqual(t, a, Surge(1000, 1200, 2), "and no valve more than one that shuts at once")
	})
}

// A figure that is nothing, or less, gives no answer.
func TestSurgeOfNothing(t *testing.T) {
	for _, bad := range []float64{0, -1} {
		for i := range 5 {
			v := [5]float64{1000, 1200, 2, 1, 1}
			v[i] = bad
			_, ok := ClosingSurge(quantity.Density(v[0]), quantity.Velocity(v[1]), quantity.Velocity(v[2]), quantity.Length(v[3]), quantity.Duration(v[4]))
			require.False(t, ok, "figure %d is %v", i+1, bad)
			w := [5]float64{2e9, 1000, 10, 1, 2e11}
			w[i] = bad
			_, ok = WaveSpeed(quantity.Pressure(w[0]), quantity.Density(w[1]), quantity.Length(w[2]), quantity.Length(w[3]), quantity.Pressure(w[4]))
			require.False(t, ok, "figure %d is %v", i+1, bad)
		}
	}
}
