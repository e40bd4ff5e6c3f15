package workbook

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"strings"

	"github.com/xuri/excelize/v2"
)

// Report says what Save did.
type Report struct {
	Path     string
	Reissued bool   // a book of ours stood there, and its marks were read
	Kept     int    // marks that stand in their rows again
	SetAside int    // rows on the sheet "Set aside"
	Other    string // the build that the book was made for, if it was another one
	// Changed tells of lines that the buyer had marked as ordered, and of which
	// another number is due now; then of lines whose order number, price or needed
	// rating is not the last issue's: one sentence each.
	Changed []string
}

// ForeignFileError says that a file stands at the path which is not a workbook of
// ours, or whose marks cannot be read. It has been left as it was.
type ForeignFileError struct {
	Path string
	Why  string // what was found
}

// Error names the file, what was found in it, and what to do.
func (e *ForeignFileError) Error() string {
	return fmt.Sprintf("%s stays as it is, for it would be lost: %s. "+
		"Choose another name with -o, or write over it with --force", e.Path, e.Why)
}

// Save writes the workbook for a Content at path. A book of ours that stands
// there is issued again: what was typed into it is kept, by shop and line key,
// and what has no row any more goes onto a sheet "Set aside". The book is made
// beside the path and put there whole, or not at all.
//
// Errors: *ForeignFileError when another file stands there, unless force is set;
// *ContentError as for [Write]; an error that says what to do when the path is a
// directory, does not end in .xlsx, or cannot be written.
func Save(path string, c Content, force bool) (Report, error) {
	rep := Report{Path: path}
	k, err := count(c)
	if err != nil {
		return rep, err
	}
	target, old, err := lookAt(path)
	if err != nil {
		return rep, err
	}
	var was earlier
	if old != nil {
		was, err = readFile(target)
		var foreign *notOurs
		switch {
		case err == nil:
			rep.Reissued = true
			if title := readTitle(target); title != clean(c.Title) {
				rep.Other = title
			}
		case !errors.As(err, &foreign):
			return rep, fmt.Errorf("%s cannot be read, so what was typed into it would be lost: %w; make it readable, or choose another name with -o",
				path, reason(err))
		case !force:
			return rep, &ForeignFileError{path, foreign.why}
		}
	}
	placed := place(k, was.marks)
	placed.since(k, was.lines)
	if was.titles != nil {
		placed.titles = was.titles
	}
	var buf bytes.Buffer
	if err := write(&buf, k, placed); err != nil {
		return rep, err
	}
	rep.Kept, rep.SetAside, rep.Changed = placed.kept, len(placed.aside), placed.changed
	return rep, replace(target, old, func(w io.Writer) error {
		_, err := buf.WriteTo(w)
		return err
	})
}

// lookAt finds what stands at the path, behind a link too; old is nil if nothing.
func lookAt(path string) (target string, old fs.FileInfo, err error) {
	target = path
	if real, err := filepath.EvalSymlinks(path); err == nil {
		target = real
	}
	old, err = os.Stat(target)
	switch {
	case errors.Is(err, fs.ErrNotExist):
		old = nil
	case err != nil:
		return "", nil, fmt.Errorf("%s cannot be written: %w", path, reason(err))
	case old.IsDir():
		return "", nil, fmt.Errorf("%s is a directory; name a file in it, such as %s", path, filepath.Join(path, "order.xlsx"))
	case !old.Mode().IsRegular():
		return "", nil, fmt.Errorf("%s is not a plain file; choose another name", path)
	}
	if ext := filepath.Ext(path); !strings.EqualFold(ext, ".xlsx") {
		return "", nil, fmt.Errorf("%s does not end in .xlsx, and spreadsheet programs go by the ending; write %s",
			path, strings.TrimSuffix(path, ext)+".xlsx")
	}
	return target, old, nil
}

// readTitle gives the build that a book of ours was made for; "" if it cannot be told.
func readTitle(path string) string {
	f, err := excelize.OpenFile(path, excelize.Options{UnzipSizeLimit: unzippedLimit, UnzipXMLSizeLimit: unzippedLimit})
	if err != nil {
		return ""
	}
	defer f.Close()
	props, err := f.GetDocProps()
	if err != nil {
		return ""
	}
	return props.Title
}

func readFile(path string) (earlier, error) {
	f, err := os.Open(path)
	if err != nil {
		return earlier{}, err
	}
	defer f.Close()
	return readBook(f)
}

// replace writes a file beside the target and moves it there once it is whole.
// On a failure the target is as it was and nothing is left beside it.
func replace(target string, old fs.FileInfo, fill func(io.Writer) error) (err error) {
	f, err := newBeside(target)
	if err != nil {
		return fmt.Errorf("%s cannot be written: %w", target, reason(err))
	}
	defer func() {
		if err != nil {
			err = errors.Join(fmt.Errorf("%s cannot be written, and is as it was: %w", target, reason(err)),
				os.Remove(f.Name()))
		}
	}()
	err = fill(f)
	if err == nil && old != nil {
		err = f.Chmod(old.Mode().Perm())
	}
	if err == nil {
		err = f.Sync()
	}
	if shut := f.Close(); err == nil {
		err = shut
	}
	if err != nil {
		return err
	}
	if err = unchanged(target, old); err != nil {
		return err
	}
	return os.Rename(f.Name(), target)
}

// newBeside makes a new file in the target's folder, with the access rights that
// a new file has there.
func newBeside(target string) (*os.File, error) {
	dir, name := filepath.Split(target)
	for n := 0; ; n++ {
		f, err := os.OpenFile(filepath.Join(dir, fmt.Sprintf(".%s.%d.part", name, n)), os.O_WRONLY|os.O_CREATE|os.O_EXCL, 0o666)
		if !errors.Is(err, fs.ErrExist) || n == 100 {
			return f, err
		}
	}
}

// unchanged fails if someone wrote the target since its marks were read.
func unchanged(target string, old fs.FileInfo) error {
	now, err := os.Stat(target)
	switch {
	case old == nil && errors.Is(err, fs.ErrNotExist):
		return nil
	case err != nil:
		return err
	case old == nil || !now.ModTime().Equal(old.ModTime()) || now.Size() != old.Size():
		return errors.New("it was changed meanwhile; run the command again")
	}
	return nil
}

// reason strips a file error down to its cause: the path has been said already.
func reason(err error) error {
	var p *fs.PathError
	if errors.As(err, &p) {
		return p.Err
	}
	var l *os.LinkError
	if errors.As(err, &l) {
		return l.Err
	}
	return err
}
