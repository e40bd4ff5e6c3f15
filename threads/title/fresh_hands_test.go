package title

import (
	"testing"

	"github.com/stretchr/testify/require"

	"handtight/pressure/quantity"
)

// Lines of two more fresh readings, by people who had not seen the reader's rules; each was read wrong then, and nothing
// said so. The answers are a fitter's. Common practice.

func TestThousandsOfAPressure(t *testing.T) {
	for text, bar := range map[string]float64{
		`ball valve 1/2 NPT F/F 3,000psi`:                 206.8,
		`ball valve 1/2 NPT F/F 1,000 WOG`:                68.9,
		`valve 1/2 NPT F/F 1 000 psi`:                     68.9,
		`valve 1/2 NPT F/F 2'000 psi`:                     137.9,
		`nipple 1/2 NPT 1.000 psi`:                        68.9,
		`400 BAR / 6,000 PSI nipple 1/2 NPT M`:            400,
		`hose WP 5,800 psi / 400 bar 1/4 NPT M both ends`: 399.9,
		`nipple 1/2 NPT 3,600 kPa`:                        36,
		`valve 1/2 NPT F/F 0,345 MPa`:                     3.45,
		`valve 1/2 NPT F/F 5,5 bar`:                       5.5,
	} {
		r := Read(text)
		require.True(t, r.HasRated, text)
		require.InDelta(t, bar, float64(r.Rated/quantity.Bar), 0.06, text)
	}
	for _, text := range []string{`valve 1/2 NPT F/F 1,000 bar`, `valve 1/2 NPT F/F 3 600 psi`} { // may be decimals, or a count
		r := Read(text)
		require.False(t, r.HasRated, text)
		require.Contains(t, r.NotUsed[0].Why, "thousands or decimals", text)
		require.Len(t, r.Ends, 2, text)
	}
}

func TestTheSpringOfACheckValveRatesNothing(t *testing.T) {
	for text, bar := range map[string]float64{
		`check valve 1/2 NPT MxF 1/3 psi cracking 3000psi`:          206.8,
		`check valve G1/2 F 350 bar, 0.5 bar spring`:                350,
		`check valve 1/2 NPT F cracking pressure 0.3 bar 200 bar`:   200,
		`clapet anti-retour tarage 0,05 bar PN16 G1/2 femelle`:      16,
		`Rückschlagventil G 1/2 IG PN40 Feder 1 bar`:                40,
		`safety valve G1/2 M x G3/4 F 10 bar PN16`:                  16,
		`valve G1/2 F/F PN-40`:                                      40,
		`union PN16/PN40 G 1/2 F`:                                   16,
		`ball valve 1/2 NPT F/F 25 bar PN40 (lower than the class)`: 25,
	} {
		r := Read(text)
		require.True(t, r.HasRated, text)
		require.InDelta(t, bar, float64(r.Rated/quantity.Bar), 0.06, text)
	}
}

func TestOfTwoClassesTheLowerHolds(t *testing.T) {
	for text, class := range map[string]string{
		`1/2 NPT tee class 3000, plugs class 6000`: "class 3000",
		`nipple 3000# x 1/2 npt, coupling 150#`:    "class 150",
		`class 3000 cap + class 150 plug 1/2 npt`:  "class 150",
		`tee 1/2 NPT F PN 3000`:                    "class 3000",
		`elbow 1/2 NPT 6M`:                         "class 6000",
		`tee 1/2" NPT 3M F316`:                     "class 3000",
	} {
		r := Read(text)
		require.Equal(t, class, r.Class, text)
		require.False(t, r.HasRated, text)
	}
}

func TestAClassOfThousandsIsNoSex(t *testing.T) {
	require.Equal(t, "NPT 1/2 female; NPT 1/2 female", brief(Read(`elbow 1/2 NPT 6M`).Ends))
	require.Equal(t, "NPT 1/2 male; NPT 1/2 male; NPT 1/2 male", brief(Read(`tee 1/2 NPT 3M`).Ends)) // three male ends
}

func TestHandsOfShaftsAndLevers(t *testing.T) {
	readTitled(t, []titled{
		{`pump inlet G1/2 F outlet G3/8 F LH shaft`, "G 1/2 female; G 3/8 female", "feed pump", ""},
		{`1/2 BSPP valve F/F lever left`, "G 1/2 female; G 1/2 female", "shut-off valve", ""},
		{`Kugelhahn G1/2 IG/IG Griff links`, "G 1/2 female; G 1/2 female", "shut-off valve", ""},
		{`ball valve 1/2 NPT F/F 316 left hand lever`, "NPT 1/2 female; NPT 1/2 female", "shut-off valve", "316"},
		{`hose with G3/8 LH nut one end, G3/8 RH nut other end`, "G 3/8 female LH; G 3/8 female", "hose", ""},
		{`flexible écrou G3/8 à gauche x écrou G3/8 à droite`, "G 3/8 female swivel LH; G 3/8 female swivel", "hose", ""},
		{`écrou G3/8 à gauche`, "G 3/8 female swivel LH", "", ""},
		{`Nippel G 1/2 links`, "G 1/2 male LH; G 1/2 male LH", "nipple", ""},
		{`manchon G1/2 à visser`, "G 1/2 female; G 1/2 female", "coupling", ""},
	})
	for _, text := range []string{`nipple G3/8 M LH one side`, `turnbuckle coupling G1/2 LH/RH`} {
		for _, e := range Read(text).Ends {
			require.Contains(t, e.Question, "left hand, of one side only", text)
		}
	}
	for _, text := range []string{`1/2 BSPP valve F/F lever left`, `pump inlet G1/2 F outlet G3/8 F LH shaft`} {
		require.Contains(t, Read(text).NotUsed[0].Why, "no left-hand thread", text)
	}
}

func TestBoresAndGradesOfHosesAreNoEnds(t *testing.T) {
	readTitled(t, []titled{
		{`hose R2 1/2 G1/2 female swivel both ends 1m`, "G 1/2 female swivel; G 1/2 female swivel", "hose", ""},
		{`Slang R1 1/4 wartel G1/4 beide zijden`, "G 1/4 female swivel; G 1/4 female swivel", "hose", ""},
		{`JIC-6 female swivel both ends, 3/8 hose R2, 2 m`, "JIC -6 female swivel; JIC -6 female swivel", "hose", ""},
		{`G3/8 LH fem swivel nut both ends, 8mm hose`, "G 3/8 female swivel LH; G 3/8 female swivel LH", "hose", ""},
		{`G1/4 female swivel both ends 6mm bore hose`, "G 1/4 female swivel; G 1/4 female swivel", "hose", ""},
		{`need R7 line, 1/4 bore, -4 JIC female swivels both ends`, "JIC -4 female swivel; JIC -4 female swivel", "hose", ""},
		{`hose 2SN-08 JIC-8 female both ends`, "JIC -8 female; JIC -8 female", "hose", ""},
		{`hose assy 1SN-06, E1 = JIC 7/16-20 female, E2 = 1/4 NPT male`, "JIC -4 female; NPT 1/4 male", "hose", ""},
		{`3/8 R2 hose 2 m, JIC-6 female swivel one end, other end open`, "JIC -6 female swivel", "hose", ""},
		{`hose 3/8 one end JIC-6 female, other end no fitting`, "JIC -6 female", "hose", ""},
		{`flexible banjo M14x1,5 et femelle tournante G3/8`, "G 3/8 female swivel", "hose", ""},
	})
}

func TestPortsBesideTheMainOnes(t *testing.T) {
	readTitled(t, []titled{
		{`pressure regulator G1/2 F/F with G1/4 gauge port`, "G 1/2 female; G 1/2 female; G 1/4 female", "valve", ""},
		{`needle valve 1/4 NPT F/F with 1/8 NPT vent`, "NPT 1/4 female; NPT 1/4 female; NPT 1/8 female", "brine throttle", ""},
		{`Valvola a sfera G1/2 M/F con presa manometro 1/4 F`, "G 1/2 male; G 1/2 female; PIPE 1/4 female", "shut-off valve", ""},
		{`Kugelhahn G1/2 IG/IG mit Manometeranschluss G1/4`, "G 1/2 female; G 1/2 female; G 1/4 female", "shut-off valve", ""},
		{`regulating valve G3/8 F inlet, G3/8 F outlet, bypass G3/8 F`, "G 3/8 female; G 3/8 female; G 3/8 female", "brine throttle", ""},
		{`manifold 1/2 NPT F inlet, 3 x 1/4 NPT F outlets`, "NPT 1/2 female; NPT 1/4 female; NPT 1/4 female; NPT 1/4 female", "manifold", ""},
		{`tee 1/2 NPT M x 2 x 1/2 NPT F`, "NPT 1/2 male; NPT 1/2 female; NPT 1/2 female", "tee", ""},
		{`Tee 1" BSPP F w/ 2 plugs`, "G 1 female; G 1 female; G 1 female", "tee", ""},
		{`Kreuz 1/2 NPT IG mit 3 Stopfen`, "NPT 1/2 female; NPT 1/2 female; NPT 1/2 female; NPT 1/2 female", "cross", ""},
		{`elbow 1/2 NPT F 4x brass`, "NPT 1/2 female; NPT 1/2 female", "elbow", "brass"},
		{`passa-muro 3/4 BSP rosca fêmea c/ porca`, "BSP 3/4 female; BSP 3/4 female", "bulkhead", ""},
		{`Tube end to female NPT adapter 1/2" tube x 3/8" FNPT`, "TUBE 1/2 in; NPT 3/8 female", "adaptor", ""},
		{`8mm x 1/8 NPT macho anilha dupla`, "COMP 8 mm; NPT 1/8 male", "", ""},
		{`Swivel adaptor 3/8 BSPP M x 3/8 BSPP F`, "G 3/8 male; G 3/8 female swivel", "", ""},
		{`FPX-8 x MP-8`, "NPSM 1/2 female swivel; NPT/NPTF 1/2 male", "", ""},
		{`Street tee 1/4 NPT`, "NPT 1/4 male; NPT 1/4 female; NPT 1/4 female", "tee", ""},
		{`Adapter 12L nut x 3/8 NPT female`, "24L 12L female; NPT 3/8 female", "adaptor", ""},
	})
	require.Empty(t, Read(`SW elbow 1/2 F316L 3000#`).Ends) // socket weld
	require.Equal(t, "NPT 1 female", brief(Read(`union 1 SW x 1 NPT F class 3000`).Ends))
	require.Empty(t, Read(`nipple 1/2 NPT ref 2205`).Material)
	require.Contains(t, Read(`hose G3/8 female swivel 24° cone both ends`).Ends[0].Question, "24° cone")
	require.Contains(t, Read(`hose 3/8 JIC-6 female 60 degree cone both ends`).Ends[0].Question, "no such seat")
	require.Equal(t, "union", Read(`rekor konik 1" iç-iç`).Kind)
	require.Equal(t, "the seat between the halves of the union", Read(`śrubunek prosty 1/2 GW-GZ stożkowy`).NotUsed[0].Why)
}
