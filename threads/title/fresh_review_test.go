package title

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

// What a review of the newest rules found: words that look like those of a rule and are not. The answers are a fitter's.
func TestWordsThatOnlyLookLikeARules(t *testing.T) {
	for text, want := range map[string]string{
		"Tap connector fits 3/4 BSP M x 15 mm compression":   "BSP 3/4 male?; COMP 15 mm",
		"Hose tail fits 1/2 BSP F x 12 mm":                   "BSP 1/2 female?; BARB 12 mm",
		"Manifold 3/4 NPT F for 4 outlets 1/2 NPT M":         "NPT 3/4 female" + strings.Repeat("; NPT 1/2 male", 4),
		"Elbow for gauge port 1/4 NPT M x 1/4 BSP F":         "NPT 1/4 male; BSP 1/4 female?",
		"Tee 22 mm compression for A/C":                      "COMP 22 mm; COMP 22 mm; COMP 22 mm",
		"Tee 1/2 NPT F x F x 0.25 F":                         "NPT 1/2 female; NPT 1/2 female; NPT 1/4 female",
		"JIC 8 female x 1/2 barb, spanner size 24":           "JIC -8 female; BARB 1/2 in",
		"Adaptor JIC 6 male x 3/8 BSPP male, dash 6":         "JIC -6 male; G 3/8 male",
		"Plug 1/4 NPT male for sensor port":                  "NPT 1/4 male",
		"600 psi at 100 F, 150 psi at 350 F valve 1/2 NPT F": "NPT 1/2 female; NPT 1/2 female",
	} {
		require.Equal(t, want, briefAsked(Read(text).Ends), text)
	}
	for text, want := range map[string]string{
		"boost pump 12V, outlet 1/2 MNPT (inlet - check when it shows up)":                            "NPT 1/2 male",
		"Pump outlet 3/8 NPT F, inlet 1/2 NPT F":                                                      "NPT 3/8 female; NPT 1/2 female",
		"Seacock, bronze, taper plug type, 3/4in BSP female one side, 3/4in hosetail the other":       "BSP 3/4 female?; BARB 3/4 in",
		"FRP Membrane Housing, feed and brine port 1/2 NPT female, two permeate ports 1/4 NPT female": "NPT 1/2 female; NPT 1/2 female; NPT 1/4 female; NPT 1/4 female",
	} {
		require.Equal(t, want, briefAsked(Read(text).Ends), text)
	}
	for _, text := range []string{"photo for illustration only elbow 1/2 NPT F", "Raccord pas du gaz 3/8 M", "elbow 1/2 NPT F, not including gasket", "elbow 1/2 NPT F sold only in pairs"} {
		require.Empty(t, Read(text).Limits, text)
	}
	require.False(t, Read("Flow meter L/h 1/2 BSPP male").Ends[0].Candidates[0].Left, "litres an hour are no left hand")
	hot := Read("600 psi at 100 F, 150 psi at 350 F valve 1/2 NPT F")
	require.InDelta(t, 176.7, hot.Temperature.Celsius(), 0.1, "the lower pressure holds at the higher temperature")
	require.False(t, Read("Reducer 20 to 25 F").HasTemperature)
	require.False(t, Read("Copper elbow 16 bar 22C").HasTemperature)
	require.Equal(t, "brass", Read("Elbow 1/2 NPT M x F without brass nut").Material)
	for _, text := range []string{"G 3/4 IG burst/,x 2 port solder(x 2 valve", "passend für G 3/4 IG kolburst/,x 2 port lutowanych(x 2patteriventtiili"} {
		require.NotPanics(t, func() { _, _ = ReadEnd(text) }, text)
	}
}
