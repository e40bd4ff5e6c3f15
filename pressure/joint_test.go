package pressure

import (
	"testing"

	"github.com/stretchr/testify/require"

	"handtight/pressure/quantity"
)

func TestClampJoint(t *testing.T) {
	const guide = "coupling selection guide, ASTM D380 tests"
	for _, c := range []struct {
		why  string
		mm   float64
		hose string
		psi  float64
		from string
	}{
		{"any hose: below 200 psi", 19, "", 200, `page "Working with hose clamps"`},
		{"PVC of half an inch", 12.7, "PVC hose", 150, guide},
		{"PVC of three quarters", 19, "suction hose, PVC, wire helix", 125, guide},
		{"PVC of one inch", 25, "PVC", 100, guide},
		{"PVC of an inch and a half", 38, "PVC", 85, guide},
		{"PVC of two inch", 51, "PVC", 65, guide},
		{"between two sizes: the larger", 22, "PVC", 100, guide},
		{"below the smallest: the smallest", 10, "PVC", 150, guide},
		{"rubber holds more than a clamp does", 19, "rubber", 200, `page "Working with hose clamps"`},
		{"chemical hose of an inch and a quarter", 31.75, "chemical hose", 140, guide},
		{"silicone is in no table", 19, "silicone", 200, `page "Working with hose clamps"`},
	} {
		t.Run(c.why, func(t *testing.T) {
			r, ok := ClampJoint(quantity.Length(c.mm), c.hose)
			require.True(t, ok)
			require.InDelta(t, c.psi, r.Pressure.PSI(), 1e-6, c.from)
			require.Equal(t, HoseJoint, r.Basis)
		})
	}
	_, ok := ClampJoint(60, "PVC")
	require.False(t, ok, "nothing is known above 2 inch")
	_, ok = ClampJoint(0)
	require.False(t, ok)
	r, ok := ClampJoint(19)
	require.True(t, ok)
	require.InDelta(t, 13.8, r.Pressure.Bar(), 0.02, "the trade's 200 psi")
}

func TestTubeRating(t *testing.T) {
	r, ok := TubeRating("316", 12.7, 1.3)
	require.True(t, ok)
	require.InDelta(t, 3500, r.Pressure.PSI(), 1e-6, `page "NPT pipe end pressure ratings" table 1: 1/2 x 0.049 in`)
	require.Equal(t, TubeTable, r.Basis)
	r, ok = TubeRating("stainless 316", 12.7, 1.5)
	require.True(t, ok)
	require.InDelta(t, 3500, r.Pressure.PSI(), 1e-6, "between two walls: the thinner")
	_, ok = TubeRating("316", 12.7, 0.5)
	require.False(t, ok, "thinner than the table")
	_, ok = TubeRating("316", 12, 1.5)
	require.False(t, ok, "12 mm tube is no half-inch tube")
	_, ok = TubeRating("copper", 12.7, 1.3)
	require.False(t, ok)
}

func TestThickerTubeIsNotRatedLower(t *testing.T) {
	for _, od := range []quantity.Length{3.175, 6.35, 9.525, 12.7, 19.05, 25.4} {
		last := quantity.Pressure(0)
		for wall := quantity.Length(0.7); wall < 3.2; wall += 0.1 {
			if r, ok := TubeRating("316", od, wall); ok {
				require.GreaterOrEqual(t, r.Pressure, last)
				last = r.Pressure
			}
		}
		require.Positive(t, float64(last), "%s", od)
	}
}

func TestTubeGap(t *testing.T) {
	for _, c := range []struct {
		why, material string
		outside, wall quantity.Length
		want          string
	}{
		{"another metal", "brass", 12.7, 1.65, "the table of tube is for 316 and 304, and says nothing of `brass`"},
		{"another diameter", "316", 10, 1, "size not in the table: no tube has an outside of 10 mm"},
		{"too thin", "316", 12.7, 0.5, "size not in the table: tube of 12.7 mm has a wall of 0.89 mm or more there"},
		{"a figure is known", "316", 12.7, 1.65, ""},
	} {
		require.Equal(t, c.want, TubeGap(c.material, c.outside, c.wall), c.why)
	}
}
