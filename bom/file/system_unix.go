//go:build unix

package file

import (
	"errors"
	"io/fs"
	"os"
	"syscall"

	"golang.org/x/sys/unix"
)

const (
	doNotWait = unix.O_NONBLOCK // a pipe without a writer would hold the open up for ever
	doNotLink = unix.O_NOFOLLOW
)

// closeFirst: whether a file must be closed before it is renamed.
const closeFirst = false

// lock takes a file for this process alone until it is closed; false if another has it.
// A disk that knows no locks gives true: what stands there is compared again anyway.
func lock(f *os.File) bool {
	err := unix.Flock(int(f.Fd()), unix.LOCK_EX|unix.LOCK_NB)
	return !errors.Is(err, unix.EWOULDBLOCK)
}

// names counts the names that a file has.
func names(info fs.FileInfo) uint64 {
	if s, ok := info.Sys().(*syscall.Stat_t); ok {
		return uint64(s.Nlink)
	}
	return 1
}

// keepOwner gives the new file the owner and group of the old one, as far as it may.
func keepOwner(f *os.File, old fs.FileInfo) {
	if s, ok := old.Sys().(*syscall.Stat_t); ok {
		_ = f.Chown(int(s.Uid), int(s.Gid))
	}
}

// inUse reports whether a rename failed because a program has the file open.
func inUse(error) bool { return false }

// syncFolder makes a rename last through a loss of power; not every disk can.
func syncFolder(dir string) {
	if d, err := os.Open(dir); err == nil {
		_ = d.Sync()
		_ = d.Close()
	}
}

// noName is for systems that refuse letters in names.
func noName(error) bool { return false }
