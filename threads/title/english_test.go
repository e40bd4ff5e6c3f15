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

func TestAWordNotUnderstoodInAListOfEndsOpensItsEnd(t *testing.T) {
	for s, want := range map[string]string{
		`Bend, 3/4" X 3/4" CC X MIP 45°`: "?; NPT 3/4 male",
		`Coupling 1" x 3/4" QJ x FIP`:    "?; NPT 3/4 female",
	} {
		r := Read(s)
		require.Equal(t, want, brief(r.Ends), s)
		require.Contains(t, r.Ends[0].Question, "Not understood", s)
	}
}

func TestANutAndTailHasItsTailOnce(t *testing.T) {
	readTitled(t, []titled{
		{`19mm Nut And Tail 19mm poly to 3/4" BSP`, "BARB 19 mm; G 3/4 female swivel plastic", "hose tail", ""},
		{"13mm nut and tail x 3/4 BSP", "BARB 13 mm; G 3/4 female swivel", "hose tail", ""},
		{"25mm In-Line Barbed Filter Both inlet & outlet 25mm barb", "BARB 25 mm; BARB 25 mm", "filter housing", ""},
		{"Barbed joiner 13mm x 13mm", "BARB 13 mm; BARB 13 mm", "", ""},
		{"32 x 32mm BSP male director", "BARB 32 mm; BSP 1 1/4 male", "hose tail", ""},
	})
}

func TestTheMeasuresOfAWasherAreNoEnds(t *testing.T) {
	require.Empty(t, Read("SS Washer OD 100 x Id 85mm -4mm Thk").Ends)
	require.Len(t, Read(`Fibre washer 3/4"`).Ends, 1)
}

func TestTheFirstLetterOfANameIsNoSex(t *testing.T) {
	readTitled(t, []titled{
		{`Male Connector 1/2"ODx1/4"NPTM H-ZB84`, "TUBE 1/2 in; NPT 1/4 male", "", ""},
		{`1/2"M-hex nipple`, "PIPE 1/2 male; PIPE 1/2 male", "nipple", ""},
		{"1/2 NPT M-F street elbow", "NPT 1/2 male; NPT 1/2 female", "", ""},
	})
	require.NotEmpty(t, Read(`Filter Drier Bi-Flow 1/2" Flare`).Ends[0].Question)
}

func TestAnElbowOfAGripAndAThreadHasBoth(t *testing.T) {
	readTitled(t, []titled{
		{"Push-fit elbow 1/4 BSPT male", "R 1/4 male; PUSH ", "elbow", ""},
		{"Compression elbow 3/8 NPT", "NPT 3/8; COMP ", "elbow", ""},
	})
}

func TestThreadedAdaptorsOfGluedPipe(t *testing.T) {
	readTitled(t, []titled{
		{"CPVC MTA 1/2", "PIPE 1/2 male plastic", "adaptor", "pvc"},
		{`UPVC FTA 1" x 3/4"`, "PIPE 3/4 female plastic", "adaptor", "pvc"},
	})
	require.Equal(t, []string{"the other end (glued or welded end)"}, Read("CPVC MTA 1/2").Unread)
}

func TestADashSizeWithItsThreadInBracketsIsOneEnd(t *testing.T) {
	readTitled(t, []titled{
		{"JIC 37 Male Straight Adapter, -6 (9/16-18 UNF), Steel ZN", "JIC -6 male", "adaptor", ""},
		{"ORB plug -8 (3/4-16 UNF) steel", "ORB -8 male", "plug", ""},
	})
	require.Contains(t, Read("JIC male adaptor -6 (3/4-16 UNF)").Ends[0].Question, "The text gives both")
}

func TestACountBehindAnXIsAnEndNotUnderstood(t *testing.T) {
	r := Read(`Coupling 1" FIP X PC`)
	require.Equal(t, "NPT 1 female; ?", brief(r.Ends))
	require.Equal(t, []string{"PC"}, r.Unread)
	require.Equal(t, "NPT 1/2 male; NPT 1/2 male", brief(Read("Nipple 1/2 NPT male x 10 pc").Ends))
}

func TestOfAConnectorOfTwoSizesTheFirstIsAsked(t *testing.T) {
	require.Equal(t, "TUBE 1/4 in; NPT 1/8 male", brief(Read("1/4 x 1/8 NPT male connector").Ends))
	require.Equal(t, "NPT 3/4 male; NPT 1/2 male", brief(Read("Hex nipple 3/4 x 1/2 NPT").Ends))
}

func TestWhatAHoseIsForIsNoPart(t *testing.T) {
	for _, s := range []string{"6 ft x 1.5 in Heavy Duty Filter Hose", `2" pump hose`, "Hydraulic Hose SAE 100R2AT, -6 (3/8 ID), 2-Wire"} {
		require.Empty(t, Read(s).Ends, s)
	}
	require.Len(t, Read(`Filter housing 3/4" BSP`).Ends, 2)
}

func TestOfTwoNamesOfAPartTheExactOneRules(t *testing.T) {
	readTitled(t, []titled{
		{`1" NPT elbows (HDPE) 90° street elbow`, "NPT 1 male plastic; NPT 1 female plastic", "elbow", ""},
		{`1/2" PEX x 1/2" sweat adapter`, "BARB/COMPRESSION/PUSH 1/2 in", "adaptor", ""},
	})
}
