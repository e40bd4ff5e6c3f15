package title

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

// The classes that lists of hydraulics, compressed air, laboratories, boats and stock masters brought, in other lines
// than theirs. The answers were written down before the reader saw them.

// A cam coupling's letter says its other end: A-A-59326, as memory has it.
func TestTheTypesOfCamCouplings(t *testing.T) {
	readTitled(t, []titled{
		{`Camlock type A 1 1/2"`, "PIPE 1 1/2 female", "", ""},
		{`Camlock type B 1"`, "PIPE 1 male", "", ""},
		{`Camlock type C 2"`, "BARB 2 in", "", ""},
		{`Camlock typ D 25mm`, "PIPE 1 female", "", ""},
		{`camlock tipo E 50 mm`, "BARB 50 mm", "", ""},
		{`Cam and groove F 3/4"`, "PIPE 3/4 male", "", ""},
		{`Camlock type F 2" male thread NPT`, "NPT 2 male", "", ""},
		{`Camlock type DC 2"`, "", "", ""},
	})
	require.Contains(t, strings.Join(Read(`Camlock type A 1 1/2"`).Unread, " "), "cam coupling")
	require.Equal(t, "PIPE 1/2 female", brief(Read(`Filter type F 1/2" female`).Ends[:1]), "a letter of a type is no sex")
}

// Codes of cutting-ring fittings: DIN 2353, as memory has it.
func TestCodesOfCuttingRings(t *testing.T) {
	readTitled(t, []titled{
		{`GE12L G 1/4 AG`, "24L 12L male; G 1/4 male", "adaptor", ""},
		{`WE 15 L R 1/2 AG`, "24L 15L male; R 1/2 male", "elbow", ""},
		{`GE10S R 1/4 AG m. Mutter u. Schneidring`, "24S 10S male; R 1/4 male", "adaptor", ""},
		{`Winkelverschraubung 12L o. Mutter`, "24L 12L male; 24L 12L male", "elbow", ""},
	})
}

// Hydraulic hose with its fittings on has the fittings for ends, in whatever order its bore, its layers and its length stand.
func TestHoseAssembliesHaveTheirFittingsForEnds(t *testing.T) {
	for _, text := range []string{
		`Hydraulic hose 1/2 2SN 1500 mm, JIC -8 female both ends`,
		`Hydraulikschlauch 2SN 1/2" L=1500, beids. JIC -8 IG`,
		`Mang. hidráulica R2 1/2 x 1500mm fêmea JIC 8 nas duas pontas`,
		`MANG HIDR 1/2 R2 X 1.50M JIC8 HEMB AMBOS EXT`,
		`Hydr.slange 1/2 2SN 1500 mm, JIC -8 hunn begge ender`,
		`Hose assembly 1/2 2SN, 2 fittings JIC -8 female`,
	} {
		require.Equal(t, "JIC -8 female; JIC -8 female", brief(Read(text).Ends), text)
	}
	r := Read(`HOSE ASSY 100R1 -6 36IN LG, -6 FJX STR / -6 FJX 90`)
	require.Equal(t, "JIC -6 female swivel; JIC -6 female swivel", brief(r.Ends), "the first dash is the hose's own")
}

// Hose by its length, or by its inside and outside, has no ends; rope and chain are of another trade.
func TestHoseByTheMetreHasNoEnds(t *testing.T) {
	for _, text := range []string{`Garden hose 3/4" per metre`, `Haveslange 1/2" pr. m`, `Manguera cristal 12 mm por metro`, `Wąż gumowy 13x20`, `Schlauch PVC 10x14`} {
		require.Empty(t, Read(text).Ends, text)
	}
	require.NotEqual(t, "hose stock", Read(`Anchor chain 8 mm, per metre`).Kind)
}

// Millimetres with a sex, or of galvanised parts and nipples, are nominal bores.
func TestBoresOfIronParts(t *testing.T) {
	readTitled(t, []titled{
		{`Elbow brass 20 mm MI x FI`, "PIPE 3/4 male; PIPE 3/4 female", "elbow", "brass"},
		{`Gate valve brass 25mm F&F`, "PIPE 1 female; PIPE 1 female", "shut-off valve", "brass"},
		{`Galv tee 20mm FI`, "PIPE 3/4 female; PIPE 3/4 female; PIPE 3/4 female", "tee", ""},
		{`Elbow 15mm comp x 15MI`, "COMP 15 mm; PIPE 1/2 male", "elbow", ""},
	})
	require.Contains(t, Read(`Galv socket 32mm`).Ends[0].Question, "nominal bore")
}

// More ends than a part of the kind has are asked about.
func TestMoreEndsThanAPartHas(t *testing.T) {
	for _, text := range []string{`Adaptor 1/2 NPT male x 3/8 NPT female x 1/4 NPT female`, `Plug 1/2 NPT male x 1/4 NPT female`} {
		for _, e := range Read(text).Ends {
			require.Contains(t, e.Question, "More are read in the text", text)
		}
	}
	for _, text := range []string{`Tee 1/2 NPT female`, `Adaptor 1/2 NPT male x 3/8 NPT female`, `Manifold 1/2 NPT female, 3 outlets 1/4 NPT female`} {
		require.NotContains(t, Read(text).Ends[0].Question, "More are read", text)
	}
}

// A quick coupling is no thread: its own size and sex are its own.
func TestAQuickCouplingsOwnEnd(t *testing.T) {
	readTitled(t, []titled{
		{`Quick coupler plug x 10 mm hose barb`, "BARB 10 mm", "", ""},
		{`Stecknippel mit Tülle 6 mm`, "BARB 6 mm", "", ""},
		{`Acople rápido ISO B macho 3/8 rosca hembra 1/4 NPT`, "NPT 1/4 female", "", ""},
	})
}

// What an invoice says beside the part is no size.
func TestNumbersOfInvoicesAreNoSizes(t *testing.T) {
	readTitled(t, []titled{
		{`Adapter -6 JIC male x 3/8 NPT male 2404-06-06`, "JIC -6 male; NPT 3/8 male", "adaptor", ""},
		{`04-1234 check valve 3/4" BSPP F`, "G 3/4 female; G 3/4 female", "check valve", ""},
		{`Elbow 90D 1" SOLVENT WELD UPVC`, "", "elbow", ""},
		{`Nipple 3/4 x 4 MIP brass`, "NPT 3/4 male; NPT 3/4 male", "nipple", "brass"},
		{`Vanne 1/4T inox F/F G1/2`, "G 1/2 female; G 1/2 female", "shut-off valve", ""},
		{`Kugelhahn 1/2 NPT IG f. Druckluft`, "NPT 1/2 female; NPT 1/2 female", "shut-off valve", ""},
		{`Fitting T304 1/2 NPT hembra x 1/2 NPT hembra`, "NPT 1/2 female; NPT 1/2 female", "adaptor", "304"},
		{`Sensor PT100 G 1/2 AG`, "G 1/2 male", "", ""},
	})
}

// The seat between the halves of a union is no taper of its threads.
func TestTheConeOfAUnionIsNoTaper(t *testing.T) {
	for _, text := range []string{`Union 3 pièces joint conique M/F 3/4"`, `Verschraubung 3-teilig 3/4" IG/AG konisch dichtend`, `3-delige koppeling conisch 3/4" bi/bu`} {
		for _, e := range Read(text).Ends {
			require.Greater(t, len(e.Candidates), 1, text)
		}
	}
}
