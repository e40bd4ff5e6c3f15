package title

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"handtight/threads"
)

func whyNotUsed(list []threads.NotUsed, words string) string {
	for _, n := range list {
		if n.Words == words {
			return n.Why
		}
	}
	return ""
}

// A seal that the line takes back is no seal, in every language that says so; the word is named.
func TestWithoutASeal(t *testing.T) {
	for _, text := range []string{
		"Ball valve 1/2 BSPP F without washer", "Ball valve 1/2 BSPP F no washer", "Kugelhahn 1/2 BSPP IG ohne Flachdichtung", "Ball valve 1/2 BSPP F w/o washer", "Vanne 1/2 BSPP F sans joint plat", "Valvola 1/2 BSPP F senza guarnizione", "Válvula 1/2 BSPP H sin junta",
	} {
		r := Read(text)
		require.NotEmpty(t, r.Ends, text)
		require.Equal(t, threads.NoSeal, r.Ends[0].Candidates[0].Seal, text)
		named := false
		for _, n := range r.NotUsed {
			named = named || n.Why == "the text says that there is none"
		}
		require.True(t, named, "%s: %v", text, r.NotUsed)
	}
	with := Read("Ball valve 1/2 BSPP F with washer")
	require.Equal(t, threads.Washer, with.Ends[0].Candidates[0].Seal)
	parted := Read("Ball valve 1/2 BSPP F without 1/2 washer")
	require.NotContains(t, parted.NotUsed, threads.NotUsed{Words: "without washer", Why: "the text says that there is none"}, "a figure between parts them")
}

// A word of a seal, a swivel or a hand that no end of the part can have is named, one that an end has is not.
func TestWordsThatNoEndTakes(t *testing.T) {
	for _, row := range []struct{ why, text, words, reason string }{
		{"a swivel of tubes", "Push-in elbow 8 mm swivel", "swivel", threads.NoEndTakesIt},
		{"a left-hand tube", "Compression elbow 15 mm LH", "LH", threads.NoEndTakesIt},
		{"a chamfer of tubes", "Push-in elbow 8 mm chamfer", "chamfer", threads.NoEndTakesIt},
		{"a swivel of a thread is used", "Elbow 1/2 BSPP F swivel", "swivel", ""},
		{"a left-hand thread is used", "Nipple 1/2 BSPP M LH", "LH", ""},
		{"a garden hose's washer is part of it", "Adaptor 3/4 GHT F with washer x 1/2 NPT M", "with washer", ""},
		{"an O-ring port has its ring", "Plug 9/16-18 ORB o-ring", "o-ring", ""},
	} {
		require.Equal(t, row.reason, whyNotUsed(Read(row.text).NotUsed, row.words), "%s: %v", row.why, Read(row.text).NotUsed)
	}
}

// The words of one end that change nothing of it are named with their reason, those that do are not.
func TestWordsThatSayNothingOfAnEnd(t *testing.T) {
	for _, row := range []struct{ why, text, words, reason string }{
		{"the sex that its letter says", "male R 1/2", "male", threads.SaysNothingNew},
		{"the family a second time", "1/2-14 NPT male NPT", "NPT", threads.SaysNothingNew},
		{"the part", "1/2 NPT male nipple", "nipple", "a word of the part, and not of the end"},
		{"the material", "1/2 NPT male brass", "brass", "the material of the part, and not of the end"},
		{"the grade", "1/2 NPT male CF8M", "CF8M", "the material of the part, and not of the end"},
		{"a sex that decides is used", "1/2 NPT male", "male", ""},
		{"a seal is used", "G 1/2 female with washer", "with washer", ""},
		{"plastic changes the end", "1/2 NPT male pvc", "pvc", ""},
	} {
		r, err := ReadEnd(row.text)
		require.NoError(t, err, row.text)
		require.Equal(t, row.reason, whyNotUsed(r.NotUsed, row.words), "%s: %v", row.why, r.NotUsed)
	}
}

// What a text of one end is refused for is said with what to write instead.
func TestWhyATextIsNoEnd(t *testing.T) {
	for text, part := range map[string]string{
		"1/2": "a size and not what the end is", "brass": "no end is in it", "1/2 NPT male x 3/8 NPT male": "it holds 2 ends", "1/2 NPT M/F": "it holds 2 ends",
		"22 mm solder": "not judged here", "1/2 NPT zwquv": `not understood: zwquv`, "": "there is nothing in it", "\t ": "there is nothing in it", strings.Repeat("x", 2001): "longer than 2000 bytes",
	} {
		_, err := ReadEnd(text)
		require.ErrorContains(t, err, part, text)
		require.Contains(t, err.Error(), map[bool]string{true: "give each end its own text, such as", false: "write one end, such as 1/2 NPT female"}[strings.Contains(part, "2 ends")], text)
	}
}

// A bracket that gives the same sizes again says more of the same ends; one with other sizes is more ends.
func TestABracketThatSaysItAgain(t *testing.T) {
	readMeant(t, []lineMeant{
		{"the second is a tube", `Adaptor 1/2" x 1/2" NPT male (1/2 male to 1/2 tubing)`, "NPT 1/2 male; BARB/COMPRESSION/PUSH 1/2 in"},
		{"other sizes", `Adaptor 1/2" NPT male (3/8 NPT female)`, "NPT 1/2 male; NPT 3/8 female"},
		{"one size is a repeat of one end", `Plug 1/2" NPT (1/2)`, "NPT 1/2 male"},
		{"an open bracket", `Plug 1/2" NPT (`, "NPT 1/2 male"},
	})
}

// 2000 bytes are read and not one more; a letter is not cut in two.
func TestTheLongestText(t *testing.T) {
	line := "Plug 1/2 NPT male"
	exact := line + strings.Repeat(" ", longestText-len(line))
	require.Empty(t, Read(exact).Unread)
	require.Contains(t, Read(exact+" ").Unread, "the text beyond 2000 bytes")
	for n := range 4 {
		cut, over := clip(strings.Repeat("a", longestText-n) + "漢字")
		require.True(t, over)
		require.True(t, strings.HasPrefix(strings.Repeat("a", longestText-n)+"漢字", cut))
		require.NotContains(t, cut, "\uFFFD")
		require.True(t, len(cut) == longestText-n || n == 3 && len(cut) == longestText, "whole letters only")
	}
}

// Paper is used again: what was written on it before is not read by the next line.
func TestPaperIsEmptyWhenItIsTaken(t *testing.T) {
	long, short := "Reducing tee 3/4 NPT female x 1/2 NPT female x 3/4 NPT female 316 PN16 "+strings.Repeat("brass ", 40), "Plug 1/4 NPT"
	want := brief(Read(short).Ends)
	for range 50 {
		first := Read(long)
		again := Read(short)
		require.Equal(t, want, brief(again.Ends))
		require.Len(t, first.Ends, 3, "what was read before stands")
		require.Equal(t, "316", first.Material)
	}
}

// Words in a list behind the sizes go to the sizes in their order (trailing.go).
func TestWordsInAListBehindTheSizes(t *testing.T) {
	readMeant(t, []lineMeant{
		{"a word for each of three", "PVC tee 1 in x 1 in x 3/4 in S x S x FPT", "NPT 3/4 female plastic"},
		{"sexes of two", `Adaptor 1" NPT x 3/4" GHT male to male`, "NPT 1 male; NH 3/4 male"},
		{"sexes that differ", "Adaptor 1/2 x 3/8 NPT female to male", "NPT 1/2 female; NPT 3/8 male"},
		{"families of two", "Adaptor 1/2 x 3/8 FNPT x MBSPT", "NPT 1/2 female; R 3/8 male"},
		{"two that differ for three sizes: which are which is asked", "Tee 1/2 x 3/8 x 1/4 NPT F x M", "NPT 1/2; NPT 3/8; NPT 1/4"},
		{"two alike for three sizes", "Tee 1/2 x 3/8 x 1/4 NPT F x F", "NPT 1/2 female; NPT 3/8 female; NPT 1/4 female"},
	})
}

// A thread that says again what a cone or a dash says is no further end; another is.
func TestAThreadSaidAgain(t *testing.T) {
	readMeant(t, []lineMeant{
		{"a cone's thread (ISO 8434-1)", "Union nut 12L (M18x1.5)", "24L 12L female swivel"},
		{"before the cone", "Union nut M18x1.5 12L", "24L 12L female swivel"},
		{"a port's thread", "Plug -10 ORB 7/8-14", "ORB -10 male"},
		{"before the dash", "Plug 7/8-14 -10 ORB", "ORB -10 male"},
		{"a dash in inches", "Plug -8 JIC 1/2", "JIC -8 male"},
		{"another thread is another end", "Adaptor -10 ORB male x 9/16-18 JIC male", "ORB -10 male; JIC -6 male"},
		{"the closer name rules: BSP and BSPT", "Plug 1/2 BSP BSPT", "R 1/2 male"},
		{"G and BSP", "Plug G 1/2 BSP", "G 1/2 male"},
	})
}
