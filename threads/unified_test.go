package threads

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

// Source: ASME B1.1 and ISO 68-2 basic profile: pitch diameter D - 0.649519 p,
// minor D - 1.082532 p; the thread's name gives D and the count. Figures are
// printed to four places of an inch.
func TestUnifiedFormulas(t *testing.T) {
	rows := readTable("unified.csv")
	require.Len(t, rows, 47)
	for _, r := range rows {
		name := r["family"] + " " + r["dash"] + " " + r["thread"]
		cut := strings.LastIndex(r["thread"], "-")
		d, p := r.number("major_in"), 1/r.number("tpi")
		require.Equal(t, r["tpi"], r["thread"][cut+1:], name)
		require.InDelta(t, SizeInches(strings.ReplaceAll(r["thread"][:cut], "-", " ")), d, fourPlaces, name)
		require.InDelta(t, d-0.649519*p, r.number("pitch_dia_in"), fourPlaces, name)
		require.InDelta(t, d-1.082532*p, r.number("minor_in"), fourPlaces, name)
		require.Less(t, r.number("tube_od_in"), d, name)
		require.InDelta(t, -SizeInches(r["dash"])/16, r.number("tube_od_in"), fourPlaces, "%s: the dash counts sixteenths of the tube", name)
	}
}

// 37 and 45 degree flares share these dashes and no others (page "Society of
// Automotive Engineers Thread (SAE)", instrumentation forum: not -6).
func TestFlaresShareThreads(t *testing.T) {
	var shared []string
	for _, f := range Forms(JIC) {
		if other, ok := Find(SAE45, f.Size); ok && other.Major == f.Major && other.TPI == f.TPI {
			shared = append(shared, f.Size)
		}
	}
	require.Equal(t, []string{"-2", "-3", "-4", "-5", "-8", "-10"}, shared)
}

// The threads that no flare and no port has are those that no other table gives, and of the size of their name: a numbered one is 0.060 in
// and 0.013 in for each number across. Source: ASME B1.1; basic sizes also in adrianschlatter/threadlib design/UIS_thread.csv.
func TestPortlessThreads(t *testing.T) {
	for _, c := range []struct {
		size       string
		major, tpi float64
	}{{"10-32", 0.060 + 0.013*10, 32}, {"1/4-28", 0.25, 28}} {
		f, ok := Find(UN, c.size)
		require.True(t, ok, c.size)
		require.InDelta(t, c.major, f.Major.Inches(), fourPlaces, c.size)
		require.Equal(t, c.tpi, f.TPI, c.size)
		for _, family := range []Family{JIC, ORB, SAE45, ORFS} {
			for _, o := range Forms(family) {
				require.False(t, o.Major == f.Major && o.TPI == f.TPI, "%s is the thread of %s", c.size, o.Designation)
			}
		}
	}
}

// A port and a flare of one dash share their thread (SAE J514 and SAE J1926-1).
func TestPortsShareThreads(t *testing.T) {
	for _, f := range Forms(ORB) {
		flare, ok := Find(JIC, f.Size)
		require.True(t, ok, f.Designation)
		require.Equal(t, flare.Major, f.Major, f.Designation)
		require.Equal(t, flare.TPI, f.TPI, f.Designation)
	}
}

// Classes 2A and 2B of threads that a fitting has, inches. Source: ASME B1.1-2003
// table of standard series limits: 5/8-18 as quoted in a page's list of unified
// limits, the others `memory`.
func TestUnifiedClasses(t *testing.T) {
	for _, c := range []struct {
		size                                   string
		majorMax, majorMin, pitchMax, pitchMin float64 // 2A
		minorMin, minorMax, innerMin, innerMax float64 // 2B
	}{
		{"5/8-18", 0.6236, 0.6149, 0.5875, 0.5828, 0.565, 0.578, 0.5889, 0.5949},
		{"9/16-18", 0.5611, 0.5524, 0.5250, 0.5205, 0.502, 0.515, 0.5264, 0.5323},
		{"3/4-16", 0.7485, 0.7391, 0.7079, 0.7029, 0.682, 0.696, 0.7094, 0.7159},
		{"7/8-14", 0.8734, 0.8631, 0.8270, 0.8216, 0.798, 0.814, 0.8286, 0.8356},
		{"10-32", 0.1891, 0.1831, 0.1688, 0.1658, 0.156, 0.164, 0.1697, 0.1736},
		{"1/4-28", 0.2490, 0.2425, 0.2258, 0.2225, 0.211, 0.220, 0.2268, 0.2311},
	} {
		t.Run(c.size, func(t *testing.T) {
			f, ok := Find(UN, c.size)
			require.True(t, ok)
			const close = 0.02 // mm
			require.InDelta(t, 25.4*c.pitchMax, float64(f.outside.tight.pitch), close)
			require.InDelta(t, 25.4*c.pitchMin, float64(f.outside.loose.pitch), close)
			require.InDelta(t, 25.4*c.innerMin, float64(f.inside.tight.pitch), close)
			require.InDelta(t, 25.4*c.innerMax, float64(f.inside.loose.pitch), close)
			require.InDelta(t, 25.4*c.majorMin, crestOf(f.outside.loose, 1), close)
			require.InDelta(t, 25.4*c.minorMin, crestOf(f.inside.tight, -1), close)
			require.InDelta(t, 25.4*c.minorMax, crestOf(f.inside.loose, -1), 0.04, "printed to three places")
			require.InDelta(t, 25.4*c.majorMax, crestOf(f.outside.tight, 1), 0.05, "the allowance is taken off the pitch diameter")
		})
	}
}
