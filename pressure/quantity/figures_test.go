package quantity

import (
	"fmt"
	"math"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// The figures that were once printed with an exponent, or lost one.
func TestFiguresAsPeopleWriteThem(t *testing.T) {
	for v, want := range map[float64]string{
		0: "0", 0.01234: "0.0123", 0.5: "0.5", 20.68: "20.7", 99.94: "99.9", 99.96: "99.96", 99.999: "100", 275.79: "275.8", 275.8: "275.8",
		1000: "1000", 999.96: "1000", 1034.21: "1034.2", 12345.6: "12345.6", 1e6: "1000000", -1000: "-1000", 1e-9: "0.000000001",
	} {
		require.Equal(t, want, Figures(v))
	}
	require.Equal(t, "68.95", Significant(68.947, 4))
	require.Equal(t, "6.895", Significant(6.8947, 4))
	require.Equal(t, "12345.6", Significant(12345.6, 4))
	require.Equal(t, "0", Figures(math.Copysign(0, -1)))
}

// So does every quantity, whatever its unit.
func TestNoQuantityHasAnExponent(t *testing.T) {
	for _, v := range []float64{275.8, 1000, 12345.6} {
		want := strconv.FormatFloat(v, 'f', -1, 64)
		for _, q := range []fmt.Stringer{
			Pressure(v) * Bar, Temperature(v), Torque(v), Volume(v), Area(v), Section(v),
			Concentration(v), Velocity(v), Density(v), Force(v), Voltage(v), Current(v),
		} {
			require.Truef(t, strings.HasPrefix(q.String(), want+" ") || strings.HasPrefix(q.String(), want), "%T of %v prints %s", q, v, q)
		}
		require.NotContains(t, (Flow(v)*LitrePerMinute).String()+Power(v).String(), "e", "in a unit that suits it")
	}
}

// What is printed is never further from the figure than half of its last place, and is a
// plain decimal.
func TestFiguresStayNear(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		v := rapid.Float64Range(1e-6, 1e7).Draw(t, "v")
		text := Figures(v)
		require.NotContains(t, text, "e")
		got, err := strconv.ParseFloat(text, 64)
		require.NoError(t, err)
		tolerance := 0.05001
		if v < 99.95 {
			tolerance = 0.00501 * v
		}
		require.InDelta(t, v, got, tolerance)
	})
}
