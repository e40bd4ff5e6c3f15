package title

import (
	"testing"

	"github.com/stretchr/testify/require"

	"handtight/threads"
)

// The thread of a cone end, said beside its tube, repeats it: that is said, and not that no
// end has it. Another thread beside it would be a second end, which is refused.
func TestAThreadThatRepeatsItsCone(t *testing.T) {
	for _, text := range []string{"M14x1.5 male 24 cone 8L", "8L M14x1.5 male", "M22x1.5 15L male"} {
		read, err := ReadEnd(text)
		require.NoError(t, err, text)
		for _, n := range read.NotUsed {
			require.Equal(t, threads.SaysNothingNew, n.Why, "%s: %s", text, n.Words)
		}
	}
	_, err := ReadEnd("M16x1.5 male 24 cone 8L")
	require.ErrorContains(t, err, "2 ends")
}

// A whole number and a fraction joined by a sign are one size, and DN-15 is a bore.
// common practice: the first is a habit of British shops.
func TestJoinedFigures(t *testing.T) {
	for text, want := range map[string]string{
		`Elbow 1 & 1/4" NPT F x F 316`: "1 1/4-11.5 NPT female", `elbow 1&1/4 BSPT female`: "Rc 1 1/4 female", `tee 1 + 1/2 NPT female`: "1 1/2-11.5 NPT female",
		`nipple 1" & 1/2" NPT male`: "1-11.5 NPT male", `шаровой кран ДУ-15 BSPP female`: "G 1/2 female", `ball valve DN-15 BSPP female`: "G 1/2 female",
	} {
		read := Read(text)
		require.NotEmpty(t, read.Ends, text)
		require.Len(t, read.Ends[0].Candidates, 1, text)
		require.Equal(t, want, read.Ends[0].Candidates[0].String(), text)
	}
}
