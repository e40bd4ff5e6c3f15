package title

import (
	"testing"

	"github.com/stretchr/testify/require"

	"handtight/threads"
)

// Words of two meanings: what stands beside them says which it is.
func TestWordsOfTwoMeanings(t *testing.T) {
	const elbow = "NPT 1/2 female; NPT 1/2 female"
	readMeanings(t, []meaning{
		{"m. is mit, and no male", `Winkel 1/2" NPT IG m. Dichtung`, elbow, ""},
		{"where no sex is said it gives none: a coupling is female", `Muffe 1/2" NPT m. Dichtung`, elbow, ""},
		{"before a size m. is a male", `Adapter 1/2" NPT m. 3/4" NPT f.`, "NPT 1/2 male; NPT 3/4 female", ""},
		{"a capital M is one", `Elbow 1/2 NPT M`, "NPT 1/2 male; NPT 1/2 male", ""},
		{"i behind inches is innen", `Winkel 1/2" i`, "PIPE 1/2 female; PIPE 1/2 female", ""},
		{"a is außen", `Winkel 1/2" a`, "PIPE 1/2 male; PIPE 1/2 male", ""},
		{"behind the thread's name too", `Winkel 1/2" NPT i`, elbow, ""},
		{"before an x", `Adapter 1/2" NPT i x 3/4" NPT a`, "NPT 1/2 female; NPT 3/4 male", ""},
		{"a German letter in the middle of a text is a word", `Elbow 1/2" NPT female a set of two`, elbow, ""},
		{"S beside an x is slip, which is glued", `Adaptor S x FPT 1/2`, "NPT 1/2 female", "S (glued or welded end)?"},
		{"a small s is none", `Elbow 1/2 NPT female s`, elbow, ""},
		{"SO beside a size is soldered", `Codo SO 1/2 x SO 1/2`, "", "SO 1/2 (solder end)?; SO 1/2 (solder end)?"},
		{"so is a word", `Elbow 1/2 NPT female, so good`, elbow, "so?; good?"},
		{"a socket beside an x is glued", `Adaptor 1/2 MNPT x socket`, "NPT 1/2 male", "socket (glued or welded end)?"},
		{"the English un of a French line is no thread", `un coude 1/2 NPT femelle`, elbow, ""},
		{"UN in capitals is", `Adaptor UN 9/16-18 male`, "JIC/ORB/ORFS/UN -6|-4|9/16-18 male", ""},
		{"the letter of a name is no thread", `G-Line elbow 1/2 NPT female`, elbow, "G?"},
		{"metres of hose", `Hose 1/2" NPT male both ends 0.9M`, "NPT 1/2 male; NPT 1/2 male", "0.9: a length"},
		{"metres behind a size", `Hose 1/2" NPT male both ends 2M`, "NPT 1/2 male; NPT 1/2 male", "2: a length"},
		{"K glued to its size is the taper thread of GOST 6111", `Штуцер K1/4 наружная`, "NPT 1/4 male", ""},
		{"SW is the spanner's", `Elbow 1/2 NPT female SW 27`, elbow, "27: a spanner's size"},
		{"d15 of a Chinese brass valve is its bore", `铜内螺纹球阀 d15`, "PIPE 1/2 female; PIPE 1/2 female", ""},
		{"what pipe is for is no end", `PE-rør 10 mm til push-in`, "", "10 mm: a measure of the part; til push-in: what the pipe is for"},
	})
}

// What comes with a part, or what it is for, is not the part.
func TestThePartIsTheOneThatIsSold(t *testing.T) {
	for text, kind := range map[string]string{
		"Elbow 1/2 NPT female with clamp": "elbow", "Kugelhahn 1/2 NPT IG mit Schlauchtülle": "shut-off valve", "Elbow 1/2 NPT female and plug": "elbow", "Seal kit for feed pump": "seal kit",
		"Hose clamp 20 mm for hose tail": "clamp", "Raccord coude 1/2 NPT femelle pour tuyau": "elbow", "Nipple 1/2 NPT w/ cap": "nipple", "Brass plug 1/4 NPT for pressure gauge": "plug",
	} {
		require.Equal(t, kind, Read(text).Kind, text)
	}
}

// A gauge is one by its scale from zero, whatever fitting is named beside it.
func TestAScaleFromZeroIsAGauges(t *testing.T) {
	require.Equal(t, "gauge", Read("Gauge 0-60 psi with coupling 1/4 NPT").Kind)
	require.Equal(t, "coupling", Read("Coupling with gauge 0-60 psi 1/4 NPT").Kind, "what comes with it is not the part")
	require.Equal(t, "coupling", Read("Coupling with gauge port 1/4 NPT 60 psi").Kind)
}

// A nut and a screw of the ironmonger's have a metric size and nothing of a pipe; a pitch up to 3 mm
// with a word of a thread makes a fitting of it.
func TestIronmongery(t *testing.T) {
	for text, ends := range map[string]int{
		"Nut M8 A4": 0, "Nut M10": 0, "Washer M12": 0, "Nut M22x1.5": 1, "Nut 1/2 NPT": 1, "Nut M10 female": 1, "Lock nut G 1/2": 1,
	} {
		require.Len(t, Read(text).Ends, ends, text)
	}
}

// The first material stands, a grade outranks the plain word, and a metal its plating.
func TestTheMaterialThatIsTaken(t *testing.T) {
	for text, want := range map[string]string{
		"Elbow 1/2 NPT brass 316": "brass", "Elbow 1/2 NPT stainless steel 316": "316", "Elbow 1/2 NPT 316 stainless steel": "316", "Elbow 1/2 NPT galvanised steel": "carbon steel",
		"Elbow 1/2 NPT brass plastic": "brass", "Elbow 1/2 NPT plastic brass": "brass", "Elbow 1/2 NPT rubber brass": "brass", "Elbow 1/2 NPT plastic pvc": "pvc", "Elbow 1/2 NPT": "",
	} {
		require.Equal(t, want, Read(text).Material, text)
	}
}

// The symbols of EN 10242 in brackets say the part and its sexes, and the thread is R or Rp (code table
// of a catalogue of malleable fittings).
func TestMalleableSymbols(t *testing.T) {
	for text, want := range map[string]string{
		`Bogen 1/2" (A4, n. 92)`: "elbow: R 1/2 male; Rp 1/2 female", `Winkel 1/2" (A1)`: "elbow: Rp 1/2 female; Rp 1/2 female", `T 3/4" (B1)`: "tee: Rp 3/4 female; Rp 3/4 female; Rp 3/4 female",
		`1/2" (N8)`: "nipple: R 1/2 male; R 1/2 male", `1" (T9)`: "plug: R 1 male", `1" (T1)`: "cap: Rp 1 female",
	} {
		r := Read(text)
		require.Equal(t, want, r.Kind+": "+brief(r.Ends), text)
	}
	require.Empty(t, Read(`1/2" (92)`).Kind, "a bare number in brackets is no symbol")
}

// A size without a word of an end or a part is no end: nothing says that it is of a thread.
func TestWithoutEvidenceThereIsNoEnd(t *testing.T) {
	for _, text := range []string{`1/2"`, `3/4`, "20 mm", `Zwquv 1/2"`, "16-27 mm", "M8"} {
		for _, e := range Read(text).Ends {
			require.NotEmpty(t, e.Question, text)
		}
	}
	for text, family := range map[string]threads.Family{"M22x1.5": threads.M, "15/21 mâle": threads.G, "1/2 NPT": threads.NPT, "12L": threads.Cone24L} {
		r, err := ReadEnd(text)
		require.NoError(t, err, text)
		require.Equal(t, family, r.Candidates[0].Family, text)
	}
}
