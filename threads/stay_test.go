package threads

import (
	"testing"

	"github.com/stretchr/testify/require"

	"handtight/pressure/quantity"
)

// "May I leave it?" is answered for every verdict, and below the waterline only a
// proper joint may stay.
func TestMayStay(t *testing.T) {
	for v := Seals; v <= SameSex; v++ {
		m := Mating{Verdict: v, Limit: 10 * quantity.Bar, HasLimit: v == LowPressureOnly}
		answer := m.MayStay()
		require.Regexp(t, `^(Yes|Only|No)\b.*\.$`, answer, v)
		require.Equal(t, v.Holds(), answer[:3] == "Yes", v)
	}
	m := Mating{Verdict: LowPressureOnly, Limit: 3 * quantity.Bar, HasLimit: true}
	require.Contains(t, m.MayStay(), "up to 3 bar")
	require.Contains(t, m.MayStay(), "never below the waterline")
}
