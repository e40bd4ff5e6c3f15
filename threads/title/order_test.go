package title

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"handtight/threads"
)

// The words of one end say the same in any order: size, family, sex and what goes with them.
func TestTheOrderOfAnEndsWords(t *testing.T) {
	for _, words := range [][]string{
		{`1/2"`, "NPT", "female"}, {`3/4"`, "BSPP", "male"}, {`1/2"`, "BSP", "female"}, {`1"`, "BSPT", "male"}, {"M22x1.5", "male"}, {"19 mm", "barb"}, {"10 mm", "push-in"}, {`1/2"`, "NPT", "male", "plastic"},
		{`3/4"`, "NH", "female", "swivel"}, {"15 mm", "compression"}, {"9/16-18", "JIC", "male"}, {"12L", "male"}, {`G 1/2`, "male", "chamfer"}, {"G 3/4", "female", "swivel", "60 cone"}, {`3/8"`, "NPTF", "male"},
	} {
		want, err := ReadEnd(strings.Join(words, " "))
		require.NoError(t, err, words)
		for _, order := range orders(words) {
			text := strings.Join(order, " ")
			got, err := ReadEnd(text)
			require.NoError(t, err, text)
			require.ElementsMatch(t, want.Candidates, got.Candidates, text)
		}
	}
}

// orders lists every order of a few words.
func orders(words []string) [][]string {
	if len(words) < 2 {
		return [][]string{words}
	}
	var out [][]string
	for i := range words {
		rest := append(append([]string{}, words[:i]...), words[i+1:]...)
		for _, tail := range orders(rest) {
			out = append(out, append([]string{words[i]}, tail...))
		}
	}
	return out
}

// Capitals, blanks at the edges, and the kind of inch mark do not count.
func TestHowItIsTypedDoesNotCount(t *testing.T) {
	lines := []string{`1/2" NPT female`, `3/4" BSPP male`, "M22x1.5 male", "19 mm barb", "9/16-18 JIC female swivel", "G 3/4 female swivel 60 cone"}
	rapid.Check(t, func(t *rapid.T) {
		line := rapid.SampledFrom(lines).Draw(t, "line")
		want, err := ReadEnd(line)
		require.NoError(t, err)
		typed := strings.ReplaceAll(line, `"`, rapid.SampledFrom([]string{`"`, "″", "”", "''", " in", " inch"}).Draw(t, "mark"))
		if rapid.Bool().Draw(t, "capitals") {
			typed = strings.ToUpper(typed)
		}
		blank := rapid.SampledFrom([]string{" ", "  ", "\u00a0", "\t"}).Draw(t, "blank")
		typed = blank + strings.ReplaceAll(typed, " ", blank) + blank
		got, err := ReadEnd(typed)
		require.NoError(t, err, typed)
		require.Equal(t, want.Candidates, got.Candidates, typed)
	})
}

// What an unambiguous end is read as is read again as itself, and once more.
func TestReadingTwiceIsReadingOnce(t *testing.T) {
	for _, text := range []string{
		`1/2" NPT female`, `MNPT 3/8`, "G 1/2 A", "R 3/8", "Rc 1/4", "19 mm barb long", "-6 JIC female swivel", "12L male", "M10x1 keg", "3/4 GHT male", "DKOL 12", "AGR 1/2", "G 3/4 female swivel 60 cone", "1/2 NPT female plastic", "G 1/2 male LH", "10 mm push-in", "1 1/2 in ferrule", "PG16 male",
	} {
		first, err := ReadEnd(text)
		require.NoError(t, err, text)
		require.Len(t, first.Candidates, 1, text)
		second, err := ReadEnd(first.Candidates[0].String())
		require.NoError(t, err, text)
		require.Equal(t, first.Candidates, second.Candidates, text)
		require.Equal(t, first.Candidates[0].String(), second.Candidates[0].String())
	}
}

// Two ends parted by an x, a comma with its x, or a word for it, are the same two, and turned
// round they are the same turned round.
func TestTwoEndsTurnedRound(t *testing.T) {
	for _, pair := range [][2]string{
		{"1/2 NPT male", "3/8 NPT female"}, {"G 3/4 male", "19 mm barb"}, {"1/2 BSPT male", "15 mm compression"}, {"1/4 NPT male", "10 mm push-in"}, {"-6 JIC male", "1/4 NPT male"}, {"M22x1.5 male", "G 1/2 female"},
	} {
		for _, sep := range []string{" x ", " X ", " × ", " to "} {
			there, back := Read("Adaptor "+pair[0]+sep+pair[1]), Read("Adaptor "+pair[1]+sep+pair[0])
			require.Len(t, there.Ends, 2, pair)
			require.Len(t, back.Ends, 2, pair)
			require.Equal(t, briefEnd(there.Ends[0]), briefEnd(back.Ends[1]), "%s%s%s", pair[0], sep, pair[1])
			require.Equal(t, briefEnd(there.Ends[1]), briefEnd(back.Ends[0]), "%s%s%s", pair[0], sep, pair[1])
		}
	}
}

// An open end asks one question: its readings stand in it, and each is among the candidates.
func TestQuestionsNameTheReadings(t *testing.T) {
	for _, row := range []struct{ text, asks string }{
		{"1/2 BSP male", "Is the 1/2 BSP male parallel (G) or taper (R)? Look for P or T after BSP, or ask the shop."},
		{"1/2 NPT", "Is the 1/2-14 NPT male or female? The text does not say: look for M or F, or ask the shop."},
		{"3/4 male thread", "Which thread is the 3/4"},
		{"M20 male", "pitch"},
		{"12 mm tube", "Does the tube push in, or is it held by a ring and a nut (compression)? Look at the picture, or ask the shop."},
		{"5/8 NPT male", "The nearest are 1/2-14 NPT and 3/4-14 NPT: ask the shop which it is."},
		{"NPT male", "What size is the NPT male? The text gives none: write it as in 1/2 NPT female."},
		{"7/8-14 UNF male", "How does the 7/8-14 male seal"},
	} {
		r, err := ReadEnd(row.text)
		require.NoError(t, err, row.text)
		require.Contains(t, r.Question, row.asks, row.text)
	}
}

// What an end is not is never guessed: a size alone is refused with what to write.
func TestASizeAloneIsRefused(t *testing.T) {
	for _, text := range []string{`1/2"`, "3/4 inch", "19 mm", "M", "male", "female swivel", "washer"} {
		r, err := ReadEnd(text)
		if err == nil {
			require.NotEmpty(t, r.Question, text)
			require.NotEqual(t, 1, len(r.Candidates), text)
			continue
		}
		require.Contains(t, err.Error(), "write one end", text)
	}
	require.Equal(t, threads.NoSex, threads.SexNamed("1/2"))
}
