package bom_test

import (
	"testing"

	"github.com/stretchr/testify/require"

	"handtight/bom/internal/built"
)

// A high-pressure side is one by what drives it, whatever is missing or written too low.
func TestHighPressureByWhatDrivesIt(t *testing.T) {
	feedThere := built.Edit{`path = ["pump", "tee/relief"`, `path = ["feed-pump/2", "tee/relief"`}
	feedHere := built.Edit{`"tee/flush", "pump"]`, `"tee/flush", "feed-pump/2"]`}
	passage := built.More("[[item]]\nid = \"plain\"\nkind = \"nipple\"")
	for _, c := range []struct {
		why   string
		edits []built.Edit
	}{
		{"as built", nil},
		{"a relief set below 10 bar", []built.Edit{{`"tee/relief.branch", "relief", "tee/outlet.branch"`, `"tee/relief.branch", "low-relief", "tee/outlet.branch"`}}},
		{"a duty written as 55 psi", []built.Edit{built.DutyOf("55 psi")}},
		{"a feed pump in the pump's place", []built.Edit{feedThere, feedHere}},
		{"a plain passage in the pump's place", []built.Edit{passage, {`path = ["pump", "tee/relief"`, `path = ["plain", "tee/relief"`}, {`"tee/flush", "pump"]`, `"tee/flush", "plain"]`}}},
		{"no relief", []built.Edit{noRelief, noReliefTee}},
	} {
		t.Run(c.why, func(t *testing.T) {
			sys := built.Plant(t, c.edits...)
			for _, port := range []string{"hp-hose.a", "vessel.feed", "throttle.in", "gauge/hp.in"} {
				require.True(t, sys.Segments.SegmentOf(built.Port(t, sys, port)).High(), port)
			}
			for _, port := range []string{"brine-hose.a", "meter.in"} {
				require.False(t, sys.Segments.SegmentOf(built.Port(t, sys, port)).High(), port)
			}
		})
	}
	require.Len(t, built.Plant(t, feedThere, feedHere).Running.Unpressed(), 1, "a duty, and nothing that gives it")
	require.Empty(t, built.Plant(t).Running.Unpressed())
}

// A plant with an energy-recovery pump, walked as a whole: 6 bar of feed over a rod of a
// tenth are 60 bar, and with its waste shut no more than the feed. By hand, from the balance
// of areas.
func TestEnergyRecoveryPlant(t *testing.T) {
	const parts = `[[item]]
id = "sea"
kind = "sea"
[[item]]
id = "feed"
kind = "feed pump"
shutoff = "6 bar"
[[item]]
id = "erp"
kind = "energy recovery pump"
ratio = "10 %"
[[item]]
id = "vessel"
kind = "pressure vessel"
[[item]]
id = "tank"
kind = "tank"
[[item]]
id = "waste"
kind = "shut-off valve"
[[item]]
id = "out"
kind = "overboard"
`
	sys := built.Walk(t, "erp.toml", built.Head+parts+built.Runs("sea feed erp vessel.feed", "vessel.brine erp.brine", "erp.waste waste out", "vessel.product tank"))
	for _, c := range []struct {
		port, state string
		want        float64
	}{
		{"vessel.feed", "normal", 60}, {"vessel.brine", "normal", 60}, {"erp.in", "normal", 6}, {"waste.in", "normal", 0}, {"tank.in", "normal", 0},
		{"vessel.feed", "waste shut", 6},
	} {
		high, _, ok := sys.States.Pressure(built.State(t, sys, c.state), built.Port(t, sys, c.port))
		require.True(t, ok)
		require.InDelta(t, c.want, high.Bar(), 1e-9, "%s, %s", c.port, c.state)
	}
	require.True(t, sys.Segments.SegmentOf(built.Port(t, sys, "vessel.brine")).High())
	require.False(t, sys.Segments.SegmentOf(built.Port(t, sys, "erp.in")).High())
	require.True(t, sys.Waters.Sea(built.Port(t, sys, "waste.in")))
}

// A regulator in the throttle's place holds what it is set to and takes no hand.
func TestRegulatorPlant(t *testing.T) {
	sys := built.Plant(t, built.More("[[item]]\nid = \"holds\"\nkind = \"back-pressure regulator\"\nset = \"52 bar\""), built.Edit{`"throttle", "brine-hose"`, `"holds", "brine-hose"`})
	high, _, _ := sys.States.Pressure(built.State(t, sys, "normal"), built.Port(t, sys, "vessel.feed"))
	require.InDelta(t, 52, high.Bar(), 1e-9)
	high, _, _ = sys.States.Pressure(built.State(t, sys, "holds stuck"), built.Port(t, sys, "vessel.feed"))
	require.InDelta(t, 71.5, high.Bar(), 1e-9, "stuck shut, the relief takes the flow")
}
