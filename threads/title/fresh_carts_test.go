package title

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"handtight/pressure/quantity"
)

// Lines of two fresh readings more: carts of a watermaker, and shops of fourteen languages, by people who had not seen the
// reader's rules. Each was read wrong then, and nothing said so. The answers are a fitter's. Common practice.

func TestWhichPressureIsTheRating(t *testing.T) {
	for text, bar := range map[string]float64{
		`Hose 3/8 3/8 NPT M both ends, WP/BP 180/720 bar`:                               180,
		`Hose 1/4 NPT male both ends 2250/9000 psi WP/BP`:                               155.1,
		`Vessel 1/2 NPT F ports 1000/1500 psi working/test`:                             68.9,
		`ball valve 1/2 NPT F max 8/12 bar`:                                             8,
		`Vessel 1/4 NPT female ports 1500 psig hydro, MAWP 1000`:                        68.9,
		`hose 1/4 NPT M both ends 9000 psi (4x safety, WP 2250)`:                        155.1,
		`hose 1/4 NPT M both ends 3000 psi (burst 4x)`:                                  206.8,
		`Ball valve 1/2 NPT female 600 lb WOG`:                                          41.4,
		`Ball valve 1/2 NPT female 600# WOG`:                                            41.4,
		`Ball valve 1/2 NPT F 150 lb/in2`:                                               10.3,
		`hose 1/4 NPT M both ends 3000 lb working pressure`:                             206.8,
		`Filter head 1/2 NPT female 300 psi, bypass 25 psi`:                             20.7,
		`Relief valve 3/8 NPT M 1000 psi set 1200 psi max`:                              82.7,
		`Relief valve 3/8 NPT M set 1000 psi max 1200 psi`:                              82.7,
		`relief valve 1/2 NPT F cracks at 1000 psi, reseats at 850 psi, 3000 psi rated`: 206.8,
		`HP pump 70 bar 3/8 NPT F suction max 0.5 bar`:                                  70,
		`valve 1/2 NPT F PSI: 3000`:                                                     206.8,
		`valve 1/2 NPT F WOG 1000`:                                                      68.9,
		`housing 3/4 BSP F 10 kg/cm2g`:                                                  9.8,
		`Vanne FF 1/2 PS 10`:                                                            10,
		`valve DN15 160 bar 1/2 NPT F`:                                                  160,
	} {
		r := Read(text)
		require.True(t, r.HasRated, text)
		require.InDelta(t, bar, float64(r.Rated/quantity.Bar), 0.06, text)
	}
}

func TestWhatRatesNothing(t *testing.T) {
	for text, named := range map[string]string{
		`Coupling 1/2 NPT female not rated for 1000 psi`: "1000 psi",
		`elbow 1/2 NPT F NOT 3000 psi`:                   "3000 psi",
		`elbow 1/2 NPT F not PN16`:                       "16",
		`elbow 1/2 NPT F not class 3000`:                 "3000",
		`Coupling 1/2 NPT female can't take 1000 psi`:    "1000 psi",
		`hose yield 9000 psi 1/4 NPT M both ends`:        "9000 psi",
		`tee 1/2 NPT 150 lb pull test`:                   "150 lb",
		`Level sensor 1/8 NPT male cable 3M`:             "3",
		`1/2 NPT male plug brass not for pressure`:       "not for pressure",
		`coupling 1/2 NPT F air use only not water`:      "air use only",
		`fitting 1/2 NPT F not suitable for seawater`:    "not suitable for seawater",
		`hose low pressure 1/2 NPT M both ends`:          "low pressure",
		`check valve 1/2 NPT female bypass`:              "bypass",
		`3-way L-port ball valve 1/2 BSP F`:              "L-port",
		`hose 3/8 2SN JIC -6 F both ends`:                "2SN",
		`Tee 1/2 NPT F with plug`:                        "plug",
		`nipple 1/2 NPT solo para aire`:                  "solo para aire",
		`Raccord union 3/4 avec écrou`:                   "écrou",
		`elbow 1/2 NPT F not 316`:                        "316",
	} {
		r := Read(text)
		require.False(t, r.HasRated, text)
		require.Empty(t, r.Class, text)
		require.NotEqual(t, "316", r.Material, text)
		told := strings.Join(r.Unread, " ")
		for _, limit := range r.Limits {
			told += " " + limit.Words
		}
		for _, n := range r.NotUsed {
			told += " " + n.Words
		}
		for _, p := range r.Pressures {
			told += " " + p.Words
		}
		require.Contains(t, told, named, text)
	}
}

func TestLettersThatAreNoSexAndNoThread(t *testing.T) {
	readTitled(t, []titled{
		{`Male connector 1/4 tube push-in x 1/4 NPT 150 psi at 70F`, "PUSH 1/4 in; NPT 1/4 male", "adaptor", ""},
		{`Nipple 1/4 NPT male 250F`, "NPT 1/4 male; NPT 1/4 male", "nipple", ""},
		{`Elbow 1/4 NPT F max 400 F`, "NPT 1/4 female; NPT 1/4 female", "elbow", ""},
		{`Sensor G1/4 M 100 bar FS`, "G 1/4 male", "sensor", ""},
		{`-6 JIC FS hose both ends`, "JIC -6 female swivel; JIC -6 female swivel", "hose", ""},
		{`Hose 3/8 BSPP female both ends, gas hose 20 mbar`, "G 3/8 female; G 3/8 female", "hose", ""},
		{`Test point M16x2 1/4 BSPP male`, "M M16x2; G 1/4 male", "adaptor", ""},
		{`Registro esfera 3/4 F | UN`, "PIPE 3/4 female; PIPE 3/4 female", "shut-off valve", ""},
		{`Codo 1/2" M-H UN`, "PIPE 1/2 male; PIPE 1/2 female", "elbow", ""},
		{`Codo 15x21 M-H UN 2`, "BSP 1/2 male; BSP 1/2 female", "elbow", ""},
		{`Cotovelo 1/2 F PT 2,30`, "PIPE 1/2 female; PIPE 1/2 female", "elbow", ""},
		{`Manometre alttan bağ. 1/4 BSP 0-100 bar`, "BSP 1/4 male", "gauge", ""},
		{`Tappo 1/2 gas con OR`, "BSP 1/2 male o-ring", "plug", ""},
		{`3/4-16 UN male x 1/4 NPT male adaptor`, "JIC/ORB/SAE45/UN -8|3/4-16 male; NPT 1/4 male", "adaptor", ""},
	})
}

func TestTubesBesideThreadsOfTheirBore(t *testing.T) {
	readTitled(t, []titled{
		{`Compression elbow 15 mm 1/2 F`, "COMP 15 mm; PIPE 1/2 female", "elbow", ""},
		{`Engate rápido 8 mm 1/4 NPT M cotovelo`, "PUSH 8 mm; NPT 1/4 male", "elbow", ""},
		{`Verschraubung 3/4 mit Überwurfmutter IG`, "PIPE 3/4 female; PIPE 3/4 female", "union", ""},
		{`Manguera 1/2 con terminales JIC hembra 3/4-16`, "JIC -8 female; JIC -8 female", "hose", ""},
		{`Écrou tournant 20x27 x tube cuivre 14 joint plat`, "G 3/4 female swivel washer; TUBE 14 mm", "", "copper"},
		{`G1/2(PF1/2)メス×R1/2(PT1/2)オス`, "G 1/2 female; R 1/2 male", "", ""},
		{`Adapter R1/2 (1/2" BSPT) AG x G3/4 (3/4" BSPP) IG`, "R 1/2 male; G 3/4 female", "adaptor", ""},
		{`Rakor konik 3 parça 1" iç-iç`, "PIPE 1 female; PIPE 1 female", "union", ""},
		{`ボールバルブ 3方 Rc1/2`, "Rc 1/2 female; Rc 1/2 female", "shut-off valve", ""},
		{`Pump 3/8 NPT female, with 1/4 NPT gauge port`, "NPT 3/8 female; NPT 3/8 female; NPT 1/4 female", "feed pump", ""},
		{`Tee 1/2 BSPP female with 1/4 BSPP female gauge port`, "G 1/2 female; G 1/2 female; G 1/2 female; G 1/4 female", "tee", ""},
		{`Swivel adapter 1/4 NPT male x 1/4 NPT female swivel`, "NPT 1/4 male; NPT 1/4 female swivel", "", ""},
		{`End plug 3/8 NPT port`, "NPT 3/8", "plug", ""},
		{`T-Stück 1/2 Zoll, 2x Aussen 1x Innen`, "PIPE 1/2 male; PIPE 1/2 male; PIPE 1/2 female", "tee", ""},
	})
}

// Fittings of instrument tubing are named by the sex of their thread, and give the tube's size first.
func TestMaleConnectors(t *testing.T) {
	readTitled(t, []titled{
		{`Male connector 1/4 x 1/4 NPT 316`, "TUBE 1/4 in; NPT 1/4 male", "adaptor", "316"},
		{`ELBOW,MALE, 45 DEGREE, 1/2x1/4 NPT,SS`, "TUBE 1/2 in; NPT 1/4 male", "elbow", "stainless steel"},
		{`Male elbow 3/4 NPT x 1/2 NPT`, "NPT 3/4 male; NPT 1/2 female", "elbow", ""},
	})
	require.Contains(t, Read(`Male connector 1/4 x 1/4 NPT`).Ends[0].Question, "or has this end the thread of the other")
}
