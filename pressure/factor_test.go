package pressure

import (
	"testing"

	"github.com/stretchr/testify/require"

	"handtight/pressure/quantity"
)

func TestDeratePlastic(t *testing.T) {
	for _, c := range []struct {
		why, text string
		at        quantity.Temperature
		want      float64
		source    string
	}{
		{"PE tube", "PE", 45, 0.68, "HDPE code tables, 45 C"},
		{"by its grade", "PE100 SDR 11", 40, 0.74, "HDPE code tables, 40 C"},
		{"PVC hose", "reinforced PVC", 37.8, 0.62, "Machinery's Handbook 31st edition p.2770, 100 F"},
		{"the ends' metal has no say", "PVC hose, brass ends", 37.8, 0.62, "the same"},
		{"of two plastics the weaker", "PP ends, PVC hose", 37.8, 0.62, "PP keeps 0.85"},
		{"cold", "PVC", 15, 1, "never raised"},
	} {
		t.Run(c.why, func(t *testing.T) {
			f, err := DeratePlastic(c.text, c.at)
			require.NoError(t, err)
			require.InDelta(t, c.want, f.Value, 0.001, c.source)
			require.NotEmpty(t, f.Text)
		})
	}
	for _, none := range []string{"", "nylon core, 316 ends", "rubber"} {
		_, err := DeratePlastic(none, 40)
		var unknown *UnknownError
		require.ErrorAs(t, err, &unknown, none)
	}
	_, err := DeratePlastic("PE tube", 70)
	var beyond *RangeError
	require.ErrorAs(t, err, &beyond)
	require.InDelta(t, 0.5, beyond.AtMost.Value, 1e-9, "HDPE code tables, 60 C")
}

func TestLeastFactor(t *testing.T) {
	whole, half := Derated{Factor: Factor{Value: 1}}, Derated{Factor: Factor{Value: 0.5}}
	unknown := Derated{Err: &UnknownError{Text: "oak"}}
	beyond := Derated{Err: &RangeError{What: "PVC", AtMost: Factor{Value: 0.7}}}

	f, err := LeastFactor(whole, half, unknown)
	require.NoError(t, err, "a table that tells is enough")
	require.InDelta(t, 0.5, f.Value, 0)

	_, err = LeastFactor(unknown)
	require.ErrorIs(t, err, unknown.Err)

	var e *RangeError
	_, err = LeastFactor(half, beyond)
	require.ErrorAs(t, err, &e)
	require.Equal(t, "PVC", e.What)
	require.InDelta(t, 0.5, e.AtMost.Value, 0, "what another table leaves is less than the end of this one")
	require.InDelta(t, 0.7, beyond.Err.(*RangeError).AtMost.Value, 0, "the table's own answer stays as it is")

	f, err = LeastFactor()
	require.NoError(t, err)
	require.InDelta(t, 1, f.Value, 0, "nothing lowers nothing")
}
