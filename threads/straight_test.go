package threads

import (
	"testing"

	"github.com/stretchr/testify/require"
)

// The basic pitch diameter of the straight threads is E1 of the taper thread
// (ASME B1.20.1-2013 par. 6.1.3); printed limits round to 0.0001 in.
func TestStraightIsE1(t *testing.T) {
	for _, family := range []Family{NPSM, NPS} {
		require.Len(t, Forms(family), 13)
		for _, f := range Forms(family) {
			npt, ok := Find(NPT, f.Size)
			require.True(t, ok)
			require.InDelta(t, float64(npt.PitchDia), float64(f.PitchDia), 0.0015, f.Designation)
			require.Equal(t, npt.TPI, f.TPI, f.Designation)
		}
	}
}

// The class formula against the five printed NPSM rows (Machinery's Handbook,
// 27th ed., American pipe threads, Table 5). Seven of the eight diameters agree
// within 0.02 mm; the greatest minor of the internal thread does not follow the
// rule of class 2B: the print is closer by up to 0.11 mm (and wider once by 0.02).
func TestClassLimitsAgainstPrinted(t *testing.T) {
	seen := 0
	for _, r := range readTable("npsm.csv") {
		if r["confidence"] != "seen" {
			continue
		}
		seen++
		p := Inch / Length(r.number("tpi"))
		u := unified(NPSM, r["size"], r.mm("int_pitch_min_mm")+Length(0.75*sharpHeight60)*p, p)
		for _, c := range []struct {
			column string
			got    float64
			within float64
		}{
			{"ext_pitch_max_mm", float64(u.outside.tight.pitch), 0.02},
			{"ext_pitch_min_mm", float64(u.outside.loose.pitch), 0.02},
			{"ext_major_max_mm", crestOf(u.outside.tight, 1), 0.02},
			{"ext_major_min_mm", crestOf(u.outside.loose, 1), 0.02},
			{"int_pitch_min_mm", float64(u.inside.tight.pitch), 0.02},
			{"int_pitch_max_mm", float64(u.inside.loose.pitch), 0.02},
			{"int_minor_min_mm", crestOf(u.inside.tight, -1), 0.02},
			{"int_minor_max_mm", crestOf(u.inside.loose, -1), 0.11},
		} {
			require.InDelta(t, r.number(c.column), c.got, c.within, "%s of %s", c.column, r["size"])
		}
	}
	require.Equal(t, 5, seen)
}

// The garden hose: the two majors (ASME B1.20.7 as in BelfrySCAD/BOSL2
// threading.scad) and the coupling's least minor, 0.9595 in (`memory`).
func TestGardenHose(t *testing.T) {
	f, ok := Find(NH, "3/4")
	require.True(t, ok)
	require.InDelta(t, 25.4*1.0625, crestOf(f.outside.tight, 1), 0.001)
	require.InDelta(t, 25.4*1.0725, float64(f.inside.tight.pitch+2*f.inside.tight.rootAdd), 0.001)
	require.InDelta(t, 25.4*0.9595, crestOf(f.inside.tight, -1), 0.003)
}
