package duty

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"handtight/pressure/quantity"
)

// edited writes a demo's build with some of its text changed, and reckons it.
func edited(t *testing.T, demo string, edits ...string) *Making {
	text, err := os.ReadFile("../../testdata/" + demo + "/build.toml")
	require.NoError(t, err)
	said := string(text)
	for i := 0; i < len(edits); i += 2 {
		require.Contains(t, said, edits[i])
		said = strings.Replace(said, edits[i], edits[i+1], 1)
	}
	path := filepath.Join(t.TempDir(), "build.toml")
	require.NoError(t, os.WriteFile(path, []byte(said), 0o600))
	return of(t, path).Plants[0]
}

// Every line of a plant with an energy-recovery pump carries what the balance on its piston says: the
// feed before it, the feed less the leak to the membrane, that less the product back, and the rest out.
func TestEveryLineOfARecoveringPlantIsReckoned(t *testing.T) {
	m := edited(t, "recovery")
	require.True(t, m.Lines.Solved, m.Lines.WhyNot)
	r := m.Recovered.Middle
	leak := quantity.Flow(m.Recovered.Device.Leak)
	want := map[string]quantity.Flow{"raw": r.Feed, "lift": r.Feed, "filtered": r.Feed, "feed": r.Feed,
		"high": r.Feed * (1 - leak), "brine": r.Feed*(1-leak) - r.Product, "waste": r.Feed - r.Product,
		"made": r.Product, "measured": r.Product, "to-tank": r.Product}
	got := map[string]bool{}
	for _, h := range m.Lines.Hoses {
		if h.Unit.Name == "to-drain" { // the selector stands at the tank
			require.Zero(t, m.Lines.Middle[h.Unit])
			continue
		}
		require.InEpsilon(t, float64(want[h.Unit.Name]), float64(m.Lines.Middle[h.Unit]), 1e-4, h.Unit.Name)
		require.Equal(t, strings.Contains("raw lift filtered feed", h.Unit.Name), h.Where == Suction, h.Unit.Name)
		got[h.Unit.Name] = true
	}
	require.Len(t, got, len(want))
	require.Len(t, m.Lines.Inlets, 1)
}

// What the line and the filters before it lose is taken from the feed pump's pressure: the
// membrane's share and the loss together are what its curve gives.
func TestTheLineBeforeARecoveringPumpCosts(t *testing.T) {
	m := edited(t, "recovery", "micron = \"5 micron\"", "micron = \"5 micron\"\nloss = \"1.2 bar at 6 L/min\"\nloss_dirty = \"9 bar at 6 L/min\"")
	free := edited(t, "recovery")
	r := m.Recovered
	require.Less(t, r.Middle.Feed, free.Recovered.Middle.Feed*0.95)
	require.InDelta(t, r.Curve.Pressure(r.Middle.Feed).Bar(), (r.Middle.Inlet + r.Device.Line).Bar(), 0.01)
	require.Greater(t, r.Device.Line, quantity.Bar)
	require.Error(t, r.DirtyErr) // 9 bar are more than the feed pump has
	require.Contains(t, strings.Join(m.Says(), "\n"), "stands still")
	require.NoError(t, free.Recovered.DirtyErr)
	require.Less(t, free.Recovered.Dirty.Product, free.Recovered.Middle.Product)
}

// An age that is said is the middle's age: the middle lies between the ends and falls with the years.
func TestTheMiddleIsOfTheAgeThatIsSaid(t *testing.T) {
	last := map[string]quantity.Flow{}
	for _, age := range []string{"0 years", "1 year", "4 years", "8 years"} {
		for _, demo := range []string{"recovery", "redsea", "engine"} {
			m := edited(t, demo, "[duty]\n", "[duty]\nage = \""+age+"\"\n")
			require.True(t, m.Made, m.WhyNot)
			for _, f := range m.Facts() {
				if v, ok := m.MiddleOf(f.Name); ok {
					require.GreaterOrEqual(t, v, f.Lo-1e-6*max(1, v), "%s %s %s", demo, age, f.Name)
					require.LessOrEqual(t, v, f.Hi+1e-6*max(1, v), "%s %s %s", demo, age, f.Name)
				}
			}
			if before, ok := last[demo]; ok {
				require.Less(t, m.Middle.Product, before)
			}
			last[demo] = m.Middle.Product
		}
	}
}

// At each speed an engine gives what its pump then sweeps: 13 L/min at 1450 rpm and 57 bar are 1.2 kW of
// water, and the turns at the engine are 130/95 of the pump's. Torque is power over the turns.
func TestTheTorqueOfAnEngineIsOfOneSpeedAtATime(t *testing.T) {
	m := edited(t, "engine")
	require.True(t, m.Power.EngineKnown)
	middle := 13.0 / 60000 * 57e5 / 0.865 / 0.95 / (1450.0 * 130 / 95 / 60 * 2 * 3.14159265)
	require.InEpsilon(t, middle, float64(m.Power.Torque.Lo+m.Power.Torque.Hi)/2, 0.03)
	require.Less(t, float64(m.Power.Torque.Hi/m.Power.Torque.Lo), 1.25) // the speed is not in it, the efficiencies and two bar are
}

// A hose is judged at cruising speed where a pump turns with its engine.
func TestALineIsJudgedAtTheEnginesGreatestSpeed(t *testing.T) {
	m := edited(t, "engine", `engine_speed = "1700 to 1900 rpm"`, `engine_speed = "1200 to 2900 rpm"`)
	for _, h := range m.Lines.Hoses {
		if h.Unit.Name == "high" {
			require.Equal(t, h.Speed.Hi, h.Judged.Speed)
			require.Greater(t, h.Judged.Speed, quantity.Velocity(4.5))
			return
		}
	}
	require.Fail(t, "no high hose")
}

// How a standing energy-recovery pump lets a flush through is its maker's to say: nothing is reckoned of
// it, and that is told.
func TestTheFlushOfARecoveringPlantIsNotReckoned(t *testing.T) {
	m := edited(t, "recovery", `"fine", "feed", "pump.in"]`, `"fine", "feed", "flush-tee", "to-pump", "pump.in"]
[[hose]]
id = "to-pump"
of = "stock"
length = "0.5 m"
[[hose]]
id = "fresh"
of = "stock"
length = "1 m"
[[hose]]
id = "fresh-2"
of = "stock"
length = "1 m"
[[item]]
id = "flush-tee"
kind = "tee"
material = "bronze"
rated = "10 bar"
ports = { a = '13 mm barb', b = '13 mm barb', branch = '13 mm barb' }
[[item]]
id = "flush-valve"
kind = "solenoid valve"
material = "bronze"
rated = "10 bar"
ports = { in = '13 mm barb', out = '13 mm barb' }
[[item]]
id = "house"
kind = "house supply"
pressure = "3 bar"
flow = "9 L/min"
ports = { out = '13 mm barb' }
[[run]]
name = "flush"
path = ["house", "fresh", "flush-valve", "fresh-2", "flush-tee.branch"]`)
	require.Nil(t, m.Condition("flush"))
	require.Contains(t, strings.Join(m.Says(), "\n"), "nothing says how freely water passes pump")
	require.True(t, m.Lines.Solved, m.Lines.WhyNot)
}
