package threads

import (
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// anyEnd draws an end of any family, with any words.
func anyEnd(t *rapid.T, label string) End {
	family := rapid.SampledFrom(Families()).Draw(t, label+" family")
	if !family.Threaded() {
		return anyTube(t, label, family)
	}
	sex := rapid.SampledFrom([]Sex{NoSex, Male, Female}).Draw(t, label+" sex")
	if only := family.Facts().Only; only != NoSex {
		sex = only
	}
	e := Threaded(rapid.SampledFrom(Forms(family)).Draw(t, label+" form"), sex)
	e.Seal = Seal(rapid.IntRange(0, int(sealEnd)-1).Draw(t, label+" seal"))
	e.Swivel = rapid.Bool().Draw(t, label+" swivel")
	e.Plastic = rapid.Bool().Draw(t, label+" plastic")
	e.ClassA = rapid.Bool().Draw(t, label+" class")
	return e
}

func anyTube(t *rapid.T, label string, family Family) End {
	mm := Length(rapid.IntRange(0, 60).Draw(t, label+" mm"))
	e := End{Family: family, Diameter: mm}
	if mm > 0 {
		e.Size = mm.String()
	}
	if grips(family) {
		e.Sex = rapid.SampledFrom([]Sex{NoSex, Male, Female}).Draw(t, label+" sex")
	}
	return e
}

// anyPair draws two ends; half of the pairs are of one family, which chance alone
// would seldom draw.
func anyPair(t *rapid.T) (a, b End) {
	a, b = anyEnd(t, "a"), anyEnd(t, "b")
	if rapid.Bool().Draw(t, "one family") {
		b = sameFamily(t, a)
	}
	return a, b
}

func sameFamily(t *rapid.T, a End) End {
	if !a.Family.Threaded() {
		return anyTube(t, "like", a.Family)
	}
	b := a
	b.Form = rapid.SampledFrom(Forms(a.Family)).Draw(t, "like form")
	b.Size = b.Form.Size
	if a.Family.Facts().Only == NoSex {
		b.Sex = rapid.SampledFrom([]Sex{NoSex, Male, Female}).Draw(t, "like sex")
	}
	b.Seal = Seal(rapid.IntRange(0, int(sealEnd)-1).Draw(t, "like seal"))
	return b
}

// The order in which two ends are written does not matter.
func TestMateSymmetric(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a, b := anyPair(t)
		if a.Sex == NoSex && b.Sex == NoSex && (a.Family.Threaded() && b.Family.Threaded() || grips(a.Family) && grips(b.Family)) {
			a.Sex = Male // without a sex on either, the first is taken as the male
			if a.Family.Facts().Only == Female {
				a.Sex = Female
			}
		}
		m, w := Mate(a, b), Mate(b, a)
		require.Equal(t, m.Verdict, w.Verdict, "%s and %s", a, b)
		require.Equal(t, m.Hand, w.Hand)
		require.Equal(t, m.Limit, w.Limit)
		require.Equal(t, m.Virtual, w.Virtual)
		require.Equal(t, m.First, w.First)
	})
}

// A reason and a remedy are always there, are sentences, and name both ends.
func TestMateTexts(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		m := Mate(anyPair(t))
		require.NotZero(t, m.Verdict)
		for _, text := range []string{m.Reason(), m.Remedy()} {
			require.NotEmpty(t, text)
			require.True(t, strings.HasSuffix(text, "."), text)
			require.False(t, strings.HasSuffix(text, ".."), text)
			require.NotContains(t, text, "{", text)
			require.NotContains(t, text, "%!", text)
			require.NotContains(t, text, "NaN", text)
			require.NotContains(t, text, "Inf", text)
		}
		require.Contains(t, strings.ToLower(m.Reason()), strings.ToLower(m.A.name()))
		require.Contains(t, strings.ToLower(m.Reason()), strings.ToLower(m.B.name()))
		require.Equal(t, m.Verdict <= LowPressureOnly, m.Closes() != "", m.Reason())
	})
}

// Loose parts never stop before tight ones, and no share leaves 0 to 1.
func TestLoosestNotBeforeTightest(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		m := Mate(anyPair(t))
		require.GreaterOrEqual(t, m.Hand.Loosest, m.Hand.Tightest, m.Reason())
		require.GreaterOrEqual(t, m.Binding.Loosest, m.Binding.Tightest, m.Reason())
		require.True(t, m.Depth >= 0 && m.Depth <= 1, m.Reason())
		require.GreaterOrEqual(t, m.Hand.Tightest, 0.0)
		require.False(t, math.IsNaN(float64(m.Virtual)))
	})
}

// A greater difference of pitch never binds later: two parallel profiles, drawn
// out of nothing, of one flank angle.
func TestPitchDifferenceBindsSooner(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		pitch := rapid.Float64Range(0.9, 3.2).Draw(t, "pitch")
		dia := rapid.Float64Range(8, 60).Draw(t, "diameter")
		gap := rapid.Float64Range(0, 0.5).Draw(t, "clearance in pitches") * pitch
		tan := halfTan(rapid.SampledFrom([]float64{55, 60}).Draw(t, "flank"))
		finer := rapid.Bool().Draw(t, "finer")
		less := rapid.Float64Range(0.001, 0.1).Draw(t, "less")
		more := less + rapid.Float64Range(0, 0.1).Draw(t, "more")
		i := flatProfile(pitch, dia+gap, tan)
		turns := func(by float64) float64 {
			if finer {
				by = -by
			}
			e := flatProfile(pitch, dia, tan)
			e.pitch *= 1 + by
			return meet(e, i).flank / ((e.pitch + i.pitch) / 2)
		}
		require.LessOrEqual(t, turns(more), turns(less)+1e-9)
	})
}

// More clearance never binds sooner either.
func TestClearanceBindsLater(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		pitch := rapid.Float64Range(0.9, 3.2).Draw(t, "pitch")
		tan := halfTan(60)
		by := rapid.Float64Range(-0.15, 0.15).Draw(t, "difference")
		small := rapid.Float64Range(0, 0.4).Draw(t, "small") * pitch
		large := small + rapid.Float64Range(0, 0.2).Draw(t, "larger")*pitch
		e := flatProfile(pitch, 20, tan)
		e.pitch *= 1 + by
		tight, loose := meet(e, flatProfile(pitch, 20+small, tan)), meet(e, flatProfile(pitch, 20+large, tan))
		require.GreaterOrEqual(t, loose.flank, tight.flank-1e-9)
	})
}

// flatProfile is a parallel thread with straight flanks a third of a pitch to
// either side of its pitch line.
func flatProfile(pitch, dia, tan float64) profile {
	third := 0.3 * pitch
	return profile{pitch: pitch, tan: tan, dia: dia, crest: third, root: third, flankC: third, flankR: third}
}
