//go:build unix

package main

import (
	"os"
	"syscall"

	"golang.org/x/sys/unix"
)

// closedOutput reports whether the standard output was closed when the program began. The
// runtime of the language then opens the null device in its place, for reading and writing,
// and every write would seem to succeed; a shell that sends output there opens it for
// writing alone.
func closedOutput() bool {
	info, err := os.Stdout.Stat()
	if err != nil {
		return true
	}
	null, err := os.Stat(os.DevNull)
	if err != nil {
		return false
	}
	a, ok := info.Sys().(*syscall.Stat_t)
	b, same := null.Sys().(*syscall.Stat_t)
	if !ok || !same || info.Mode()&os.ModeCharDevice == 0 || a.Rdev != b.Rdev {
		return false
	}
	flags, err := unix.FcntlInt(os.Stdout.Fd(), unix.F_GETFL, 0)
	return err == nil && flags&unix.O_ACCMODE == unix.O_RDWR
}
