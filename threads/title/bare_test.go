package title

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// A whole number before an x is a size, a count of parts, a count of ends or an element, by what the
// part can be made as.
func TestNumbersBeforeAnX(t *testing.T) {
	readMeanings(t, []meaning{
		{"glued to its x at the beginning: two of them", `2x 3/4 NPT female elbow`, "NPT 3/4 female; NPT 3/4 female", "2: a count"},
		{"the size behind has its mark and the number none", `2 x 3/4" NPT female elbow`, "NPT 3/4 female; NPT 3/4 female", "2: a count"},
		{"a bush goes from one size to the other: 2 to 3/4 is made", `Bush 2 x 3/4 NPT`, "NPT 2 male; NPT 3/4 female", ""},
		{"and so is 2 to 1/2 (ASME B16.14, memory)", `Bush 2 x 1/2 NPT`, "NPT 2 male; NPT 1/2 female", ""},
		{"a nipple from 2 to 1/2 is not made, so it is two ends", `Nipple 2 x 1/2 NPT`, "NPT 1/2 male; NPT 1/2 male", "2: a count of ends"},
		{"a nipple from 2 to 1 is", `Nipple 2 x 1 NPT`, "NPT 2 male; NPT 1 male", ""},
		{"as many as a tee has", `Tee 3 x 1/2 NPT female`, "NPT 1/2 female; NPT 1/2 female; NPT 1/2 female", "3: a count of ends"},
		{"a strainer has two, and is no reducer", `Strainer 2 x G 1`, "G 1 female; G 1 female", "2: a count of ends"},
		{"a word without a family: a strainer of 2 and 1 is nobody's", `Strainer 2 x 3/8 NPT female`, "NPT 3/8 female; NPT 3/8 female", "2: a count of ends"},
		{"two of the second size of a wye, whose one inch has no sex in words and is asked", `Y-Verteiler 1" x 2 x 3/4" AG`, "PIPE 1 female; PIPE 3/4 male; PIPE 3/4 male", "2: a count of ends"},
		{"one is no count", `Y-Verteiler 3/4" x 1 x 3/4" AG`, "PIPE 3/4 female; PIPE 1 female; PIPE 3/4 male", ""},
		{"a housing is called by its element", `Membrane housing 2.5 x 40, 1/2 NPT female`, "NPT 1/2 female", "2.5: the size of what the housing holds; 40: the size of what the housing holds"},
		{"millimetres where the other is inches with a thread", `Hose tail 3/4 BSP male x 20`, "BSP 3/4 male; BARB 20 mm", ""},
	})
}

// A number that stands alone is read by the word beside it.
func TestNumbersAlone(t *testing.T) {
	readMeanings(t, []meaning{
		{"copper tube by its outside (EN 1057)", `sok 15`, "TUBE 15 mm; TUBE 15 mm", ""},
		{"13 is no copper tube, and no inch", `sok 13`, "", "13: nothing says what it is"},
		{"a nipple of one inch", `Nipple 1`, "PIPE 1 male; PIPE 1 male", ""},
		{"4 inches is the largest pipe that is read", `Coupling 4`, "PIPE 4 female; PIPE 4 female", ""},
		{"5 is none", `Coupling 5`, "", "5: nothing says what it is"},
		{"45 beside an elbow is its angle", `Elbow 45 1/2 NPT female`, "NPT 1/2 female; NPT 1/2 female", "45: an angle"},
		{"a tail with a bare figure is in millimetres", `Hose tail 1/2 BSPP male, tail 13`, "G 1/2 male; BARB 13 mm", ""},
		{"where another size stands, a bare one beside the material is nothing", `Elbow 1/2 NPT female brass 3`, "NPT 1/2 female; NPT 1/2 female", "3: nothing says what it is"},
		{"pipe of polyethylene by its outside", `Trójnik zaciskowy 32 PE`, "COMP 32 mm; COMP 32 mm; COMP 32 mm", ""},
		{"63 mm is the largest pipe that a clamped tee is read for", `Trójnik zaciskowy 63 PE`, "COMP 63 mm; COMP 63 mm; COMP 63 mm", ""},
	})
}

// A number beside a family sized by dash is sixteenths of the tube (SAE J514); one without a hyphen
// before it only where the family stands right before or behind it.
func TestDashNumbers(t *testing.T) {
	readMeanings(t, []meaning{
		{"behind the name", `JIC 8 male elbow`, "JIC -8 male; JIC -8 male", ""},
		{"before the name", `8 JIC male union`, "JIC -8 male; JIC -8 male", ""},
		{"with its hyphen, anywhere", `Union, JIC male, -8`, "JIC -8 male; JIC -8 male", ""},
		{"9 is no dash", `JIC 9 male elbow`, "", "9: nothing says what it is; JIC: no size is read with it; male: no size is read with it"},
		{"32 is the last", `JIC 32 male elbow`, "JIC -32 male; JIC -32 male", ""},
	})
}

// The sizes of pipe lie on one line of steps.
func TestStepsBetweenPipeSizes(t *testing.T) {
	size := rapid.SampledFrom(pipeSizes)
	rapid.Check(t, func(t *rapid.T) {
		a, b, c := size.Draw(t, "a"), size.Draw(t, "b"), size.Draw(t, "c")
		require.Equal(t, pipeSteps(a, b), pipeSteps(b, a), "which is first does not count")
		require.Equal(t, a == b, pipeSteps(a, b) == 0)
		if a <= b && b <= c {
			require.Equal(t, pipeSteps(a, c), pipeSteps(a, b)+pipeSteps(b, c))
		}
		require.True(t, inchLike(a))
	})
	require.Equal(t, 4, pipeSteps(2, 0.75), "2, 1 1/2, 1 1/4, 1, 3/4")
	require.Equal(t, 11, pipeSteps(0.125, 4), "all of them")
	for _, none := range []float64{0, 0.0625, 0.625, 1.75, 3.5, 5, 20} { // 5/8 and 3 1/2 are threads of ISO 228 and NPT that nobody stocks
		require.Zero(t, pipeSteps(none, 0.125), none)
		require.Zero(t, pipeSteps(0.125, none), none)
	}
}

// Plain numbers that can be a size in inches: eighths from 1/8 to 4.
func TestInchLike(t *testing.T) {
	for v, want := range map[float64]bool{0.125: true, 0.0625: false, 0.1: false, 0.25: true, 0.3: false, 0.75: true, 1.25: true, 1.3: false, 4: true, 4.125: false, 0: false, -1: false} {
		require.Equal(t, want, inchLike(v), v)
	}
}

// A word is one where neither a letter nor a digit touches it.
func TestHasWord(t *testing.T) {
	for text, want := range map[string]bool{
		"hose": true, "a hose": true, "hose barb": true, "garden-hose,": true, "1/2 hose 3": true,
		"hoses": false, "whose": false, "hose2": false, "3hose": false, "hos": false, "": false, "whose hose": true,
	} {
		require.Equal(t, want, hasWord(text, "hose"), text)
	}
}

// The order of two sizes of a bush does not count: the larger is the male.
func TestABushInEitherOrder(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		i := rapid.IntRange(0, len(pipeSizes)-2).Draw(t, "small")
		j := rapid.IntRange(i+1, len(pipeSizes)-1).Draw(t, "large")
		small, large := inchText(pipeSizes[i]), inchText(pipeSizes[j])
		want := Read(fmt.Sprintf(`Bush %s" x %s" NPT`, large, small))
		got := Read(fmt.Sprintf(`Bush %s" x %s" NPT`, small, large))
		require.Len(t, want.Ends, 2)
		require.Len(t, got.Ends, 2)
		require.Equal(t, "NPT "+large+" male", briefEnd(want.Ends[0]))
		require.Equal(t, "NPT "+small+" female", briefEnd(want.Ends[1]))
		require.Equal(t, briefEnd(want.Ends[0]), briefEnd(got.Ends[1]))
		require.Equal(t, briefEnd(want.Ends[1]), briefEnd(got.Ends[0]))
	})
}
