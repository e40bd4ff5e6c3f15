package bom_test

import (
	"testing"

	"github.com/stretchr/testify/require"

	"handtight/bom/internal/built"
)

// All sides of an energy-recovery pump are one part of the build, also where nothing else joins
// them: its waste is asked for, and its high side stands at what drives it over its ratio.
func TestEnergyRecoveryPumpIsOnePart(t *testing.T) {
	sys := built.Walk(t, "recovery.toml", `[build]
name = "invented"
currency = "EUR"
[[item]]
id = "sea"
kind = "sea"
[[item]]
id = "feed"
kind = "feed pump"
shutoff = "6 bar"
[[item]]
id = "lift"
kind = "energy recovery pump"
ratio = "10 %"
[[item]]
id = "over"
kind = "overboard"
[[run]]
name = "a"
path = ["sea.out", "feed.in"]
[[run]]
name = "b"
path = ["feed.out", "lift.in"]
[[run]]
name = "c"
path = ["lift.waste", "over.in"]
`)
	high, _ := solved(sys, t, stand{}, "lift.out")
	require.InDelta(t, 60, high, 1e-9)
	high, _ = solved(sys, t, stand{}, "lift.waste")
	require.Zero(t, high)
}
