package title

import (
	"testing"

	"github.com/stretchr/testify/require"
)

// Ends that a sentence counts, ports that it numbers, and threads that are another part's, as people who had not seen the rules wrote them; the
// answers are a fitter's. An end with a question has a question mark.
func TestEndsThatASentenceCounts(t *testing.T) {
	for text, want := range map[string]string{
		`Pump with 2 inlets 3/4" BSP female and 2 outlets 1/2" BSP female`:     "BSP 3/4 female?; BSP 3/4 female?; BSP 1/2 female?; BSP 1/2 female?",
		`Two 3/4" BSPP female inlets, one 1" BSPP male outlet`:                 "G 3/4 female; G 3/4 female; G 1 male",
		`Tank, three 1" NPT female ports`:                                      "NPT 1 female; NPT 1 female; NPT 1 female",
		`Tank with 2 ports 1" NPT female and 1 port 1/2" NPT female`:           "NPT 1 female; NPT 1 female; NPT 1/2 female",
		`Filter head with 3 ports G 1 female`:                                  "G 1 female; G 1 female; G 1 female",
		`Pump, two G 1 female inlets and one G 3/4 female outlet`:              "G 1 female; G 1 female; G 3/4 female",
		`Manifold with 3 fittings 1/2" NPT male`:                               "NPT 1/2 male; NPT 1/2 male; NPT 1/2 male",
		`Filter housing 1" NPT female, 2 gauge ports 1/4" NPT female`:          "NPT 1 female; NPT 1/4 female; NPT 1/4 female",
		`Collecteur avec 3 raccords 1/2" BSP mâle`:                             "BSP 1/2 male?; BSP 1/2 male?; BSP 1/2 male?",
		`Manifold, ports 1 to 3 1/2" NPT female`:                               "NPT 1/2 female; NPT 1/2 female; NPT 1/2 female",
		`Manifold: ports 1-4 1/8 NPT female, port 5 1/4 NPT female`:            "NPT 1/8 female; NPT 1/8 female; NPT 1/8 female; NPT 1/8 female; NPT 1/4 female",
		`Manifold ports 1, 2, 3: 1/4" NPT female; port 4: 1/2" NPT female`:     "NPT 1/4 female; NPT 1/4 female; NPT 1/4 female; NPT 1/2 female",
		`Ports 1 and 2 are G 1/4 female, port 3 is G 1/8 female`:               "G 1/4 female; G 1/4 female; G 1/8 female",
		`Two 1/2" NPT male ends and two 3/8" barbs`:                            "NPT 1/2 male; NPT 1/2 male; BARB 3/8 in; BARB 3/8 in",
		`Twin outlet tap, inlet 1/2" BSP male, both outlets 3/4" BSP male`:     "BSP 1/2 male?; BSP 3/4 male?; BSP 3/4 male?",
		`Manifold with 2 valves 1/2" NPT female`:                               "NPT 1/2 female; NPT 1/2 female",
		`4-way diverter valve, A and B 1/2 NPT female, C and D 3/8 NPT female`: "NPT 1/2 female; NPT 1/2 female; NPT 3/8 female; NPT 3/8 female",
		`3-Wege-Umschaltventil POM, 3x Steckanschluss 10 mm`:                   "PUSH 10 mm; PUSH 10 mm; PUSH 10 mm",
		`Rozdzielacz 3/4 GW, trzy wyjścia 1/2 GZ`:                              "PIPE 3/4 female?; PIPE 1/2 male?; PIPE 1/2 male?; PIPE 1/2 male?",
		`Kollektor 3/4 BSP hun, to afgange 1/2 BSP hun`:                        "BSP 3/4 female?; BSP 1/2 female?; BSP 1/2 female?",
		`Verteilerblock Anschlüsse 1 und 3 G 1/4 IG, Anschluss 2 G 3/8 IG`:     "G 1/4 female; G 1/4 female; G 3/8 female",
		`needle valve 3/8 NPT 2x female 210 bar`:                               "NPT 3/8 female; NPT 3/8 female",
		`ball valve 1/4 NPT female 2 x, brass`:                                 "NPT 1/4 female; NPT 1/4 female",
		`nipple A4 1/2" NPT male`:                                              "NPT 1/2 male; NPT 1/2 male",
		`Quick coupling 1/2", 1/2" BSP female thread`:                          "BSP 1/2 female?",
		`Steckverschraubung 1/4 NPT für PE Rohr 8 mm`:                          "NPT 1/4?; PUSH 8 mm",
		`PVC Tee - 3/4" x 3/4" x 1/2" Slip/Slip/FPT`:                           "NPT 1/2 female plastic",
		`1 - 1/2" NPT male nipple`:                                             "NPT 1/2 male?; NPT 1/2 male?",
		`flare elbow 3/8 SAE x 1/4 NPT male`:                                   "SAE45 -6 male?; NPT 1/4 male",
		`ACME female to 1/4 NPT male adapter`:                                  "NPT 1/4 female?; NPT 1/4 male",
		`Bulkhead tee 1/2" NPT female`:                                         "NPT 1/2 female; NPT 1/2 female; NPT 1/2 female",
		`Bulkhead cross G 1/4 female`:                                          "G 1/4 female; G 1/4 female; G 1/4 female; G 1/4 female",
		`Cross 1/2" NPT female, one port 1/4" NPT female`:                      "NPT 1/2 female; NPT 1/2 female; NPT 1/2 female; NPT 1/4 female",
		`tee 1/2" NPT female, one port 1/4" NPT female`:                        "NPT 1/2 female; NPT 1/2 female; NPT 1/4 female",
	} {
		require.Equal(t, want, briefAsked(Read(text).Ends), text)
	}
}

// What a part goes onto, turns or comes with has threads that are not its own.
func TestThreadsOfAnotherPart(t *testing.T) {
	for text, want := range map[string]string{
		`Cap for hose tail 3/4" BSP male`:                                 "BSP 3/4 female?",
		`Verschlusskappe für Nippel G 1/2 AG`:                             "G 1/2 female",
		`Plug for elbow 3/8" NPT female`:                                  "NPT 3/8 male",
		`Dust cap for coupling G 1/2 male`:                                "G 1/2 female",
		`For pump with G 3/4 male outlet: swivel nut and hose tail 19 mm`: "BARB 19 mm",
		`Winkel mit Außengewinde G 1/2, mit Kappe`:                        "G 1/2 male; G 1/2 male",
	} {
		require.Equal(t, want, briefAsked(Read(text).Ends), text)
	}
}

// What a tube, a hose or a place is made of is not what the part is made of, and a plastic part that looks like metal is of plastic.
func TestMaterialsOfOtherThings(t *testing.T) {
	for text, want := range map[string]string{
		`Compression elbow 15 mm for copper tube, brass`:             "brass",
		`Compression elbow 15 mm for copper tube`:                    "",
		`Compression fitting 3/8 for steel tube x 1/4 NPT male, 316`: "316",
		`Brass-coloured plastic nipple 1/2 NPT`:                      "plastic",
		`Stainless look plastic hose tail 13 mm`:                     "plastic",
		`Plastic union with stainless nut 3/4 NPT female`:            "plastic",
		`Valve 1/2 NPT female 316 with brass handle`:                 "316",
		`Valve 1/2 NPT female with brass handle`:                     "",
		`Nipple 1/2 NPT screwed into an aluminium block`:             "",
	} {
		require.Equal(t, want, Read(text).Material, text)
	}
}
