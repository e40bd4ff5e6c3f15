package bom_test

import (
	"testing"

	"github.com/stretchr/testify/require"

	"handtight/bom"
	"handtight/bom/internal/built"
	"handtight/bom/state"
	"handtight/pressure/network"
	"handtight/pressure/quantity"
)

// Common practice, no source: 55 bar below. Check values, and no limit rests on them.

// atSet and atFull tell the two figures of a relief apart.
type figure struct {
	port         string
	set, full    float64 // highest, the reliefs at set and at full flow
	low          float64
	whenShut     []string
	stopped      bool
	flush, still bool
	between      string
	opened       string
}

func check(t *testing.T, sys *bom.System, figures []figure, why string) {
	t.Helper()
	for _, f := range figures {
		st := stand{shut: f.whenShut, stopped: f.stopped, flush: f.flush, still: f.still, between: f.between, opened: f.opened}
		sees(t, sys, st, f.port, level{f.set, f.low}, why)
		st.atFull = true
		sees(t, sys, st, f.port, level{f.full, f.low}, why)
	}
}

// What cures the build with no way out, and what people change beside it. Figures by
// hand from the rules of the upper bound: a relief stands at its set, or at 1.1 times
// that, and on top of what its outlet stands at; a throttle drops the duty while it flows.
func TestChangesOfThePlant(t *testing.T) {
	valve := []string{"overboard-valve"}
	shut := []string{"throttle"}
	for _, c := range []struct {
		why     string
		edits   []built.Edit
		figures []figure
	}{
		{"no valve after the throttle and an outlet of its own: the brine hose never sees pressure", []built.Edit{built.OwnOutlet, built.PlugOutlet, built.NoValve}, []figure{
			{port: "brine-hose.a"}, {port: "pump.out", set: 55, full: 55},
			{port: "pump.out", whenShut: shut, set: 65, full: 71.5}, {port: "brine-hose.a", whenShut: shut},
		}},
		{"no valve, relief led into the brine line: the line is open, so the relief is", []built.Edit{built.NoValve}, []figure{
			{port: "pump.out", whenShut: shut, set: 65, full: 71.5}, {port: "brine-hose.b", whenShut: shut},
		}},
		{"a low relief on the brine line with a free outlet holds the brine; the throttle drops the duty on top of it", []built.Edit{
			built.OwnOutlet, {`"tee/outlet", "overboard`, `"tee/low", "overboard`},
			built.More("[[run]]\nname = \"low relief\"\npath = [\"tee/low.branch\", \"low-relief\", \"relief-outlet/low\"]"),
		}, []figure{
			{port: "brine-hose.a", whenShut: valve, set: 6, full: 6.6}, {port: "pump.out", whenShut: valve, set: 61, full: 61.6},
			{port: "brine-hose.a"}, {port: "pump.out", set: 55, full: 55},
		}},
		{"both reliefs on the shut brine line, the main one led into it: its 65 stands on the 6 behind it, and the throttle's way is the lower", []built.Edit{
			{`"brine-hose", "tee/outlet"`, `"brine-hose", "tee/low", "tee/outlet"`},
			built.More("[[run]]\nname = \"low relief\"\npath = [\"tee/low.branch\", \"low-relief\", \"relief-outlet/low\"]"),
		}, []figure{
			{port: "brine-hose.a", whenShut: valve, set: 6, full: 6.6}, {port: "pump.out", whenShut: valve, set: 61, full: 61.6},
			{port: "pump.out", whenShut: []string{"overboard-valve", "throttle"}, set: 71, full: 78.1},
		}},
		{"relief led back to the feed side: the running pump takes what it pushes, and it opens on top of the 2.5 that stand there", []built.Edit{
			{`"relief", "tee/outlet.branch"]`, `"relief", "tee/back.branch"]`}, built.PlugOutlet, {`"tee/flush", "pump"]`, `"tee/flush", "tee/back", "pump"]`},
		}, []figure{
			{port: "pump.out", whenShut: valve, set: 67.5, full: 74}, {port: "brine-hose.a", whenShut: valve, set: 67.5, full: 74},
			{port: "pump.in", whenShut: valve, set: 2.5, full: 2.5}, {port: "feed-pump.out", whenShut: shut, set: 2.5, full: 2.5},
		}},
		{"two throttles in a line: the hand holds the duty over both", []built.Edit{
			{`"throttle", "brine-hose"`, `"throttle", "tee/between", "throttle/2", "brine-hose"`},
		}, []figure{
			{port: "pump.out", set: 55, full: 55}, {port: "tee/between.a", set: 55, full: 55}, {port: "brine-hose.a"},
			{port: "pump.out", whenShut: []string{"throttle/2"}, set: 65, full: 71.5}, {port: "tee/between.a", whenShut: []string{"throttle/2"}, set: 65, full: 71.5},
			{port: "pump.out", whenShut: shut, set: 65, full: 71.5}, {port: "tee/between.a", whenShut: shut},
		}},
		{"duty above the relief's set: the relief is the lower, and passing the whole flow it is not", []built.Edit{built.DutyOf("70 bar")}, []figure{
			{port: "pump.out", set: 65, full: 70}, {port: "throttle.out"},
		}},
		{"duty far above the relief's set", []built.Edit{built.DutyOf("100 bar")}, []figure{{port: "pump.out", set: 65, full: 71.5}}},
		{"no way out, stall known: the pump stalls, on both sides of the throttle", []built.Edit{known120, from120}, []figure{
			{port: "pump-120.out", whenShut: valve, set: 120, full: 120}, {port: "brine-hose.a", whenShut: valve, set: 120, full: 120},
			{port: "pump-120.out", set: 55, full: 55},
		}},
		{"a pump that stalls below the relief never lifts it", []built.Edit{known60, from60}, []figure{
			{port: "pump-60.out", whenShut: shut, set: 60, full: 60}, {port: "pump-60.out", set: 55, full: 55},
		}},
		{"a pump that stalls below the duty never reaches it", []built.Edit{known60, from60, built.DutyOf("62 bar")}, []figure{
			{port: "pump-60.out", set: 60, full: 60}, {port: "throttle.out"},
		}},
		{"a selector that is open between its positions", []built.Edit{
			selectsOpen, {`["selector.a"`, `["selector-open.a"`}, {`["selector.b"`, `["selector-open.b"`},
		}, []figure{{port: "vessel.product", between: "selector-open"}, {port: "meter.in"}}},
		{"a relief on the product line holds it, not the whole feed pressure", []built.Edit{
			{`"vessel.product", "meter"`, `"vessel.product", "tee/product", "meter"`},
			built.More("[[run]]\nname = \"product relief\"\npath = [\"tee/product.branch\", \"low-relief\", \"drain/2\"]"),
		}, []figure{{port: "meter.in", between: "selector", set: 6, full: 6.6}, {port: "meter.in"}}},
		{"a check valve the wrong way round: in normal running nothing passes but the relief", []built.Edit{
			built.OwnOutlet, built.PlugOutlet, {`"hp-hose", "vessel.feed"`, `"hp-hose", "check/hp.out>in", "vessel.feed"`},
		}, []figure{{port: "pump.out", set: 65, full: 71.5}, {port: "vessel.feed"}, {port: "throttle.in"}}},
		{"a check valve the wrong way round before the relief: no way out at all", []built.Edit{
			{`"pump", "tee/relief", "hp`, `"pump", "check/hp.out>in", "tee/relief", "hp`},
		}, []figure{{port: "pump.out", set: inf, full: inf}, {port: "relief.in"}}},
		{"a check valve the right way: what is before it stands at what is behind", []built.Edit{
			built.OwnOutlet, built.PlugOutlet, {`"hp-hose", "vessel.feed"`, `"hp-hose", "check/hp", "vessel.feed"`},
		}, []figure{
			{port: "pump.out", set: 55, full: 55}, {port: "vessel.feed", set: 55, full: 55},
			{port: "vessel.feed", whenShut: shut, set: 65, full: 71.5},
		}},
		{"two plunger pumps in one line after the other: the second takes all that the first gives", []built.Edit{
			{`path = ["pump", "tee/relief"`, `path = ["pump", "pump/2", "tee/relief"`},
		}, []figure{{port: "pump.out", set: 2.5, full: 2.5}, {port: "pump/2.out", set: 55, full: 55}, {port: "pump/2.out", whenShut: shut, set: 65, full: 71.5}}},
		{"two plunger pumps side by side: one duty, one relief", []built.Edit{
			{`"tee/flush", "pump"]`, `"tee/flush", "tee/split", "pump"]`}, {`path = ["pump", "tee/relief"`, `path = ["pump", "tee/join", "tee/relief"`},
			built.More("[[run]]\nname = \"second pump\"\npath = [\"tee/split.branch\", \"pump/2\", \"tee/join.branch\"]"),
		}, []figure{
			{port: "pump.out", set: 55, full: 55}, {port: "pump/2.out", set: 55, full: 55}, {port: "pump/2.out", whenShut: shut, set: 65, full: 71.5},
			{port: "pump.out", whenShut: valve, set: inf, full: inf},
		}},
		{"two pumps of known stall and no way out: the stronger one rules", []built.Edit{
			{`"tee/flush", "pump"]`, `"tee/flush", "tee/split", "pump-60"]`}, {`path = ["pump", "tee/relief"`, `path = ["pump-60", "tee/join", "tee/relief"`},
			built.More("[[run]]\nname = \"second pump\"\npath = [\"tee/split.branch\", \"pump-120\", \"tee/join.branch\"]"),
		}, []figure{{port: "pump-60.out", whenShut: valve, set: 120, full: 120}}},
		{"a stopped centrifugal pump is open: in the flush house water runs back to the sea", []built.Edit{{`"feed-pump", "filter"`, `"centrifugal", "filter"`}}, []figure{
			{port: "intake.inboard", flush: true, stopped: true, still: true, set: 3, full: 3},
			{port: "strainer.out", flush: true, stopped: true, still: true, set: 3, full: 3},
			{port: "centrifugal.out", set: 2.5, full: 2.5}, {port: "strainer.out"},
		}},
		{"a check valve behind the centrifugal pump holds it", []built.Edit{{`"feed-pump", "filter"`, `"centrifugal", "check/feed", "filter"`}}, []figure{
			{port: "intake.inboard", flush: true, stopped: true, still: true}, {port: "centrifugal.out", flush: true, stopped: true, still: true},
			{port: "filter.in", flush: true, stopped: true, still: true, set: 3, full: 3},
		}},
		{"the house supply stands up to its valve, and beyond it only in the flush", nil, []figure{
			{port: "carbon.in", set: 3, full: 3}, {port: "flush-valve.in", set: 3, full: 3}, {port: "flush-valve.out"}, {port: "check.in"},
			{port: "check.in", flush: true, stopped: true, still: true, set: 3, full: 3},
			{port: "carbon.in", whenShut: []string{"carbon"}, set: 3, full: 3}, {port: "carbon.out", whenShut: []string{"carbon"}},
		}},
		{"a relief on the feed line holds it, and what a check valve passes on", []built.Edit{
			{`"feed-pump", "filter"`, `"feed-pump", "tee/feed", "check/feed", "filter"`},
			built.More("[[item]]\nid = \"feed-relief\"\nkind = \"relief valve\"\nset = \"2 bar\"\n[[run]]\nname = \"feed relief\"\npath = [\"tee/feed.branch\", \"feed-relief\", \"drain/2\"]"),
		}, []figure{{port: "feed-pump.out", set: 2, full: 2.2}, {port: "filter.in", set: 2, full: 2.2}, {port: "pump.in", set: 2, full: 2.2}}},
		{"two feed pumps one after the other: the second adds to the first", []built.Edit{{`"feed-pump", "filter"`, `"feed-pump", "feed-pump/2", "filter"`}}, []figure{
			{port: "feed-pump.out", set: 2.5, full: 2.5}, {port: "feed-pump/2.out", set: 5, full: 5}, {port: "pump.in", set: 5, full: 5},
		}},
		{"a check valve round a feed pump: its pressure counts once, however often the water goes round", []built.Edit{
			{`"strainer", "feed-pump", "filter"`, `"strainer", "tee/round", "feed-pump", "tee/round-2", "filter"`},
			built.More("[[run]]\nname = \"round\"\npath = [\"tee/round-2.branch\", \"check/round\", \"tee/round.branch\"]"),
		}, []figure{{port: "feed-pump.out", set: 2.5, full: 2.5}, {port: "pump.in", set: 2.5, full: 2.5}}},
		{"a flush valve worked by hand is open in the flush only, and may be left open", []built.Edit{
			{`"carbon", "flush-valve", "check"`, `"carbon", "hand-valve", "check"`},
			built.More("[[item]]\nid = \"hand-valve\"\nkind = \"shut-off valve\"\nnormal = \"flush\""),
		}, []figure{
			{port: "hand-valve.in", set: 3, full: 3}, {port: "hand-valve.out"}, {port: "pump.in", set: 2.5, full: 2.5},
			{port: "pump.out", flush: true, stopped: true, still: true, set: 3, full: 3},
			{port: "pump.in", opened: "hand-valve", set: 3, full: 3}, {port: "pump.out", opened: "hand-valve", set: 55, full: 55},
		}},
		{"a drain valve before the throttle, left open: the water leaves there, and no more than the feed pump's pressure comes up", []built.Edit{
			{`"vessel.brine", "tee/hp-gauge"`, `"vessel.brine", "tee/drain", "tee/hp-gauge"`},
			built.More("[[item]]\nid = \"drain-valve\"\nkind = \"shut-off valve\"\nnormal = \"shut\"\n[[run]]\nname = \"drain line\"\npath = [\"tee/drain.branch\", \"drain-valve\", \"drain/2\"]"),
		}, []figure{
			{port: "drain-valve.in", set: 55, full: 55}, {port: "drain-valve.out"},
			{port: "pump.out", opened: "drain-valve", set: 2.5, full: 2.5}, {port: "drain-valve.in", whenShut: shut, set: 65, full: 71.5},
		}},
		{"a valve that is shut in normal running", []built.Edit{
			{`"tee/hp-gauge", "throttle", "brine`, `"tee/hp-gauge", "locked", "throttle", "brine`},
			built.More("[[item]]\nid = \"locked\"\nkind = \"shut-off valve\"\nnormal = \"shut\""), built.OwnOutlet, built.PlugOutlet,
		}, []figure{{port: "pump.out", set: 65, full: 71.5}, {port: "throttle.in"}}},
	} {
		t.Run(c.why, func(t *testing.T) { check(t, built.Plant(t, c.edits...), c.figures, c.why) })
	}
}

// Valves make the states that befit them: a hand's act or a failure of its current, open
// where they are shut and shut where they are open; and of two that let the flush in, each.
func TestStatesOfValves(t *testing.T) {
	valve := func(kind, normal string) []built.Edit {
		return []built.Edit{
			{`"carbon", "flush-valve", "check"`, `"carbon", "a-valve", "flush-valve", "check"`},
			built.More("[[item]]\nid = \"a-valve\"\nkind = \"" + kind + "\"\nnormal = \"" + normal + "\""),
		}
	}
	for _, c := range []struct {
		kind, normal string
		want         map[string]bool // name of the state, and whether it is a failure
	}{
		{"shut-off valve", "open", map[string]bool{"a-valve shut": false, "a-valve shut in flush": false}},
		{"shut-off valve", "shut", map[string]bool{"a-valve open": false}},
		{"shut-off valve", "flush", map[string]bool{"a-valve open": false, "a-valve shut in flush": false}},
		{"solenoid valve", "open", map[string]bool{"a-valve shut": true, "a-valve shut in flush": true}},
		{"solenoid valve", "flush", map[string]bool{"a-valve open": true, "a-valve shut in flush": true}},
		{"solenoid valve", "shut", map[string]bool{"a-valve open": true, "a-valve shut in flush": true}},
	} {
		t.Run(c.kind+" "+c.normal, func(t *testing.T) {
			got := map[string]bool{}
			for _, st := range built.Plant(t, valve(c.kind, c.normal)...).States.All {
				if st.Unit != nil && st.Unit.Name == "a-valve" {
					got[st.Name] = st.Failure
				}
			}
			require.Equal(t, c.want, got)
		})
	}
}

// The vacuum of a shut intake or a clogged filter stands in the starved zones, and in
// no other.
func TestVacuum(t *testing.T) {
	sys := built.Plant(t)
	for state, starved := range map[string][]string{
		"intake shut":      {"intake.inboard", "raw-hose.b", "strainer.in", "strainer.out", "feed-pump.in", "feed-pump.out", "filter.in", "filter.out", "pump.in", "gauge.in", "check.out", "check.in"},
		"strainer clogged": {"strainer.out", "feed-pump.in", "feed-pump.out", "filter.in", "filter.out", "pump.in", "gauge.in", "check.out", "check.in"},
		"filter clogged":   {"filter.out", "pump.in", "gauge.in", "check.out", "check.in"},
	} {
		st := built.State(t, sys, state)
		all := map[int]bool{}
		for _, name := range starved {
			all[built.Port(t, sys, name)] = true
			for _, junction := range sameJunction(sys, built.Port(t, sys, name)) {
				all[junction] = true
			}
		}
		for p := range sys.Graph.Ports {
			_, low, ok := sys.States.Pressure(st, p)
			require.True(t, ok)
			want := quantity.Pressure(0)
			if all[p] {
				want = network.Vacuum
			}
			require.Equal(t, want, low, "%s at %s", state, sys.Graph.Ports[p].Name())
		}
	}
	for _, st := range sys.States.All {
		if st.Name == "intake shut" || st.Failure {
			continue
		}
		for p := range sys.Graph.Ports {
			_, low, _ := sys.States.Pressure(st, p)
			require.Zero(t, low, "%s at %s", st.Name, sys.Graph.Ports[p].Name())
		}
	}
}

// An intake that nobody can shut may be blocked; and of an act and a failure that give the
// same vacuum, the act is named, wherever the two stand.
func TestVacuumOfABlockedIntake(t *testing.T) {
	sys := built.Plant(t, built.Edit{`"intake", "raw-hose", "strainer", "feed-pump"`, `"hull", "raw-hose", "strainer", "hand", "feed-pump"`},
		built.More("[[item]]\nid = \"hull\"\nkind = \"through-hull\"\n[[item]]\nid = \"hand\"\nkind = \"shut-off valve\""))
	for port, by := range map[string]string{"hull.inboard": "hull blocked", "raw-hose.b": "hull blocked", "strainer.out": "strainer clogged", "feed-pump.in": "hand shut", "pump.in": "hand shut"} {
		load := sys.States.PortLoad(built.Port(t, sys, port))
		require.Equal(t, network.Vacuum, load.Low, port)
		require.Equal(t, by, load.ByLow.Name, port)
	}
	require.True(t, built.State(t, sys, "hull blocked").Failure)
	for _, st := range built.Plant(t).States.All {
		require.NotContains(t, st.Name, "blocked", "a seacock is shut by hand")
	}
}

// sameJunction lists the ports that always share a port's pressure.
func sameJunction(sys *bom.System, port int) []int {
	var out []int
	for p := range sys.Graph.Ports {
		if sys.Circuit.JunctionOf[p] == sys.Circuit.JunctionOf[port] {
			out = append(out, p)
		}
	}
	return out
}

// Two plants in one build are solved apart: a state of one does not touch the other.
func TestTwoPlants(t *testing.T) {
	one := built.Plant(t)
	second := `
[[run]]
name = "second raw"
path = ["intake/b", "strainer/b", "pump/b"]
[[run]]
name = "second high"
path = ["pump/b", "tee/b", "throttle/b", "discharge/b"]
[[run]]
name = "second relief"
path = ["tee/b.branch", "relief/b", "relief-outlet/b"]
`
	both := built.Plant(t, built.More(second))
	require.Len(t, both.States.All, len(one.States.All)+5, "normal, intake, strainer, throttle and relief of the second")
	for _, st := range both.States.All {
		for p := range both.Graph.Ports {
			name := both.Graph.Ports[p].Name()
			_, _, touched := both.States.Pressure(st, p)
			ofB := both.Graph.Ports[p].Unit.Label == "b"
			stateOfB := both.Graph.Ports[firstTouched(both, st)].Unit.Label == "b"
			require.Equal(t, ofB == stateOfB, touched, "%s at %s", st.Name, name)
		}
	}
	for p := range one.Graph.Ports {
		name := one.Graph.Ports[p].Name()
		require.Equal(t, one.States.PortLoad(p).Act, both.States.PortLoad(built.Port(t, both, name)).Act, name)
	}
	load := both.States.PortLoad(built.Port(t, both, "pump/b.out"))
	require.InDelta(t, 55, load.Normal.Bar(), 1e-9)
	require.InDelta(t, 71.5, load.Act.Bar(), 1e-9, "its own relief with its own outlet")
	require.Nil(t, load.NoBound, "though the first has no way out")
}

func firstTouched(sys *bom.System, st *state.State) int {
	for p := range sys.Graph.Ports {
		if _, _, ok := sys.States.Pressure(st, p); ok {
			return p
		}
	}
	return 0
}
