package file

import (
	"errors"
	"io"
	"os"
	"path/filepath"
	"strings"
	"sync"
	"testing"

	"github.com/stretchr/testify/require"
)

func write(t *testing.T, path, text string) {
	t.Helper()
	o, err := To(path)
	require.NoError(t, err)
	require.NoError(t, o.Write(func(w io.Writer) error { _, err := io.WriteString(w, text); return err }))
}

func textOf(t *testing.T, path string) string {
	t.Helper()
	data, err := os.ReadFile(path)
	require.NoError(t, err)
	return string(data)
}

func listed(t *testing.T, dir string) []string {
	t.Helper()
	entries, err := os.ReadDir(dir)
	require.NoError(t, err)
	var out []string
	for _, e := range entries {
		out = append(out, e.Name())
	}
	return out
}

func TestWrite(t *testing.T) {
	dir := t.TempDir()
	path := filepath.Join(dir, "list.xlsx")
	write(t, path, "one")
	write(t, path, "two")
	require.Equal(t, "two", textOf(t, path))
	require.Equal(t, []string{"list.xlsx"}, listed(t, dir), "nothing is left beside it")
	long := filepath.Join(dir, strings.Repeat("ä", 125)+".xlsx") // 255 bytes, the most of a name
	write(t, long, "long")
	require.Equal(t, "long", textOf(t, long))
}

func TestALinkStaysALink(t *testing.T) {
	dir := t.TempDir()
	real, link, chain := filepath.Join(dir, "real.xlsx"), filepath.Join(dir, "link.xlsx"), filepath.Join(dir, "chain.xlsx")
	if err := os.Symlink("real.xlsx", link); err != nil {
		t.Skip("no links here")
	}
	require.NoError(t, os.Symlink("link.xlsx", chain))
	write(t, chain, "new where nothing stood yet")
	write(t, chain, "again")
	require.Equal(t, "again", textOf(t, real))
	for _, l := range []string{link, chain} {
		info, err := os.Lstat(l)
		require.NoError(t, err)
		require.NotZero(t, info.Mode()&os.ModeSymlink)
	}
	require.NoError(t, os.Symlink("ring-b", filepath.Join(dir, "ring-a")))
	require.NoError(t, os.Symlink("ring-a", filepath.Join(dir, "ring-b")))
	_, err := To(filepath.Join(dir, "ring-a"))
	require.ErrorContains(t, err, "cannot be written")
}

func TestAnInputIsNeverWrittenOver(t *testing.T) {
	dir := t.TempDir()
	build := filepath.Join(dir, "build.toml")
	require.NoError(t, os.WriteFile(build, []byte("a"), 0o644))
	paths := []string{build, filepath.Join(dir, ".", "x", "..", "build.toml")}
	require.NoError(t, os.Mkdir(filepath.Join(dir, "x"), 0o755))
	for _, make := range []func(string, string) error{os.Symlink, os.Link} {
		other := filepath.Join(dir, "other"+string(rune('0'+len(paths)))+".xlsx")
		if make(build, other) == nil {
			paths = append(paths, other)
		}
	}
	for _, p := range paths {
		_, err := To(p, filepath.Join(dir, "absent"), build)
		require.ErrorContains(t, err, "never written over", p)
	}
}

func TestAFailureLeavesAllAsItWas(t *testing.T) {
	dir := t.TempDir()
	path := filepath.Join(dir, "list.xlsx")
	for _, stands := range []bool{false, true} {
		if stands {
			require.NoError(t, os.WriteFile(path, []byte("old"), 0o644))
		}
		o, err := To(path)
		require.NoError(t, err)
		cause := errors.New("the disk is full")
		err = o.Write(func(w io.Writer) error {
			_, e := io.WriteString(w, strings.Repeat("half", 1<<16))
			require.NoError(t, e)
			return cause
		})
		require.ErrorIs(t, err, cause)
		require.ErrorContains(t, err, "it cannot be written")
		if stands {
			require.Equal(t, "old", textOf(t, path))
			require.Equal(t, []string{"list.xlsx"}, listed(t, dir))
		} else {
			require.Empty(t, listed(t, dir))
		}
	}
}

func TestWhatWasWrittenMeanwhileIsKept(t *testing.T) {
	dir := t.TempDir()
	path := filepath.Join(dir, "list.xlsx")
	for _, stood := range []string{"", "old"} {
		if stood != "" {
			require.NoError(t, os.WriteFile(path, []byte(stood), 0o644))
		}
		o, err := To(path)
		require.NoError(t, err)
		err = o.Write(func(io.Writer) error {
			return os.WriteFile(path, []byte("theirs, meanwhile"), 0o644)
		})
		require.ErrorContains(t, err, "changed meanwhile")
		require.Equal(t, "theirs, meanwhile", textOf(t, path))
		require.Equal(t, []string{"list.xlsx"}, listed(t, dir))
		require.NoError(t, os.Remove(path))
	}
}

func TestTheRestOfAKilledRunIsTakenUp(t *testing.T) {
	dir := t.TempDir()
	path := filepath.Join(dir, "list.xlsx")
	require.NoError(t, os.WriteFile(partName(path), []byte(strings.Repeat("half of it", 100)), 0o644))
	write(t, path, "whole")
	require.Equal(t, "whole", textOf(t, path))
	require.Equal(t, []string{"list.xlsx"}, listed(t, dir))
}

// Two at once: what stands there is always one whole file, and every run that did not
// write it says so.
func TestManyAtOnce(t *testing.T) {
	dir := t.TempDir()
	path := filepath.Join(dir, "list.xlsx")
	for range 20 {
		var group sync.WaitGroup
		won := make([]bool, 8)
		text := func(i int) string { return strings.Repeat(string(rune('a'+i)), 200_000) }
		for i := range won {
			group.Add(1)
			go func() {
				defer group.Done()
				o, err := To(path)
				if err == nil {
					err = o.Write(func(w io.Writer) error { _, err := io.WriteString(w, text(i)); return err })
				}
				won[i] = err == nil
			}()
		}
		group.Wait()
		got := textOf(t, path)
		require.Len(t, got, 200_000)
		winners := ""
		for i := range won {
			if won[i] {
				winners += string(rune('a' + i))
			}
		}
		require.NotEmpty(t, winners)
		require.Contains(t, winners, got[:1])
		require.Equal(t, []string{"list.xlsx"}, listed(t, dir))
	}
}

func TestPlacesThatCannotBeWritten(t *testing.T) {
	dir := t.TempDir()
	require.NoError(t, os.WriteFile(filepath.Join(dir, "file"), nil, 0o644))
	for path, want := range map[string]string{
		"":                              "no file is named",
		dir:                             "a folder, not a file",
		filepath.Join(dir, "no", "a"):   "folder is not there",
		filepath.Join(dir, "file", "a"): "what should be its folder is none",
		filepath.Join(dir, strings.Repeat("x", 300)): "cannot be written",
	} {
		_, err := To(path)
		require.ErrorContains(t, err, want)
	}
}
