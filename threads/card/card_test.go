package card

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"handtight/threads"
	"handtight/threads/internal/endtest"
)

func cardOf(t testing.TB, words string) Card {
	t.Helper()
	c, ok := Of(endtest.EndOf(t, words))
	require.True(t, ok, words)
	return c
}

// Limits as the standards print them, in mm.
func TestCardLimits(t *testing.T) {
	for _, c := range []struct {
		why, end     string
		crest, pitch [2]float64
	}{
		{"ISO 228-1: G 1/2 major 20.955 less 0.284, pitch 19.793 less 0.284 (class B)", "G 1/2 male", [2]float64{20.671, 20.955}, [2]float64{19.509, 19.793}},
		{"ISO 228-1: G 1/2 minor 18.631 to 19.172, pitch up to 19.935", "G 1/2 female", [2]float64{18.631, 19.172}, [2]float64{19.793, 19.935}},
		{"ISO 965-2: M22x1.5 6g major 21.968 to 21.732", "M M22x1.5 male", [2]float64{21.73, 21.97}, [2]float64{20.85, 20.99}},
		{"Machinery's Handbook 27th ed., table 5: NPSM 1/2", "NPSM 1/2 male", [2]float64{20.650, 20.904}, [2]float64{19.604, 19.733}},
	} {
		t.Run(c.why, func(t *testing.T) {
			card := cardOf(t, c.end)
			require.InDelta(t, c.crest[0], float64(card.Crest.Least), 0.01)
			require.InDelta(t, c.crest[1], float64(card.Crest.Most), 0.01)
			require.InDelta(t, c.pitch[0], float64(card.PitchDia.Least), 0.01)
			require.InDelta(t, c.pitch[1], float64(card.PitchDia.Most), 0.01)
		})
	}
}

func TestLookAlikes(t *testing.T) {
	for _, c := range []struct {
		why, end, alike string
		tell            []string
	}{
		{"the angle alone tells the half inch tapers apart", "NPT 1/2 male", "R 1/2", []string{"55 degree flanks, not 60"}},
		{"18 and 19 threads an inch", "G 1/4 male", "1/4-18 NPSM", []string{"18 threads an inch, not 19 threads an inch", "60 degree flanks, not 55", "it has a 60 degree cone (30 to the axis)"}},
		{"taper and parallel of one size", "G 1/2 male", "R 1/2", []string{"it tapers"}},
		{"an inch thread among metric ones", "M M22x1.5 male", "7/8-14 ORB -10", []string{"14 threads an inch, not 1.5 mm", "it has an O-ring at the foot of the thread"}},
		{"one thread, two seals", "JIC -6 male", "9/16-18 ORFS -4", []string{"it has an O-ring in its flat face"}},
		{"one thread, two tube series", "24L 15L male", "14S M22x1.5", []string{"it takes a tube of 14 mm, not 15 mm"}},
		{"a dryseal thread is measured as NPT", "NPT 1/2 male", "1/2-14 NPTF", nil},
		{"the garden hose against pipe", "NH 3/4 female", "3/4-14 NPS", []string{"14 threads an inch, not 11.5 threads an inch"}},
	} {
		t.Run(c.why, func(t *testing.T) {
			var all []string
			for _, l := range cardOf(t, c.end).LookAlikes {
				all = append(all, l.Form.Designation)
				if l.Form.Designation == c.alike {
					require.Equal(t, c.tell, l.Tell)
					return
				}
			}
			require.Failf(t, "not listed", "%s among %v", c.alike, all)
		})
	}
}

// What a calliper and a gauge do tell apart is not listed: 3/4 NPT is no 1/2.
func TestLookAlikesAreNear(t *testing.T) {
	for _, family := range endtest.ThreadFamilies() {
		for _, f := range threads.Forms(family) {
			for _, sex := range endtest.Sexes(family) {
				for _, l := range lookAlikes(threads.Threaded(f, sex)) {
					require.NotEqual(t, family, l.Form.Family)
					require.InDelta(t, float64(f.Major), float64(l.Form.Major), 2.5, "%s and %s", f.Designation, l.Form.Designation)
					require.NotEqual(t, sex.Other(), l.Form.Family.Facts().Only)
				}
			}
		}
	}
}

func TestCardMates(t *testing.T) {
	for _, c := range []struct {
		why, end, mate string
		verdict        threads.Verdict
	}{
		{"its own kind first, with a washer", "G 1/2 male", "G 1/2 female", threads.SealsWith},
		{"the cone, once the male has a chamfer", "G 1/2 male", "G 1/2 female 60 cone", threads.Seals},
		{"a makeshift is told", "R 1/2 male", "G 1/2 female", threads.LowPressureOnly},
		{"the same number of another standard", "NPT 1/2 male", "Rc 1/2 female", threads.Leaks},
		{"the swivel that a chamfered NPT male is made for", "NPT 1/2 male", "1/2-14 NPSM female swivel", threads.Seals},
		{"an O-ring makes a stud of a plain thread", "M M22x1.5 male", "M22x1.5 ISO 6149 female", threads.SealsWith},
		{"one thread, two cones", "JIC -8 male", "3/4-16 SAE45 -8 female", threads.Leaks},
		{"one dash number, two threads", "JIC -6 male", "11/16-16 ORFS -6 female", threads.Loose},
	} {
		t.Run(c.why, func(t *testing.T) {
			var all []string
			for _, m := range cardOf(t, c.end).Mates {
				all = append(all, m.Verdict.String()+": "+m.B.String())
				if m.B.String() == c.mate && m.Verdict == c.verdict {
					return
				}
			}
			require.Failf(t, "not listed", "%s %s among %s", c.mate, c.verdict, strings.Join(all, "; "))
		})
	}
}

// Every threaded end has a card whose first joint holds, but for the threads of
// which only the thread is known, and a make-up for it.
func TestEveryCard(t *testing.T) {
	for _, family := range endtest.ThreadFamilies() {
		for _, f := range threads.Forms(family) {
			for _, sex := range endtest.Sexes(family) {
				c, ok := Of(threads.Threaded(f, sex))
				require.True(t, ok)
				require.NotEmpty(t, c.Mates, f.Designation)
				require.Less(t, c.Crest.Least, c.Crest.Most, f.Designation)
				require.Less(t, c.PitchDia.Least, c.PitchDia.Most, f.Designation)
				if family != threads.UN && family != threads.PG && family != threads.BSF {
					require.True(t, c.Mates[0].Verdict.Holds(), "%s %s: %s", f.Designation, sex, c.Mates[0].Verdict)
					require.NotEmpty(t, c.Makeup, f.Designation)
					require.NotEmpty(t, c.Source, f.Designation)
				}
			}
		}
	}
}

// Joints that hold stand before makeshift ones, and these before those that fail.
func TestMatesBestFirst(t *testing.T) {
	for _, words := range []string{"G 1/2 female", "R 3/4 male", "NPT 1/2 male", "M M22x1.5 male", "JIC -6 male"} {
		var order []string
		for _, m := range cardOf(t, words).Mates {
			kind := "fails"
			switch {
			case m.Verdict.Holds():
				kind = "holds"
			case m.Closes() != "":
				kind = "makeshift"
			}
			if len(order) == 0 || order[len(order)-1] != kind {
				order = append(order, kind)
			}
		}
		require.Subset(t, []string{"holds", "makeshift", "fails"}, order, words)
		require.Less(t, len(order), 4, "%s: %v", words, order)
		require.Equal(t, "holds", order[0], words)
		require.Equal(t, "fails", order[len(order)-1], words)
	}
}

func TestNoCard(t *testing.T) {
	_, ok := Of(threads.Threaded(endtest.EndOf(t, "G 1/2 male").Form, threads.NoSex))
	require.False(t, ok, "a male and a female are two cards")
	_, ok = Of(threads.End{Family: threads.Barb, Size: "19 mm", Diameter: 19})
	require.False(t, ok, "a barb has no thread")
}
