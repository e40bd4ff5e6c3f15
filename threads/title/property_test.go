package title

import (
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"handtight/threads"
)

// publishedLines are all labelled lines that are read right.
func publishedLines(t *testing.T) []labelled {
	t.Helper()
	var out []labelled
	for _, name := range []string{"designations.csv", "designations_own.csv", "lines_real.csv", "lines_hard.csv", "lines_later.csv", "lines_made.csv"} {
		for _, l := range readCorpus(t, "../../testdata/published/"+name) {
			if l.wrong(Read(l.text)) == "" {
				out = append(out, l)
			}
		}
	}
	require.Greater(t, len(out), 1900)
	return out
}

// sameEnds reports whether two readings have the same candidates end by end.
func sameEnds(a, b threads.Reading) bool {
	return slices.EqualFunc(a.Ends, b.Ends, func(x, y threads.EndReading) bool { return slices.Equal(x.Candidates, y.Candidates) })
}

// A shop's name before a line, which nobody understands, changes no end that was
// read, and is among the words not understood.
func TestAShopsNameChangesNoEnd(t *testing.T) {
	changed := 0
	for _, l := range publishedLines(t) {
		before, after := Read(l.text), Read("Zwquv "+l.text)
		require.Contains(t, after.Unread, "Zwquv", l.text)
		if len(before.Ends) > 0 && !sameEnds(before, after) {
			changed++
			t.Logf("%s\n\t%s\n\t%s", l.text, endsText(before.Ends), endsText(after.Ends))
		}
	}
	require.Zero(t, changed)
}

// Blanks at either end and between words do not count.
func TestBlanksDoNotCount(t *testing.T) {
	for _, l := range publishedLines(t) {
		spread := "  " + strings.Join(strings.Fields(l.text), "  ") + " "
		require.True(t, sameEnds(Read(strings.Join(strings.Fields(l.text), " ")), Read(spread)), l.text)
	}
}

// A second reading of a designation that End.String writes is the same end.
func TestCandidatesAreReadBackAsThemselves(t *testing.T) {
	seen := map[string]bool{}
	for _, l := range publishedLines(t) {
		for _, e := range Read(l.text).Ends {
			for _, c := range e.Candidates {
				text := c.String()
				if seen[text] || c.Size == "" || c.Sex == threads.NoSex && (c.Family == threads.Push || c.Family == threads.Compression) {
					continue
				}
				seen[text] = true
				got, err := ReadEnd(text)
				require.NoError(t, err, text)
				require.Len(t, got.Candidates, 1, text)
				require.Equal(t, c, got.Candidates[0], text)
			}
		}
	}
	require.Greater(t, len(seen), 300)
}

// An open end asks, and a question is asked of nothing that is unambiguous.
func TestOpenEndsAsk(t *testing.T) {
	for _, l := range publishedLines(t) {
		for _, e := range Read(l.text).Ends {
			if len(e.Candidates) != 1 {
				require.NotEmpty(t, e.Question, l.text)
			}
			if e.Question == "" {
				c := e.Candidates[0]
				require.True(t, c.Sex != threads.NoSex || !c.Family.Threaded() || Read(l.text).Kind == "" || strings.Contains(Read(l.text).Kind, "washer"), l.text)
			}
		}
	}
}
