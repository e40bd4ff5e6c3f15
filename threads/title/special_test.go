package title

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

// Armoured conduit threads are called by PG and a figure of DIN 40430: those that it has, and no other.
func TestConduitThreads(t *testing.T) {
	readMeantEnds(t, []lineMeant{
		{"in one word", "PG16 male", "PG PG16 male"},
		{"with a blank", "PG 16 male", "PG PG16 male"},
		{"with a hyphen", "PG-16 male", "PG PG16 male"},
		{"in small letters", "pg16 male", "PG PG16 male"},
		{"the half", "PG13.5 female", "PG PG13.5 female"},
		{"with a comma", "PG13,5 female", "PG PG13.5 female"},
		{"a size that the standard has not", "PG17 male", "refused"},
		{"letters behind it are a code", "PG16A male", "refused"},
		{"letters before it too", "APG16 male", "refused"},
	})
}

// Threads of gas bottles, dairies and tank containers have letters of their own. They are named and not
// judged, and the part's other end is read. Their figures: DIN 477 (W 21.8), DIN 405 (Rd), and the S60x6
// of tank containers (common practice).
func TestThreadsWithLettersOfTheirOwn(t *testing.T) {
	for text, what := range map[string]string{
		"Adaptor W21.8x1/14 female x 1/2 NPT male":    "gas bottle",
		"Adaptor W 21,8 x 1/14 female x 1/2 NPT male": "gas bottle",
		"Adaptor Rd 44x1/6 female x 1/2 NPT male":     "dairy",
		"Adaptor S60x6 female x 1/2 NPT male":         "tank valve",
		"Adaptor S 60 x 6 female x 1/2 NPT male":      "tank valve",
		"Adaptor S100x8 female x 1/2 NPT male":        "tank valve",
	} {
		r := Read(text)
		require.Equal(t, "NPT 1/2 male", brief(r.Ends), text)
		require.Contains(t, strings.Join(r.Unread, "; "), what, text)
	}
	// The same letters with figures that no such thread has are not called one.
	for _, text := range []string{"Elbow S10x2 1/2 NPT F", "Elbow W8x1 1/2 NPT F", "Elbow Rd 12x2 1/2 NPT F"} {
		require.NotContains(t, strings.Join(Read(text).Unread, "; "), "thread of", text)
	}
}
