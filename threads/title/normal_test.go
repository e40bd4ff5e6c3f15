package title

import (
	"strings"
	"testing"
	"unicode/utf8"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// Marks that stand for several things are decided by their neighbours.
func TestSpelling(t *testing.T) {
	for text, want := range map[string]string{
		"1,5": "1.5", "3/4,1/2": "3/4,1/2", "1,5/2": "1,5/2", "12,00": "12.00", "1, 5": "1, 5", "a,5": "a,5", "1,00000": "1,00000", "1,0000": "1.0000", // five digits behind a comma are another number
		`1\2`: "1/2", `a\2`: `a\2`, "1''": `1" `, "1'": "1'", "l/2": "1/2", "al/2": "al/2", "l/x": "l/x", "l-1/2": "1-1/2", "l-l/2": "1-1/2", "al-1/2": "al-1/2", "l-a/2": "l-a/2",
		"½": "1/2", "Größe": "grosse", "F.I.P.": "fip.", "M.F.": "mf.", "N.P.T. 1/2": "npt. 1/2", "no. 5": "no. 5", "a.bc": "a.bc", "1/2*3/4": "1/2x3/4", "1/2×3/4": "1/2x3/4",
		"К1/4": "k1/4", "М22": "m22", "20х15": "20x15", "муха": "муха", "\xff1": " 1",
	} {
		s := normalise(text)
		got := string(s.norm)
		s.release()
		require.Equal(t, strings.TrimSpace(want), strings.TrimSpace(got), text)
	}
}

// Every place of the spelling points at a place of the text, in order, and a stretch of it is one of the text.
func TestPlacesOfASpelling(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		text := rapid.StringN(0, 40, 200).Draw(t, "text")
		s := normalise(text)
		defer s.release()
		require.Len(t, s.at, len(s.norm)+1)
		for i := range s.norm {
			require.LessOrEqual(t, s.at[i], s.at[i+1])
			require.True(t, int(s.at[i]) >= len(text) || utf8.RuneStart(text[s.at[i]]))
		}
		require.Equal(t, len(text), int(s.at[len(s.norm)]))
		require.Contains(t, text, s.words(0, len(s.norm)))
	})
}

// Words are given as they were written, without the blanks round them, and with their capitals known.
func TestWordsAsWritten(t *testing.T) {
	s := normalise("  Größe  M½ ")
	defer s.release()
	at := strings.Index(string(s.norm), "m 1/2")
	require.Equal(t, "M½", s.words(at, at+5))
	require.Equal(t, "Größe  M½", s.words(0, len(s.norm)))
	require.Empty(t, s.words(0, 2))
	require.True(t, s.capital(at))
	require.False(t, s.capital(at+1))
}

// One size in two spellings reads the same, in any line.
func TestSpellingsOfOneLine(t *testing.T) {
	for _, same := range [][]string{
		{`Elbow 1/2" NPT female`, `Elbow ½" NPT female`, `Elbow l/2" NPT female`, `Elbow 1/2'' NPT female`, `Elbow 1/2” NPT female`, `ELBOW 1/2 N.P.T. FEMALE`, `Elbow 1\2" NPT female`},
		{`Nipple 1-1/2" BSPT`, `Nipple l-1/2" BSPT`, `Nipple l-l/2" BSPT`, `Nipple 1,5" BSPT`, `Nipple 1½″ B.S.P.T.`},
		{`Winkel 3/4" IG Messing`, `WINKEL 3/4" IG MESSING`, `Winkel ¾" I.G. Messing`, `Winkel 0,75" IG Messing`},
		{`Adaptor M22x1.5 male x 15 mm compression`, `Adaptor M22×1,5 male x 15mm compression`, `Adaptor М22х1,5 male х 15 мм compression`, `Adaptor M22*1.5 male * 15 mm compression`},
	} {
		want := Read(same[0])
		require.NotEmpty(t, want.Ends)
		for _, text := range same[1:] {
			require.Equal(t, brief(want.Ends), brief(Read(text).Ends), text)
		}
	}
}
