package circuit_test

import (
	"testing"

	"github.com/stretchr/testify/require"

	"handtight/bom/circuit"
	"handtight/bom/internal/built"
)

// Common practice, no source: 55 bar below. Check values, and no limit rests on them.

const dischargeParts = `
[duty]
pressure = "55 bar"
[[item]]
id = "sea"
kind = "sea"
[[item]]
id = "pump"
kind = "plunger pump"
[[item]]
id = "relief"
kind = "relief valve"
set = "65 bar"
[[item]]
id = "tee"
kind = "tee"
[[item]]
id = "check"
kind = "check valve"
[[item]]
id = "throttle"
kind = "brine throttle"
[[item]]
id = "locked"
kind = "shut-off valve"
normal = "shut"
[[item]]
id = "valve"
kind = "shut-off valve"
[[item]]
id = "skin"
kind = "through-hull"
[[item]]
id = "cock"
kind = "seacock"
[[item]]
id = "out"
kind = "overboard"
[[item]]
id = "tank"
kind = "tank"
[[item]]
id = "drain"
kind = "drain"
`

// Where the relief's water ends, as the build stands in normal running.
func TestDischargeOf(t *testing.T) {
	for _, c := range []struct {
		why   string
		paths []string
		want  circuit.Discharge
		tanks []string
	}{
		{"an overboard outlet", []string{"relief out/2"}, circuit.Discharge{Overboard: true}, nil},
		{"a skin fitting", []string{"relief skin.inboard"}, circuit.Discharge{Overboard: true}, nil},
		{"a seacock", []string{"relief cock.inboard"}, circuit.Discharge{Overboard: true}, nil},
		{"the sea itself", []string{"relief sea/2"}, circuit.Discharge{Overboard: true}, nil},
		{"a valve that stands open", []string{"relief valve out/2"}, circuit.Discharge{Overboard: true}, nil},
		{"a valve that is shut in normal running", []string{"relief locked out/2"}, circuit.Discharge{}, nil},
		{"a check valve on", []string{"relief check out/2"}, circuit.Discharge{Overboard: true}, nil},
		{"a check valve the wrong way round", []string{"relief check.out>in out/2"}, circuit.Discharge{}, nil},
		{"the pump's inlet", []string{"relief tee/in.branch"}, circuit.Discharge{Pump: true}, nil},
		{"not the pump's outlet: what comes out there is not taken", []string{"relief tee/back.branch"}, circuit.Discharge{}, nil},
		{"a tank and a drain", []string{"relief tee/split tank", "tee/split.branch drain"}, circuit.Discharge{}, []string{"tank", "drain"}},
		{"a drain", []string{"relief drain"}, circuit.Discharge{}, []string{"drain"}},
	} {
		t.Run(c.why, func(t *testing.T) {
			sys := built.Walk(t, "d.toml", built.Head+dischargeParts+built.Runs(append([]string{"sea check/in tee/in pump tee/back tee/r throttle out", "tee/r.branch relief.in"}, c.paths...)...))
			d := sys.Circuit.DischargeOf(built.Port(t, sys, "relief.out"))
			require.Equal(t, c.want.Overboard, d.Overboard)
			require.Equal(t, c.want.Pump, d.Pump)
			var inside []string
			for _, u := range d.Inside {
				inside = append(inside, u.Name)
			}
			require.Equal(t, c.tanks, inside)
			require.Equal(t, !c.want.Overboard && !c.want.Pump && c.tanks == nil, d.Closed())
		})
	}
}

// What water reaches by what nobody can shut, and by what somebody can.
func TestReaches(t *testing.T) {
	sys := built.Walk(t, "r.toml", built.Head+dischargeParts+built.Runs("sea pump tee/r throttle out", "tee/r.branch valve check tee/s relief out/2", "tee/s.branch locked drain"))
	port := func(name string) int { return built.Port(t, sys, name) }
	for _, c := range []struct {
		why, from, to string
		closable      bool
		want          bool
	}{
		{"a tee", "pump.out", "valve.in", false, true},
		{"a valve", "pump.out", "relief.in", false, false},
		{"a valve, if it may be one that shuts", "pump.out", "relief.in", true, true},
		{"a check valve backwards", "relief.in", "pump.out", true, false},
		{"a check valve forwards", "check.in", "relief.in", false, true},
		{"a valve that is shut", "check.out", "drain.in", false, false},
		{"no pump", "sea.out", "pump.out", true, false},
		{"no throttle", "pump.out", "out.in", true, false},
	} {
		require.Equal(t, c.want, sys.Circuit.Reaches(port(c.from), port(c.to), c.closable), c.why)
	}
}
