package pressure

import (
	"testing"

	"github.com/stretchr/testify/require"
)

// The figures are those of ISO 4427: P = 20 MRS / (1.25 (SDR - 1)), as the code tables print them.
func TestPipeRating(t *testing.T) {
	for _, c := range []struct {
		why, text string
		bar       float64
		basis     Basis
	}{
		{"PE100 by its SDR", "PE100 SDR 11", 16, TubeTable},
		{"PE80 holds less", "PE 80, SDR 9", 16, TubeTable},
		{"in one word", "HDPE PE100 SDR17", 10, TubeTable},
		{"a PN is bar", "reinforced PVC PN 10", 10, FittingClass},
		{"both: the lower", "PE100 SDR 11 PN 10", 10, FittingClass},
		{"both, and the SDR is the lower", "PE100 SDR 17 PN 16", 10, TubeTable},
	} {
		t.Run(c.why, func(t *testing.T) {
			r, ok := PipeRating(c.text)
			require.True(t, ok)
			bar(t, c.bar, r)
			require.Equal(t, c.basis, r.Basis, r.String())
		})
	}
	for _, bad := range []string{"", "PE SDR 11", "SDR 11", "PE80 SDR 12", "PE100", "PVC SDR 11", "316 class 3000", "PN 0"} {
		_, ok := PipeRating(bad)
		require.False(t, ok, bad)
	}
}

func TestPipeGap(t *testing.T) {
	for _, c := range []struct{ why, text, want string }{
		{"the grade is not said", "PE SDR 11", `SDR 11 tells nothing without the grade of the polyethylene: write "PE100 SDR 11" or "PE80 SDR 11"`},
		{"an SDR of no table", "PE80 SDR 12", "SDR 12 of PE80 is in no table that is known"},
		{"a figure is known", "PE80 SDR 11", ""},
		{"nothing is written", "rubber", ""},
	} {
		require.Equal(t, c.want, PipeGap(c.text), c.why)
	}
}
