package threads_test

import (
	"testing"

	"github.com/stretchr/testify/require"

	"handtight/threads"
)

// A short form meets one turn sooner than the full one, a short male as a short female, in every
// size; two of them are not made for each other.
func TestShortForms(t *testing.T) {
	for _, f := range threads.Forms(threads.NPTF) {
		male, female := threads.Threaded(f, threads.Male), threads.Threaded(f, threads.Female)
		full := threads.Mate(male, female)
		at, ok := full.TypicalTurns()
		require.True(t, ok)
		engaged, ok := full.EngagedTurns()
		require.True(t, ok)
		male.Short = true
		short := threads.Mate(male, female)
		require.Equal(t, full.Verdict, short.Verdict, "a short form in the full one")
		turns, ok := short.TypicalTurns()
		require.True(t, ok)
		require.InDelta(t, float64(at)-1, float64(turns), 0.01, f.Designation)
		left, ok := short.EngagedTurns()
		require.True(t, ok)
		require.InDelta(t, float64(engaged)-1, float64(left), 0.06, f.Designation)
		female.Short = true
		both := threads.Mate(male, female)
		require.Equal(t, threads.Leaks, both.Verdict)
		require.Contains(t, both.Reason(), "short form")
		require.Contains(t, both.Remedy(), "full form: "+f.Designation)
		require.NotContains(t, both.Remedy(), "short")
		male.Short = false
		other := threads.Mate(male, female)
		turns, _ = other.TypicalTurns()
		require.InDelta(t, float64(at)-1, float64(turns), 0.01, "the female cut short")
	}
}
