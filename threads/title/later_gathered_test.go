package title

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"handtight/threads"
)

// The classes that the last gatherings and the words around a line brought, in other lines than theirs. The
// answers were written down before the reader saw them.

func TestCountsAndPricesAreNoSizes(t *testing.T) {
	readTitled(t, []titled{
		{`Tee 3/8" NPT female, brass x3`, "NPT 3/8 female; NPT 3/8 female; NPT 3/8 female", "tee", "brass"},
		{`6 Ball valve G 1/2 female`, "G 1/2 female; G 1/2 female", "shut-off valve", ""},
		{`3 Kugelhähne 3/4" IG`, "PIPE 3/4 female; PIPE 3/4 female", "shut-off valve", ""},
		{`Hex nipple 1/4 NPT 316 (x6)`, "NPT 1/4 male; NPT 1/4 male", "nipple", "316"},
		{`Hex plug R 3/8 [8]`, "R 3/8 male", "plug", ""},
		{`Plug 1/2 NPT male 12x`, "NPT 1/2 male", "plug", ""},
		{`Hose tail 3/4 BSPP male x 25 mm: 4`, "G 3/4 male; BARB 25 mm", "hose tail", ""},
		{`Elbow DN20 - 6 pcs`, "PIPE 3/4 female; PIPE 3/4 female", "elbow", ""},
		{`Kugelhahn DN25 €18.90`, "PIPE 1 female; PIPE 1 female", "shut-off valve", ""},
		{`Elbow 1/2 NPT female 4.90`, "NPT 1/2 female; NPT 1/2 female", "elbow", ""},
		{`Union 3/4 NPT female USD 11.50`, "NPT 3/4 female; NPT 3/4 female", "union", ""},
		{`Set of 4 1/4" NPT plugs`, "NPT 1/4 male", "plug", ""},
		{`3 3/8" hose barb elbow`, "BARB 3/8 in; BARB 3/8 in", "elbow", ""},
		{`Hose tail 1/2 NPT male x 13 mm c/w 2 clamps`, "NPT 1/2 male; BARB 13 mm", "hose tail", ""},
		{`7. Cap 1/2 NPT female`, "NPT 1/2 female", "cap", ""},
		{`12) Cap 1/2 NPT female`, "NPT 1/2 female", "cap", ""},
		{`Cap 1/2 NPT female 2025-03-14`, "NPT 1/2 female", "cap", ""},
		{`Cap 1/2 NPT female 14.03.2025`, "NPT 1/2 female", "cap", ""},
		{`Item: 3/4" NPT female cap`, "NPT 3/4 female", "cap", ""},
		{`4x #6 JIC male cap nut`, "JIC -6 male", "", ""},
	})
}

func TestLengthsByTheirLetterOrWord(t *testing.T) {
	readTitled(t, []titled{
		{`Nipple R 1/2 L=80mm`, "R 1/2 male; R 1/2 male", "nipple", ""},
		{`Tülle 13 mm x G 1/2 AG L=45 mm`, "BARB 13 mm; G 1/2 male", "", ""},
		{`Ball valve 3/8 NPT female H=40`, "NPT 3/8 female; NPT 3/8 female", "shut-off valve", ""},
		{`Elbow 15 mm compression 90mm long`, "COMP 15 mm; COMP 15 mm", "elbow", ""},
		{`Hose 1/4" JIC female swivels both ends 3 M`, "JIC -4 female swivel; JIC -4 female swivel", "hose", ""},
	})
}

func TestGluedAndSpacedSigns(t *testing.T) {
	readTitled(t, []titled{
		{`Verschraubung 12 mmxG3/8 AG`, "TUBE 12 mm; G 3/8 male", "", ""},
		{`Elbow 8LxR 1/4`, "24L 8L male; R 1/4 male", "elbow", ""},
		{`Nipple 3 / 4" NPT`, "NPT 3/4 male; NPT 3/4 male", "nipple", ""},
		{`Nipple 1-½ NPT`, "NPT 1 1/2 male; NPT 1 1/2 male", "nipple", ""},
		{`Hex_nipple_1/2_NPT`, "NPT 1/2 male; NPT 1/2 male", "nipple", ""},
		{`Niple 1/2''-14 NPT`, "NPT 1/2 male; NPT 1/2 male", "nipple", ""},
		{`Tee 3/8 BSPP F + F + M`, "G 3/8 female; G 3/8 female; G 3/8 male", "tee", ""},
		{`bouchon laiton mâle 26 34`, "BSP 1 male", "plug", "brass"},
		{`муфта 1'x3/4`, "PIPE 1 female; PIPE 3/4 female", "coupling", ""},
		{`an-6 female swivel`, "JIC -6 female swivel", "", ""},
		{`m22x1.5-6h screw plug`, "M M22x1.5 male", "plug", ""},
		{`HYDRAULIC HOSE 3/8" X 12 M, BSP FEMALE SWIVEL 3/8 BOTH ENDS`, "G 3/8 female swivel; G 3/8 female swivel", "hose", ""},
	})
}

func TestWhatBelongsToTheOtherEnd(t *testing.T) {
	readTitled(t, []titled{
		{`Coude à compression 3/8" 14 mm`, "PIPE 3/8; COMP 14 mm", "elbow", ""},
		{`Push-fit adaptor 1/2 inch to 10mm pipe`, "PIPE 1/2; PUSH 10 mm", "adaptor", ""},
		{`3/8" tube 1/4" pipe elbow`, "TUBE 3/8 in; PIPE 1/4", "elbow", ""},
		{`10mm x 3/8" hose barb connector push fit`, "PUSH 10 mm; BARB 3/8 in", "", ""},
		{`Male adaptor - 1/2" BSP x 12mm push fit`, "BSP 1/2 male; PUSH 12 mm", "adaptor", ""},
		{`Elbow 3/8 NPT x 1/2 hose barb`, "NPT 3/8 male; BARB 1/2 in", "elbow", ""},
		{`Raccord à sertir mâle 1" Ø26`, "PIPE 1 male", "", ""},
		{`Tee G 1/2 x 12 mm x G 1/2`, "G 1/2; TUBE 12 mm; G 1/2", "tee", ""},
		{`Adaptor G 1/4-6 mm, G 1/4 female, 6 mm push-in`, "G 1/4 female; PUSH 6 mm", "adaptor", ""},
		{`1/2" PEX x 3/4" FNPT (FIP) adapter`, "BARB/COMPRESSION/PUSH 1/2 in; NPT 3/4 female", "adaptor", ""},
	})
}

// Copper, fused and sewer pipe have no thread or grip of their own.
func TestSolderedFusedAndGluedPipe(t *testing.T) {
	readTitled(t, []titled{
		{`Copper tee 22mm`, "", "tee", "copper"},
		{`Kupferbogen 18 mm`, "", "elbow", "copper"},
		{`Codo cobre 3/4"`, "", "elbow", "copper"},
		{`PE elbow 50mm SDR17`, "", "elbow", "pe"},
		{`Joelho esgoto 100 mm`, "", "elbow", ""},
		{`DWV coupling 2"`, "", "coupling", ""},
		{`Union 3/8" SW 6000`, "", "union", ""},
	})
	require.Contains(t, Read("Elbow 15 mm").Ends[0].Question, "soldered, glued or pressed", "nothing is said of the tube's end")
	require.NotContains(t, Read("Elbow for 15 mm tube").Ends[0].Question, "soldered")
}

// A sex behind "for" may be that of what the part goes onto: it is asked.
func TestTheSexOfTheCounterpartIsAsked(t *testing.T) {
	for _, text := range []string{"Quick coupling for male thread G 1/2", "Schnellkupplung für Außengewinde G 1/2", "Raccord pour filetage mâle G 1/2"} {
		r := Read(text)
		require.NotEmpty(t, r.Ends, text)
		require.Contains(t, r.Ends[0].Question, "male or female", text)
		require.Contains(t, notUsedText(r), "may be said of the thread that the part goes onto", text)
	}
	require.Equal(t, "PIPE 3/4 male; PIPE 1/2 female", brief(Read("Reducción 3/4 macho para 1/2 hembra").Ends))
}

// Words of an end that no size stands with are named.
func TestWordsWithoutASizeAreNamed(t *testing.T) {
	for _, text := range []string{"Hex plug NPT male", "Kugelhahn IG/IG", "Push-in elbow", "Racor hembra"} {
		r := Read(text)
		require.Empty(t, r.Ends, text)
		require.Contains(t, notUsedText(r), whyUnsized, text)
	}
	require.NotContains(t, notUsedText(Read("PE pipe outside 25 mm")), whyUnsized)
}

// Bytes of another code page are named: 3/4½ of Windows-1252 is no 3/4 that is sure.
func TestSignsThatAreNoUTF8AreNamed(t *testing.T) {
	require.Contains(t, Read("3/4\xbd\" nipple").Unread, "signs that are no UTF-8: save the text as UTF-8, or put the letters right")
	require.NotEmpty(t, Read("Dirsek 1/2\" i\xe7 di\xfe").Unread)
	require.Empty(t, Read("Nippel ½\" außen").Unread)
}

func TestHosesOfOneSize(t *testing.T) {
	readTitled(t, []titled{
		{`Flexible tap hose 3/8" 50 cm`, "PIPE 3/8 female; PIPE 3/8 female", "hose", ""},
		{`Flexible tap hose 3/8" hex 500mm`, "PIPE 3/8 female; PIPE 3/8 female", "hose", ""},
	})
}

func TestPneumaticTubesAndThreads(t *testing.T) {
	readTitled(t, []titled{
		{`Conector codo tubo 8mm 1/4"`, "TUBE 8 mm; PIPE 1/4", "elbow", ""},
		{`Raccordo a tre vie 8 mm tubo`, "TUBE 8 mm; TUBE 8 mm; TUBE 8 mm", "", ""},
		{`T-Verbinder für 5-mm-Schlauch`, "BARB 5 mm; BARB 5 mm; BARB 5 mm", "tee", ""},
		{`Y-Stück 3fach Schlauchtülle 8 mm`, "BARB 8 mm; BARB 8 mm; BARB 8 mm", "tee", ""},
		{`12S elbow body, male 1/2 BSPT`, "24S 12S male; R 1/2 male", "elbow", ""},
		{`90 mm compression coupling`, "COMP 90 mm; COMP 90 mm", "coupling", ""},
		{`Hahnverlängerung R 1/2 x 30 mm`, "R 1/2 male; Rc/Rp 1/2 female", "adaptor", ""},
	})
}

// notUsedText writes what a reading names as not used.
func notUsedText(r threads.Reading) string {
	var out strings.Builder
	for _, n := range r.NotUsed {
		fmt.Fprintf(&out, "%s: %s; ", n.Words, n.Why)
	}
	return out.String()
}
