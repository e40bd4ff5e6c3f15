package segment_test

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"handtight/bom"
	"handtight/bom/internal/built"
	"handtight/bom/rating"
	"handtight/bom/read"
)

// Common practice, no source: 55 bar below. Check values, and no limit rests on them.

// A segment ends at what raises, drops or can stop pressure: pumps, throttle, membrane,
// valves, relief, check valve. What only clogs does not end one.
func TestSegmentsOfThePlant(t *testing.T) {
	type want struct {
		name, units string
		joints      int
		high, below bool
		normal      float64
		worst       float64
		by          string
	}
	sys := built.Plant(t, built.OwnOutlet, built.PlugOutlet)
	var got []want
	for _, g := range sys.Segments.All {
		var names []string
		for _, u := range g.Units {
			names = append(names, u.Name)
		}
		worst, by := g.Load.Worst()
		got = append(got, want{g.Name, strings.Join(names, " "), len(g.Joints), g.High(), g.Below, g.Load.Normal.Bar(), math.Round(worst.Bar()*1e6) / 1e6, by.Name})
	}
	require.Equal(t, []want{
		{"raw water: intake to feed-pump", "intake raw-hose strainer feed-pump", 3, false, true, 0, 0, "normal"},
		{"raw water: feed-pump to pump", "feed-pump filter tee/gauge tee/flush pump gauge check", 6, false, true, 2.5, 3, "flush"},
		{"high pressure: pump to vessel", "pump tee/relief hp-hose vessel tee/hp-gauge throttle gauge/hp relief", 7, true, false, 55, 71.5, "throttle shut"},
		{"product: vessel to selector", "vessel meter selector", 2, false, false, 0, 55, "selector between"},
		{"brine: throttle to overboard-valve", "throttle brine-hose overboard-valve", 2, false, false, 0, 71.5, "overboard-valve shut"},
		{"brine: overboard-valve to discharge", "overboard-valve discharge", 1, false, false, 0, 0, "normal"},
		{"relief: relief to relief-outlet", "relief relief-outlet", 1, false, false, 0, 0, "normal"},
		{"to tank: selector to tank", "selector tank", 1, false, false, 0, 0, "normal"},
		{"to drain: selector to drain", "selector drain", 1, false, false, 0, 0, "normal"},
		{"flush: house to flush-valve", "house carbon flush-valve", 2, false, false, 3, 3, "normal"},
		{"flush: flush-valve to check", "flush-valve check", 1, false, false, 0, 3, "flush"},
	}, got)
}

// Every joint and every joined port stands in just one segment.
func TestSegmentsCoverTheBuild(t *testing.T) {
	sys := built.Plant(t)
	joints, ports := map[int]int{}, map[int]int{}
	for _, g := range sys.Segments.All {
		for _, j := range g.Joints {
			joints[j.Number]++
			require.Same(t, g, sys.Segments.SegmentOf(j.A))
			require.Same(t, g, sys.Segments.SegmentOf(j.B))
		}
		for _, p := range g.Ports {
			ports[p]++
			require.Same(t, g, sys.Segments.SegmentOf(p))
		}
	}
	require.Len(t, joints, len(sys.Graph.Joints))
	for p := range sys.Graph.Ports {
		if sys.Graph.Ports[p].Joint != nil {
			require.Equal(t, 1, ports[p], sys.Graph.Ports[p].Name())
		}
	}
}

// The weakest member rules, by its data sheet or the standard it is sold to; a clamp on
// a tail is a member too; a part that nothing is known of is named apart.
func TestWeakestMember(t *testing.T) {
	tails := "[[item]]\nid = \"tail\"\nkind = \"hose tail\"\nports = { a = '1/2 NPT male', b = '19 mm barb' }\nrated = \"40 bar\"\n" +
		"[[item]]\nid = \"stock\"\nkind = \"hose stock\"\nbore = \"19 mm\"\nrated = \"%s\"\n[[hose]]\nid = \"hose\"\nof = \"stock\"\nlength = \"1 m\"\n"
	for _, c := range []struct {
		why, items, path string
		holds            float64
		what             string
		unrated          []string
	}{
		{"the lowest data sheet", built.Elbow("strong", `rated = "200 bar"`) + built.Elbow("weak", `rated = "16 bar"`), "strong weak", 16, "weak", nil},
		// 200 psi for a hose clamped on a barb: 200 x 0.0689476 = 13.79 bar (page "Working with hose clamps")
		{"the clamp, where the hose holds more", fmt.Sprintf(tails, "20 bar"), "tail hose tail/+", 13.79, "tail.b - hose.a", nil},
		{"the hose, where it holds less than the clamp", fmt.Sprintf(tails, "6 bar"), "tail hose tail/+", 6, "hose", nil},
		{"what is not known is not taken for nothing, nor for endless", built.Elbow("strong", `rated = "200 bar"`) + built.Elbow("mute", ""), "strong mute", 200, "strong", []string{"mute"}},
		{"nothing known at all but the cap", built.Elbow("mute", ""), "mute", 400, "end", []string{"mute"}},
		// 3/8 inch 100R6: printed 28 bar (400 psi). Source: hose size table, product series to SAE 100R6
		{"the standard of a hose", "[[hose]]\nid = \"r6\"\nspec = \"SAE 100R6\"\nbore = '3/8\"'\nlength = \"1 m\"\nends = ['3/8 NPT male', '3/8 NPT male']\n", "r6", 28, "r6", nil},
		{"the data sheet below the standard", "[[hose]]\nid = \"r6\"\nspec = \"SAE 100R6\"\nrated = \"20 bar\"\nbore = '3/8\"'\nlength = \"1 m\"\nends = ['3/8 NPT male', '3/8 NPT male']\n", "r6", 20, "r6", nil},
		{"the standard below the data sheet", "[[hose]]\nid = \"r6\"\nspec = \"SAE 100R6\"\nrated = \"90 bar\"\nbore = '3/8\"'\nlength = \"1 m\"\nends = ['3/8 NPT male', '3/8 NPT male']\n", "r6", 28, "r6", nil},
	} {
		t.Run(c.why, func(t *testing.T) {
			sys := built.Walk(t, "fed.toml", built.Fed(c.items, c.path))
			require.Len(t, sys.Segments.All, 1)
			g := sys.Segments.All[0]
			require.True(t, g.Allowable.Known)
			require.InDelta(t, c.holds, g.Allowable.Rating.Pressure.Bar(), 0.05)
			require.Equal(t, c.what, g.Allowable.What)
			margin, ok := g.Margin()
			require.Equal(t, len(c.unrated) == 0, ok, "no margin is known while one part's rating is not")
			require.Equal(t, ok, g.Rated())
			if ok {
				require.InDelta(t, c.holds-3, margin.Bar(), 0.05, "3 bar stand in it")
			}
			var unrated []string
			for _, u := range g.Unrated {
				unrated = append(unrated, u.Name)
			}
			require.Equal(t, c.unrated, unrated)
		})
	}
}

// No margin is given where the rating is not known or the pressure has no bound.
func TestMarginUnknown(t *testing.T) {
	text := strings.Replace(built.Fed(built.Elbow("mute", ""), "mute"), `rated = "400 bar"`, "", 1)
	_, ok := built.Walk(t, "fed.toml", text).Segments.All[0].Margin()
	require.False(t, ok, "nothing is rated")
	sys := built.Plant(t)
	g := sys.Segments.SegmentOf(built.Port(t, sys, "pump.out"))
	require.NotNil(t, g.Load.NoBound)
	require.Equal(t, "overboard-valve shut", g.Load.NoBound.Name)
	_, ok = g.Margin()
	require.False(t, ok, "no bound")
}

// A part added never raises the weakest rating, and the weakest is the least of all.
func TestAddedPartNeverRaisesWeakest(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.IntRange(1, 8).Draw(t, "parts")
		var items, path strings.Builder
		least := math.Inf(1)
		var before rating.Allowable
		for i := range n {
			id := fmt.Sprintf("u%d", i)
			rated := ""
			if bar := rapid.IntRange(0, 60).Draw(t, "bar"); bar > 0 {
				rated = fmt.Sprintf("rated = \"%d bar\"", bar)
				least = min(least, float64(bar))
			}
			items.WriteString(built.Elbow(id, rated))
			path.WriteString(id + " ")
			text := strings.Replace(built.Fed(items.String(), path.String()), "rated = \"400 bar\"", "", 1)
			build, faults := read.Parse("fed.toml", []byte(text))
			require.NoError(t, faults.Err())
			sys, faults := bom.Walk(build)
			require.NoError(t, faults.Err())
			after := sys.Segments.All[0].Allowable
			require.Equal(t, !math.IsInf(least, 1), after.Known)
			if after.Known {
				require.InDelta(t, least, after.Rating.Pressure.Bar(), 1e-9)
			}
			if before.Known {
				require.True(t, after.Known)
				require.LessOrEqual(t, after.Rating.Pressure, before.Rating.Pressure)
			}
			before = after
		}
	})
}

// Filters stand within a segment; valves, pumps and the like end it.
func TestWhatBoundsASegment(t *testing.T) {
	for kind, bounds := range map[string]bool{
		"strainer": false, "filter housing": false, "carbon filter": false, "flow meter": false, "elbow": false, "union": false, "through-hull": false,
		"seacock": true, "shut-off valve": true, "solenoid valve": true, "flush timer valve": true, "check valve": true, "relief valve": true,
		"brine throttle": true, "feed pump": true, "plunger pump": true,
	} {
		text := built.Head + "[duty]\npressure = \"55 bar\"\n[[item]]\nid = \"x\"\nkind = \"" + kind + "\"\n[[item]]\nid = \"elbow\"\nkind = \"elbow\"\n"
		entry, exit := "in", "out"
		switch kind {
		case "elbow", "union":
			entry, exit = "a", "b"
		case "seacock", "through-hull":
			entry, exit = "sea", "inboard"
		}
		sys := built.Walk(t, "bounds.toml", text+built.Runs("elbow x."+entry+">"+exit+" elbow/2"))
		segments := 1
		if bounds {
			segments = 2
		}
		require.Len(t, sys.Segments.All, segments, kind)
	}
}
