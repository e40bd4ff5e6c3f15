package title

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/require"
)

// readWithout reads a line with a step left out: its ends, and what is named beside them.
func readWithout(text, step string) (ends, beside string) {
	defer func() {
		if recover() != nil {
			ends = "no reading at all"
		}
	}()
	l := newLine(text, false)
	l.skip = step
	r := l.read()
	return endsText(r.Ends), fmt.Sprint(r.Unread, r.NotUsed, r.Standards)
}

// Each step is needed: the line that stands beside it reads otherwise without it.
func TestEachStepIsShownByItsExample(t *testing.T) {
	seen := map[string]bool{}
	check := func(name, example string, besideToo bool) {
		t.Run(name, func(t *testing.T) {
			require.False(t, seen[name], "two steps have one name")
			seen[name] = true
			ends, beside := readWithout(example, "")
			without, besideWithout := readWithout(example, name)
			if besideToo {
				ends, without = ends+beside, without+besideWithout
			}
			require.NotEqual(t, ends, without, example)
		})
	}
	for _, s := range wordSteps {
		check(s.name, s.example, true)
	}
	for _, s := range endSteps {
		check(s.name, s.example, false)
	}
	for _, pass := range pairPasses {
		for _, r := range pass {
			check(r.name, r.example, false)
		}
	}
}

// What the examples of the steps read, as a person reads them.
func TestExamplesOfTheStepsAreReadRight(t *testing.T) {
	for text, want := range map[string]string{
		"Rura 16x2":               "",
		"Cap 3/8 BSPP c/w washer": "[G 3/8 female washer]",
		"Pumpenanschluss 5/4 Zoll AG flachdichtend, Ü-Mutter": "[G 1 1/4 male washer] [G 1 1/4 female swivel washer]",
		"Niple galvanizado 1/2 x 3\"":                         "[G 1/2 male | R 1/2 male | 1/2-14 NPT male] [G 1/2 male | R 1/2 male | 1/2-14 NPT male]",
		"9/16-18 JIC tube nut with sleeve, 3/8 tube":          "[9/16-18 JIC -6 female]",
		"Hex nipple 3/4 x 1/2 NPT":                            "[3/4-14 NPT male] [1/2-14 NPT male]",
		"Tee 1/4 NPT female":                                  "[1/4-18 NPT female] [1/4-18 NPT female] [1/4-18 NPT female]",
		"Klemmfitting 32 mm x 1\" AG PE-Rohr":                 "[32 mm compression] [G 1 male | R 1 male | 1-11.5 NPT male]",
		"Portagomma inox 3/8\" M diam. 10 mm":                 "[G 3/8 male | R 3/8 male | 3/8-18 NPT male] [10 mm barb]",
		"Hosetail 316 3/4BSPTx20mm":                           "[R 3/4 male] [20 mm barb]",
	} {
		require.Equal(t, want, endsText(Read(text).Ends), text)
	}
}
