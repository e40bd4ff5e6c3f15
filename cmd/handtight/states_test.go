package main

import (
	"bytes"
	"strings"
	"testing"
	"unicode/utf8"

	"github.com/stretchr/testify/require"

	"handtight/bom/facts"
	"handtight/bom/segment"
)

// A state reads on a narrow terminal too: nothing is wider than it, and what the wide
// table says is all there.
func TestStatesOnANarrowTerminal(t *testing.T) {
	sys, err := new(app).load(carelessBuild)
	require.NoError(t, err)
	for _, width := range []int{leastWidth, 60, plainWidth, widestLines} {
		var out bytes.Buffer
		a := &app{ui: &ui{out: &out, width: width}}
		v, ok := sys.Segments.View("overboard shut")
		require.True(t, ok)
		a.printState(&facts.States([]segment.StateView{v})[0])
		for _, line := range strings.Split(out.String(), "\n") {
			require.LessOrEqual(t, utf8.RuneCountInString(line), width, line)
		}
		flat := strings.Join(strings.Fields(out.String()), " ")
		require.Contains(t, flat, "State: overboard shut")
		require.Contains(t, flat, "no bound")
		require.Contains(t, flat, "brine-1 holds 10 bar and sees pressure without bound")
	}
}

// One state or all of them, not both; and one must be a state of the build.
func TestViewsAsked(t *testing.T) {
	sys, err := new(app).load(cleanBuild)
	require.NoError(t, err)
	views, err := viewsAsked(sys, "", false)
	require.NoError(t, err)
	require.Empty(t, views, "none is shown that is not asked for")
	views, err = viewsAsked(sys, "", true)
	require.NoError(t, err)
	require.Len(t, views, len(sys.Segments.StateNames()))
	_, err = viewsAsked(sys, "nonsense that is near nothing", false)
	require.ErrorContains(t, err, `there is no state "nonsense that is near nothing": the states of this build are normal, flush`)
}
