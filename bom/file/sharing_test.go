package file

import (
	"io"
	"os"
	"path/filepath"
	"syscall"
	"testing"

	"github.com/stretchr/testify/require"
)

// A workbook that a program on Windows has open cannot be renamed over: it is said, the old
// file stands, and nothing is left half-written.
func TestOpenInAProgram(t *testing.T) {
	for name, c := range map[string]struct {
		code syscall.Errno
		held bool
	}{"sharing violation": {32, true}, "lock violation": {33, true}, "access denied": {5, true}, "disk full": {112, false}} {
		dir := t.TempDir()
		path := filepath.Join(dir, "list.xlsx")
		write(t, path, "old")
		o, err := To(path)
		require.NoError(t, err)
		o.held = heldOnWindows
		o.rename = func(from, to string) error {
			require.Equal(t, "new", textOf(t, from), "whole before it is moved")
			return &os.LinkError{Op: "rename", Old: from, New: to, Err: c.code}
		}
		fill := func(w io.Writer) error { _, err := io.WriteString(w, "new"); return err }
		err = o.Write(fill)
		var e *Error
		require.ErrorAs(t, err, &e, name)
		require.Equal(t, path, e.Path)
		require.Contains(t, e.Reason, "is as it was", name)
		if c.held {
			require.Contains(t, e.Reason, "a program has it open", name)
			require.Contains(t, e.Remedy, "close it there", name)
		} else {
			require.NotContains(t, e.Reason, "open", name)
		}
		require.Equal(t, "old", textOf(t, path), name)
		require.Equal(t, []string{"list.xlsx"}, listed(t, dir), name)
		o.rename = os.Rename // closed there, run again
		require.NoError(t, o.Write(fill))
		require.Equal(t, "new", textOf(t, path), name)
	}
}

func TestAFolderThatMayNotBeWrittenToIsNotAnOpenFile(t *testing.T) {
	require.False(t, heldOnWindows(&os.PathError{Op: "open", Path: "list.xlsx", Err: syscall.Errno(5)}))
	require.True(t, heldOnWindows(&os.PathError{Op: "open", Path: "list.xlsx", Err: syscall.Errno(32)}))
	require.False(t, heldOnWindows(io.EOF))
}
