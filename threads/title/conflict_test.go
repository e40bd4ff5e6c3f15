package title

import (
	"testing"

	"github.com/stretchr/testify/require"

	"handtight/threads"
)

// Words that cannot both be so are asked about, and both readings stay open.
func TestContradictingWordsAreAsked(t *testing.T) {
	for _, row := range []struct {
		why, text, asks string
		candidates      int
		torn            bool // no candidate stands for the other meaning
	}{
		{"two families", "G 1/2 NPT male", "both G and NPT", 2, false},
		{"an inch name on a metric size", "M22x1.5 male BSP", "M22x1.5, and the text says BSP", 1, true},
		{"a parallel thread called taper", "G 1/2 male taper", "says taper", 2, false},
		{"a taper thread called parallel", "1/2 NPT female parallel", "says parallel", 2, false},
		{"a taper female by its own name", "Rc 1/2 parallel", "says parallel", 3, false},
		{"both words", "3/4 BSP male taper parallel", "both taper and parallel", 2, false},
		{"both words of a metric thread", "M14x1.5 male keg parallel", "both taper and parallel", 2, false},
		{"no taper thread of that sort is made", "-6 JIC male taper", "says taper", 1, true},
		{"a thread and a solder end", "1/2 NPT female solder", "a solder end", 1, true},
		{"a standpipe under a nut that its series has not", "BEL M20x1.5", "the text says BEL", 1, true},
		{"a code of the light series on a thread of the heavy one", "DKOL M20x1.5", "of the other series", 1, true},
	} {
		t.Run(row.why, func(t *testing.T) {
			r, err := ReadEnd(row.text)
			require.NoError(t, err)
			require.Contains(t, r.Question, row.asks)
			require.GreaterOrEqual(t, len(r.Candidates), row.candidates)
			require.Equal(t, row.torn, r.Torn)
			require.NotEqual(t, row.torn, r.Contrary)
		})
	}
	for _, text := range []string{"1/2 BSP male taper", "R 1/2 taper", "3/8 flare male JIC", "9/16-18 UNF JIC male", "Rp 1/2 parallel"} {
		r, err := ReadEnd(text)
		require.NoError(t, err)
		require.NotContains(t, r.Question, "The text", text)
	}
}

// A hose end's code says the series: of the threads that both series have, it leaves one (sizes of
// ISO 8434-1: M18x1.5 is 12L and 10S).
func TestTheCodeOfAHoseEndSaysItsSeries(t *testing.T) {
	for text, size := range map[string]string{
		"DKOL M18x1.5": "12L", "DKOS M18x1.5": "10S", "DKL M16x1.5": "10L", "DKS M16x1.5": "8S", "CEL M14x1.5": "8L", "CES M22x1.5": "14S",
	} {
		r, err := ReadEnd(text)
		require.NoError(t, err)
		require.Len(t, r.Candidates, 1, text)
		require.Contains(t, r.Candidates[0].String(), size+" M", text)
		require.Empty(t, r.Question, text)
	}
}

// The number of a stud's standard says what it closes with (titles of the parts of ISO 1179, ISO 6149
// and ISO 9974), and the number of its part is no size.
func TestTheStandardOfAStudSaysWhatCloses(t *testing.T) {
	for text, seal := range map[string]threads.Seal{
		"G 1/2 male ISO 1179-2": threads.StudRing, "M18x1.5 male ISO 9974-2": threads.StudRing, "G 1/2 male ISO 1179-3": threads.ORing,
		"G 1/4 male ISO 1179-4": threads.MetalEdge, "M18x1.5 male ISO 9974-3": threads.MetalEdge, "M22x1.5 male ISO 6149-2": threads.NoSeal,
	} {
		r, err := ReadEnd(text)
		require.NoError(t, err, text)
		require.Len(t, r.Candidates, 1, text)
		require.Equal(t, seal, r.Candidates[0].Seal, text)
		require.NotContains(t, r.NotUsed, threads.NotUsed{Words: "ISO", Why: "a word of the part, and not of the end"}, text)
	}
}

// In a title the word for an end without a thread beside the size of a thread is named.
func TestAnEndBesideAThreadIsNamed(t *testing.T) {
	require.Contains(t, Read("Elbow 1/2 NPT female solder").NotUsed, threads.NotUsed{Words: "solder", Why: "a solder end, and the size beside it is a thread's"})
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
		"Elbow 1/2 BSP F x F EN 10226-1 brass":                0,
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

// The nose of a pressure washer's coupling is carried by its thread: it is used, and not named as adding nothing.
func TestTheNoseIsUsed(t *testing.T) {
	r, err := ReadEnd("M22x1.5 male 15 mm")
	require.NoError(t, err)
	require.Equal(t, 15.0, float64(r.Candidates[0].Nose))
	require.Empty(t, r.NotUsed)
}
