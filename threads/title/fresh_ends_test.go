package title

import (
	"testing"

	"github.com/stretchr/testify/require"
)

// Ends that a sentence counts, ports that it numbers, and threads that are another part's, as people who had not seen the rules wrote them; the
// answers are a fitter's. An end with a question has a question mark.
func TestEndsThatASentenceCounts(t *testing.T) {
	for text, want := range map[string]string{
		`Pump with 2 inlets 3/4" BSP female and 2 outlets 1/2" BSP female`: "BSP 3/4 female?; BSP 3/4 female?; BSP 1/2 female?; BSP 1/2 female?",
		`Two 3/4" BSPP female inlets, one 1" BSPP male outlet`:             "G 3/4 female; G 3/4 female; G 1 male",
		`Tank, three 1" NPT female ports`:                                  "NPT 1 female; NPT 1 female; NPT 1 female",
		`Tank with 2 ports 1" NPT female and 1 port 1/2" NPT female`:       "NPT 1 female; NPT 1 female; NPT 1/2 female",
		`Filter head with 3 ports G 1 female`:                              "G 1 female; G 1 female; G 1 female",
		`Pump, two G 1 female inlets and one G 3/4 female outlet`:          "G 1 female; G 1 female; G 3/4 female",
		`Manifold with 3 fittings 1/2" NPT male`:                           "NPT 1/2 male; NPT 1/2 male; NPT 1/2 male",
		`Filter housing 1" NPT female, 2 gauge ports 1/4" NPT female`:      "NPT 1 female; NPT 1/4 female; NPT 1/4 female",
		`Collecteur avec 3 raccords 1/2" BSP mâle`:                         "BSP 1/2 male?; BSP 1/2 male?; BSP 1/2 male?",
		`Manifold, ports 1 to 3 1/2" NPT female`:                           "NPT 1/2 female; NPT 1/2 female; NPT 1/2 female",
		`Manifold: ports 1-4 1/8 NPT female, port 5 1/4 NPT female`:        "NPT 1/8 female; NPT 1/8 female; NPT 1/8 female; NPT 1/8 female; NPT 1/4 female",
		`Manifold ports 1, 2, 3: 1/4" NPT female; port 4: 1/2" NPT female`: "NPT 1/4 female; NPT 1/4 female; NPT 1/4 female; NPT 1/2 female",
		`Ports 1 and 2 are G 1/4 female, port 3 is G 1/8 female`:           "G 1/4 female; G 1/4 female; G 1/8 female",
		`Bulkhead tee 1/2" NPT female`:                                     "NPT 1/2 female; NPT 1/2 female; NPT 1/2 female",
		`Bulkhead cross G 1/4 female`:                                      "G 1/4 female; G 1/4 female; G 1/4 female; G 1/4 female",
		`Cross 1/2" NPT female, one port 1/4" NPT female`:                  "NPT 1/2 female; NPT 1/2 female; NPT 1/2 female; NPT 1/4 female",
		`tee 1/2" NPT female, one port 1/4" NPT female`:                    "NPT 1/2 female; NPT 1/2 female; NPT 1/4 female",
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
