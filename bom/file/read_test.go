package file

import (
	"bytes"
	"errors"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/require"
)

var small = Limit{Bytes: 1000, Remedy: "split it"}

func TestRead(t *testing.T) {
	t.Chdir(t.TempDir())
	require.NoError(t, os.MkdirAll("boat/empty", 0o755))
	write := func(name, text string) { require.NoError(t, os.WriteFile(name, []byte(text), 0o644)) }
	write("kittiwake.toml", "a = 1\n")
	write("boat/tern.toml", "a = 1\n")
	write("boat/skua.toml", "a = 1\n")
	write("boat/notes.txt", "")
	write("large.toml", "")
	require.NoError(t, os.Truncate("large.toml", 1<<33)) // a hole of 8 GiB
	write("full.toml", strings.Repeat("x", 1000))
	rows := []struct{ why, path, reason, remedy string }{
		{"no path", "", "no file is named", "give the path of a file"},
		{"a letter is wrong", "kitiwake.toml", "there is no such file", "did you mean kittiwake.toml?"},
		{"the ending was forgotten", "boat/skua", "there is no such file", "did you mean boat/skua.toml?"},
		{"nothing is near", "boat/gannet.toml", "there is no such file", "the build files there are skua.toml, tern.toml"},
		{"no such folder", "ship/a.toml", "there is no such file", "check the path: there is no folder ship/"},
		{"a folder", "boat", "this is a folder, not a file", "name a file within it: skua.toml, tern.toml"},
		{"too large, and not read", "large.toml", "this file is larger than 1000 bytes", "split it"},
		{"a file within a file", "kittiwake.toml/a", "there is no such file", "check the path: there is no folder kittiwake.toml/"},
	}
	for _, row := range rows {
		t.Run(row.why, func(t *testing.T) {
			_, err := Read(row.path, small)
			var e *Error
			require.ErrorAs(t, err, &e)
			require.Equal(t, []string{row.path, row.reason, row.remedy}, []string{e.Path, e.Reason, e.Remedy})
		})
	}
	data, err := Read("full.toml", small)
	require.NoError(t, err, "the limit itself is taken")
	require.Len(t, data, 1000)
}

func TestUnreadable(t *testing.T) {
	for why, row := range map[string]struct {
		err  error
		want string
	}{
		"no leave": {&fs.PathError{Op: "open", Path: "/elsewhere", Err: fs.ErrPermission}, "this file may not be read"},
		"the disk fails: the cause alone, without the path of the system": {&fs.PathError{Op: "read", Path: "/elsewhere", Err: errors.New("input/output error")},
			"this file cannot be read: input/output error"},
		"no cause": {errors.New("/elsewhere"), "this file cannot be read"},
	} {
		t.Run(why, func(t *testing.T) {
			e, ok := errors.AsType[*Error](unreadable("boat/k.toml", row.err))
			require.True(t, ok)
			require.Equal(t, row.want, e.Reason)
			require.NotEmpty(t, e.Remedy)
			require.NotContains(t, e.Error(), "elsewhere")
		})
	}
}

// A disk that does not answer, and a stream that does not end, are given up.
func TestWhatNeverEndsIsGivenUp(t *testing.T) {
	never, w := io.Pipe()
	defer w.Close()
	_, err := within("k.toml", 20*time.Millisecond, func() ([]byte, error) { return readAll("k.toml", never, small) })
	require.ErrorContains(t, err, "k.toml: it was not read to its end within 20ms")
	_, err = ReadFrom(endless{}, "standard input", small)
	require.ErrorContains(t, err, "standard input: this file is larger than 1000 bytes; split it")
	data, err := ReadFrom(bytes.NewReader([]byte("a")), "standard input", small)
	require.NoError(t, err)
	require.Equal(t, "a", string(data))
}

type endless struct{}

func (endless) Read(p []byte) (int, error) { return len(p), nil }

func TestName(t *testing.T) {
	require.Equal(t, "a\ufffdSTOP b\ufffd.toml", Name("a\nSTOP b\u0085.toml"))
	require.Equal(t, "Größe 漢.toml", Name("Größe 漢.toml"))
}

// Names that Windows gives to devices, drives and streams (memory).
func TestReservedNames(t *testing.T) {
	for _, ok := range []string{`C:\boat\list.xlsx`, `list.xlsx`, `d:list.xlsx`, `\\server\share\list.xlsx`, `console.toml`, `com10.toml`, `nul-list.toml`, `boat.con\list.xlsx`} {
		require.NoError(t, reserved(ok), ok)
	}
	for _, bad := range []string{`NUL`, `nul.xlsx`, `C:\boat\con.toml`, `COM1`, `lpt9.txt`, `aux`, `prn .toml`, `\\.\PhysicalDrive0`, `//?/C:/a`, `list.xlsx:hidden`, `C:\a:b`, `CONOUT$`} {
		var e *Error
		require.ErrorAs(t, reserved(bad), &e, bad)
		require.NotEmpty(t, e.Remedy)
	}
}

func TestLinksAreRead(t *testing.T) {
	dir := t.TempDir()
	real := filepath.Join(dir, "real.toml")
	require.NoError(t, os.WriteFile(real, []byte("a"), 0o644))
	link := filepath.Join(dir, "link.toml")
	if err := os.Symlink(real, link); err != nil {
		t.Skip("no links here")
	}
	data, err := Read(link, small)
	require.NoError(t, err)
	require.Equal(t, "a", string(data))
}
