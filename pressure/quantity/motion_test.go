package quantity

import (
	"testing"

	"github.com/stretchr/testify/require"
)

func TestMotion(t *testing.T) {
	for _, c := range []struct {
		got, want string
	}{
		{(1.5 * MetrePerSecond).String(), "1.5 m/s"},
		{(1025 * KilogramPerCubicMetre).String(), "1025 kg/m3"},
		{(2380 * Newton).String(), "2380 N"},
	} {
		require.Equal(t, c.want, c.got)
	}
	require.InDelta(t, 1.5, Velocity(1.5).MetresPerSecond(), 0)
	require.InDelta(t, 1025, Density(1025).KilogramsPerCubicMetre(), 0)
	require.InDelta(t, 2380, Force(2380).Newtons(), 0)
	require.InDelta(t, 3600, Hour.Seconds(), 1e-9)
	require.InDelta(t, 0.02, (20 * Second / 1000).Seconds(), 1e-12)
	require.InDelta(t, 645.16, Area(Inch.Metres()*Inch.Metres()).SquareMM(), 1e-9, "a square inch")
}
