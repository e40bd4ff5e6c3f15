package title

import (
	"testing"

	"github.com/stretchr/testify/require"
)

// A hose tail with one size in millimetres behind its x has that of its hose; the length of a
// nipple, or one beside the hose's size, stays a length. Common practice.
func TestTheOneSizeOfATailIsItsHoses(t *testing.T) {
	for text, want := range map[string]string{
		`Schlauchtülle G 3/4" AG x 19 mm lang, Bronze`:        "G 3/4 male; 19 mm barb long",
		`Hose tail 1/2 NPT male x 13 mm long, bronze`:         "1/2-14 NPT male; 13 mm barb long",
		`Hose tail 1/2 NPT male x 13 mm hose, 30 mm long`:     "1/2-14 NPT male; 13 mm barb",
		`Hose tail 1/2 NPT male x 60 mm long, for 13 mm hose`: "1/2-14 NPT male; 13 mm barb",
	} {
		got := ""
		for i, e := range Read(text).Ends {
			require.NotEmpty(t, e.Candidates, text)
			if i > 0 {
				got += "; "
			}
			got += e.Candidates[0].String()
		}
		require.Equal(t, want, got, text)
	}
}

// As many ends as the part has, before an x beside a word for an end; a length in metres in
// capitals; swivels and valves as a counter shortens them. Common practice.
func TestCountedEndsAndShortWords(t *testing.T) {
	for text, want := range map[string]string{
		`Seewasserfilter Bronze, Tüllen 2 x 25 mm`:            "25 mm barb; 25 mm barb",
		`Dreiwegeventil POM, 3 x Tülle 10 mm`:                 "10 mm barb; 10 mm barb; 10 mm barb",
		`HOSE ASSY 100R8-06 0.9M JIC 9/16-18 FSWVL BOTH ENDS`: "9/16-18 JIC -6 female swivel; 9/16-18 JIC -6 female swivel",
		`CHECK VLV BRONZE 1/2 MNPT X 1/2 MNPT`:                "1/2-14 NPT male; 1/2-14 NPT male",
	} {
		got := ""
		for i, e := range Read(text).Ends {
			require.NotEmpty(t, e.Candidates, text)
			if i > 0 {
				got += "; "
			}
			got += e.Candidates[0].String()
		}
		require.Equal(t, want, got, text)
	}
	require.Equal(t, "check valve", Read(`CHECK VLV BRONZE 1/2 MNPT X 1/2 MNPT`).Kind)
}
