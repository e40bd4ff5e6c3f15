package cart

import (
	"encoding/csv"
	"fmt"
	"os"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"handtight/threads"
)

// A kind that is known in one language and not in the next is asked about there. The table holds
// for every kind the words of the trade in eleven languages (common practice), and each must be read.
func TestEachKindInEachLanguage(t *testing.T) {
	rows := tableOf(t, "testdata/languages.csv")
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

// speech is what a row of testdata/speech.csv is read as.
func speech(t *testing.T, class, value, text string) string {
	line := func(title string) *facts {
		var b strings.Builder
		w := csv.NewWriter(&b)
		require.NoError(t, w.WriteAll([][]string{{"Description", "Qty", "Price"}, {title, "1", "2.50"}}))
		c, err := Read("c.csv", []byte(b.String()), Options{})
		require.NoError(t, err, title)
		require.Len(t, c.Lines, 1, title)
		return &c.Lines[0].facts
	}
	switch class {
	case "heading":
		role, _ := roleOf(text)
		return string(role)
	case "kind of material":
		return line("ball valve 1/2 NPT F/F " + text).material
	case "sex":
		f := line("valve 3/8 NPT " + text)
		if len(f.ends) == 0 || len(f.ends[0].readings) != 1 {
			return fmt.Sprint(len(f.ends), " ends")
		}
		return f.ends[0].readings[0].Sex.String()
	case "tail":
		f := line("valve, " + text)
		if len(f.ends) == 0 || f.ends[0].readings[0].Family != threads.Barb {
			return "no tail"
		}
		return strings.TrimSuffix(f.ends[0].readings[0].Size, " mm")
	case "trait":
		if line("thing " + text).traits.has(value) {
			return value
		}
		return "none"
	case "unit":
		return unitOf(text)
	}
	return "no such class"
}

// Headings, materials, sexes, tails, what a part is fit for, and units: a word that one language has
// is had by the others.
func TestEachWordInEachLanguage(t *testing.T) {
	rows := tableOf(t, "testdata/speech.csv")
	total := 0
	for _, r := range rows[1:] {
		for i, cell := range r[2:] {
			for text := range strings.SplitSeq(cell, "|") {
				total++
				if got := speech(t, r[0], r[1], text); got != r[1] {
					t.Errorf("%s, %s, %s: %q is read as %q", rows[0][i+2], r[0], r[1], text, got)
				}
			}
		}
	}
	t.Log(total, "words")
}

func tableOf(t *testing.T, path string) [][]string {
	t.Helper()
	f, err := os.Open(path)
	require.NoError(t, err)
	defer f.Close()
	rows, err := csv.NewReader(f).ReadAll()
	require.NoError(t, err)
	return rows
}
