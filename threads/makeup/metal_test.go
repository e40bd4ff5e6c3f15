package makeup_test

import (
	"testing"

	"github.com/stretchr/testify/require"

	"handtight/threads"
	"handtight/threads/internal/endtest"
	"handtight/threads/makeup"
)

// A flare of dash 6 in steel is printed as 20 to 30 N m and 1.5 to 2 flats (page
// "Tightening torque recommendations for hydraulic couplings"); an engine workshop
// manual takes half where a part is not steel.
func TestForMetals(t *testing.T) {
	for _, c := range []struct{ why, a, b, metalA, metalB, line string }{
		{"steel in steel as printed", "JIC -6 male", "JIC -6 female swivel", "carbon steel", "steel", "no tape, 1.5 to 2 flats of the nut past hand tight (20 to 30 N m in steel)"},
		{"brass in steel takes half, and no turns of steel's", "JIC -6 male", "JIC -6 female swivel", "brass", "steel", "no tape, 10 to 15 N m in brass or bronze"},
		{"bronze in bronze", "JIC -6 male", "JIC -6 female swivel", "bronze", "bronze", "no tape, 10 to 15 N m in brass or bronze"},
		{"a material that is not said is not steel", "JIC -6 male", "JIC -6 female swivel", "", "steel", "no tape, 1.5 to 2 flats of the nut past hand tight"},
		{"no table prints stainless", "JIC -6 male", "JIC -6 female swivel", "316", "316", "no tape, 1.5 to 2 flats of the nut past hand tight"},
		{"plastics take none", "G 1/2 male", "G 1/2 female", "pp", "brass", "bonded washer G 1/2, no tape"},
		{"a seat in brass: 70 and 50 percent are printed, the lower is shown", "NPT 3/8 male chamfer", "NPSM 3/8 female swivel", "brass", "brass", "no tape, up to 27 N m in brass or bronze"},
		{"turns of a taper hold for every metal", "NPT 1/2 male", "NPT 1/2 female", "bronze", "316", "4 wraps of 12 mm tape (about 290 mm), 1.5 to 3 turns past hand tight"},
		{"printed for brass", "ISO6149 M18x1.5 male", "ISO6149 M18x1.5 female", "brass", "brass", "O-ring for M18x1.5 O-ring port, no tape, 32 to 40 N m in brass"},
	} {
		t.Run(c.why, func(t *testing.T) {
			m := threads.Mate(endtest.EndOf(t, c.a), endtest.EndOf(t, c.b))
			full := makeup.Of(&m)
			require.Equal(t, c.line, full.ForMetals(c.metalA, c.metalB).String())
			require.Equal(t, c.line, full.ForMetals(c.metalB, c.metalA).String(), "in either order")
		})
	}
}
