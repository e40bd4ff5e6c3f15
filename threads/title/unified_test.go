package title

import (
	"testing"

	"github.com/stretchr/testify/require"
)

// Sizes of flares, O-ring ports and face seals (SAE J514, J1453, J512): by dash, by tube, by thread.
func TestFlaresAndPorts(t *testing.T) {
	readMeantEnds(t, []lineMeant{
		{"a male pipe by dash is its inch size", "-8 MP", "NPT/NPTF 1/2 male"},
		{"SAE alone is a port or a 45 degree flare", "-6 SAE male", "ORB/SAE45 -6 male"},
		{"a dash without a family is asked", "-6 male", "?"},
		{"a JIC by inches is the tube's or the thread's", "3/4 JIC male", "JIC -12|-8 male"},
		{"a 45 degree flare is called by its tube", "3/8 SAE 45 male", "SAE45 -6 male"},
		{"and by its thread where no tube is", "5/8-18 SAE 45 male", "SAE45 -6 male"},
		{"an O-ring on the thread is a port's", "9/16-18 male o-ring", "ORB -6 male o-ring"},
		{"9/16-18 is a flare, a port or a face seal", "9/16-18 male", "JIC/ORB/ORFS/UN -6|-4|9/16-18 male"},
		{"5/16 UNF without its count", "5/16 UNF male", "JIC/ORB/SAE45/UN -2|5/16-24 male"},
		{"a size that JIC has not", "9/16-20 JIC male", "refused"},
	})
	for text, first := range map[string]string{
		"9/16-18 male": "9/16-18 JIC -6 male", "9/16-18 female": "9/16-18 ORB -6 female", "9/16-18 female swivel": "9/16-18 JIC -6 female swivel", "9/16-18 port": "9/16-18 ORB -6",
	} {
		r, err := ReadEnd(text)
		require.NoError(t, err, text)
		require.Equal(t, first, r.Candidates[0].String(), "a female port is mostly an O-ring's, a nut mostly a flare's: %s", text)
	}
}

// Metric threads: a pitch left out is any that fittings have; hundredths; tapers.
func TestMetricThreads(t *testing.T) {
	readMeantEnds(t, []lineMeant{
		{"no pitch: fittings' own, and the coarse (ISO 261: M14 has 2)", "M14 male", "M M14x1.5|M14x1|M14x2 male"},
		{"a taper male", "M10x1 keg male", "MT M10x1 male"},
		{"its female is parallel", "M10x1 keg female", "M M10x1 female"},
		{"a cone's thread names its tube (ISO 8434-1)", "M26x1.5 24 cone male", "24L 18L male"},
		{"two tubes share a thread", "M30x2 24 cone male", "24L/24S 22L|20S male"},
		{"a light and a heavy one of M18x1.5", "M18x1.5 24 cone male", "24L/24S 12L|10S male"},
		{"the series of the code chooses", "DKOL M30x2", "24L 22L female swivel cone-o-ring"},
		{"and the other", "DKOS M30x2", "24S 20S female swivel cone-o-ring"},
		{"without a pitch too", "DKOL M26", "24L 18L female swivel cone-o-ring"},
		{"an O-ring port (ISO 6149-1)", "M18x1.5 ISO 6149 female", "ISO6149 M18x1.5 female"},
	})
	readMeant(t, []lineMeant{
		{"French tapware writes the pitch in hundredths", "Flexible M10x100 M x 3/8 NPT F", "M M10x1 male; NPT 3/8 female"},
		{"75 hundredths", "Flexible M8x75 M x 3/8 NPT F", "M M8x0.75 male; NPT 3/8 female"},
	})
}
