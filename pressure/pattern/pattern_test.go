package pattern

import (
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// A pattern answers as the regular expression does.
func TestAsRegexp(t *testing.T) {
	const text, words = `(\d+) (bar)?`, "at 40 bar, 60 psi"
	p, want := New(text), regexp.MustCompile(text)
	require.Equal(t, want.MatchString(words), p.MatchString(words))
	require.Equal(t, want.FindString(words), p.FindString(words))
	require.Equal(t, want.FindStringIndex(words), p.FindStringIndex(words))
	require.Equal(t, want.FindStringSubmatch(words), p.FindStringSubmatch(words))
	require.Equal(t, want.FindStringSubmatchIndex(words), p.FindStringSubmatchIndex(words))
	require.Equal(t, want.FindAllString(words, -1), p.FindAllString(words, -1))
	require.Equal(t, want.Split(words, -1), p.Split(words, -1))
	require.Equal(t, want.FindAllStringSubmatch(words, -1), p.FindAllStringSubmatch(words, -1))
	require.Equal(t, want.FindAllStringSubmatchIndex(words, 1), p.FindAllStringSubmatchIndex(words, 1))
	require.Equal(t, want.ReplaceAllString(words, "$1"), p.ReplaceAllString(words, "$1"))
	require.Equal(t, want.ReplaceAllStringFunc(words, strings.ToUpper), p.ReplaceAllStringFunc(words, strings.ToUpper))
}

// A fault is told before the pattern is asked.
func TestFaults(t *testing.T) {
	kept := all
	defer func() { all = kept }()
	require.NoError(t, Faults())
	p := New(`(`)
	require.ErrorContains(t, Faults(), `pattern "("`)
	require.Panics(t, func() { p.MatchString("") })
}

// What a match needs is in every text that matches: the program's own expressions are asked, with texts
// that are put together of their letters and of others.
func TestNeedsMissNoMatch(t *testing.T) {
	for _, text := range []string{
		`(?i)\b(?:npt|nptf|bsp[pt]?)\b|\bm\d+\s?x\s?\d`, `(?i)\d\s*(?:bar|psi|lbs?|#)(?:\W|$)`, `(?i)\bv\s?-?\s?belts?\b|\bengine[\s-]?(?:room|space)\b`,
		`(?i)(\d+)\s*-?\s*v(?:olts?|dc|ac)?\b`, `^\s*\d+$`, `(?i)zöllig|inch(?:es)?|дюйм`, `(?:bar){2,3}`, `(?:bar)*`, `(?i)ſtop`, `mm?|cm`,
	} {
		re, p := regexp.MustCompile(text), New(text)
		piece := rapid.OneOf(rapid.SampledFrom([]string{"npt", "BSP", "bspt", "M8x1", "12", " ", "-", "V", "volts", "belt", "engine", "room", "bar", "PSI", "lb", "#", "inch", "zöllig", "ſ", "K", "stop", "é", "cm", "m", "x"}), rapid.StringMatching(`[a-zA-Z0-9 ]{0,3}`))
		rapid.Check(t, func(t *rapid.T) {
			s := strings.Join(rapid.SliceOfN(piece, 0, 6).Draw(t, "pieces"), rapid.SampledFrom([]string{"", " "}).Draw(t, "between"))
			require.Equal(t, re.MatchString(s), p.MatchString(s), "%s: %q", text, s)
			require.Equal(t, re.FindAllString(s, -1), p.FindAllString(s, -1), "%s: %q", text, s)
			require.Equal(t, re.ReplaceAllString(s, "_"), p.ReplaceAllString(s, "_"), "%s: %q", text, s)
		})
	}
}

// The words are the rarest that a match must have.
func TestNeeds(t *testing.T) {
	for text, want := range map[string][]string{
		`(?i)\bengine\b|diesel`: {"engine", "diesel"},
		`\d+\s*(?:bar|psi)`:     {"bar", "psi"},
		`(?i)v\s?-?belts?`:      {"belt"},
		`(?:abc)+x?`:            {"abc"},
		`(?i)zöllig`:            {},  // no text of ASCII has it
		`^\d*$`:                 nil, // nothing: all are asked
		`(?:abc)?`:              nil,
		`a|b|\d`:                nil,
		`(?i)ſtop`:              {"stop"}, // and a text with a long s is asked as every one beyond ASCII
	} {
		got := needsOf(text)
		require.Equal(t, want == nil, got.any, text)
		if want != nil {
			require.ElementsMatch(t, want, got.words, text)
		}
	}
}
