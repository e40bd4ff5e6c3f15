package bom_test

import (
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"handtight/bom"
	"handtight/bom/internal/built"
)

// The zones of the plant, by ports that must all stand at one pressure.
var zones = map[string][]string{
	"suction": {"intake.inboard", "raw-hose.a", "strainer.in", "strainer.out", "feed-pump.in"},
	"feed":    {"feed-pump.out", "filter.in"},
	"inlet":   {"filter.out", "tee/gauge.branch", "gauge.in", "tee/flush.branch", "check.out", "pump.in"},
	"high": {"pump.out", "tee/relief.branch", "relief.in", "hp-hose.b", "vessel.feed", "vessel.brine",
		"tee/hp-gauge.branch", "gauge/hp.in", "throttle.in"},
	"brine":   {"throttle.out", "brine-hose.a", "brine-hose.b", "tee/outlet.a"},
	"product": {"vessel.product", "meter.in", "meter.out", "selector.common"},
}

// Changes of the plant.
var (
	noRelief    = built.Edit{`path = ["tee/relief.branch", "relief", "tee/outlet.branch"]`, `path = ["gauge/relief", "tee/relief.branch"]`}
	noReliefTee = built.Edit{`"tee/outlet", "overboard-valve"`, `"overboard-valve"`}
	known120    = built.Edit{`"tee/flush", "pump"]`, `"tee/flush", "pump-120"]`}
	from120     = built.Edit{`path = ["pump", "tee/relief"`, `path = ["pump-120", "tee/relief"`}
	known60     = built.Edit{`"tee/flush", "pump"]`, `"tee/flush", "pump-60"]`}
	from60      = built.Edit{`path = ["pump", "tee/relief"`, `path = ["pump-60", "tee/relief"`}
	selectsOpen = built.Edit{`"meter", "selector.common"]`, `"meter", "selector-open.common"]`}
)

var inf = math.Inf(1)

// level is the highest and the lowest pressure of a zone.
type level struct{ high, low float64 }

// The cases of pressures by state, solved by hand: gauge bar, the relief at its set
// pressure of 65 and, where it stands open, passing the whole flow at 1.1 times that.
// Source of each figure: the rules of the quasi-static upper bound, worked by hand in
// the words of `why`; the plant is testdata/states/plant.toml.
var cases = []struct {
	name, why string
	edits     []built.Edit
	stand     stand
	state     string // the state that the walk makes of it; "" if none
	at        map[string]level
	full      map[string]float64 // where the relief at full flow gives another figure
}{
	{
		name: "1 normal", why: "the throttle flows to the sea", state: "normal",
		at: map[string]level{"suction": {0, 0}, "feed": {2.5, 0}, "inlet": {2.5, 0}, "high": {55, 0}, "brine": {0, 0}, "product": {0, 0}},
	},
	{
		name: "2 overboard valve shut", why: "the relief opens into the same shut line: no way out",
		stand: stand{shut: []string{"overboard-valve"}}, state: "overboard-valve shut",
		at: map[string]level{"suction": {0, 0}, "feed": {2.5, 0}, "inlet": {2.5, 0}, "high": {inf, 0}, "brine": {inf, 0}, "product": {0, 0}},
	},
	{
		name: "3 overboard valve shut, relief with an outlet of its own", why: "no flow through the throttle: the brine hose sees it all",
		edits: []built.Edit{built.OwnOutlet, built.PlugOutlet}, stand: stand{shut: []string{"overboard-valve"}}, state: "overboard-valve shut",
		at:   map[string]level{"feed": {2.5, 0}, "high": {65, 0}, "brine": {65, 0}, "product": {0, 0}},
		full: map[string]float64{"high": 71.5, "brine": 71.5},
	},
	{
		name: "4 throttle shut", why: "the relief takes the flow",
		stand: stand{shut: []string{"throttle"}}, state: "throttle shut",
		at:   map[string]level{"feed": {2.5, 0}, "high": {65, 0}, "brine": {0, 0}, "product": {0, 0}},
		full: map[string]float64{"high": 71.5},
	},
	{
		name: "5 throttle shut, no relief", why: "nothing opens",
		edits: []built.Edit{noRelief, noReliefTee}, stand: stand{shut: []string{"throttle"}}, state: "throttle shut",
		at: map[string]level{"feed": {2.5, 0}, "high": {inf, 0}, "brine": {0, 0}, "product": {0, 0}},
	},
	{
		name: "5 throttle shut, no relief, stall known", why: "the pump stalls",
		edits: []built.Edit{noRelief, noReliefTee, known120, from120}, stand: stand{shut: []string{"throttle"}}, state: "throttle shut",
		at: map[string]level{"feed": {2.5, 0}, "high": {120, 0}, "brine": {0, 0}, "product": {0, 0}},
	},
	{
		name: "6 selector between its positions", why: "the product cannot leave, and the osmotic difference is not counted on",
		stand: stand{between: "selector"}, state: "selector between",
		at: map[string]level{"feed": {2.5, 0}, "high": {55, 0}, "brine": {0, 0}, "product": {55, 0}},
	},
	{
		name: "7 intake shut", why: "the pumps pull a vacuum from the seacock to the plunger pump, which is starved",
		stand: stand{shut: []string{"intake"}}, state: "intake shut",
		at: map[string]level{"suction": {0, -1}, "feed": {2.5, -1}, "inlet": {2.5, -1}, "high": {55, 0}, "brine": {0, 0}, "product": {0, 0}},
	},
	{
		name: "8 filter clogged", why: "the vacuum stands between the filter and the plunger pump",
		stand: stand{shut: []string{"filter"}}, state: "filter clogged",
		at: map[string]level{"suction": {0, 0}, "feed": {2.5, 0}, "inlet": {0, -1}, "high": {55, 0}, "brine": {0, 0}, "product": {0, 0}},
	},
	{
		name: "9 feed pump alone, throttle open", why: "feed pressure through the valves of the plunger pump",
		stand: stand{stopped: true}, state: "feed pump alone",
		at: map[string]level{"feed": {2.5, 0}, "inlet": {2.5, 0}, "high": {2.5, 0}, "brine": {0, 0}, "product": {0, 0}},
	},
	{
		name: "9 feed pump alone, throttle shut", why: "alike",
		stand: stand{stopped: true, shut: []string{"throttle"}},
		at:    map[string]level{"feed": {2.5, 0}, "inlet": {2.5, 0}, "high": {2.5, 0}, "brine": {0, 0}, "product": {0, 0}},
	},
	{
		name: "10 flush", why: "the diaphragm pump's own valves hold the house pressure off the suction side; not off the filter before them",
		stand: flushing(), state: "flush",
		at: map[string]level{"suction": {0, 0}, "feed": {3, 0}, "inlet": {3, 0}, "high": {3, 0}, "brine": {0, 0}, "product": {0, 0}},
	},
	{
		name: "11 flush, overboard valve shut", why: "house pressure everywhere that it opens",
		stand: flushing("overboard-valve"), state: "overboard-valve shut in flush",
		at: map[string]level{"feed": {3, 0}, "inlet": {3, 0}, "high": {3, 0}, "brine": {3, 0}, "product": {0, 0}},
	},
	{
		name: "12 relief stuck shut", why: "one failure only: with the throttle open the plant runs as ever",
		stand: stand{shut: []string{"relief"}}, state: "relief stuck",
		at: map[string]level{"feed": {2.5, 0}, "high": {55, 0}, "brine": {0, 0}, "product": {0, 0}},
	},
	{
		name: "high-pressure pump alone", why: "it draws through the valves of the feed pump, which adds nothing",
		stand: stand{still: true}, state: "high-pressure pump alone",
		at: map[string]level{"suction": {0, 0}, "feed": {0, 0}, "inlet": {0, 0}, "high": {55, 0}, "brine": {0, 0}, "product": {0, 0}},
	},
	{
		name: "flush valve failed open", why: "house pressure in normal running: it is above the feed pump's",
		stand: stand{opened: "flush-valve"}, state: "flush-valve open",
		at: map[string]level{"suction": {0, 0}, "feed": {3, 0}, "inlet": {3, 0}, "high": {55, 0}, "brine": {0, 0}, "product": {0, 0}},
	},
}

func TestHandSolvedCases(t *testing.T) {
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) {
			sys := built.Plant(t, c.edits...)
			for zone, want := range c.at {
				for _, port := range zones[zone] {
					if _, placed := sys.Graph.Unit(unitOf(port)); !placed {
						continue // a variant without it
					}
					sees(t, sys, c.stand, port, want, c.why)
					full, ok := c.full[zone]
					if !ok {
						full = want.high
					}
					atFull := c.stand
					atFull.atFull = true
					sees(t, sys, atFull, port, level{full, want.low}, c.why)
					if c.state == "" {
						continue
					}
					high, low, ok := sys.States.Pressure(built.State(t, sys, c.state), built.Port(t, sys, port))
					require.True(t, ok)
					closeTo(t, level{full, want.low}, high.Bar(), low.Bar(), "state %s at %s: %s", c.state, port, c.why)
				}
			}
		})
	}
}

func sees(t *testing.T, sys *bom.System, st stand, port string, want level, why string) {
	t.Helper()
	high, low := solved(sys, t, st, port)
	closeTo(t, want, high, low, "%s: %s", port, why)
}

// closeTo compares pressures, infinite ones too.
func closeTo(t *testing.T, want level, high, low float64, words string, args ...any) {
	t.Helper()
	built.Close(t, want.high, high, words, args...)
	built.Close(t, want.low, low, words, args...)
}

func unitOf(port string) string {
	unit := port[:strings.LastIndexByte(port, '.')]
	return unit
}

// A state without a bound says so; a state with a bound everywhere does not.
func TestStatesWithoutBound(t *testing.T) {
	var none []string
	for _, st := range built.Plant(t).States.All {
		if st.NoBound {
			none = append(none, st.Name)
		}
	}
	require.Equal(t, []string{"overboard-valve shut"}, none, "as people build it, one shut valve leaves no way out")
	for _, st := range built.Plant(t, built.OwnOutlet, built.PlugOutlet).States.All {
		require.False(t, st.NoBound, st.Name)
	}
}

// The plant's states are one act or one failure each, and no two at a time.
func TestStatesOfThePlant(t *testing.T) {
	want := []string{
		"normal", "flush", "feed pump alone", "high-pressure pump alone", "flush-valve open",
		"intake shut", "intake shut in flush", "strainer clogged", "filter clogged",
		"relief stuck", "throttle shut", "throttle shut in flush",
		"overboard-valve shut", "overboard-valve shut in flush",
		"selector between", "selector other way", "carbon clogged",
	}
	var got []string
	failures := map[string]bool{}
	for _, st := range built.Plant(t).States.All {
		got = append(got, st.Name)
		failures[st.Name] = st.Failure
	}
	require.ElementsMatch(t, want, got)
	for name, fails := range failures {
		clogged := name == "strainer clogged" || name == "filter clogged" || name == "carbon clogged"
		require.Equal(t, clogged || name == "relief stuck" || name == "flush-valve open", fails, "%s is a failure, or a person's act", name)
	}
}
