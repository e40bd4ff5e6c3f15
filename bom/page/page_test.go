package page_test

import (
	"bytes"
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/require"

	"handtight/bom"
	"handtight/bom/page"
	"handtight/bom/rule"
)

var demos = []string{"clean", "careless", "refit", "arrows"}

// written gives the page of an example build.
func written(t testing.TB, name string, only ...string) []byte {
	path := filepath.Join("..", "..", "testdata", name, "build.toml")
	b, faults := bom.Read(path)
	require.Empty(t, faults)
	sys, faults := bom.Walk(b)
	require.Empty(t, faults)
	order, err := sys.Order()
	require.NoError(t, err)
	text, err := os.ReadFile(path)
	require.NoError(t, err)
	var out bytes.Buffer
	require.NoError(t, page.Write(&out, page.Of(sys, rule.Check(sys), order, page.Options{Only: only, Text: text})))
	return out.Bytes()
}

func TestLook(t *testing.T) {
	dir := os.Getenv("PAGES")
	if dir == "" {
		t.Skip("set PAGES to a folder to look at the pages")
	}
	for _, d := range demos {
		data := written(t, d)
		t.Log(d, len(data))
		require.NoError(t, os.WriteFile(filepath.Join(dir, d+".html"), data, 0o644))
		for _, only := range page.Sections {
			require.NoError(t, os.WriteFile(filepath.Join(dir, d+"-"+only+".html"), written(t, d, only), 0o644))
		}
	}
}
