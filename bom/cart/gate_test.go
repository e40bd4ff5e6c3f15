package cart

import (
	"encoding/csv"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// spoken are the cells of the sample carts and of the corpora: what shops and owners wrote.
func spoken(t testing.TB) []string {
	var files, out []string
	for _, glob := range []string{"testdata/*.csv", "testdata/*/*.csv", "../../testdata/carts/*.csv", "../../testdata/published/lines_*.csv"} {
		found, err := filepath.Glob(glob)
		require.NoError(t, err)
		files = append(files, found...)
	}
	for _, name := range files {
		data, err := os.ReadFile(name)
		require.NoError(t, err)
		r := csv.NewReader(strings.NewReader(string(data)))
		r.LazyQuotes, r.FieldsPerRecord = true, -1
		rows, err := r.ReadAll()
		require.NoError(t, err, name)
		for _, row := range rows {
			out = append(out, row...)
		}
	}
	require.Greater(t, len(out), 5000)
	return out
}

// shut says which of the quick looks shuts out what its pattern would have read; "" if none does.
func shut(text string) string {
	lower := strings.ToLower(text)
	if n, _ := packIn(text); n > 0 && !mayPack(lower) {
		return "a pack"
	}
	if !mayLength(text) && inText().length.MatchString(text) {
		return "a length"
	}
	if !mayPrice(lower) && priceInText.MatchString(text) {
		return "a price"
	}
	return ""
}

// The quick look before a pattern saves its time and must lose nothing: a pack that is not seen
// makes ten washers of a hundred.
func TestTheQuickLookShutsNothingOut(t *testing.T) {
	if testing.Short() {
		t.Skip("thousands of lines, one after the other: in the full run")
	}
	read := 0
	for _, text := range spoken(t) {
		require.Empty(t, shut(text), text)
		if n, _ := packIn(text); n > 0 || inText().length.MatchString(text) || priceInText.MatchString(text) {
			read++
		}
	}
	require.Greater(t, read, 100, "there is something to lose")
	require.Empty(t, shut("Bonded washer G 1/2 10erPack"), "the count and its word written as one")
	require.Empty(t, shut("ARANDELA G 1/2 BOLSAX25"), "the word and its count written as one")
}

func TestTheQuickLookShutsNothingOutAtRandom(t *testing.T) {
	word := rapid.SampledFrom([]string{"pack", "of", "10", "10er", "VE", "set", "2", "lot de", "5", "1,5", "m", "1.5m", "3 ft", "coil", "€", "12.50", "EUR", "lunghezza", "(", ")", "x", "Elbow", "1/2", "NPT", "-", "boîte de 25", "pcs", "Stück", "/", "conf."})
	rapid.Check(t, func(t *rapid.T) {
		words := rapid.SliceOfN(word, 1, 8).Draw(t, "words")
		text := strings.Join(words, rapid.SampledFrom([]string{" ", "-", ", "}).Draw(t, "between"))
		require.Empty(t, shut(text), text)
	})
}

// A word of packs is one where no letter touches it: a package is no pack, and in a writing
// without blanks a word ends where the next begins.
func TestWordsThatStandAlone(t *testing.T) {
	for _, row := range []struct {
		text, word string
		want       bool
	}{
		{"pack of 10", "pack", true}, {"10er-pack", "pack", true}, {"package 10", "pack", false}, {"sixpack", "pack", false}, {"10pack", "pack", true}, {"PACKAGE", "PACK", false}, {"10個pack", "pack", true}, {"10pack入り", "pack", true},
	} {
		at := strings.Index(row.text, row.word)
		require.Equal(t, row.want, alone(row.text, at, at+len(row.word)), row.text)
	}
}

// The end of a long text is cut between letters, never within one.
func TestTheEndOfATextIsWhole(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		text := rapid.StringMatching(`[a1ü三]{0,20}`).Draw(t, "text")
		n := rapid.IntRange(1, 30).Draw(t, "n")
		end, from := lastOf(text, n)
		require.Equal(t, text, text[:from]+end)
		require.Equal(t, strings.ToValidUTF8(end, "?"), end)
		require.GreaterOrEqual(t, len(end), min(n, len(text)))
		require.Less(t, len(end), n+4, "no more than the letter that n falls into")
	})
}
