package threads

import (
	"testing"

	"github.com/stretchr/testify/require"
)

// Source of the formulas: ISO 228-1 and ISO 7-1, thread form: h = 0.640327 p,
// d2 = d - h, d1 = d - 2h, p = 25.4/tpi; class A has half of class B's tolerance
// on the pitch diameter (ISO 228-1). Figures: each row's own source.
func TestBSPFormulas(t *testing.T) {
	rows := readTable("bsp.csv")
	require.Len(t, rows, 20)
	for _, r := range rows {
		t.Run(r["size"], func(t *testing.T) {
			p := 25.4 / r.number("tpi")
			h := 0.640327 * p
			require.InDelta(t, p, r.number("pitch_mm"), 0.0006, "pitch")
			require.InDelta(t, h, r.number("height_mm"), 0.0006, "height")
			require.InDelta(t, r.number("major_d_mm")-h, r.number("pitch_d2_mm"), 0.001, "pitch diameter")
			require.InDelta(t, r.number("major_d_mm")-2*h, r.number("minor_d1_mm"), 0.0015, "minor")
			require.InDelta(t, r.number("g_pitch_tol_ext_B_mm"), 2*r.number("g_pitch_tol_ext_A_mm"), 0.0011, "class A is half of B")
		})
	}
}

// ISO 7-1 gives its lengths in whole parts of a turn: gauge tolerance 1 turn (1.5
// from 2 1/2 up), female 1.25 turns (1.5). The useful thread beyond the gauge
// plane is 2.75 to 5 turns, in quarters (JIS B 0203:1999, same thread).
func TestJointingTurns(t *testing.T) {
	seen := 0
	for _, r := range readTable("bsp.csv") {
		if r["in_iso7_R"] != "yes" {
			continue
		}
		seen++
		p := 25.4 / r.number("tpi")
		male, female := 1.0, 1.25
		if SizeInches(r["size"]) >= 2.5 {
			male, female = 1.5, 1.5
		}
		require.Equal(t, male, r.number("r_gauge_tol_turns"), r["size"])
		require.Equal(t, female, r.number("r_internal_tol_turns"), r["size"])
		turns := r.number("r_useful_beyond_gauge_mm") / p
		require.InDelta(t, 0, 4*turns-float64(int(4*turns+0.5)), 0.12, "%s: %.3f turns beyond the gauge plane", r["size"], turns)
		require.InDelta(t, r.number("r_gauge_length_mm")+r.number("r_useful_beyond_gauge_mm"), r.number("r_useful_thread_basic_mm"), 0.06, r["size"])
	}
	require.Equal(t, seen, len(Forms(R)))
	require.Equal(t, seen, len(Forms(Rc)))
	require.Equal(t, seen, len(Forms(Rp)))
}

// The nut's minor diameters of a fittings supplier's G list (the source column
// of testdata/published/g_minor.csv): two misprints of the page stand marked.
func TestGMinorAgainstPublished(t *testing.T) {
	for _, r := range published(t, "g_minor.csv") {
		g, ok := Find(G, r["size"])
		require.True(t, ok)
		require.InDelta(t, r.number("minor_max_mm"), crestOf(g.inside.loose, -1), 0.0025, "greatest minor of %s", r["size"])
		if r["note"] == "" {
			require.InDelta(t, r.number("minor_min_mm"), crestOf(g.inside.tight, -1), 0.0025, "least minor of %s", r["size"])
		}
	}
}

func TestClassA(t *testing.T) {
	b := endOf(t, "G 1/2 male")
	a := b
	a.ClassA = true
	i := endOf(t, "G 1/2 female")
	wide, closer := Mate(b, i), Mate(a, i)
	// ISO 228-1, G 1/2: 0.284 mm for class B, 0.142 for class A; middles differ by half the difference
	require.InDelta(t, 0.071, float64(closer.Virtual-wide.Virtual), 0.001)
	require.Equal(t, "G 1/2 A male", a.String())
}
