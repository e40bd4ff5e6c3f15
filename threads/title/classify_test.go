package title

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// What a plain number is, from the words beside it.
func TestPlainNumbers(t *testing.T) {
	const elbow = "NPT 1/2 female; NPT 1/2 female"
	readMeanings(t, []meaning{
		{"90 is an elbow's angle", `Elbow 90 1/2 NPT female`, elbow, "90: an angle"},
		{"60 is no angle of an elbow, and nothing says what it is", `Elbow 60 1/2 NPT female`, elbow, "60: nothing says what it is"},
		{"an adaptor has no angle", `Adaptor 90, 1/2 NPT female`, "NPT 1/2 female", "90: nothing says what it is; the other end (nothing is said of it)?"},
		{"a pump is called by its bore and its head", `Pump 25/60, 1/2 NPT female`, elbow, "25: a code or type; 60: a code or type"},
		{"a number in brackets behind its word", `Elbow 1/2 NPT female, length (40)`, elbow, "40: a length"},
		{"and behind an equals sign", `Elbow 1/2 NPT female, length = 40`, elbow, "40: a length"},
		{"a quantity, and what it costs", `Elbow 1/2 NPT female x 3 = 12.00`, elbow, "3: a count; 12.00: a price"},
		{"no part is bought three quarters: a size", `Coupling NPT 1/2 x 0.75 = 4.20`, "NPT 1/2 female; NPT 3/4 female", ""},
		{"a price by its sign", `Elbow 1/2 NPT female $12`, elbow, "12: a price"},
		{"a price with the sign behind it", `Elbow 1/2 NPT female 12 €`, elbow, "12: a price"},
		{"the figure before a dial is its own, and the next is the thread", `Gauge 2" dial 1/4 NPT`, "NPT 1/4 male", `2" dial: a dial`},
		{"a comma ends what a word behind a figure takes", `Gauge 1/4 NPT, dial 63`, "NPT 1/4 male", "63: a dial"},
		{"bore of the pipe by its number (ISO 6708)", `Kugelhahn DN 20 G innen`, "G 3/4 female; G 3/4 female", ""},
		{"a number that is no nominal bore", `Kugelhahn DN 21, 1/2 NPT female`, elbow, "21: a nominal bore that is not known"},
		{"R with a number that is no bore is a grade of hose (SAE J517)", `Hose R7, 3/8 NPT male`, "NPT 3/8 male", "7: a grade; the other end (nothing is said of it)?"},
		{"R with a bore of pipe is a thread by its pipe", `Elbow R15 female`, "BSP 1/2 female; BSP 1/2 female", ""},
	})
}

// The codes of hose ends with 24 degree cones say the series, and the tube follows: DKOL 12 is 12L
// (ISO 8434-1). Its tubes are those of the standard only.
func TestConesByTheirCode(t *testing.T) {
	for _, row := range []struct{ text, ends string }{
		{"DKOL 12", "24L 12L female swivel"}, {"DKOL 15", "24L 15L female swivel"}, {"DKOS 16", "24S 16S female swivel"}, {"DKOS 12", "24S 12S female swivel"},
	} {
		r := Read("Hydraulikschlauch mit " + row.text)
		require.NotEmpty(t, r.Ends, row.text)
		require.Contains(t, brief(r.Ends), row.ends, row.text)
	}
	r := Read("DKOL 13")
	for _, e := range r.Ends {
		require.Empty(t, e.Candidates, "no light series has a tube of 13 mm")
	}
	require.True(t, coneFits(12, 'l'))
	require.True(t, coneFits(12, 's'))
	require.True(t, coneFits(16, 's'))
	require.False(t, coneFits(16, 'l'), "the light series goes from 15 to 18")
	require.False(t, coneFits(14, 'l'))
	require.True(t, coneFits(14, 's'))
}

// Ranges: with a hyphen the first figure is the beginning of a range, and so no end.
func TestRanges(t *testing.T) {
	readMeanings(t, []meaning{
		{"a gauge's scale", `Gauge 0-16 bar 1/4 NPT`, "NPT 1/4 male", "0: the beginning of a range"},
		{"what a clamp takes", `Hose clamp 34-40 mm`, "", "34: the beginning of a range; 40 mm: a measure of the part"},
		{"what a cap takes, blanks round the hyphen", `Elbow 1/2 NPT female for 34 - 40 mm`, "NPT 1/2 female; NPT 1/2 female", "34: the beginning of a range; 40 mm: a measure of the part"},
		{"three tubes of a tee", `Push-in tee 6-4-6 mm`, "PUSH 6 mm; PUSH 4 mm; PUSH 6 mm", ""},
		{"three tubes of a tee, without their unit: no pipe has 6 inches here", `Push-in tee 6-4-6`, "PUSH 6 mm; PUSH 4 mm; PUSH 6 mm", ""},
		{"with strokes", `Push-in tee 8/6/8`, "PUSH 8 mm; PUSH 6 mm; PUSH 8 mm", ""},
		{"with x", `Push-in tee 10x8x10`, "PUSH 10 mm; PUSH 8 mm; PUSH 10 mm", ""},
	})
}

// Three plain numbers of a tee are millimetres where one of them is more than pipe has in inches
// and none is less than the smallest tube, 3 mm.
func TestRowsOfATee(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		var v [3]int
		most, least := 0, 99
		for k := range v {
			v[k] = rapid.IntRange(1, 70).Draw(t, "v")
			most, least = max(most, v[k]), min(least, v[k])
		}
		l := newLine(fmt.Sprintf("Tee %d x %d x %d", v[0], v[1], v[2]), false)
		defer l.release()
		l.survey()
		l.teeRow()
		want := bare
		if most > largestInch && most <= 63 && least >= 3 {
			want = mmSize
		}
		n := 0
		for _, it := range l.tokens {
			if it.figure != nil {
				require.Equal(t, want, it.figure.kind, "%v", v)
				n++
			}
		}
		require.Equal(t, 3, n)
	})
	for _, text := range []string{"Elbow 6-4-6", "Tee 6-4", `Tee 6"-4-6`, "Tee 6.5-4-6", "Tee 6-4 6"} {
		l := newLine(text, false)
		l.survey()
		l.teeRow()
		for _, it := range l.tokens {
			require.False(t, it.figure != nil && it.figure.kind == mmSize, text)
		}
		l.release()
	}
}
