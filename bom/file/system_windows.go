package file

import (
	"errors"
	"io/fs"
	"os"

	"golang.org/x/sys/windows"
)

const (
	doNotWait = 0
	doNotLink = 0
)

// closeFirst: whether a file must be closed before it is renamed.
const closeFirst = true

// lock takes a file for this process alone until it is closed; false if another has it.
func lock(f *os.File) bool {
	err := windows.LockFileEx(windows.Handle(f.Fd()), windows.LOCKFILE_EXCLUSIVE_LOCK|windows.LOCKFILE_FAIL_IMMEDIATELY, 0, 1, 0, &windows.Overlapped{OffsetHigh: 0x7fffffff})
	return !errors.Is(err, windows.ERROR_LOCK_VIOLATION)
}

func names(fs.FileInfo) uint64 { return 1 }

func keepOwner(*os.File, fs.FileInfo) {}

// inUse reports whether a rename failed because a program has the file open: spreadsheet
// programs hold a workbook that they show.
func inUse(err error) bool { return heldOnWindows(err) }

func syncFolder(string) {}

// noName reports whether nothing can stand at a path, for Windows takes no such name.
func noName(err error) bool { return errors.Is(err, windows.ERROR_INVALID_NAME) }
