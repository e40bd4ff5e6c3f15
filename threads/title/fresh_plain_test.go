package title

import (
	"testing"

	"github.com/stretchr/testify/require"

	"handtight/pressure/quantity"
)

// Plain lines that a fresh reading of sound ones found read wrong, and inputs that a review broke the reader with. The answers are a
// fitter's. Common practice.

func TestPlainLinesStayPlain(t *testing.T) {
	readTitled(t, []titled{
		{`Adapter 400 bar G 1/2 male x 1/2 NPT female`, "G 1/2 male; NPT 1/2 female", "adaptor", ""},
		{`Gauge 0-10 kg/cm2 G 1/4 male`, "G 1/4 male", "gauge", ""},
		{`Pressure sensor 10 bar G 1/2 male`, "G 1/2 male", "sensor", ""},
		{`Schlauch 250 bar G 3/8 beidseitig Überwurfmutter`, "G 3/8 female swivel; G 3/8 female swivel", "hose", ""},
		{`G 3/8 female nut with 8 mm hose tail`, "G 3/8 female; BARB 8 mm", "nut", ""},
		{`Garden tap G 1/2 male x G 3/4 male`, "G 1/2 male; G 3/4 male", "tap", ""},
		{`Gas hose tail 6 mm x M14x1.5 left-hand male`, "BARB 6 mm; M M14x1.5 male LH", "hose tail", ""},
		{`Swivel adapter G 1/2 male x G 1/2 female swivel nut`, "G 1/2 male; G 1/2 female swivel", "", ""},
		{`Hex nipple 1/2 NPT male, art. no. F-1207`, "NPT 1/2 male; NPT 1/2 male", "nipple", ""},
		{`Muffe G 1/2 IG, Art.-Nr. M-1207`, "G 1/2 female; G 1/2 female", "coupling", ""},
		{`Nipple 1/2 NPT male SKU M12-08`, "NPT 1/2 male; NPT 1/2 male", "nipple", ""},
		{`Pressure vessel 2.5 x 21", feed 1/2" FNPT, concentrate 1/2" FNPT, permeate 1/4" FNPT`, "NPT 1/2 female; NPT 1/2 female; NPT 1/4 female", "pressure vessel", ""},
		{`Filter housing 2 x 10", 3/4" NPT female in/out`, "NPT 3/4 female; NPT 3/4 female", "filter housing", ""},
		{`Manifold 1/2" NPT female inlet, two 1/4" NPT female outlets`, "NPT 1/2 female; NPT 1/4 female; NPT 1/4 female", "manifold", ""},
		{`Manifold 2 x G 1 female, 3 x G 1/2 female`, "G 1 female; G 1 female; G 1/2 female; G 1/2 female; G 1/2 female", "manifold", ""},
		{`Tee G 1/2 female, 2 x G 3/8 female`, "G 1/2 female; G 3/8 female; G 3/8 female", "tee", ""},
		{`Manifold G 1 female x G 1 male, 3 outlets G 3/4 male`, "G 1 female; G 1 male; G 3/4 male; G 3/4 male; G 3/4 male", "manifold", ""},
		{`Nourrice 4 départs 1/2 M arrivée 1 F`, "PIPE 1/2 male; PIPE 1/2 male; PIPE 1/2 male; PIPE 1/2 male; PIPE 1 female", "manifold", ""},
		{`T-Stück Rp1 x Rp1/2`, "Rp 1 female; Rp 1 female; Rp 1/2 female", "tee", ""},
		{`Adapter | -8 ORB male x 1/4 NPT female | AD-12`, "ORB -8 male; NPT 1/4 female", "adaptor", ""},
	})
	require.Equal(t, "class 3000", Read(`Tee 1/2 NPT F class 3,000`).Class)
	require.Equal(t, "class 3000", Read(`Tee 1/2 NPT F 3,000#`).Class)
}

// A word that takes back stands right before what it takes back.
func TestWordsThatTakeBackReachNoFurther(t *testing.T) {
	for text, material := range map[string]string{
		`Coude 1/2 pas du gaz inox 316`:                 "316",
		`Elbow 1/2 NPT F seals not included brass`:      "brass",
		`Nipple 1/2 NPT M not magnetic stainless steel`: "stainless steel",
	} {
		require.Equal(t, material, Read(text).Material, text)
	}
	for text, bar := range map[string]float64{
		`Ball valve 1/2 F BSP handle not included PN25`: 25,
		`Elbow 90 150 psi 1/2 NPT F`:                    10.34,
		`Tee 25 150 psi NPT`:                            10.34,
		`Kraan 1/2 F voor 't PN16 net`:                  16,
	} {
		r := Read(text)
		require.True(t, r.HasRated, text)
		require.InDelta(t, bar, float64(r.Rated/quantity.Bar), 0.02, text)
	}
	require.Contains(t, brief(Read(`Nut SW 27 3000 pcs G 1/2 swivel`).Ends), "swivel") // a count is no class of forged fittings
}

// A limit of use is told to the end of a word, in scripts without blanks too.
func TestLimitsAreToldWhole(t *testing.T) {
	limits := Read(`Schlauchtülle G 1/2 AG nur für kaltes Wasser und nicht für heißes`).Limits
	require.Len(t, limits, 1)
	require.Regexp(t, `^nur für kaltes Wasser und nicht( für)?$`, limits[0].Words)
	require.NotEmpty(t, Read(`水龙头 1/2 仅限冷水使用`).Limits)
}

// Inputs that once made the reader panic.
func TestInputsThatBroke(t *testing.T) {
	for _, text := range []string{"½70F", "PVC Coupling R3/4, Socket x Socket, 2 in", `PVC Coupling 1" G, Socket x Socket, 2 in`} {
		require.NotPanics(t, func() { Read(text) }, text)
	}
	_, err := ReadEnd("female pipe")
	if err == nil {
		r, _ := ReadEnd("female pipe")
		require.NotContains(t, r.Question, "PIPE")
	}
}
