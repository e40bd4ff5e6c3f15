package identify

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"handtight/threads"
	"handtight/threads/internal/endtest"
)

// Figures are weighed to the bounds of what a pipe or port thread can be, and refused beyond them.
func TestBoundsOfFigures(t *testing.T) {
	in := endtest.EndOf(t, "G 1/2 female")
	for _, c := range []struct {
		why string
		ok  bool
		m   Measured
	}{
		{"3 mm", true, Measured{Sex: threads.Male, Diameter: Gauge(3)}}, {"less", false, Measured{Sex: threads.Male, Diameter: Gauge(2.99)}},
		{"250 mm", true, Measured{Sex: threads.Male, Diameter: Gauge(250)}}, {"more", false, Measured{Sex: threads.Male, Diameter: Gauge(250.1)}},
		{"a pitch of 0.3", true, Measured{Pitch: Gauge(0.3)}}, {"less", false, Measured{Pitch: Gauge(0.29)}},
		{"a pitch of 6", true, Measured{Pitch: Gauge(6)}}, {"more", false, Measured{Pitch: Gauge(6.01)}},
		{"30 degrees", true, Measured{Flank: Gauge(30)}}, {"less", false, Measured{Flank: Gauge(29)}},
		{"90 degrees", true, Measured{Flank: Gauge(90)}}, {"more", false, Measured{Flank: Gauge(91)}},
		{"no turns", true, Measured{Turns: Turned{Known: true, In: in}}}, {"less", false, Measured{Turns: Turned{Known: true, In: in, Turns: -0.1}}},
		{"15 turns", true, Measured{Turns: Turned{Known: true, In: in, Turns: 15}}}, {"more", false, Measured{Turns: Turned{Known: true, In: in, Turns: 15.1}}},
		{"turns in a part that is not known", false, Measured{Turns: Turned{Known: true, Turns: 2}}},
		{"turns in a part without its sex", false, Measured{Turns: Turned{Known: true, Turns: 2, In: threads.End{Family: in.Family, Form: in.Form, Size: in.Size}}}},
		{"sliding over a tail", false, Measured{Slides: &threads.End{Family: threads.Barb}}},
	} {
		_, err := Identify(c.m)
		require.Equal(t, c.ok, err == nil, "%s: %v", c.why, err)
	}
}

// The sex that is not said is that which goes with the part that it was tried in.
func TestTheSexByAKnownPart(t *testing.T) {
	for part, want := range map[string]threads.Sex{"G 1/2 female": threads.Male, "G 1/2 male": threads.Female} {
		e := endtest.EndOf(t, part)
		for _, m := range []Measured{{Turns: Turned{Known: true, Turns: 2, In: e}}, {Slides: &e}} {
			for _, c := range identify(t, m).Candidates {
				require.Equal(t, want, c.Sex, part)
			}
		}
		said := Measured{Sex: threads.Male, Slides: &e}
		said.inferSex()
		require.Equal(t, threads.Male, said.Sex, "what is said stands")
	}
}

// A female part slides over a male that is smaller inside it, and a male slides into a wider female; the other way
// round it was tried askew (ISO 228-1: G 3/4 is 24.1 inside, G 1/2 21 outside).
func TestWhatSlides(t *testing.T) {
	for _, c := range []struct {
		thread, known string
		slides        bool
	}{
		{"G 1/2 male", "G 3/4 female", true}, {"G 3/4 male", "G 1/2 female", false}, {"G 1/2 male", "G 1/2 female", false},
		{"G 3/4 female", "G 1/2 male", true}, {"G 1/2 female", "G 3/4 male", false}, {"G 1/2 female", "G 1/2 male", false},
		{"G 1/2 male", "G 1/2 male", false}, {"G 1/2 female", "G 3/4 female", false},
	} {
		e, known := endtest.EndOf(t, c.thread), endtest.EndOf(t, c.known)
		if p := slideChance(e.Form, e.Sex, &known); c.slides {
			require.Greater(t, p, 0.99, "%s and %s", c.thread, c.known)
		} else {
			require.Less(t, p, 0.01, "%s and %s", c.thread, c.known)
			require.Positive(t, p, "never impossible")
		}
	}
}

// Without figures every thread is as likely and its density is 1, of all the tables too; figures are the same evidence
// whatever part of the tables is looked at.
func TestEvidence(t *testing.T) {
	require.InDelta(t, 1, Evidence(&Measured{}), 1e-12)
	require.Zero(t, Evidence(&Measured{Country: "Atlantis"}), "a country that is not known weighs nothing")
	rapid.Check(t, func(t *rapid.T) {
		m, _ := anyMeasured(t)
		least, most := 1e300, 0.0
		for _, family := range endtest.ThreadFamilies() {
			for _, f := range threads.Forms(family) {
				l := Likelihood(&m, f, m.Sex)
				least, most = min(least, l), max(most, l)
			}
		}
		got := Evidence(&m)
		require.GreaterOrEqual(t, got, least*(1-1e-9), "a mean lies between")
		require.LessOrEqual(t, got, most*(1+1e-9))
	})
}

// A thread of either sex is as likely as its likelier one.
func TestLikelihoodOfEitherSex(t *testing.T) {
	e := endtest.EndOf(t, "G 1/2 male")
	male := Measured{Sex: threads.Male, Diameter: Gauge(20.9)} // as G 1/2 measures outside, and none inside
	require.Positive(t, Likelihood(&male, e.Form, threads.Male))
	require.Zero(t, Likelihood(&male, e.Form, threads.Female))
	require.Equal(t, Likelihood(&male, e.Form, threads.Male), Likelihood(&male, e.Form, threads.NoSex))
	require.Zero(t, Likelihood(&male, endtest.EndOf(t, "R 1/2 male").Form, threads.Female), "R has no female")
}

// The answers of the eye: a yes to a cone raises what has one, a no what has none. The eye errs 6 times in 100, and
// not every O-ring port or face seal is seen with its ring (table/nose.csv).
func TestAnswersOfTheEye(t *testing.T) {
	jic, orb, orfs := endtest.EndOf(t, "JIC -6 male").Form, endtest.EndOf(t, "ORB -6 male").Form, endtest.EndOf(t, "ORFS -6 male").Form
	l := func(m Measured, f *threads.Form) float64 { return m.likelihood(f, threads.Male) }
	for _, c := range []struct {
		why      string
		yes, no  Measured
		has, not *threads.Form
	}{
		{"a flare has a cone", Measured{Cone: Yes}, Measured{Cone: No}, jic, orb},
		{"a port's male has a ring", Measured{Groove: Yes}, Measured{Groove: No}, orb, jic},
		{"a ring in the face is a groove too", Measured{Groove: Yes}, Measured{Groove: No}, orfs, jic},
		{"a taper", Measured{Taper: Tapered}, Measured{Taper: NoTaper}, endtest.EndOf(t, "NPT 1/2 male").Form, jic},
	} {
		require.Greater(t, l(c.yes, c.has), 0.7, c.why)
		require.Less(t, l(c.yes, c.not), 0.2, c.why)
		require.GreaterOrEqual(t, l(c.yes, c.not), 0.06-1e-9, "%s: never surer than the eye", c.why)
		require.LessOrEqual(t, l(c.yes, c.has), 0.94+1e-9, c.why)
		for _, f := range []*threads.Form{c.has, c.not} {
			require.InDelta(t, 1, l(c.yes, f)+l(c.no, f), 1e-9, "%s: it is one or the other", c.why)
		}
	}
	require.InDelta(t, 0.94, l(Measured{Taper: Tapered}, endtest.EndOf(t, "NPT 1/2 male").Form), 1e-9)
	require.InDelta(t, 0.94, l(Measured{Cone: Yes}, jic), 1e-9, "every flare has its cone (SAE J514)")
}

// Of a thread in no table an answer with two outcomes is an even chance.
func TestTheStrangersChance(t *testing.T) {
	e := endtest.EndOf(t, "G 1/2 female")
	for why, m := range map[string]Measured{
		"a cone": {Cone: Yes}, "a groove": {Groove: No}, "a taper": {Taper: Tapered}, "a part that slides": {Slides: &e}, "a joint that runs to its face": {Turns: Turned{Known: true, Face: true, In: e}},
	} {
		require.InDelta(t, 0.5, m.background(), 1e-12, why)
	}
	all := Measured{Cone: Yes, Groove: No, Taper: NoTaper, Slides: &e}
	require.InDelta(t, 1.0/16, all.background(), 1e-12)
	require.InDelta(t, 1.0/7, (&Measured{Nose: PlainNose}).background(), 1e-12, "seven noses")
	require.InDelta(t, 1.0/15, (&Measured{Turns: Turned{Known: true, Turns: 3, In: e}}).background(), 1e-12, "fifteen turns")
}

// What the crests may measure is the band of the standard: of a parallel its tolerance, of a taper all of
// its length (ISO 228-1, class B: G 1/2 is 20.671 to 20.955 outside, 18.631 to 19.172 inside).
func TestReachOfCrests(t *testing.T) {
	for words, want := range map[string][2]float64{"G 1/2 male": {20.671, 20.955}, "G 1/2 female": {18.631, 19.172}} {
		e := endtest.EndOf(t, words)
		band := Reach(e.Form, e.Sex)
		require.InDelta(t, want[0], float64(band.Least), 0.001, words)
		require.InDelta(t, want[1], float64(band.Most), 0.001, words)
	}
	taper := endtest.EndOf(t, "R 1/2 male")
	band := Reach(taper.Form, taper.Sex)
	// ISO 7-1: 20.955 at the gauge plane, 8.2 mm from the end, 13.2 mm of useful thread, one in sixteen, 1.8 mm either way
	require.InDelta(t, 20.955-8.2/16-1.8/16, float64(band.Least), 0.03)
	require.InDelta(t, 20.955+(13.2-8.2)/16+1.8/16, float64(band.Most), 0.03)
	for _, family := range endtest.ThreadFamilies() {
		for _, f := range threads.Forms(family) {
			for _, sex := range endtest.Sexes(family) {
				b := Reach(f, sex)
				require.LessOrEqual(t, float64(b.Least), float64(b.Most), f.Designation)
			}
		}
	}
}

// Threads that are cut alike are one thread with several seats; taper, angle, pitch and diameter each part them.
func TestThreadsThatAreOne(t *testing.T) {
	for _, c := range []struct {
		a, b string
		same bool
	}{
		{"JIC -6 male", "ORB -6 male", true}, {"ORFS -4 male", "JIC -6 male", true}, {"24L 15L male", "M M22x1.5 male", true},
		{"G 1/2 male", "R 1/2 male", false}, {"G 1/2 male", "NPSM 1/2 male", false}, {"G 1/2 male", "G 3/4 male", false}, {"NPT 1/2 male", "R 1/2 male", false},
		{"M M22x1.5 male", "M M22x1 male", false}, {"M M22x1.5 male", "M M24x1.5 male", false},
	} {
		a, b := endtest.EndOf(t, c.a).Form, endtest.EndOf(t, c.b).Form
		require.Equal(t, c.same, Equal(a, b), "%s and %s", c.a, c.b)
		require.Equal(t, c.same, Equal(b, a))
	}
}

// The candidates of one thread are told apart by the seat, by the tube, or by a mark; a faint one needs none.
func TestWhatTellsOneThreadApart(t *testing.T) {
	of := func(shares []float64, words ...string) string {
		th := Thread{}
		for i, w := range words {
			e := endtest.EndOf(t, w)
			th.Candidates = append(th.Candidates, Candidate{e.Form, e.Sex, shares[i]})
			th.Probability += shares[i]
		}
		return th.ToldBy()
	}
	require.Equal(t, "the seat", of([]float64{0.5, 0.5}, "JIC -6 male", "ORB -6 male"))
	require.Equal(t, "the tube that it takes", of([]float64{0.5, 0.5}, "24L 15L male", "24S 14S male"))
	require.Equal(t, "a mark only", of([]float64{0.5, 0.5}, "NPT 1/2 male", "NPTF 1/2 male"))
	require.Empty(t, of([]float64{1}, "JIC -6 male"))
	require.Empty(t, of([]float64{0.96, 0.04}, "JIC -6 male", "ORB -6 male"))
	require.Equal(t, "the seat", of([]float64{0.95, 0.05}, "JIC -6 male", "ORB -6 male"), "one in twenty is still told")
}

// Threads stand by what they come to together: two seats of a fifth each outweigh one thread of three tenths.
func TestThreadsAreOrderedByTheirSum(t *testing.T) {
	id := Identification{}
	for _, c := range []struct {
		words string
		p     float64
	}{{"G 1/2 male", 0.3}, {"R 1/2 male", 0.25}, {"JIC -6 male", 0.2}, {"ORB -6 male", 0.2}, {"NPT 1/2 male", 0.05}} {
		e := endtest.EndOf(t, c.words)
		id.Candidates = append(id.Candidates, Candidate{e.Form, e.Sex, c.p})
	}
	var got []string
	sum := 0.0
	for _, th := range id.Threads() {
		got, sum = append(got, th.Candidates[0].Form.Designation), sum+th.Probability
	}
	require.Equal(t, []string{"9/16-18 JIC -6", "G 1/2", "R 1/2", "1/2-14 NPT"}, got)
	require.InDelta(t, 1, sum, 1e-12, "nothing is lost")
}

// Where it was met weighs: a swivel nut is a flare's before it is an O-ring port's, a port the other way round;
// names are read in any case, and one that is not listed says what is.
func TestWhereItWasMet(t *testing.T) {
	m := Measured{Sex: threads.Female, Diameter: Gauge(12.9), Pitch: perInch(18)}
	share := func(context, designation string) float64 {
		m.Context = context
		for _, c := range identify(t, m).Candidates {
			if c.Form.Designation == designation {
				return c.Probability
			}
		}
		return 0
	}
	require.Greater(t, share("swivel nut", "9/16-18 JIC -6"), share("swivel nut", "9/16-18 ORB -6"))
	require.Greater(t, share("port", "9/16-18 ORB -6"), share("port", "9/16-18 JIC -6"))
	require.Equal(t, share("port", "9/16-18 ORB -6"), share(" Port ", "9/16-18 ORB -6"))
	for _, names := range Contexts() {
		for i, name := range names {
			require.Equal(t, share(names[0], "9/16-18 ORB -6"), share(strings.ToUpper(name), "9/16-18 ORB -6"), "%s is another word for %s", name, names[0])
			require.True(t, i == 0 || name != names[0], "each word once")
		}
	}
	_, err := Identify(Measured{Context: "teapot"})
	require.ErrorContains(t, err, `"teapot"`)
	require.ErrorContains(t, err, "port, ")
}

// A seat gauge reads a cone to three degrees: the nearer cone is taken, and none beyond it or midway between two.
func TestConesToThreeDegrees(t *testing.T) {
	for angle, want := range map[float64]Nose{
		27: 0, 26.9: NoseCone24, 27.1: NoseCone60, 33: NoseCone60, 33.5: 0, 34: NoseCone37, 40: NoseCone37, 41: 0, 42: NoseCone45, 48: NoseCone45, 48.1: 0, 57: NoseCone60, 63: NoseCone60, 71: NoseCone37, 77: NoseCone37, 93: NoseCone45, 93.5: 0, 15: NoseCone24, 8.9: 0,
	} {
		got, ok := NoseOfCone(angle)
		require.Equal(t, want, got, "%g degrees", angle)
		require.Equal(t, want != 0, ok)
	}
}

// Lists are written as people say them.
func TestLists(t *testing.T) {
	require.Equal(t, "", orList(nil))
	require.Equal(t, "14", orList([]string{"14"}))
	require.Equal(t, "14 or 11", orList([]string{"14", "11"}))
	require.Equal(t, "14, 11 or 19", orList([]string{"14", "11", "19"}))
	require.Equal(t, "a and b", andList([]string{"a", "b"}))
	require.Equal(t, "a, b, c, d and e", andList([]string{"a", "b", "c", "d", "e"}))
	require.Equal(t, "a, b, c, d, e and others", andList([]string{"a", "b", "c", "d", "e", "f"}))
}
