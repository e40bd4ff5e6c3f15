package identify

import (
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"handtight/threads"
	"handtight/threads/internal/endtest"
	"handtight/threads/internal/table"
)

// entropyOf is that of the ranking after one more figure, and the density of the
// figure, from scratch: nothing of the shortcut that chooses the question. A rough
// count made before is kept beside the new one.
func entropyOf(t testing.TB, m Measured, before Gauged) (bits, density float64) {
	weights, err := familyWeights(m.Country)
	require.NoError(t, err)
	var joint []float64
	for _, family := range endtest.ThreadFamilies() {
		for _, f := range threads.Forms(family) {
			p := 0.0
			for _, sex := range possibleSexes(m.Sex, family) {
				if sex != threads.NoSex {
					p += weights[family] * Common(f) * m.likelihood(f, sex)
				}
			}
			if before.Known {
				p *= pitchDensity(float64(f.Pitch), before)
			}
			joint, density = append(joint, p), density+p
		}
	}
	for _, p := range joint {
		if p > 0 {
			bits -= p / density * math.Log2(p/density)
		}
	}
	return bits, density
}

// bruteForce tries every answer to a question, one by one, and gives the expected
// drop of the entropy in bits.
func bruteForce(t testing.TB, m Measured, a Ask) float64 {
	var answers []Measured
	switch a {
	case AskTaper:
		for _, seen := range []Taper{NoTaper, Tapered} {
			with := m
			with.Taper = seen
			answers = append(answers, with)
		}
	case AskNose:
		for n := PlainNose; n < noseEnd; n++ {
			with := m
			with.Nose = n
			answers = append(answers, with)
		}
	case AskFlank:
		for _, v := range []float64{55, 60} {
			with := m
			with.Flank = Gauge(v)
			answers = append(answers, with)
		}
	case AskPitch:
		for p := math.Log(leastPitch); p < math.Log(mostPitch); p += 0.004 {
			with := m
			with.Pitch = Gauge(math.Exp(p))
			answers = append(answers, with)
		}
	case AskDiameter:
		for _, sex := range []threads.Sex{threads.Male, threads.Female} {
			for d := 3.0; d < 130; d += 0.1 {
				with := m
				with.Sex, with.Diameter = sex, Gauge(d)
				if m.Sex == threads.NoSex || m.Sex == sex {
					answers = append(answers, with)
				}
			}
		}
	}
	now, _ := entropyOf(t, m, Gauged{})
	var before Gauged
	if a == AskPitch {
		before = m.Pitch
	}
	after, total := 0.0, 0.0
	for _, with := range answers {
		if bits, density := entropyOf(t, with, before); density > 0 {
			after, total = after+density*bits, total+density
		}
	}
	return now - after/total
}

// The question that is asked is the best by trying every answer to every
// question, to within what the coarser steps of the shortcut cost.
func TestNextIsBestByBruteForce(t *testing.T) {
	const steps = 0.2 // bits: leaves of a gauge and quarters of a millimetre against a continuum
	for _, c := range []struct {
		why string
		m   Measured
	}{
		{"half inch pipe", Measured{Sex: threads.Male, Diameter: Gauge(20.9), Pitch: perInch(14)}},
		{"and its taper", Measured{Sex: threads.Male, Diameter: Gauge(20.9), Pitch: perInch(14), Taper: Tapered}},
		{"a diameter alone", Measured{Sex: threads.Male, Diameter: Gauge(13.1)}},
		{"a female's", Measured{Sex: threads.Female, Diameter: Gauge(18.8)}},
		{"a female port without a diameter", Measured{Sex: threads.Female, Pitch: perInch(14)}},
		{"a pitch alone", Measured{Pitch: Gauge(1.5)}},
		{"a rough pitch and a diameter", Measured{Sex: threads.Male, Diameter: Gauge(33.1), Pitch: about(perInch(11))}},
		{"unified threads", Measured{Sex: threads.Male, Diameter: Gauge(14.2), Pitch: perInch(18)}},
		{"a cone", Measured{Nose: NoseCone37}},
		{"in America", Measured{Sex: threads.Male, Diameter: Gauge(26.8), Country: "US"}},
		{"nothing", Measured{}},
	} {
		t.Run(c.why, func(t *testing.T) {
			gains, err := Gains(c.m)
			require.NoError(t, err)
			best := 0.0
			for _, g := range gains {
				by := bruteForce(t, c.m, g.Ask)
				require.InDelta(t, by, g.Bits, steps, "%s", g.Ask)
				best = max(best, by)
			}
			require.GreaterOrEqual(t, bruteForce(t, c.m, gains[0].Ask), best-steps, "asked for the %s", gains[0].Ask)
			if id := identify(t, c.m); id.Next.Ask != 0 {
				require.Equal(t, gains[0].Ask, id.Next.Ask)
				require.InDelta(t, gains[0].Bits, id.Next.Gain, 1e-12)
			}
		})
	}
}

// A question that has been answered is not asked again; a rough pitch may be.
func TestAskedOnce(t *testing.T) {
	m := Measured{Sex: threads.Male, Diameter: Gauge(20.9), Pitch: perInch(14), Taper: Tapered, Flank: Gauge(55), Nose: PlainNose}
	gains, err := Gains(m)
	require.NoError(t, err)
	require.Empty(t, gains)
	m.Pitch.Rough = true
	gains, err = Gains(m)
	require.NoError(t, err)
	require.Len(t, gains, 1)
	require.Equal(t, AskPitch, gains[0].Ask)
}

// Answering the questions as they come finds each commonly met thread in at most
// four, or leaves only threads that no measurement tells apart.
func TestQuestionsLeadHome(t *testing.T) {
	for _, words := range []string{
		"G 1/2 male", "R 1/2 male", "NPT 1/2 male", "NPT 1/4 female", "Rc 3/4 female", "JIC -6 male", "ORB -8 female", "ORFS -8 male", "NH 3/4 male",
	} {
		e := endtest.EndOf(t, words)
		full, m := asMeasured(e.Form, e.Sex), Measured{}
		for asked := 0; ; asked++ {
			require.LessOrEqual(t, asked, 4, words)
			id := identify(t, m)
			switch id.Next.Ask {
			case AskTaper:
				m.Taper = full.Taper
			case AskNose:
				m.Nose = full.Nose
			case AskPitch:
				m.Pitch = full.Pitch
			case AskDiameter:
				m.Sex, m.Diameter = full.Sex, full.Diameter
			case AskFlank:
				m.Flank = full.Flank
			default:
				require.Equal(t, e.Form.Designation, id.Candidates[0].Form.Designation, words)
			}
			if id.Next.Ask == 0 {
				break
			}
		}
	}
}

// The tables that the weights rest on name families and noses that exist, no
// country twice, and each family's noses share out to 1.
func TestIdentifyTables(t *testing.T) {
	seen := map[string]string{}
	for _, r := range table.Read(tables, "table/country.csv") {
		listed := map[string]bool{}
		for _, name := range append(barred(r["common"]), barred(r["seldom"])...) {
			f, ok := threads.FamilyNamed(name)
			require.True(t, ok && f.Threaded(), "%s: %q", r["region"], name)
			require.False(t, listed[name], "%s lists %s twice", r["region"], name)
			listed[name] = true
		}
		for _, name := range barred(r["names"]) {
			require.Empty(t, seen[name], "%s stands in two regions", name)
			seen[name] = r["region"]
			_, err := familyWeights(name)
			require.NoError(t, err)
		}
	}
	shares := map[string]float64{}
	for _, r := range table.Read(tables, "table/nose.csv") {
		_, ok := NoseNamed(r["nose"])
		require.True(t, ok, r["nose"])
		shares[r["family"]] += r.Number("share")
	}
	for _, f := range endtest.ThreadFamilies() {
		require.InDelta(t, 1, shares[f.String()], 1e-9, f.String())
		delete(shares, f.String())
	}
	require.Empty(t, shares)
	require.Len(t, Countries(), len(table.Read(tables, "table/country.csv"))-1)
}

func TestNoseOfCone(t *testing.T) {
	for _, c := range []struct {
		why   string
		angle float64
		nose  Nose
	}{
		{"to the axis", 37, NoseCone37}, {"across", 74, NoseCone37}, {"45 to the axis", 45, NoseCone45}, {"90 across", 90, NoseCone45},
		{"24 in all", 24, NoseCone24}, {"12 to the axis", 12, NoseCone24}, {"60 in all", 60, NoseCone60}, {"30 to the axis", 30, NoseCone60},
		{"a gauge read two degrees off", 39, NoseCone37}, {"between the cones", 52, 0}, {"no cone", 0, 0},
	} {
		nose, ok := NoseOfCone(c.angle)
		require.Equal(t, c.nose, nose, c.why)
		require.Equal(t, c.nose != 0, ok, c.why)
	}
}

// BenchmarkIdentify should stay under a millisecond for a diameter and a pitch.
func BenchmarkIdentify(b *testing.B) {
	m := Measured{Sex: threads.Male, Diameter: Gauge(20.9), Pitch: perInch(14)}
	for b.Loop() {
		if _, err := Identify(m); err != nil {
			b.Fatal(err)
		}
	}
}

// BenchmarkIdentifyNothing is the dearest question: nothing is known.
func BenchmarkIdentifyNothing(b *testing.B) {
	for b.Loop() {
		if _, err := Identify(Measured{}); err != nil {
			b.Fatal(err)
		}
	}
}

func barred(list string) []string {
	return strings.FieldsFunc(list, func(r rune) bool { return r == '|' })
}
