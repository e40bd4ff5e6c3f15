package workbook

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"path/filepath"
	"slices"
	"strings"

	"handtight/bom/file"
)

// Report says what Save did.
type Report struct {
	Path     string
	Before   string   // the last issue, kept beside; "" if the book is the first or says the same
	Reissued bool     // a book of ours stood there, and what was typed into it was read
	Kept     int      // cells and comments that stand in their places again
	SetAside int      // rows on the sheet "Set aside"
	Besides  int      // rows under the table, bought besides the list
	Other    string   // the build that the book was made for, if it was another one
	Lost     []string // what stays in the last issue alone: charts, say
	Partial  string   // why only the straw cells could be read; "" if everything could
	// Ask tells of rows that read as a line of the build: whether they stand in its place is
	// never guessed.
	Ask []string
	// Changed tells of lines whose order number, price or needed rating is not the last
	// issue's, those first that the buyer had marked as ordered; and of figures that both the
	// build and the buyer changed: one sentence each.
	Changed []string
}

// ForeignFileError says that a file stands at the path which is not a workbook of
// ours, or that cannot be read. It has been left as it was.
type ForeignFileError struct {
	Path string
	Why  string // what was found
}

// Error names the file, what was found in it, and what to do.
func (e *ForeignFileError) Error() string {
	return fmt.Sprintf("%s stays as it is, for it would be lost: %s. "+
		"Choose another name with -o, or write over it with --force", e.Path, e.Why)
}

// Save writes the workbook for a Content at path. A book of ours that stands there is issued
// again: what was typed into it is kept by the keys of its rows, and what has no row any more
// goes onto a sheet "Set aside"; the book of before is kept beside under a number. The book is
// made beside the path and put there whole, or not at all. The inputs are the files
// that the content was made from: none of them is written over.
//
// Errors: *ForeignFileError when another file stands there, unless force is set;
// *ContentError when the Content contradicts itself; *file.Error when the path is no place for a file,
// does not end in .xlsx, is an input, is open in another program, or cannot be written.
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
	carried, err := carriedFrom(out, path, k, force, &rep)
	if err != nil {
		return rep, err
	}
	if carried.old != nil {
		defer carried.old.Close()
	}
	buf, b, err := issueOf(k, carried, &rep)
	if err != nil {
		return rep, err
	}
	if rep.Reissued {
		if rep.Before, err = keepBefore(out, buf.Bytes()); err != nil {
			return rep, err
		}
	}
	if rep.Before != "" {
		b.parts.number++
		buf.Reset()
		if err := b.parts.write(buf); err != nil {
			return rep, err
		}
	}
	return rep, out.Write(func(w io.Writer) error {
		_, err := buf.WriteTo(w)
		return err
	})
}

// issueOf makes the book, and says what became of what was carried over.
func issueOf(k *counted, c *carry, rep *Report) (*bytes.Buffer, *book, error) {
	rep.Changed = append(c.between(k), c.both(k)...)
	rep.Ask = c.asks(k)
	rep.Besides = c.besides
	for _, x := range c.changes {
		if row := (rowID{x.id.sheet, x.id.key}); x.id.sheet == buyName && strings.HasPrefix(x.id.key, "line|") {
			c.changed[row] = "You wrote over this row: sheet Set aside has it."
		}
	}
	var buf bytes.Buffer
	b, err := writeBook(&buf, k, c)
	if err != nil {
		return nil, nil, err
	}
	rep.Kept, rep.SetAside, rep.Lost = c.taken, b.aside, slices.Compact(slices.Sorted(slices.Values(c.lost)))
	return &buf, b, nil
}

// keepBefore copies the book that stands there to a name of its own, unless the new one is
// the same to the byte: formats and pictures of the buyer's are not all carried over.
func keepBefore(out *file.Output, issue []byte) (string, error) {
	old, err := out.Read(bookLimit)
	if err != nil || bytes.Equal(old, issue) {
		return "", err
	}
	return out.Aside(bookLimit)
}

// carriedFrom reads the book of ours that stands there; nothing if there is none, or a
// file that is to be written over.
func carriedFrom(out *file.Output, path string, k *counted, force bool, rep *Report) (*carry, error) {
	if !out.Exists() {
		return newCarry(), nil
	}
	data, err := out.Read(bookLimit)
	if err != nil {
		return nil, fmt.Errorf("what was typed into it would be lost: %w", err)
	}
	e, err := readEarlier(data)
	var foreign *notOurs
	switch {
	case err == nil:
	case !errors.As(err, &foreign):
		return nil, err
	case force:
		return newCarry(), nil
	default:
		return nil, &ForeignFileError{path, foreign.why}
	}
	rep.Reissued = true
	if e.title != clean(k.Title) {
		rep.Other = e.title
	}
	switch {
	case e.marks != nil:
		rep.Partial = "it is of an earlier version: only its straw-coloured cells could be read"
		e.marks.issue = e.number
		return e.marks, nil
	case !e.whole:
		rep.Partial = "its hidden copy is gone: only its straw-coloured cells could be read, and what was typed over others is not told"
	}
	return e.carryOver(), nil
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
