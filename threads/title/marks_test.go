package title

import (
	"testing"

	"github.com/stretchr/testify/require"
)

// What numbers the ends of a hose, or the part itself, is no size. The answers were written down before the reader saw the lines.
func TestMarksOfEndsAreNoSizes(t *testing.T) {
	readTitled(t, []titled{
		{`HP hose assy 3/8 2SN, E1: JIC -6 female swivel, E2: 3/8 NPT male`, "JIC -6 female swivel; NPT 3/8 male", "hose", ""},
		{`HD-slang 3/8 2SN; kant A: wartel JIC 9/16, kant B: 3/8 NPT male`, "JIC -6 female swivel; NPT 3/8 male", "hose", ""},
		{`AD-12 | Adapter | -8 ORB male | -6 JIC male`, "ORB -8 male; JIC -6 male", "adaptor", ""},
		{`F-12-12 | NIPPLE 3/4 BSPT MALE X 3/4 JIC MALE`, "R 3/4 male; JIC -12|-8 male", "nipple", ""},
		{`G-12 | x`, "", "", ""},
	})
	require.Contains(t, brief(Read(`Cap | JIC-6 | female`).Ends), "JIC -6") // the letters of a thread are no part's number
}

func TestCountsWithTheirX(t *testing.T) {
	readTitled(t, []titled{
		{`2x JIC -6 male to 1/4 NPT male adaptor`, "JIC -6 male; NPT 1/4 male", "adaptor", ""},
		{`Manifold 4X G3/8 + 2X G1/4`, "G 3/8; G 3/8; G 3/8; G 3/8; G 1/4; G 1/4", "manifold", ""},
		{`Cross 1/4 NPT, 3F 1M`, "NPT 1/4 female; NPT 1/4 female; NPT 1/4 female; NPT 1/4 male", "cross", ""},
		{`Vessel, feed 1/2 NPT F, product 1/4 NPT F (2x, one plugged)`, "NPT 1/2 female; NPT 1/4 female; NPT 1/4 female", "pressure vessel", ""},
		{`Doppelnippel 1/2 AG 2 X 2,49 4,98 A`, "PIPE 1/2 male; PIPE 1/2 male", "nipple", ""},
		{`Vanne 316 F/F 3/4 gaz, qté 2`, "BSP 3/4 female; BSP 3/4 female", "shut-off valve", "316"},
		{`Push-in 12×Rc1/4`, "PUSH 12 mm; Rc 1/4 female", "", ""},
	})
}

func TestWordsOfHosesAndRings(t *testing.T) {
	readTitled(t, []titled{
		{`Σωλήνας υψηλής 2 λινά 3/8, 2 μέτρα, ρακόρ θηλ. BSP 3/8 στις δύο άκρες`, "BSP 3/8 female; BSP 3/8 female", "hose", ""},
		{`Hidrolik hortum 3/8 R2 120 cm iki ucu 3/8 BSP somunlu`, "G 3/8 female swivel; G 3/8 female swivel", "hose", ""},
		{`high pressure hose 3/8, crimp both ends female jic 6`, "JIC -6 female; JIC -6 female", "hose", ""},
		{`Snijringkoppeling 12mm L-reeks x G 3/8 buiten`, "24L 12L male; G 3/8 male", "adaptor", ""},
		{`Verschraubung 12 mm S-Reihe x G 3/8 AG`, "24S 12S male; G 3/8 male", "", ""},
		{`Verschlussschraube M16x1,5 Innen-6kt ED`, "M M16x1.5 male stud-ring", "plug", ""},
		{`Manometer G 1/4 AG -1/0`, "G 1/4 male", "gauge", ""},
	})
	r := Read(`GE12S-R1/2ED`) // the ring of a stud lies under a parallel thread, and R is a taper one: DIN 3852-2 has both
	require.Contains(t, r.Ends[1].Question, "the ring of a stud")
	require.Len(t, r.Ends[1].Candidates, 2)
	require.Len(t, Read(`Pump, plunger, inlet 1/2 BSPP female, outlet TBC`).Ends, 1)
}
