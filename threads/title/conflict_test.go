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

// In a shop's line the word may stand far from the ends: each end that it contradicts is asked.
func TestAFamilyThatFitsNoEndIsAsked(t *testing.T) {
	for text, asked := range map[string]int{
		"Elbow 1/2 NPT F x F 316 class 150 PN16, EN 10226":    2,
		"Nipple R 1/2 x R 1/2 brass, ASME B1.20.1 NPT thread": 2,
		"Elbow 1/2 BSP F x F EN 10226 brass":                  0,
		"Adaptor 1/2 NPT M x G 1/2 F, ISO 228":                0,
		"Adaptor 1/2 NPT M x 1/2 BSPT M, EN 10226":            0,
	} {
		n := 0
		for _, e := range Read(text).Ends {
			if e.Question != "" {
				require.GreaterOrEqual(t, len(e.Candidates), 2, text)
				n++
			}
		}
		require.Equal(t, asked, n, text)
	}
}
