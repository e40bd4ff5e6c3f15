package workbook

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"handtight/bom"
	"handtight/bom/facts"
)

// Common practice, no source: 55 bar below. Check values, and no limit rests on them.

// statesSheet reads the sheet of states of a book, below its head.
func statesSheet(t *testing.T, c Content) [][]string {
	t.Helper()
	f := opened(t, c, nil)
	rows, err := f.GetRows("States")
	require.NoError(t, err)
	return rows[3:]
}

func TestStatesSheet(t *testing.T) {
	rows := statesSheet(t, sample(t))
	require.Len(t, rows, 3)
	require.Equal(t, []string{"normal", "normal running", "normal course", "membrane", "55 bar", "55 bar", "", "not known"}, rows[0])
	require.Equal(t, "OVER: elbow-38 (40 bar)", rows[1][8], "the overload stands out by its word, not by its colour alone")
	require.Equal(t, "no bound", rows[1][5])
	require.Equal(t, "all as in normal running", rows[2][3])
}

// The states of a demonstration build: the shut overboard valve overloads the brine
// line and the high-pressure side, and each overload stands at its own segment.
func TestStatesOfABuild(t *testing.T) {
	build, faults := bom.Read("../../testdata/careless/build.toml")
	require.NoError(t, faults.Err())
	sys, faults := bom.Walk(build)
	require.NoError(t, faults.Err())
	over := map[string]string{}
	for _, s := range statesOf(facts.States(sys.Segments.Views())) {
		require.NotEmpty(t, s.Name)
		require.NotEmpty(t, s.Cause, s.Name)
		told := strings.TrimPrefix(s.Over, "not known: ") == s.Over && s.Over != ""
		require.Equal(t, told, s.Overloaded, "%s: %s", s.Name, s.Over)
		if s.Name == "overboard shut" && s.Overloaded {
			over[s.Segment] = s.High
		}
	}
	require.Equal(t, map[string]string{
		"high pressure: hp-pump to vessel":       "no bound",
		"brine overboard: throttle to overboard": "no bound",
	}, over)
}
