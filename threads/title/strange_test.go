package title_test

import (
	"strings"
	"testing"
	"unicode"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"handtight/threads"
	"handtight/threads/title"
)

// parts whose sex is only custom: %s stands where shops write a sex.
var customParts = []string{
	`Ball valve 1/2" %s`, `Kugelhahn 3/4" %s`, `Robinet bila 1/2 BSP %s`, `Solenoid valve 3/8 NPT %s brass`,
	`Pressure gauge 1/4" %s`, `Check valve 3/4" %s`, `Elbow 1/2" thread %s`, `Kolano 1/2" gwint %s`,
}

// A word in capitals behind the size, or one beside the word for a thread, may be the part's sex. Not
// understood it is named, and the sex that such a part mostly has is not taken.
func TestAWordWhereSexesStandLeavesTheSexOpen(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		part := rapid.SampledFrom(customParts).Draw(t, "part")
		word := rapid.StringMatching(`[QJ][QKW]{1,2}Q`).Draw(t, "word")
		text := strings.Replace(part, "%s", word, 1)
		r := title.Read(text)
		require.Contains(t, r.Unread, word, text)
		require.NotEmpty(t, r.Ends, text)
		for _, e := range r.Ends {
			require.Equal(t, threads.NoSex, e.Sex, text)
			require.Contains(t, e.Question, "male or female? Not understood: ", text)
			require.Contains(t, e.Question, `"`+word+`"`, text)
		}
	})
}

// A word elsewhere, or one too long for a letter code, does not take the usual sex away: it is said
// to be usual, and the word is named.
func TestAWordElsewhereLeavesTheUsualSex(t *testing.T) {
	for _, text := range []string{
		`Ball valve 1/2" QJQKQ`, `Ball valve 1/2" qjq`, `QJQ ball valve 1/2"`, `Ball valve 1/2", QJQ`, `Ball valve 1/2" brass QJQ`,
	} {
		r := title.Read(text)
		require.Len(t, r.Ends, 2, text)
		named := false
		for _, w := range r.Unread {
			named = named || strings.HasPrefix(strings.ToUpper(w), "QJQ")
		}
		require.True(t, named, "%s: %v", text, r.Unread)
		for _, e := range r.Ends {
			require.Equal(t, threads.Female, e.Sex, text)
			require.Contains(t, e.Question, "mostly is female, which the text does not say", text)
		}
	}
}

// The sex of a part that has no other is kept whatever stands behind its size.
func TestAWordDoesNotTakeTheSexOfItsKind(t *testing.T) {
	r := title.Read(`Hex nipple 1/2" QJQ`)
	require.Len(t, r.Ends, 2)
	for _, e := range r.Ends {
		require.Equal(t, threads.Male, e.Sex)
	}
}

// The digits of Arabic and Persian are figures like any other.
func TestDigitsOfArabicAndPersian(t *testing.T) {
	for _, zero := range []rune{'٠', '۰'} {
		write := func(s string) string {
			return strings.Map(func(r rune) rune {
				if unicode.IsDigit(r) {
					return zero + r - '0'
				}
				return r
			}, s)
		}
		for _, size := range []string{"1/2", "3/4", "1 1/4", "3/8"} {
			plain, own := title.Read("نبل "+size+" بوصة"), title.Read("نبل "+write(size)+" بوصة")
			require.Len(t, own.Ends, 2, size)
			require.Equal(t, plain.Ends[0].Candidates, own.Ends[0].Candidates, size)
		}
		all := title.Read("Nipple M" + write("20") + "x" + write("1.5"))
		require.Equal(t, title.Read("Nipple M20x1.5").Ends[0].Candidates, all.Ends[0].Candidates)
		for d := rune(0); d < 10; d++ {
			e := title.Read("hose tail " + string(zero+1) + string(zero+d) + " mm").Ends
			require.Len(t, e, 1)
			require.Equal(t, threads.Length(10+d), e[0].Candidates[0].Diameter)
		}
	}
}
