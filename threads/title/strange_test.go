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

// A word one letter from a word for a sex may be that word: what is customary is not taken in its place.
func TestAMisspeltSexOpensTheSex(t *testing.T) {
	for _, text := range []string{
		"Elbow 1/2 NPT mael", "Elbow 1/2 NPT mle", "Ball valve 3/4 NPT femlae", "Tee 1/2 NPT male female fmale", "Codo 1/2 NPT mcho", "Kugelhahn 1/2 NPT Innengewnide",
	} {
		r := title.Read(text)
		require.NotEmpty(t, r.Ends, text)
		for _, e := range r.Ends {
			require.Equal(t, threads.NoSex, e.Sex, text)
			require.Contains(t, e.Question, "Not understood", text)
		}
	}
	for _, e := range title.Read("Hex nipple 1/2 NPT mael").Ends {
		require.Equal(t, threads.Male, e.Sex, "a nipple has no other")
	}
}

// More sexes in a row than the part has ends say nothing of one of them.
func TestMoreSexesThanEndsAreAsked(t *testing.T) {
	for _, text := range []string{"Tee 1/2 NPT male female male female", "Elbow 1/2 NPT male, female, male", "Té 3/4 NPT mâle femelle femelle mâle"} {
		r := title.Read(text)
		require.NotEmpty(t, r.Ends, text)
		for _, e := range r.Ends {
			require.Equal(t, threads.NoSex, e.Sex, text)
			require.Contains(t, e.Question, "says both", text)
		}
	}
	var got []threads.Sex
	for _, e := range title.Read("Tee 1/2 NPT male male female").Ends {
		got = append(got, e.Sex)
	}
	require.Equal(t, []threads.Sex{threads.Male, threads.Male, threads.Female}, got)
}

// A word that is not understood inside a name of several words, or between a figure and its unit,
// leaves every end asked.
func TestAWordInsideANameIsAsked(t *testing.T) {
	for _, text := range []string{
		"Garden qjq hose cap 3/4 NH female", `Reducer 1/2 NPT male x 3/8 NPT male 40 qjq mm`, "Hydraulic hose nipple 1/4 NPT male swivel qjq nut", "Hose tail 1/2 NPT male x 13 qjq mm",
	} {
		r := title.Read(text)
		require.NotEmpty(t, r.Ends, text)
		for _, e := range r.Ends {
			require.NotEmpty(t, e.Question, "%s: %v", text, e.Candidates)
		}
	}
}

// A small m behind a whole number is metres where the line is of hose.
func TestMetresOfHoseAreNoMale(t *testing.T) {
	for _, text := range []string{"hose 2 m 13 mm", "hose 13 mm 2 m", "Schlauch 3 m 19 mm", "Slang 2 m x 13 mm", "manguera 5 m 16 mm"} {
		require.Empty(t, title.Read(text).Ends, text)
	}
	require.Len(t, title.Read("Hose tail 1 M x 25 mm").Ends, 2)
}
