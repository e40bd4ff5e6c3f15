package file

import (
	"bufio"
	"crypto/sha256"
	"encoding/hex"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"syscall"
)

// Output is a place that is to be written, as it was found before the work began.
type Output struct {
	Force bool // a file that is marked as not to be written may be written over

	given string      // as the user wrote it
	path  string      // behind its links
	old   fs.FileInfo // nil: nothing stands there

	// How the system moves a file, and says that a program has it open.
	rename func(from, to string) error
	held   func(error) bool
}

// To looks at a place that is to be written. A link is followed, and stays a link.
//
// Errors: *[Error] for a folder, a pipe, a socket or a device; for a place in a folder that
// is not there; for one of the inputs, also under another name or through a link: an input
// is never written over.
func To(path string, inputs ...string) (*Output, error) {
	o := &Output{given: path, rename: os.Rename, held: inUse}
	if path == "" {
		return nil, &Error{Reason: "no file is named to write to", Remedy: "give its path"}
	}
	if err := deviceName(path); err != nil {
		return nil, err
	}
	var err error
	o.path, err = follow(path)
	switch {
	case errors.Is(err, syscall.ENOTDIR): // which Windows tells as a file that is not there
		return nil, noFolder(path)
	case err != nil:
		return nil, o.fails(err)
	}
	o.old, err = os.Stat(o.path)
	switch {
	case errors.Is(err, fs.ErrNotExist):
		o.old = nil
	case err != nil:
		return nil, o.fails(err)
	case o.old.IsDir():
		return nil, &Error{Path: path, Reason: "this is a folder, not a file", Remedy: "name a file in it"}
	case !o.old.Mode().IsRegular():
		return nil, &Error{Path: path, Reason: fmt.Sprintf("this is %s, and is never written to", kind(o.old.Mode())), Remedy: "name a file on a disk"}
	}
	dir, err := os.Stat(filepath.Dir(o.path))
	if err != nil {
		return nil, o.fails(err)
	}
	if !dir.IsDir() {
		return nil, noFolder(path)
	}
	for _, in := range inputs {
		info, err := os.Stat(in)
		if err == nil && o.old != nil && os.SameFile(info, o.old) {
			return nil, &Error{Path: path, Reason: "this is what is read, and is never written over", Remedy: "choose another name"}
		}
	}
	return o, nil
}

func noFolder(path string) error {
	return &Error{Path: path, Reason: "what should be its folder is none", Remedy: "name a file in a folder"}
}

// follow gives the path behind a chain of links; the last of it need not be there.
func follow(path string) (string, error) {
	for range 40 {
		info, err := os.Lstat(path)
		if errors.Is(err, fs.ErrNotExist) || err == nil && info.Mode()&fs.ModeSymlink == 0 {
			return path, nil
		}
		if err != nil {
			return "", err
		}
		to, err := os.Readlink(path)
		if err != nil {
			return "", err
		}
		if !filepath.IsAbs(to) {
			to = filepath.Join(filepath.Dir(path), to)
		}
		path = to
	}
	return "", errors.New("its links lead in a ring")
}

// Path is the place behind its links.
func (o *Output) Path() string { return o.path }

// Exists reports whether a file stood there when it was looked at.
func (o *Output) Exists() bool { return o.old != nil }

// Read reads the file that stood there; an error as of [Read], which names the path as it
// was given.
func (o *Output) Read(most Limit) ([]byte, error) {
	data, err := Read(o.path, most)
	if e := (*Error)(nil); errors.As(err, &e) {
		e.Path = o.given
	}
	return data, err
}

// Write fills a new file beside the place and moves it there once it is whole and on the
// disk. It keeps the old file's mode. A killed run leaves the file beside; the next run
// takes it up. Of two runs at once one writes and the other says so.
//
// Errors: *[Error] if it cannot be written, if fill fails, if someone wrote there since
// [To], or if another program has it open; the place is then as it was, and nothing is
// left beside it.
func (o *Output) Write(fill func(io.Writer) error) error {
	if o.old != nil && o.old.Mode().Perm()&0o200 == 0 && !o.Force {
		return &Error{Path: o.given, Reason: "this file is marked as not to be written", Remedy: "choose another name, or take the mark off"}
	}
	f, err := o.beside()
	if err != nil {
		return err
	}
	name := f.Name()
	err = o.put(f, fill)
	if err != nil {
		_ = os.Remove(name)
	}
	_ = f.Close()
	if err != nil {
		return o.fails(err)
	}
	syncFolder(filepath.Dir(o.path))
	return nil
}

// put fills the file beside and moves it to its place.
func (o *Output) put(f *os.File, fill func(io.Writer) error) error {
	w := bufio.NewWriterSize(f, 64<<10)
	err := fill(w)
	if err == nil {
		err = w.Flush()
	}
	if err == nil && o.old != nil {
		keepOwner(f, o.old)
		err = f.Chmod(o.old.Mode().Perm())
	}
	if err == nil {
		err = f.Sync()
	}
	if err == nil {
		err = o.unchanged()
	}
	if err == nil && closeFirst {
		err = f.Close()
	}
	if err == nil {
		err = o.move(f.Name())
	}
	return err
}

// move puts the whole file in its place. Where nothing stood a link is tried first: it
// fails where a rename would write over what came there this moment.
func (o *Output) move(part string) error {
	if o.old == nil {
		err := os.Link(part, o.path)
		if err == nil {
			return os.Remove(part)
		}
		if errors.Is(err, fs.ErrExist) {
			return errMeanwhile
		}
	}
	return o.rename(part, o.path)
}

var errMeanwhile = errors.New("it was changed meanwhile; run the command again")

// unchanged fails if someone wrote there since it was looked at.
func (o *Output) unchanged() error {
	now, err := os.Lstat(o.path)
	switch {
	case o.old == nil && errors.Is(err, fs.ErrNotExist):
		return nil
	case err != nil:
		return err
	case o.old == nil || !os.SameFile(now, o.old) || !now.ModTime().Equal(o.old.ModTime()) || now.Size() != o.old.Size():
		return errMeanwhile
	}
	return nil
}

// beside makes, or takes up from a killed run, the file in which the new one is written.
// It is locked while a run has it.
func (o *Output) beside() (*os.File, error) {
	name := partName(o.path)
	for range 10 {
		f, err := os.OpenFile(name, os.O_RDWR|os.O_CREATE|doNotWait|doNotLink, 0o666)
		if err != nil {
			return nil, o.fails(err)
		}
		info, err := f.Stat()
		if err != nil || !info.Mode().IsRegular() {
			_ = f.Close()
			return nil, &Error{Path: o.given, Reason: "what stands beside it as " + filepath.Base(name) + " is not a file of this program", Remedy: "look at it, and take it away"}
		}
		if !lock(f) {
			_ = f.Close()
			return nil, &Error{Path: o.given, Reason: "another run is writing it at this moment", Remedy: "wait for it, and run the command again"}
		}
		// The run before may have moved it to its place between our opening and locking.
		now, err := os.Lstat(name)
		switch {
		case err != nil || !os.SameFile(info, now):
			_ = f.Close()
			continue
		case names(info) > 1: // moved to its place, and not yet taken away; or put there by someone
			_ = os.Remove(name)
			_ = f.Close()
			continue
		}
		if err := f.Truncate(0); err != nil {
			_ = f.Close()
			return nil, o.fails(err)
		}
		return f, nil
	}
	return nil, &Error{Path: o.given, Reason: "other runs are writing it at this moment", Remedy: "wait for them, and run the command again"}
}

// partName is the file beside: hidden, and of one name, so that what a killed run leaves
// is found again.
func partName(path string) string {
	dir, name := filepath.Split(path)
	if len(name) > 200 { // names of files end at 255 bytes
		sum := sha256.Sum256([]byte(name))
		name = hex.EncodeToString(sum[:16])
	}
	return filepath.Join(dir, "."+name+".handtight-part")
}

// fails says why a place cannot be written.
func (o *Output) fails(err error) error {
	if e := (*Error)(nil); errors.As(err, &e) {
		return err
	}
	e := &Error{Path: o.given, Err: err, Reason: "it cannot be written", Remedy: "choose another name or folder"}
	if o.old != nil {
		e.Reason += ", and is as it was"
	}
	switch {
	case o.held(err):
		e.Reason += ": a program has it open"
		e.Remedy = "close it there, and run the command again"
		return e
	case errors.Is(err, fs.ErrNotExist):
		e.Reason = "it cannot be written: its folder is not there"
		e.Remedy = "make the folder first, or name another one"
		return e
	case errors.Is(err, errMeanwhile):
		e.Reason, e.Remedy = "it is as it was found: it was changed meanwhile", "run the command again"
		return e
	}
	cause := Cause(err)
	if cause == "" {
		cause = err.Error()
	}
	e.Reason += ": " + cause
	return e
}
