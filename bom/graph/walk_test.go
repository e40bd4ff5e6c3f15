package graph_test

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"handtight/bom"
	"handtight/bom/build"
	"handtight/bom/internal/built"
	"handtight/bom/read"
)

// kit is parts to walk; nothing is said of most ends, so that nothing is turned.
const kit = `
[[item]]
id = "check"
kind = "check valve"
[[item]]
id = "elbow"
kind = "elbow"
[[item]]
id = "tee"
kind = "tee"
[[item]]
id = "cross"
kind = "cross"
[[item]]
id = "vessel"
kind = "pressure vessel"
[[item]]
id = "selector"
kind = "selector valve"
[[item]]
id = "cock"
kind = "seacock"
[[item]]
id = "hull"
kind = "through-hull"
[[item]]
id = "tank"
kind = "tank"
[[item]]
id = "drain"
kind = "drain"
[[item]]
id = "gauge"
kind = "gauge"
[[item]]
id = "clamp"
kind = "clamp"
[[item]]
id = "three"
kind = "manifold"
ports = { a = '1/2 NPT female', b = '1/2 NPT female', branch = '1/2 NPT female' }
[[item]]
id = "gap"
kind = "manifold"
ports = { a = '1/2 NPT female', b = '1/2 NPT female', branch = '1/2 NPT female', d = '1/4 NPT female' }
[[item]]
id = "block"
kind = "passage"
ports = { left = '1/2 NPT female', right = '1/2 NPT female', top = '1/4 NPT female' }
open = ["left>right"]
one_way = ["left>top"]
`

// joined walks paths over the kit and lists the joints.
func joined(t *testing.T, paths ...string) []string {
	t.Helper()
	sys := built.Walk(t, "kit.toml", built.Head+kit+built.Runs(paths...))
	var out []string
	for _, j := range sys.Graph.Joints {
		out = append(out, sys.Graph.JointName(j))
	}
	return out
}

// How a path is read: `item[/label][.entry][>exit]`.
func TestPathGrammar(t *testing.T) {
	for _, c := range []struct {
		why   string
		paths []string
		want  []string
	}{
		{"directed parts go in to out", []string{"tank check drain"}, []string{"tank.in - check.in", "check.out - drain.in"}},
		{"an undirected part goes as written when nothing is known", []string{"tank elbow drain"}, []string{"tank.in - elbow.a", "elbow.b - drain.in"}},
		{"entry and exit say another way", []string{"tank check.out>in drain"}, []string{"tank.in - check.out", "check.in - drain.in"}},
		{"a single port begins a run", []string{"tee.branch drain"}, []string{"tee.branch - drain.in"}},
		{"a single port ends a run", []string{"tank tee.branch"}, []string{"tank.in - tee.branch"}},
		{"an exit alone begins a run", []string{"tee>branch drain"}, []string{"tee.branch - drain.in"}},
		{"entry and exit of a branch", []string{"tank tee.branch>b drain"}, []string{"tank.in - tee.branch", "tee.b - drain.in"}},
		{"an exit alone leaves the entry to what is written first", []string{"tank tee>branch drain"}, []string{"tank.in - tee.a", "tee.branch - drain.in"}},
		{"an exit alone is never the entry too", []string{"tank elbow>a drain"}, []string{"tank.in - elbow.b", "elbow.a - drain.in"}},
		{"an entry alone turns the part", []string{"tank elbow.b drain"}, []string{"tank.in - elbow.b", "elbow.a - drain.in"}},
		{"a selector is entered by its common port", []string{"tank selector>b drain"}, []string{"tank.in - selector.common", "selector.b - drain.in"}},
		{"a vessel ends a run at its feed", []string{"tank vessel"}, []string{"tank.in - vessel.feed"}},
		{"a seacock begins a run at the sea, so it is left inboard", []string{"cock elbow"}, []string{"cock.inboard - elbow.a"}},
		{"a seacock ends a run at the sea, so it is entered inboard", []string{"elbow cock"}, []string{"elbow.b - cock.inboard"}},
		{"a through-hull too", []string{"hull elbow hull/2"}, []string{"hull.inboard - elbow.a", "elbow.b - hull/2.inboard"}},
		{"a label is one unit wherever it stands", []string{"tank tee/x drain", "tee/x.branch gauge"}, []string{"tank.in - tee/x.a", "tee/x.b - drain.in", "tee/x.branch - gauge.in"}},
		{"the bare name is one unit too", []string{"tank tee drain", "tee.branch gauge"}, []string{"tank.in - tee.a", "tee.b - drain.in", "tee.branch - gauge.in"}},
		{"a plus is a new unit each time", []string{"tank elbow/+ elbow/+ elbow drain"}, []string{
			"tank.in - elbow/+1.a", "elbow/+1.b - elbow/+2.a", "elbow/+2.b - elbow.a", "elbow.b - drain.in"}},
		{"taken ports leave the others", []string{"tank tee.a>branch drain", "gauge tee"}, []string{"tank.in - tee.a", "tee.branch - drain.in", "gauge.in - tee.b"}},
		{"a manifold of three ports", []string{"tank three.a>branch drain"}, []string{"tank.in - three.a", "three.branch - drain.in"}},
		{"a manifold with a port left out", []string{"tank gap.d>b drain"}, []string{"tank.in - gap.d", "gap.b - drain.in"}},
		{"a part with ports of its own naming", []string{"tank block.left>top drain", "block.right gauge"}, []string{
			"tank.in - block.left", "block.top - drain.in", "block.right - gauge.in"}},
		{"all four ways of a cross", []string{"tank cross.c>branch drain", "cross.a gauge", "cross.b gauge/2"}, []string{
			"tank.in - cross.c", "cross.branch - drain.in", "cross.a - gauge.in", "cross.b - gauge/2.in"}},
	} {
		t.Run(c.why, func(t *testing.T) { require.Equal(t, c.want, joined(t, c.paths...)) })
	}
}

// A path that cannot be walked is a file error; whole messages.
func TestPathFaults(t *testing.T) {
	first := strings.Count(built.Head+kit, "\n") + 3 // the line of the first path
	at := func(run, column int, rest string) string {
		return fmt.Sprintf("boat.toml line %d, column %d: %s", first+3*(run-1), column, rest)
	}
	for _, c := range []struct {
		why   string
		paths []string
		want  string
	}{
		{"a port twice: both places, and how to write a further unit", []string{"tank elbow drain", "gauge elbow"},
			at(2, 18, fmt.Sprintf("elbow.a is joined twice: here, and in boat.toml line %d, column 17 (run \"r1\")\n    path = [\"gauge\", \"elbow\"]\n  a port takes one joint; for a further unit of the same item write `elbow/+`, or a label of your own", first))},
		{"a unit twice in one run", []string{"tank elbow elbow drain"},
			at(1, 26, fmt.Sprintf("elbow.a is joined twice: here, and in boat.toml line %d, column 17 (run \"r1\")", first))},
		{"a port with itself", []string{"elbow.a elbow.a"},
			at(1, 20, "elbow.a would be joined to itself\n    path = [\"elbow.a\", \"elbow.a\"]\n  write another unit: `elbow/+`")},
		{"a port that is not there", []string{"tank tee.brunch>a drain"},
			at(1, 17, "tee has no port `brunch`\n    path = [\"tank\", \"tee.brunch>a\", \"drain\"]\n  did you mean `branch`? its ports are `a`, `b` and `branch`")},
		{"a manifold's port that this one lacks", []string{"tank three.d>a drain"},
			at(1, 17, "three has no port `d`\n    path = [\"tank\", \"three.d>a\", \"drain\"]\n  its ports are `a`, `b` and `branch`")},
		{"a part of one port in the middle", []string{"tank gauge drain"},
			at(1, 17, "gauge is a gauge, and `gauge` does not say by which port the run enters and leaves it\n    path = [\"tank\", \"gauge\", \"drain\"]\n  nothing runs on through a part of one port: put a tee in its place here, and write a [[run]] of its own with path = [\"tee.branch\", \"gauge\"]")},
		{"a vessel in the middle that does not say where it is left", []string{"tank vessel drain"},
			at(1, 17, "vessel is a pressure vessel, and `vessel` does not say by which port the run enters and leaves it\n    path = [\"tank\", \"vessel\", \"drain\"]\n  name its ports: `vessel.feed>brine`")},
		{"a vessel at the beginning", []string{"vessel drain"},
			at(1, 9, "vessel is a pressure vessel, and `vessel` does not say by which port the run leaves it\n    path = [\"vessel\", \"drain\"]\n  name a port: `vessel.product`")},
		{"a branch that does not say where it is left", []string{"tank tee.branch drain"},
			at(1, 17, "tee is a tee, and `tee.branch` does not say by which port the run enters and leaves it\n    path = [\"tank\", \"tee.branch\", \"drain\"]\n  name its ports: `tee.branch>a`")},
		{"a part with ports of its own that names none", []string{"tank block drain"},
			at(1, 17, "block is a passage, and `block` does not say by which port the run enters and leaves it\n    path = [\"tank\", \"block\", \"drain\"]\n  name its ports: `block.left>right`")},
		{"in and out by one port", []string{"tank tee.a>a drain"},
			at(1, 17, "tee is a tee, and `tee.a>a` does not say by which port the run enters and leaves it\n    path = [\"tank\", \"tee.a>a\", \"drain\"]\n  name its ports: `tee.a>b`")},
		{"a thing without ports", []string{"tank clamp drain"},
			at(1, 17, "clamp is a clamp, and `clamp` does not say by which port the run enters and leaves it\n    path = [\"tank\", \"clamp\", \"drain\"]\n  a clamp has no ports, so it cannot stand in a run; use `inside` for contents")},
	} {
		t.Run(c.why, func(t *testing.T) {
			got := built.Faults(t, built.Head+kit+built.Runs(c.paths...), nil)
			if !strings.Contains(c.want, "\n") {
				got, _, _ = strings.Cut(got, "\n")
			}
			require.Equal(t, c.want, got)
		})
	}
}

// A manifold with fewer ports than its kind may have opens its own ports to each other,
// and nobody else's.
func TestManifoldOpensItsOwnPorts(t *testing.T) {
	text := built.Head + kit + "[[item]]\nid = \"house\"\nkind = \"house supply\"\npressure = \"3 bar\"\n" +
		built.Runs("house gap.d", "gap.b gauge", "gap.a gauge/2", "gap.branch gauge/3", "gauge/4 elbow gauge/5", "house/2 three.branch", "three.a gauge/6", "three.b gauge/7", "gauge/8 elbow/2 gauge/9")
	sys := built.Walk(t, "kit.toml", text)
	for port, want := range map[string]float64{
		"gap.a": 3, "gap.b": 3, "gap.branch": 3, "gap.d": 3, "gauge.in": 3, "gauge/3.in": 3, "three.a": 3, "gauge/7.in": 3,
		"gauge/4.in": 0, "elbow.b": 0, "gauge/8.in": 0, "elbow/2.a": 0,
	} {
		require.InDelta(t, want, sys.States.PortLoad(built.Port(t, sys, port)).Normal.Bar(), 1e-9, port)
	}
}

// Joints are numbered in the order of the runs, whatever else the file holds: the number
// is written on a tag.
func TestJointNumbersAreStable(t *testing.T) {
	numbers := func(text string) (out []string) {
		sys := built.Walk(t, "kit.toml", text)
		for i, j := range sys.Graph.Joints {
			require.Equal(t, i+1, j.Number)
			out = append(out, fmt.Sprintf("%d %s", j.Number, sys.Graph.JointName(j)))
		}
		return out
	}
	paths := built.Runs("tank tee/x elbow drain", "tee/x.branch gauge", "cock elbow/+ hull")
	want := []string{"1 tank.in - tee/x.a", "2 tee/x.b - elbow.a", "3 elbow.b - drain.in", "4 tee/x.branch - gauge.in", "5 cock.inboard - elbow/+1.a", "6 elbow/+1.b - hull.inboard"}
	require.Equal(t, want, numbers(built.Head+kit+paths))
	require.Equal(t, want, numbers(built.Head+paths+kit), "items after runs")
	require.Equal(t, want, numbers(built.Head+kit+"[[item]]\nid = \"store\"\nkind = \"plug\"\nextra = 2\n"+paths), "a further item")
}

// longRun is one run of so many joints.
func longRun(t testing.TB, joints int) *build.Build {
	t.Helper()
	b, faults := read.Parse("long.toml", []byte(built.Head+kit+built.Runs("tank "+strings.Repeat("elbow/+ ", joints-1)+"drain")))
	require.NoError(t, faults.Err())
	return b
}

// Ten thousand joints in one run are walked without recursion.
func TestLongRun(t *testing.T) {
	const joints = 10_000
	sys, faults := bom.Walk(longRun(t, joints))
	require.NoError(t, faults.Err())
	require.Len(t, sys.Graph.Joints, joints)
	require.Len(t, sys.Segments.All, 1)
	require.Equal(t, "elbow/+9999.b - drain.in", sys.Graph.JointName(sys.Graph.Joints[joints-1]))
}

// The time grows with the joints, and not with their square.
func BenchmarkLongRun(b *testing.B) {
	for _, joints := range []int{1_000, 10_000, 99_999} {
		build := longRun(b, joints)
		b.Run(fmt.Sprintf("joints=%d", joints), func(b *testing.B) {
			for b.Loop() {
				bom.Walk(build)
			}
			b.ReportMetric(float64(b.Elapsed().Nanoseconds())/float64(b.N)/float64(joints), "ns/joint")
		})
	}
}
