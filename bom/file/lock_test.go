package file

import (
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/require"
)

func TestOpenElsewhere(t *testing.T) {
	dir := t.TempDir()
	path := filepath.Join(dir, "shopping.xlsx")
	write(t, path, "x")
	open := func() (string, bool) {
		o, err := To(path)
		require.NoError(t, err)
		return o.OpenElsewhere()
	}
	_, is := open()
	require.False(t, is)
	for lock, row := range map[string]struct{ text, who string }{
		".~lock.shopping.xlsx#": {",mate,chartroom,28.11.2026 09:00,file:///x;", "by mate on chartroom, since 2"},
		"~$shopping.xlsx":       {"\x04mate", "since 2"},
		"~$opping.xlsx":         {"", "since 2"},
	} {
		lock = filepath.Join(dir, lock)
		require.NoError(t, os.WriteFile(lock, []byte(row.text), 0o644))
		who, is := open()
		require.True(t, is, lock)
		require.Contains(t, who, row.who)
		require.NoError(t, os.Remove(lock))
	}
}

func TestAside(t *testing.T) {
	dir := t.TempDir()
	path := filepath.Join(dir, "list.xlsx")
	for _, text := range []string{"one", "two"} {
		write(t, path, text)
		o, err := To(path)
		require.NoError(t, err)
		_, err = o.Aside(small)
		require.NoError(t, err)
	}
	require.Equal(t, "one", textOf(t, filepath.Join(dir, "list.issue-1.xlsx")))
	require.Equal(t, "two", textOf(t, filepath.Join(dir, "list.issue-2.xlsx")))
	require.Equal(t, "two", textOf(t, path), "there is always a list")
}
