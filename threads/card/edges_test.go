package card

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/require"

	"handtight/threads"
	"handtight/threads/internal/endtest"
)

// Every partner on a card has the end's own size, or its own thread: a card of 1/2 NPT does not
// list what goes with 3/4.
func TestPartnersAreOfTheSizeOrTheThread(t *testing.T) {
	for _, family := range endtest.ThreadFamilies() {
		for _, f := range threads.Forms(family)[:1] {
			for _, sex := range endtest.Sexes(family) {
				c, ok := Of(threads.Threaded(f, sex))
				require.True(t, ok)
				for _, m := range c.Mates {
					require.Equal(t, sex.Other(), m.B.Sex, f.Designation)
					require.True(t, m.B.Form.Size == f.Size && isPipe(m.B.Family) == isPipe(family) || threads.Alike(f, m.B.Form), "%s with %s", f.Designation, m.B)
				}
			}
		}
	}
	require.True(t, isPipe(threads.NPT) && isPipe(threads.Rp) && isPipe(threads.NH) && !isPipe(threads.M) && !isPipe(threads.JIC) && !isPipe(threads.BSF))
}

// A number that a pipe and a flare share is no reason to put them together: 1/2 is one, -8 the other.
func TestNoPipeThreadAmongDashes(t *testing.T) {
	for _, m := range cardOf(t, "JIC -8 male").Mates {
		require.False(t, isPipe(m.B.Family), m.B.String())
	}
}

// An end that names its seal keeps it on its card; one that names none is shown with each.
func TestANamedSealIsKept(t *testing.T) {
	for _, m := range cardOf(t, "G 1/2 male chamfer").Mates {
		require.Equal(t, threads.Chamfer, m.A.Seal)
	}
	seals := map[threads.Seal]bool{}
	for _, m := range cardOf(t, "G 1/2 male").Mates {
		seals[m.A.Seal] = true
	}
	require.Greater(t, len(seals), 2)
	turning := false
	for _, m := range cardOf(t, "G 1/2 female swivel").Mates {
		require.True(t, m.A.Swivel)
		turning = true
	}
	require.True(t, turning)
}

// The joint whose make-up a card prints is that of its own kind: what needs the fewest words.
func TestTheUsualJoint(t *testing.T) {
	for end, want := range map[string]string{
		"NPT 1/2 male":   "4 wraps of 12 mm tape",
		"NPT 1/2 female": "4 wraps of 12 mm tape",
		"R 1/2 male":     "4 wraps of 12 mm tape",
		"G 1/2 female":   "bonded washer G 1/2",
		"JIC -6 male":    "1.5 to 2 flats of the nut",
		"ORFS -8 male":   "O-ring for -8 face seal",
		"ORB -6 female":  "O-ring for -6 O-ring port",
		"24L 12L male":   "cutting ring 12L",
		"NH 3/4 male":    "flat gasket 3/4 NH",
	} {
		require.Contains(t, cardOf(t, end).Makeup, want, end)
	}
	list := cardOf(t, "G 1/2 male").Mates
	best, ok := usualJoint(list)
	require.True(t, ok)
	require.Zero(t, kinship(best))
	for _, m := range list {
		if m.Verdict.Holds() && kinship(m) == 0 {
			require.LessOrEqual(t, wordsOf(best), wordsOf(m))
		}
	}
	_, ok = usualJoint(nil)
	require.False(t, ok)
}

// Same family and size, same standard, another: in this order.
func TestKinship(t *testing.T) {
	end := func(words string) threads.End { return endtest.EndOf(t, words) }
	require.Equal(t, 0, kinship(threads.Mate(end("R 1/2 male"), end("R 1/2 male"))))
	require.Equal(t, 1, kinship(threads.Mate(end("R 1/2 male"), end("Rc 1/2 female"))), "both are of ISO 7-1")
	require.Equal(t, 1, kinship(threads.Mate(end("G 1/2 male"), end("G 3/4 female"))), "one standard, two sizes")
	require.Equal(t, 2, kinship(threads.Mate(end("NPT 1/2 male"), end("Rc 1/2 female"))))
	a, b := end("G 1/2 male chamfer"), end("G 1/2 female swivel cone-60")
	require.Equal(t, 3, wordsOf(threads.Mate(a, b)), "two seals and a nut")
	require.Equal(t, 0, wordsOf(threads.Mate(end("G 1/2 male"), end("G 1/2 female"))))
}

// How much larger or smaller a look-alike is, to a tenth, where both are parallel; a taper has
// no one diameter. Major diameters: 1/2 NPSM 20.90 to 20.65 (Machinery's Handbook, 27th ed.,
// table 5) against G 1/2 20.955 to 20.671 (ISO 228-1): less than the eye sees.
func TestTheDifferenceInMillimetres(t *testing.T) {
	told := 0
	for _, words := range []string{"G 3/8 male", "G 1/2 male", "M M22x1.5 male", "JIC -8 male", "NH 3/4 male", "UN 7/8-14 male"} {
		ends := endtest.EndsOf(t, words)
		for _, l := range lookAlikes(ends[0]) {
			own, its := ends[0].Form.CrestAt(threads.Male, 0).Middle(), l.Form.CrestAt(threads.Male, 0).Middle()
			for _, tell := range l.Tell {
				var off float64
				var word string
				if n, _ := fmt.Sscanf(tell, "about %g mm %s", &off, &word); n != 2 {
					continue
				}
				told++
				require.Equal(t, l.Form.Taper, ends[0].Form.Taper, "%s: a taper has no one diameter", l.Form.Designation)
				if word == "smaller" {
					off = -off
				}
				require.InDelta(t, float64(its-own), off, 0.06, "%s and %s", words, l.Form.Designation)
			}
		}
	}
	require.GreaterOrEqual(t, told, 5)
}

// A thread whose taper differs is never told by a diameter, and is told by its taper.
func TestTaperIsTold(t *testing.T) {
	for _, l := range cardOf(t, "G 3/4 male").LookAlikes {
		if l.Form.Taper > 0 {
			require.Contains(t, l.Tell, "it tapers", l.Form.Designation)
		} else {
			require.NotContains(t, l.Tell, "it tapers", l.Form.Designation)
		}
		require.NotContains(t, l.Tell, "it is parallel")
	}
	for _, l := range cardOf(t, "R 3/4 male").LookAlikes {
		if l.Form.Taper == 0 {
			require.Contains(t, l.Tell, "it is parallel", l.Form.Designation)
		}
	}
}

// The nearest first: of the half inch tapers R comes before the parallel ones.
func TestNearestFirst(t *testing.T) {
	place := map[string]int{}
	for k, l := range cardOf(t, "NPT 1/2 male").LookAlikes {
		place[l.Form.Designation] = k + 1
	}
	require.Equal(t, 1, place["1/2-14 NPTF"], "nothing tells it apart")
	require.Less(t, place["R 1/2"], place["G 1/2"], "a taper is nearer than a parallel thread")
	require.NotZero(t, place["G 1/2"])
}

// A tube tells two cones of one thread apart, and is not said where something else does.
func TestTubesTellConesApart(t *testing.T) {
	for _, l := range cardOf(t, "24L 15L male").LookAlikes {
		for _, tell := range l.Tell {
			if len(l.Tell) > 1 || l.Form.Tube == 0 {
				require.NotContains(t, tell, "takes a tube", l.Form.Designation)
			}
		}
	}
}
