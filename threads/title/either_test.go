package title

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

// One size or the other: the end has the second, the first is named, and which it is is asked.
func TestOneSizeOrTheOther(t *testing.T) {
	for _, row := range []struct{ why, text, ends, asks, named string }{
		{"in English", `Elbow 1/2 or 3/4 NPT female`, "NPT 3/4 female; NPT 3/4 female", "1/2 or 3/4?", "1/2"},
		{"in German", `Winkel 1/2" oder 3/4" NPT IG`, "NPT 3/4 female; NPT 3/4 female", `1/2" or 3/4"?`, `1/2"`},
		{"in Polish", `Kolano 1/2" lub 3/4" NPT GW`, "NPT 3/4 female; NPT 3/4 female", `1/2" or 3/4"?`, `1/2"`},
		{"in Turkish", `Dirsek 1/2" veya 3/4" NPT dişi`, "NPT 3/4 female; NPT 3/4 female", `1/2" or 3/4"?`, `1/2"`},
		{"in Russian", `Угол 1/2" или 3/4" NPT внутренняя`, "NPT 3/4 female; NPT 3/4 female", `1/2" or 3/4"?`, `1/2"`},
		{"of tubes", `Push-in elbow 8 mm or 10 mm`, "PUSH 10 mm; PUSH 10 mm", "8 mm or 10 mm?", "8 mm"},
		{"two pipes a millimetre apart are two names of one, as no fitting joins them", `Push-in elbow 15/16 mm`, "PUSH 16 mm; PUSH 16 mm", "15 or 16 mm?", "15"},
		{"from 10 mm on", `Push-in elbow 10/11 mm`, "PUSH 11 mm; PUSH 11 mm", "10 or 11 mm?", "10"},
	} {
		t.Run(row.why, func(t *testing.T) {
			r := Read(row.text)
			require.Equal(t, row.ends, brief(r.Ends))
			for _, e := range r.Ends {
				require.Contains(t, e.Question, row.asks)
			}
			require.Len(t, r.NotUsed, 1)
			require.Equal(t, row.named, r.NotUsed[0].Words)
			require.Equal(t, "one of two sizes, which is asked", r.NotUsed[0].Why)
		})
	}
}

// What stands between two sizes and is no word for or: two ends.
func TestTwoSizesAreTwoEnds(t *testing.T) {
	readMeanings(t, []meaning{
		{"an x", `Adaptor 1/2 NPT female x 3/4 NPT male`, "NPT 1/2 female; NPT 3/4 male", ""},
		{"two millimetres apart is a reducer", `Push-in coupling 8 mm / 10 mm`, "PUSH 8 mm; PUSH 10 mm", ""},
		{"below 10 mm a millimetre is a size", `Push-in coupling 5 mm / 6 mm`, "PUSH 5 mm; PUSH 6 mm", ""},
		{"9 is below that", `Push-in coupling 9/10 mm`, "PUSH 9 mm; PUSH 10 mm", ""},
		{"a size or another sort of size leaves both", `Elbow 1/2 NPT female or 15 mm compression`, "NPT 1/2 female; COMP 15 mm", ""},
	})
	for _, e := range Read(`Push-in coupling 8 mm / 10 mm`).Ends {
		require.False(t, strings.Contains(e.Question, " or 10"), e.Question)
	}
}
