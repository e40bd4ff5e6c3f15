package identify

import (
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"handtight/threads"
	"handtight/threads/internal/endtest"
)

func matingOf(t testing.TB, a, b string) threads.Mating {
	return threads.Mate(endtest.EndOf(t, a), endtest.EndOf(t, b))
}

// What is felt of one joint, by what it does: one that its threads stop seems to run to its face once in twenty, one
// that runs free is felt to nine times in ten, and one that cannot start was forced once in a hundred.
// Judgements of turns.go, told in whole cases.
func TestWhatIsFeltOfAJoint(t *testing.T) {
	free, stops := matingOf(t, "G 1/2 male", "G 1/2 female"), matingOf(t, "NPT 1/2 male", "NPT 1/2 female")
	wedged, same := matingOf(t, "G 1 male", "NPT 1 female"), matingOf(t, "G 1/2 male", "G 1/2 male")
	require.Equal(t, threads.WillNotStart, wedged.Verdict)
	require.Equal(t, threads.SameSex, same.Verdict)
	face := Turned{Face: true, Known: true}
	require.InDelta(t, 18, FeltDensity(&free, face)/FeltDensity(&stops, face), 1e-9, "nine in ten against one in twenty")
	require.InDelta(t, 0.9, FeltDensity(&free, face), 1e-9)
	require.InDelta(t, 1.0/2000, FeltDensity(&wedged, face), 1e-9, "forced, and felt to its face")
	require.InDelta(t, 1.0/2000, FeltDensity(&same, face), 1e-9)
	require.Zero(t, FeltDensity(&threads.Mating{}, face), "no joint")
	require.Zero(t, TurnsDensity(&threads.Mating{}, 3))
	// turns of a joint that runs free say nothing: any of 15 is as likely
	require.InDelta(t, 1.0/15, TurnsDensity(&free, 2), 1e-9)
	require.Equal(t, TurnsDensity(&free, 2), TurnsDensity(&free, 12))
	require.InDelta(t, TurnsDensity(&free, 2)/100, TurnsDensity(&same, 2), 1e-12, "a hundredth of that")
}

// Turns are likeliest in the middle of what the tolerances allow, and ever less likely away from it.
func TestTurnsFallOffFromTheMiddle(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		pair := rapid.SampledFrom([][2]string{{"NPT 1/4 male", "NPT 1/4 female"}, {"R 1/2 male", "Rc 1/2 female"}, {"NPT 3/4 male", "G 3/4 female"}, {"R 1/4 male", "NPT 1/4 female"}}).Draw(t, "pair")
		m := threads.Mate(endOf(pair[0]), endOf(pair[1]))
		middle := (float64(m.Hand.Loosest) + float64(m.Hand.Tightest)) / 2
		near := rapid.Float64Range(0, 4).Draw(t, "near")
		far := near + rapid.Float64Range(0.01, 4).Draw(t, "further")
		for _, side := range []float64{-1, 1} {
			require.Greater(t, TurnsDensity(&m, threads.Turns(middle+side*near)), TurnsDensity(&m, threads.Turns(middle+side*far)))
		}
		require.InDelta(t, TurnsDensity(&m, threads.Turns(middle-near)), TurnsDensity(&m, threads.Turns(middle+near)), 1e-12, "as likely short as over")
	})
}

func endOf(words string) threads.End { return endtest.EndOf(&testing.T{}, words) }

// A wider tolerance spreads the turns: 1/4 NPT in its own goes 2.1 to 6.1, R 1/4 in 1/4 NPT 1.4 to 3.3
// (the figures are those of TestTurnsFigures of package evidence).
func TestAWiderToleranceSpreadsTheTurns(t *testing.T) {
	wide, narrow := matingOf(t, "NPT 1/4 male", "NPT 1/4 female"), matingOf(t, "R 1/4 male", "NPT 1/4 female")
	require.Greater(t, TurnsDensity(&narrow, 2.35), TurnsDensity(&wide, 4.1), "the peak of the narrow is higher")
	// a normal of sd hypot(4/4, 1/2) has 0.357 at its middle, one of hypot(1.9/4, 1/2) 0.578
	require.InDelta(t, 0.357, TurnsDensity(&wide, 4.1), 0.01)
	require.InDelta(t, 0.578, TurnsDensity(&narrow, 2.35), 0.01)
}

// Which of the ends is named first changes nothing.
func TestTheOrderOfTheEndsDoesNotMatter(t *testing.T) {
	males, females := readings(t, "NPT 1/2 male", "R 1/2 male", "G 1/2 male"), readings(t, "G 1/2 female", "NPT 1/2 female", "Rc 1/2 female")
	for _, turned := range []Turned{{Turns: 2.5, Known: true}, {Turns: 6, Known: true}, {Face: true, Known: true}} {
		one, two := ByFeel(males, females, turned), ByFeel(females, males, turned)
		require.InDelta(t, one.None, two.None, 1e-12)
		for i := range one.Pairs {
			require.InDelta(t, one.Pairs[i].Probability, two.Pairs[i].Probability, 1e-12)
		}
	}
}

// The worst joint that is not excluded: a reading of one in twenty counts, one of less does not.
func TestTheWorstThatIsNotExcluded(t *testing.T) {
	good, bad := matingOf(t, "NPT 1/2 male", "NPT 1/2 female"), matingOf(t, "G 1/2 male", "NPT 1/2 female")
	require.True(t, bad.Verdict.Worse(good.Verdict))
	for _, c := range []struct {
		p     float64
		worst threads.Verdict
	}{{0.05, bad.Verdict}, {0.049, good.Verdict}} {
		for _, list := range [][]Pair{{{good, 1 - c.p}, {bad, c.p}}, {{bad, c.p}, {good, 1 - c.p}}} {
			felt := Felt{Pairs: list}
			worst, ok := felt.Worst()
			require.True(t, ok)
			require.Equal(t, c.worst, worst.Verdict, "%g", c.p)
		}
	}
	_, ok := (&Felt{}).Worst()
	require.False(t, ok, "no pair has no worst")
}

// Two thirds decide; a joint of which nothing is possible is none.
func TestWhatDecides(t *testing.T) {
	none := ByTurns(nil, readings(t, "G 1/2 female"), 3)
	require.True(t, none.NothingFits())
	require.False(t, none.Decides)
	one := ByTurns(readings(t, "NPT 1/2 male"), readings(t, "NPT 1/2 female"), 4)
	require.True(t, one.Decides, "one reading alone")
	require.InDelta(t, 1, one.Pairs[0].Probability, 1e-12)
	// In a G, a taper stops within a few turns: twelve turns are not of a taper, and face is of a parallel
	face := ByFeel(readings(t, "R 1/2 male", "G 1/2 male"), readings(t, "G 1/2 female"), Turned{Face: true, Known: true})
	require.True(t, face.Decides)
	require.Equal(t, "G 1/2", face.Pairs[0].Mating.A.Form.Designation)
	require.Less(t, Stranger(Turned{Face: true}, 0.9), Stranger(Turned{Face: true}, 0.05), "what explains it better leaves less to a stranger")
	// one in ten is of no table; such a one runs to its face once in twenty: 0.005 against 0.9 times 0.9
	require.InDelta(t, 0.005/(0.005+0.81), Stranger(Turned{Face: true}, 0.9), 1e-9)
	require.InDelta(t, 0.5, Stranger(Turned{}, 0.1/15/0.9), 1e-9, "even where the readings give a ninth of a stranger's density")
}

// A size that the other pipe threads have not stands for itself alone (ISO 228-1 has G 5/8, ISO 7-1 and ASME B1.20.1 have not);
// what else is said of the end goes with each.
func TestInMindOfASizeOfOne(t *testing.T) {
	require.Len(t, InMind(readings(t, "G 5/8 male")), 1)
	e := endtest.EndOf(t, "NPT 1/2 female")
	e.Swivel, e.Plastic = true, true
	list := InMind([]threads.End{e})
	require.Len(t, list, 4, "NPT, G, Rc and Rp; no R is female")
	for _, x := range list {
		require.True(t, x.Swivel && x.Plastic && x.Sex == threads.Female, x.String())
		require.NotNil(t, x.Form)
	}
	require.Len(t, InMind(readings(t, "NPT 1/2 male", "G 1/2 male")), 3, "none twice")
}
