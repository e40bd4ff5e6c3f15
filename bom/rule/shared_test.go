package rule

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/require"
)

// pair is two pumps side by side on one suction line, one high-pressure line with one
// relief, and a battery.
const pair = `
[duty]
pressure = "56 bar"
supply = "%s"
[[item]]
id = "intake"
kind = "seacock"
rated = "16 bar"
ports = { inboard = '%s barb long' }
[[item]]
id = "stock"
kind = "hose stock"
bore = "%s"
rated = "6 bar"
vacuum = "0.9 bar"
[[hose]]
id = "hose"
of = "stock"
length = "1 m"
[[item]]
id = "split"
kind = "tee"
rated = "16 bar"
ports = { a = '%s barb long', b = '1/2 NPT male', branch = '1/2 NPT male' }
[[item]]
id = "pump"
kind = "plunger pump"
flow = "6 L/min"
rated = "100 bar"
ports = { in = '1/2 NPT female', out = '3/8 NPT female' }
[[item]]
id = "check"
kind = "check valve"
rated = "100 bar"
ports = { in = '3/8 NPT male', out = '3/8 NPT female' }
[[item]]
id = "join"
kind = "cross"
rated = "200 bar"
ports = { a = '3/8 NPT male', b = '3/8 NPT female', branch = '3/8 NPT male', c = '3/8 NPT female' }
[[item]]
id = "relief"
kind = "relief valve"
set = "65 bar"
flow = "%s"
rated = "100 bar"
ports = { in = '3/8 NPT male', out = '3/8 NPT female' }
[[item]]
id = "throttle"
kind = "brine throttle"
rated = "100 bar"
ports = { in = '3/8 NPT male', out = '3/8 NPT female' }
[[item]]
id = "out"
kind = "overboard"
[[run]]
name = "raw water"
path = ["intake", "hose", "split", "pump/one", "check/one", "join", "throttle", "out"]
[[run]]
name = "second"
path = ["split.branch", "pump/two", "check/two", "join.branch"]
[[run]]
name = "relief"
path = ["join.c", "relief", "out/relief"]
`

// What two pumps share is judged by both: the suction hose, the relief, the battery. A
// check valve between a pump and the relief does not cut it off.
func TestPumpsThatShare(t *testing.T) {
	for _, c := range []struct {
		why, supply, bore, relief string
		small, fast, weak         []string
		says                      string
	}{
		{"12 L/min in 19 mm, a relief of 12 L/min, mains", "230 V", "19 mm", "12 L/min", nil, nil, nil, ""},
		{"a relief for one of them", "230 V", "19 mm", "9 L/min", []string{"stop"}, nil, nil, "pump/one and pump/two together deliver 12 L/min"},
		{"12 L/min in 13 mm: 1.5 m/s", "230 V", "13 mm", "12 L/min", nil, []string{"caution"}, nil, "pump/one and pump/two together draw up to 12 L/min"},
		// By hand, a bar less and a bar more: (56 - 1) bar x 11.04 L/min / 600 / (0.90 x 1 x 0.85) is 1,323 W, (56 + 1) x 12 / 600 / (0.83 x 0.93 x 0.75) 1,969.
		{"1,323 to 1,969 W are 55 to 82 A at 24 V", "24 V", "19 mm", "12 L/min", nil, nil, nil, ""},
		{"and 110 to 164 A at 12 V", "12 V", "19 mm", "12 L/min", nil, nil, []string{"caution"}, "together take 1323 to 1969 W, which is 110 to 164 A"},
	} {
		t.Run(c.why, func(t *testing.T) {
			got := found(t, fmt.Sprintf(pair, c.supply, c.bore, c.bore, c.bore, c.relief))
			require.Equal(t, c.small, severities(got["relief-too-small"]))
			require.Equal(t, c.fast, severities(got["suction-too-fast"]))
			require.Equal(t, c.weak, severities(got["supply-too-weak"]))
			require.Empty(t, got["relief-cut-off"])
			require.Empty(t, got["relief-missing"])
			if c.says == "" {
				return
			}
			for _, slug := range []string{"relief-too-small", "suction-too-fast", "supply-too-weak"} {
				for _, f := range got[slug] {
					require.Contains(t, f.Reason, c.says)
				}
			}
		})
	}
}

// The flush is lost wherever nothing holds it off the intake: a check valve behind the
// flush tee holds nothing.
func TestFlushLost(t *testing.T) {
	const check = `[[item]]
id = "raw-check"
kind = "check valve"
rated = "16 bar"
ports = { in = '1/2 NPT female', out = '1/2 NPT male' }
[[run]]
name = "raw water"`
	item := amend{"[[run]]\nname = \"raw water\"", check}
	for _, c := range []struct {
		why   string
		swaps []amend
		lost  []string
	}{
		{"none", nil, []string{"caution"}},
		{"a check valve before the flush tee", []amend{item, {`"feed", "tee"`, `"feed", "raw-check", "tee"`}}, nil},
		{"behind the tee, before the pump", []amend{item, {`"tee", "pump"`, `"tee", "raw-check", "pump"`}}, []string{"caution"}},
	} {
		t.Run(c.why, func(t *testing.T) {
			require.Equal(t, c.lost, severities(found(t, changed(t, flushRunsToSea.Example(flushRunsToSea.Wrong), c.swaps...))["flush-runs-to-sea"]))
		})
	}
}
