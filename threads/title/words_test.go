package title

import (
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"handtight/threads"
)

// Common practice, no source: 8 L/min below. Check values, and no limit rests on them.

// endBases are ends of every sort to which words are added.
var endBases = []string{"G 1/2 male", "1/2 NPT female", "M22x1.5 male", "12L male", "19 mm barb", "-6 JIC male", "10 mm push-in", "3/4 BSP"}

// Every word of the lexicon that can stand on an end changes the end when it is
// added, or is refused, or is named as not used. No word is swallowed.
func TestNoWordIsSwallowed(t *testing.T) {
	stands := []string{"attr", "fam", "end", "sex", "kind", "mat", "grade", "press", "word"}
	bases := make([]threads.EndReading, len(endBases))
	for k, b := range endBases {
		r, err := ReadEnd(b)
		require.NoError(t, err)
		bases[k] = r
	}
	tried, swallowed := 0, 0
	for _, name := range wordFiles {
		for _, r := range lexiconRows(name) {
			if !slices.Contains(stands, r["class"]) {
				continue
			}
			for n, w := range strings.Split(r["words"], "|") {
				if n > 2 && testing.Short() {
					break
				}
				w = strings.Trim(w, "*")
				k := (n + len(w)) % len(endBases) // each word on one base, each base in turn
				got, err := ReadEnd(endBases[k] + " " + w)
				tried++
				if err != nil || got.Question != bases[k].Question || !slices.Equal(got.Candidates, bases[k].Candidates) || len(got.NotUsed) > 0 {
					continue
				}
				swallowed++
				t.Errorf("%q adds nothing to %q and is not named: %s %s", w, endBases[k], r["class"], r["value"])
			}
		}
	}
	t.Logf("%d of %d words swallowed", swallowed, tried)
	least := 6000
	if testing.Short() {
		least = 1000
	}
	require.Greater(t, tried, least)
}

// Likewise every figure of a title: adding one adds an end, changes a field, or is
// named as not used.
func TestNoFigureIsSwallowed(t *testing.T) {
	for _, base := range []string{"Elbow 1/2 NPT F 316", "Kugelhahn 1/2\" IG", "hose tail 1/2 BSPP male x 13 mm", "gauge G 1/4 male 63 mm", "Hose clamp 316", "tee 1/2"} {
		before := Read(base)
		for _, figure := range []string{
			"7", "12", "37.5", "100 mm", "24 V", "1.5 L", "10 bar", "600 psi", "80 °C", "2 pcs", "150#", "3000 lb", "sch 80", "PN 16", "DN20", "5 micron",
			"8 L/min", "2 kg", "50 Hz", "AB-12", "KX4", "3/8", "22 mm", "M10x1", "-6", "90°", "5 m", "1 1/2\"", "class 300", "SDR 11", "ASME B16.11", "45 Nm",
		} {
			after := Read(base + ", " + figure)
			same := slices.EqualFunc(before.Ends, after.Ends, func(a, b threads.EndReading) bool {
				return slices.Equal(a.Candidates, b.Candidates) && a.Question == b.Question
			})
			named := len(after.NotUsed) > len(before.NotUsed) || len(after.Unread) > len(before.Unread) || len(after.Pressures) > len(before.Pressures)
			field := before.Class != after.Class || before.Schedule != after.Schedule || before.Rated != after.Rated || after.HasTemperature != before.HasTemperature || len(after.Standards) > len(before.Standards)
			if same && !named && !field {
				t.Errorf("%q adds nothing to %q and is not named", figure, base)
			}
		}
	}
}
