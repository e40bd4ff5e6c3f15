package file

import (
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/require"
)

func TestWithin(t *testing.T) {
	dir := t.TempDir()
	boat := filepath.Join(dir, "boat")
	require.NoError(t, os.MkdirAll(filepath.Join(boat, "deep"), 0o755))
	for _, name := range []string{"secret.toml", "boat/fittings.toml", "boat/deep/a.toml"} {
		require.NoError(t, os.WriteFile(filepath.Join(dir, name), nil, 0o644))
	}
	for name, want := range map[string]bool{
		"fittings.toml": true, "deep/a.toml": true, "deep/../fittings.toml": true, "absent.toml": true, "..toml": true,
		"../secret.toml": false, "deep/../../secret.toml": false, "../boat/fittings.toml": true, "../absent.toml": false,
	} {
		require.Equal(t, want, Within(boat, filepath.Join(boat, name)), name)
	}
	if os.Symlink("../secret.toml", filepath.Join(boat, "link.toml")) == nil {
		require.False(t, Within(boat, filepath.Join(boat, "link.toml")), "a link leads out")
		require.NoError(t, os.Symlink("boat", filepath.Join(dir, "ship")))
		require.True(t, Within(filepath.Join(dir, "ship"), filepath.Join(dir, "ship", "fittings.toml")), "the folder itself is a link")
	}
	require.True(t, IDOf(filepath.Join(boat, "deep", "..", "fittings.toml")).Same(IDOf(filepath.Join(boat, "fittings.toml"))))
	require.False(t, IDOf("absent").Same(IDOf("absent")))
}

func TestAbsolute(t *testing.T) {
	for path, want := range map[string]bool{"/a": true, `\a`: true, `C:\a`: true, "c:/a": true, "c:a": true, `\\server\a`: true, "a/b": false, "../a": false, "a:b": true, "ab:c": false} {
		require.Equal(t, want, Absolute(path), path)
	}
}
