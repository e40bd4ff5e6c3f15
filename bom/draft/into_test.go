package draft_test

import (
	"bytes"
	"os"
	"regexp"
	"slices"
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

// What a later list brings for a place of its own has that shop's offer too.
func TestIntoGivesWhatIsLaidItsOffer(t *testing.T) {
	d := drafted(t, small)
	data := "Code;Description;Qty;Price EUR\nGA-100;\"Gauge 0-100 bar, 1/4 NPT male, 316, rated 100 bar\";1;33,50\nTE-38;\"Tee 3/8 NPT male x 3/8 NPT female x 3/8 NPT female, 316, class 3000\";1;24,00\nAD-2;\"Adaptor 3/8 NPT male x 1/4 NPT female, 316, class 3000, pack of 2\";1;9,00\n"
	c, err := cart.Read("schuppen.csv", []byte(data), cart.Options{})
	require.NoError(t, err)
	a, err := draft.Into(walkedText(t, d.Text), d.Text, []*cart.Cart{c})
	require.NoError(t, err)
	require.Len(t, a.Fills, 3)
	b, faults := read.Parse("build.toml", a.Text)
	require.Empty(t, faults)
	prices := map[string]string{}
	for _, o := range b.Offers {
		if o.Vendor.ID == "schuppen" {
			prices[o.Code] = o.Price.String()
		}
	}
	require.Len(t, prices, 3, "%s", a.Text)
	require.Contains(t, prices["GA-100"], "33.5")
}

// Pieces that an included file has over are left there, for how many are left could not be written:
// runs stand in the build's own file only, so that nothing else of an include would change.
func TestIntoLeavesIncludedFilesAlone(t *testing.T) {
	d := drafted(t, append(slices.Clone(small), bagLine{1, "Nipple 1/4 NPT male x 1/4 NPT male, 316, class 3000"}))
	text := string(d.Text)
	at := strings.Index(text, "[[item]]\nid       = \"nipple-npt14m-npt14m\"")
	require.Positive(t, at, text)
	end := at + strings.Index(text[at:], "\n\n")
	later := []bagLine{{1, "Gauge 0-100 bar, 1/4 NPT female, 316, rated 100 bar"}, {1, "Tee 3/8 NPT male x 3/8 NPT female x 1/4 NPT female, 316, class 3000"}}
	a, err := draft.Into(walkedText(t, d.Text), d.Text, []*cart.Cart{listOf(t, later)})
	require.NoError(t, err)
	require.Len(t, a.Fills, 2)
	require.NotContains(t, string(a.Text), "extra    = 1") // the build's own nipple is taken

	dir := t.TempDir()
	require.NoError(t, os.WriteFile(dir+"/more.toml", []byte(text[at:end]+"\n"), 0o600))
	text = strings.Replace(text[:at]+text[end:], "[build]\n", "[build]\ninclude = [\"more.toml\"]\n", 1)
	path := dir + "/build.toml"
	require.NoError(t, os.WriteFile(path, []byte(text), 0o600))
	sys, faults := bom.Read(path)
	require.Empty(t, faults)
	walked, faults := bom.Walk(sys)
	require.Empty(t, faults)
	a, err = draft.Into(walked, []byte(text), []*cart.Cart{listOf(t, later)})
	require.NoError(t, err)
	require.Len(t, a.Fills, 1) // the tee alone: it buys the build's own
}
