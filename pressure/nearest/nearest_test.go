package nearest

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

func TestOf(t *testing.T) {
	keys := []string{"id", "kind", "about", "ports", "pressure", "material", "rated", "flow", "full_flow", "have"}
	rows := []struct {
		why, word string
		known     []string
		want      string
	}{
		{"a letter too many", "ports_", keys, "ports"},
		{"a letter lacking", "prts", keys, "ports"},
		{"two neighbours swapped count as one", "knid", keys, "kind"},
		{"a letter changed", "ratet", keys, "rated"},
		{"capitals first", "KIND", keys, "kind"},
		{"three faults in a long word", "presures_", keys, "pressure"},
		{"the beginning of a word", "mat", keys, "material"},
		{"a word that goes on", "flow_rate", keys, "flow"},
		{"two letters are one fault apart", "di", keys, "id"},
		{"nothing is near", "colour", keys, ""},
		{"one letter is never near another", "a", []string{"b"}, ""},
		{"two letters do not begin a word", "ab", keys, ""},
		{"the word itself", "have", keys, "have"},
		{"no word", "", keys, ""},
		{"nothing known", "id", nil, ""},
		{"a tie goes to the first in the alphabet", "bat", []string{"rat", "cat"}, "cat"},
		{"a distance before a beginning", "flowx", []string{"flowxyzzy", "flows"}, "flows"},
		{"letters beyond ASCII count as one", "grösse", []string{"größe", "grosse"}, "grosse"},
		{"a very long word is not measured", strings.Repeat("a", 100), []string{strings.Repeat("a", 50) + "b"}, ""},
	}
	for _, row := range rows {
		t.Run(row.why, func(t *testing.T) {
			got, ok := Of(row.word, row.known)
			require.Equal(t, row.want, got)
			require.Equal(t, row.want != "", ok)
		})
	}
}

func TestDistance(t *testing.T) {
	// Damerau, F. J., "A technique for computer detection and correction of spelling
	// errors", Communications of the ACM 7 (1964): one letter lost, added, changed,
	// or two neighbours swapped is one error. Levenshtein (1966) adds them up.
	rows := []struct {
		why, a, b string
		want      int
	}{
		{"the same", "tee", "tee", 0}, {"added", "tee", "tree", 1}, {"lost", "tree", "tee", 1},
		{"changed", "tee", "toe", 1}, {"swapped", "tee", "ete", 1}, {"against nothing", "", "tee", 3},
		{"no letter is touched twice: ca to abc is 3", "ca", "abc", 3},
		{"from nothing", "", "EUR", 3}, {"letters, not bytes", "€UR", "EUR", 1},
		{"three changes", "kitten", "sitting", 3},
	}
	for _, row := range rows {
		t.Run(row.why, func(t *testing.T) {
			require.Equal(t, row.want, distance([]rune(row.a), []rune(row.b), 99))
		})
	}
}

func TestDistanceBoundOnlyCutsOff(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		word := rapid.StringMatching(`[a-d]{0,8}`)
		a, b := []rune(word.Draw(t, "a")), []rune(word.Draw(t, "b"))
		bound := rapid.IntRange(0, 8).Draw(t, "bound")
		full, cut := distance(a, b, 99), distance(a, b, bound)
		require.Equal(t, full, distance(b, a, 99), "a distance has no direction")
		require.Equal(t, full <= bound, cut <= bound)
		if full <= bound {
			require.Equal(t, full, cut)
		}
	})
}

func TestOfDoesNotDependOnOrder(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		word := rapid.StringMatching(`[a-cA-C]{1,6}`)
		known := rapid.SliceOfN(word, 1, 8).Draw(t, "known")
		asked := word.Draw(t, "asked")
		want, _ := Of(asked, known)
		got, _ := Of(asked, rapid.Permutation(known).Draw(t, "mixed"))
		require.Equal(t, want, got)
	})
}

func TestDistanceOfWords(t *testing.T) {
	require.Equal(t, 2, Distance("hose", "shoe", 5), "one letter over, one lacking")
	require.Equal(t, 3, Distance("", "bar", 5))
	require.Greater(t, Distance(strings.Repeat("a", 65), "a", 99), 99, "a very long word is not measured")
	require.Zero(t, Distance(strings.Repeat("a", 65), strings.Repeat("a", 65), 1))
}

// Units of measure, which are short words: what a slip of the finger is taken for.
func TestOfUnits(t *testing.T) {
	units := []string{"bar", "psi", "kPa", "MPa", "kg/cm2"}
	for _, c := range []struct{ why, text, want string }{
		{"two letters swapped", "bra", "bar"},
		{"one letter too many", "barr", "bar"},
		{"one letter missing", "ps", "psi"},
		{"case does not count", "KPA", "kPa"},
		{"nothing is near", "furlong", ""},
		{"a one-letter word is near nothing", "x", ""},
		{"a long word may have two slips", "kgcm2x", "kg/cm2"},
	} {
		t.Run(c.why, func(t *testing.T) {
			got, ok := Of(c.text, units)
			require.Equal(t, c.want, got)
			require.Equal(t, c.want != "", ok)
		})
	}
}
