package build

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// The quick look passes over no text in which a voltage is found.
func TestTheQuickLookMissesNoVoltage(t *testing.T) {
	piece := rapid.SampledFrom([]string{"12", "24", "/", " ", "\t", "-", "V", "v", "volts", "DC", "AC", "belt", "V-belt", "engine", "engine room", "2 plungers", ",", ".", "pump", "é", "valve"})
	rapid.Check(t, func(t *rapid.T) {
		text := strings.Join(rapid.SliceOfN(piece, 0, 8).Draw(t, "pieces"), rapid.SampledFrom([]string{"", " "}).Draw(t, "between"))
		if volts.MatchString(notADrive.ReplaceAllString(text, "")) {
			require.True(t, mayNameVolts(text), "%q", text)
		}
	})
	for _, text := range []string{"24 V", "pump, 12V DC", "12/24 volts"} { // whatever was drawn above
		require.True(t, volts.MatchString(text), text)
		require.True(t, mayNameVolts(text), text)
	}
	require.False(t, mayNameVolts("plunger pump, 316, 3/8 in ports, valves of 2 sorts"))
}
