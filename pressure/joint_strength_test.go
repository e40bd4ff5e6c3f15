package pressure_test

import (
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"handtight/pressure"
	"handtight/pressure/quantity"
	"handtight/threads"
)

func TestEndLoad(t *testing.T) {
	const source = `page "Hydraulic product calculator", force = pressure x area, worked by hand`
	require.InDelta(t, 2380, pressure.EndLoad(69*quantity.Bar, 20.955).Newtons(), 5, "G 1/2 at its major diameter: "+source)
	require.InDelta(t, 780, pressure.EndLoad(69*quantity.Bar, 12).Newtons(), 5, "a seal of 12 mm: "+source)
	require.Zero(t, pressure.EndLoad(0, 12))
}

func TestAllowableStress(t *testing.T) {
	for _, c := range []struct {
		why, material string
		mpa           float64
		source        string
	}{
		{"316 pipe", "316", 137.9, "ASTM A312 TP316, 20 ksi"},
		{"316L", "316L", 115, "ASTM A312 TP316L; acadri01/Conduit MaterialLibrary.cs, ASME B31.3 table A-1"},
		{"a stainless of no grade is 316L", "inox", 115, "the same"},
		{"duplex", "2205", 207, "ASTM A790 S31803, the same"},
		{"super duplex is the lower of two", "super duplex", 250, "ASTM A790 S32760, the same"},
		{"titanium", "titanium", 115, "ASTM B337 grade 2, the same"},
		{"copper", "copper", 41, "ASTM B42 annealed, the same"},
		{"904L by its yield strength", "904L", 146, "ASME B31.3 302.3.2(d), 2/3 of 220 MPa worked by hand: 146.7"},
		{"malleable iron", "malleable iron", 55.2, "ASME B31.3-2012 table A-1, ASTM A197, 8.0 ksi"},
		{"brass, at half of stainless", "brass", 68.9, `page "NPT pipe end pressure ratings" table 6: 0.49 to 0.51 of 316`},
	} {
		got, ok := pressure.AllowableStress(c.material)
		require.True(t, ok, c.why)
		require.InDelta(t, c.mpa, got.Value.MPa(), 0.1, c.source)
		require.NotEmpty(t, got.Source)
	}
	for _, unknown := range []string{"pom", "", "unobtainium"} {
		_, ok := pressure.AllowableStress(unknown)
		require.False(t, ok, unknown)
		require.Contains(t, pressure.StressGap(unknown), "`"+unknown+"`", "it says which word")
	}
	require.Empty(t, pressure.StressGap("316"))
}

// jointOf gives the strength's question for a male and a female of one family and size.
func jointOf(t testing.TB, family threads.Family, size string) pressure.ThreadedJoint {
	f, ok := threads.Find(family, size)
	require.True(t, ok)
	m := threads.Mate(threads.Threaded(f, threads.Male), threads.Threaded(f, threads.Female))
	external, internal, ok := m.ShearArea()
	require.True(t, ok)
	return pressure.ThreadedJoint{External: quantity.Area(external) * quantity.SquareMM, Internal: quantity.Area(internal) * quantity.SquareMM, Seal: quantity.Length(f.Major), Male: "316", Female: "316"}
}

// Threads that are cut and engaged properly are not what bursts: the class 3000
// fitting's own rating (ASME B16.11: 207 bar as traded; more by its wall) is below
// what its joint's threads bear.
func TestJointStrengthOfProperJoints(t *testing.T) {
	for _, size := range []string{"1/4", "3/8", "1/2", "3/4"} {
		r, ok := pressure.JointStrength(jointOf(t, threads.NPT, size))
		require.True(t, ok)
		require.Equal(t, pressure.Estimate, r.Basis)
		require.Greater(t, r.Pressure.Bar(), 207.0, "%s: %s", size, r)
		require.Less(t, r.Pressure.Bar(), 2500.0, "%s: %s", size, r)
	}
}

// Worked by hand: 100 mm2 of brass thread at 68.9 MPa x 0.577 bear 3978 N, on a seal
// of 20 mm (314.2 mm2) 126.6 bar.
func TestJointStrengthByHand(t *testing.T) {
	r, ok := pressure.JointStrength(pressure.ThreadedJoint{External: 100 * quantity.SquareMM, Internal: 150 * quantity.SquareMM, Male: "brass", Female: "316", Seal: 20})
	require.True(t, ok)
	require.InDelta(t, 126.6, r.Pressure.Bar(), 0.2)
	require.Contains(t, r.Text, "100 mm2 of the male thread (brass")
	r, ok = pressure.JointStrength(pressure.ThreadedJoint{External: 100 * quantity.SquareMM, Internal: 150 * quantity.SquareMM, Male: "316", Female: "brass", Seal: 20})
	require.True(t, ok)
	require.InDelta(t, 189.9, r.Pressure.Bar(), 0.3, "the weaker material decides though its area is larger")
	for _, c := range []struct {
		why string
		j   pressure.ThreadedJoint
	}{
		{"no area", pressure.ThreadedJoint{Internal: 1, Male: "316", Female: "316", Seal: 20}},
		{"no diameter", pressure.ThreadedJoint{External: 1, Internal: 1, Male: "316", Female: "316"}},
		{"a material without a stress", pressure.ThreadedJoint{External: 1, Internal: 1, Male: "316", Female: "acetal", Seal: 20}},
	} {
		_, ok := pressure.JointStrength(c.j)
		require.False(t, ok, c.why)
	}
}

// At the estimated pressure the end load is what the threads bear, and an estimate
// never takes the place of a rating that is known.
func TestJointStrengthProperties(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		area := rapid.Float64Range(1, 1e4)
		j := pressure.ThreadedJoint{
			External: quantity.Area(area.Draw(t, "external")) * quantity.SquareMM,
			Internal: quantity.Area(area.Draw(t, "internal")) * quantity.SquareMM,
			Male:     "316", Female: "316",
			Seal: quantity.Length(rapid.Float64Range(5, 60).Draw(t, "seal")),
		}
		r, ok := pressure.JointStrength(j)
		require.True(t, ok)
		s, _ := pressure.AllowableStress("316")
		require.InEpsilon(t, min(j.External, j.Internal).SquareMM()*s.Value.MPa()*0.577, float64(pressure.EndLoad(r.Pressure, j.Seal)), 1e-9)
		sheet := pressure.OfDataSheet(100*quantity.Bar, "x")
		got, _ := pressure.Governing(r, sheet)
		require.Equal(t, sheet, got)
		_, ok = pressure.Proof(r)
		require.False(t, ok, "an estimate has no test pressure")
	})
}
