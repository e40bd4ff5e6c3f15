package title

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"handtight/threads"
)

// What a unit or a letter behind a figure makes of it.
func TestUnitsBehindFigures(t *testing.T) {
	for text, want := range map[string][]string{
		"25 mm": {"mm 25"}, "25mm": {"mm 25"}, "6分": {"fen 0.75"}, "16 bar": {"pressure 16"}, "16 MPa": {"pressure 16"}, "150 wsp": {"pressure 150"},
		"5 m": {"junk 5"}, "3 m": {"3"}, "3m": {"junk 3"}, "3 M": {"3"}, "5 M": {"5"}, "1/4 3 m": {"in 0.25", "junk 3"}, // up to 4 an m apart is a sex; behind a size it is metres
		"4 m": {"4"}, "4.5 m": {"junk 4.5"}, "24 V": {"junk 24"}, "3 V": {"3"}, "20 C": {"junk 20"}, "20C": {"20"}, "20c": {"junk 20"}, "4 w": {"4"}, "5 w": {"junk 5"},
		"22 G": {"22"}, "22 g": {"junk 22"}, "22G": {"junk 22"}, "3000#": {"junk 3000"}, "5 lb": {"junk 5"},
		"12L": {"cone 12"}, "12 L": {"cone 12"}, "12 l": {"junk 12"}, "12l": {"cone 12"}, "16S": {"cone 16"}, "16 s": {"16"}, "13L": {"junk 13"}, "12L/2": {"cone 12", "2"}, "12l/min": {"junk 12"}, "12ll": {"junk 12"}, "13ll": {"13"},
		"100l": {"junk 100"}, "99l": {"junk 99"}, "120L": {"junk 120"},
	} {
		assert.Equal(t, want, kindsOf(text), text)
	}
}

// A pound sign behind a number: a class of ASME B16.11 or B16.5, else a weight below a hundred, else a code.
func TestPounds(t *testing.T) {
	for v, want := range map[float64]role{150: asClass, 3000: asClass, 9000: asClass, 150.5: asCode, 151: asCode, 99: asWeight, 99.9: asWeight, 100: asCode, 5: asWeight} {
		require.Equal(t, want, poundRole(&figure{v: v, whole: v == float64(int(v))}), v)
	}
}

// The Chinese inch counts eighths behind it, and 半 is a half.
func TestChineseInches(t *testing.T) {
	for text, want := range map[string]float64{
		"1寸": 1, "1寸2": 1.25, "1寸4": 1.5, "1寸半": 1.5, "2寸半": 2.5, "2寸": 2, "1寸7": 1.875, "1寸8": 1, "1寸25": 1, "4分": 0.5, "6分": 0.75,
	} {
		got := figuresOf(text)
		require.NotEmpty(t, got, text)
		require.Equal(t, want, got[0].v, text)
		require.Equal(t, fenSize, got[0].kind, text)
	}
	for text, size := range map[string]string{"1寸半 NPT 外丝": "1 1/2", "2寸半 NPT 外丝": "2 1/2", "1寸2 NPT 外丝": "1 1/4", "1寸 NPT 外丝": "1"} {
		r, err := ReadEnd(text)
		require.NoError(t, err, text)
		require.Equal(t, "NPT "+size+" male", briefEnd(r), text)
	}
	require.NotEqual(t, fenSize, figuresOf("1.5寸")[0].kind, "an inch and a half in decimals is not counted on")
}

// The bores of Japan, from 6A to 100A, stand in lines of that script only; 5A is no bore, and A behind
// a size of G is its class (ISO 228-1).
func TestBoresOfJapan(t *testing.T) {
	for text, want := range map[string]string{"エルボ 15A": "dn 0.5", "エルボ 20A": "dn 0.75", "エルボ 6A": "dn 0.125", "エルボ 100A": "dn 4"} {
		require.Equal(t, []string{want}, kindsOf(text), text)
	}
	for _, text := range []string{"Elbow 15A", "エルボ 5A", "エルボ 16A", "エルボ 15 A", "エルボ 15AB"} {
		for _, kind := range kindsOf(text) {
			require.NotContains(t, kind, "dn", text)
		}
	}
	for text, class := range map[string]bool{"G 1/2 A": true, "G 1/2A": true, "G 1/2 B": false} {
		got := figuresOf(text)
		require.Equal(t, class, got[0].classA, text)
		require.Equal(t, threads.Male, got[0].suffixed, "%s: both classes are of external threads", text)
	}
	for _, text := range []string{"NPT 1/2 A", "1/2 A", "G 1/2 AB", "G 1/2 C"} {
		require.Equal(t, threads.NoSex, figuresOf(text)[0].suffixed, text)
	}
}

// The tubes of 24 degree cones (ISO 8434-1, tables of the light and the heavy series): the letter behind
// any other figure is no series.
func TestTubesOfTheSeries(t *testing.T) {
	light, heavy := []int{6, 8, 10, 12, 15, 18, 22, 28, 35, 42}, []int{6, 8, 10, 12, 14, 16, 20, 25, 30, 38}
	in := func(list []int, v int) bool {
		for _, o := range list {
			if o == v {
				return true
			}
		}
		return false
	}
	for v := 5; v <= 45; v++ {
		for letter, list := range map[string][]int{"L": light, "S": heavy} {
			got := figuresOf(fmt.Sprintf("%d%s", v, letter))[0]
			require.Equal(t, in(list, v), got.kind == coneSize, "%d%s", v, letter)
		}
	}
}
