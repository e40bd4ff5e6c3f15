package threads

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

// testdata/published/mating.csv holds 127 statements about pairs of ends: what
// hose makers, thread standards and fitters say of them (D, each with its
// source), and look-alike pairs computed from the basic sizes (C). 122 can be
// written as two ends; the five others say why not in their column not_written.
// "same" stands for every size that both families have, "any" for every pair.
//
// The statements are held to these verdicts:
//
//	ok                 seals, seals-with
//	ok_with_seal       seals-with
//	low_pressure_only  low-pressure-only; the column says holds words of the condition
//	no                 leaks, binds, loose, will-not-start
//
// Six statements say "it depends", and each stands for one verdict with its
// condition. Where the sources conflict (a taper male in a parallel port or under
// a swivel) the careful one is taken: low pressure only. A taper male in a
// straight coupling is what Machinery's Handbook calls tight with a sealer, which
// is low pressure; a metal taper in plastic likewise. NPTF in NPT seals with tape,
// for it is the dry seal alone that is lost.
//
// All agree. NPSC and NPSH stand under NPS, as the family table has them.
func TestPublishedMating(t *testing.T) {
	written, right := 0, 0
	for _, r := range published(t, "mating.csv") {
		if r["not_written"] != "" {
			require.Empty(t, r["a"]+r["b"], r["id"])
			continue
		}
		written++
		if statementHolds(t, r) {
			right++
		}
	}
	t.Logf("%d of %d statements agree", right, written)
	require.Equal(t, 122, written)
	require.Equal(t, written, right)
}

func statementHolds(t *testing.T, r row) bool {
	t.Helper()
	pairs, good := 0, true
	for _, a := range endsOf(t, r["a"]) {
		for _, b := range endsOf(t, r["b"]) {
			if strings.Contains(r["a"], " same ") && a.Size != b.Size {
				continue
			}
			pairs++
			m := Mate(a, b)
			if !fits(r["verdict"], m.Verdict) || !strings.Contains(m.Reason()+" "+m.Remedy(), r["says"]) {
				good = false
				t.Logf("%s: %s; we say %s: %s %s", r["id"], r["verdict"], m.Verdict, m.Reason(), m.Remedy())
			}
		}
	}
	require.Positive(t, pairs, r["id"])
	return good
}

func fits(statement string, v Verdict) bool {
	switch statement {
	case "ok":
		return v == Seals || v == SealsWith
	case "ok_with_seal":
		return v == SealsWith
	case "low_pressure_only":
		return v == LowPressureOnly
	case "no":
		return v == Leaks || v == Binds || v == Loose || v == WillNotStart
	}
	return false
}

// What the hand feels, for the look-alikes. The statements take basic sizes: one
// that "does not start" there has less than half a turn at the tightest parts,
// and one that "screws in several turns" starts.
func TestPublishedFeel(t *testing.T) {
	for _, r := range published(t, "mating.csv") {
		if r["id"][0] != 'C' || r["not_written"] != "" {
			continue
		}
		m := Mate(endOf(t, r["a"]), endOf(t, r["b"]))
		if strings.Contains(r["why"], "does not start") {
			require.True(t, m.Binding.Known && m.Binding.Tightest < startTurns, "%s: %s", r["id"], m.Reason())
		}
		if strings.Contains(r["why"], "screws in several turns") {
			require.NotEqual(t, WillNotStart, m.Verdict, "%s: %s", r["id"], m.Reason())
		}
	}
}

// Pairs that share a thread across sizes or systems go through the seal table:
// the thread alone must never pass them.
func TestSharedThreads(t *testing.T) {
	for _, c := range []struct {
		why, a, b string
		verdict   Verdict
		says      string
	}{
		{"9/16-18 is ORFS -4 and JIC -6", "ORFS -4 male", "JIC -6 female swivel", Leaks, "flat face"},
		{"and the other way round", "JIC -6 male", "ORFS -4 female swivel", Leaks, "flat face"},
		{"9/16-18 is ORB -6 and ORFS -4", "ORFS -4 male", "ORB -6 female", Leaks, "flat face"},
		{"1-3/16-12 is ORFS -12 and ORFS -14", "ORFS -12 male", "ORFS -14 female swivel", Leaks, "two tube sizes"},
		{"1-3/16-12 is JIC -14 and ORFS -12", "JIC -14 male", "ORFS -12 female", Leaks, "flat face"},
		{"3/4-16 is JIC -8 and SAE45 -8", "SAE45 -8 male", "JIC -8 female swivel", Leaks, "37 and 45 degree"},
		{"11/16-16 is SAE45 -7 and ORFS -6", "SAE45 -7 male", "ORFS -6 female", Leaks, "flat face"},
		{"M22x1.5 is 15L and 14S", "24L 15L male", "24S 14S female", Leaks, "tubes are of different size"},
		{"one tube in one series closes", "24L 15L male", "24L 15L female", Seals, "ring bites"},
		{"M22x1.5 is 15L and an O-ring port", "24L 15L male", "ISO6149 M22x1.5 female", Leaks, "no washer face"},
		{"a bare unified thread says nothing of its seal", "UN 9/16-18 male", "JIC -6 female", Leaks, "not said"},
		{"but an O-ring stud is known by its O-ring", "UN 3/4-16 male o-ring", "ORB -8 female", SealsWith, "O-ring fills"},
		{"so is a metric one", "M M18x1.5 male o-ring", "ISO6149 M18x1.5 female", SealsWith, "made to ISO 6149"},
		{"nor does a bare port", "ORB -6 male", "UN 9/16-18 female", Leaks, "not said"},
		{"a taper stud in an O-ring port", "MT M22x1.5 male", "ISO6149 M22x1.5 female", Leaks, "wedges"},
		{"a straight through-hull in a taper seacock", "NPS 1 1/2 male", "NPT 1 1/2 female", Leaks, "below the waterline"},
		{"and how far it goes", "NPS 1 1/2 male", "NPT 1 1/2 female", Leaks, "less than a turn (up to 1.3 as parts vary)"},
		{"a straight through-hull in a straight seacock", "NPS 1 1/2 male", "NPS 1 1/2 female", SealsWith, "full length"},
	} {
		t.Run(c.why, func(t *testing.T) {
			m := Mate(endOf(t, c.a), endOf(t, c.b))
			require.Equal(t, c.verdict, m.Verdict, m.Reason())
			require.Contains(t, m.Reason()+" "+m.Remedy(), c.says)
		})
	}
}
