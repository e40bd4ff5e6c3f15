package title

import (
	"testing"

	"github.com/stretchr/testify/require"
)

// Words that mean one thing in one trade and another beside it: what is right for the one must not be read into the
// other. Each line stands beside one of the other kind, with its answer written down first.

// R with a number glued to it is a grade of hose where the line speaks of hydraulics, and a thread's size elsewhere.
func TestTheGradeOfAHoseIsNoThread(t *testing.T) {
	for text, want := range map[string]string{
		`Nipplo per tubo R1 1/2`:            "R 1 1/2 male; R 1 1/2 male",
		`Gartenschlauch Anschluss R1 1/4`:   "R 1 1/4 male; R 1 1/4 male",
		`Schlauch mit R1 1/2 Verschraubung`: "R 1 1/2 male; R 1 1/2 male",
	} {
		require.Equal(t, want, brief(Read(text).Ends), text)
	}
	require.Contains(t, brief(Read(`Schlauch R1 x G 3/4`).Ends), "R 1 male")
	require.NotContains(t, brief(Read(`Hydraulic hose R2 3/8`).Ends), "R 2")
}

// MT is metres in Italian, and a male thread in English.
func TestMTIsMetresOrAMaleThread(t *testing.T) {
	require.Equal(t, "BARB 3/4 in; PIPE 1 male", brief(Read(`Hose tail 3/4 x MT 1`).Ends))
	require.Equal(t, "PIPE 1 male; BARB 3/4 in", brief(Read(`Hose fitting MT 1 x 3/4 barb`).Ends))
	require.Empty(t, Read(`tubo 1/2 mt 1,20`).Ends)
	require.Empty(t, Read(`Manguera 1/2 mt 10`).Ends)
}

// A range of a unit is no numbered thread of the unified screws.
func TestARangeIsNoThread(t *testing.T) {
	require.Empty(t, Read(`Relay 12-24 V`).Ends)
	require.Equal(t, "G 1/4 male", brief(Read(`Sensor 4-40 °C G 1/4`).Ends))
}

// UN behind an inch size with its threads an inch is a thread; in a Portuguese list it counts pieces.
func TestUNIsAThreadOrUnits(t *testing.T) {
	require.Contains(t, brief(Read(`1" UN 14 male`).Ends), "1-14")
	require.Contains(t, brief(Read(`1 7/8" UN 12 female`).Ends), "1 7/8-12")
}

// The pairs of bore and outside of the French trade, with millimetres behind them or parted by a stroke.
func TestFrenchPairs(t *testing.T) {
	require.Equal(t, "BSP 3/4 female", brief(Read(`Bouchon femelle 20 x 27 mm`).Ends))
	require.Equal(t, "BSP 1 1/4 male; BSP 1 female", brief(Read(`Réduction mâle femelle 33x42/26x34`).Ends))
}

// What a word before or behind an x counts or names belongs to its own end.
func TestEndsThatKeepTheirWords(t *testing.T) {
	for text, want := range map[string]string{
		`Hose 10 mm x 12 mm push-in`:                            "BARB 10 mm; PUSH 12 mm",
		`Tee 1x 1/2 x 1 NPT female`:                             "NPT 1 female; NPT 1/2 female; NPT 1 female",
		`Y-Verteiler 1x 3/4" IG, 2x 3/4" AG`:                    "PIPE 3/4 female; PIPE 3/4 male; PIPE 3/4 male",
		`Nut M22x1.5 for 2SN hose`:                              "M M22x1.5 female",
		`Adaptor hose 2SN 1/2 x JIC -8 male`:                    "BARB 1/2 in; JIC -8 male",
		`Hose tail G 1/2 female for 1/2 2SN hose`:               "G 1/2 female; BARB 1/2 in",
		`Flexible connector hose 10 mm x 1/2 BSP`:               "TUBE 10 mm; BSP 1/2 female",
		`Flexible tap connector 15 mm x 1/2" BSP female 300 mm`: "TUBE 15 mm; BSP 1/2 female",
		`Supply line 3/8 comp x 1/2 female 1'`:                  "COMP 3/8 in; G/NPSM 1/2 female",
		`Fittings push-in PE10 x G 1/4 male`:                    "PUSH 10 mm; G 1/4 male",
		`Camlock type F 2" NPT`:                                 "NPT 2 male",
		`Camlock type: F 2"`:                                    "PIPE 2 male",
		`Klemmverschraubung 3/4" Eurokonus 16x2`:                "PIPE 3/4; COMP 16 mm",
		`Push-fit tee 22 mm x 22 mm with 1/2" FIP branch`:       "PUSH 22 mm; PUSH 22 mm; NPT 1/2 female",
		`Hose barb tee 3/8 x 3/8 with 1/4 NPT male branch`:      "BARB 3/8 in; BARB 3/8 in; NPT 1/4 male",
		`Grooved tee 2" x 2" with 1" FIP outlet`:                "NPT 1 female",
		`Ball valve 3/4 body, 1/2 NPT female`:                   "NPT 1/2 female; NPT 1/2 female",
		`Pressure regulator 1/2 body 1/4 NPT`:                   "NPT 1/4 female; NPT 1/4 female",
		`Niple 3/4 x rosca 1' macho`:                            "PIPE 3/4 male; PIPE 1 male",
		`Elbow galvanised 20 fi x 20 mi`:                        "PIPE 3/4 female; PIPE 3/4 male",
		`Pneumatic Y fitting PE10 tube`:                         "PUSH 10 mm; PUSH 10 mm; PUSH 10 mm",
		`Coupling 1/2 body 3/8 NPT`:                             "NPT 1/2 female; NPT 3/8 female",
	} {
		require.Equal(t, want, brief(Read(text).Ends), text)
	}
	require.True(t, Read(`Adapter 12L with swivel nut`).Ends[0].Swivel, "no ring is named, so the nut is the end's own")
	require.Empty(t, Read(`Pneumatic tube PU8 clear`).Ends)
	for _, text := range []string{`Hose adaptor male/female quick connector male 3/4"`, `Schlauchadapter AG/IG Steckkupplung IG 1/2`} {
		require.NotPanics(t, func() { Read(text) }, text)
	}
}

// A sex beside millimetres makes them a bore in some trades; where they may be a tube's outside too, it is asked.
func TestMillimetresWithASexAreAsked(t *testing.T) {
	for _, text := range []string{`Kolanko 20 fi`, `Brass elbow 15 mm male`} {
		for _, e := range Read(text).Ends {
			require.NotEmpty(t, e.Question, text)
		}
	}
}

// Letters that are one pair of sexes in one trade and another in the next.
func TestPairsOfSexesByTheTrade(t *testing.T) {
	for text, want := range map[string]string{
		`Кран шаровой 1/2 ВН`:                   "PIPE 1/2 female; PIPE 1/2 male",
		`Кран шаровой 1/2 вн.`:                  "PIPE 1/2 female; PIPE 1/2 female",
		`Muffe 1/2" m/m`:                        "PIPE 1/2 female; PIPE 1/2 female",
		`Nippel m/m 1/2" til muffe`:             "PIPE 1/2 male; PIPE 1/2 male",
		`КРАН ШАРОВОЙ 1/2 ВН`:                   "PIPE 1/2 female; PIPE 1/2 female",
		`Кран 1/2 ВН х шланг 10 мм`:             "PIPE 1/2 female; BARB/PUSH 10 mm",
		`Nippel 1/2" m/m`:                       "PIPE 1/2 male; PIPE 1/2 male",
		`Złączka prosta BB 12L M18x1,5`:         "24L 12L male; 24L 12L male",
		`Gomito 10S completo di dadi e anelli`:  "24S 10S male; 24S 10S male",
		`G 1/4 barb 10 mm (3/8)`:                "G 1/4; BARB 10 mm",
		`Hose tail G 1/4 male, barb 10mm (3/8)`: "G 1/4 male; BARB 10 mm",
	} {
		require.Equal(t, want, brief(Read(text).Ends), text)
	}
}

// The swivel nut of a tee or an elbow of flares or cones is at one end, and the body is male at the others: common practice.
func TestOneEndOfATeeSwivels(t *testing.T) {
	for text, want := range map[string]string{
		`JIC swivel nut run tee #6`:          "JIC -6 female swivel; JIC -6 male; JIC -6 male",
		`JIC swivel elbow #8`:                "JIC -8 female swivel; JIC -8 male",
		`ORFS swivel nut branch tee -8`:      "ORFS -8 female swivel; ORFS -8 male; ORFS -8 male",
		`Bogen JIC -8 Überwurfmutter beids.`: "JIC -8 female swivel; JIC -8 female swivel",
		`HD-Schlauch DN8 2x M22x1,5 ÜM 1,5m`: "M M22x1.5 female swivel; M M22x1.5 female swivel",
	} {
		require.Equal(t, want, brief(Read(text).Ends), text)
	}
	for _, e := range Read(`JIC swivel nut run tee #6`).Ends[1:] {
		require.NotEmpty(t, e.Question, "that the body is male is custom")
	}
}
