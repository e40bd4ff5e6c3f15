package title

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

// What a part goes onto, dash sizes of American hydraulics, threads of other trades, left hands, degrees without a sign, sexes counted in
// words and hoses by their fittings, as people who had not seen the rules wrote them; the answers are a fitter's. A question stands where the
// answer has a question mark.
func TestThreadsInTheWordsOfTheTrade(t *testing.T) {
	for text, want := range map[string]string{
		"G1/2 male to suit G1/2 female port":                                   "G 1/2 male",
		"passend für G3/4 Innengewinde, R3/4 AG":                               "R 3/4 male",
		"for 1/4 NPT female port, G1/4 male":                                   "G 1/4 male",
		"adapter G1/2 male for pump with 1/2 NPT female":                       "G 1/2 male",
		"adapter 1/4 NPT male, replaces 1/4 BSPT male":                         "NPT 1/4 male",
		"3/8 BSPP male, screws into 3/8 BSPP female":                           "G 3/8 male",
		"Hose tail 1/2 BSPT male for 13 mm hose":                               "R 1/2 male; BARB 13 mm",
		"4MNPT x 4MJ":                                                          "NPT 1/4 male; JIC -4 male",
		"6MORB x 4FNPT":                                                        "ORB -6 male; NPT 1/4 female",
		"8MBSPP-8FJX":                                                          "G 1/2 male; JIC -8 female swivel",
		"1/2 NPTM x 1/2 NPTF nipple":                                           "NPT 1/2 male; NPT 1/2 female",
		"1/4 inv. flare male x 1/8 MPT":                                        "NPT 1/8 male",
		"flareless -6 male x 1/4 NPT male":                                     "NPT 1/4 male",
		"9/16-18 flareless SAE J514 male x 1/4 NPT male":                       "JIC -6 male?; NPT 1/4 male?",
		"DN25 male DIN 11851 x 1 NPT male":                                     "NPT 1 male",
		"3/8 L/H BSPP male":                                                    "G 3/8 male LH",
		"G3/8L male":                                                           "G 3/8 male LH",
		"M16x1.5-L IG Mutter":                                                  "M M16x1.5 female swivel LH",
		"1/2 est x 3/8 int NPT":                                                "NPT 1/2 male; NPT 3/8 female",
		"10S M16x1.5 male":                                                     "24S 10S male?; M M16x1.5 male?",
		"M5 male x barb 3":                                                     "M M5x0.8 male; BARB 3 mm",
		"1/8 NPT male x 3 barb":                                                "NPT 1/8 male; BARB 3 mm",
		"Wanddurchführung Schott 10L mit Mutter, beidseitig M16x1,5 AG":        "24L 10L male; 24L 10L male",
		"Nipple 1/2\" NPT, 3000 psi @ 100 F":                                   "NPT 1/2 male; NPT 1/2 male",
		"Nipple 1/2\" NPT, 3000 psi, up to 140 F":                              "NPT 1/2 male; NPT 1/2 male",
		"Ball valve 1/2\" NPT male, rated to 140 F":                            "NPT 1/2 male; NPT 1/2 male",
		"Tee 1/4\" NPT, two females and one male":                              "NPT 1/4 female; NPT 1/4 female; NPT 1/4 male",
		"Tee 1/2\" NPT, one end male and two ends female":                      "NPT 1/2 male; NPT 1/2 female; NPT 1/2 female",
		"Te 1/4\" NPT, dos hembras y un macho":                                 "NPT 1/4 female; NPT 1/4 female; NPT 1/4 male",
		"T-Stück G 1/2, ein Ende AG, die anderen IG":                           "G 1/2 male; G 1/2 female; G 1/2 female",
		"Tee 1/2\" NPT, 2 female 1 male":                                       "NPT 1/2 female; NPT 1/2 female; NPT 1/2 male",
		"Mangueira alta pressão 3/8\", 2 m, terminais fêmea giratória JIC 6":   "JIC -6 female swivel; JIC -6 female swivel",
		"Hose 3/8\", 2 m, with fittings JIC 6 female both ends":                "JIC -6 female; JIC -6 female",
		"Slang 3/8\", 2 m, kopplingar JIC 6 invändig":                          "JIC -6 female; JIC -6 female",
		"manifold: A,B 1/2 NPT F; C,D,E 1/4 NPT F":                             "NPT 1/2 female; NPT 1/2 female; NPT 1/4 female; NPT 1/4 female; NPT 1/4 female",
		"manifold inlet G3/8 f, outlets (3) G3/8 f":                            "G 3/8 female; G 3/8 female; G 3/8 female; G 3/8 female",
		"manifold inlet G1/2 female, outlets G1/4 female x 4":                  "G 1/2 female" + strings.Repeat("; G 1/4 female", 4),
		"3 way valve, 3/8 NPT F common, 1/4 NPT F on A and B":                  "NPT 3/8 female; NPT 1/4 female; NPT 1/4 female",
		"vessel feed 1/2 NPT F, brine 1/2 NPT F, permeate 1/4 NPT F both ends": "NPT 1/2 female; NPT 1/2 female; NPT 1/4 female; NPT 1/4 female",
		"tee 1/2 NPT F 3x, PN16":                                               "NPT 1/2 female; NPT 1/2 female; NPT 1/2 female",
		"JIC 37 degree male to 1/4 NPT male adaptor, dash 6, 316SS":            "JIC -6 male; NPT 1/4 male",
		"JIC male to 1/4 NPT male adaptor, -6":                                 "JIC -6 male; NPT 1/4 male",
		"JIC male to 1/4 NPT male adaptor":                                     "??; NPT 1/4 male",
		"ORFS male x 1/4 NPT male adaptor, dash 8":                             "ORFS -8 male; NPT 1/4 male",
		"Manguera de alta presión 3/8, extremos hembra giratoria JIC-6":        "JIC -6 female swivel; JIC -6 female swivel",
		"Hose 1/2 with couplings 1/2 BSPP female, 10 bar":                      "G 1/2 female; G 1/2 female",
		"Tee 1/2 barb, replaces 3/8 barb":                                      "BARB 1/2 in; BARB 1/2 in; BARB 1/2 in",
		"Elbow, push-in 10 mm, was 8 mm push-in in the old list":               "PUSH 10 mm; PUSH 10 mm",
		"Valve, relief, brass, 1/2 NPT male, set 125 psi":                      "NPT 1/2 male",
		"Elbow, 1/2 BSPP male x female, O-ring not included":                   "G 1/2 male; G 1/2 female",
		"over-pressure valve, 9 bar setting (G1/8 M, brass)":                   "G 1/8 male",
		"manifold 1/2 NPT F, 4 adet çıkış 1/4 NPT F":                           "NPT 1/2 female?; NPT 1/4 female?",
	} {
		require.Equal(t, want, briefAsked(Read(text).Ends), text)
	}
	hot := Read("hose 1/2 NPT M both ends 100 bar @20C max temp 100C")
	require.InDelta(t, 20, hot.Temperature.Celsius(), 0.01, "the pressure holds at 20 degrees, and of 100 nothing says so")
	for text, want := range map[string]string{
		"Valve, check, brass, 1/2 NPT F": "check valve", "Valve, relief, 1/2 NPT male, set 125 psi": "relief valve", "Valve, 3-way, 1/2 NPT F": "shut-off valve",
		"Pump, brass head, stainless valves, 1/2 NPT female": "feed pump", "Diaphragm pump with internal bypass valve 1/2 NPT F": "feed pump",
		"Pump relief valve 1/2 NPT M x F": "relief valve",
	} {
		require.Equal(t, want, Read(text).Kind, text)
	}
	for text, want := range map[string]string{
		"küresel vana 1/2 iç sıcak su için değil": "sıcak su için değil", "vanne 1/2 F eau froide uniquement": "eau froide uniquement",
		"Swing check valve 1/2 NPT F, horizontal mounting only": "horizontal mounting only", "Pump 12V 1/2 NPT F intermittent duty": "intermittent duty",
	} {
		require.Len(t, Read(text).Limits, 1, text)
		require.Equal(t, want, Read(text).Limits[0].Words, text)
	}
	for _, text := range []string{"pressure switch 1/4 BSPP, DIN 43650 plug", "pressure sensor with M12 plug, G1/4"} {
		require.Equal(t, "sensor", Read(text).Kind, text)
	}
}
