package title

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// Numbers that count parts, ends or pieces, or end a code.
func TestCounts(t *testing.T) {
	const elbow = "NPT 1/2 female; NPT 1/2 female"
	readMeanings(t, []meaning{
		{"tied to a word by a hyphen", `Elbow 1/2 NPT female, 2-pack`, elbow, "2: a count"},
		{"ports of a block", `Manifold 4-port, 1/2 NPT female`, "NPT 1/2 female; NPT 1/2 female; NPT 1/2 female; NPT 1/2 female", "4: a count"},
		{"A4 and A2 are steels of ISO 3506", `Elbow 1/2 NPT female A4`, elbow, "4: a grade"},
		{"there is no A3", `Elbow 1/2 NPT female A3`, elbow, "3: nothing says what it is"},
		{"A 4 with a blank is not the steel", `Elbow 1/2 NPT female A 4`, elbow, "4: nothing says what it is"},
		{"a zero before a figure behind a hyphen ends a code", `Elbow PC8-02, 1/2 NPT female`, elbow, "8: a code or type; 02: a code or type"},
		{"of a flare it is a dash", `JIC 37 elbow male -08`, "JIC -8 male; JIC -8 male", ""},
		{"an order form writes 01 for one", `01 elbow 1/2 NPT female`, elbow, "01: a count"},
		{"with a single 1 first it is the size", `1 nipple NPT`, "NPT 1 male; NPT 1 male", ""},
		{"so many parts", `4 x elbow 1/2 NPT female`, elbow, "4: a count"},
		{"a shop's name before it does not count", `Zwquv 4 x elbow 1/2 NPT female`, elbow, "4: a count; Zwquv?"},
		{"as many as the tee has ends", `Tee 1/4 NPT female x 3`, "NPT 1/4 female; NPT 1/4 female; NPT 1/4 female", "3: a count"},
		{"a pack behind the material", `Elbow 1/2 NPT female brass x50`, elbow, "50: a count"},
		{"a close nipple has no length", `1 x close nipple NPT`, "NPT 1 male; NPT 1 male", ""},
	})
}

// A count before the millimetres of like ends is no size: a thread of so many inches goes on no hose or
// tube that small. Up to six ends are counted.
func TestLikeEndsCounted(t *testing.T) {
	readMeanings(t, []meaning{
		{"three tubes", `Tee 3 x 10 mm push-in`, "PUSH 10 mm; PUSH 10 mm; PUSH 10 mm", ""},
		{"three tails", `Tee, 3 hose tails 13 mm`, "BARB 13 mm; BARB 13 mm; BARB 13 mm", ""},
		{"two tails of a strainer", `Strainer, hose tails 2 x 25 mm`, "BARB 25 mm; BARB 25 mm", ""},
		{"with the word behind the x", `Strainer, 2 x hose tail 25 mm`, "BARB 25 mm; BARB 25 mm", ""},
		{"a strainer of 2 inches with a tail of 50 mm has both sizes", `Strainer 2 x 50 mm hose tail`, "PIPE 2 female; BARB 50 mm", ""},
		{"one is no count: a tail with a thread of an inch", `Hose tail 1 x 25 mm`, "PIPE 1 male; BARB 25 mm", ""},
	})
	n := 0
	for ends := 1; ends <= 8; ends++ {
		r := Read(fmt.Sprintf("Manifold, %d x 10 mm push-in", ends))
		if len(r.Ends) == ends && ends > 1 {
			for _, e := range r.Ends {
				require.Equal(t, "PUSH 10 mm", briefEnd(e))
			}
			n = ends
		}
	}
	require.Equal(t, mostLike, n)
}

// A tube's wall behind its outside diameter is no end.
func TestWalls(t *testing.T) {
	readMeanings(t, []meaning{
		{"by its decimal", `Tube coupling, tube 15x1.5`, "TUBE 15 mm; TUBE 15 mm", "1.5: the wall of the tube"},
		{"a whole wall before the angle of an elbow", `Press elbow 16x2/90`, "", "2: the wall of the tube; 90: an angle; Press elbow 16 (press end)?; Press elbow 16 (press end)?"},
		{"both pipes of a press coupling", `Press coupling 20x2-16x2`, "", ""},
		{"a whole wall with its decimal", `PEX pipe 16x2.0`, "", ""},
	})
	walls := func(text string) int {
		n := 0
		l := newLine(text, false)
		defer l.release()
		l.read()
		for _, it := range l.tokens {
			if it.figure != nil && it.figure.role == asWallOf {
				n++
			}
		}
		return n
	}
	for text, want := range map[string]int{
		"Press coupling 20x2-16x2": 2, "Press coupling 20x2": 1, "Press coupling 20x4": 1, "Press coupling 20x5": 0, // walls of multilayer pipe end before 5
		"Press coupling 14x2": 1, "Press coupling 13x2": 0, "Press coupling 63x4": 1, "Press coupling 64x4": 0, // and pipes at 14 and 63 mm: ISO 21003, memory
		"PEX pipe 16x2.0": 1, "PEX pipe 16x4.0": 1, "PEX pipe 16x5.0": 0, "PEX pipe 10x2.0": 1, "PEX pipe 9x2.0": 0,
		"tube 15x1.5": 1, "tube 15 x1.5": 0,
	} {
		require.Equal(t, want, walls(text), text)
	}
}

// Vietnamese pipe is called by its outside; beside a word of a thread it is the thread that goes with it.
func TestPipeByItsOutside(t *testing.T) {
	readMeanings(t, []meaning{
		{"a valve's thread", `van đồng phi 21 ren trong`, "PIPE 1/2 female; PIPE 1/2 female", ""},
		{"the largest of the table", `van đồng phi 60 ren trong`, "PIPE 2 female; PIPE 2 female", ""},
		{"no pipe of the table", `co nhựa phi 22 ren trong`, "TUBE 22 mm; TUBE 22 mm", ""},
	})
}

// A sign of money right before or behind a figure makes it a price, with or without a blank, and
// nothing else of the line changes.
func TestPrices(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		sign := rapid.SampledFrom([]string{"$", "€", "£", "¥", "₽", "₺", "₴"}).Draw(t, "sign")
		blank := rapid.SampledFrom([]string{"", " ", "  "}).Draw(t, "blank")
		price := fmt.Sprintf("%d.%02d", rapid.IntRange(1, 99).Draw(t, "whole"), rapid.IntRange(0, 99).Draw(t, "hundredths"))
		text := price + blank + sign
		if rapid.Bool().Draw(t, "before") {
			text = sign + blank + price
		}
		r := Read("Elbow 1/2 NPT female, " + text)
		require.Equal(t, "NPT 1/2 female; NPT 1/2 female", brief(r.Ends), text)
		require.Len(t, r.NotUsed, 1, text)
		require.Equal(t, "a price", r.NotUsed[0].Why, text)
	})
}

// What leads a line stands behind nothing but words that are not understood.
func TestLeadingFigures(t *testing.T) {
	for text, want := range map[string]bool{"2 elbow": true, "zwquv 2 elbow": true, "- 2 elbow": true, "brass 2 elbow": false, "1/2 2 elbow": false, "zwquv 3 2 elbow": false} {
		l := newLine(text, false)
		found := false
		for k, it := range l.tokens {
			if it.figure != nil && it.figure.v == 2 {
				found = l.leads(k)
			}
		}
		l.release()
		require.Equal(t, want, found, text)
	}
}
