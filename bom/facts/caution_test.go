package facts_test

import (
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"handtight/bom"
	"handtight/bom/facts"
	"handtight/bom/stages"
)

// What is said with every check is a fact of the trade without a source, and says so; all but
// that this is a check.
func TestCautionsSayThatTheyAreCommonPractice(t *testing.T) {
	list := facts.AlwaysCautions()
	require.Len(t, list, 7)
	for _, line := range list[:len(list)-1] {
		require.Contains(t, line, "common practice")
	}
	require.Contains(t, list[len(list)-1], "not a certificate")
}

// The share that a flush at the dock wets is the build's own, counted at its stages, with the
// saying of nine in ten (common practice) beside it and never in its place.
func TestDockFlushIsCounted(t *testing.T) {
	for name, want := range map[string]string{
		"clean":    "reaches 37 of 58 joints",
		"careless": "reaches 43 of 62 joints",
		"refit":    "reaches 65 of 88 joints",
		"arrows":   "reaches 18 of 64 joints",
		"engine":   "No flush at the dock reaches a joint",
		"standing": "",
	} {
		path := filepath.Join("..", "..", "testdata", name, "build.toml")
		b, faults := bom.Read(path)
		require.NoError(t, faults.Err())
		sys, faults := bom.Walk(b)
		require.NoError(t, faults.Err())
		said := strings.Join(facts.Cautions(sys), "\n")
		if want == "" {
			require.NotContains(t, said, "dock", name)
			continue
		}
		require.Contains(t, said, want, name)
		wet := 0
		for _, sheet := range stages.Of(sys) {
			for _, s := range sheet.Stages {
				if s.Name == "dock flush" {
					wet += s.Reached
				}
			}
		}
		if wet > 0 {
			require.Contains(t, said, "common practice says about nine in ten", name)
		}
	}
}
