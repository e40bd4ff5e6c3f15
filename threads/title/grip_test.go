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
