package catalog

import (
	"testing"

	"github.com/stretchr/testify/require"
)

func TestPotable(t *testing.T) {
	for _, c := range []struct {
		why, text string
		want      bool
	}{
		{"in plain words", "push-in tube, drinking water quality", true},
		{"by its standard", "PE tube 10 mm, NSF/ANSI 61", true},
		{"by another", "elbow, AS/NZS  4020", true},
		{"food is not water", "food grade hose", false},
		{"denied", "not for drinking water", false},
		{"denied in a word", "non-potable", false},
		{"nothing said", "acetal elbow", false},
	} {
		t.Run(c.why, func(t *testing.T) {
			by, ok := Potable(c.text)
			require.Equal(t, c.want, ok)
			require.Equal(t, c.want, by != "")
		})
	}
	for _, p := range potable() {
		require.NotEmpty(t, p[2], "%s names no source", p[0])
	}
}
