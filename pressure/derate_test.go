package pressure

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"handtight/pressure/quantity"
)

// Published factors by the page that each was taken from, at the degrees
// Fahrenheit it prints. The PVC rows are from a second page, "Temperature
// derating - schedule 40 and 80", which differs from the handbook by 0.01 twice.
func TestDerateMaterialAgainstPublishedFactors(t *testing.T) {
	for _, c := range []struct {
		why, material string
		f, factor     float64
	}{
		{"PVC at its rated temperature", "PVC", 73.04, 1.00},
		{"PVC", "PVC", 80, 0.88},
		{"PVC", "uPVC", 90, 0.75},
		{"PVC", "PVC", 100, 0.62},
		{"PVC, the pages differ by 0.01", "PVC", 110, 0.51},
		{"PVC", "PVC", 120, 0.40},
		{"PVC, the pages differ by 0.01", "PVC", 130, 0.31},
		{"PVC", "PVC", 140, 0.22},
		{"polypropylene", "PP", 100, 0.85},
		{"polypropylene", "polypropylene", 140, 0.65},
		{"PVDF", "PVDF", 120, 0.68},
		{"CPVC by the plastics manual", "CPVC", 150, 0.47},
		{"polyethylene at 40 C", "PE100", 104, 0.74},
		{"316 tube keeps all of it", "316L", 200, 1},
		{"copper tube at 93 C", "copper", 199.4, 0.8},
		{"push-in to 65 C: 10 of 16 bar", "push-in fitting", 149, 0.625},
	} {
		t.Run(c.why, func(t *testing.T) {
			f, err := DerateMaterial(c.material, quantity.Temperature((c.f-32)/1.8))
			require.NoError(t, err)
			require.InDelta(t, c.factor, f.Value, 0.011)
			require.NotEmpty(t, f.Source)
		})
	}
}

func TestDerateMaterial(t *testing.T) {
	for _, c := range []struct {
		why, material string
		at            quantity.Temperature
		want          float64
	}{
		{"colder than rated is never more", "PVC", 17, 1},
		{"half way between 38 and 43 C is half way between the factors", "PVC", 40.55, 0.56},
		{"push-in goes by steps: 45 C is rated as 65", "push-in fitting", 45, 0.625},
		{"push-in just at 30 C", "push-in fitting", 30, 1},
		{"cast class 150 in an engine space", "class 150", 45, 1},
		{"brass of class 125 to 66 C", "DZR brass", 45, 1},
	} {
		t.Run(c.why, func(t *testing.T) {
			f, err := DerateMaterial(c.material, c.at)
			require.NoError(t, err)
			require.InDelta(t, c.want, f.Value, 1e-9)
		})
	}
	_, err := DerateMaterial("PVC", 61)
	require.EqualError(t, err, "PVC is not rated at 61 C, only from 0 C to 60 C; choose another material or bring the temperature inside")
	_, err = DerateMaterial("threaded PVC", 45)
	require.EqualError(t, err, "threaded PVC is not rated at 45 C, only from 0 C to 43.3 C; choose another material or bring the temperature inside", "page \"Temperature derating - schedule 40 and 80\": not above 110 F")
	_, err = DerateMaterial("PVC", -1)
	var outside *RangeError
	require.ErrorAs(t, err, &outside)
	_, err = DerateMaterial("PVC", quantity.Temperature(math.NaN()))
	require.ErrorAs(t, err, &outside)
	_, err = DerateMaterial("PVVC", 20)
	require.EqualError(t, err, `no temperature table for "PVVC"; did you mean "PVC"? known are PVC, threaded PVC, CPVC, PP, PVDF, PE, 304, 316, steel, copper, alloy 400, class 150, push-in fitting, brass, bronze`)
}

func TestApply(t *testing.T) {
	pipe := Rating{Pressure: 230 * quantity.PSI, Basis: FittingClass, Text: "10 inch schedule 80 PVC", Status: Seen}
	f, err := DerateMaterial("PVC", quantity.Temperature((120.0-32)/1.8))
	require.NoError(t, err)
	hot := f.Apply(pipe)
	require.InDelta(t, 92, hot.Pressure.PSI(), 0.5, `page "Temperature derating - schedule 40 and 80": 230 psi at 120 F is 92 psi`)
	require.Contains(t, hot.Text, "10 inch schedule 80 PVC, times 0.4")
	same := Factor{Value: 1}.Apply(pipe)
	require.Equal(t, pipe, same)
}

func TestHotterIsNeverBetter(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		m := rapid.SampledFrom([]string{"PVC", "CPVC", "PP", "PVDF", "PE", "316", "copper", "push-in fitting", "class 150"}).Draw(t, "material")
		a := rapid.Float64Range(0, 60).Draw(t, "a")
		b := rapid.Float64Range(a, 60).Draw(t, "b")
		cold, err := DerateMaterial(m, quantity.Temperature(a))
		hot, err2 := DerateMaterial(m, quantity.Temperature(b))
		if err != nil || err2 != nil || hot.Value > cold.Value+1e-12 || hot.Value <= 0 || cold.Value > 1 {
			t.Fatalf("%s: %v at %v, %v at %v (%v %v)", m, cold.Value, a, hot.Value, b, err, err2)
		}
	})
}

// EN 853:2015, EN 854:2015 and EN 857:2015 scopes: water of 0 to 70 C.
func TestDerateHose(t *testing.T) {
	for _, c := range []struct {
		why        string
		spec       Spec
		water, air quantity.Temperature
		status     Status
	}{
		{"a boat's water and engine space", "2SN", 17, 45, Seen},
		{"water just at its limits", "1TE", 0, 100, Seen},
		{"the upper limit", "2SC", 70, -40, Seen},
		{"EN 855 is remembered", "100R8", 17, 45, Memory},
		{"no range is stated for R5", "100R5", 17, 45, Judgement},
	} {
		t.Run(c.why, func(t *testing.T) {
			f, err := DerateHose(c.spec, c.water, c.air)
			require.NoError(t, err)
			require.InDelta(t, 1, f.Value, 0)
			require.Equal(t, c.status, f.Status)
			require.NotEmpty(t, f.Source)
		})
	}
	for _, c := range []struct {
		why        string
		spec       Spec
		water, air quantity.Temperature
		want       string
	}{
		{"water too hot", "2SN", 71, 45, "EN 853 2SN (SAE 100R2AT) in water is not rated at 71 C, only from 0 C to 70 C; choose another material or bring the temperature inside"},
		{"ice", "2SN", -1, 45, "EN 853 2SN (SAE 100R2AT) in water is not rated at -1 C, only from 0 C to 70 C; choose another material or bring the temperature inside"},
		{"beside an exhaust", "100R8", 17, 110, "SAE 100R8 (EN 855 R8) in air is not rated at 110 C, only from -40 C to 93 C; choose another material or bring the temperature inside"},
	} {
		t.Run(c.why, func(t *testing.T) {
			_, err := DerateHose(c.spec, c.water, c.air)
			require.EqualError(t, err, c.want)
			var outside *RangeError
			require.ErrorAs(t, err, &outside)
		})
	}
	_, err := DerateHose("2NS", 17, 45)
	var unknown *UnknownError
	require.ErrorAs(t, err, &unknown)
	require.Equal(t, "2SN", unknown.Nearest)
}

func TestEveryHoseHasBothRanges(t *testing.T) {
	for _, s := range KnownSpecs() {
		n := 0
		for _, r := range hoseRanges() {
			if r.hose == string(s) {
				n++
				require.Contains(t, []string{"water", "air"}, r.medium)
			}
		}
		require.Equal(t, 2, n, "%s", s)
	}
}
