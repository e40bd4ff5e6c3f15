package rule

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"handtight/bom"
	"handtight/bom/finding"
	"handtight/bom/read"
	"handtight/pressure/quantity"
)

// Common practice, no source: 55 bar below. Check values, and no limit rests on them.

// found checks a build, or a fragment that stands alone, and returns its findings by
// slug. A fragment of items only gets a run, since a build must have one.
func found(t *testing.T, fragment string) map[string][]finding.Finding {
	t.Helper()
	return check(t, whole(fragment))
}

func whole(fragment string) string {
	if !strings.Contains(fragment, "[[run]]") {
		fragment += "\n[[item]]\nid = \"x\"\nkind = \"drain\"\n[[item]]\nid = \"y\"\nkind = \"sea\"\n[[run]]\nname = \"any\"\npath = [\"y\", \"x\"]\n"
	}
	if strings.HasPrefix(fragment, "[build]") {
		return fragment
	}
	return Rule{}.Example(fragment)
}

// example checks one of a rule's own fragments.
func example(t *testing.T, r Rule, fragment string) map[string][]finding.Finding {
	t.Helper()
	return found(t, r.Example(fragment))
}

// check checks a whole build.
func check(t *testing.T, text string) map[string][]finding.Finding {
	t.Helper()
	build, faults := read.Parse("example.toml", []byte(text))
	require.NoError(t, faults.Err())
	sys, faults := bom.Walk(build)
	require.NoError(t, faults.Err())
	out := map[string][]finding.Finding{}
	for _, f := range Check(sys) {
		out[f.Slug] = append(out[f.Slug], f)
	}
	return out
}

// The example plants themselves check clear but for notes.
func TestPlants(t *testing.T) {
	for _, plant := range []Rule{{}, {plant: "flushed"}, {plant: "watered"}, {plant: "recovered"}} {
		plant.block = "none, the plant as it is"
		for slug, list := range check(t, plant.Example("")) {
			for _, f := range list {
				if slug != feedPumpNotSaid.Slug { // the smallest plant draws for itself
					require.Equal(t, finding.Note, f.Severity, "%s: %s", slug, f.Reason)
				}
			}
		}
	}
}

// Each rule finds its wrong example and leaves its right one alone; and the right one is not
// stopped by what the wrong one is not, but for the open ends of a fragment.
func TestExamples(t *testing.T) {
	for _, r := range All() {
		t.Run(r.Slug, func(t *testing.T) {
			wrong, right := example(t, r, r.Wrong), example(t, r, r.Right())
			require.Contains(t, wrong, r.Slug, "the wrong example is not found")
			require.NotContains(t, right, r.Slug, "the right example is found")
			for slug, list := range right {
				if _, both := wrong[slug]; !both && slug != portOpen.Slug {
					for _, f := range list {
						require.NotEqual(t, finding.Stop, f.Severity, "%s %s: %s", slug, f.At(), f.Reason)
					}
				}
			}
		})
	}
}

// Every finding has a place, a reason and a remedy, and a slug that is explained.
func TestFindingsAreWhole(t *testing.T) {
	for _, r := range All() {
		for slug, list := range example(t, r, r.Wrong) {
			_, known := Find(slug)
			require.True(t, known, "%s is not explained", slug)
			for _, f := range list {
				require.NotEmpty(t, f.At(), slug)
				require.NotEmpty(t, f.Reason, slug)
				require.NotEmpty(t, f.Remedy, slug)
				if f.Subject.Kind != finding.Build { // which is the file as a whole
					require.Positive(t, f.Place.Line, slug)
				}
				require.Contains(t, []finding.Severity{finding.Stop, finding.Caution, finding.Note}, f.Severity)
				require.NotEqual(t, "no consequence", f.Consequence.String(), slug)
				for _, x := range append([]finding.Subject{f.Subject}, f.Also...) {
					require.NotEqual(t, "no subject", x.Kind.String(), slug)
					require.NotEmpty(t, x.String(), slug)
				}
				require.Len(t, f.Related, len(f.Also), "%s: what shares a fault has a place each", slug)
			}
		}
	}
}

// What is mended of a wrong example stands in it once.
func TestMendsAreWhole(t *testing.T) {
	for _, r := range All() {
		require.NotEqual(t, r.right == "", len(r.mend) == 0, "%s: one or the other", r.Slug)
		for i := 0; i < len(r.mend); i += 2 {
			require.Equal(t, 1, strings.Count(r.Wrong, r.mend[i]), "%s: %s", r.Slug, r.mend[i])
		}
	}
}

// Slugs are words joined by hyphens, each once, and each rule explains itself.
func TestRulesAreWhole(t *testing.T) {
	seen := map[string]bool{}
	for _, r := range All() {
		require.Regexp(t, `^[a-z]+(-[a-z]+)+$`, r.Slug)
		require.False(t, seen[r.Slug], "%s stands twice", r.Slug)
		seen[r.Slug] = true
		for _, text := range []string{r.Title, r.Why, r.Wrong, r.Right()} {
			require.NotEmpty(t, strings.TrimSpace(text), r.Slug)
		}
	}
}

// What comes of a bad joint is what it does where it stands: below the waterline the sea comes
// in, and high pressure lets go; the pressure at stake is the highest that stands there.
func TestConsequenceOfAJoint(t *testing.T) {
	const text = `
[duty]
pressure = "55 bar"
[[item]]
id = "house"
kind = "house supply"
pressure = "3 bar"
ports = { out = '1/2 NPT male' }
[[item]]
id = "tap"
kind = "shut-off valve"
ports = { in = 'Rc 1/2', out = '1/2 NPT female' }
rated = "10 bar"
[[item]]
id = "drain"
kind = "drain"
[[run]]
name = "line"
path = ["house", "tap", "drain"]
`
	low := found(t, text)["flank-angles-differ"]
	require.Len(t, low, 1)
	require.Equal(t, finding.Leaks, low[0].Consequence)
	require.Equal(t, finding.Stake{Pressure: 3 * quantity.Bar, Known: true}, low[0].Stake)
	below := found(t, strings.Replace(text, "name = \"line\"", "name = \"line\"\nbelow_waterline = true", 1))["flank-angles-differ"]
	require.Len(t, below, 1)
	require.Equal(t, finding.Floods, below[0].Consequence)
	require.Equal(t, "J1 house.out - tap.in", below[0].At())

	high := found(t, changed(t, line, amend{"ports = { a = '3/8 NPT male', b = '3/8 NPT female', branch = '3/8 NPT female' }", "ports = { a = 'R 3/8', b = '3/8 NPT female', branch = '3/8 NPT female' }"}))["pitches-differ"]
	require.NotEmpty(t, high)
	require.Equal(t, finding.LetsGo, high[0].Consequence)
}
