package graph_test

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"handtight/bom"
	"handtight/bom/build"
	"handtight/bom/internal/built"
	"handtight/bom/read"
	"handtight/threads"
)

// An undirected part is turned whichever way makes the better joints, and stands as
// written on a tie.
func TestTurnsForBetterJoints(t *testing.T) {
	const male, female = "1/2 NPT male", "1/2 NPT female"
	ends := built.Ended("from", "check valve", female, male) + built.Ended("to", "check valve", female, male)
	for _, c := range []struct{ why, a, b, want string }{
		{"as written, which fits", female, male, "from.out - part.a, part.b - to.in"},
		{"turned, since it fits so", male, female, "from.out - part.b, part.a - to.in"},
		{"alike at both ends: as written", male, male, "from.out - part.a, part.b - to.in"},
		{"one end fits either way: as written", female, female, "from.out - part.a, part.b - to.in"},
		{"a joint that holds at low pressure is better than one that does not", "G 1/2 female", "R 1/2", "from.out - part.a, part.b - to.in"},
	} {
		t.Run(c.why, func(t *testing.T) {
			to := ends
			if strings.HasPrefix(c.a, "G") {
				to = built.Ended("from", "check valve", female, "R 1/2") + built.Ended("to", "check valve", "Rc 1/2", female)
			}
			sys := built.Walk(t, "turn.toml", built.Head+to+built.Ended("part", "elbow", c.a, c.b)+built.Runs("from part to"))
			require.Equal(t, c.want, sys.Graph.JointName(sys.Graph.Joints[0])+", "+sys.Graph.JointName(sys.Graph.Joints[1]))
		})
	}
}

// A part at the end of a run is turned too.
func TestTurnsAtTheEnds(t *testing.T) {
	text := built.Head + built.Ended("first", "nipple", "1/2 NPT male", "3/8 NPT male") + built.Ended("mid", "coupling", "1/2 NPT female", "3/8 NPT female") + built.Ended("last", "nipple", "1/2 NPT male", "3/8 NPT male")
	sys := built.Walk(t, "turn.toml", text+built.Runs("first mid last"))
	for _, j := range sys.Graph.Joints {
		require.True(t, j.Mating.Verdict.Holds(), sys.Graph.JointName(j))
	}
}

// Along a run the joints together are as good as any way of turning the parts makes
// them (all ways tried), and where the written order is as good it is kept.
func TestTurnsBestOfAllWays(t *testing.T) {
	some := []string{"1/2 NPT male", "1/2 NPT female", "G 1/2 male", "G 1/2 female", "R 1/2", "Rc 1/2", "3/8 NPT male", "1/2 BSP female"}
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.IntRange(2, 8).Draw(t, "parts")
		var text, path strings.Builder
		text.WriteString(built.Head)
		fixed := make([]bool, n)
		for i := range n {
			kind := rapid.SampledFrom([]string{"elbow", "nipple", "elbow", "check valve"}).Draw(t, "kind")
			fixed[i] = kind == "check valve"
			text.WriteString(built.Ended(fmt.Sprintf("u%d", i), kind, rapid.SampledFrom(some).Draw(t, "a"), rapid.SampledFrom(some).Draw(t, "b")))
			fmt.Fprintf(&path, "u%d ", i)
		}
		build, faults := read.Parse("turn.toml", []byte(text.String()+built.Runs(path.String())))
		require.NoError(t, faults.Err())
		sys, faults := bom.Walk(build)
		require.NoError(t, faults.Err())
		best := -1
		for turned := range 1 << n {
			if sum, ok := costOf(build.Items, turned, fixed); ok && (best < 0 || sum < best) {
				best = sum
			}
		}
		got, written := 0, true
		for _, j := range sys.Graph.Joints {
			a, b := &sys.Graph.Ports[j.A], &sys.Graph.Ports[j.B]
			got += badness(a.Port, b.Port)
			written = written && a.Index == 1 && b.Index == 0
		}
		require.Equal(t, best, got, text.String())
		if asWritten, _ := costOf(build.Items, 0, fixed); asWritten == best {
			require.True(t, written, "kept as written on a tie\n%s", text.String())
		}
	})
}

// costOf sums the joints of a run with the parts of a bit set turned; a directed part
// cannot be.
func costOf(items []*build.Item, turned int, fixed []bool) (sum int, ok bool) {
	for i := range items {
		if turned>>i&1 == 1 && fixed[i] {
			return 0, false
		}
	}
	for i := 1; i < len(items); i++ {
		out, in := &items[i-1].Ports[1-turned>>(i-1)&1], &items[i].Ports[turned>>i&1]
		sum += badness(out, in)
	}
	return sum, true
}

// badness is how bad a joint of two ends is: it holds, it holds at low pressure, nobody
// knows, it does not hold.
func badness(a, b *build.Port) int {
	if len(a.End.Candidates) == 0 || len(b.End.Candidates) == 0 {
		return 2
	}
	switch m, _ := threads.Worst(a.End, b.End); {
	case m.Verdict.Holds():
		return 0
	case m.Verdict == threads.LowPressureOnly:
		return 1
	}
	return 3
}
