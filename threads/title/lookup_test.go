package title

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

// The longest phrase that the lexicon has is taken, whatever joins its words.
func TestTheLongestPhraseIsTaken(t *testing.T) {
	kinds := func(text string) (out []string) {
		for _, it := range scan(normalise(text)) {
			if m := it.is(classKind); m != nil {
				out = append(out, m.shape.name)
			}
		}
		return out
	}
	for _, text := range []string{"ball valve", "ball-valve", "ball. valve", "ball  valve", "BALL VALVE", "Ball  -  Valve", "ball 'valve"} {
		require.Equal(t, []string{"shut-off valve"}, kinds(text), text)
	}
	require.Equal(t, []string{"hose tail"}, kinds("hose tail"), "and no hose")
	require.Equal(t, []string{"check valve"}, kinds("check valve"), "and no valve")
	require.Empty(t, kinds("ball, check"), "a comma parts them")
}

// A name that ends in a figure takes no figure of a fraction behind it.
func TestNamesAndTheFiguresBehindThem(t *testing.T) {
	readMeanings(t, []meaning{
		{"no blank between name and size", `Elbow NPT1/2 female`, "NPT 1/2 female; NPT 1/2 female", ""},
		{"NPTF 1/8 is no NPTF-1", `Elbow NPTF 1/8 female`, "NPTF 1/8 female; NPTF 1/8 female", ""},
		{"a sex glued to the size", `Elbow 1/2NPTF female`, "NPTF 1/2 female; NPTF 1/2 female", ""},
		{"a material with a figure is no size", `Elbow 1/2 NPT female CW617N`, "NPT 1/2 female; NPT 1/2 female", ""},
		{"a word of Chinese in one run with another", `304不锈钢弯头 NPT 1/2 内丝`, "NPT 1/2 female; NPT 1/2 female", ""},
	})
}

// A run of letters without blanks that nobody knows is one word, and is named as one.
func TestUnknownWordsOfScriptsWithoutBlanks(t *testing.T) {
	require.Equal(t, []string{"龘龘龘"}, Read("弯头 龘龘龘 NPT 1/2 内丝").Unread)
	require.Equal(t, []string{"龘龘", "龘"}, Read("弯头 龘龘 龘 NPT 1/2 内丝").Unread, "two words")
	require.Equal(t, []string{"龘"}, Read("弯头龘NPT 1/2 内丝").Unread, "between two that are known")
}

// A compound is known by its beginning or its end of four letters or more, and so is the piece alone.
func TestCompoundsByTheirEnd(t *testing.T) {
	lex := readLexicon()
	sc := &scanner{lex: lex}
	for final, senses := range lex.finals {
		if len(final) < 4 {
			continue
		}
		require.Equal(t, senses.senses, sc.byStem([]byte("q"+final)).all(), final)
		require.Equal(t, senses.senses, sc.byStem([]byte("quietsche"+final)).all(), final)
		require.NotEmpty(t, append(lex.word(final).all(), sc.byStem([]byte(final)).all()...), "%s alone", final)
		require.Nil(t, sc.byStem([]byte("q"+final[1:]+"qq")), final)
	}
	for start, senses := range lex.starts {
		if len(start) >= 4 {
			require.Equal(t, senses.senses, sc.byStem([]byte(start)).all(), start)
			require.Equal(t, senses.senses, sc.byStem([]byte(start+"qz")).all(), start)
		}
	}
	require.Nil(t, sc.byStem([]byte("qwz")))
}

// Scripts without blanks: Chinese, Japanese, Korean and Thai, and no other.
func TestWideScripts(t *testing.T) {
	for text, want := range map[string]bool{"弯": true, "ニ": true, "엘": true, "ข": true, "e": false, "é": false, "з": false, "θ": false, "م": false, "€": false, "": false} {
		require.Equal(t, want, wide([]byte(text), 0), text)
	}
	require.False(t, wide([]byte("弯"), 3), "beyond the end")
}

// The case of letters says nothing where the line has no single letter, which may be a sex or a metre.
func TestTheCaseOfLettersDoesNotCount(t *testing.T) {
	for _, text := range []string{"Elbow 1/2 NPT Female x 3/4 BSPP Male", "Schlauchtülle 3/4 BSP Messing 20 mm", "Raccord mâle 15/21 femelle 20/27 laiton", "Kugelhahn DN15 Innengewinde Edelstahl", "Union nut 1 BSPP swivel"} {
		want := Read(text)
		for _, other := range []string{strings.ToUpper(text), strings.ToLower(text)} {
			require.Equal(t, brief(want.Ends), brief(Read(other).Ends), other)
			require.Equal(t, want.Material, Read(other).Material, other)
			require.Equal(t, want.Kind, Read(other).Kind, other)
		}
	}
}
