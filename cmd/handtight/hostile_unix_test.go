//go:build unix

package main

import (
	"net"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/require"
	"golang.org/x/sys/unix"
)

// specialPlaces makes what is no regular file, in a folder of its own. A device of our own
// can be made by the administrator alone.
func specialPlaces(t *testing.T) []string {
	t.Helper()
	dir, err := filepath.Abs(t.TempDir())
	require.NoError(t, err)
	pipe := filepath.Join(dir, "pipe.xlsx")
	require.NoError(t, unix.Mkfifo(pipe, 0o644))
	out := []string{pipe}
	socket := filepath.Join(dir, "s.xlsx")
	if l, err := net.Listen("unix", socket); err == nil { // a socket's path is short
		t.Cleanup(func() { l.Close() })
		out = append(out, socket)
	}
	for name, minor := range map[string]uint32{"null.xlsx": 3, "zero.xlsx": 5} {
		device := filepath.Join(dir, name)
		if unix.Mknod(device, unix.S_IFCHR|0o666, int(unix.Mkdev(1, minor))) == nil {
			out = append(out, device)
		}
	}
	return out
}
