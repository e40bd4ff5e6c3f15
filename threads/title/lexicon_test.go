package title

import (
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
	"handtight/threads"
	"pgregory.net/rapid"
)

// A phrase has one key, whatever joins its words: blanks, hyphens, stops, brackets and apostrophes.
func TestKeysOfPhrases(t *testing.T) {
	for text, want := range map[string]string{
		"ball valve": "ball valve", "Ball-Valve": "ball valve", " ball  valve ": "ball valve", "ball (valve)": "ball valve", "l/min": "l/min", "l / min": "l/min", "l /min": "l/min", "nut & tail": "nut&tail", "d'eau": "d eau", "-": "", "": "", "Größe": "grosse",
	} {
		require.Equal(t, want, wordKey(text), text)
	}
	joints := []string{" ", "-", ".", "'", " - ", "  ", " ("}
	rapid.Check(t, func(t *rapid.T) {
		a, b := rapid.StringMatching(`[a-z]{2,6}`).Draw(t, "a"), rapid.StringMatching(`[a-z]{2,6}`).Draw(t, "b")
		require.Equal(t, a+" "+b, wordKey(a+rapid.SampledFrom(joints).Draw(t, "joint")+b))
		require.True(t, plainWord(a+" "+b))
		require.Equal(t, wordKey(a+" "+b), wordKey(strings.ToUpper(a+" "+b)))
	})
	for text, want := range map[string]bool{"a": true, "": false, "a b": true, "a  b": false, " a": false, "a ": false, "A": false, "é": false, "a1": false, "az": true, "{": false, "`": false} {
		require.Equal(t, want, plainWord(text), text)
	}
}

// A plain word is one whose key is itself: the short way and the long one agree on all words.
func TestPlainWordsAreTheirOwnKeys(t *testing.T) {
	n := 0
	for _, name := range wordFiles {
		for _, r := range lexiconRows(name) {
			for _, w := range strings.Split(r["words"], "|") {
				if w = strings.Trim(w, "*"); plainWord(w) {
					require.Equal(t, w, wordKey(w), w)
					n++
				}
			}
		}
	}
	require.Greater(t, n, 1000)
}

// German is understood where the letters lack.
func TestGermanWithoutItsLetters(t *testing.T) {
	for _, pair := range [][2]string{{"Schlauchtülle", "Schlauchtuelle"}, {"Außengewinde", "Aussengewinde"}, {"T-Stück", "T-Stueck"}, {"Überwurfmutter", "Ueberwurfmutter"}} {
		a, b := Read(pair[0]+" 1/2 BSP"), Read(pair[1]+" 1/2 BSP")
		require.Equal(t, brief(a.Ends), brief(b.Ends), pair[1])
		require.Equal(t, a.Kind, b.Kind, pair[1])
		require.Empty(t, b.Unread, pair[1])
	}
}

// The tables of sizes hold no row twice, and their bores and pairs rise with their threads.
func TestTablesOfSizesRise(t *testing.T) {
	lex := readLexicon()
	var bores []int
	for dn := range lex.bores {
		bores = append(bores, dn)
	}
	slices.Sort(bores)
	for k := 1; k < len(bores); k++ {
		require.Less(t, lex.bores[bores[k-1]], lex.bores[bores[k]], bores[k])
	}
	for pair, v := range lex.pairs { // bore and outside of the pipe under the thread, in mm: common practice of French plumbing
		require.Less(t, pair[0], pair[1])
		form, ok := threads.Find(threads.G, inchText(v))
		require.True(t, ok)
		require.InDelta(t, float64(pair[1]), float64(form.Major), 2.2, "the second figure is the outside of the thread, near enough")
	}
	require.Equal(t, 12, atoi("12"))
	require.Equal(t, 12, atoi("12x"))
	require.Zero(t, atoi("x"))
	require.Positive(t, atoi(strings.Repeat("9", 40)), "no overflow")
	require.Equal(t, []threads.Sex{threads.Male, threads.Female}, sexesOf("M-F"))
}

// A list that the code names and the table does not have would be empty and say nothing.
func TestEveryListIsNamedAndThere(t *testing.T) {
	n := 0
	for _, r := range lexiconRows("lists.csv") {
		require.Contains(t, listNames, r["list"])
		n++
	}
	require.Len(t, listNames, n)
	for k, name := range listNames {
		require.NotEmpty(t, wordList(k).words(), name)
	}
	require.True(t, andList.has([]byte("og")))
	require.True(t, andList.hasWord("og"))
	require.False(t, andList.has([]byte("nog")))
	require.True(t, andList.in([]byte("nog")))
}
