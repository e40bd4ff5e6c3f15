package fix_test

import (
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/require"

	"handtight/bom/repair/fix"
)

func TestDemos(t *testing.T) {
	for _, demo := range []string{"careless", "refit", "clean"} {
		path := filepath.Join("..", "..", "..", "testdata", demo, "build.toml")
		text, err := os.ReadFile(path)
		require.NoError(t, err)
		r, err := fix.Build(path, text, fix.Options{})
		require.NoError(t, err)
		for _, e := range r.Edits {
			t.Log(demo, e.Slug, e.At, e.Do, e.Buy, e.Text)
		}
		for _, l := range r.Left {
			t.Log(demo, "LEFT", l.Slug, l.At, l.Why)
		}
		t.Log(demo, r.Stops)
	}
}
