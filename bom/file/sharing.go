package file

import (
	"errors"
	"os"
	"syscall"
)

// heldOnWindows reports whether an error of Windows says that another program has the file
// open. Access denied says so only of a rename: of a file that is made it means that the
// folder may not be written to, which nothing that is closed would mend.
//
// Source: Microsoft, "System Error Codes (0-499)": 5 access denied, 32 sharing violation,
// 33 lock violation (memory).
func heldOnWindows(err error) bool {
	var code syscall.Errno
	if !errors.As(err, &code) {
		return false
	}
	var moved *os.LinkError
	return code == 32 || code == 33 || code == 5 && errors.As(err, &moved)
}
