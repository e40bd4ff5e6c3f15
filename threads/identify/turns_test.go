package identify

import (
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"handtight/threads"
	"handtight/threads/internal/endtest"
)

func readings(t testing.TB, words ...string) []threads.End {
	var out []threads.End
	for _, w := range words {
		out = append(out, endtest.EndOf(t, w))
	}
	return out
}

// What a fitter concludes from turns by hand, written before it was run: the hand-tight
// turns of ASME B1.20.1 and ISO 7-1 at their tolerances, half a turn of counting.
func TestByTurns(t *testing.T) {
	quarter := readings(t, "NPT 1/4 male", "R 1/4 male", "G 1/4 male")
	for _, c := range []struct {
		why    string
		a, b   []threads.End
		turns  threads.Turns
		first  string
		p      [2]float64
		others float64 // the most that any other may keep
	}{
		{"four and a half turns in 1/4 NPT is NPT", quarter, readings(t, "NPT 1/4 female"), 4.5, "1/4-18 NPT", [2]float64{0.85, 1}, 0.1},
		{"one and a half is no NPT", quarter, readings(t, "NPT 1/4 female"), 1.5, "G 1/4", [2]float64{0.4, 0.8}, 0.5},
		{"five in G 1/2: R before NPT", readings(t, "NPT 1/2 male", "R 1/2 male"), readings(t, "G 1/2 female"), 5, "R 1/2", [2]float64{0.6, 0.85}, 0.4},
		{"one and a half in G 1/2: NPT", readings(t, "NPT 1/2 male", "R 1/2 male"), readings(t, "G 1/2 female"), 1.5, "1/2-14 NPT", [2]float64{0.95, 1}, 0.05},
	} {
		t.Run(c.why, func(t *testing.T) {
			felt := ByTurns(c.a, c.b, c.turns)
			require.False(t, felt.NothingFits())
			require.Equal(t, c.first, felt.Pairs[0].Mating.A.Form.Designation)
			require.GreaterOrEqual(t, felt.Pairs[0].Probability, c.p[0])
			require.LessOrEqual(t, felt.Pairs[0].Probability, c.p[1])
			for _, p := range felt.Pairs[1:] {
				require.LessOrEqual(t, p.Probability, c.others)
			}
		})
	}
	same := ByTurns(readings(t, "NPT 3/4 male", "R 3/4 male"), readings(t, "Rc 3/4 female"), 5)
	require.False(t, same.Decides, "five turns of 3/4 in Rc tell nothing: %.2f", same.Pairs[0].Probability)
	far := ByTurns(readings(t, "NPT 1/4 male"), readings(t, "NPT 1/4 female"), 12)
	require.True(t, far.NothingFits(), "twelve turns are of no 1/4 taper: worn, or cut wrong")
	few := ByTurns(quarter, readings(t, "NPT 1/4 female"), 1.5)
	worst, ok := few.Worst()
	require.True(t, ok)
	require.False(t, worst.Verdict.Holds())
}

// In mind: a size said of a part without a mark stands for every pipe thread of it.
func TestInMind(t *testing.T) {
	var names []string
	for _, e := range InMind(readings(t, "NPT 1/2 male")) {
		names = append(names, e.String())
	}
	require.Equal(t, []string{"1/2-14 NPT male", "G 1/2 male", "R 1/2 male"}, names)
	require.Len(t, InMind(readings(t, "JIC -6 male")), 1, "a flare is no pipe thread")
	require.Len(t, InMind(readings(t, "Rc 1/2 female")), 4)
}

// Whatever was counted, the probabilities sum to 1 and lie between 0 and 1.
func TestFeltIsAProbability(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		draw := func(name string, sex threads.Sex) []threads.End {
			var out []threads.End
			for range rapid.IntRange(1, 3).Draw(t, name) {
				f := rapid.SampledFrom(threads.Forms(rapid.SampledFrom([]threads.Family{threads.NPT, threads.G, threads.NPSM, threads.M, threads.JIC}).Draw(t, "family"))).Draw(t, "form")
				out = append(out, threads.Threaded(f, sex))
			}
			return out
		}
		felt := ByTurns(draw("a", threads.Male), draw("b", threads.Female), threads.Turns(rapid.Float64Range(0, 15).Draw(t, "turns")))
		sum := 0.0
		for _, p := range felt.Pairs {
			if p.Probability < 0 || p.Probability > 1 {
				t.Fatalf("%g", p.Probability)
			}
			sum += p.Probability
		}
		if felt.None < 0 || felt.None > 1 || (sum < 1-1e-9 || sum > 1+1e-9) && felt.None < 1 {
			t.Fatalf("none %g, sum %g", felt.None, sum)
		}
	})
}
