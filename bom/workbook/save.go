package workbook

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"path/filepath"
	"strings"

	"handtight/bom/file"
)

// Report says what Save did.
type Report struct {
	Path     string
	Before   string // the last issue, kept beside; "" if the book is the first or says the same
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
// beside the path and put there whole, or not at all. The inputs are the files
// that the content was made from: none of them is written over.
//
// Errors: *ForeignFileError when another file stands there, unless force is set;
// *ContentError as for [Write]; *file.Error when the path is no place for a file,
// does not end in .xlsx, is an input, or cannot be written.
func Save(path string, c Content, force bool, inputs ...string) (Report, error) {
	rep := Report{Path: path}
	k, err := count(c)
	if err != nil {
		return rep, err
	}
	out, err := target(path, force, inputs)
	if err != nil {
		return rep, err
	}
	was, err := earlierIssue(out, path, c, force, &rep)
	if err != nil {
		return rep, err
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
	if rep.Reissued {
		if rep.Before, err = keepBefore(out, buf.Bytes()); err != nil {
			return rep, err
		}
	}
	rep.Kept, rep.SetAside, rep.Changed = placed.kept, len(placed.aside), placed.changed
	return rep, out.Write(func(w io.Writer) error {
		_, err := buf.WriteTo(w)
		return err
	})
}

// keepBefore copies the book that stands there to a name of its own, unless the new one is
// the same to the byte: formats, comments and pictures of the buyer's are not carried over.
func keepBefore(out *file.Output, issue []byte) (string, error) {
	old, err := out.Read(bookLimit)
	if err != nil || bytes.Equal(old, issue) {
		return "", err
	}
	return out.Aside(bookLimit)
}

// earlierIssue reads the book of ours that stands there; nothing if there is none, or a
// file that is to be written over.
func earlierIssue(out *file.Output, path string, c Content, force bool, rep *Report) (earlier, error) {
	if !out.Exists() {
		return earlier{}, nil
	}
	data, err := out.Read(bookLimit)
	if err != nil {
		return earlier{}, fmt.Errorf("what was typed into it would be lost: %w", err)
	}
	was, err := readBook(bytes.NewReader(data))
	var foreign *notOurs
	switch {
	case err == nil:
		rep.Reissued = true
		if was.title != clean(c.Title) {
			rep.Other = was.title
		}
	case !errors.As(err, &foreign):
		return earlier{}, err
	case !force:
		return earlier{}, &ForeignFileError{path, foreign.why}
	}
	return was, nil
}

// bookLimit bounds a workbook that stands where one is to be written.
var bookLimit = file.Limit{Bytes: maxFile, Remedy: "choose another name with -o"}

// target looks at the place of the book.
func target(path string, force bool, inputs []string) (*file.Output, error) {
	out, err := file.To(path, inputs...)
	if err != nil {
		return nil, err
	}
	if ext := filepath.Ext(path); !strings.EqualFold(ext, ".xlsx") {
		return nil, &file.Error{Path: path, Reason: "this does not end in .xlsx, and spreadsheet programs go by the ending",
			Remedy: "write " + strings.TrimSuffix(path, ext) + ".xlsx"}
	}
	out.Force = force
	if who, open := out.OpenElsewhere(); open && !force {
		return nil, &file.Error{Path: path, Reason: "this seems to be open in another program, " + who,
			Remedy: "save and close it there, then run the command again; --force if it is not open"}
	}
	return out, nil
}
