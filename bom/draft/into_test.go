package draft_test

import (
	"bytes"
	"os"
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"handtight/bom"
	"handtight/bom/cart"
	"handtight/bom/draft"
	"handtight/bom/read"
)

// without takes the tables that match out of a build's text.
func without(text []byte, table string) []byte {
	return regexp.MustCompile(`(?m)^\[\[`+table+`[^\[]*(?:\[['"][^\[]*)*`).ReplaceAll(text, nil)
}

// A later list fills a port that stood open; the build's own text stays byte for byte, with
// its line ends, and what is added reads back.
func TestIntoFillsAnOpenPort(t *testing.T) {
	path := "../../testdata/engine/build.toml"
	text, err := os.ReadFile(path)
	require.NoError(t, err)
	text = without(text, `run\]\]\nname = "gauge"`)
	text = without(text, `item\]\]\nid = "gauge"`)
	for _, crlf := range []bool{false, true} {
		if crlf {
			text = bytes.ReplaceAll(text, []byte("\n"), []byte("\r\n"))
		}
		b, faults := read.Parse(path, text)
		require.Empty(t, faults)
		sys, faults := bom.Walk(b)
		require.Empty(t, faults)
		list := listOf(t, []bagLine{{2, "Gauge 0-100 bar, 1/4 NPT male, 316, glycerine"}, {1, "Coupling G 1 female x G 1 female, bronze"}, {1, "Fishing line"}})
		a, err := draft.Into(sys, text, []*cart.Cart{list})
		require.NoError(t, err)
		require.True(t, bytes.HasPrefix(a.Text, text))
		require.Len(t, a.Fills, 1)
		require.Contains(t, a.Fills[0].Says, "gauge-tee.branch")
		require.Len(t, a.New, 1)
		require.Len(t, a.Aside, 1)
		if crlf {
			require.Equal(t, bytes.Count(a.Text, []byte("\n")), bytes.Count(a.Text, []byte("\r\n")))
		}
		for i := range list.Lines {
			require.Contains(t, string(a.Text), list.Lines[i].Where()+": ")
		}
		b, faults = read.Parse(path, a.Text)
		require.Empty(t, faults)
		next, faults := bom.Walk(b)
		require.Empty(t, faults)
		require.Len(t, next.Graph.Joints, len(sys.Graph.Joints)+1)
	}
}

// A shop's cart laid to the build that it is for: what it buys is said, what it buys beside
// another shop is said to double, and what is wrong stays a comment.
func TestIntoSortsTheLines(t *testing.T) {
	path := "../../testdata/clean/build.toml"
	text, err := os.ReadFile(path)
	require.NoError(t, err)
	sys := load(t, path)
	data, err := os.ReadFile("../../testdata/carts/quai.csv")
	require.NoError(t, err)
	c, err := cart.Read("quai.csv", data, cart.Options{})
	require.NoError(t, err)
	a, err := draft.Into(sys, text, []*cart.Cart{c})
	require.NoError(t, err)
	require.True(t, bytes.HasPrefix(a.Text, text))
	require.Len(t, a.Wrong, 3)
	require.NotEmpty(t, a.Doubles)
	b, faults := read.Parse(path, a.Text)
	require.Empty(t, faults)
	require.Greater(t, len(b.Offers), len(sys.Build.Offers))
	for i := range c.Lines {
		require.Contains(t, strings.ReplaceAll(string(a.Text), "\n#   ", " "), c.Lines[i].Where()+": ")
	}
}
