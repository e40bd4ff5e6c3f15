package rule

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

// The hose that is asked for is wide enough: what it advises is not found again. By hand,
// 9 L/min at 0.9 m/s is 14.6 mm.
func TestSuctionAdviceSuffices(t *testing.T) {
	list := found(t, suctionTooFast.Wrong)["suction-too-fast"]
	require.Len(t, list, 1)
	require.Contains(t, list[0].Remedy, "15 mm")
	wider := strings.ReplaceAll(suctionTooFast.Wrong, "10 mm", "15 mm")
	require.Empty(t, found(t, wider)["suction-too-fast"])
	require.NotEmpty(t, found(t, strings.ReplaceAll(suctionTooFast.Wrong, "10 mm", "14 mm"))["suction-too-fast"])
}

// Batteries are judged, of 48 V too; mains and engines are not.
func TestSupplyVoltages(t *testing.T) {
	for volts, weak := range map[string]bool{"12 V": true, "24 V": true, "32 V": true, "48 V": false, "230 V": false} {
		// 56 bar x 19 L/min / 600 / 0.6 is 2956 W: 123 A at 24 V, 92 A at 32 V, 62 A at 48 V
		text := strings.ReplaceAll(line, `flow = "9 L/min"`, `flow = "19 L/min"`)
		list := found(t, strings.Replace(text, `pressure = "56 bar"`, "pressure = \"56 bar\"\nsupply = \""+volts+"\"", 1))["supply-too-weak"]
		require.Equal(t, weak, len(list) == 1, volts)
	}
	// 20 times the flow: at 110 V, 500 A, and nobody draws that from batteries
	text := strings.ReplaceAll(line, `flow = "9 L/min"`, `flow = "360 L/min"`)
	require.Empty(t, found(t, strings.Replace(text, `pressure = "56 bar"`, "pressure = \"56 bar\"\nsupply = \"110 V\"", 1))["supply-too-weak"])
}

// warmLine is a line where it is 80 C, up to what the pump is made of and the path.
const warmLine = `
[duty]
pressure = "56 bar"
space = "80 C"
[[item]]
id = "sea"
kind = "sea"
material = "PVC"
[[item]]
id = "pipe"
kind = "nipple"
material = "PVC"
ports = { a = '1/2 NPT male plastic', b = '1/2 NPT male plastic' }
rated = "16 bar"
[[item]]
id = "pump"
kind = "plunger pump"
material = "%s"
[[item]]
id = "throttle"
kind = "brine throttle"
[[item]]
id = "out"
kind = "overboard"
material = "rubber"
[[run]]
name = "line"
path = [%s]
`

// The boat's own parts are not spoken of, and rubber is, as what heat softens.
func TestWarmParts(t *testing.T) {
	list := found(t, fmt.Sprintf(warmLine, "rubber", `"sea", "pump", "throttle", "out"`))["part-too-warm"]
	require.Equal(t, []string{"note"}, severities(list), "the sea of PVC and the outlet of rubber are the boat's")
	require.Contains(t, list[0].Reason, "pump")
	require.NotContains(t, list[0].Reason, "out")
}

// A surge on parts of which nothing says what they hold is not a finding of this rule.
func TestSurgeOnUnratedParts(t *testing.T) {
	text := changed(t, valveShutsFast.Wrong,
		amend{"of = \"stock\"\nlength = \"6 m\"", "bore = \"10 mm\"\nlength = \"6 m\"\nends = ['1/2 NPT male', '1/2 NPT male']"},
		amend{"rated = \"10 bar\"\nports = { in = '10 mm barb'", "ports = { in = '1/2 NPT female'"})
	require.NotEmpty(t, found(t, text)["rating-unknown"], "nothing is known of them")
	require.Empty(t, found(t, text)["valve-shuts-fast"])
}

// Tube that is known by its outside only is not judged by its speed.
func TestSuctionWithoutABore(t *testing.T) {
	text := changed(t, suctionTooFast.Wrong, amend{"bore = \"10 mm\"", "outside = \"10 mm\""}, amend{"10 mm barb", "10 mm push-in"})
	require.Empty(t, found(t, text)["suction-too-fast"])
}

// The finding points to each pump that draws the current.
func TestSupplyNamesEachPump(t *testing.T) {
	list := found(t, fmt.Sprintf(pair, "12 V", "19 mm", "19 mm", "19 mm", "12 L/min"))["supply-too-weak"]
	require.Len(t, list, 1)
	require.Equal(t, "pump/one and 1 more", list[0].At())
	require.Len(t, list[0].Related, 1)
	require.Greater(t, list[0].Related[0].Line, list[0].Place.Line, "pump/two stands in a later run")
}
