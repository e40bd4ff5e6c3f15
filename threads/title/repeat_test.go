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
