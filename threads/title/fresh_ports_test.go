package title

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"handtight/threads"
)

// Ports that are counted, sides of which a sex is said, sizes that are doubted or gone, and what a part is not of, as people who had not seen
// the rules wrote them; the answers are a fitter's. A question stands where the answer has a question mark.
func TestPortsSidesAndDoubts(t *testing.T) {
	ports := func(one string, n int) string { return strings.Repeat("; "+one, n) }
	for text, want := range map[string]string{
		"Manifold block 316, 2 inlet 3/4 BSPP F, 6 outlets 1/4 BSPP F, 1 gauge port 1/4 NPT F": "G 3/4 female; G 3/4 female" + ports("G 1/4 female", 6) + "; NPT 1/4 female",
		"Tee 2 inlet 3/4 BSPP F 1 outlet 1/2 BSPP F":                                           "G 3/4 female; G 3/4 female; G 1/2 female",
		"Cross 3 inlet 3/4 BSPP F 1 outlet 1/2 BSPP M":                                         "G 3/4 female; G 3/4 female; G 3/4 female; G 1/2 male",
		"3-way valve 1 inlet 1/2 NPT F 2 outlet 3/8 NPT F":                                     "NPT 1/2 female; NPT 3/8 female; NPT 3/8 female",
		"Pressure vessel 2 feed port 1/2 NPT F, 1 permeate port 3/8 NPT F":                     "NPT 1/2 female; NPT 1/2 female; NPT 3/8 female",
		"Manifold, G1/2 F inlet, 4 outlet G1/4 F":                                              "G 1/2 female" + ports("G 1/4 female", 4),
		"Manifold 1/2 NPT F both ends, 1/4 NPT F outlets x5":                                   "NPT 1/2 female; NPT 1/2 female" + ports("NPT 1/4 female", 5),
		"HP manifold IN 1/2 NPT, OUT 3/8 NPT, GAUGE 1/4\" NPT all female":                      "NPT 1/2 female; NPT 3/8 female; NPT 1/4 female",
		"Manifold, in 1/2 BSPP F, out 1/2 BSPP F, pressure gauge 1/4 NPT":                      "G 1/2 female; G 1/2 female; NPT 1/4?",
		"elbow 3/8 npt, one end is male":                                                       "NPT 3/8 male; NPT 3/8 female?",
		"elbow 3/8 npt with one male end":                                                      "NPT 3/8 male; NPT 3/8 female?",
		"cross 1/4 npt, one is male":                                                           "NPT 1/4 male" + ports("NPT 1/4 female?", 3),
		"tee 1/4 npt, two ends male":                                                           "NPT 1/4 male; NPT 1/4 male; NPT 1/4 female?",
		"reducer 1/2 x 3/8 npt, small end is male":                                             "NPT 1/2?; NPT 3/8 male",
		"tee 3/8 npt, run is female":                                                           "NPT 3/8 female; NPT 3/8 female; NPT 3/8 female?",
		"ss plugs 1/8 & 1/4 npt mixed":                                                         "NPT 1/4 male?",
		"caps 1/8, 1/4 npt":                                                                    "NPT 1/4 female?",
		"plug, looks like 1/4 npt but may be 3/8":                                              "NPT 3/8 male?",
		"nipple 1/4 npt or 3/8":                                                                "NPT 3/8 male?; NPT 3/8 male?",
		"hex nipple 3/8 npt not 1/4":                                                           "NPT 3/8 male; NPT 3/8 male",
		"hex nipple 3/8 npt instead of 1/4":                                                    "NPT 3/8 male; NPT 3/8 male",
		"hex nipple was 1/4, now 3/8 npt":                                                      "NPT 3/8 male; NPT 3/8 male",
		"4000 psi 1/4 hose JIC 4 F x F 1 m":                                                    "JIC -4 female; JIC -4 female",
		"1/2 hose, 1/2 NPT M one end JIC 8 F other":                                            "NPT 1/2 male; JIC -8 female",
		"WP 225 bar 3/8 hose bspp female x2":                                                   "G 3/8 female; G 3/8 female",
		"Hose tail 12 mm x 1/2 NPT M brass T/O $4.10":                                          "BARB 12 mm; NPT 1/2 male",
		"Hidrolik hortum R2 3/8 100cm, 2 ucu somunlu 18x1,5":                                   "M M18x1.5 female swivel; M M18x1.5 female swivel",
		"portagomma 3/4\" M per tubo int. 20":                                                  "PIPE 3/4 male?; BARB 20 mm",
		"Filtro de agua, 2 espigas p/ manguera 25 mm":                                          "BARB 25 mm; BARB 25 mm",
	} {
		require.Equal(t, want, briefAsked(Read(text).Ends), text)
	}
	for _, text := range []string{"elbow 1/4 npt no brass please", "elbow 1/4 npt must not be brass"} {
		require.Empty(t, Read(text).Material, text)
	}
	require.Equal(t, "316", Read("elbow 1/4 npt was brass, now 316").Material)
	for text, want := range map[string]string{
		"Adaptor G1/2 M x 1/4 NPT F 316 copper washer": "adaptor 316", "Hose connector G3/4 M x 13 mm barb POM EPDM washer": "hose tail pom",
		"Kugelhahn G 1/2 IG Messing FKM-Dichtung": "shut-off valve brass", "Copper washer 1/2": "washer copper",
	} {
		r := Read(text)
		require.Equal(t, want, r.Kind+" "+r.Material, text)
	}
	require.Equal(t, "full scale", Read("gauge 0..100 bar 1/4 npt").Pressures[0].What)
	require.InDelta(t, 1e7, float64(Read("gauge 0…100 bar 1/4 npt").Pressures[0].Pressure), 1)
}

// briefAsked is brief with a question mark behind each end that is asked about.
func briefAsked(ends []threads.EndReading) string {
	var out []string
	for _, e := range ends {
		one := briefEnd(e)
		if e.Question != "" {
			one += "?"
		}
		out = append(out, one)
	}
	return strings.Join(out, "; ")
}

// A sex that is said and that no end has is asked about, where all ends have the other.
func TestASexThatNoEndHasIsAsked(t *testing.T) {
	for _, text := range []string{"3-way valve 1/2 NPT M inlet, F outlets", "3-way valve 1 BSPP, inlet M, flush F, outlet M", "tee 1/2 NPT, A male, B female, C female"} {
		for _, e := range Read(text).Ends {
			require.Contains(t, e.Question, "The text says female too", text)
		}
	}
	require.Empty(t, Read("Ball valve 1/2 NPT F/F").Ends[0].Question)
}
