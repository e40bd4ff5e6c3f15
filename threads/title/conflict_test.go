package title

import (
	"testing"

	"github.com/stretchr/testify/require"
)

// Words that cannot both be so are asked about, and both readings stay open.
func TestContradictingWordsAreAsked(t *testing.T) {
	for _, row := range []struct {
		why, text, asks string
		candidates      int
	}{
		{"two families", "G 1/2 NPT male", "both G and NPT", 2},
		{"an inch name on a metric size", "M22x1.5 male BSP", "M22x1.5, and the text says BSP", 1},
		{"a parallel thread called taper", "G 1/2 male taper", "says taper", 1},
		{"a taper thread called parallel", "1/2 NPT female parallel", "says parallel", 1},
		{"both words", "3/4 BSP male taper parallel", "both taper and parallel", 1},
		{"a thread and a solder end", "1/2 NPT female solder", "a solder end", 1},
	} {
		t.Run(row.why, func(t *testing.T) {
			r, err := ReadEnd(row.text)
			require.NoError(t, err)
			require.Contains(t, r.Question, row.asks)
			require.GreaterOrEqual(t, len(r.Candidates), row.candidates)
		})
	}
	for _, text := range []string{"1/2 BSP male taper", "R 1/2 taper", "3/8 flare male JIC", "9/16-18 UNF JIC male", "Rp 1/2 parallel"} {
		r, err := ReadEnd(text)
		require.NoError(t, err)
		require.NotContains(t, r.Question, "The text", text)
	}
}

func TestUnspentWordsOfAnEndAreNamed(t *testing.T) {
	r, err := ReadEnd("1/2 NPT male elbow F316 24 V")
	require.NoError(t, err)
	var words []string
	for _, n := range r.NotUsed {
		words = append(words, n.Words)
	}
	require.Equal(t, []string{"elbow", "F316", "24 V"}, words)
	r, err = ReadEnd("G 3/4 female swivel 60 cone")
	require.NoError(t, err)
	require.Empty(t, r.NotUsed)
}
