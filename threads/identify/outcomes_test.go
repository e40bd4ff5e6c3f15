package identify

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"handtight/threads"
	"handtight/threads/internal/endtest"
)

// anyForm draws a thread of any family.
func anyForm(t *rapid.T) *threads.Form {
	return rapid.SampledFrom(threads.Forms(rapid.SampledFrom(endtest.ThreadFamilies()).Draw(t, "family"))).Draw(t, "form")
}

// Whatever is measured, one of its outcomes comes: their chances sum to 1, of a thread of either sex, of
// one that is known, and of a family that has one only.
func TestOutcomesSumToOne(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		f, a := anyForm(t), rapid.SampledFrom(Asks()).Draw(t, "ask")
		sex := rapid.SampledFrom([]threads.Sex{threads.NoSex, threads.Male, threads.Female}).Draw(t, "sex")
		if only := f.Family.Facts().Only; only != threads.NoSex && sex != threads.NoSex {
			sex = only
		}
		sum := 0.0
		for o, p := range Outcomes(a, f, sex) {
			require.GreaterOrEqual(t, o, 0)
			require.Greater(t, p, 0.0)
			sum += p
		}
		require.InDelta(t, 1, sum, 1e-9, "%s of %s %s", a, f.Designation, sex)
	})
}

// A thread of either sex is half a male's outcomes and half a female's.
func TestOutcomesOfEitherSex(t *testing.T) {
	for _, a := range Asks() {
		f := endtest.EndOf(t, "G 1/2 male").Form
		both, male, female := Outcomes(a, f, threads.NoSex), Outcomes(a, f, threads.Male), Outcomes(a, f, threads.Female)
		for o, p := range both {
			require.InDelta(t, (male[o]+female[o])/2, p, 1e-12, "%s %d", a, o)
		}
	}
	only := Outcomes(AskDiameter, endtest.EndOf(t, "R 1/2 male").Form, threads.NoSex)
	require.Equal(t, Outcomes(AskDiameter, endtest.EndOf(t, "R 1/2 male").Form, threads.Male), only, "R is male")
}

// What each thing asked would most likely give, of threads whose answers are known (ISO 228-1, ASME B1.20.1, SAE J514).
func TestLikeliestOutcomes(t *testing.T) {
	c := func(words string) Candidate {
		e := endtest.EndOf(t, words)
		return Candidate{Form: e.Form, Sex: e.Sex, Probability: 1}
	}
	require.Equal(t, 0, likeliest(AskTaper, c("NPT 1/2 male")), "tapered")
	require.Equal(t, 1, likeliest(AskTaper, c("G 1/2 male")), "parallel")
	require.Equal(t, 0, likeliest(AskFlank, c("G 1/2 male")), "55 degrees")
	require.Equal(t, 1, likeliest(AskFlank, c("NPT 1/2 male")), "60 degrees")
	require.Equal(t, int(NoseCone37), likeliest(AskNose, c("JIC -6 male")))
	require.Equal(t, int(FaceRing), likeliest(AskNose, c("ORFS -6 male")))
	require.Equal(t, "14 threads an inch", gaugeLeaves()[likeliest(AskPitch, c("G 1/2 male"))].words)
	require.Equal(t, "1.5 mm", gaugeLeaves()[likeliest(AskPitch, c("M M22x1.5 male"))].words)
	male, female := likeliest(AskDiameter, c("G 1/2 male")), likeliest(AskDiameter, c("G 1/2 female"))
	require.Zero(t, male%2, "a male's figure is no female's")
	require.Equal(t, 1, female%2)
	require.InDelta(t, 20.9, (float64(male/2)+0.5)*binWidth, binWidth, "G 1/2 is 20.955 outside at most")
	require.InDelta(t, 18.8, (float64(female/2)+0.5)*binWidth, binWidth, "and 18.631 to 19.172 inside")
}

// The leaves of the gauge are every pitch there is, once, the finest first.
func TestGaugeLeaves(t *testing.T) {
	all := gaugeLeaves()
	for i := 1; i < len(all); i++ {
		require.Greater(t, all[i].pitch, all[i-1].pitch+1e-3, all[i].words)
	}
	for _, family := range endtest.ThreadFamilies() {
		for _, f := range threads.Forms(family) {
			n := 0
			for _, l := range all {
				if math.Abs(l.pitch-float64(f.Pitch)) < 1e-3 {
					n++
				}
			}
			require.Equal(t, 1, n, f.Designation)
		}
	}
}

// What tells nothing more is worth nothing, what was answered is not asked, and what is worth more is asked first.
func TestGainsOfQuestions(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		m, _ := anyMeasured(t)
		gains, err := Gains(m)
		require.NoError(t, err)
		for i, g := range gains {
			require.False(t, m.Asked(g.Ask), g.Ask.String())
			require.GreaterOrEqual(t, g.Bits, 0.0)
			require.True(t, i == 0 || g.Bits <= gains[i-1].Bits+1e-9, "best first")
		}
		asked := 0
		for _, a := range Asks() {
			if m.Asked(a) {
				asked++
			}
			with := m.Cannot(a)
			require.True(t, with.Asked(a), "what cannot be measured is not asked for")
		}
		require.Len(t, gains, len(Asks())-asked)
	})
}

// Names that are out of range say nothing, and bring nothing down.
func TestNamesOutOfRange(t *testing.T) {
	require.Empty(t, askEnd.String())
	require.Empty(t, Ask(200).String())
	require.Empty(t, noseEnd.String())
	require.Empty(t, Nose(200).Words(threads.Male))
	require.Empty(t, noseEnd.Words(threads.Female))
	require.Equal(t, Measured{}, Measured{}.Cannot(askEnd))
	for _, a := range Asks() {
		require.NotEmpty(t, a.String())
	}
	_, ok := NoseNamed("")
	require.False(t, ok, "no name is no nose")
}
