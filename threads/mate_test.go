package threads

import (
	"testing"

	"github.com/stretchr/testify/require"
)

func TestMateVerdicts(t *testing.T) {
	for _, c := range []struct {
		why, a, b string
		verdict   Verdict
		says      string
	}{
		{"two males", "NPT 1/2 male", "NPT 1/2 male", SameSex, "1/2-14 NPT and 1/2-14 NPT are both male"},
		{"two females of unlike threads are the same sex first", "G 1/2 female", "NPT 3/4 female", SameSex, "both female"},
		{"much too large", "NPT 1 male", "NPT 1/2 female", WillNotStart, "too large"},
		{"much too small", "NPT 1/4 male", "NPT 3/4 female", Loose, "too small"},
		{"one pitch, two angles", "NPT 1/2 male", "Rc 1/2 female", Leaks, "55"},
		{"pitch differs", "NPT 1/4 male", "Rc 1/4 female", Binds, "pitch"},
		{"a fine metric in an inch port", "M M20x1.5 male", "G 1/2 female", Binds, "pitch"},
		{"a quarter of the height is too little to hold", "NPT 1/2 male", "G 5/8 female", Loose, "too small"},
		{"half a turn is a start", "M M10x1.5 male", "M M10x1.25 female", Binds, "binds after"},
		{"slack by a size", "UN 1 1/16-12 male", "UN 1 3/16-12 female", Loose, "too small"},
	} {
		t.Run(c.why, func(t *testing.T) {
			m := Mate(endOf(t, c.a), endOf(t, c.b))
			require.Equal(t, c.verdict, m.Verdict, m.Reason())
			require.Contains(t, m.Reason(), c.says)
		})
	}
}

// 1/2 and 3/4 NPT in BSP share the pitch: the trade says that they seem to
// tighten, after 2 to 4 threads (page "BSP vs NPT: Thread Angle Differences").
func TestMateSeemsToTighten(t *testing.T) {
	for _, size := range []string{"1/2", "3/4"} {
		m := Mate(endOf(t, "NPT "+size+" male"), endOf(t, "Rc "+size+" female"))
		require.True(t, m.typical > 1 && m.typical < 5, "%s: %.1f turns", size, m.typical)
		require.False(t, m.Binding.Known, "there is no pitch difference")
		require.Contains(t, m.Remedy(), "Do not force it")
	}
}

// An unsaid sex is taken as the one that fits; of two, the first is the male.
func TestMateUnsaidSex(t *testing.T) {
	npt, _ := Find(NPT, "1/2")
	both := Mate(Threaded(npt, NoSex), Threaded(npt, NoSex))
	one := Mate(Threaded(npt, NoSex), Threaded(npt, Male))
	want := Mate(Threaded(npt, Male), Threaded(npt, Female))
	require.Equal(t, want.Verdict, both.Verdict)
	require.Equal(t, want.Verdict, one.Verdict)
	require.True(t, one.flipped)
}

// An end whose form is not known cannot be judged: never a pass.
func TestMateUnknown(t *testing.T) {
	m := Mate(End{Family: NPT, Sex: Male}, endOf(t, "NPT 1/2 female"))
	require.Equal(t, Leaks, m.Verdict)
	require.Contains(t, m.Reason(), "not known")
	m = Mate(End{}, endOf(t, "NPT 1/2 female"))
	require.False(t, m.Verdict.Holds())
	require.NotEmpty(t, m.Reason())
}

// Several readings: the worst rules, and what fools the fitter longest is worst.
func TestWorst(t *testing.T) {
	male := EndReading{Candidates: []End{endOf(t, "R 1/2 male"), endOf(t, "G 1/2 male")}}
	taper := EndReading{Candidates: []End{endOf(t, "Rc 1/2 female")}}
	m, open := Worst(male, taper)
	require.True(t, open)
	require.Equal(t, Leaks, m.Verdict)
	require.Equal(t, G, m.A.Family)
	m, open = Worst(taper, taper)
	require.False(t, open)
	require.Equal(t, SameSex, m.Verdict)
	m, _ = Worst(EndReading{}, taper)
	require.Zero(t, m.Verdict, "no reading, no joint")
	require.Empty(t, m.Closes())
	require.True(t, Loose.Worse(WillNotStart), "what goes together and lets go is worse than what never starts")
}

// What the fitter is fooled by longest is worst: a slack joint holds until it is thrown out, a
// leak shows at the first fill, a bind shows under the wrench, and the rest never go together.
// Every two verdicts differ in it, so an end of several readings has one worst joint.
func TestVerdictsByDanger(t *testing.T) {
	worstFirst := []Verdict{Loose, Leaks, Binds, WillNotStart, SameSex, LowPressureOnly, SealsWith, Seals}
	for k, v := range worstFirst {
		require.False(t, v.Worse(v), v.String())
		for _, w := range worstFirst[k+1:] {
			require.True(t, v.Worse(w), "%s and %s", v, w)
			require.False(t, w.Worse(v), "%s and %s", w, v)
		}
	}
}

// Turns to a stop are a figure only of two threads of unlike diameters, pitch or taper that go
// together: a fitter who is given a number for a joint without one counts for nothing.
func TestTurnsAreOnlyOfThreadsThatStop(t *testing.T) {
	male, female, tail := endOf(t, "NPT 1/2 male"), endOf(t, "NPT 1/2 female"), End{Family: Barb, Size: "13 mm", Diameter: 13}
	for _, c := range []struct {
		why   string
		a, b  End
		stops bool
	}{
		{"a taper stops", male, female, true},
		{"one pitch, both parallel: it runs to its shoulder", endOf(t, "G 1/2 male"), endOf(t, "G 1/2 female"), false},
		{"two males", male, male, false},
		{"a thread and a hose tail", female, tail, false},
		{"a hose tail and a thread", tail, female, false},
	} {
		m := Mate(c.a, c.b)
		_, ok := m.TypicalTurns()
		require.Equal(t, c.stops, ok, c.why)
	}
}

func TestNames(t *testing.T) {
	for v := Seals; v <= SameSex; v++ {
		got, ok := VerdictNamed(v.String())
		require.True(t, ok)
		require.Equal(t, v, got)
	}
	require.Equal(t, "no verdict", Verdict(0).String())
	require.Equal(t, "no verdict", Verdict(99).String())
	_, ok := VerdictNamed("no verdict")
	require.False(t, ok)
	for _, f := range Families() {
		got, ok := FamilyNamed(f.String())
		require.True(t, ok)
		require.Equal(t, f, got)
		require.NotEmpty(t, f.Facts().Title)
	}
	require.Empty(t, Family(0).Facts().Title)
	require.Empty(t, Forms(Family(99)))
	for s := Chamfer; s < sealEnd; s++ {
		got, ok := SealNamed(s.String())
		require.True(t, ok)
		require.Equal(t, s, got)
	}
}

// A remedy names an end that can be bought: a BSP taper female is met by R.
func TestRemedyCounterpart(t *testing.T) {
	m := Mate(endOf(t, "NPT 1/2 male"), endOf(t, "Rc 1/2 female"))
	require.Contains(t, m.Remedy(), "1/2-14 NPT female x R 1/2 male")
	m = Mate(endOf(t, "R 3/4 male"), endOf(t, "NPT 3/4 female"))
	require.Contains(t, m.Remedy(), "Rc 3/4 female x 3/4-14 NPT male")
}
