package cart

import (
	"encoding/csv"
	"os"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

// A kind that is known in one language and not in the next is asked about there. The table holds
// for every kind the words of the trade in eleven languages (common practice), and each must be read.
func TestEachKindInEachLanguage(t *testing.T) {
	f, err := os.Open("testdata/languages.csv")
	require.NoError(t, err)
	defer f.Close()
	rows, err := csv.NewReader(f).ReadAll()
	require.NoError(t, err)
	total := 0
	for _, r := range rows[1:] {
		for i, cell := range r[1:] {
			for text := range strings.SplitSeq(cell, "|") {
				total++
				var b strings.Builder
				w := csv.NewWriter(&b)
				require.NoError(t, w.WriteAll([][]string{{"Description", "Qty", "Price"}, {text, "1", "2.50"}}))
				c, err := Read("c.csv", []byte(b.String()), Options{})
				require.NoError(t, err, text)
				require.Len(t, c.Lines, 1, text)
				if got := c.Lines[0].facts.kind; got != r[0] {
					t.Errorf("%s, %s: %q is read as %q", rows[0][i+1], r[0], text, got)
				}
			}
		}
	}
	t.Log(total, "titles")
}
