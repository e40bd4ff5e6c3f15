package main

import (
	"bytes"
	"io"
	"os"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"handtight/bom/cart"
	"handtight/bom/draft"
	"handtight/bom/starter"
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

// The end of the input leaves the rest open and asks nothing more, and a question mark tells what a
// question is for.
func TestDraftTalkEnds(t *testing.T) {
	d := exampleDraft(t)
	var errOut bytes.Buffer
	a := &app{in: strings.NewReader("?\n12 V\n"), ui: &ui{out: &bytes.Buffer{}, errOut: &errOut, width: 80}}
	require.Equal(t, map[string]string{"supply": "12 V"}, a.askDraft(d))
	require.Contains(t, errOut.String(), "pumps and valves must be for it")
	require.Equal(t, 2, strings.Count(errOut.String(), ". leaves all the rest"), "the third question is not asked")
}

// terminal gives one line at a time and then an end; read again it would wait for ever at a real
// terminal, so here it fails the test.
type terminal struct {
	t     *testing.T
	lines []string
	ended bool
}

func (r *terminal) Read(p []byte) (int, error) {
	require.False(r.t, r.ended, "read again behind the end")
	if len(r.lines) == 0 {
		r.ended = true
		return 0, io.EOF
	}
	n := copy(p, r.lines[0])
	r.lines = r.lines[1:]
	return n, nil
}

// One end of the input takes what is usual for all that is left of a starter.
func TestStarterTalkEnds(t *testing.T) {
	var errOut bytes.Buffer
	a := &app{in: &terminal{t: t, lines: []string{"?\n", "12\n"}}, ui: &ui{out: &bytes.Buffer{}, errOut: &errOut, width: 80}}
	answers := starter.Usual()
	for _, q := range starter.Questions() {
		require.NoError(t, a.askStarter(q, &answers))
	}
	require.Contains(t, errOut.String(), "left column")
	require.NotContains(t, errOut.String(), "drives the high-pressure pump")
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
