package threads

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"
)

// The proof of the model: a taper screwed into its like must give back its
// standard's hand-tight engagement, though nothing in the model holds it. Middle
// parts: NPT's L1 (ASME B1.20.1 table 2), ISO 7-1's gauge length. The span from
// the loosest to the tightest parts: the standard's gauge tolerances, a turn for
// each NPT end (ASME B1.20.1 par. 3.2.1), and ISO 7-1's 1 and 1.25 turns (1.5
// and 1.5 from 2 1/2 up).
func TestProofTapers(t *testing.T) {
	n := 0
	for _, pair := range [][2]Family{{NPT, NPT}, {NPTF, NPTF}, {NPT, NPTF}, {NPTF, NPT}, {R, Rc}, {R, Rp}} {
		for _, e := range Forms(pair[0]) {
			i, ok := Find(pair[1], e.Size)
			if !ok {
				continue // NPTF stops at 3 in
			}
			n++
			m := Mate(Threaded(e, Male), Threaded(i, Female))
			name := e.Designation + " in " + i.Designation
			require.InDelta(t, float64(e.HandTightTurns()), m.typical, 0.02, "%s, middle parts", name)
			require.True(t, m.Hand.Known, name)
			turns := toleranceTurns(pair[1], e.Size)
			require.InDelta(t, turns, float64(m.Hand.Loosest)-m.typical, 0.02, "%s, loosest", name)
			require.InDelta(t, turns, m.typical-float64(m.Hand.Tightest), 0.02, "%s, tightest", name)
			require.Equal(t, Flank, m.First, name)
			require.True(t, m.Verdict.Holds(), name)
		}
	}
	require.Equal(t, 14+12+12+12+13+13, n)
}

func toleranceTurns(f Family, size string) float64 {
	switch {
	case f == NPT || f == NPTF:
		return 1 + 1
	case SizeInches(size) >= 2.5:
		return 1.5 + 1.5
	}
	return 1 + 1.25
}

// Parallels of one kind are made to run free: no surface meets, not even in the
// tightest parts that the standard passes.
func TestProofParallels(t *testing.T) {
	for _, family := range []Family{G, M, NPSM, NPS, NH, UN, JIC, SAE45, ORB, ORFS, ISO6149, Cone24L, Cone24S} {
		for _, f := range Forms(family) {
			m := Mate(Threaded(f, Male), Threaded(f, Female))
			require.False(t, m.Hand.Known, f.Designation)
			require.False(t, m.Binding.Known, f.Designation)
			tight := meet(f.external(f.outside.tight), f.internal(f.inside.tight))
			require.True(t, math.IsInf(tight.turns(), 1), "%s meets after %.2f turns", f.Designation, tight.turns())
		}
	}
}

// Every parallel pair engages a good share of its height: none is loose.
func TestProofDepth(t *testing.T) {
	for _, family := range Families() {
		if family.Facts().Tapered || family == Rp {
			continue
		}
		for _, f := range Forms(family) {
			m := Mate(Threaded(f, Male), Threaded(f, Female))
			require.Greater(t, m.Depth, 0.6, f.Designation)
			require.LessOrEqual(t, m.Depth, 1.0, f.Designation)
		}
	}
}

// Hand tight, the pitch lines of a taper and its like coincide: ISO 7-1 threads
// engage their whole height, NPT all but the truncation of middling crests.
func TestProofTaperDepth(t *testing.T) {
	for _, f := range Forms(R) {
		m := Mate(Threaded(f, Male), endOf(t, "Rc "+f.Size+" female"))
		require.InDelta(t, 1, m.Depth, 0.001, f.Designation)
	}
	for _, f := range Forms(NPT) {
		m := Mate(Threaded(f, Male), Threaded(f, Female))
		crest := (f.outside.tight.crestAdd + f.outside.loose.crestAdd) / 2
		require.InDelta(t, float64(2*crest/f.height), m.Depth, 0.002, f.Designation)
	}
}
