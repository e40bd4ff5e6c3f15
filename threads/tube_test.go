package threads

import (
	"testing"

	"github.com/stretchr/testify/require"
)

// The limits of fit, 0.6 and 1.5 mm, are judgements of the design, not figures
// of a standard.
func TestTubes(t *testing.T) {
	end := func(f Family, sex Sex, mm Length) End {
		e := End{Family: f, Sex: sex, Diameter: mm}
		if mm > 0 {
			e.Size = mm.String()
		}
		return e
	}
	for _, c := range []struct {
		why     string
		a, b    End
		verdict Verdict
		says    string
	}{
		{"a tail in its bore", end(Barb, 0, 19), end(Bore, 0, 19), SealsWith, "one size"},
		{"3/4 inch is 19.05 mm", end(Barb, 0, 19.05), end(Bore, 0, 19), SealsWith, "one size"},
		{"at the edge of a good fit", end(Barb, 0, 19.6), end(Bore, 0, 19), SealsWith, "one size"},
		{"a poor fit", end(Barb, 0, 20), end(Bore, 0, 19), LowPressureOnly, "1.0 mm"},
		{"just past a good fit", end(Barb, 0, 19.7), end(Bore, 0, 19), LowPressureOnly, "0.7 mm"},
		{"just past a poor one", end(Barb, 0, 20.6), end(Bore, 0, 19), WillNotStart, "1.6 mm"},
		{"just past a poor one, too small", end(Barb, 0, 17.4), end(Bore, 0, 19), Leaks, "1.6 mm"},
		{"a tube by a tenth too large goes in", end(Push, Female, 10), end(Push, Male, 10.09), Seals, "one size"},
		{"by a sixth it does not", end(Push, Female, 10), end(Push, Male, 10.15), WillNotStart, "0.2 mm"},
		{"a poor fit, too small", end(Barb, 0, 18), end(Bore, 0, 19), LowPressureOnly, "1.0 mm"},
		{"too large to go on", end(Barb, 0, 25), end(Bore, 0, 19), WillNotStart, "does not go on"},
		{"too small to clamp", end(Barb, 0, 16), end(Bore, 0, 19), Leaks, "no clamp"},
		{"an unsaid bore is unknown", end(Barb, 0, 0), end(Bore, 0, 19), Leaks, "not known"},
		{"two tails", end(Barb, 0, 19), end(Barb, 0, 19), SameSex, "same half"},
		{"a tail on a thread", end(Barb, 0, 19), endOf(t, "NPT 3/4 female"), WillNotStart, "different sorts"},
		{"a tube in its push-in end", end(Push, Female, 10), end(Push, Male, 10), Seals, "one size"},
		{"3/8 inch in 10 mm", end(Push, Female, 10), end(Push, Male, 9.525), Leaks, "0.5 mm"},
		{"two push-in bodies", end(Push, Female, 10), end(Push, Female, 10), SameSex, "both sockets"},
		{"an olive of another tube", end(Compression, Female, 15), end(Compression, Male, 22), WillNotStart, "7.0 mm"},
		{"ferrules of one size", end(Ferrule, 0, 50.5), end(Ferrule, 0, 50.5), SealsWith, "one size"},
		{"ferrules of two sizes", end(Ferrule, 0, 50.5), end(Ferrule, 0, 64), Leaks, "flanges differ"},
	} {
		t.Run(c.why, func(t *testing.T) {
			m, w := Mate(c.a, c.b), Mate(c.b, c.a)
			require.Equal(t, c.verdict, m.Verdict, m.Reason())
			require.Equal(t, m.Verdict, w.Verdict, "in either order")
			require.Contains(t, m.Reason(), c.says)
			require.Equal(t, m.Verdict == LowPressureOnly, m.HasLimit)
			require.False(t, m.Hand.Known)
			require.Zero(t, m.Depth)
		})
	}
}
