package source

import (
	"os"
	"testing"

	"github.com/stretchr/testify/require"
)

func TestReadFile(t *testing.T) {
	t.Chdir(t.TempDir())
	require.NoError(t, os.MkdirAll("boat/empty", 0o755))
	write := func(name, text string) { require.NoError(t, os.WriteFile(name, []byte(text), 0o644)) }
	write("kittiwake.toml", "a = 1\n")
	write("boat/tern.toml", "a = 1\n")
	write("boat/skua.toml", "a = 1\n")
	write("boat/notes.txt", "")
	require.NoError(t, os.WriteFile("large.toml", nil, 0o644))
	require.NoError(t, os.Truncate("large.toml", 1<<33)) // a hole of 8 GiB

	rows := []struct{ why, path, want string }{
		{"no path", "", ": no file is named\n  give the path of a build file, which ends in .toml"},
		{"a letter is wrong: the nearest name of that folder", "kitiwake.toml",
			"kitiwake.toml: there is no such file\n  did you mean kittiwake.toml?"},
		{"the ending was forgotten, in another folder", "boat/skua",
			"boat/skua: there is no such file\n  did you mean boat/skua.toml?"},
		{"nothing is near: the build files there", "boat/gannet.toml",
			"boat/gannet.toml: there is no such file\n  the build files there are skua.toml, tern.toml"},
		{"nothing is there at all", "boat/empty/a.toml", "boat/empty/a.toml: there is no such file\n  check the name and the folder"},
		{"no such folder", "ship/a.toml", "ship/a.toml: there is no such file\n  check the path: there is no folder ship/"},
		{"a folder with build files", "boat", "boat: this is a folder, not a file\n  name a file within it: skua.toml, tern.toml"},
		{"a folder without", "boat/empty", "boat/empty: this is a folder, not a file\n  name the build file within it, which ends in .toml"},
		{"too large, and not read", "large.toml", "large.toml: this file is larger than 6 MiB\n  keep in it what this build uses"},
		{"a file within a file", "kittiwake.toml/a", "kittiwake.toml/a: there is no such file\n  check the path: there is no folder kittiwake.toml/"},
	}
	for _, row := range rows {
		t.Run(row.why, func(t *testing.T) {
			doc, faults := load(row.path)
			require.Nil(t, doc)
			require.Equal(t, row.want, faults.Error())
		})
	}
	doc, faults := load("boat/tern.toml")
	require.NoError(t, faults.Err())
	require.Equal(t, "boat/tern.toml", doc.File(), "the path as it was given")
}

func TestAnEndlessDeviceIsRefused(t *testing.T) {
	zero := "/dev/zero"
	if _, err := os.Stat(zero); err != nil {
		t.Skip("no endless file here")
	}
	_, faults := ReadFile(zero)
	require.EqualError(t, faults, "/dev/zero: this is a device, not a file\n  name a file on a disk")
}

// load reads a file and parses it.
func load(path string) (*Document, Faults) {
	text, faults := ReadFile(path)
	if len(faults) > 0 {
		return nil, faults
	}
	return Parse(path, text)
}
