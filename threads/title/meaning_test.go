package title

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
)

// meaning is a shop's line with what a person of the trade reads in it: the ends, and where it matters
// what is named as not used or not understood, "words: why" or "words?". The answers were written down
// before any line was read; where no source stands, they are common practice.
type meaning struct{ why, text, ends, named string }

func readMeanings(t *testing.T, rows []meaning) {
	t.Helper()
	for _, row := range rows {
		t.Run(row.text, func(t *testing.T) {
			r := Read(row.text)
			assert.Equal(t, row.ends, brief(r.Ends), row.why)
			if row.named == "" {
				return
			}
			var named []string
			for _, n := range r.NotUsed {
				named = append(named, n.Words+": "+n.Why)
			}
			for _, u := range r.Unread {
				named = append(named, u+"?")
			}
			assert.Equal(t, row.named, strings.Join(named, "; "), row.why)
		})
	}
}
