package rating_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"handtight/bom/internal/built"
	"handtight/bom/rating"
	"handtight/pressure"
)

// A 1/8 NPT nipple of schedule 80 (wall 0.095 in) in 316 comes to 407 bar by ASME B31.3
// 304.1.2 with c = 0.8/n, a mill tolerance of 12.5 % and S = 20 000 psi: the row "class
// 2000 (computed)" of pressure/table/fittings.csv, recomputed there. It is an estimate.
func TestWallEstimate(t *testing.T) {
	const text = `
[build]
name = "x"
currency = "EUR"
[[item]]
id = "nipple"
kind = "nipple"
material = "316"
wall = "0.095 in"
ports = { a = '1/8 NPT male', b = '1/8 NPT male' }
[[item]]
id = "coupling"
kind = "coupling"
rated = "500 bar"
ports = { a = '1/8 NPT female', b = '1/8 NPT female' }
[[run]]
name = "line"
path = ["nipple", "coupling"]
`
	nipple := func(text string) rating.Allowable { return built.Walk(t, "x.toml", text).Ratings.Port(0) }
	h := nipple(text)
	require.True(t, h.Known)
	require.True(t, h.Estimate)
	require.Equal(t, pressure.Estimate, h.Rating.Basis)
	require.InDelta(t, 407, h.Rating.Pressure.Bar(), 4)

	require.False(t, nipple(strings.Replace(text, "316", "driftwood", 1)).Known, "a material without a stress gives no estimate")
	require.False(t, nipple(strings.Replace(text, "wall = \"0.095 in\"\n", "", 1)).Known, "nor does a part without a wall")
	sheet := nipple(strings.Replace(text, "wall =", "rated = \"100 bar\"\nwall =", 1))
	require.False(t, sheet.Estimate)
	require.InDelta(t, 100, sheet.Rating.Pressure.Bar(), 0.01, "a data sheet leaves nothing to estimate")
}
