package workbook

import (
	"handtight/bom/joint"
	"testing"

	"github.com/stretchr/testify/require"

	"handtight/bom"
	"handtight/bom/facts"
)

// What the threads of a joint bear stands beside the worst pressure, named an estimate.
func TestJointSheetShowsTheEstimate(t *testing.T) {
	f := opened(t, sample(t), nil)
	for cell, want := range map[string]string{
		"J3": "Worst pressure", "K3": "Threads bear about, estimate", "J4": "0.3 bar", "K4": "210 bar", "K5": "640 bar", "K6": "",
	} {
		require.Equal(t, want, value(t, f, "Joints", cell), cell)
	}
	require.Equal(t, "340 bar", about(348.9), "two figures, and never more than it is")
	require.Equal(t, "1200 bar", about(1279.3))
	require.Equal(t, "9.6 bar", about(9.68))

	build, faults := bom.Read("../../testdata/clean/build.toml")
	require.NoError(t, faults.Err())
	sys, faults := bom.Walk(build)
	require.NoError(t, faults.Err())
	said := 0
	for i, row := range jointsOf(facts.Of(sys, nil).Joints) {
		_, known := joint.JointEstimate(sys.Graph, sys.Graph.Joints[i])
		require.Equal(t, known, row.Bears != "", row.Number)
		if known {
			said++
		}
	}
	require.NotZero(t, said)
}
