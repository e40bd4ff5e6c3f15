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
