package main

import (
	"bytes"
	"os"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"handtight/bom/cart"
	"handtight/bom/draft"
)

// exampleDraft drafts the example lists.
func exampleDraft(t *testing.T) *draft.Draft {
	var carts []*cart.Cart
	for _, name := range []string{"kontor.csv", "quay.csv"} {
		data, err := os.ReadFile("../../testdata/draft/" + name)
		require.NoError(t, err)
		c, err := draft.ReadList(name, data, cart.Options{})
		require.NoError(t, err)
		carts = append(carts, c)
	}
	d, err := draft.Of(carts, draft.Options{})
	require.NoError(t, err)
	return d
}

// Five to ten questions, those that decide most first, each with the default that Enter takes;
// a bad answer is asked again, and a dot leaves the rest.
func TestDraftAsks(t *testing.T) {
	d := exampleDraft(t)
	talk := d.Talk()
	require.GreaterOrEqual(t, len(talk), 5)
	require.LessOrEqual(t, len(talk), draft.Most)
	var errOut bytes.Buffer
	a := &app{in: strings.NewReader("12 V\n\nnine\n28 L/h\n.\n"), ui: &ui{out: &bytes.Buffer{}, errOut: &errOut, width: 80}}
	got := a.askDraft(d)
	require.Equal(t, "12 V", got["supply"])
	require.Equal(t, "57 bar", got["pressure"], "Enter takes the default")
	require.Equal(t, "28 L/h", got["product"], "what is no flow is asked again")
	require.NotContains(t, got, "salinity")
	require.Contains(t, errOut.String(), "again:")
}

// The screen holds no more than 24 lines of 80 columns, whatever the lists come to.
func TestDraftIsOneScreen(t *testing.T) {
	d := exampleDraft(t)
	var out bytes.Buffer
	a := &app{ui: &ui{out: &out, errOut: &bytes.Buffer{}, width: 100}}
	a.printDraft(d, draftFactsOf(d))
	lines := strings.Split(strings.TrimSpace(out.String()), "\n")
	require.LessOrEqual(t, len(lines), 24, out.String())
	for _, l := range lines {
		require.LessOrEqual(t, len([]rune(l)), 80, l)
	}
	require.True(t, strings.HasPrefix(out.String(), "Your 35 lines make 38 of 40 joints."))
	require.Less(t, strings.Index(out.String(), "Missing"), strings.Index(out.String(), "Does not fit"))
	require.Less(t, strings.Index(out.String(), "Does not fit"), strings.Index(out.String(), "Ask"))
}
