package segment_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"handtight/bom"
	"handtight/bom/internal/built"
	"handtight/bom/read"
	"handtight/bom/segment"
	"handtight/pressure"
	"handtight/pressure/quantity"
)

// segmentSees finds what a segment that holds a port sees in a view.
func segmentSees(t *testing.T, s *bom.System, v segment.StateView, port string) segment.SegmentView {
	t.Helper()
	g := s.Segments.SegmentOf(built.Port(t, s, port))
	for _, row := range v.Segments {
		if row.Segment == g {
			return row
		}
	}
	require.FailNow(t, "no segment with "+port)
	return segment.SegmentView{}
}

// The cases of the plant that people build first, by hand: relief at its full flow
// (1.1 x 65 bar) where it has a way out, no bound where it leads into the shut line.
func TestView(t *testing.T) {
	own := built.Edit{`"relief", "tee/outlet.branch"`, `"relief", "relief-outlet"`}
	for _, c := range []struct {
		why, state, port string
		edits            []built.Edit
		high, low        float64
	}{
		{"normal: the throttle flows", "normal", "pump.out", nil, 55, 0},
		{"normal: behind it nothing", "normal", "brine-hose.a", nil, 0, 0},
		{"the relief leads into the line that is shut", "overboard-valve shut", "brine-hose.a", nil, math.Inf(1), 0},
		{"the relief has an outlet of its own: the brine hose sees its pressure", "overboard-valve shut", "brine-hose.a", []built.Edit{own}, 71.5, 0},
		{"shut throttle: the relief takes the flow", "throttle shut", "pump.out", []built.Edit{own}, 71.5, 0},
		{"selector between its ways: up to the feed side's pressure", "selector between", "meter.in", nil, 55, 0},
		{"intake shut: vacuum to the feed pump", "intake shut", "raw-hose.a", nil, 0, -1},
		{"flush: the house's pressure", "flush", "vessel.feed", nil, 3, 0},
	} {
		t.Run(c.why, func(t *testing.T) {
			sys := built.Plant(t, c.edits...)
			v, ok := sys.Segments.View(c.state)
			require.True(t, ok)
			require.NotEmpty(t, v.Cause)
			row := segmentSees(t, sys, v, c.port)
			require.InDelta(t, c.low, row.Low.Bar(), 1e-9)
			if math.IsInf(c.high, 1) {
				require.True(t, row.High.Unbounded())
				return
			}
			require.InDelta(t, c.high, row.High.Bar(), 1e-9)
		})
	}
	_, ok := built.Plant(t).Segments.View("nothing of the sort")
	require.False(t, ok)
}

// What a state overloads stands in it, the most overloaded first, and each at its
// segment.
func TestOverloads(t *testing.T) {
	build, faults := bom.Read("../../testdata/careless/build.toml")
	require.NoError(t, faults.Err())
	sys, faults := bom.Walk(build)
	require.NoError(t, faults.Err())
	v, ok := sys.Segments.View("throttle shut")
	require.True(t, ok)
	require.NotEmpty(t, v.Overloads)
	require.Equal(t, "hp-tee", v.Overloads[0].What, "class 150, 20.7 bar, and a relief that does not pass the pump's flow bounds nothing")
	require.InDelta(t, 20.7, v.Overloads[0].Holds.Bar(), 0.05)
	require.True(t, v.Overloads[0].Sees.Unbounded())
	for i, o := range v.Overloads {
		require.Greater(t, o.Sees, o.Holds, o.What)
		require.NotNil(t, o.Segment, o.What)
		if i > 0 {
			require.LessOrEqual(t, times(o), times(v.Overloads[i-1]), o.What)
		}
	}
}

// A state tells what its vacuum may flatten, and of what nothing says what it holds: that is
// not to hold it. By eye on the plant that many people build, whose hoses stand no network.Vacuum
// that anybody says and which rates few of its parts.
func TestUntoldAndCollapses(t *testing.T) {
	sys := built.Plant(t)
	v, ok := sys.Segments.View("overboard-valve shut")
	require.True(t, ok)
	var untold []string
	for _, o := range v.Untold {
		untold = append(untold, o.What)
		require.Positive(t, o.Sees)
		require.Zero(t, o.Holds)
	}
	require.Contains(t, untold, "relief", "no bound, and nothing says what it holds")
	require.NotContains(t, untold, "discharge", "it sees nothing")
	require.NotContains(t, untold, "house", "the boat's own")
	require.Empty(t, v.Collapses)

	v, ok = sys.Segments.View("intake shut")
	require.True(t, ok)
	require.Len(t, v.Collapses, 1)
	require.Equal(t, "raw-hose", v.Collapses[0].Hose.Name)
	for stands, known := range map[string]bool{"0.5 bar": true, "0.85 bar": false, "": true} {
		e := built.More("[[item]]\nid = \"suction-stock\"\nkind = \"hose stock\"\nbore = \"19 mm\"\nvacuum = \"" + stands + "\"\n[[hose]]\nid = \"suction-hose\"\nof = \"suction-stock\"\nlength = \"1 m\"")
		if stands == "" {
			e = built.More("[[item]]\nid = \"suction-stock\"\nkind = \"hose stock\"\nbore = \"19 mm\"\nspec = \"SAE 100R1\"\n[[hose]]\nid = \"suction-hose\"\nof = \"suction-stock\"\nlength = \"1 m\"")
		}
		v, ok := built.Plant(t, e, built.Edit{`"intake", "raw-hose", "strainer"`, `"intake", "suction-hose", "strainer"`}).Segments.View("intake shut")
		require.True(t, ok)
		require.Equal(t, known, len(v.Collapses) == 1, "stands %q", stands)
		if stands == "0.5 bar" {
			require.InDelta(t, 0.5, v.Collapses[0].Stands.Bar(), 1e-9)
			require.True(t, v.Collapses[0].Known)
		}
	}
}

// The views together say what the segments' loads say: the highest and the lowest of
// all states are the load's.
func TestViewsAgreeWithLoads(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		build, faults := read.Parse("random.toml", []byte(built.Draw(t)))
		require.NoError(t, faults.Err())
		sys, faults := bom.Walk(build)
		require.NoError(t, faults.Err())
		high, low := map[*segment.Segment]quantity.Pressure{}, map[*segment.Segment]quantity.Pressure{}
		for _, v := range sys.Segments.Views() {
			for _, row := range v.Segments {
				high[row.Segment], low[row.Segment] = max(high[row.Segment], row.High), min(low[row.Segment], row.Low)
			}
		}
		for _, g := range sys.Segments.All {
			worst, _ := g.Load.Worst()
			require.Equal(t, worst, high[g], g.Name)
			require.Equal(t, g.Load.Low, low[g], g.Name)
		}
	})
}

// times is how many times over a part is loaded.
func times(o segment.Overload) float64 { return float64(o.Sees / max(o.Holds, pressure.Slack)) }
