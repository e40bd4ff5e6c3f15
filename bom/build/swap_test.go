package build_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"handtight/bom"
	"handtight/bom/build"
	"handtight/bom/read"
)

const swaps = `
[build]
name = "Swaps"
currency = "NZD"
plugged = ["box/x.branch"]
[[item]]
id = "sea"
kind = "sea"
[[item]]
id = "box"
kind = "tee"
ports = { a = 'G 1/2 male', b = 'G 1/2 male', branch = 'G 1/2 male' }
[[item]]
id = "other"
kind = "tee"
ports = { a = 'G 3/4 male', b = 'G 3/4 male', branch = 'G 3/4 male' }
[[item]]
id = "house"
kind = "filter housing"
ports = { in = 'G 1/2 female', out = 'G 1/2 female' }
[[item]]
id = "house-2"
kind = "filter housing"
ports = { in = 'G 1/2 female', out = 'G 1/2 female' }
[[item]]
id = "fill"
kind = "filter cartridge"
inside = "house"
[[item]]
id = "fill-2"
kind = "filter cartridge"
life = "10 h"
[[item]]
id = "stock"
kind = "hose stock"
bore = "19 mm"
[[item]]
id = "drain"
kind = "drain"
[[run]]
name = "all"
path = ["sea", "box/x.a>b", "house", "drain"]
[[option]]
for = "box"
item = "other"
[[option]]
for = "house"
item = "house-2"
[[option]]
for = "fill"
item = "fill-2"
[spares]
hours = "20 h"
`

func swapped(t *testing.T, pairs map[string]string) *bom.System {
	t.Helper()
	b, faults := read.Parse("swaps.toml", []byte(swaps))
	require.NoError(t, faults.Err())
	before := walkedKeys(t, b)
	out, err := b.Swap(pairs)
	require.NoError(t, err)
	require.Equal(t, before, walkedKeys(t, b), "the build itself stays as it is")
	sys, faults := bom.Walk(out)
	require.NoError(t, faults.Err())
	return sys
}

// walkedKeys lists what a build needs: "box 1, house 1".
func walkedKeys(t *testing.T, b *build.Build) string {
	sys, faults := bom.Walk(b)
	require.NoError(t, faults.Err())
	return needKeys(t, sys)
}

func needKeys(t *testing.T, sys *bom.System) string {
	needs, err := sys.Needs()
	require.NoError(t, err)
	var out []string
	for _, n := range needs {
		if n.Item != nil {
			out = append(out, n.Key+" "+n.Build().String())
		}
	}
	return strings.Join(out, ", ")
}

func TestSwap(t *testing.T) {
	for _, c := range []struct {
		why   string
		pairs map[string]string
		needs string
	}{
		{"nothing: alternatives that are not taken are not counted", nil, "box 1, house 1, fill 1"},
		{"a unit, its label and its plugged port", map[string]string{"box": "other"}, "other 1, house 1, fill 1"},
		{"a housing takes over the cartridge inside", map[string]string{"house": "house-2"}, "box 1, house-2 1, fill 1"},
		{"a cartridge takes over the housing it is inside of, and has its own life: 1 and 2 changes", map[string]string{"fill": "fill-2"}, "box 1, house 1, fill-2 3"},
		{"all at once", map[string]string{"fill": "fill-2", "house": "house-2", "box": "other"}, "other 1, house-2 1, fill-2 3"},
	} {
		t.Run(c.why, func(t *testing.T) {
			sys := swapped(t, c.pairs)
			require.Equal(t, c.needs, needKeys(t, sys))
			if c.pairs["box"] != "" {
				require.Equal(t, "other/x", sys.Build.Plugged[0].Unit)
				require.Equal(t, build.Option{For: "other", Item: "box", Place: sys.Build.Options[0].Place}, sys.Build.Options[0], "the way back")
			}
		})
	}
}

func TestSwapRefuses(t *testing.T) {
	b, faults := read.Parse("swaps.toml", []byte(swaps))
	require.NoError(t, faults.Err())
	for _, c := range []struct {
		why   string
		pairs map[string]string
		want  string
	}{
		{"an id that is none", map[string]string{"box": "bax"}, "`box` or `bax` is no item of the build"},
		{"a part for a content", map[string]string{"box": "fill"}, "`fill` (filter cartridge) cannot stand for `box` (tee)"},
		{"stock for what is none", map[string]string{"stock": "fill"}, "`fill` (filter cartridge) cannot stand for `stock` (hose stock): for a hose cut from stock name another [[hose]], for stock other stock"},
	} {
		_, err := b.Swap(c.pairs)
		require.EqualError(t, err, c.want, c.why)
	}
}
