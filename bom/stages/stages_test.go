package stages_test

import (
	"fmt"
	"path/filepath"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"handtight/bom"
	"handtight/bom/graph"
	"handtight/bom/stages"
)

func walked(t testing.TB, name string) *bom.System {
	b, faults := bom.Read(filepath.Join("..", "..", "testdata", name, "build.toml"))
	require.Empty(t, faults)
	s, faults := bom.Walk(b)
	require.Empty(t, faults)
	return s
}

// numbers spells joints out: "J1-J6 J20".
func numbers(list []*graph.Joint) string {
	var out []string
	for i := 0; i < len(list); {
		k := i
		for k+1 < len(list) && list[k+1].Number == list[k].Number+1 {
			k++
		}
		word := fmt.Sprintf("J%d", list[i].Number)
		if k > i {
			word += "-J" + strconv.Itoa(list[k].Number)
		}
		out = append(out, word)
		i = k + 1
	}
	return strings.Join(out, " ")
}

// Worked out by hand from the walk of the example plant, before there was any code: which
// joints each stage wets first, how many water runs through, and how many it reaches.
func TestTheExampleByHand(t *testing.T) {
	sheets := stages.Of(walked(t, "clean"))
	require.Len(t, sheets, 1)
	s := sheets[0]
	require.Len(t, s.Joints, 58)
	want := []struct {
		name, first, runs string
		ran, reached      int
	}{
		{"dry fit", "", "", 0, 0},
		{"dock flush", "J7-J30 J34-J36 J49-J58", "J17-J19 J21-J28 J34-J36 J49-J58", 24, 37},
		{"afloat, by gravity", "J1-J6", "", 24, 43},
		{"feed pump alone", "", "J1-J16", 40, 43},
		{"high-pressure pump without pressure", "", "", 40, 43},
		{"rising pressure", "J37-J44 J47-J48", "J37-J43 J47-J48", 49, 53},
		{"product to the tank", "J45-J46", "J45-J46", 51, 55},
		{"by jug", "J31-J33", "J31-J33", 54, 58},
	}
	require.Len(t, s.Stages, len(want))
	for i, w := range want {
		got := s.Stages[i]
		require.Equal(t, []any{w.name, w.first, w.runs, w.ran, w.reached}, []any{got.Name, numbers(got.First), numbers(got.Runs), got.Ran, got.Reached}, w.name)
		require.Equal(t, i, got.Number)
		require.Empty(t, got.Blocked)
	}
	require.Empty(t, s.Dry)
	// common practice, no source: a flush at the dock wets about nine joints in ten. Not here.
	require.InDelta(t, 37.0/58, s.Flushed, 1e-9)
	require.InDelta(t, 24.0/58, s.Running, 1e-9)
}
