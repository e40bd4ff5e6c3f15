package running_test

import (
	"testing"

	"github.com/stretchr/testify/require"

	"handtight/bom/internal/built"
)

// Common practice, no source: 55 bar and 60 L/h below. Check values, and no limit rests on them.

const surgeLine = `
[build]
name = "a valve that snaps shut"
currency = "EUR"
[duty]
product = "60 L/h"
[[item]]
id = "house"
kind = "house supply"
pressure = "3 bar"
flow = "12 L/min"
[[item]]
id = "wide"
kind = "hose stock"
bore = "19 mm"
[[item]]
id = "narrow"
kind = "hose stock"
bore = "10 mm"
[[hose]]
id = "h1"
of = "wide"
length = "2 m"
[[hose]]
id = "h2"
of = "narrow"
length = "1 m"
[[hose]]
id = "h3"
of = "narrow"
length = "9 m"
[[item]]
id = "valve"
kind = "solenoid valve"
[[item]]
id = "out"
kind = "drain"
[[run]]
name = "flush"
path = ["house", "h1", "h2", "valve", "h3", "out"]
`

// A surge worked by hand: 12 L/min in 10 mm is 0.0002 m3/s over 78.54 mm2, 2.546 m/s;
// 2 x 1025 x 3 m x 2.546 / 0.02 s is 7.83 bar. The hose behind the valve counts not.
func TestSurges(t *testing.T) {
	list := built.Walk(t, "surge.toml", surgeLine).Running.Surges()
	require.Len(t, list, 1)
	x := list[0]
	require.Equal(t, "valve", x.Valve.Name)
	require.InDelta(t, 2.546, x.Speed.MetresPerSecond(), 0.001)
	require.InDelta(t, 3000, x.Length.Millimetres(), 1e-9)
	require.InDelta(t, 3, x.Stands.Bar(), 1e-9)
	require.InDelta(t, 7.83, x.Rise.Bar(), 0.01)
	require.InDelta(t, 10.83, x.Peak().Bar(), 0.01)
}

// No surge is reckoned without a flow, without hose, or at a valve that a hand or a clock
// shuts; and a relief's own flow is not the supply's.
func TestNoSurge(t *testing.T) {
	for why, e := range map[string]built.Edit{
		"no flow":       {"flow = \"12 L/min\"\n", ""},
		"no hose":       {`"house", "h1", "h2", "valve"`, `"house", "valve"`},
		"a hand":        {`"solenoid valve"`, `"shut-off valve"`},
		"a timer":       {`"solenoid valve"`, `"flush timer valve"`},
		"a drain first": {`["house", "h1", "h2", "valve", "h3", "out"]`, `["house", "h1", "out"]`},
	} {
		require.Empty(t, built.Walk(t, "surge.toml", built.Replace(t, surgeLine, e[0], e[1])).Running.Surges(), why)
	}
}

// A solenoid in the plant's own lines stops the pump's water, or the product.
func TestSurgeBySort(t *testing.T) {
	items := "[[item]]\nid = \"snap\"\nkind = \"solenoid valve\"\nnormal = \"open\"\n[[item]]\nid = \"snap-stock\"\nkind = \"hose stock\"\nbore = \"10 mm\"\n" +
		"[[hose]]\nid = \"long\"\nof = \"snap-stock\"\nlength = \"3 m\"\n"
	for _, c := range []struct {
		why   string
		edits []built.Edit
		flow  float64 // L/min
	}{
		{"product: 60 L/h", []built.Edit{{`"vessel.product", "meter"`, `"vessel.product", "long", "snap", "meter"`}, {`pressure = "55 bar"`, "pressure = \"55 bar\"\nproduct = \"60 L/h\"\n" + items}}, 1},
		{"sea water: the pump's", []built.Edit{{`"feed-pump", "filter"`, `"feed-pump", "long", "snap", "filter"`}, built.More(items)}, 8},
	} {
		list := built.Plant(t, c.edits...).Running.Surges()
		require.Len(t, list, 1, c.why)
		require.Equal(t, "snap", list[0].Valve.Name, c.why)
		require.InDelta(t, c.flow, list[0].Flow.LitresPerMinute(), 1e-9, c.why)
	}
}

// The flow is that of one supply or one pump, the largest; that of the other water in the
// build is not counted, nor what a relief passes. Without a duty there is no product.
func TestSurgeFlow(t *testing.T) {
	second := "[[item]]\nid = \"second\"\nkind = \"house supply\"\nflow = \"5 L/min\"\n[[item]]\nid = \"tee\"\nkind = \"tee\"\n" +
		"[[item]]\nid = \"relief\"\nkind = \"relief valve\"\nflow = \"40 L/min\"\n"
	text := built.Replace(t, surgeLine, "[[run]]", second+"[[run]]\nname = \"second\"\npath = [\"second\", \"tee.branch\"]\n[[run]]")
	list := built.Walk(t, "surge.toml", built.Replace(t, text, `"house", "h1"`, `"house", "tee", "h1"`)).Running.Surges()
	require.Len(t, list, 1)
	require.InDelta(t, 12, list[0].Flow.LitresPerMinute(), 1e-9, "of 12 and 5 the larger, and not 17")

	relief := built.Replace(t, text, `"h3", "out"]`, `"h3", "tee/r", "out"]
[[run]]
name = "relief"
path = ["tee/r.branch", "relief.in"]`)
	relief = built.Replace(t, relief, `kind = "house supply"
pressure = "3 bar"
flow = "12 L/min"`, `kind = "sea"`)
	require.Len(t, built.Walk(t, "surge.toml", built.Replace(t, relief, "flow = \"40 L/min\"", "set = \"6 bar\"\nflow = \"40 L/min\"")).Running.Surges(), 0, "the relief's own flow is nobody's")

	items := "[[item]]\nid = \"snap\"\nkind = \"solenoid valve\"\nnormal = \"open\"\n[[item]]\nid = \"snap-stock\"\nkind = \"hose stock\"\nbore = \"10 mm\"\n" +
		"[[hose]]\nid = \"long\"\nof = \"snap-stock\"\nlength = \"3 m\"\n"
	require.Empty(t, built.Plant(t, built.Edit{`"vessel.product", "meter"`, `"vessel.product", "long", "snap", "meter"`}, built.More(items)).Running.Surges(), "how much product there is nobody says")
	stuck := built.Plant(t, built.Edit{`"pump", "tee/relief"`, `"pump", "long", "snap", "check/hp.out>in", "tee/relief"`}, built.More(items))
	require.True(t, stuck.States.PortLoad(built.Port(t, stuck, "snap.in")).Normal.Unbounded())
	require.Empty(t, stuck.Running.Surges(), "where nothing bounds the pressure, that is the finding")
}

// A solenoid behind another valve of the flush shuts against the house pressure that the
// flush brings, though none stands there in normal running.
func TestSurgeBehindAnotherFlushValve(t *testing.T) {
	text := built.Replace(t, surgeLine, `"house", "h1"`, `"house", "clock", "h1"`)
	text = built.Replace(t, text, "[[run]]", "[[item]]\nid = \"clock\"\nkind = \"flush timer valve\"\n[[run]]")
	list := built.Walk(t, "surge.toml", text).Running.Surges()
	require.Len(t, list, 1)
	require.InDelta(t, 3, list[0].Stands.Bar(), 1e-9)
}
