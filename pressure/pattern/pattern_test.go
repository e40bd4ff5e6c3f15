package pattern

import (
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
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
