package title

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// Whatever parts two ends, they are the same two ends.
func TestWhatPartsEnds(t *testing.T) {
	for _, sep := range []string{" x ", "x", " to ", " by ", " > ", " = ", " | ", " ; ", "; ", " + ", " & ", " - ", " / ", ", ", " -> ", " × "} {
		text := "Adaptor 1/2 NPT male" + sep + "3/4 BSPP female brass"
		require.Equal(t, "NPT 1/2 male; G 3/4 female", brief(Read(text).Ends), text)
	}
}

// Words stand before their sizes or behind them, the whole line through.
func TestWordsBeforeOrBehindTheirSizes(t *testing.T) {
	readMeant(t, []lineMeant{
		{"German: the sex behind each size", "Reduzierstück 1/2 IG 3/4 AG", "PIPE 1/2 female; PIPE 3/4 male"},
		{"French: the sex before each pair", "Raccord réduit M 26/34 F 20/27", "BSP 1 male; BSP 3/4 female"},
		{"and the smaller first", "Raccord réduit F 20/27 M 26/34", "BSP 3/4 female; BSP 1 male"},
		{"the family glued to the sex behind each", "Adaptor 1/2 FNPT 3/4 MNPT", "NPT 1/2 female; NPT 3/4 male"},
		{"the family before the second size of another", "Adaptor 1/2 NPT male GHT3/4 female", "NPT 1/2 male; NH 3/4 female"},
		{"the letter before each size, the sex behind", "Adaptor G 1/2 male G 3/4 female", "G 1/2 male; G 3/4 female"},
		{"a letter before the first, a name behind the second", "Adaptor G 1/2 male 3/4 NPT female", "G 1/2 male; NPT 3/4 female"},
		{"R before and Rp before", "Reduktion R 1/2 Rp 3/4", "R 1/2 male; Rp 3/4 female"},
		{"sexes before the sizes and one name behind both", "Adaptor male 1/2 female 3/4 NPT", "NPT 1/2 male; NPT 3/4 female"},
		{"the name before the first sex is said of that size alone: the other is asked", "Adaptor NPT male 1/2 female 3/4", "NPT 1/2 male; PIPE 3/4 female"},
		{"names before their sizes, and no sex", "Adaptor NPT 1/2 BSPP 3/4", "NPT 1/2; G 3/4"},
		{"names behind their sizes, and no sex", "Adaptor 1/2 NPT 3/4 BSPP", "NPT 1/2; G 3/4"},
		{"a dash's name before each", "Adaptor JIC -6 ORB -8", "JIC -6; ORB -8"},
		{"a thread and a tail without a sign between", "Adaptor 3/4 BSP male barb 19 mm", "BSP 3/4 male; BARB 19 mm"},
		{"a tail and a thread without a sign between", "Adaptor barb 16 mm 3/4 BSP male", "BARB 16 mm; BSP 3/4 male"},
		{"a bracket begins the second size's words", "Adaptor 1/2 NPT male (3/4 BSPP female)", "NPT 1/2 male; G 3/4 female"},
	})
}

// A hyphen between two sizes parts them; between a figure and letters it does not part an end.
func TestHyphens(t *testing.T) {
	readMeant(t, []lineMeant{
		{"two sizes of a reducing socket", `Reducing socket 3/4"-1/2" BSPT`, "Rc 3/4 female; Rc 1/2 female"},
		{"a hyphen with blanks", `Reducing socket 3/4" - 1/2" BSPT`, "Rc 3/4 female; Rc 1/2 female"},
		{"a hyphen before the name of the thread is none", "Plug 1/2-NPT", "NPT 1/2 male"},
		{"a hyphen inside a word is none", "Push-in elbow 8 mm", "PUSH 8 mm; PUSH 8 mm"},
		{"1-1/2 is one and a half", "Plug 1-1/2 NPT", "NPT 1 1/2 male"},
	})
}

// A comma in a list of sexes gives each end its own; before a size it begins another end.
func TestCommasBetweenSexes(t *testing.T) {
	readMeant(t, []lineMeant{
		{"three of a tee", "Tee 1/2 NPT, F, F, M", "NPT 1/2 female; NPT 1/2 female; NPT 1/2 male"},
		{"two and the material", "Elbow 1/2 NPT male, female, 316", "NPT 1/2 male; NPT 1/2 female"},
		{"a sex that a size follows is that size's", "Adaptor 3/4 BSPP male, female 1/2 BSPP", "G 3/4 male; G 1/2 female"},
		{"the thread said with the sex", "Elbow 1/2 NPT male, NPT female", "NPT 1/2 male; NPT 1/2 female"},
		{"in British threads", "Elbow 3/4 BSPP male, BSPP female, brass", "G 3/4 male; G 3/4 female"},
		{"three of them", "Tee 1/2 NPT female, NPT female, NPT male", "NPT 1/2 female; NPT 1/2 female; NPT 1/2 male"},
		{"a name before the size of another end", "Adaptor 1/2 NPT male, NPT female 3/8", "NPT 1/2 male; NPT 3/8 female"},
		{"a comma before a material parts nothing", "Plug 1/2 NPT, brass, male", "NPT 1/2 male"},
	})
}

// What one end is by its own words, a tail, a tube, a hose or a coupling.
func TestWordsOfAnEnd(t *testing.T) {
	readMeant(t, []lineMeant{
		{"hose on a part is a tail for it", "Adaptor 3/4 BSP male x 19 mm hose", "BSP 3/4 male; BARB 19 mm"},
		{"a quick connection of a tube pushes in", "Adaptor 1/4 NPT male x 8 mm tube quick connect", "NPT 1/4 male; PUSH 8 mm"},
		{"and the other way round", "Adaptor 1/4 NPT male x 8 mm quick connect tube", "NPT 1/4 male; PUSH 8 mm"},
		{"PEX takes a barb, a ring or a push-in", "Adaptor 1/2 NPT male x 1/2 PEX", "NPT 1/2 male; BARB/COMPRESSION/PUSH 1/2 in"},
		{"tubing of a filter too", "Adaptor 1/4 NPT male x 3/8 tubing", "NPT 1/4 male; BARB/COMPRESSION/PUSH 3/8 in"},
		{"a diameter of a dial is no end", "Manometer 1/4 NPT Ø 63 mm", "NPT 1/4 male"},
		{"a diameter is a tail's where the part is one", "Schlauchtülle Ø 13 mm x 1/2 NPT AG", "BARB 13 mm; NPT 1/2 male"},
		{"a tail behind a word for hose is a tail", "Adaptor 1/2 NPT male x 13 mm hose barb", "NPT 1/2 male; BARB 13 mm"},
		{"a nut of a Russian line is female where nothing else is said", "Кран 1/2 NPT гайка", "NPT 1/2 female; NPT 1/2 female"},
		{"and another sex beside it rules", "Кран 1/2 NPT гайка наружная резьба", "NPT 1/2 male; NPT 1/2 male"},
	})
	readMeantEnds(t, []lineMeant{
		{"an end that is a hose is its bore", "19 mm hose", "BORE 19 mm"},
		{"a tail for a hose is a tail", "19 mm hose barb", "BARB 19 mm"},
		{"whichever is said first", "19 mm barb for hose", "BARB 19 mm"},
	})
}

// The case of letters outside the letters that stand for a sex or a family changes no end.
func TestCaseOfWords(t *testing.T) {
	lines := []string{
		"Elbow 1/2 NPT male x 3/4 BSPP female", "hose tail 3/4 bspp male x 19 mm", "Doppelnippel 3/4 zoll aussengewinde", "Raccord femelle 20/27 mâle 26/34",
		"Reducing bush 1 x 1/2 npt brass", "tee 1/2 npt female", "union 1/2 bspp female with washer", "Kugelhahn 1/2 innengewinde",
	}
	rapid.Check(t, func(t *rapid.T) {
		line := rapid.SampledFrom(lines).Draw(t, "line")
		words := strings.Fields(line)
		for i, w := range words {
			switch {
			case strings.ContainsAny(w, "0123456789") || len(w) < 3: // mm, x
			case rapid.Bool().Draw(t, "upper"):
				words[i] = strings.ToUpper(w)
			default:
				words[i] = strings.ToLower(w)
			}
		}
		other := strings.Join(words, " ")
		require.Equal(t, brief(Read(line).Ends), brief(Read(other).Ends), other)
	})
}

// The two ends of an adaptor may be told in either order, parted by any sign.
func TestOrderOfEndsDoesNotMatter(t *testing.T) {
	ends := []string{
		"1/2 NPT male", "3/4 NPT female", "G 1/2 male", "3/4 BSPP female swivel", "19 mm barb", "10 mm push-in", "15 mm compression", "M22x1.5 male", "-6 JIC male",
		"3/4 GHT female", "Rc 3/8", "9/16-18 ORB male", "1/4 BSPT male", "1/2 NPT female plastic",
	}
	rapid.Check(t, func(t *rapid.T) {
		a, b := rapid.SampledFrom(ends).Draw(t, "a"), rapid.SampledFrom(ends).Draw(t, "b")
		if a == b {
			return // one end said twice may be one
		}
		sep := rapid.SampledFrom([]string{" x ", " > ", " to ", " | "}).Draw(t, "sep")
		one, two := Read("Adaptor "+a+sep+b).Ends, Read("Adaptor "+b+sep+a).Ends
		require.Len(t, one, 2, a+sep+b)
		require.Len(t, two, 2, b+sep+a)
		require.Equal(t, briefEnd(one[0]), briefEnd(two[1]), a+sep+b)
		require.Equal(t, briefEnd(one[1]), briefEnd(two[0]), a+sep+b)
	})
}
