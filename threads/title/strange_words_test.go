package title

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"handtight/threads"
)

// A part that no word names is read where its size is a fraction of an inch to two, and asked about.
func TestAPartThatNoWordNames(t *testing.T) {
	for text, read := range map[string]bool{
		"Zwquv 1/2": true, "Zwquv 1 1/4": true, "Zwquv 2 1/2": false, "Zwquv 2": false, "Zwquv 12": false, "Zwquv 1/2 x 3/4": true, "Zwquv 1/2 x 2": false, "zwquv": false,
	} {
		r := Read(text)
		require.Equal(t, read, len(r.Ends) > 0, text)
		for _, e := range r.Ends {
			require.Contains(t, e.Question, "What is the part", text)
			require.Contains(t, e.Question, `"`+strings.Fields(text)[0]+`"`, text)
		}
	}
	asks(t, "no word at all", "No word of the text names it.", Read("1/2").Ends)
}

// Of the words that are not understood a question names three at most.
func TestThreeStrangeWordsAreNamed(t *testing.T) {
	q := Read("Zwquv qjqa qjqb qjqc 1/2").Ends[0].Question
	for word, named := range map[string]bool{"Zwquv": true, "qjqa": true, "qjqb": true, "qjqc": false} {
		require.Equal(t, named, strings.Contains(q, `"`+word+`"`), word)
	}
	require.Subset(t, Read("Zwquv qjqa qjqb qjqc 1/2").Unread, []string{"Zwquv", "qjqa", "qjqb", "qjqc"}, "the reading has all")
}

// 15L is a cone's tube beside a thread and a can's litres beside a name that nobody understands.
func TestLitresOrACone(t *testing.T) {
	require.Empty(t, Read("Zwquv 15L").Ends)
	require.Equal(t, "24L 15L male", brief(Read("Plug 15L").Ends))
	require.Len(t, Read("Zwquv 12S").Ends, 1, "no can is sold by an S")
	require.Equal(t, "a volume", whyNotUsed(Read("Zwquv 15L").NotUsed, "15L"))
}

// What stands where shops write a sex may be one: up to four capitals right behind a size or a thread's name, or any
// word beside the word for a thread.
func TestWhereASexMayStand(t *testing.T) {
	for text, open := range map[string]bool{
		"Ball valve 1/2 NPT QJKW": true, "Ball valve 1/2 QJ NPT": true, "Ball valve 1/2 NPT QJKWX": false, "Ball valve 1/2 NPT qjkw": false, "Ball valve 1/2 NPT Qjkw": false, "Ball valve QJKW 1/2 NPT": false,
		"Ball valve 1/2 NPT brass QJKW": false, "Ball valve 1/2 qjkwx thread": true, "Ball valve 1/2 thread qjkwx": true, "Ball valve 1/2 NPT 7788": false,
	} {
		r := Read(text)
		require.NotEmpty(t, r.Ends, text)
		require.Equal(t, open, r.Ends[0].Sex == threads.NoSex, "%s: %s", text, brief(r.Ends))
	}
}

// A word that nobody understands inside a name, or between a figure and what it goes with, is asked about.
func TestWhatAStrangeWordParts(t *testing.T) {
	for text, inside := range map[string]string{
		"Garden hose zwquv cap 3/4 NH female":            "",
		"Garden zwquv hose 3/4 NH female x 1/2 NPT male": "Garden zwquv hose",
		"Hose tail 1/2 NPT male x 13 zwquv mm":           "13 zwquv mm",
		"Elbow 20 mm zwquv BSP female":                   "20 mm zwquv BSP",
		"Plug DN zwquv 15 BSPP":                          "DN zwquv 15",
		"Plug 1/2 zwquv NPT":                             "", // a fraction needs no unit
		"zwquv Plug 1/2 NPT":                             "",
		"Plug 1/2 NPT zwquv":                             "",
	} {
		require.Equal(t, inside, codedLine(text).sundered(), text)
	}
}

// codedLine is a line with its codes marked, as ends does.
func codedLine(text string) *line {
	l := newLine(text, false)
	for k := range l.tokens {
		l.tokens[k].code = l.tokens[k].unread && l.inCode(k)
	}
	return l
}

// A word that nobody understands is always named, wherever it stands among the words of a line.
func TestAStrangeWordIsNamed(t *testing.T) {
	lines := []string{
		"Elbow 1/2 NPT male x 3/4 BSPP female brass", "Hose tail 3/4 BSPP male x 19 mm", "Union 1/2 BSPP F with washer", "Relief valve 1/4 NPT M set 62 bar PN 140", "Male run tee 1/8 NPT x 1/4 tube x 1/4 tube",
		"Adaptor M22x1.5 male 14 mm x G 3/8 female", "Tee 1/2 NPT female, NPT female, NPT male", "Hose 3/8 BSPP F x 3/8 BSPP F 250 bar", "Pipe nipple 1/2 x 3 in NPT S80", "Compression elbow 15 mm x 1/2 BSPP male",
	}
	rapid.Check(t, func(t *rapid.T) {
		words := strings.Fields(rapid.SampledFrom(lines).Draw(t, "line"))
		word := rapid.StringMatching(`[qj][qjwz]{3,6}`).Draw(t, "word")
		at := rapid.IntRange(0, len(words)).Draw(t, "place")
		text := strings.Join(append(append(append([]string{}, words[:at]...), word), words[at:]...), " ")
		require.True(t, names(Read(text), word), text)
	})
}
