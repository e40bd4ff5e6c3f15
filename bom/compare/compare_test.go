package compare

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"handtight/bom"
	"handtight/bom/finding"
	"handtight/bom/read"
	"handtight/bom/rule"
)

const base = `
[build]
name = "Base"
currency = "NZD"
[[item]]
id = "sea"
kind = "sea"
ports = { out = '19 mm barb long' }
[[item]]
id = "tail"
kind = "hose tail"
ports = { a = 'G 3/4 male', b = '19 mm barb long' }
rated = "16 bar"
[[item]]
id = "strainer"
kind = "strainer"
ports = { in = 'G 3/4 female', out = 'G 3/4 female' }
rated = "6 bar"
[[item]]
id = "strainer-npt"
kind = "strainer"
ports = { in = '3/4 NPT female', out = '3/4 NPT female' }
rated = "6 bar"
extra = 1
[[item]]
id = "pump"
kind = "feed pump"
type = "diaphragm"
ports = { in = '19 mm barb long', out = '19 mm barb long' }
shutoff = "2.5 bar"
rated = "6 bar"
[[item]]
id = "kit"
kind = "seal kit"
inside = "pump"
fails = "900 h"
[[item]]
id = "out"
kind = "through-hull"
ports = { inboard = '19 mm barb long' }
rated = "10 bar"
[[item]]
id = "stock"
kind = "hose stock"
bore = "19 mm"
rated = "6 bar"
vacuum = "0.9 bar"
[[hose]]
id = "hose"
of = "stock"
length = "1 m"
[[run]]
name = "raw water"
path = ["sea", "hose/+", "tail/+", "strainer", "tail/+", "hose/+", "pump"]
[[run]]
name = "out"
path = ["pump", "hose/+", "out"]
`

func walked(t require.TestingT, text string) *bom.System {
	build, faults := read.Parse("build.toml", []byte(text))
	require.NoError(t, faults.Err())
	sys, faults := bom.Walk(build)
	require.NoError(t, faults.Err())
	return sys
}

func compared(t require.TestingT, pairs ...string) *Report {
	return Builds(walked(t, base), walked(t, strings.NewReplacer(pairs...).Replace(base)))
}

func named(list []Thing) string {
	var out []string
	for _, x := range list {
		out = append(out, x.Name)
	}
	return strings.Join(out, " ")
}

func TestBuilds(t *testing.T) {
	const rawPath = `path = ["sea", "hose/+", "tail/+", "strainer", "tail/+", "hose/+", "pump"]`
	for _, row := range []struct {
		why                      string
		pairs                    []string
		added, removed, replaced string
		changed                  int
		worseJoints, worseSegs   int
		newStop                  bool
	}{
		{"the same", nil, "", "", "", 0, 0, 0, false},
		{"another order of the tables is the same build", []string{"[[item]]\nid = \"kit\"\nkind = \"seal kit\"\ninside = \"pump\"\nfails = \"900 h\"\n", "",
			"[[run]]\nname = \"raw water\"", "[[item]]\nid = \"kit\"\nkind = \"seal kit\"\ninside = \"pump\"\nfails = \"900 h\"\n[[run]]\nname = \"raw water\""}, "", "", "", 0, 0, 0, false},
		{"a strainer of another thread in the same place: both its joints are worse", []string{`"tail/+", "strainer",`, `"tail/+", "strainer-npt",`},
			"", "", "strainer>strainer-npt", 0, 2, 0, true},
		{"a unit put in between moves none of the others", []string{`"strainer", "tail/+", "hose/+", "pump"`, `"strainer", "tail/+", "hose/+", "tail/+", "strainer/two", "tail/+", "hose/+", "pump"`},
			"tail/+3 strainer/two tail/+4 hose/+3", "", "", 0, 0, 0, false},
		{"taken out again", []string{rawPath, `path = ["sea", "hose/+", "pump"]`}, "", "tail/+1 strainer tail/+2 hose/+2", "", 0, 0, 0, false},
		{"a lower rating lowers the segment's hold and margin, and is above what it sees", []string{"shutoff = \"2.5 bar\"\nrated = \"6 bar\"", "shutoff = \"2.5 bar\"\nrated = \"4 bar\""},
			"", "", "", 1, 0, 2, false},
		{"a stronger pump overloads", []string{`shutoff = "2.5 bar"`, `shutoff = "9 bar"`}, "", "", "", 1, 0, 1, true},
		{"another content of the pump", []string{`id = "kit"`, `id = "kit-2"`}, "", "", "kit>kit-2", 0, 0, 0, false},
		{"a content more", []string{`id = "kit"`, "id = \"oil\"\nkind = \"oil\"\nlife = \"50 h\"\n[[item]]\nid = \"kit\""}, "oil", "", "", 0, 0, 0, false},
	} {
		t.Run(row.why, func(t *testing.T) {
			r := compared(t, row.pairs...)
			var replaced []string
			for _, x := range r.Replaced {
				replaced = append(replaced, x.Old.Name+">"+x.New.Name)
			}
			require.Equal(t, row.added, named(r.Added), "added")
			require.Equal(t, row.removed, named(r.Removed), "removed")
			require.Equal(t, row.replaced, strings.Join(replaced, " "), "replaced")
			require.Len(t, r.Changed, row.changed)
			joints, segments := r.Worse()
			require.Equal(t, row.worseJoints, joints, "joints: %v", r.Joints)
			require.Equal(t, row.worseSegs, segments, "segments: %v", r.Segments)
			require.Equal(t, row.newStop, !r.Cleared)
		})
	}
}

// What changed is told with both sides, and a change for the better is not for the worse.
func TestToldWithBothSides(t *testing.T) {
	r := compared(t, "shutoff = \"2.5 bar\"\nrated = \"6 bar\"", "shutoff = \"1 bar\"\nrated = \"6 bar\"")
	require.Equal(t, []Change{{"pump", "shutoff", "2.5 bar", "1 bar"}}, r.Changed)
	require.Len(t, r.Segments, 1)
	require.Empty(t, r.Segments[0].Worse)
	require.Contains(t, r.Segments[0].Better, "normal 2.5 bar -> 1 bar")

	r = compared(t, `"tail/+", "strainer",`, `"tail/+", "strainer-npt",`)
	require.Equal(t, "seals-with", r.Joints[0].OldVerdict)
	require.NotEqual(t, "seals-with", r.Joints[0].NewVerdict)
	require.Equal(t, "tail/+1.a - strainer.in", r.Joints[0].Old)
	require.Equal(t, "tail/+1.a - strainer-npt.in", r.Joints[0].New)
}

// A finding that was there is not new, though joints are numbered again and its unit has
// another name; one that is only worse than it was is new.
func TestFindingsThatStay(t *testing.T) {
	bad := strings.Replace(base, `"tail/+", "strainer",`, `"tail/+", "strainer-npt",`, 1)
	longer := strings.Replace(bad, `path = ["sea", "hose/+",`, `path = ["sea", "hose/+", "tail/+", "strainer", "tail/+", "hose/+",`, 1)
	r := Builds(walked(t, bad), walked(t, longer))
	require.True(t, r.Cleared, "%v", r.New)
	again := strings.ReplaceAll(bad, "strainer-npt", "strainer-us")
	r = Builds(walked(t, bad), walked(t, again))
	require.Len(t, r.Replaced, 1)
	require.Empty(t, r.New)
	require.Empty(t, r.Gone)
	r = Builds(walked(t, bad), walked(t, base))
	require.NotEmpty(t, r.Gone)
	require.Empty(t, r.New)
}

// Whatever strainers stand in the run: a build is the same as itself, and units and stops
// come out even: what was there, less what went, with what came.
func TestComesOutEven(t *testing.T) {
	draw := func(t *rapid.T) string {
		var path []string
		for range rapid.IntRange(0, 4).Draw(t, "strainers") {
			path = append(path, fmt.Sprintf("\"tail/+\", %q, \"tail/+\", \"hose/+\",", rapid.SampledFrom([]string{"strainer/+", "strainer-npt/+"}).Draw(t, "strainer")))
		}
		return strings.Replace(base, `"tail/+", "strainer", "tail/+", "hose/+",`, strings.Join(path, " "), 1)
	}
	rapid.Check(t, func(t *rapid.T) {
		a, b := walked(t, draw(t)), walked(t, draw(t))
		require.True(t, Builds(a, a).Same())
		there := Builds(a, b)
		require.Equal(t, len(a.Graph.Units)+len(there.Added)-len(there.Removed), len(b.Graph.Units))
		stops := finding.Count(rule.Check(b), finding.Stop) - finding.Count(rule.Check(a), finding.Stop)
		require.Equal(t, stops, finding.Count(there.New, finding.Stop)-finding.Count(there.Gone, finding.Stop))
	})
}
