package request

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"handtight/catalog"
	"handtight/pressure/rows"
)

// Every kind that can be bought has its word in every language, and every row its source.
func TestWords(t *testing.T) {
	table := rows.All[map[string]string]("request", tables, "table/words.csv")
	memory := 0
	for _, r := range table {
		for column, cell := range r {
			require.NotEmpty(t, cell, "%s %s: column %s", r["class"], r["key"], column)
		}
		require.Contains(t, []string{"seen", "memory"}, r["status"])
		if r["status"] == "memory" {
			memory++
		}
	}
	for _, language := range Languages()[1:] {
		require.Contains(t, table[0], language)
	}
	require.Equal(t, len(table)-2, memory, "look words up, and lower this")
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
