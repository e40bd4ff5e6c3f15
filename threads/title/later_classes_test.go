package title

import (
	"testing"

	"github.com/stretchr/testify/require"
)

// Classes that the fourth gathering of later lines brought, in other words than its own.
func TestClassesOfTheFourthGathering(t *testing.T) {
	readTitled(t, []titled{
		{"Ball valve 2-inch NPT female", "NPT 2 female; NPT 2 female", "shut-off valve", ""},
		{"25-mm push-in x 3/4-inch BSPT male", "PUSH 25 mm; R 3/4 male", "", ""},
		{"1-in NPT male x 3/4-in barb fitting", "NPT 1 male; BARB 3/4 in", "hose tail", ""},
		{"2-in-1 hose tail 25-mm", "BARB 25 mm", "hose tail", ""},
		{"3in1 adaptor 1/2 NPT male", "NPT 1/2 male", "adaptor", ""},
		{"2-pack ball valve 1/2 NPT female", "NPT 1/2 female; NPT 1/2 female", "shut-off valve", ""},
	})
}

func TestASecondSizeOfACapLeavesItOpen(t *testing.T) {
	for _, s := range []string{`Cap 3" Zork to 1/2" NPT`, `Plug 3" Zork x 1/2" NPT`} {
		r := Read(s)
		require.Len(t, r.Ends, 2, s)
		require.NotEmpty(t, r.Ends[0].Question, s)
		require.NotEmpty(t, r.Ends[1].Question, s)
	}
	require.Empty(t, Read("Cap 1/2 NPT").Ends[0].Question)
}

func TestTwoOutsidesOneMillimetreApartAreOneSize(t *testing.T) {
	r := Read("Compression coupling 16/17 mm")
	for _, e := range r.Ends {
		require.Equal(t, "Is the size 16 or 17 mm? The text gives both: ask the shop which it is.", e.Question)
	}
	require.NotEmpty(t, r.Ends)
}

func TestTheFemaleEndOfAHoseMayBeAGardenHoses(t *testing.T) {
	r := Read(`3/4" hose female x 1/2" barb`)
	require.Contains(t, r.Ends[0].Question, "3/4-11.5 NH")
	require.NotContains(t, Read(`3/4" female x 1/2" barb`).Ends[0].Question, "NH")
}

func TestAWasherOfAUnionIsAsked(t *testing.T) {
	for _, s := range []string{"Fibre washer for 3/4 BSP union", "Flachdichtung 1 1/2\" für Halbverschraubung"} {
		r := Read(s)
		require.Len(t, r.Ends, 1, s)
		require.Contains(t, r.Ends[0].Question, "whose nut has a larger thread", s)
	}
	require.Empty(t, Read("Fibre washer 3/4 BSP").Ends[0].Question)
}

func TestACamCouplingWithoutASizeIsNamed(t *testing.T) {
	r := Read("Camlock type C with hose shank 50 mm")
	require.Equal(t, []string{"Camlock (cam coupling)"}, r.Unread)
	require.Len(t, r.Ends, 1)
}

func TestAnElbowOfGluedPipeHasItsThreadOnce(t *testing.T) {
	r := Read("PPR elbow female 3/4")
	require.Len(t, r.Ends, 1)
	require.Equal(t, []string{"the other end (glued or welded end)"}, r.Unread)
	require.Contains(t, r.Ends[0].Question, "G 3/4")
}
