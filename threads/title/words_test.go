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
var endBases = []string{
	"G 1/2 male", "1/2 NPT female", "M22x1.5 male", "12L male", "19 mm barb", "-6 JIC male", "10 mm push-in", "3/4 BSP",
	"R 1/2 male", "1/2 in ferrule", "13 mm bore", "15 mm compression", "G 1/2 female swivel", "9/16-18 ORB male", "M10x1",
}

// Every word of the lexicon that can stand on an end changes the end when it is
// added, before it or behind, or is refused, or is itself named as not used. No word is swallowed.
func TestNoWordIsSwallowed(t *testing.T) {
	stands := []string{"attr", "fam", "end", "sex", "kind", "mat", "grade", "press", "word"}
	tried := 0
	for k, base := range endBases {
		before, err := ReadEnd(base)
		require.NoError(t, err)
		for _, name := range wordFiles {
			for _, r := range lexiconRows(name) {
				if !slices.Contains(stands, r["class"]) {
					continue
				}
				for n, w := range strings.Split(r["words"], "|") {
					w = strings.Trim(w, "*")
					if testing.Short() && (n > 2 || k != (n+len(w))%len(endBases)) {
						continue // each word on one base, each base in turn
					}
					for _, text := range []string{base + " " + w, w + " " + base} {
						tried++
						got, err := ReadEnd(text)
						if err != nil || got.Question != before.Question || !slices.Equal(got.Candidates, before.Candidates) || namedIn(got.NotUsed, w) || oneWord(base, w) {
							continue
						}
						t.Errorf("%q says no more than %q, and %q is not named: %s %s", text, base, w, r["class"], r["value"])
					}
				}
			}
		}
	}
	t.Logf("%d tried", tried)
	require.Greater(t, tried, map[bool]int{true: 2000, false: 200_000}[testing.Short()])
}

// namedIn reports whether a word is one of those that are named, or part of one with its neighbour.
func namedIn(list []threads.NotUsed, w string) bool {
	w = wordKey(w)
	return slices.ContainsFunc(list, func(n threads.NotUsed) bool {
		named := wordKey(n.Words)
		return named != "" && (strings.Contains(named, w) || strings.Contains(w, named))
	})
}

// oneWord reports whether the lexicon has a phrase of the last word of a base and the first of what is
// added, which then is said once more in other words: `barb` and `coupling`, `cap` and `nut`.
func oneWord(base, w string) bool {
	fields := strings.Fields(strings.NewReplacer("-", " ").Replace(base + " " + w))
	lex := readLexicon()
	for from := range fields {
		for to := from + 2; to <= len(fields); to++ {
			if lex.word(wordKey(strings.Join(fields[from:to], " "))) != nil && to > len(strings.Fields(base)) {
				return true
			}
		}
	}
	return slices.Contains([]string{"mm"}, w) // behind a metric size it is its unit
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
