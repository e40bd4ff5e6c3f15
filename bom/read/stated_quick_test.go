package read

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// The quick look passes over no text in which a figure of strength is found.
func TestTheQuickLookMissesNoStrength(t *testing.T) {
	piece := rapid.SampledFrom([]string{"class", "CL", "ſch", "SDR", "pn", "schedule", "Schedule", ".", " ", "\t", "40", "150", "6", "bar", "PSI", "lbs", "\u212APA", "kPa", "MPa", "#", "wog", "100R7", "r2", "100", "hose", "316", "mm", "é", ","})
	rapid.Check(t, func(t *rapid.T) {
		text := strings.Join(rapid.SliceOfN(piece, 0, 7).Draw(t, "pieces"), rapid.SampledFrom([]string{"", " "}).Draw(t, "between"))
		if strengths.MatchString(text) {
			require.True(t, mayState(text), "%q", text)
		}
	})
	for _, text := range []string{"hose 100R7", "PN 16", "150 PSI", "class 150"} { // whatever was drawn above
		require.True(t, strengths.MatchString(text), text)
		require.True(t, mayState(text), text)
	}
	require.False(t, mayState("elbow 3/8 in, 316, to 19 mm hose"))
}

// The quick look at what stands after figures passes over no unit that is found.
func TestTheQuickLookMissesNoUnit(t *testing.T) {
	piece := rapid.SampledFrom([]string{"1", "24", "10.5", ",", ".", " ", "\t", "\u00a0", "V", "volts", "l/min", "L / h", "gph", "kW", "w", "A", "rpm", "1/min", "/min", "micron", "µm", "um", "°C", "C", "F", "mm", "K", "x", "-"})
	rapid.Check(t, func(t *rapid.T) {
		text := strings.Join(rapid.SliceOfN(piece, 0, 8).Draw(t, "pieces"), rapid.SampledFrom([]string{"", " "}).Draw(t, "between"))
		after := afterFigures(text)
		for i := range measures {
			if measures[i].figure.MatchString(text) {
				require.True(t, after.any(measures[i].begins), "%s: %q", measures[i].keys[0], text)
			}
		}
	})
	none := afterFigures("plunger pump, 316, 3/8 in ports, valves of 2 sorts")
	require.False(t, none.any("v"))
	require.True(t, none.any("r/")) // 3/8
}
