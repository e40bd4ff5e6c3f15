package segment_test

import (
	"testing"

	"github.com/stretchr/testify/require"

	"handtight/bom"
	"handtight/bom/internal/built"
	"handtight/bom/joint"
)

// proofLine is a line of three parts whose ratings the cases change.
const proofLine = `
[build]
name = "x"
currency = "EUR"
[[item]]
id = "left"
kind = "adaptor"
material = "316"
ports = { a = '1/2 NPT female', b = '9/16-18 JIC male' }
rated = "200 bar"
[[hose]]
id = "hose"
spec = "SAE 100R8"
bore = '3/8"'
length = "1 m"
ends = ['9/16-18 JIC female swivel', '3/8 NPT male']
[[item]]
id = "right"
kind = "coupling"
material = "316"
ports = { a = '3/8 NPT female', b = '3/8 NPT female' }
rated = "RATED"
[[run]]
name = "line"
path = ["left", "hose", "right"]
`

// The first test goes to one and a half times the weakest fitting (ASME B31.3-2016
// 345.4.2(a)) and to twice a hose of its standard (SAE J517, 1 : 2 : 4), whichever is less.
func TestProof(t *testing.T) {
	for _, c := range []struct {
		why, rated string
		want       float64
		ok         bool
	}{
		{"a fitting is the weakest", "100 bar", 150, true},
		{"the other fitting is: the hose of 275.8 bar is tested at 551.6", "500 bar", 300, true},
		{"one is not rated: nothing may be said", "", 0, false},
	} {
		t.Run(c.why, func(t *testing.T) {
			line := built.Replace(t, proofLine, `rated = "RATED"`, map[bool]string{true: "", false: `rated = "` + c.rated + `"`}[c.rated == ""])
			sys := built.Walk(t, "x.toml", line)
			got, ok := sys.Segments.Proof(sys.Segments.All[0])
			require.Equal(t, c.ok, ok)
			require.InDelta(t, c.want, got.Bar(), 0.01)
		})
	}
}

// What a joint's threads bear is far above what the parts are rated for, and is not
// said of what has no thread or no known metal.
func TestJointEstimate(t *testing.T) {
	sys := built.Walk(t, "x.toml", built.Replace(t, proofLine, "RATED", "100 bar"))
	_, ok := joint.JointEstimate(sys.Graph, sys.Graph.Joints[0])
	require.False(t, ok, "the hose's material is not said")
	sys = built.Walk(t, "x.toml", built.Replace(t, built.Replace(t, proofLine, "RATED", "100 bar"), `spec = "SAE 100R8"`, "spec = \"SAE 100R8\"\nmaterial = \"316 ends\""))
	for _, j := range sys.Graph.Joints {
		r, ok := joint.JointEstimate(sys.Graph, j)
		require.True(t, ok, sys.Graph.JointName(j))
		require.Greater(t, r.Pressure.Bar(), 200.0)
		require.Contains(t, r.String(), "estimate")
	}
	build, faults := bom.Read("../../testdata/clean/build.toml")
	require.NoError(t, faults.Err())
	clean, faults := bom.Walk(build)
	require.NoError(t, faults.Err())
	_, ok = joint.JointEstimate(clean.Graph, clean.Graph.Joints[0])
	require.False(t, ok, "a hose on its tail")
}
