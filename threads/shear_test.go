package threads

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// The formula against areas worked for an inch, or a millimetre, of engagement.
func TestShearFormula(t *testing.T) {
	for _, c := range []struct {
		why                string
		pitch, length      Length
		esMin, dsMin       Length // external
		knMax, enMax       Length // internal
		external, internal float64
		within             float64
		source             string
	}{
		{
			"1/4-20 of class 2, an inch engaged", Inch / 20, Inch, 0.2127 * Inch, 0.2408 * Inch, 0.2070 * Inch, 0.2248 * Inch,
			0.368 * 645.16, 0.518 * 645.16, 0.0005 * 645.16, "FED-STD-H28 formula, worked by hand; class 2 limits from memory",
		},
		{
			"M10x1.5 at its basic profile, a millimetre engaged", 1.5, 1, 9.026, 10, 8.376, 9.026,
			19.74, math.NaN(), 0.02, "FED-STD-H28 formula in metric, worked by hand",
		},
	} {
		t.Run(c.why, func(t *testing.T) {
			tan := math.Tan(math.Pi / 6)
			e := &Form{Family: UN, Pitch: c.pitch, Flank: 60, full: c.length, outside: cut{loose: limits{pitch: c.esMin, crestAdd: (c.dsMin - c.esMin) / 2, rootAdd: 0.1}}}
			i := &Form{Family: UN, Pitch: c.pitch, Flank: 60, full: c.length, inside: cut{loose: limits{pitch: c.enMax, crestAdd: (c.enMax - c.knMax) / 2, rootAdd: 10}}}
			e.outside.loose.rootAdd = 10 // the crests do not meet the roots here
			require.InDelta(t, tan, halfTan(60), 1e-12)
			m := Mating{A: Threaded(e, Male), B: Threaded(i, Female), Verdict: Seals}
			external, internal, ok := m.ShearArea()
			require.True(t, ok)
			require.InDelta(t, c.external, float64(external), c.within, c.source)
			if !math.IsNaN(c.internal) {
				require.InDelta(t, c.internal, float64(internal), c.within, c.source)
			}
		})
	}
}

func sized(t testing.TB, family Family, size string, sex Sex) End {
	t.Helper()
	f, ok := Find(family, size)
	require.True(t, ok, "%v %s", family, size)
	return Threaded(f, sex)
}

func TestShearArea(t *testing.T) {
	for _, c := range []struct {
		why  string
		a, b End
		ok   bool
	}{
		{"a taper in its own", sized(t, NPT, "1/2", Male), sized(t, NPT, "1/2", Female), true},
		{"parallel threads", sized(t, G, "1/2", Male), sized(t, G, "1/2", Female), true},
		{"a taper in a parallel socket", sized(t, R, "1/2", Male), sized(t, Rp, "1/2", Female), true},
		{"55 degrees in 60, one pitch: what holds is thread, though it leaks", sized(t, R, "1/2", Male), sized(t, NPT, "1/2", Female), true},
		{"a hose on a tail has no thread", End{Family: Barb, Diameter: 13}, End{Family: Bore, Diameter: 13}, false},
		{"two males", sized(t, NPT, "1/2", Male), sized(t, NPT, "1/2", Male), false},
		{"two pitches jam, and no more is said", sized(t, G, "1/4", Male), sized(t, NPT, "1/4", Female), false},
		{"a thread that does not start", sized(t, NPT, "3/4", Male), sized(t, NPT, "1/2", Female), false},
	} {
		t.Run(c.why, func(t *testing.T) {
			m := Mate(c.a, c.b)
			external, internal, ok := m.ShearArea()
			require.Equal(t, c.ok, ok)
			turns, ok := m.EngagedTurns()
			require.Equal(t, c.ok, ok)
			if c.ok {
				require.Greater(t, turns, Turns(1))
				require.Greater(t, internal, external, "the internal thread shears on the larger diameter")
				back := Mate(c.b, c.a)
				e2, i2, _ := back.ShearArea()
				require.Equal(t, []SquareMillimetres{external, internal}, []SquareMillimetres{e2, i2}, "the order of the ends does not matter")
			}
		})
	}
}

// A taper in its own engages about its standard's hand-tight length, less the
// tolerance of the loosest parts: two turns (ASME B1.20.1: one turn each way for
// each part).
func TestEngagedTurnsOfATaper(t *testing.T) {
	for _, size := range []string{"1/4", "3/8", "1/2", "3/4", "1"} {
		form, _ := Find(NPT, size)
		m := Mate(Threaded(form, Male), Threaded(form, Female))
		turns, ok := m.EngagedTurns()
		require.True(t, ok)
		require.LessOrEqual(t, turns, form.FullTurns()+1e-9, size)
		require.GreaterOrEqual(t, turns, form.HandTightTurns()-2.01, size)
	}
}

// More metal never holds less: of two sizes of one family the larger has more area.
func TestShearGrowsWithSize(t *testing.T) {
	families := []Family{NPT, G, M}
	rapid.Check(t, func(t *rapid.T) {
		list := Forms(rapid.SampledFrom(families).Draw(t, "family"))
		f := rapid.SampledFrom(list).Draw(t, "form")
		g := rapid.SampledFrom(list).Draw(t, "other")
		if math.Abs(float64(f.Pitch-g.Pitch)) > 1e-9 || f.Major >= g.Major || f.FullTurns() > g.FullTurns() || f.HandTight > g.HandTight {
			return
		}
		small, large := Mate(Threaded(f, Male), Threaded(f, Female)), Mate(Threaded(g, Male), Threaded(g, Female))
		es, is, ok1 := small.ShearArea()
		el, il, ok2 := large.ShearArea()
		if ok1 && ok2 {
			require.Less(t, es, el, "%s, %s", f.Designation, g.Designation)
			require.Less(t, is, il, "%s, %s", f.Designation, g.Designation)
		}
	})
}
