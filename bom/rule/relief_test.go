package rule

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

// fork is a second relief of 4 L/min beside the first of the line.
var fork = []amend{
	{`"tee.branch", "relief"`, `"tee.branch", "fork", "relief"`},
	{"[[run]]\nname = \"suction\"", `[[item]]
id = "relief-2"
kind = "relief valve"
set = "65 bar"
flow = "4 L/min"
rated = "100 bar"
ports = { in = '3/8 NPT male', out = '3/8 NPT female' }
[[item]]
id = "fork"
kind = "tee"
rated = "200 bar"
ports = { a = '3/8 NPT male', b = '3/8 NPT female', branch = '3/8 NPT female' }
[[run]]
name = "relief 2"
path = ["fork.branch", "relief-2", "relief-out/2"]
[[run]]
name = "suction"`},
}

// What a relief must pass is judged by what is said: enough is enough to the last litre,
// reliefs pass together, and of pumps those count whose flow is known.
func TestReliefCapacity(t *testing.T) {
	const relief, pump = "flow = \"10 L/min\"\n", "flow = \"9 L/min\"\n"
	second := amend{"[[run]]\nname = \"suction\"", `[[item]]
id = "pump-2"
kind = "plunger pump"
ports = { in = '1/2 NPT female', out = '3/8 NPT female' }
rated = "100 bar"
[[item]]
id = "join"
kind = "tee"
rated = "200 bar"
ports = { a = '3/8 NPT male', b = '3/8 NPT female', branch = '3/8 NPT male' }
[[run]]
name = "second pump"
path = ["sea/2", "pump-2", "join.branch"]
[[run]]
name = "suction"`}
	beside := []amend{second, {`["pump", "tee"`, `["pump", "join", "tee"`}}
	for _, c := range []struct {
		why   string
		swaps []amend
		want  []string
		says  string
	}{
		{"10 L/min for a pump of 8", nil, nil, ""},
		{"8 for a pump of 8", []amend{{relief, pump}}, nil, ""},
		{"7.9 for a pump of 8", []amend{{relief, "flow = \"7.9 L/min\"\n"}}, []string{"stop"}, "relief passes 7.9 L/min, and pump delivers 9 L/min"},
		{"5 and 4 for a pump of 8", append(fork, amend{relief, "flow = \"5 L/min\"\n"}), nil, ""},
		{"3 and 4 for a pump of 8", append(fork, amend{relief, "flow = \"3 L/min\"\n"}), []string{"stop"}, "together pass 7 L/min"},
		{"8 and one of which nothing is said, for a pump of 8", append(fork, amend{relief, pump}, amend{"flow = \"4 L/min\"\n", ""}), nil, ""},
		{"nothing said of the relief", []amend{{relief, ""}}, []string{"note"}, "nothing says what flow relief passes"},
		{"nothing said of the pump", []amend{{pump, ""}}, nil, ""},
		{"nothing said of a second pump, and the relief passes what the first delivers", beside, nil, ""},
		{"nothing said of a second pump, and the first alone is too much", append(beside, amend{relief, "flow = \"7 L/min\"\n"}), []string{"stop"}, "passes 7 L/min"},
	} {
		t.Run(c.why, func(t *testing.T) {
			list := found(t, changed(t, line, c.swaps...))["relief-too-small"]
			require.Equal(t, c.want, severities(list))
			for _, f := range list {
				require.Contains(t, f.Reason, c.says)
			}
		})
	}
}

// A relief behind something that shuts is cut off, and not missing.
func TestReliefBehindAValveIsNotMissing(t *testing.T) {
	got := found(t, changed(t, line, amend{`"tee.branch", "relief"`, `"tee.branch", "stop-valve", "relief"`},
		amend{"[[run]]\nname = \"suction\"", "[[item]]\nid = \"stop-valve\"\nkind = \"shut-off valve\"\nrated = \"100 bar\"\nports = { in = '3/8 NPT male', out = '3/8 NPT female' }\n[[run]]\nname = \"suction\""}))
	require.NotEmpty(t, got["relief-cut-off"])
	require.Empty(t, got["relief-missing"])
}

// Where a relief's jet goes, and whose water it is.
func TestReliefDischarge(t *testing.T) {
	const tank, drain = "kind = \"tank\"", "kind = \"drain\""
	inside := func(kind string) amend {
		return amend{"id = \"relief-out\"\nkind = \"overboard\"", "id = \"relief-out\"\n" + kind}
	}
	left := func(port string) amend { return amend{"[duty]", "left_open = [\"" + port + "\"]\n[duty]"} }
	off := amend{`"tee.branch", "relief", "relief-out"]`, `"tee.branch", "relief.in"]`}
	for _, c := range []struct {
		why   string
		swaps []amend
		says  string // nothing: none is found
	}{
		{"overboard", nil, ""},
		{"a tank", []amend{inside(tank)}, "relief discharges into relief-out (tank): the pump's whole flow"},
		{"a drain", []amend{inside(drain)}, "relief discharges into relief-out (drain): the pump's whole flow"},
		{"a drain, behind a valve from the pump", []amend{inside(drain), {`"tee.branch", "relief"`, `"tee.branch", "stop-valve", "relief"`},
			{"[[run]]\nname = \"suction\"", "[[item]]\nid = \"stop-valve\"\nkind = \"shut-off valve\"\n[[run]]\nname = \"suction\""}},
			"the pump's whole flow"},
		{"a drain, of a relief that stands on the suction", []amend{inside(drain), {`"tee.branch", "relief"`, `"suction-tee.branch", "relief"`}, {`"filter", "pump"]`, `"filter", "suction-tee", "pump"]`},
			{"[[run]]\nname = \"suction\"", "[[item]]\nid = \"suction-tee\"\nkind = \"tee\"\n[[run]]\nname = \"suction\""}},
			"relief discharges into relief-out (drain): "},
		{"back to the pump's inlet, behind a check valve", []amend{{`"relief", "relief-out"]`, `"relief", "back.branch"]`}, {`"filter", "pump"]`, `"filter", "hold", "back", "pump"]`},
			{"[[run]]\nname = \"suction\"", "[[item]]\nid = \"hold\"\nkind = \"check valve\"\n[[item]]\nid = \"back\"\nkind = \"tee\"\n[[run]]\nname = \"suction\""}}, "the same water goes round and heats"},
		{"left open on purpose", []amend{off, left("relief.out")}, "relief.out is left open"},
		{"open, and nobody said so: that is another finding", []amend{off}, ""},
		{"open, and another port is left open on purpose", []amend{off, left("relief.in"), {`"tee.branch", "relief.in"]`, `"tee.branch", "plug/relief"]`}}, ""},
	} {
		t.Run(c.why, func(t *testing.T) {
			text := changed(t, line, c.swaps...)
			list := found(t, text)["relief-discharge"]
			if c.says == "" {
				require.Empty(t, list)
				return
			}
			want := "stop" // the pump's whole flow, at its pressure, into the boat
			if strings.Contains(text, "suction-tee") {
				want = "caution"
			}
			if strings.Contains(c.says, "heats") { // that is where it should go
				want = "note"
				require.Contains(t, list[0].Remedy, "stop the pump within minutes")
			}
			require.Equal(t, []string{want}, severities(list))
			require.Contains(t, list[0].Reason, c.says)
			if strings.Contains(text, "suction-tee") {
				require.NotContains(t, list[0].Reason, "whole flow", "what stands before a pump is not what it delivers")
			}
		})
	}
}

// The house's own relief may run to a drain.
func TestHouseReliefMayRunToADrain(t *testing.T) {
	const house = `[[item]]
id = "house"
kind = "house supply"
pressure = "3 bar"
[[item]]
id = "relief"
kind = "relief valve"
set = "6 bar"
[[item]]
id = "bilge"
kind = "drain"
[[run]]
name = "house"
path = ["house", "relief", "bilge"]
`
	require.Empty(t, found(t, house)["relief-discharge"])
}

// Pumps that share one relief and not another: two pumps of 9 L/min, 2 L/min at the first
// alone and 8 behind its check valve. Everything shut, 16 L/min come and 10 can leave.
func TestReliefSharedByHalf(t *testing.T) {
	const more = `[[item]]
id = "half"
kind = "relief valve"
set = "65 bar"
flow = "2 L/min"
[[item]]
id = "own"
kind = "tee"
[[item]]
id = "hold"
kind = "check valve"
[[item]]
id = "join"
kind = "tee"
[[run]]
name = "second pump"
path = ["sea/2", "pump/2", "join.branch"]
[[run]]
name = "own relief"
path = ["own.branch", "half", "relief-out/2"]
[[run]]
name = "suction"`
	text := changed(t, line, amend{"[[run]]\nname = \"suction\"", more}, amend{`["pump", "tee"`, `["pump", "own", "hold", "join", "tee"`},
		amend{`flow = "10 L/min"`, `flow = "9 L/min"`})
	list := found(t, text)["relief-too-small"]
	require.Equal(t, []string{"stop"}, severities(list))
}

// A relief on the product line passes product, and none of the pump's sea water.
func TestReliefOfTheProduct(t *testing.T) {
	const text = `
[duty]
pressure = "56 bar"
[[item]]
id = "sea"
kind = "sea"
[[item]]
id = "pump"
kind = "plunger pump"
[[item]]
id = "vessel"
kind = "pressure vessel"
[[item]]
id = "throttle"
kind = "brine throttle"
[[item]]
id = "out"
kind = "overboard"
[[item]]
id = "tee"
kind = "tee"
[[item]]
id = "relief"
kind = "relief valve"
set = "6 bar"
[[item]]
id = "tank"
kind = "tank"
[[run]]
name = "sea"
path = ["sea", "pump", "vessel.feed"]
[[run]]
name = "brine"
path = ["vessel.brine", "throttle", "out"]
[[run]]
name = "product"
path = ["vessel.product", "tee", "tank"]
[[run]]
name = "product relief"
path = ["tee.branch", "relief", "tank/relief"]
`
	for _, f := range found(t, text)["relief-discharge"] {
		require.NotContains(t, f.Reason, "sea water")
		require.NotContains(t, f.Reason, "whole flow")
	}
}
