package workshop_test

import (
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"handtight/bom"
	"handtight/bom/workshop"
	"handtight/pressure"
)

func walked(t testing.TB, name string) *bom.System {
	b, faults := bom.Read(filepath.Join("..", "..", "testdata", name, "build.toml"))
	require.Empty(t, faults)
	s, faults := bom.Walk(b)
	require.Empty(t, faults)
	return s
}

// By hand, of the example plant: 1.4 m is cut at 1.43 (2 % is 28 mm, rounded up to 10 mm),
// 0.4 m at 0.42 (20 mm is the larger), a made-up hose is not cut, tube asks for its depth.
func TestHosesByHand(t *testing.T) {
	byName := map[string]workshop.Hose{}
	for _, h := range workshop.Hoses(walked(t, "clean")) {
		byName[h.Unit.Name] = h
	}
	require.Len(t, byName, 17)
	raw := byName["raw-1"]
	require.InDelta(t, 1430, raw.Cut.Millimetres(), 1e-6)
	require.Equal(t, "J1, intake.inboard, 19 mm barb long", raw.From)
	require.Equal(t, "raw water", raw.Run)
	require.Contains(t, raw.Needs, "stands a vacuum")
	require.InDelta(t, 420, byName["feed-3"].Cut.Millimetres(), 1e-6)
	made := byName["hp-hose-feed"]
	require.Nil(t, made.Cut)
	require.Contains(t, made.HowCut, "made up")
	require.Contains(t, made.Needs, "70 bar")
	require.Contains(t, byName["product-1"].HowCut, "pushed into")
	require.Contains(t, byName["product-1"].Needs, "fit for drinking water")
}

// The radius is the table's, and where no table has one the maker is asked.
func TestRadius(t *testing.T) {
	for _, demo := range []string{"clean", "careless", "refit", "arrows"} {
		for _, h := range workshop.Hoses(walked(t, demo)) {
			it := h.Unit.Item
			if h.Radius == nil {
				require.Contains(t, h.RadiusWhy, "ask the maker")
				continue
			}
			if it.BendRadius != nil {
				require.Equal(t, *it.BendRadius, *h.Radius)
				continue
			}
			spec, ok := pressure.HoseSpec(it.Spec)
			require.True(t, ok)
			r, ok := pressure.MinBend(spec, *it.Bore)
			require.True(t, ok)
			require.Equal(t, r, *h.Radius)
		}
	}
}

// Every joint that a tool is for exists; no tool is named for what the build has not.
func TestToolsAreForThisBuild(t *testing.T) {
	sys := walked(t, "clean")
	var all strings.Builder
	for _, tool := range workshop.Tools(sys) {
		require.NotEmpty(t, tool.Basis, tool.Name)
		all.WriteString(tool.Name + ": " + tool.For + "\n")
	}
	text := all.String()
	require.Contains(t, text, "two spanners 11/16 in across flats: nut of JIC -6")
	require.NotContains(t, text, "24L")
	require.Contains(t, text, "tube cutter")
}

// What is in the table of spanners: each figure said once, rising with the size, and the
// ones from memory counted.
func TestFlats(t *testing.T) {
	memory, seen := workshop.FlatsByStatus()
	require.Equal(t, []int{21, 16}, []int{memory, seen})
}
