package rule

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"handtight/bom/finding"
)

// swap replaces one text of a fragment, and fails if it is not there: a test on a
// fragment that was not changed would show nothing.
func swap(t *testing.T, fragment, old, new string) string {
	t.Helper()
	require.Contains(t, fragment, old)
	return strings.Replace(fragment, old, new, 1)
}

// The pressures are those of the right example: 56 bar held by hand, a relief at 65
// bar that stands at 1.1 times that when it passes the whole flow (71.5).
func TestUnderRated(t *testing.T) {
	weak := func(rated string) string {
		return swap(t, underRated.Example(underRated.Right()), "kind = \"brine throttle\"\nmaterial = \"super duplex\"\nrated = \"200 bar\"", "kind = \"brine throttle\"\nmaterial = \"super duplex\"\nrated = \""+rated+"\"")
	}
	for name, row := range map[string]struct {
		fragment       string
		reason, remedy string
	}{
		"too weak in normal running: both figures, and no talk of valves": {
			weak("40 bar"), "sees 56 bar in normal running, up to 71.5 bar with throttle", "Buy it for 71.5 bar or more.",
		},
		"strong enough until a valve is shut: the act is named, and what bounds it may be set lower": {
			weak("70 bar"), "holds 70 bar (data sheet) and sees 71.5 bar: throttle (brine throttle) left shut.", "or set relief to 63 bar or less (a tenth below throttle)",
		},
	} {
		t.Run(name, func(t *testing.T) {
			list := check(t, row.fragment)[underRated.Slug]
			require.Len(t, list, 1)
			require.Equal(t, finding.Stop, list[0].Severity)
			require.Contains(t, list[0].Reason, row.reason)
			require.Contains(t, list[0].Remedy, row.remedy)
		})
	}
	require.Empty(t, found(t, weak("71.5 bar"))[underRated.Slug], "a rating that equals the pressure holds it")
}

// What one act overloads in one segment is one report, at the weakest; what is too
// weak in normal running is one report each.
func TestOneCauseOneReport(t *testing.T) {
	const line = `
[duty]
pressure = "56 bar"
[[item]]
id = "supply"
kind = "house supply"
pressure = "12 bar"
ports = { out = '1/2 NPT female' }
[[item]]
id = "valve"
kind = "flow meter"
rated = "VALVE"
ports = { in = '1/2 NPT male', out = '1/2 NPT female' }
[[item]]
id = "meter"
kind = "flow meter"
rated = "METER"
ports = { in = '1/2 NPT male', out = '1/2 NPT male' }
[[item]]
id = "drain"
kind = "drain"
[[run]]
name = "line"
path = ["supply", "valve", "meter", "drain"]
`
	ratings := func(valve, meter string) string {
		return swap(t, swap(t, line, "VALVE", valve), "METER", meter)
	}
	list := found(t, ratings("10 bar", "8 bar"))[underRated.Slug]
	require.Len(t, list, 2, "each is too weak in normal running, and must be bought for itself")
	require.Empty(t, list[0].Related)

	list = nil
	for _, f := range checkDemo(t, "careless") {
		if f.Slug == underRated.Slug && len(f.Related) > 0 {
			list = append(list, f)
		}
	}
	require.Len(t, list, 1, "the selector shut between its positions is one cause")
	require.Equal(t, "product-elbow and 6 more in product: vessel to selector", list[0].At())
	require.Len(t, list[0].Related, 6)
	require.Contains(t, list[0].Reason, "It overloads as well: probe-tee (6.25 bar), selector (6.25 bar), meter (8 bar)")
}

func TestReliefSetHighRemedy(t *testing.T) {
	high := swap(t, reliefSetHigh.Example(reliefSetHigh.Right()), `set = "65 bar"`, `set = "90 bar"`)
	list := check(t, swap(t, high, `rated = "200 bar"`, `rated = "80 bar"`))[reliefSetHigh.Slug]
	require.Len(t, list, 1)
	require.Contains(t, list[0].Remedy, "Set it to 72 bar or less", "80 bar over 1.1, in whole bar")

	// 57 bar is above the duty of 55, but leaves no tenth above it: the tee must go, and 1.1 times
	// 90 is what then clears the relief
	list = check(t, swap(t, high, `rated = "200 bar"`, `rated = "57 bar"`))[reliefSetHigh.Slug]
	require.Len(t, list, 1)
	require.NotContains(t, list[0].Remedy, "Set it to")
	require.Contains(t, list[0].Remedy, "Buy tee for 99 bar or more")
	require.Empty(t, check(t, swap(t, high, `rated = "200 bar"`, `rated = "99 bar"`))[reliefSetHigh.Slug])
}

// A joint that its washer closes holds 8.6 bar (ASSE 1011: 125 psi), whatever its parts hold; as a
// figure that is carried over from a device with such ends it cautions.
func TestUnderRatedByItsWasher(t *testing.T) {
	house := func(p, tail string) string {
		return `
[[item]]
id = "house"
kind = "house supply"
pressure = "` + p + `"
ports = { out = '3/4 NH male' }
[[item]]
id = "valve"
kind = "shut-off valve"
rated = "16 bar"
ports = { in = '3/4 NH female swivel', out = '` + tail + ` male' }
[[item]]
id = "tank"
kind = "tank"
ports = { in = '` + tail + ` female' }
[[run]]
name = "line"
path = ["house", "valve", "tank"]
`
	}
	list := found(t, house("9 bar", "3/4 NH"))[underRated.Slug]
	require.Len(t, list, 2)
	for _, f := range list {
		require.Equal(t, finding.Caution, f.Severity)
		require.Contains(t, f.Reason, "holds 8.62 bar (what closes it: the flat washer in the coupling")
		require.Equal(t, "Join it by a thread that seals at 9 bar, or keep the pressure there to 8.62 bar.", f.Remedy)
	}
	require.Len(t, found(t, house("9 bar", "3/4 NPT"))[underRated.Slug], 1, "the remedy clears its joint")
	require.Empty(t, found(t, house("8.6 bar", "3/4 NH"))[underRated.Slug])
}
