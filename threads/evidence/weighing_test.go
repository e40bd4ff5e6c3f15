package evidence

import (
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"handtight/pressure/quantity"
	"handtight/threads"
	"handtight/threads/identify"
	"handtight/threads/internal/endtest"
)

func listOf(t testing.TB, words ...string) *Readings {
	r := Even(ends(t, words...).Candidates)
	return &r
}

func pairShare(f Fit, a, b string) float64 {
	p := 0.0
	for _, x := range f.Pairs {
		if x.Mating.A.Form.Designation == a && x.Mating.B.Form.Designation == b {
			p += x.Probability
		}
	}
	return p
}

// A pair that cannot be made up is a hundredth as likely where the joint stands, and as likely as any other on the
// bench; where turns were counted they say it, and it is not said twice. G 1 does not start in 1 NPT.
func TestAStandingJointWasMadeUp(t *testing.T) {
	males, female := listOf(t, "NPT 1 male", "G 1 male"), listOf(t, "NPT 1 female")
	bench := Pairs(males, female, false, identify.Turned{})
	require.InDelta(t, 0.5, pairShare(bench, "G 1", "1-11.5 NPT"), 1e-12, "nothing excludes it on the bench")
	stands := Pairs(males, female, true, identify.Turned{})
	require.InDelta(t, 0.01/1.01, pairShare(stands, "G 1", "1-11.5 NPT"), 1e-12)
	require.True(t, stands.Decides, "without turns nothing is left to decide")
	turned := identify.Turned{Turns: 4, Known: true}
	require.Equal(t, Pairs(males, female, false, turned).Pairs, Pairs(males, female, true, turned).Pairs)
}

// The probabilities of the pairs sum to 1, likeliest first, and none of those that are kept is below a thousandth.
func TestPairsSumToOne(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		draw := func(name string, sex threads.Sex) *Readings {
			var out Readings
			for range rapid.IntRange(1, 4).Draw(t, name) {
				f := rapid.SampledFrom(threads.Forms(rapid.SampledFrom(families).Draw(t, "family"))).Draw(t, "form")
				out.List = append(out.List, Reading{threads.Threaded(f, sex), rapid.SampledFrom([]float64{0.0001, 0.01, 0.2, 1}).Draw(t, "weight")})
			}
			return &out
		}
		a, b := draw("a", threads.Male), draw("b", threads.Female)
		turned := identify.Turned{Known: rapid.Bool().Draw(t, "counted"), Turns: threads.Turns(rapid.Float64Range(0, 8).Draw(t, "turns"))}
		f := Pairs(a, b, rapid.Bool().Draw(t, "standing"), turned)
		sum := 0.0
		for i, p := range f.Pairs {
			sum += p.Probability
			require.GreaterOrEqual(t, p.Probability, faint)
			require.True(t, i == 0 || p.Probability <= f.Pairs[i-1].Probability*(1+1e-9))
		}
		require.InDelta(t, 1, sum, 1e-9)
		if !turned.Known {
			require.Zero(t, f.None, "without turns nothing speaks for a stranger")
		}
	})
}

// Nothing known of an end leaves no pair, and nothing that is excluded.
func TestPairsOfNothing(t *testing.T) {
	none := Pairs(&Readings{}, listOf(t, "G 1/2 female"), true, identify.Turned{})
	require.Empty(t, none.Pairs)
	require.Zero(t, none.None)
	zero := &Readings{List: []Reading{{endtest.EndOf(t, "G 1/2 male"), 0}}}
	gone := Pairs(zero, listOf(t, "G 1/2 female"), true, identify.Turned{})
	require.True(t, gone.NothingFits(), "readings of which none is possible are of no table")
}

// An end whose sex nobody knows is what goes with the other; where neither is known, male in female.
func TestTheSexThatGoesWithTheOther(t *testing.T) {
	open := func(words string) *Readings {
		r := listOf(t, words)
		r.List[0].End.Sex = threads.NoSex
		return r
	}
	for why, c := range map[string]struct {
		a, b *Readings
		want [2]threads.Sex
	}{
		"beside a female": {open("G 1/2 male"), listOf(t, "G 1/2 female"), [2]threads.Sex{threads.Male, threads.Female}},
		"beside a male":   {open("G 1/2 male"), listOf(t, "G 1/2 male"), [2]threads.Sex{threads.Female, threads.Male}},
		"the second":      {listOf(t, "G 1/2 female"), open("G 1/2 male"), [2]threads.Sex{threads.Female, threads.Male}},
		"neither":         {open("G 1/2 male"), open("G 1/2 male"), [2]threads.Sex{threads.Male, threads.Female}},
	} {
		m := Pairs(c.a, c.b, false, identify.Turned{}).Pairs[0].Mating
		require.Equal(t, c.want, [2]threads.Sex{m.A.Sex, m.B.Sex}, why)
	}
}

// A taper on which somebody looked for sealant and found none is as bad as one that leaks: nine in ten. A wrong
// sealant, seen, is no such proof; nor is nothing on a joint that closes without (a dry seal thread).
func TestWhatIsMissing(t *testing.T) {
	at := Site{Worst: 10 * quantity.Bar}
	taper := []Pair{{threads.Mate(endtest.EndOf(t, "NPT 1/2 male"), endtest.EndOf(t, "NPT 1/2 female")), 1, 0}}
	bad := func(h History) float64 { return Believe(taper, h, at).Bad }
	plain := bad(History{})
	require.InDelta(t, 0.05, plain, 1e-9, "one in twenty tapers is bad before anything is known")
	require.Equal(t, plain, bad(History{Sealant: "tape"}))
	require.Equal(t, plain, bad(History{Sealant: "not seen"}))
	// missing: 0.9 bad, 0.1 good which shows nothing with 0.3: 0.9/(0.9+0.03)
	require.InDelta(t, 0.9/0.93, bad(History{Sealant: "none"}), 1e-9)
	// wrong: 0.05 bad, 0.95 good which shows it with 0.3
	require.InDelta(t, 0.05/(0.05+0.95*0.3), bad(History{Sealant: "washer"}), 1e-9)
	dry := []Pair{{threads.Mate(endtest.EndOf(t, "NPTF 1/2 male"), endtest.EndOf(t, "NPTF 1/2 female")), 1, 0}}
	require.Equal(t, Believe(dry, History{}, at).Bad, Believe(dry, History{Sealant: "none"}, at).Bad)
}

// Part of a year counts in part, and years beyond the first count no more: a taper dry for half a year shows what
// the root of a year's chance shows.
func TestPartOfAYear(t *testing.T) {
	at := Site{Worst: 10 * quantity.Bar}
	taper := []Pair{{threads.Mate(endtest.EndOf(t, "NPT 1/2 male"), endtest.EndOf(t, "NPT 1/2 female")), 1, 0}}
	bad := func(years float64) float64 { return Believe(taper, History{DryYears: years}, at).Bad }
	require.Equal(t, bad(1), bad(20))
	require.Less(t, bad(1), bad(0.5))
	require.Less(t, bad(0.5), bad(0))
	// odds of bad: 0.05/0.95 times (0.25/0.90) to the power of the years
	odds := func(p float64) float64 { return p / (1 - p) }
	require.InDelta(t, odds(bad(0))*odds(bad(1)), odds(bad(0.5))*odds(bad(0.5)), 1e-12, "half a year is half way, in odds")
}

// A makeshift joint is judged by where it stands: within its limit and above the waterline it is mostly right.
func TestWhereAMakeshiftStands(t *testing.T) {
	m := threads.Mate(endtest.EndOf(t, "R 1/2 male"), endtest.EndOf(t, "G 1/2 female"))
	require.Equal(t, threads.LowPressureOnly, m.Verdict)
	pairs := []Pair{{m, 1, 0}}
	within, above := Believe(pairs, History{}, Site{Worst: m.Limit}).Bad, Believe(pairs, History{}, Site{Worst: m.Limit + 0.01*quantity.Bar}).Bad
	below := Believe(pairs, History{}, Site{Worst: m.Limit, Below: true}).Bad
	require.Less(t, within, 0.5)
	require.Greater(t, above, 0.5)
	require.Equal(t, above, below, "below the waterline no makeshift is within its limit")
}

// Of an end that nobody can read two joints in five are bad, and its history moves that as of any other.
func TestAnUnreadEnd(t *testing.T) {
	require.InDelta(t, 0.4, Unread(History{}).Bad, 1e-12)
	require.Less(t, Unread(History{Tested: true}).Bad, 0.1)
	require.Greater(t, Unread(History{Wept: true}).Bad, 0.8)
	require.Equal(t, Unread(History{}).Bad, Unread(History{Sealant: "none"}).Bad, "what closes it is not known")
}

// What was measured of one sex is no reading of the other; a sex that the words leave open is the measured one.
func TestTheMeasuredSex(t *testing.T) {
	male := identify.Measured{Sex: threads.Male, Diameter: identify.Gauge(20.9), Pitch: identify.Gauge(1.814)}
	words := ends(t, "G 1/2 male")
	words.Candidates[0].Sex = threads.NoSex
	r := readings(t, Known{Words: words, Measured: male})
	require.False(t, r.Conflict)
	require.Equal(t, threads.Male, r.List[0].End.Sex)
	other := readings(t, Known{Words: ends(t, "G 1/2 female"), Measured: male})
	require.True(t, other.Conflict, "an outside of 20.9 mm is no female")
	for _, x := range other.List {
		require.Equal(t, threads.Male, x.End.Sex)
	}
	said := ends(t, "G 1/2 male")
	said.Sex = threads.Male
	require.NotEmpty(t, readings(t, Known{Words: said, Measured: identify.Measured{Diameter: identify.Gauge(20.9)}}).List, "the words' sex says on which side it was measured")
	tail := readings(t, Known{Words: threads.EndReading{Candidates: []threads.End{{Family: threads.Barb, Size: "19 mm"}}}, Measured: male})
	require.True(t, tail.Conflict, "a thread that was measured is no tail")
}

// What the words say besides the thread is kept when the calliper says another thread.
func TestWhatTheWordsSayBesides(t *testing.T) {
	words := ends(t, "G 3/4 male")
	words.Candidates[0].Plastic, words.Candidates[0].Swivel = true, true
	r := readings(t, Known{Words: words, Measured: identify.Measured{Sex: threads.Male, Diameter: identify.Gauge(24.9), Pitch: identify.Gauge(2)}})
	require.True(t, r.Conflict)
	for _, x := range r.List {
		require.True(t, x.End.Plastic && x.End.Swivel, x.End.String())
	}
	nothing := readings(t, Known{Measured: identify.Measured{Sex: threads.Male, Diameter: identify.Gauge(24.9), Pitch: identify.Gauge(2)}})
	require.False(t, nothing.Conflict, "no words contradict nothing")
	require.Equal(t, "M25x2", nothing.List[0].End.Form.Designation)
}

// Each thing that can be measured counts as measured; nothing leaves the words as they are.
func TestWhatCountsAsMeasured(t *testing.T) {
	for why, m := range map[string]identify.Measured{
		"a diameter": {Sex: threads.Male, Diameter: identify.Gauge(20.9)}, "a pitch": {Pitch: identify.Gauge(1.8)}, "an angle": {Flank: identify.Gauge(55)}, "a taper": {Taper: identify.NoTaper},
		"a nose": {Nose: identify.PlainNose}, "a cone": {Cone: identify.No}, "a groove": {Groove: identify.No},
	} {
		require.True(t, readings(t, Known{Words: ends(t, "G 1/2 male"), Measured: m}).Measured, why)
	}
	require.False(t, readings(t, Known{Words: ends(t, "G 1/2 male"), Measured: identify.Measured{Sex: threads.Male}}).Measured)
	figures := readings(t, Known{Words: ends(t, "G 1/2 male"), Measured: identify.Measured{Sex: threads.Male, Diameter: identify.Gauge(200)}})
	require.True(t, figures.NothingFits() && figures.Conflict, "200 mm is of no table, nor of the words")
	require.Empty(t, figures.List)
}

// A reading of one in twenty is reckoned with, one below is not; the list holds what is a thousandth or more.
func TestWhatIsReckonedWith(t *testing.T) {
	g, r := endtest.EndOf(t, "G 1/2 male"), endtest.EndOf(t, "R 1/2 male")
	require.Len(t, (&Readings{List: []Reading{{g, 0.95}, {r, 0.05}}}).Ends(), 2)
	require.Len(t, (&Readings{List: []Reading{{g, 0.951}, {r, 0.049}}}).Ends(), 1)
	require.Len(t, normal([]Reading{{r, 0.001}, {g, 0.999}}), 2)
	require.Len(t, normal([]Reading{{r, 0.0009}, {g, 0.9991}}), 1)
	require.Equal(t, g, normal([]Reading{{r, 0.3}, {g, 0.7}})[0].End, "likeliest first")
	require.Nil(t, normal([]Reading{{r, 0}}))
}
