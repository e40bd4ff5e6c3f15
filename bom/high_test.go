package bom

import (
	"testing"

	"github.com/stretchr/testify/require"
)

// A high-pressure side is one by what drives it, whatever is missing or written too low.
func TestHighPressureByWhatDrivesIt(t *testing.T) {
	feedThere := edit{`path = ["pump", "tee/relief"`, `path = ["feed-pump/2", "tee/relief"`}
	feedHere := edit{`"tee/flush", "pump"]`, `"tee/flush", "feed-pump/2"]`}
	passage := more("[[item]]\nid = \"plain\"\nkind = \"nipple\"")
	for _, c := range []struct {
		why   string
		edits []edit
	}{
		{"as built", nil},
		{"a relief set below 10 bar", []edit{{`"tee/relief.branch", "relief", "tee/outlet.branch"`, `"tee/relief.branch", "low-relief", "tee/outlet.branch"`}}},
		{"a duty written as 55 psi", []edit{dutyOf("55 psi")}},
		{"a feed pump in the pump's place", []edit{feedThere, feedHere}},
		{"a plain passage in the pump's place", []edit{passage, {`path = ["pump", "tee/relief"`, `path = ["plain", "tee/relief"`}, {`"tee/flush", "pump"]`, `"tee/flush", "plain"]`}}},
		{"no relief", []edit{noRelief, noReliefTee}},
	} {
		t.Run(c.why, func(t *testing.T) {
			sys := planted(t, c.edits...)
			for _, port := range []string{"hp-hose.a", "vessel.feed", "throttle.in", "gauge/hp.in"} {
				require.True(t, sys.Segments.SegmentOf(sys.portNamed(t, port)).High(), port)
			}
			for _, port := range []string{"brine-hose.a", "meter.in"} {
				require.False(t, sys.Segments.SegmentOf(sys.portNamed(t, port)).High(), port)
			}
		})
	}
	require.Len(t, planted(t, feedThere, feedHere).Running.Unpressed(), 1, "a duty, and nothing that gives it")
	require.Empty(t, planted(t).Running.Unpressed())
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
	sys := walked(t, "erp.toml", head+parts+runs("sea feed erp vessel.feed", "vessel.brine erp.brine", "erp.waste waste out", "vessel.product tank"))
	for _, c := range []struct {
		port, state string
		want        float64
	}{
		{"vessel.feed", "normal", 60}, {"vessel.brine", "normal", 60}, {"erp.in", "normal", 6}, {"waste.in", "normal", 0}, {"tank.in", "normal", 0},
		{"vessel.feed", "waste shut", 6},
	} {
		high, _, ok := sys.States.Pressure(sys.stateNamed(t, c.state), sys.portNamed(t, c.port))
		require.True(t, ok)
		require.InDelta(t, c.want, high.Bar(), 1e-9, "%s, %s", c.port, c.state)
	}
	require.True(t, sys.Segments.SegmentOf(sys.portNamed(t, "vessel.brine")).High())
	require.False(t, sys.Segments.SegmentOf(sys.portNamed(t, "erp.in")).High())
	require.True(t, sys.Waters.Sea(sys.portNamed(t, "waste.in")))
}

// A regulator in the throttle's place holds what it is set to and takes no hand.
func TestRegulatorPlant(t *testing.T) {
	sys := planted(t, more("[[item]]\nid = \"holds\"\nkind = \"back-pressure regulator\"\nset = \"52 bar\""), edit{`"throttle", "brine-hose"`, `"holds", "brine-hose"`})
	high, _, _ := sys.States.Pressure(sys.stateNamed(t, "normal"), sys.portNamed(t, "vessel.feed"))
	require.InDelta(t, 52, high.Bar(), 1e-9)
	high, _, _ = sys.States.Pressure(sys.stateNamed(t, "holds stuck"), sys.portNamed(t, "vessel.feed"))
	require.InDelta(t, 71.5, high.Bar(), 1e-9, "stuck shut, the relief takes the flow")
}
