package request

import (
	"encoding/csv"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"handtight/catalog"
)

// Every kind that can be bought has its word in every language, and every row its source.
func TestWords(t *testing.T) {
	rows, err := csv.NewReader(strings.NewReader(wordsText)).ReadAll()
	require.NoError(t, err)
	memory := 0
	for _, r := range rows[1:] {
		for i, cell := range r {
			require.NotEmpty(t, cell, "%s %s: column %s", r[0], r[1], rows[0][i])
		}
		require.Contains(t, []string{"seen", "memory"}, r[len(r)-2])
		if r[len(r)-2] == "memory" {
			memory++
		}
	}
	require.Equal(t, len(rows)-1-2, memory, "look words up, and lower this")
	var lacking []string
	for _, name := range catalog.KindNames() {
		if k, _ := catalog.KindNamed(name); !k.Boats && !k.Free && strings.HasPrefix(tongue("de").word("kind", name), "[") {
			lacking = append(lacking, name)
		}
	}
	require.LessOrEqual(t, len(lacking), 6, "kinds without a word: %v", lacking)
	require.Equal(t, "[manifold]", tongue("de").word("kind", "manifold"), "a word that is not there stays English, in brackets")
	require.Equal(t, "1,5", tongue("de").number("1.5"))
	require.Equal(t, "1.5", tongue("").number("1.5"))
}
