package evidence

import (
	"slices"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"handtight/pressure/quantity"
	"handtight/threads"
	"handtight/threads/identify"
	"handtight/threads/internal/endtest"
)

func ends(t testing.TB, words ...string) threads.EndReading {
	var out threads.EndReading
	for _, w := range words {
		out.Candidates = append(out.Candidates, endtest.EndOf(t, w))
	}
	return out
}

func readings(t testing.TB, k Known) Readings {
	r, err := k.Readings()
	require.NoError(t, err)
	return r
}

// share is the probability of the thread of a designation.
func share(r []Reading, designation string) float64 {
	p := 0.0
	for _, x := range r {
		if x.End.Form != nil && x.End.Form.Designation == designation {
			p += x.Probability
		}
	}
	return p
}

var pipes = []string{"G 3/4 male", "R 3/4 male", "NPT 3/4 male"}

// A part from Italy is British pipe thread before it is American, and the other way round in
// America; neither excludes the other (page "Step By Step Measuring Threads" for who sells what).
func TestOriginIsAPriorOnly(t *testing.T) {
	words := ends(t, pipes...)
	italy := readings(t, Known{Words: words, Country: "Italy"})
	require.Greater(t, share(italy.List, "G 3/4"), share(italy.List, "3/4-14 NPT"))
	require.Greater(t, share(italy.List, "R 3/4"), share(italy.List, "3/4-14 NPT"))
	require.Greater(t, share(italy.List, "3/4-14 NPT"), Reckoned())
	us := readings(t, Known{Words: words, Country: "US"})
	require.Equal(t, "3/4-14 NPT", us.List[0].End.Form.Designation)
	require.NotZero(t, share(us.List, "G 3/4"))
	one := readings(t, Known{Words: ends(t, "NPT 3/4 male"), Country: "Italy"})
	require.Equal(t, 1.0, one.List[0].Probability, "what is printed on the part is not overruled")
	_, err := (&Known{Words: words, Country: "Atlantis"}).Readings()
	require.Error(t, err)
}

// A taper of 26.2 mm is R 3/4 or 3/4 NPT, about alike, and no G (ISO 7-1 and ASME B1.20.1: the
// crests of both are there somewhere along the taper; G 3/4 is 26.4 mm throughout).
func TestMeasured(t *testing.T) {
	r := readings(t, Known{Words: ends(t, pipes...), Measured: identify.Measured{Sex: threads.Male, Diameter: identify.Gauge(26.2), Taper: identify.Tapered}})
	require.False(t, r.Conflict)
	require.InDelta(t, 0.47, share(r.List, "R 3/4"), 0.08)
	require.InDelta(t, 0.47, share(r.List, "3/4-14 NPT"), 0.08)
	require.Less(t, share(r.List, "G 3/4"), 0.1)
}

// The words are wrong where the calliper says so, and it is said: M25x2 is sold beside G 3/4.
func TestMeasurementWinsOverWords(t *testing.T) {
	r := readings(t, Known{Words: ends(t, "G 3/4 male"), Measured: identify.Measured{Sex: threads.Male, Diameter: identify.Gauge(24.9), Pitch: identify.Gauge(2)}})
	require.True(t, r.Conflict)
	require.Equal(t, "M25x2", r.List[0].End.Form.Designation)
	fits := readings(t, Known{Words: ends(t, "G 3/4 male"), Measured: identify.Measured{Sex: threads.Male, Diameter: identify.Gauge(26.4), Pitch: identify.Gauge(1.8)}})
	require.False(t, fits.Conflict)
	require.Equal(t, "G 3/4", fits.List[0].End.Form.Designation)
	require.Len(t, fits.List, 1)
}

// A flare that wept is likelier bad than one of which nothing is known, one that was tested is
// less so; a pair that leaks is not cleared by years.
func TestHistory(t *testing.T) {
	pairs := []Pair{{threads.Mate(endtest.EndOf(t, "JIC -8 male"), endtest.EndOf(t, "JIC -8 female")), 1, 0}}
	at := Site{Worst: 60 * quantity.Bar}
	plain := Believe(pairs, History{}, at).Bad
	require.InDelta(t, 0.02, plain, 1e-9)
	require.Greater(t, Believe(pairs, History{Wept: true}, at).Bad, 0.15)
	require.Less(t, Believe(pairs, History{Tested: true}, at).Bad, 0.005)
	leak := []Pair{{threads.Mate(endtest.EndOf(t, "NPT 1/2 male"), endtest.EndOf(t, "G 1/2 female")), 1, 0}}
	require.InDelta(t, 0.9, Believe(leak, History{DryYears: 20}, at).Bad, 1e-9)
	require.Greater(t, Unread(History{Wept: true}).Bad, Unread(History{}).Bad)
}

// Tape does not close a parallel thread, nothing does not close a taper, and no figure is made
// of what nobody looked at.
func TestSealant(t *testing.T) {
	taper := threads.Mate(endtest.EndOf(t, "NPT 1/2 male"), endtest.EndOf(t, "NPT 1/2 female"))
	flat := threads.Mate(endtest.EndOf(t, "G 1/2 male"), endtest.EndOf(t, "G 1/2 female"))
	require.False(t, WrongSealant(&taper, "tape"))
	require.True(t, WrongSealant(&taper, "none"))
	require.True(t, Missing(&flat, "none"))
	require.True(t, WrongSealant(&flat, "tape"))
	require.False(t, Missing(&flat, "tape"))
	require.False(t, WrongSealant(&flat, "not seen"))
	require.False(t, WrongSealant(&flat, ""))
	for make, right := range rightSealants() {
		for _, s := range right {
			require.Contains(t, Sealants(), s, make)
		}
	}
}

// Turns to the face are of parallel threads.
func TestTurns(t *testing.T) {
	a, b := Even(ends(t, "NPT 1/2 male", "G 1/2 male").Candidates), Even(ends(t, "G 1/2 female").Candidates)
	f := Pairs(&a, &b, true, identify.Turned{Face: true, Known: true})
	require.Equal(t, "G 1/2", f.Pairs[0].Mating.A.Form.Designation)
	require.Greater(t, f.Pairs[0].Probability, 0.9)
	far := Pairs(&Readings{List: []Reading{{endtest.EndOf(t, "NPT 1/4 male"), 1}}}, &Readings{List: []Reading{{endtest.EndOf(t, "NPT 1/4 female"), 1}}}, true, identify.Turned{Turns: 12, Known: true})
	require.True(t, far.NothingFits())
}

// Every judgement is listed with its reason, lies between 0 and 1, and every make of joint that
// closes has its sealants.
func TestTables(t *testing.T) {
	require.Len(t, Judgements(), len(rows())+len(weights()))
	for _, j := range Judgements() {
		require.NotEmpty(t, j.Note, j.Name)
		for _, v := range j.Values {
			require.True(t, v > 0 && v <= 1, j.Name)
		}
	}
	for c := lowWithin; c < columns; c++ { // the law of TestDryYears rests on this order
		require.GreaterOrEqual(t, rows()["bad"][c], rows()["bad"][0])
	}
}

var families = []threads.Family{threads.NPT, threads.G, threads.R, threads.JIC, threads.M}

func drawPairs(t *rapid.T) []Pair {
	draw := func(name string, sex threads.Sex) Readings {
		var list []Reading
		for range rapid.IntRange(1, 4).Draw(t, name) {
			f := rapid.SampledFrom(threads.Forms(rapid.SampledFrom(families).Draw(t, "family"))).Draw(t, "form")
			list = append(list, Reading{threads.Threaded(f, sex), rapid.Float64Range(0.05, 1).Draw(t, "weight")})
		}
		return Readings{List: normal(list)}
	}
	a, b := draw("a", threads.Male), draw("b", threads.Female)
	return Pairs(&a, &b, rapid.Bool().Draw(t, "standing"), identify.Turned{}).Pairs
}

func drawHistory(t *rapid.T) History {
	return History{
		DryYears: rapid.SampledFrom([]float64{0, 0.3, 1, 9}).Draw(t, "dry"), Wept: rapid.Bool().Draw(t, "wept"),
		Tested: rapid.Bool().Draw(t, "tested"), Sealant: rapid.SampledFrom(append(Sealants(), "")).Draw(t, "sealant"),
	}
}

// More dry years never make a joint likelier bad, nor does a test that it stood; weeping never
// makes it less so. Where what closes a pair was looked for and is not there, that holds of each reading by
// itself: such a pair that wept is likelier bad (0.995) than one that is loose (0.97), and dry years, which
// speak against the loose one first, then leave the other.
func TestDryYears(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		pairs, h, at := drawPairs(t), drawHistory(t), Site{Worst: quantity.Bar.Times(rapid.Float64Range(0, 80).Draw(t, "worst"))}
		if slices.ContainsFunc(pairs, func(p Pair) bool { return Missing(&p.Mating, h.Sealant) }) {
			pairs = []Pair{rapid.SampledFrom(pairs).Draw(t, "one")}
			pairs[0].Probability = 1
		}
		longer := h
		longer.DryYears += rapid.Float64Range(0, 5).Draw(t, "more")
		now := Believe(pairs, h, at).Bad
		if got := Believe(pairs, longer, at).Bad; got > now+1e-12 {
			t.Fatalf("%g dry years: bad %g, %g: %g", h.DryYears, now, longer.DryYears, got)
		}
		tested, wept := h, h
		tested.Tested, wept.Wept = true, true
		if Believe(pairs, tested, at).Bad > now+1e-12 && !h.Tested {
			t.Fatalf("a test that it stood raised %g", now)
		}
		if Believe(pairs, wept, at).Bad < now-1e-12 {
			t.Fatalf("weeping lowered %g", now)
		}
	})
}

// The order in which things were learned does not matter, and a pair that is excluded stays so.
func TestOrderDoesNotMatter(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		pairs, at := drawPairs(t), Site{Worst: 10 * quantity.Bar}
		h := drawHistory(t)
		whole := Believe(pairs, h, at)
		sum := 0.0
		for _, p := range whole.Pairs {
			sum += p.Probability
		}
		if whole.Bad < 0 || whole.Bad > 1 || len(whole.Pairs) > 0 && (sum < 1-1e-9 || sum > 1+1e-9) {
			t.Fatalf("bad %g, sum %g", whole.Bad, sum)
		}
		back := []Pair{}
		for i := len(pairs) - 1; i >= 0; i-- {
			back = append(back, pairs[i])
		}
		other := Believe(back, h, at)
		if d := whole.Bad - other.Bad; d > 1e-12 || d < -1e-12 {
			t.Fatalf("%g and %g", whole.Bad, other.Bad)
		}
		gone := append([]Pair{}, pairs...)
		gone[0].Probability = 0
		for _, p := range Believe(gone, h, at).Pairs {
			if p.Mating.A == gone[0].Mating.A && p.Mating.B == gone[0].Mating.B && p.Probability > 0 && !twice(pairs, p) {
				t.Fatalf("%v came back", p.Mating.A)
			}
		}
	})
}

func twice(pairs []Pair, p Pair) bool {
	n := 0
	for _, q := range pairs {
		if q.Mating.A == p.Mating.A && q.Mating.B == p.Mating.B {
			n++
		}
	}
	return n > 1
}

// The turns of taper threads, as the standards' tolerances give them (ASME B1.20.1: one turn either
// way of L1; ISO 7-1: the tolerances of the gauge plane), and what a count says of them.
func TestTurnsFigures(t *testing.T) {
	for _, c := range []struct {
		a, b         string
		least, most  float64 // turns by hand
		turns        threads.Turns
		others       []string
		first        string
		share, about float64
	}{
		{"NPT 1/4 male", "NPT 1/4 female", 2.1, 6.1, 5, []string{"R 1/4 male", "G 1/4 male"}, "1/4-18 NPT", 0.99, 0.03},
		{"R 1/4 male", "NPT 1/4 female", 1.4, 3.3, 1.5, []string{"NPT 1/4 male"}, "R 1/4", 0.95, 0.1},
		{"G 1/4 male", "NPT 1/4 female", 0, 2.9, 1.5, []string{"NPT 1/4 male"}, "G 1/4", 0.95, 0.1},
		{"NPT 3/4 male", "Rc 3/4 female", 1.4, 7.3, 5, []string{"R 3/4 male"}, "R 3/4", 0.57, 0.02},
		{"R 3/4 male", "Rc 3/4 female", 3.0, 7.5, 5, []string{"NPT 3/4 male"}, "R 3/4", 0.57, 0.02},
		{"R 1/2 male", "G 1/2 female", 3.5, 6.8, 5, []string{"NPT 1/2 male"}, "R 1/2", 0.73, 0.02},
		{"NPT 1/2 male", "G 1/2 female", 1.1, 5.8, 2, []string{"R 1/2 male"}, "1/2-14 NPT", 0.99, 0.03},
		{"NPT 3/4 male", "G 3/4 female", 2.6, 7.3, 5, []string{"R 3/4 male"}, "3/4-14 NPT", 0.53, 0.02},
		{"R 3/4 male", "G 3/4 female", 4.2, 7.5, 5, []string{"NPT 3/4 male"}, "3/4-14 NPT", 0.53, 0.02},
		{"R 1 male", "NPT 1 female", 0, 1.5, 1, nil, "R 1", 1, 0},
		{"G 1/2 male", "NPT 1/2 female", 0, 2.2, 1, nil, "G 1/2", 1, 0},
	} {
		m := threads.Mate(endtest.EndOf(t, c.a), endtest.EndOf(t, c.b))
		require.True(t, m.Hand.Known)
		require.InDelta(t, c.least, float64(m.Hand.Tightest), 0.051, "%s in %s", c.a, c.b)
		require.InDelta(t, c.most, float64(m.Hand.Loosest), 0.051, "%s in %s", c.a, c.b)
		// evenly common: the figures are those of the turns alone
		male := Even(ends(t, append([]string{c.a}, c.others...)...).Candidates)
		female := Even(ends(t, c.b).Candidates)
		f := Pairs(&male, &female, true, identify.Turned{Turns: c.turns, Known: true})
		got := 0.0
		for _, p := range f.Pairs {
			if p.Mating.A.Form.Designation == c.first {
				got += p.Probability
			}
		}
		require.InDelta(t, c.share, got, c.about+1e-9, "%s in %s after %g turns", c.a, c.b, float64(c.turns))
	}
	start := threads.Mate(endtest.EndOf(t, "G 1 male"), endtest.EndOf(t, "NPT 1 female"))
	require.Equal(t, threads.WillNotStart, start.Verdict, "G 1 does not start in 1 NPT")
}
