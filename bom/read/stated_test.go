package read

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"handtight/bom/build"
)

// Common practice, no source: 55 bar below. Check values, and no limit rests on them.

func itemOf(t *testing.T, lines string) (*build.Item, string) {
	t.Helper()
	text := "[build]\nname = \"Stated\"\ncurrency = \"EUR\"\n\n[[item]]\nid = \"part\"\n" + lines + `
[[item]]
id = "n"
kind = "nipple"
ports = { a = '1/2 NPT male', b = '1/2 NPT male' }

[[item]]
id = "c"
kind = "coupling"
ports = { a = '1/2 NPT female', b = '1/2 NPT female' }

[[run]]
name = "one"
path = ["n", "c"]
`
	b, faults := Parse("stated.toml", []byte(text))
	if len(faults) > 0 {
		return nil, faults.Error()
	}
	return b.ByID["part"], ""
}

// What a title states is used as if it stood in its key.
func TestTitlesAreUsedLikeKeys(t *testing.T) {
	it, fault := itemOf(t, "title = \"Elbow 1/2 NPT male x 1/2 NPT female F316 3000# sch 80 PN40 tested to 90 bar ASME B16.11 80 C\"\n")
	require.Empty(t, fault)
	require.Equal(t, "elbow", it.Kind.Name)
	require.Equal(t, "316", it.Material)
	require.Equal(t, "class 3000 schedule 80", it.Class)
	require.InDelta(t, 40, it.Rated.Bar(), 1e-9)
	var words []string
	for _, n := range it.NotUsed {
		words = append(words, n.Words)
	}
	require.Equal(t, []string{"90 bar", "ASME B16.11", "80 C"}, words)

	it, fault = itemOf(t, "title = \"Relief valve 1/2 NPT female set 62 bar 316\"\n")
	require.Empty(t, fault)
	require.InDelta(t, 62, it.Set.Bar(), 1e-9)
	require.Nil(t, it.Rated)

	it, fault = itemOf(t, "title = \"Pressure gauge 1/4 NPT male 0-100 bar\"\n")
	require.Empty(t, fault)
	require.InDelta(t, 100, it.Scale.Bar(), 1e-9)
}

// A title's figure beside a key that says another is a fault that names both.
func TestTitlesThatContradictTheirKeysAreFaults(t *testing.T) {
	for _, row := range []struct{ why, lines, names string }{
		{"class", "title = \"Elbow 1/2 NPT male x female class 150\"\nclass = \"class 3000\"\n", "the title says class 150, and `class` says class 3000"},
		{"rating", "title = \"Elbow 1/2 NPT male x female PN16\"\nrated = \"55 bar\"\n", "the title rates the part at 16 bar, and `rated` says 55 bar"},
		{"setting", "title = \"Relief valve 1/2 NPT female set 62 bar\"\nset = \"70 bar\"\n", "the title sets the part at 62 bar, and `set` says 70 bar"},
		{"scale", "title = \"Gauge 1/4 NPT male 0-100 bar\"\nscale = \"160 bar\"\n", "the title gives a scale to 100 bar, and `scale` says 160 bar"},
	} {
		t.Run(row.why, func(t *testing.T) {
			_, fault := itemOf(t, row.lines)
			require.Contains(t, fault, row.names)
		})
	}
	for _, lines := range []string{
		"title = \"Elbow 1/2 NPT male x female class 3000\"\nclass = \"ASME B16.11 class 3000\"\n",
		"title = \"Valve 1/2 NPT female 1000 WOG\"\nkind = \"shut-off valve\"\nrated = \"69 bar\"\n",
	} {
		_, fault := itemOf(t, lines)
		require.Empty(t, fault)
	}
}

// A title without a kind is asked with guesses, and the whole list is not repeated.
func TestTitlesWithoutAKindAreAskedWithGuesses(t *testing.T) {
	text := "[build]\nname = \"Stated\"\n"
	for _, id := range []string{"a", "b", "c"} {
		text += "\n[[item]]\nid = \"" + id + "\"\ntitle = \"1/2 NPT male x 1/2 NPT female 316\"\n"
	}
	_, err := Parse("stated.toml", []byte(text))
	require.Error(t, err)
	require.Equal(t, 3, strings.Count(err.Error(), "likely one of `adaptor`"))
	require.NotContains(t, err.Error(), "plunger pump")
}
