//go:build unix

package file

import (
	"io"
	"net"
	"os"
	"path/filepath"
	"testing"
	"time"

	"github.com/stretchr/testify/require"
	"golang.org/x/sys/unix"
)

// special makes what is no regular file in a folder of its own, and gives the paths by
// what they are. A device can be made by the administrator alone.
func special(t *testing.T) map[string]string {
	t.Helper()
	dir := t.TempDir()
	out := map[string]string{}
	pipe := filepath.Join(dir, "pipe.xlsx")
	require.NoError(t, unix.Mkfifo(pipe, 0o644))
	out["a pipe"] = pipe
	t.Chdir(dir) // a socket's path is short
	l, err := net.Listen("unix", "socket.xlsx")
	require.NoError(t, err)
	t.Cleanup(func() { l.Close() })
	out["a socket"] = filepath.Join(dir, "socket.xlsx")
	device := filepath.Join(dir, "device.xlsx")
	if unix.Mknod(device, unix.S_IFCHR|0o666, int(unix.Mkdev(1, 3))) == nil { // takes all, gives nothing
		out["a device"] = device
	}
	for what, path := range out {
		link := path + ".link"
		require.NoError(t, os.Symlink(path, link))
		_ = what
	}
	return out
}

func TestWhatIsNoFileIsRefusedAtOnce(t *testing.T) {
	for what, path := range special(t) {
		for _, p := range []string{path, path + ".link"} {
			began := time.Now()
			_, err := Read(p, small)
			require.ErrorContains(t, err, "this is "+what+", not a file")
			before, e := os.Lstat(path)
			require.NoError(t, e)
			_, err = To(p)
			require.ErrorContains(t, err, "this is "+what+", and is never written to")
			after, e := os.Lstat(path)
			require.NoError(t, e)
			require.Equal(t, before.Mode(), after.Mode(), "it is what it was")
			require.Less(t, time.Since(began), 10*time.Second, "it did not wait for the other side")
		}
	}
}

// What waits beside the target may have been put there by someone.
func TestTheFileBesideIsOurs(t *testing.T) {
	dir := t.TempDir()
	target := filepath.Join(dir, "list.xlsx")
	victim := filepath.Join(dir, "victim")
	require.NoError(t, os.WriteFile(victim, []byte("kept"), 0o644))
	write := func() error {
		o, err := To(target)
		require.NoError(t, err)
		return o.Write(func(w io.Writer) error { _, err := io.WriteString(w, "new"); return err })
	}
	part := partName(target)
	require.NoError(t, os.Symlink(victim, part))
	require.ErrorContains(t, write(), "cannot be written", "a link beside is not followed")
	require.NoError(t, os.Remove(part))
	require.NoError(t, unix.Mkfifo(part, 0o644))
	require.Error(t, write(), "a pipe beside is not written into")
	require.NoError(t, os.Remove(part))
	require.NoError(t, os.Link(victim, part))
	require.NoError(t, write(), "a second name of another file is taken away, the file is not touched")
	data, err := os.ReadFile(victim)
	require.NoError(t, err)
	require.Equal(t, "kept", string(data))
}

func TestModeAndOwnerAreKept(t *testing.T) {
	path := filepath.Join(t.TempDir(), "list.xlsx")
	require.NoError(t, os.WriteFile(path, []byte("old"), 0o600))
	require.NoError(t, os.Chmod(path, 0o640))
	write(t, path, "new")
	info, err := os.Stat(path)
	require.NoError(t, err)
	require.Equal(t, os.FileMode(0o640), info.Mode().Perm())

	require.NoError(t, os.Chmod(path, 0o440))
	o, err := To(path)
	require.NoError(t, err)
	require.ErrorContains(t, o.Write(func(io.Writer) error { return nil }), "marked as not to be written")
	o.Force = true
	require.NoError(t, o.Write(func(w io.Writer) error { _, err := io.WriteString(w, "forced"); return err }))
}
