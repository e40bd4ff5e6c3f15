package identify

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"

	"handtight/threads"
)

// To each question of the eye yes and no together are certain, whatever the family: else an
// answer would speak for threads that it says nothing of.
func TestYesAndNoAreOne(t *testing.T) {
	m := &Measured{}
	for _, f := range threads.Families() {
		for from := PlainNose; from < noseEnd; from++ {
			for to := from; to < noseEnd; to++ {
				yes, no := m.answerChance(f, Yes, from, to), m.answerChance(f, No, from, to)
				require.InDelta(t, 1, yes+no, 1e-12, "%s, noses %d to %d", f, from, to)
				require.True(t, yes > 0 && yes < 1, "an eye may err: %s, %g", f, yes)
			}
		}
		if !f.Threaded() {
			continue // a hose has no nose to look at
		}
		require.Greater(t, m.answerChance(f, Yes, PlainNose, noseEnd-1), 0.5, "it has one nose of all: %s", f)
	}
}

// A thread that is nothing like any table's is said to be none of them, and no probability is
// made of nought by nought.
func TestWhatNoTableHoldsIsNone(t *testing.T) {
	for why, m := range map[string]Measured{
		"a flange's bolt circle, with a pitch": {Sex: threads.Male, Diameter: Gauge(240), Pitch: perInch(14)},
		"the outside of a housing":             {Sex: threads.Male, Diameter: Gauge(230)},
		"a bore, and nobody says more":         {Sex: threads.Female, Diameter: Gauge(249)},
	} {
		id := identify(t, m)
		require.True(t, id.NothingFits(), why)
		require.InDelta(t, 1, id.None, 1e-9, why)
		for _, c := range id.Candidates {
			require.False(t, math.IsNaN(c.Probability), why)
		}
	}
}

// How common a reading is weighs where the turns say nothing: of two that both run free the one
// that boats are full of leads. Ends without a thread are all alike.
func TestCommonReadingsLead(t *testing.T) {
	common, seldom := readings(t, "G 1/2 male"), readings(t, "G 5/8 male")
	require.Greater(t, Common(common[0].Form), Common(seldom[0].Form), "G 5/8 is hardly met")
	require.Equal(t, Common(common[0].Form), readingWeight(common[0]))
	require.Equal(t, Common(seldom[0].Form), readingWeight(seldom[0]))
	require.Equal(t, 1.0, readingWeight(threads.End{Family: threads.Barb, Diameter: 13}))
}

// A joint that ran home until its faces met was most likely one that runs free. That its threads
// stop and only seemed to run home is far less likely, and that it never starts, or has no two
// sexes, is next to nothing: such a reading must not lead on the strength of a face that was felt.
func TestWhatRunsHome(t *testing.T) {
	felt := func(a, b string) float64 {
		m := threads.Mate(readings(t, a)[0], readings(t, b)[0])
		return FeltDensity(&m, Turned{Face: true, Known: true})
	}
	free, stops := felt("G 1/2 male", "G 1/2 female"), felt("NPT 1/2 male", "NPT 1/2 female")
	require.Greater(t, free, 10*stops)
	for _, pair := range [][2]string{{"G 1/2 male", "G 1/2 male"}, {"G 3/4 male", "G 1/2 female"}, {"NPT 1 male", "NPT 1/2 female"}} {
		require.Positive(t, felt(pair[0], pair[1]), pair)
		require.Greater(t, stops, 10*felt(pair[0], pair[1]), pair)
	}
	require.Zero(t, FeltDensity(&threads.Mating{}, Turned{Face: true, Known: true}), "no reading, no joint")
}
