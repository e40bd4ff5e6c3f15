package file

import (
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"strings"
	"syscall"
	"time"
)

// Limit is how much of a file is taken, and what to do about a larger one.
type Limit struct {
	Bytes  int64
	Remedy string // "split it ..."
}

// wait is how long a disk, or the one who writes into standard input, may take.
const wait = 60 * time.Second

// Error says why a file cannot be read or written, and what to do. Path is as the user
// gave it, and no other path is named.
type Error struct {
	Path   string
	Reason string // "there is no such file"
	Remedy string
	Err    error // the system's own error; nil if there is none
}

// Error gives the path, the reason and the remedy in one line.
func (e *Error) Error() string {
	text := e.Reason
	if e.Path != "" {
		text = e.Path + ": " + text
	}
	if e.Remedy != "" {
		text += "; " + e.Remedy
	}
	return Name(text)
}

// Unwrap gives the system's own error.
func (e *Error) Unwrap() error { return e.Err }

// Read reads a regular file of at most the limit's bytes; links are followed.
//
// Errors: *[Error], at once and without opening it, for what is no regular file; for a
// missing file with the nearest name of its folder; for one that is too large, having read
// no more than the limit; and for one that takes longer than wait.
func Read(path string, most Limit) ([]byte, error) {
	return read(path, most, wait)
}

func read(path string, most Limit, wait time.Duration) ([]byte, error) {
	if path == "" {
		return nil, &Error{Reason: "no file is named", Remedy: "give the path of a file"}
	}
	if err := deviceName(path); err != nil {
		return nil, err
	}
	return within(path, wait, func() ([]byte, error) {
		info, err := os.Stat(path)
		if err != nil {
			return nil, unreadable(path, err)
		}
		if err := plainFile(path, info, most); err != nil {
			return nil, err
		}
		f, err := os.OpenFile(path, os.O_RDONLY|doNotWait, 0)
		if err != nil {
			return nil, unreadable(path, err)
		}
		defer f.Close()
		// What was looked at may have been changed for something else since.
		if info, err = f.Stat(); err != nil {
			return nil, unreadable(path, err)
		}
		if err := plainFile(path, info, most); err != nil {
			return nil, err
		}
		return readAll(path, f, most)
	})
}

// ReadFrom reads a stream, such as standard input, under a name for its errors.
//
// Errors: *[Error] if it fails, is larger than the limit, or does not end within wait.
func ReadFrom(r io.Reader, name string, most Limit) ([]byte, error) {
	return within(name, wait, func() ([]byte, error) { return readAll(name, r, most) })
}

func readAll(path string, r io.Reader, most Limit) ([]byte, error) {
	data, err := io.ReadAll(io.LimitReader(r, most.Bytes+1))
	if err != nil {
		return nil, unreadable(path, err)
	}
	if int64(len(data)) > most.Bytes {
		return nil, tooLarge(path, most)
	}
	return data, nil
}

// within gives up on work that does not end in time; a disk on a network may never answer.
func within(path string, wait time.Duration, work func() ([]byte, error)) ([]byte, error) {
	type answer struct {
		data []byte
		err  error
	}
	done := make(chan answer, 1)
	go func() {
		data, err := work()
		done <- answer{data, err}
	}()
	late := time.NewTimer(wait)
	defer late.Stop()
	select {
	case a := <-done:
		return a.data, a.err
	case <-late.C:
		return nil, &Error{Path: path, Reason: fmt.Sprintf("it was not read to its end within %v", wait), Remedy: "copy it to a disk of this machine"}
	}
}

// plainFile refuses what is no regular file, and what says that it is too large.
func plainFile(path string, info fs.FileInfo, most Limit) error {
	switch {
	case info.IsDir():
		return folder(path)
	case !info.Mode().IsRegular():
		return &Error{Path: path, Reason: fmt.Sprintf("this is %s, not a file", kind(info.Mode())), Remedy: "name a file on a disk"}
	case info.Size() > most.Bytes:
		return tooLarge(path, most)
	}
	return nil
}

// kind says what stands at a path that is no regular file.
func kind(mode fs.FileMode) string {
	switch {
	case mode.IsDir():
		return "a folder"
	case mode&fs.ModeNamedPipe != 0:
		return "a pipe"
	case mode&fs.ModeSocket != 0:
		return "a socket"
	case mode&fs.ModeDevice != 0:
		return "a device"
	}
	return "something special of the system"
}

func tooLarge(path string, most Limit) error {
	size := fmt.Sprintf("%d MiB", most.Bytes>>20)
	if most.Bytes < 1<<20 {
		size = fmt.Sprintf("%d bytes", most.Bytes)
	}
	return &Error{Path: path, Reason: "this file is larger than " + size, Remedy: most.Remedy}
}

// unreadable says in plain words why a file cannot be read.
func unreadable(path string, err error) error {
	e := &Error{Path: path, Err: err}
	switch {
	case errors.Is(err, fs.ErrNotExist), errors.Is(err, syscall.ENOTDIR): // Windows tells a file in a folder's place as no folder
		e.Reason, e.Remedy = "there is no such file", missing(path)
	case errors.Is(err, fs.ErrPermission):
		e.Reason, e.Remedy = "this file may not be read", "give yourself leave to read it, or copy it to a folder of your own"
	default:
		e.Reason, e.Remedy = "this file cannot be read", "check its name and the disk that it is on"
		if cause := Cause(err); cause != "" {
			e.Reason += ": " + cause
		}
	}
	return e
}

// Cause strips a system's error down to its cause, "" if it has none apart: the paths in
// it are not the user's words.
func Cause(err error) string {
	if p := (*fs.PathError)(nil); errors.As(err, &p) {
		return p.Err.Error()
	}
	if l := (*os.LinkError)(nil); errors.As(err, &l) {
		return l.Err.Error()
	}
	if s := (*os.SyscallError)(nil); errors.As(err, &s) {
		return s.Err.Error()
	}
	return ""
}

// Name makes a path fit to stand in a sentence: line ends and other control characters
// would let a file's name write lines of its own.
func Name(path string) string {
	return strings.Map(func(r rune) rune {
		if r < ' ' || r >= 0x7f && r < 0xa0 || r == '\u2028' || r == '\u2029' {
			return '\ufffd'
		}
		return r
	}, path)
}
