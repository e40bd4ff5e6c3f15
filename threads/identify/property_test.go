package identify

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"handtight/threads"
	"handtight/threads/internal/endtest"
)

// anyMeasured draws figures near a thread of the tables, some of them left out.
func anyMeasured(t *rapid.T) (Measured, *threads.Form) {
	family := rapid.SampledFrom(endtest.ThreadFamilies()).Draw(t, "family")
	f := rapid.SampledFrom(threads.Forms(family)).Draw(t, "form")
	sex := family.Facts().Only
	if sex == threads.NoSex {
		sex = rapid.SampledFrom([]threads.Sex{threads.Male, threads.Female}).Draw(t, "sex")
	}
	var m Measured
	if rapid.Bool().Draw(t, "with diameter") {
		s := crestAt(f, sex, 0.3)
		off := rapid.Float64Range(-0.4, 0.4).Draw(t, "off")
		m.Sex, m.Diameter = sex, Gauge(max(4, (s.least+s.most)/2+off)) // what is less is refused, and M5 comes near
	}
	if rapid.Bool().Draw(t, "with pitch") {
		m.Pitch = Gauge(float64(f.Pitch) * rapid.Float64Range(0.95, 1.05).Draw(t, "pitch off"))
		m.Pitch.Rough = rapid.Bool().Draw(t, "rough")
	}
	m.Taper = Taper(rapid.IntRange(0, 2).Draw(t, "taper"))
	m.Nose = Nose(rapid.IntRange(0, int(noseEnd)-1).Draw(t, "nose"))
	if rapid.Bool().Draw(t, "with flank") {
		m.Flank = Gauge(rapid.Float64Range(50, 65).Draw(t, "flank"))
	}
	m.Country = rapid.SampledFrom([]string{"", "NZ", "usa", "Middle Europe", "Japan"}).Draw(t, "country")
	return m, f
}

// Whatever is measured, the probabilities are some, fall, and sum to 1.
func TestProbabilitiesSumToOne(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		m, _ := anyMeasured(t)
		id, err := Identify(m)
		require.NoError(t, err)
		sum, last := 0.0, math.Inf(1)
		for _, c := range id.Candidates {
			require.True(t, c.Probability > 0 && c.Probability <= last*(1+1e-6), "%v", id.Candidates)
			sum, last = sum+c.Probability, c.Probability
			if only := c.Form.Family.Facts().Only; only != threads.NoSex {
				require.Equal(t, only, c.Sex)
			}
		}
		require.InDelta(t, 1, sum, 1e-9)
		require.True(t, id.None >= 0 && id.None <= 1)
		require.NotEmpty(t, id.Next.Text)
		again, err := Identify(m)
		require.NoError(t, err)
		require.Equal(t, id, again, "the same figures give the same answer")
	})
}

// worth is the probability that the figures are of a form, strangers counted.
func worth(t require.TestingT, m Measured, f *threads.Form) float64 {
	b, err := posterior(&m)
	require.NoError(t, err)
	for _, g := range b.guesses {
		if g.form == f {
			return g.p * (1 - b.none)
		}
	}
	return 0
}

// A figure that agrees exactly with a thread never makes that thread less likely.
func TestExactAgreementNeverLowers(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		m, f := anyMeasured(t)
		m.Pitch, m.Taper, m.Flank = Gauged{}, 0, Gauged{}
		before := worth(t, m, f)
		for _, step := range []func(){
			func() { m.Pitch = Gauge(float64(f.Pitch)) },
			func() { m.Taper = asMeasured(f, threads.NoSex).Taper },
			func() { m.Flank = Gauge(float64(f.Flank)) },
		} {
			step()
			after := worth(t, m, f)
			require.GreaterOrEqual(t, after, before*(1-1e-12), "%s: %+v", f.Designation, m)
			before = after
		}
	})
}

// A pitch, an angle or a diameter nearer to a thread's own is never less likely.
// NPT is left out of the diameters: its crests gather at the outside of the pipe.
func TestNearerIsNeverLessLikely(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		m, f := anyMeasured(t)
		far := rapid.Float64Range(0, 0.4).Draw(t, "far")
		near := far * rapid.Float64Range(0, 1).Draw(t, "nearer")
		if rapid.Bool().Draw(t, "below") {
			near, far = -near, -far
		}
		p := float64(f.Pitch)
		require.GreaterOrEqual(t, pitchDensity(p, Gauge(p*math.Exp(near))), pitchDensity(p, Gauge(p*math.Exp(far))))
		require.GreaterOrEqual(t, flankDensity(float64(f.Flank), float64(f.Flank)+20*near), flankDensity(float64(f.Flank), float64(f.Flank)+20*far))
		if f.Family == threads.NPT || f.Family == threads.NPTF || m.Sex == threads.NoSex {
			return
		}
		s := crestAt(f, m.Sex, 0.5)
		middle := (s.least+s.most)/2 - crestWear/4
		require.GreaterOrEqual(t, diameterDensity(f, m.Sex, middle+5*near), diameterDensity(f, m.Sex, middle+5*far)*(1-0.02), f.Designation)
	})
}

// A diameter's density is one: it integrates to 1 over the diameters.
func TestDiameterDensityIsOne(t *testing.T) {
	for _, words := range []string{"G 1/2 male", "R 2 male", "NPT 1 male", "NPT 1/8 female", "Rc 1 female", "M M22x1.5 male", "MT M22x1.5 male"} {
		e := endtest.EndOf(t, words)
		sum := 0.0
		for x := 2.0; x < 80; x += 0.01 {
			sum += diameterDensity(e.Form, e.Sex, x) * 0.01
		}
		require.InDelta(t, 1, sum, 1e-6, words)
	}
}

// Basic diameter and pitch alone find every thread that is commonly met. The one
// exception is G 3/4 at the very top of its tolerance, where 3/4 NPT is as likely.
func TestBasicFigures(t *testing.T) {
	weights, err := familyWeights("")
	require.NoError(t, err)
	for _, family := range endtest.ThreadFamilies() {
		if family.Facts().Only == threads.Female || weights[family] < commonWeight {
			continue
		}
		for _, f := range threads.Forms(family) {
			id := identify(t, Measured{Sex: threads.Male, Diameter: Gauge(float64(f.Major)), Pitch: Gauge(float64(f.Pitch))})
			require.False(t, id.NothingFits(), f.Designation)
			first := id.Candidates[0].Form
			require.InDelta(t, float64(f.Major), float64(first.Major), 1e-3, "%s is taken for %s", f.Designation, first.Designation)
			require.InDelta(t, float64(f.Pitch), float64(first.Pitch), 1e-3, "%s is taken for %s", f.Designation, first.Designation)
		}
	}
}
