package title

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

// What a line says and no end has is named, and the ends beside it are asked about. The answers were written down first.
func TestWhatNoEndHasIsAsked(t *testing.T) {
	for text, says := range map[string]string{
		`nut & tail 20mm bsp f to 19mm hose`:          "bsp",
		`Tail adaptor MI 20mm x 19mm barb`:            "MI",
		`Barbed tee 10 mm, male`:                      "male",
		`conector rápido tubo 1/4 a 1/4 macho npt pa`: "macho npt",
	} {
		r := Read(text)
		require.NotEmpty(t, r.Ends, text)
		for _, e := range r.Ends {
			require.NotEmpty(t, e.Question, text)
		}
		named := strings.Contains(r.Ends[0].Question, says)
		for _, n := range r.NotUsed {
			named = named || n.Words == says
		}
		require.True(t, named, "%s: %v", text, r.NotUsed)
	}
}

// A line that speaks of something else is asked about where its end is a bare tail or tube; a thread that it names by its
// letters stands.
func TestMuchThatIsNotUnderstoodIsAsked(t *testing.T) {
	tail := Read(`zwq bral fent urdo klim posta 10 mm hose barb`)
	require.Len(t, tail.Ends, 1)
	require.Contains(t, tail.Ends[0].Question, "so much is not understood")
	thread := Read(`zwq bral fent urdo klim posta adaptor 1/2 NPT male x -8 JIC male`)
	for _, e := range thread.Ends {
		require.NotContains(t, e.Question, "so much is not understood")
	}
}

// A word beside a size that is not understood may name its own thread: the neighbour's is not taken for it.
func TestAStrangeWordTakesNoThreadFromItsNeighbour(t *testing.T) {
	readTitled(t, []titled{
		{`overgang 3/8 qzx udv. - 3/8 NPT indv.`, "PIPE 3/8 male; NPT 3/8 female", "adaptor", ""},
		{`overgang 3/8 udv. - 3/8 NPT indv.`, "NPT 3/8 male; NPT 3/8 female", "adaptor", ""},
	})
}

// A taper thread of which no family is named is R by custom of Europe, and may be NPT; a male nut-word closes none.
func TestCustomClosesNoTaperThread(t *testing.T) {
	readTitled(t, []titled{
		{`raccordo rapido diritto tubo ø6 - 1/8 maschio conico`, "PUSH 6 mm; NPT/R 1/8 male", "adaptor", ""},
		{`Doppelnippel 3/8 konisch`, "NPT/R 3/8 male; NPT/R 3/8 male", "nipple", ""},
		{`Robinet équerre 1/2 mâle, écrou BSP`, "BSP 1/2 male; G 1/2 female swivel", "shut-off valve", ""},
	})
}
