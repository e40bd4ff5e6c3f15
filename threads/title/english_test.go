package title

import (
	"testing"

	"github.com/stretchr/testify/require"
)

// American copper, CPVC and PEX pipe is an eighth of an inch larger outside than its nominal size.
func TestANominalSizeIsNotTheOutside(t *testing.T) {
	readTitled(t, []titled{
		{"Straight stop 1/2 nom comp x 3/8 OD comp", "COMP 5/8 in; COMP 3/8 in", "shut-off valve", ""},
		{`Angle stop 3/8" FIP x 1/2" Nominal Compression`, "NPT 3/8 female; COMP 5/8 in", "shut-off valve", ""},
		{`Straight stop 1/2" Nom. Comp (5/8" OD) x 3/8" OD Comp`, "COMP 5/8 in; COMP 3/8 in", "shut-off valve", ""},
		{"Adapter 1/2 nom sweat x 3/4 MIP", "NPT 3/4 male", "adaptor", ""},
		{`1/2" NOM barb x 3/8" OD tube stop`, "BARB 1/2 in; TUBE 3/8 in", "", ""},
	})
}

func TestAPushFitSizeOfAmericanPipeIsAsked(t *testing.T) {
	ask := "Is 1/2 in the outside of the tube, or the nominal size of a pipe that is 0.625 in outside (1/2 in push-in or 5/8 in push-in)? Measure the pipe, or ask the shop."
	require.Equal(t, ask, Read(`1/2" push-fit x 1/2" MNPT adapter`).Ends[0].Question)
	for _, s := range []string{`1/2" OD push-fit x 1/2" MNPT adapter`, `3/8" push-fit x 1/4" MNPT adapter`, `1/2" push-in x 1/2" BSP male adaptor`, `1/2" PEX push-fit x 1/2" MNPT adapter`} {
		require.Empty(t, Read(s).Ends[0].Question, s)
	}
}

func TestAPushFitStopHasItsPipeAtTheLargerEnd(t *testing.T) {
	for _, s := range []string{"1/2 x 3/8 push-fit supply stop", "Push-fit supply stop 1/2 x 3/8"} {
		r := Read(s)
		require.Equal(t, "PUSH 1/2 in; ?", brief(r.Ends), s)
		require.NotEmpty(t, r.Ends[0].Question, s)
		require.NotEmpty(t, r.Ends[1].Question, s)
	}
}

func TestTheRingOfAStudIsOnItsMale(t *testing.T) {
	readTitled(t, []titled{
		{"Reducing adaptor 1/4 M x 1/8 F BSPP ED", "G 1/4 male stud-ring; G 1/8 female", "", ""},
		{"Adaptor 3/8 BSPP female x 3/8 BSPP male ED", "G 3/8 female; G 3/8 male stud-ring", "", ""},
	})
}

func TestMillimetresCalledMetricAreAThread(t *testing.T) {
	readTitled(t, []titled{
		{"Nipple 22MM MET MALE X 1.1/16 JIC MALE", "M M22x1.5|M22x1|M22x2|M22x2.5 male; JIC -12 male", "nipple", ""},
		{"knie 15 mm met binnendraad 1/2", "TUBE 15 mm; PIPE 1/2 female", "elbow", ""},
	})
}

func TestTheWallOfATubeIsNoEnd(t *testing.T) {
	for _, s := range []string{"22 X 2.0 TUBE", "15 x 1.0 TUBE STAINLESS 6M"} {
		require.Empty(t, Read(s).Ends, s)
	}
	require.Equal(t, "TUBE 12 mm; NPT 1/4 male", brief(Read("Tube 12 x 1.5 x 1/4 NPT M").Ends))
}
