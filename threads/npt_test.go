package threads

import (
	"testing"

	"github.com/stretchr/testify/require"
)

// Half a unit of the last printed place, inches: five places and four.
const (
	fivePlaces = 0.000006
	fourPlaces = 0.00006
)

// Source of the formulas: ASME B1.20.1-1983/2013, paragraph 3 and table 2:
// E0 = D - (0.05 D + 1.1) p; E1 = E0 + L1/16; L2 = (0.80 D + 6.8) p;
// E2 = E0 + L2/16; E3 = E0 - L3/16 (L3 is 3 turns to 2 in, 2 turns beyond);
// height 0.8 p; vanish thread 3.47 p. Source of the figures: each row's own.
func TestNPTFormulas(t *testing.T) {
	rows := readTable("npt.csv")
	require.Len(t, rows, 14)
	for _, r := range rows {
		t.Run(r["size"], func(t *testing.T) {
			d, p := r.number("od_in"), 1/r.number("tpi")
			e0 := d - (0.05*d+1.1)*p
			require.InDelta(t, e0, r.number("e0_in"), fivePlaces, "E0")
			require.InDelta(t, e0+r.number("l1_in")/16, r.number("e1_in"), 2*fivePlaces, "E1")
			require.InDelta(t, (0.80*d+6.8)*p, r.number("l2_in"), fourPlaces, "L2")
			require.InDelta(t, e0+(0.80*d+6.8)*p/16, r.number("e2_in"), 2*fivePlaces, "E2")
			require.InDelta(t, e0-r.number("l3_turns")*p/16, r.number("e3_in"), 2*fivePlaces, "E3")
			require.InDelta(t, 0.8*p, r.number("height_max_in"), fivePlaces, "height")
			require.InDelta(t, e0-0.8*p, r.number("minor_small_end_k0_in"), 2*fivePlaces, "K0")
			require.InDelta(t, 3.47*p, r.number("vanish_in"), fourPlaces, "vanish thread")
			require.InDelta(t, r.number("l1_in")/p, r.number("l1_turns"), 0.011, "L1 in turns")
			require.InDelta(t, r.number("l2_in")/p, r.number("l2_turns"), 0.011, "L2 in turns")
			turns := 3.0
			if SizeInches(r["size"]) > 2 {
				turns = 2
			}
			require.Equal(t, turns, r.number("l3_turns"), "L3")
			if r.has("e1_seen_in") {
				require.InDelta(t, r.number("e1_seen_in"), r.number("e1_in"), 2*fivePlaces, "E1 as printed")
			}
			if r.has("l2_seen_in") {
				require.InDelta(t, r.number("l2_seen_in"), r.number("l2_in"), 2*fourPlaces, "L2 as printed")
			}
		})
	}
}

// The straight coupling's pitch limits stand 1.5 turns either way of E1, so that
// their mean is E1 (Machinery's Handbook, 27th ed., American pipe threads, Table
// 4, NPSC): a second printing of E1 that owes nothing to our table.
func TestNPTAgainstCouplings(t *testing.T) {
	rows := published(t, "npsc.csv")
	require.Len(t, rows, 13)
	for _, r := range rows {
		f, ok := Find(NPT, r["size"])
		require.True(t, ok, r["size"])
		low, high := r.number("pitch_min_mm"), r.number("pitch_max_mm")
		require.InDelta(t, (low+high)/2, float64(f.PitchDia), 0.003, "E1 of %s", r["size"])
		require.InDelta(t, 3*float64(f.Pitch)/16, high-low, 0.006, "three turns of %s", r["size"])
	}
}

// NPTF shares every pitch line and turn with NPT (page "NPT vs NPTF: What is the
// Difference"; ASME B1.20.3-1976 extract).
func TestNPTFAsNPT(t *testing.T) {
	require.Len(t, Forms(NPTF), 12)
	for _, f := range Forms(NPTF) {
		npt, ok := Find(NPT, f.Size)
		require.True(t, ok)
		require.Equal(t, npt.PitchDia, f.PitchDia, f.Designation)
		require.Equal(t, npt.HandTight, f.HandTight, f.Designation)
		require.Contains(t, f.Note, "were not seen", f.Designation)
	}
}
