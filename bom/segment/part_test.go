package segment_test

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"handtight/bom"
	"handtight/bom/graph"
	"handtight/bom/internal/built"
	"handtight/bom/read"
	"handtight/bom/segment"
	"handtight/bom/state"
	"handtight/pressure/quantity"
)

// Common practice, no source: 55 bar below. Check values, and no limit rests on them.

var inf = math.Inf(1)

// ratedParts gives three parts of the plant a data sheet: 100 bar for the hose on high
// pressure, 10 for the brine hose, 8 for the flow meter.
var ratedParts = []built.Edit{
	{"[duty]", `[[item]]
id    = "meter-8"
kind  = "flow meter"
rated = "8 bar"
[[hose]]
id     = "hose-100"
length = "1.2 m"
rated  = "100 bar"
ends   = ['3/8 NPT male', '3/8 NPT male']
[[hose]]
id     = "hose-10"
of     = "stock-10"
length = "1.8 m"
[[item]]
id    = "stock-10"
kind  = "hose stock"
bore  = "19 mm"
rated = "10 bar"
[duty]`},
	{`"hp-hose"`, `"hose-100"`}, {`"brine-hose"`, `"hose-10"`}, {`"meter"`, `"meter-8"`},
}

func partNamed(t *testing.T, s *bom.System, name string) segment.Part {
	t.Helper()
	for _, p := range s.Segments.Parts() {
		if p.Unit.Name == name {
			return p
		}
	}
	require.FailNow(t, "no part "+name)
	return segment.Part{}
}

// The plant's parts, by hand from the cases of TestHandSolvedCases: 55 bar is the duty,
// 71.5 the relief passing the whole flow (1.1 x 65), 3 the house supply in the flush, 2.5
// the feed pump's shut-off. A margin is the rating less the worst.
func TestPartsOfThePlant(t *testing.T) {
	own := []built.Edit{built.OwnOutlet, built.PlugOutlet}
	for _, c := range []struct {
		why, unit, port string
		edits           []built.Edit
		normal, worst   float64
		cause           string
		low             float64
		lowBy, margin   string
	}{
		{"2: the relief leads into the shut line, so no figure bounds the hose", "hose-100", "a", nil, 55, inf, "overboard-valve shut", 0, "", "not known"},
		{"2: nor the brine hose", "hose-10", "a", nil, 0, inf, "overboard-valve shut", 0, "", "not known"},
		{"3: the relief has an outlet of its own; of two states alike the first is named", "hose-100", "a", own, 55, 71.5, "throttle shut", 0, "", "28.5"},
		{"3: no flow through the throttle: the brine hose sees the relief's pressure", "hose-10", "a", own, 0, 71.5, "overboard-valve shut", 0, "", "-61.5"},
		{"3: of a throttle's two ports alike at worst, the one that works at pressure", "throttle", "in", own, 55, 71.5, "throttle shut", 0, "", "not known"},
		{"4: nothing shuts behind the throttle: its inlet alone sees the relief's pressure", "throttle", "in", []built.Edit{built.OwnOutlet, built.PlugOutlet, built.NoValve}, 55, 71.5, "throttle shut", 0, "", "not known"},
		{"4: and the brine hose none", "hose-10", "a", []built.Edit{built.OwnOutlet, built.PlugOutlet, built.NoValve}, 0, 0, "normal", 0, "", "10"},
		{"6: the product cannot leave", "meter-8", "in", nil, 0, 55, "selector between", 0, "", "-47"},
		{"6: open between its ways: nothing is there", "meter-8", "in", []built.Edit{{`"selector.common"`, `"selector-open.common"`}, {`"selector.a"`, `"selector-open.a"`}, {`"selector.b"`, `"selector-open.b"`}}, 0, 0, "normal", 0, "", "8"},
		{"7: vacuum behind the shut seacock, which holds the sea off", "intake", "inboard", nil, 0, 0, "normal", -1, "intake shut", "not known"},
		{"7: and in the suction hose", "raw-hose", "a", nil, 0, 0, "normal", -1, "intake shut", "not known"},
		{"7: to the inlet of the plunger pump, of which no rating speaks", "pump", "out", own, 55, 71.5, "throttle shut", -1, "intake shut", "not known"},
		{"10: the house supply comes back to the filter, and all of it alike", "filter", "in", nil, 2.5, 3, "flush", -1, "intake shut", "not known"},
		{"the vessel is judged by its feed side, not by its product port", "vessel", "feed", own, 55, 71.5, "throttle shut", 0, "", "not known"},
		{"a relief valve by its inlet", "relief", "in", own, 55, 71.5, "throttle shut", 0, "", "not known"},
	} {
		t.Run(c.why, func(t *testing.T) {
			sys := built.Plant(t, append(ratedParts, c.edits...)...)
			p := partNamed(t, sys, c.unit)
			require.Equal(t, c.unit+"."+c.port, sys.Graph.Ports[p.Port].Name())
			require.Same(t, sys.Segments.SegmentOf(p.Port), p.Segment)
			built.Close(t, c.normal, p.Normal.Bar(), "normal")
			built.Close(t, c.worst, p.Worst.Bar(), "worst")
			built.Close(t, c.low, p.Low.Bar(), "lowest")
			require.Equal(t, c.cause, p.Cause.Name)
			lowBy := ""
			if p.LowBy != nil {
				lowBy = p.LowBy.Name
			}
			require.Equal(t, c.lowBy, lowBy)
			margin := "not known"
			if m, ok := p.Margin(); ok {
				margin = fmt.Sprint(math.Round(m.Bar()*1e6) / 1e6)
			}
			require.Equal(t, c.margin, margin)
			require.Equal(t, c.normal > state.HighPressure.Bar(), p.High())
		})
	}
}

// Each placed part is there once, in the order of the runs, and what the boat has is not.
func TestPartsAreAllThere(t *testing.T) {
	sys := built.Plant(t)
	var want, got []string
	for _, u := range sys.Graph.Units {
		if !u.Item.Kind.Boats {
			want = append(want, u.Name)
		}
	}
	for _, p := range sys.Segments.Parts() {
		got = append(got, p.Unit.Name)
	}
	require.Equal(t, want, got)
	for _, boats := range []string{"discharge", "tank", "drain", "house"} {
		_, placed := sys.Graph.Unit(boats)
		require.True(t, placed, boats)
		require.NotContains(t, got, boats, "the boat's own")
	}
}

// What a part holds is told with what is known of it: 3 bar stand in the line, or 30, by
// the house supply. The nipple of known wall has an estimate only.
func TestWorstFirst(t *testing.T) {
	const nipple = "[[item]]\nid = \"nipple\"\nkind = \"nipple\"\nmaterial = \"316\"\nwall = \"0.095 in\"\nports = { a = '1/8 NPT male', b = '1/8 NPT male' }\n"
	items := built.Elbow("five", `rated = "5 bar"`) + built.Elbow("mute", "") + built.Elbow("two", `rated = "2 bar"`) +
		built.Elbow("four", `rated = "4 bar"`) + built.Elbow("one", `rated = "1 bar"`) + built.Elbow("three", `rated = "3 bar"`) + nipple
	low := built.Fed(items, "five mute two four one three nipple")
	names := func(text string) (out []string) {
		for _, p := range segment.WorstFirst(built.Walk(t, "fed.toml", text).Segments.Parts()) {
			out = append(out, p.Unit.Name)
		}
		return out
	}
	require.Equal(t, []string{"one", "two", "mute", "three", "four", "five", "end", "nipple"}, names(low),
		"over by 2 and by 1, not known, then margins of 0, 1, 2, 397 and about 404")
	high := strings.Replace(low, `pressure = "3 bar"`, `pressure = "30 bar"`, 1)
	require.Equal(t, []string{"one", "two", "three", "four", "five", "mute", "nipple", "end"}, names(high),
		"all over but the last three: an estimate is not enough above 10 bar, so it stands before the cap that holds")

	for _, p := range built.Walk(t, "fed.toml", low).Segments.Parts() {
		require.Equal(t, p.Unit.Name == "one" || p.Unit.Name == "two", p.Over(), p.Unit.Name)
	}
}

// Of what is not known, that under the highest pressure stands first.
func TestWorstFirstOfWhatIsNotKnown(t *testing.T) {
	var seen []float64
	for _, p := range segment.WorstFirst(built.Plant(t, built.OwnOutlet, built.PlugOutlet).Segments.Parts()) {
		require.False(t, p.Allowable.Known, "nothing of the plant is rated")
		if len(seen) == 0 || seen[len(seen)-1] != p.Worst.Bar() {
			seen = append(seen, p.Worst.Bar())
		}
	}
	require.InDeltaSlice(t, []float64{71.5, 55, 3, 0}, seen, 1e-9, "the relief's, the product's, the house supply's, nothing's")
}

// Where nothing bounds the pressure, what is not known stands first, then the weakest;
// what has a bound comes after, however much it lacks.
func TestWorstFirstWithoutBound(t *testing.T) {
	parts := segment.WorstFirst(built.Plant(t, ratedParts...).Segments.Parts())
	bounded := false
	var known []string
	for _, p := range parts {
		unbounded := p.Worst.Unbounded()
		require.False(t, unbounded && bounded, "%s has no bound and stands behind one that has", p.Unit.Name)
		bounded = bounded || !unbounded
		if unbounded {
			require.Equal(t, p.Allowable.Known, p.Over(), p.Unit.Name)
		}
		if unbounded && p.Allowable.Known {
			known = append(known, p.Unit.Name)
		} else if unbounded {
			require.Empty(t, known, p.Unit.Name)
		}
	}
	require.Equal(t, []string{"hose-10", "hose-100"}, known)
}

// A port that nothing is joined to decides only where it is worse than the joined ones.
func TestPartAtAnUnjoinedPort(t *testing.T) {
	const items = "[[item]]\nid = \"valve\"\nkind = \"shut-off valve\"\n"
	text := strings.Replace(built.Fed(items, "valve"), "valve end", "valve", 1)
	p := partNamed(t, built.Walk(t, "fed.toml", text), "valve")
	require.NotNil(t, p.Segment)
	require.Equal(t, 3*quantity.Bar, p.Worst)

	const pump = built.Head + "[duty]\npressure = \"55 bar\"\n[[item]]\nid = \"sea\"\nkind = \"sea\"\n[[item]]\nid = \"pump\"\nkind = \"plunger pump\"\nrated = \"100 bar\"\n"
	p = partNamed(t, built.Walk(t, "pump.toml", pump+built.Runs("sea pump.in")), "pump")
	require.Nil(t, p.Segment, "its outlet is joined to nothing")
	require.True(t, p.Worst.Unbounded(), "and nothing opens there")
	require.True(t, p.Over())
	require.True(t, p.High(), "in normal running already")
}

// Of random builds: no part sees more than its segment or has less margin than it, and
// none of its rated ports is worse than the one that stands for it.
func TestPartsAgreeWithSegmentsAndPorts(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		lines := strings.Split(built.Draw(t), "\n")
		for i, line := range lines {
			bar := rapid.SampledFrom([]string{"", "6", "16", "60", "100", "200"}).Draw(t, "rated")
			if kind, ok := strings.CutPrefix(line, "kind = "); ok && bar != "" && !boats(kind) {
				lines[i] += "\nrated = \"" + bar + " bar\""
			}
		}
		build, faults := read.Parse("random.toml", []byte(strings.Join(lines, "\n")))
		require.NoError(t, faults.Err())
		sys, faults := bom.Walk(build)
		require.NoError(t, faults.Err())
		parts := map[*graph.Unit]segment.Part{}
		for _, p := range sys.Segments.Parts() {
			require.NotContains(t, parts, p.Unit)
			parts[p.Unit] = p
			if p.Segment == nil {
				continue
			}
			worst, _ := p.Segment.Load.Worst()
			require.LessOrEqual(t, p.Worst, worst, p.Unit.Name)
			require.LessOrEqual(t, p.Normal, p.Segment.Load.Normal, p.Unit.Name)
			if m, ok := p.Segment.Margin(); ok && p.Allowable.Known {
				margin, known := p.Margin()
				require.True(t, known, p.Unit.Name)
				require.GreaterOrEqual(t, margin, m, p.Unit.Name)
			}
		}
		for i := range sys.Graph.Ports {
			n := &sys.Graph.Ports[i]
			p, ok := parts[n.Unit]
			if ok {
				require.LessOrEqual(t, p.Low, sys.States.PortLoad(i).Low, n.Name())
			}
			if n.Unit.Item.Exempt(n.Index) {
				continue
			}
			require.True(t, ok, n.Name())
			worst, _ := sys.States.PortLoad(i).Worst()
			if worst.Unbounded() {
				require.True(t, p.Worst.Unbounded(), n.Name())
			}
			if m, known := p.Margin(); known {
				require.LessOrEqual(t, m, sys.Ratings.Port(i).Rating.Pressure-worst, n.Name())
			}
		}
	})
}

// boats reports whether a kind, in its quotes, is one that the boat has.
func boats(kind string) bool {
	return slices.Contains([]string{`"house supply"`, `"sea"`, `"overboard"`, `"drain"`, `"tank"`}, kind)
}

// A lack that comes of turning one unit of measure into another is none: up to 0.001 bar.
func TestPartSlack(t *testing.T) {
	for rated, over := range map[string]bool{"2.9995 bar": false, "3 bar": false, "2.995 bar": true} {
		p := partNamed(t, built.Walk(t, "fed.toml", built.Fed(built.Elbow("bend", "rated = \""+rated+"\""), "bend")), "bend")
		require.Equal(t, over, p.Over(), rated)
	}
}

// An unjoined port is on high pressure by what stands there in normal running, not by
// what an act may bring.
func TestHighOfAnUnjoinedPort(t *testing.T) {
	const pump = built.Head + "[duty]\npressure = \"8 bar\"\n[[item]]\nid = \"sea\"\nkind = \"sea\"\n[[item]]\nid = \"pump\"\nkind = \"plunger pump\"\nstall = \"40 bar\"\n" +
		"[[item]]\nid = \"cross\"\nkind = \"cross\"\n[[item]]\nid = \"throttle\"\nkind = \"brine throttle\"\n[[item]]\nid = \"valve\"\nkind = \"shut-off valve\"\nnormal = \"shut\"\n"
	p := partNamed(t, built.Walk(t, "pump.toml", pump+built.Runs("sea pump throttle.in")), "throttle")
	require.True(t, p.High(), "its inlet is joined and stands at the stall: nothing opens")
	sys := built.Walk(t, "pump.toml", strings.Replace(pump, "[[item]]\nid = \"sea\"", "[[item]]\nid = \"out\"\nkind = \"overboard\"\n[[item]]\nid = \"sea\"", 1)+built.Runs("sea pump throttle valve.in", "cross.b out"))
	require.True(t, sys.States.Driven(built.Port(t, sys, "throttle.in")), "8 bar by the hand on the throttle, and 40 without it")
	require.False(t, sys.States.Driven(built.Port(t, sys, "valve.out")), "what an act brings is that state's load")
}
