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

// However much is missing, the sections are cut until they fit, and one of each stays.
func TestDraftSectionsFit(t *testing.T) {
	long := strings.Repeat("a fitting that is missing here ", 5)
	list := []section{{"Missing", []string{long, long, long, long, long, long, long}, 6}, {"Ask", []string{"volts?", "bar?", "water?"}, 6}, {"Left over", []string{long}, 4}}
	u := &ui{out: &bytes.Buffer{}, errOut: &bytes.Buffer{}, width: 80}
	u.fitScreen(list, draftScreen)
	var out bytes.Buffer
	u.out = &out
	for _, s := range list {
		require.GreaterOrEqual(t, s.most, 1)
		u.entry(s.head, s.list, s.most)
	}
	require.LessOrEqual(t, strings.Count(out.String(), "\n"), draftScreen, out.String())
	require.Contains(t, out.String(), "more, in the file")
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
