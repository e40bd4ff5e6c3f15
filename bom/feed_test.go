package bom_test

import (
	"slices"
	"testing"

	"github.com/stretchr/testify/require"

	"handtight/bom/internal/built"
	"handtight/pressure/network"
)

// Common practice, no source: 55 bar below. Check values, and no limit rests on them.

// feedParts are the parts of feed lines: pumps of 2.5 and 1.5 bar, reliefs, water's ends.
const feedParts = `
[duty]
pressure = "55 bar"
[[item]]
id = "sea"
kind = "sea"
[[item]]
id = "out"
kind = "overboard"
[[item]]
id = "strong"
kind = "feed pump"
shutoff = "2.5 bar"
[[item]]
id = "weak"
kind = "feed pump"
shutoff = "1.5 bar"
[[item]]
id = "pump"
kind = "plunger pump"
[[item]]
id = "tee"
kind = "tee"
[[item]]
id = "check"
kind = "check valve"
[[item]]
id = "vessel"
kind = "pressure vessel"
[[item]]
id = "throttle"
kind = "brine throttle"
[[item]]
id = "valve"
kind = "shut-off valve"
[[item]]
id = "low"
kind = "relief valve"
set = "1 bar"
full_flow = "1 bar"
[[item]]
id = "lower"
kind = "relief valve"
set = "0.5 bar"
full_flow = "0.5 bar"
[[item]]
id = "house"
kind = "house supply"
pressure = "3 bar"
[[item]]
id = "weak-house"
kind = "house supply"
pressure = "2 bar"
[[item]]
id = "mute-house"
kind = "house supply"
`

// What feed pumps and supplies give, by hand: each pump adds its own once; a relief holds
// its zone at its set on top of what stands at its outlet; what flows away at an open end,
// through a throttle or a relief, does not come back to the pump.
func TestFeedLines(t *testing.T) {
	const round = "tee/out.branch check/round tee/in.branch" // a check valve back round the first pump
	for _, c := range []struct {
		why   string
		paths []string
		port  string
		want  level
	}{
		{"a ring of one pump, and a second pump whose water flows off through a throttle to an open end that the ring draws from",
			[]string{"tee/end.branch check/back tee/in strong tee/out weak throttle.in", round, "throttle.out tee/end.a", "tee/end.b out"},
			"strong.out", level{high: 2.5, low: network.Vacuum.Bar()}},
		{"water that comes round through a throttle the wrong way, where nothing opens",
			[]string{"sea check/sea tee/in strong tee/out valve", "tee/in.branch throttle tee/out.branch"}, "strong.out", level{high: 2.5}},
		{"a dead end off a ring sees what the ring does",
			[]string{"sea check/sea tee/in strong tee/out check/end valve", round}, "valve.in", level{high: 2.5}},
		{"a ring of one pump, and a second whose water comes back only through a relief",
			[]string{"sea check/sea tee/back tee/in strong tee/out weak tee/far valve out", round, "tee/far.branch low tee/back.branch"},
			"strong.out", level{high: 2.5}},
		{"a supply behind a relief that holds it feeds a ring with no more than that",
			[]string{"house tee/held check tee/in strong tee/out pump", "tee/held.branch low out/2", round}, "strong.out", level{high: 3.5}},
		{"a supply behind two check valves, with a relief between them, the same",
			[]string{"house check/a tee/held check/b tee/in strong tee/out pump", "tee/held.branch low out/2", round}, "strong.out", level{high: 3.5}},
		{"nor through a membrane does more come than what the line behind it finds a way out at",
			[]string{"house vessel.feed", "vessel.product tee/z check/b tee/in strong tee/out valve", "tee/z.branch check/y tee/y.a", "tee/y.b low out/2", round}, "strong.out", level{high: 3.5, low: network.Vacuum.Bar()}},
		{"of two supplies on one line the stronger pushes, the stronger first",
			[]string{"house valve/1 tee/held.a", "weak-house valve/2 tee/held.b", "tee/held.branch pump"}, "pump.in", level{high: 3}},
		{"and the stronger last",
			[]string{"weak-house valve/1 tee/held.a", "house valve/2 tee/held.b", "tee/held.branch pump"}, "pump.in", level{high: 3}},
		{"a relief that leads into a line held by another stands on top of it",
			[]string{"sea strong tee/held pump", "tee/held.branch low tee/next valve", "tee/next.branch lower out/2"}, "strong.out", level{high: 1.5}},
		{"a relief into a dead end holds nothing",
			[]string{"sea strong tee/held pump", "tee/held.branch low valve"}, "strong.out", level{high: 2.5}},
		{"a supply whose pressure is not said gives water all the same: no vacuum",
			[]string{"mute-house pump"}, "pump.in", level{}},
	} {
		t.Run(c.why, func(t *testing.T) {
			sees(t, built.Walk(t, "feed.toml", built.Head+feedParts+built.Runs(c.paths...)), stand{}, c.port, c.want, c.why)
		})
	}
}

// What is told of a part of the build is its own: a plant without a way out does not speak
// for the plant beside it.
func TestNoBoundNormallyIsOfOnePart(t *testing.T) {
	sys := built.Walk(t, "two.toml", built.Head+feedParts+built.Runs("sea pump/stuck valve/stuck check/stuck", "sea/2 pump/free tee throttle out", "tee.branch lower out/2"))
	told := map[bool]int{}
	for _, st := range sys.States.All {
		junction := sys.Circuit.JunctionOf[built.Port(t, sys, "pump/stuck.out")]
		stuck := sys.Circuit.NetOf[junction] == st.Net()
		require.Equal(t, stuck, sys.States.NoBoundNormally(st), st.Name)
		told[stuck]++
	}
	require.Positive(t, told[true])
	require.Positive(t, told[false])
}

// The order in which the runs are written changes no pressure: six feed pumps side by
// side, and check valves in a line back round them.
func TestOrderOfRunsChangesNoPressure(t *testing.T) {
	paths := []string{"sea tee/s0 tee/s1 tee/s2 tee/s3 tee/s4 tee/s5 tee/s6.a", "tee/e6.b tee/e5 tee/e4 tee/e3 tee/e2 tee/e1 tee/e0 pump throttle out"}
	for _, i := range []string{"0", "1", "2", "3", "4", "5"} {
		paths = append(paths, "tee/s"+i+".branch strong/"+i+" tee/e"+i+".branch")
	}
	paths = append(paths, "tee/e6.branch check/0.in", "check/0.out check/1.in", "check/1.out check/2.in", "check/2.out check/3.in", "check/3.out tee/s6.branch")
	turned := slices.Clone(paths)
	slices.Reverse(turned)
	one, other := built.Walk(t, "x.toml", built.Head+feedParts+built.Runs(paths...)), built.Walk(t, "x.toml", built.Head+feedParts+built.Runs(turned...))
	for _, port := range []string{"strong/0.in", "strong/0.out", "pump.in", "check/2.in"} {
		a, _ := solved(one, t, stand{}, port)
		b, _ := solved(other, t, stand{}, port)
		require.InDelta(t, a, b, 1e-9, port)
	}
}

// A relief on a feed line lets through what is above its set: where its outlet is shut,
// the line behind it sees what the feed pump gives.
func TestFeedPassesAReliefIntoAShutLine(t *testing.T) {
	sys := built.Walk(t, "x.toml", built.Head+feedParts+built.Runs("sea strong tee/r pump throttle out", "tee/r.branch low valve out/2"))
	high, _ := solved(sys, t, stand{shut: []string{"valve"}}, "low.in")
	require.InDelta(t, 2.5, high, 1e-9)
	high, _ = solved(sys, t, stand{shut: []string{"valve"}}, "low.out")
	require.GreaterOrEqual(t, high, 1.5, "2.5 less the set of 1 at the least")
}

// A supply behind a throttle gives a ring no more than what the line behind the throttle
// finds a way out at, 1 bar, and the ring's pump adds its 2.5 once.
func TestThrottledSupplyOfARing(t *testing.T) {
	sys := built.Walk(t, "x.toml", built.Head+feedParts+built.Runs("house throttle tee/z check/b tee/in strong tee/out valve",
		"tee/z.branch check/y tee/y.a", "tee/y.b low out/2", "tee/out.branch check/round tee/in.branch"))
	high, _ := solved(sys, t, stand{}, "strong.out")
	require.InDelta(t, 3.5, high, 1e-9)
}

// Of two intakes each is lost through its own pump.
func TestLostFlushNamesThePumpOfItsIntake(t *testing.T) {
	const parts = "[[item]]\nid = \"cock\"\nkind = \"seacock\"\n[[item]]\nid = \"open\"\nkind = \"feed pump\"\nshutoff = \"2 bar\"\ntype = \"centrifugal\"\n" +
		"[[item]]\nid = \"snap\"\nkind = \"solenoid valve\"\n[[item]]\nid = \"cross\"\nkind = \"cross\"\n"
	sys := built.Walk(t, "x.toml", built.Head+feedParts+parts+built.Runs("cock/1 open/1 cross pump throttle out", "cock/2 open/2 cross.branch", "house snap cross.c"))
	got := map[string]string{}
	for _, l := range sys.Running.LostFlushes() {
		got[l.Intake.Name] = l.Pump.Name
	}
	require.Equal(t, map[string]string{"cock/1": "open/1", "cock/2": "open/2"}, got)
}
