package title

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// A word that is taken as its own key is the key that the long way makes of it.
func TestPlainWord(t *testing.T) {
	plain := 0
	for _, name := range wordFiles {
		for _, r := range lexiconRows(name) {
			for _, word := range strings.Split(r["words"], "|") {
				word = strings.Trim(word, "*")
				if plainWord(word) {
					plain++
					require.Equal(t, wordKey(word), word)
				}
			}
		}
	}
	require.Greater(t, plain, 1000)
	rapid.Check(t, func(t *rapid.T) {
		word := rapid.StringMatching(`[a-zéL1./' -]{0,8}`).Draw(t, "word")
		if plainWord(word) {
			require.Equal(t, wordKey(word), word)
		}
	})
}
