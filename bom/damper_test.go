package bom_test

import (
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"handtight/bom"
	"handtight/bom/read"
)

// A plant with an unloader on its pump and a tank of a height. $ is more of the unloader.
const unloading = `
[build]
name = "x"
currency = "EUR"
[duty]
pressure = "54 bar"
[[item]]
id = "sea"
kind = "sea"
[[item]]
id = "pump"
kind = "plunger pump"
flow = "9 L/min"
[[item]]
id = "unloader"
kind = "unloader"
set = "60 bar"
full_flow = "63 bar"
$
[[item]]
id = "damper"
kind = "accumulator"
precharge = "30 bar"
[[item]]
id = "tee"
kind = "tee"
[[item]]
id = "throttle"
kind = "brine throttle"
[[item]]
id = "out"
kind = "overboard"
[[item]]
id = "back"
kind = "overboard"
[[item]]
id = "tank"
kind = "tank"
height = "7 m"
[[item]]
id = "valve"
kind = "shut-off valve"
[[item]]
id = "end"
kind = "cap"
[[run]]
name = "high"
path = ["sea", "pump", "unloader", "tee", "throttle", "out"]
[[run]]
name = "bypass"
path = ["unloader.bypass", "back"]
[[run]]
name = "damper"
path = ["tee.branch", "damper"]
[[run]]
name = "gravity"
path = ["tank", "valve", "end"]
`

// An unloader bounds the pressure where its maker says that it may stand for a relief, and
// nowhere else; an accumulator adds nothing; a tank's height is a tenth of a bar a metre (states
// as solved by hand in the rules of the solver).
func TestUnloaderAccumulatorAndHeight(t *testing.T) {
	loads := func(more string) (pump, damper, tank float64) {
		b, faults := read.Parse("x.toml", []byte(strings.Replace(unloading, "$", more, 1)))
		require.NoError(t, faults.Err())
		s, faults := bom.Walk(b)
		require.NoError(t, faults.Err())
		at := func(unit, port string) float64 {
			u, ok := s.Graph.Unit(unit)
			require.True(t, ok)
			l := s.States.PortLoad(u.First + u.Item.PortIndex(port))
			if l.NoBound != nil {
				return math.Inf(1)
			}
			return l.Act.Bar()
		}
		return at("pump", "out"), at("damper", "in"), at("end", "a")
	}
	pump, damper, tank := loads("")
	require.True(t, math.IsInf(pump, 1), "not counted on: nothing opens when the throttle is shut")
	require.True(t, math.IsInf(damper, 1))
	require.InDelta(t, 0.7, tank, 1e-9)
	pump, damper, _ = loads("relieves = true")
	require.InDelta(t, 63, pump, 1e-9, "it passes the pump's flow at its full-flow pressure")
	require.InDelta(t, 63, damper, 1e-9, "an accumulator adds no pressure and takes none away")
}
