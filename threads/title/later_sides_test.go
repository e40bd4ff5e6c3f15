package title

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

// The classes that the next gatherings brought, in other lines than theirs. The answers were written down before
// the reader saw them.

const otherEnd = "the other end (nothing is said of it)?"

// An adaptor joins two things, and a tap has an outlet: of which only one end is said, the other is named.
func TestTheOtherEndOfAConnectorIsNamed(t *testing.T) {
	readMeanings(t, []meaning{
		{"a connector", `Connector 3/4 FNPT`, "NPT 3/4 female", otherEnd},
		{"in French", `Raccord laiton G 1/2 mâle`, "G 1/2 male", otherEnd},
		{"with a grip", `Raccord à compression 16 mm`, "COMP 16 mm", otherEnd},
		{"a tap's outlet", `Bib tap G 1/2`, "G 1/2 male", otherEnd},
		{"of a tube alone, both are of it", `Koppling 22 mm`, "TUBE 22 mm; TUBE 22 mm", ""},
		{"two that are said are all", `Connector 3/4 FNPT x 1/2 MNPT`, "NPT 3/4 female; NPT 1/2 male", ""},
		{"a plug has one", `Plug 3/4 NPT`, "NPT 3/4 male", ""},
	})
}

// A sex said of one side leaves the other open.
func TestTheSexOfOneSide(t *testing.T) {
	for _, text := range []string{`Ball valve G 3/4, male one side`, `Kugelhahn G 3/4 AG einseitig`, `Vanne G 3/4 mâle d'un côté`, `Válvula de bola G 3/4 macho por un lado`} {
		r := Read(text)
		require.Len(t, r.Ends, 2, text)
		require.Equal(t, "G 3/4 male", briefEnd(r.Ends[0]), text)
		require.NotEmpty(t, r.Ends[1].Question, text)
	}
	require.Equal(t, "G 3/4 male; G 3/4 male", brief(Read(`Ball valve G 3/4, male both sides`).Ends))
}

// A hose's female end of which no word says whose thread it has is open, and one whose family is said is not.
func TestTheThreadOfAHosesNutIsAsked(t *testing.T) {
	for _, text := range []string{`Panzerschlauch 3/8" IG x 3/8" IG 50 cm`, `wąż elastyczny GW 1/2 x GW 1/2 40 cm`, `flexible F 1/2 x F 1/2 30 cm`} {
		for _, e := range Read(text).Ends {
			require.NotEmpty(t, e.Question, text)
			require.Greater(t, len(e.Candidates), 1, text)
		}
	}
	require.Equal(t, "G 3/8 female; G 3/8 female", brief(Read(`Panzerschlauch G 3/8 IG x G 3/8 IG 50 cm`).Ends))
}

// Signs of money are no threads: R is Brazil's and South Africa's.
func TestTheLettersOfMoneyAreNoThread(t *testing.T) {
	readTitled(t, []titled{
		{`Niple 3/4" latão R$ 12,50`, "PIPE 3/4 male; PIPE 3/4 male", "nipple", "brass"},
		{`R$ 8,90 - Tampão macho 1/2"`, "PIPE 1/2 male", "plug", ""},
		{`Hex plug 1/2" stainless R 45.50`, "PIPE 1/2 male", "plug", "stainless steel"},
		{`Elbow 1/2 NPT female US$ 4.20`, "NPT 1/2 female; NPT 1/2 female", "elbow", ""},
		{`Hex nipple R 1/2`, "R 1/2 male; R 1/2 male", "nipple", ""},
	})
}

// The fittings of a hose are counted, and the layers of its wire are no thread.
func TestTheFittingsOfAHose(t *testing.T) {
	readTitled(t, []titled{
		{`Mangueira 1/2 com 2 terminais JIC 3/4-16 fêmea`, "BARB 1/2 in; JIC -8 female; JIC -8 female", "", ""},
		{`Schlauch 3/8, 2 Anschlüsse JIC 9/16 AG`, "BARB 3/8 in; JIC -6 male; JIC -6 male", "", ""},
		{`Tubo R2 3/8 con 2 raccordi JIC 9/16 femmina`, "TUBE 3/8 in; JIC -6 female; JIC -6 female", "", ""},
	})
}

// Two inch sizes of a tail may be a hose's and a thread's.
func TestATailOfTwoInchSizesIsAsked(t *testing.T) {
	for _, text := range []string{`Hose tail 3/4 x 1/2`, `Portagomma 1/2 x 3/8`, `Espigão 1/2 x 3/4`} {
		r := Read(text)
		require.Len(t, r.Ends, 2, text)
		require.Contains(t, r.Ends[0].Question, "a hose's, or the thread's", text)
		require.Contains(t, r.Ends[1].Question, "a hose's, or the thread's", text)
	}
	require.Empty(t, Read(`Reducing hose joiner 3/4 x 1/2`).Ends[0].Question)
}

// A part of plastic of which no word says that it has a thread may be glued.
func TestPlasticWithoutAThreadMayBeGlued(t *testing.T) {
	for _, text := range []string{`PVC elbow 1"`, `PP tee 3/4"`, `Poly elbow 1/2"`} {
		require.Contains(t, Read(text).Ends[0].Question, "glued, fused or pushed on", text)
	}
	for _, text := range []string{`PVC elbow 1" female thread`, `Brass elbow 1"`, `PP tee 3/4" F`} {
		require.NotContains(t, Read(text).Ends[0].Question, "glued, fused or pushed on", text)
	}
	readTitled(t, []titled{{`PVC tee, socket, 1 in`, "", "tee", ""}, {`CPVC socket x socket elbow 3/4`, "", "elbow", ""}})
}

// Millimetres of a valve are a tube's outside or its own nominal bore.
func TestTheMillimetresOfAValve(t *testing.T) {
	r := Read(`Brass ball valve 25mm`)
	require.Len(t, r.Ends, 2)
	require.Contains(t, r.Ends[0].Question, "nominal bore")
	require.Contains(t, briefEnd(r.Ends[0]), "PUSH")
	require.Contains(t, briefEnd(r.Ends[0]), "NPT")
	require.NotContains(t, Read(`Ball valve for 15 mm tube`).Ends[0].Question, "nominal bore")
	require.NotContains(t, Read(`Ball valve 15 mm compression`).Ends[0].Question, "nominal bore")
}

func TestThreadsOfNumberedSizes(t *testing.T) {
	for _, text := range []string{`Elbow 10-32 male`, `1/8 push-in x 10-32 male`, `Plug 10-32`} {
		r := Read(text)
		require.NotContains(t, brief(r.Ends), "10 mm", text)
		require.NotContains(t, brief(r.Ends), "32 mm", text)
		require.Equal(t, "10-32 UN", strings.TrimSuffix(r.Ends[len(r.Ends)-1].Candidates[0].String(), " male"), text)
	}
	require.Contains(t, Read(`Elbow 8-32 male`).Ends[0].Question, "No UN has the size")
	require.Equal(t, "TUBE 10 mm; TUBE 10 mm", brief(Read(`Elbow 10 mm`).Ends))
}

// What is named before any size is the part: a gasket there is no seal of another.
func TestAGasketNamedFirstIsThePart(t *testing.T) {
	for _, text := range []string{`Gasket 3/4"`, `Guarnizione 1/2"`, `Packning 3/4"`, `Junta 1"`} {
		require.Equal(t, "washer", Read(text).Kind, text)
	}
	require.NotEqual(t, "washer", Read(`Union 3/4" BSPP with gasket`).Kind)
	require.NotEqual(t, "washer", Read(`3/4" BSPP nut, gasket`).Kind)
}

func TestFuelGasIsNoThread(t *testing.T) {
	require.NotContains(t, brief(Read(`1/2 F x 1/2 F gas connector 60 cm`).Ends), "G 1/2 female; G 1/2 female")
	require.Equal(t, "NPT 1/2 female; NPT 1/2 female", brief(Read(`Gas valve 1/2 FNPT`).Ends))
	require.Equal(t, "BSP 1/2 male", brief(Read(`Bouchon 1/2 gaz mâle`).Ends))
}

func TestSmallWaysOfWriting(t *testing.T) {
	readTitled(t, []titled{
		{`Cotovelo 3/4" F (UN)`, "PIPE 3/4 female; PIPE 3/4 female", "elbow", ""},
		{`Adaptador rosca macho 1'`, "PIPE 1 male", "adaptor", ""},
		{`Mamelon 15 x 21 - 20 x 27`, "BSP 1/2 male; BSP 3/4 male", "nipple", ""},
		{`Cople 1/2 300# G`, "PIPE 1/2 female; PIPE 1/2 female", "coupling", ""},
		{`Отвод ф25`, "TUBE 25 mm; TUBE 25 mm", "elbow", ""},
		{`Küresel vana iki inç`, "PIPE 2 female; PIPE 2 female", "shut-off valve", ""},
		{`Red. campana 3/4 x 1/2`, "PIPE 3/4 female; PIPE 1/2 female", "", ""},
		{`Insert coupling 1" nylon`, "BARB 1 in; BARB 1 in", "coupling", "pa"},
		{`Insert adapter 3/4 x 1 male`, "BARB 3/4 in; PIPE 1 male", "", ""},
	})
}
