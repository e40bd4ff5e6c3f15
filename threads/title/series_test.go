package title

import (
	"testing"

	"github.com/stretchr/testify/require"

	"handtight/threads"
)

// unused gives what was named as not used, in short.
func unused(r threads.Reading) []string {
	var out []string
	for _, n := range r.NotUsed {
		out = append(out, n.Words+": "+n.Why)
	}
	return out
}

// The series of a 24 degree cone is a letter behind the tube (ISO 8434-1: L and S), which elsewhere
// is litres or a code. 12L and 12S do not go together: M18x1.5 and M20x1.5.
func TestSeriesOfConesAndLitres(t *testing.T) {
	for _, c := range []struct {
		why, text, ends string
		unused          []string
	}{
		{"one cone at both ends", "Elbow 12L", "24L 12L male; 24L 12L male", nil},
		{"two series with a stroke", "Elbow 12L/12S", "24L 12L male; 24S 12S male", nil},
		{"one series with a stroke", "Elbow 16S/16S", "24S 16S male; 24S 16S male", nil},
		{"a blank and a capital", "Elbow 12 S", "24S 12S male; 24S 12S male", nil},
		{"litres a minute are a flow", "Elbow 1/2 NPT female, 12 L/min", "NPT 1/2 female; NPT 1/2 female", []string{"12 L/min: a flow"}},
		{"a tank's litres are a volume", "Elbow 1/2 NPT female, 20 L", "NPT 1/2 female; NPT 1/2 female", []string{"20 L: a volume"}},
		{"the very light series is not judged, and is named whole", "Elbow 1/2 NPT female, 6LL", "NPT 1/2 female; NPT 1/2 female", []string{"6LL: a code or type"}},
		{"with a blank", "Elbow 1/2 NPT female, 6 LL", "NPT 1/2 female; NPT 1/2 female", []string{"6 LL: a code or type"}},
	} {
		r := Read(c.text)
		require.Equal(t, c.ends, brief(r.Ends), c.why)
		require.Equal(t, c.unused, unused(r), c.why)
	}
}

// A or B behind a size of G is the class of ISO 228-1: a male, and of A the closer. It is used up
// by that, and is no class behind the size of another thread.
func TestClassesOfG(t *testing.T) {
	for _, c := range []struct {
		text   string
		closer bool
	}{{"G 1/2 A", true}, {"G1/2A", true}, {"G 1/2A, brass", true}, {"G 1/2 B", false}, {"G3/4B", false}} {
		r := Read("Stud " + c.text)
		require.NotEmpty(t, r.Ends, c.text)
		end := r.Ends[0]
		require.Equal(t, threads.G, end.Candidates[0].Family, c.text)
		require.Equal(t, threads.Male, end.Sex, c.text)
		require.Equal(t, c.closer, end.Candidates[0].ClassA, c.text)
		require.Empty(t, unused(r), c.text)
	}
	for _, text := range []string{"Elbow 1/2 NPT A", "Elbow R 1/2 A", "Elbow M22x1.5 A"} {
		for _, end := range Read(text).Ends {
			for _, c := range end.Candidates {
				require.False(t, c.ClassA, text)
			}
		}
	}
}

// A dash size is behind a hyphen or a number sign (SAE J514: sixteenths of an inch of the tube);
// a hyphen behind a size is before its threads an inch.
func TestDashSizesAndThreadsAnInch(t *testing.T) {
	for _, c := range []struct{ why, text, ends string }{
		{"a number sign", "Adaptor JIC male #12 x NPT male 3/4", "JIC -12 male; NPT 3/4 male"},
		{"a number sign before the name", "Adaptor #6 JIC male x #8 ORB male", "JIC -6 male; ORB -8 male"},
		{"a hyphen", "Adaptor JIC male -12 x NPT male 3/4", "JIC -12 male; NPT 3/4 male"},
		{"threads an inch behind an inch mark", "Nipple 1/2\"-14 NPT male", "NPT 1/2 male; NPT 1/2 male"},
		{"threads an inch behind the figure", "Nipple 1/2-14 NPT male", "NPT 1/2 male; NPT 1/2 male"},
		{"threads an inch that are a dash size too", "Nipple 3/4\"-16 JIC male", "JIC -8 male; JIC -8 male"},
	} {
		r := Read(c.text)
		require.Equal(t, c.ends, brief(r.Ends), c.why)
		require.Empty(t, unused(r), c.why)
	}
}

// One and a quarter is written 11/4 where the keyboard has no small figures: eleven quarters are
// no size of a pipe. What cannot be meant so stays a fraction.
func TestMixedFractionsRunTogether(t *testing.T) {
	for text, ends := range map[string]string{
		"nipple 11/4 BSP male":                "BSP 1 1/4 male; BSP 1 1/4 male",
		"nipple 11/2 BSP male":                "BSP 1 1/2 male; BSP 1 1/2 male",
		"nipple 13/4 BSP male":                "G 1 3/4 male; G 1 3/4 male",
		"nipple 21/2 BSP male":                "BSP 2 1/2 male; BSP 2 1/2 male",
		"nipple 3/4 BSP male":                 "BSP 3/4 male; BSP 3/4 male",
		"elbow 11/4 female x 11/2 male BSP":   "BSP 1 1/4 female; BSP 1 1/2 male",
		"elbow 1-1/4 female x 1.1/2 male BSP": "BSP 1 1/4 female; BSP 1 1/2 male",
	} {
		r := Read(text)
		require.Equal(t, ends, brief(r.Ends), text)
		require.Empty(t, unused(r), text)
	}
}
