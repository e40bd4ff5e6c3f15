package drawing_test

import (
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/require"

	"handtight/bom"
	"handtight/bom/drawing"
	"handtight/bom/rule"
)

var demos = []string{"clean", "careless", "refit", "arrows", "engine", "recovery", "leftovers", "shops"}

func walked(t testing.TB, name string) *bom.System {
	b, faults := bom.Read(filepath.Join("..", "..", "testdata", name, "build.toml"))
	require.Empty(t, faults)
	s, faults := bom.Walk(b)
	require.Empty(t, faults)
	return s
}

// all is every picture of a build, by a name of its own.
func all(t testing.TB, sys *bom.System) map[string]*drawing.Panel {
	marks := drawing.MarksOf(rule.Check(sys), nil)
	out := map[string]*drawing.Panel{}
	o, ok := drawing.Overview(sys, marks, "normal")
	require.True(t, ok)
	out["overview"] = &o
	panels, ok := drawing.Panels(sys, marks, "normal")
	require.True(t, ok)
	for i := range panels {
		out[panels[i].Letter] = &panels[i]
	}
	return out
}

func TestLook(t *testing.T) {
	dir := os.Getenv("PICTURES")
	if dir == "" {
		t.Skip("set PICTURES to a folder to look at the pictures")
	}
	for _, d := range demos {
		for name, p := range all(t, walked(t, d)) {
			for form, word := range map[drawing.Form]string{drawing.Wide: "wide", drawing.Narrow: "narrow"} {
				pic := drawing.Lay(p.Scheme, form)
				t.Log(d, name, word, len(p.Scheme.Parts), "parts", pic.Height, "crossings", pic.Crossings, "unrouted", pic.Unrouted)
				require.NoError(t, os.WriteFile(filepath.Join(dir, d+"-"+name+"-"+word+".svg"), []byte(svg(t, pic, p.Scheme, d+name)), 0o644))
			}
		}
	}
}
