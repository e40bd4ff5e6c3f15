package nearest

import (
	"testing"

	"github.com/stretchr/testify/require"
)

func TestOf(t *testing.T) {
	units := []string{"bar", "psi", "kPa", "MPa", "kg/cm2"}
	for _, c := range []struct{ why, text, want string }{
		{"two letters swapped", "bra", "bar"},
		{"one letter too many", "barr", "bar"},
		{"one letter missing", "ps", "psi"},
		{"case does not count", "KPA", "kPa"},
		{"nothing is near", "furlong", ""},
		{"a one-letter word is near nothing", "x", ""},
		{"a long word may have two slips", "kgcm2x", "kg/cm2"},
	} {
		t.Run(c.why, func(t *testing.T) {
			got, ok := Of(c.text, units)
			require.Equal(t, c.want, got)
			require.Equal(t, c.want != "", ok)
		})
	}
}

func TestOfIsSymmetricInDistance(t *testing.T) {
	require.Equal(t, distance([]rune("hose"), []rune("shoe")), distance([]rune("shoe"), []rune("hose")))
	require.Equal(t, 3, distance(nil, []rune("bar")))
}
