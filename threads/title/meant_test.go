package title

import (
	"testing"

	"github.com/stretchr/testify/require"

	"handtight/threads"
)

// lineMeant is a shop's line, or the text of one end, with what a person of the trade reads in it and why.
// The lines are made for these tests: common practice, where no source stands beside them.
type lineMeant struct{ why, text, ends string }

// readMeant reads each as a shop's line.
func readMeant(t *testing.T, rows []lineMeant) {
	t.Helper()
	for _, row := range rows {
		t.Run(row.why, func(t *testing.T) { require.Equal(t, row.ends, brief(Read(row.text).Ends), row.text) })
	}
}

// readMeantEnds reads each as the text of one end; "refused" is a text that is not one end.
func readMeantEnds(t *testing.T, rows []lineMeant) {
	t.Helper()
	for _, row := range rows {
		t.Run(row.why, func(t *testing.T) {
			got := "refused"
			if e, err := ReadEnd(row.text); err == nil {
				got = briefEnd(e)
			}
			require.Equal(t, row.ends, got, row.text)
		})
	}
}

// asks holds what the first open end of a line asks against a part of the sentence; "" is no question.
func asks(t *testing.T, why, part string, ends []threads.EndReading) {
	t.Helper()
	got := ""
	for _, e := range ends {
		if got == "" {
			got = e.Question
		}
	}
	if part == "" {
		require.Empty(t, got, why)
		return
	}
	require.Contains(t, got, part, why)
}
