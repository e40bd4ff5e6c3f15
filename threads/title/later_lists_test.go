package title

import (
	"testing"

	"github.com/stretchr/testify/require"
)

// What a gathering of lists of many trades taught. The lines are made for these tests, each with its answer written
// down first; those that were found stand in the corpora.

// The sex that is said of one port is that port's; of the other nothing is said, and it is asked.
func TestTheSexOfOnePort(t *testing.T) {
	readTitled(t, []titled{
		{`Gate valve, male outlet 3/4 NPT`, "NPT 3/4 male; NPT 3/4 female", "shut-off valve", ""},
		{`Llave de paso salida macho NPT 1"`, "NPT 1 male; NPT 1 female", "", ""},
		{`Válvula entrada hembra 1 NPT, salida macho 3/4 NPT`, "NPT 1 female; NPT 3/4 male", "", ""},
		{`Y-Stück Eingang IG 1", 2 Ausgänge AG 3/4"`, "PIPE 1 female; PIPE 3/4 male; PIPE 3/4 male", "tee", ""},
	})
	r := Read(`Gate valve, male outlet 3/4 NPT`)
	require.Empty(t, r.Ends[0].Question)
	require.Contains(t, r.Ends[1].Question, "mostly is")
}

// The last number of a part's number makes no mixed size with the fraction behind it.
func TestAPartsNumberIsNoSize(t *testing.T) {
	readTitled(t, []titled{
		{`C-310-2 1/4" OD compression fitting x 1/8" male NPT`, "COMP 1/4 in; NPT 1/8 male", "", ""},
		{`D-61S2 3/8" OD compression valve`, "COMP 3/8 in; COMP 3/8 in", "", ""},
		{`Reducing socket 2-1 1/4 BSP female`, "BSP 2 female; BSP 1 1/4 female", "", ""},
	})
}

// A number that is a steel's name is none behind the letters of a part's number.
func TestAGradeInAPartsNumber(t *testing.T) {
	require.Empty(t, Read(`Elbow 1/2 NPT female QZX-2205`).Material)
	require.Equal(t, "duplex", Read(`Elbow 1/2 NPT female 2205`).Material)
	require.Equal(t, "duplex", Read(`Elbow 1/2 NPT female duplex-2205`).Material)
}

// What is no fitting, though a word of one is in its line.
func TestWhatIsNoFitting(t *testing.T) {
	for _, text := range []string{
		`PVC pipe 1 1/4" class 12`, `2 in Schedule 80 pipe`, `Rubber ring, inside 40 mm, outside 44 mm (square cross section)`,
		`Hydraulic cylinder, 2 in bore`, `Ceramic disc cartridge 1/2"`, `Drip line 16 mm`, `Schlauch-Presshülse 3/8"`, `1" gasket hose per ft`,
	} {
		require.Empty(t, Read(text).Ends, text)
	}
	require.Len(t, Read(`3/4" pipe to 1/2" barb`).Ends, 2)
	require.NotEmpty(t, Read(`3/4" pipe to 1/2" barb`).Ends[0].Question)
}

// The wall of a pipe between its outside and a thread, the unit of a nominal bore, and other figures that are no ends.
func TestFiguresOfListsThatAreNoEnds(t *testing.T) {
	readTitled(t, []titled{
		{`Raccordo diritto maschio 26x3 x 3/4"`, "TUBE 26 mm; PIPE 3/4 male", "", ""},
		{`Kugelhahn DN 20 mm`, "PIPE 3/4 female; PIPE 3/4 female", "", ""},
		{`Nipple 1/2" x 4" MIP`, "NPT 1/2 male; NPT 1/2 male", "", ""},
		{`Elbow 22 mm, x6`, "TUBE 22 mm; TUBE 22 mm", "", ""},
		{`Кран 3-х ходовой М14х1,5 внутр.`, "M M14x1.5 female; M M14x1.5 female; M M14x1.5 female", "", ""},
		{`Espiga hembra jic r1 / r2 3/8" x 3/8"`, "JIC -6|-3 female; BARB 3/8 in", "", ""},
		{`Regulador M5 x 6mm tubo`, "M M5x0.8; TUBE 6 mm", "", ""},
		{`Raccord compression PE DN40 x 1 1/4" mâle`, "COMP 40 mm; PIPE 1 1/4 male plastic", "", ""},
		{`Hydraulic hose 2 m DN12 1/2 BSP female`, "BSP 1/2 female", "hose", ""},
	})
	require.NotEmpty(t, Read(`Pipe reducing socket 1-3/4`).Ends[0].Question)
	require.Contains(t, Read(`Pipe reducing socket 1-3/4`).Ends[0].Question, "1 x 3/4")
	require.NotContains(t, Read(`Pipe reducing socket 1-1/4 x 1`).Ends[0].Question, "1 x 1/4")
}

// A nut that comes with a part of male ends is no end's; whose the nut is is asked where no sex is said.
func TestANutThatComesWithIt(t *testing.T) {
	readTitled(t, []titled{
		{`Niple con tuerca 1" M/M`, "PIPE 1 male; PIPE 1 male", "nipple", ""},
		{`Skin fitting 1 1/4 BSP w/ nut`, "BSP 1 1/4 male", "through-hull", ""},
		{`Metrik somunlu hortum rakoru 3/8 M18x1,5`, "BARB 3/8 in; M M18x1.5 female swivel", "", ""},
		{`ORFS somunlu hortum rakoru 3/8 11/16`, "BARB 3/8 in; ORFS -6 female swivel", "", ""},
	})
	require.Contains(t, Read(`Niple con tuerca 1"`).Ends[0].Question, "A nut is named")
}

// A size that a word before it names for one thing is not lent to another.
func TestASizeIsNotLent(t *testing.T) {
	for text, want := range map[string]string{
		`Push-in tee PA x R 1/8 male`: "What tube fits",
		`Hose barb x 3/4`:             "or the thread's at the other end",
		`Innesto rapido 10 mm`:        "the coupling is for",
	} {
		questions := ""
		for _, e := range Read(text).Ends {
			questions += e.Question + "\n"
		}
		require.Contains(t, questions, want, text)
	}
	require.Equal(t, "?", brief(Read(`Tee 1/2 NPT female x 1/4 SW`).Ends[2:]))
}

// A pipe of plastic and a valve by its nominal bore may have no thread at all, and that is asked.
func TestAThreadThatIsNotSaidIsAsked(t *testing.T) {
	for text, want := range map[string]string{
		`PVC reducing bush 1 x 3/4`:   "glued, fused or pushed on",
		`Ball valve DN 32`:            "a flange, or an end to weld, solder or press",
		`PVC threaded bush 1 x 3/4`:   "",
		`Ball valve DN 32 BSP female`: "",
	} {
		question := Read(text).Ends[0].Question
		if want == "" {
			require.NotContains(t, question, "no thread", text)
			continue
		}
		require.Contains(t, question, want, text)
	}
}

// What stands beside a part is not the part, and its words are not the thread's.
func TestWhatStandsBesideThePart(t *testing.T) {
	readTitled(t, []titled{
		{`15x3/4 tap con straight w/ fibre washer comp`, "COMP 15 mm; G/NPSM 3/4 female washer", "adaptor", ""},
		{`Seacock 1 1/4 BSP female, hose tail 32 mm, 2 clamps`, "BSP 1 1/4 female; BARB 32 mm", "seacock", ""},
		{`Flat face coupler 3/8 NPT female`, "NPT 3/8 female", "quick coupling", ""},
		{`Quick connect tee 8 mm hose`, "PUSH 8 mm; PUSH 8 mm; PUSH 8 mm", "tee", ""},
		{`Ball valve 3/4" screw`, "PIPE 3/4 female; PIPE 3/4 female", "shut-off valve", ""},
		{`Kogelkraan 15 mm knel 2x, met aftap`, "COMP 15 mm; COMP 15 mm", "shut-off valve", ""},
	})
	require.Contains(t, Read(`Llave de nariz 3/4 p/manguera`).Ends[0].Question, "the thread's")
}

// What each language writes in short.
func TestLettersOfTheLists(t *testing.T) {
	readTitled(t, []titled{
		{`Kaplin te 25x3/4" İD`, "COMP 25 mm; COMP 25 mm; PIPE 3/4 female", "tee", ""},
		{`Koleno č. 90 1" vnitřní`, "PIPE 1 female; PIPE 1 female", "elbow", ""},
		{`σπιράλ 1/2 Θ - 1/2 Θ 40 εκ.`, "G/NPT 1/2 female; G/NPT 1/2 female", "hose", ""},
		{`محبس ١/٢ بوصة، نحاس`, "PIPE 1/2 female; PIPE 1/2 female", "shut-off valve", "brass"},
		{`Трійник затискний 25х3/4"Зх25`, "COMP 25 mm; COMP 25 mm; PIPE 3/4 male", "tee", ""},
		{`Tee FFF 3/4 ott.`, "PIPE 3/4 female; PIPE 3/4 female; PIPE 3/4 female", "tee", "brass"},
		{`焊接等径三通 1/2"`, "", "tee", ""},
		{`Hoekkraan mannelijk 3/8`, "PIPE 3/8 male; PIPE 3/8 male", "", ""},
		{`Boru 8 mm dış / 6 mm iç çap`, "", "", ""},
	})
}

// The sound neighbours of those lines, which a second reading found harmed: each is what it was.
func TestTheNeighboursOfTheLists(t *testing.T) {
	readTitled(t, []titled{
		{`Elbow M-F-1 1/4 NPT`, "NPT 1 1/4 male; NPT 1 1/4 female", "elbow", ""},
		{`Ball valve DN-32-1 1/4 G female`, "G 1 1/4 female; G 1 1/4 female", "", ""},
		{`bush r2 male, g 1/2 female`, "R 2 male; G 1/2 female", "bush", ""},
		{`Reduziernippel R1/R2 Messing`, "R 1 male; R 2 male", "nipple", "brass"},
		{`Reducție G 3/4 x G 1/2 interior-exterior`, "G 3/4 female; G 1/2 male", "", ""},
		{`Ball valve 22mm compression x 15`, "COMP 22 mm; COMP 15 mm", "", ""},
		{`Reducing coupling push-fit 22mm, x15`, "PUSH 22 mm; PUSH 15 mm", "", ""},
		{`Codo C-22 x 1/2 G macho`, "G 1/2 male", "elbow", ""},
		{`Codo FG 1" NPT hembra`, "NPT 1 female; NPT 1 female", "elbow", ""},
		{`Elbow G 1/2 female, compression`, "G 1/2 female", "elbow", ""},
		{`Tap connector 22 mm x 3/4 compression`, "COMP 22 mm; PIPE 3/4 female", "adaptor", ""},
	})
	require.NotEmpty(t, Read(`Hose 45 m G 3/4`).Ends[0].Question)
	require.Contains(t, Read(`Hex nipple 1 x 2 MNPT`).Ends[1].Question, "or the length")
	require.NotEmpty(t, Read(`Elbow G 1/2 female, compression`).Unread)
	require.Equal(t, "brass", Read(`Hose tail G 1/2 male x 1/2 vinyl hose, brass`).Material)
}
