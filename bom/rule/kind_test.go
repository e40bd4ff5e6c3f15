package rule

import (
	"os"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"handtight/bom"
	"handtight/bom/build"
	"handtight/bom/finding"
	"handtight/bom/read"
	"handtight/catalog"
)

// kindTable is the catalogue's own table, with more at its end.
func kindTable(t *testing.T, more string) map[string]*catalog.Kind {
	t.Helper()
	text, err := os.ReadFile("../../catalog/table/kind.toml")
	require.NoError(t, err)
	kinds, err := catalog.ParseKinds(string(text) + more)
	require.NoError(t, err)
	return kinds
}

// findingsOf is what a check says of a build: the rule, how bad, and of what.
func findingsOf(t *testing.T, b *build.Build) []string {
	t.Helper()
	s, faults := bom.Walk(b)
	require.NoError(t, faults.Err())
	var out []string
	for _, f := range Check(s) {
		out = append(out, f.Slug+" "+f.Severity.String()+" "+f.Subject.String())
	}
	return out
}

func demo(t *testing.T, name string) *build.Build {
	t.Helper()
	b, faults := bom.Read("../../testdata/" + name + "/build.toml")
	require.NoError(t, faults.Err())
	return b
}

// What a kind is called changes nothing: every kind of a build under another name, with the
// same row of the table, and all findings stay.
func TestAKindsNameSaysNothing(t *testing.T) {
	for _, name := range []string{"clean", "careless", "engine-careless", "recovery-careless", "arrows"} {
		want := findingsOf(t, demo(t, name))
		b := demo(t, name)
		renamed := map[*catalog.Kind]*catalog.Kind{}
		for _, it := range b.Items {
			if renamed[it.Kind] == nil {
				k := *it.Kind
				k.Name = "thing called " + strings.ToUpper(k.Name[:1])
				renamed[it.Kind] = &k
			}
			it.Kind = renamed[it.Kind]
		}
		require.ElementsMatch(t, want, findingsOf(t, b), name)
	}
}

// A kind that is added to the table alone is judged by what its row says.
func TestANewKindIsATableAndNoCode(t *testing.T) {
	kinds := kindTable(t, `
[[kind]]
name = "rupture disc"
ports = ["in", "out"]
enter = "in"
leave = "out"
keys = ["set"]
spare = "wear"
  [[kind.passage]]
  from = "in"
  to = "out"
  is = "relief"

[[kind]]
name = "sight glass"
ports = ["in", "out"]
enter = "in"
leave = "out"
spare = "wear"
  [[kind.passage]]
  from = "in"
  to = "out"
  is = "open"

[[kind]]
name = "basket"
ports = ["in", "out"]
roles = ["strainer"]
enter = "in"
leave = "out"
spare = "wear"
  [[kind.passage]]
  from = "in"
  to = "out"
  is = "open"
  clogs = true
`)
	as := func(role catalog.Role, name string) []string {
		b := demo(t, "clean")
		for _, it := range b.Items {
			if it.Kind.Is(role) {
				require.Equal(t, kinds[name].Ports, it.Kind.Ports)
				it.Kind = kinds[name]
			}
		}
		return findingsOf(t, b)
	}
	clean := findingsOf(t, demo(t, "clean"))
	require.Equal(t, clean, as(catalog.Relieves, "rupture disc"), "a relief by its passage")
	require.Equal(t, clean, as(catalog.Strainer, "basket"), "a strainer by its role")
	has := func(list []string, slug string) bool {
		for _, f := range list {
			if strings.HasPrefix(f, slug+" "+finding.Stop.String()) || strings.HasPrefix(f, slug+" "+finding.Caution.String()) {
				return true
			}
		}
		return false
	}
	require.True(t, has(as(catalog.Strainer, "sight glass"), "no-strainer"), "a glass strains nothing")
	require.False(t, has(clean, "no-strainer"))
	glass := as(catalog.Relieves, "sight glass")
	require.True(t, has(glass, "relief-missing") || has(glass, "membrane-without-pressure"), "a glass relieves nothing, and lets the pressure go: %v", glass)
}

// A build that is read takes its kinds from the table.
func TestKindsOfABuildComeFromTheTable(t *testing.T) {
	b, faults := read.Parse("x.toml", []byte("[build]\nname = \"x\"\ncurrency = \"EUR\"\n[[item]]\nid = \"a\"\nkind = \"rupture disc\"\nports = { in = \"G 1/2 male\", out = \"G 1/2 male\" }\n"))
	require.Nil(t, b)
	require.ErrorContains(t, faults.Err(), "rupture disc")
}
