package main

import (
	"fmt"
	"io"
	"path/filepath"
	"strings"

	"github.com/rogpeppe/go-internal/diff"
	"github.com/spf13/cobra"

	"handtight/bom/file"
	"handtight/bom/repair/fix"
	"handtight/bom/rule"
	"handtight/bom/source"
)

// fixFlags are the flags of check --fix.
type fixFlags struct {
	out              string
	dry, adapt, over bool
	only             []string
}

func (f *fixFlags) add(cmd *cobra.Command) {
	cmd.Flags().StringVar(&f.out, "fix", "", "write a copy of the build with its joints mended to this file, beside the build")
	cmd.Flags().BoolVar(&f.dry, "dry-run", false, "with --fix: show what it would change, and write nothing")
	cmd.Flags().BoolVar(&f.adapt, "adapt-only", false, "with --fix: never change a part for another")
	cmd.Flags().BoolVar(&f.over, "force", false, "with --fix: write over a file that stands there")
	cmd.Flags().StringSliceVar(&f.only, "only", nil, "with --fix: mend these findings alone, by their names")
}

type fixFacts struct {
	Edits   []fixEdit `json:"edits"`
	Left    []fixLeft `json:"left"`
	Diff    string    `json:"diff"`
	Written string    `json:"written"` // "" where nothing was
	Stops   int       `json:"stops"`   // in the mended build
}

type fixEdit struct {
	Slug string   `json:"slug"`
	At   string   `json:"place"`
	File string   `json:"file"` // of the build that was given, as is the line; "" and 0 where it has no place there
	Line int      `json:"line"`
	Do   string   `json:"do"`
	Buy  []string `json:"buy"`
	Text string   `json:"text"`
}

type fixLeft struct {
	Slug string `json:"slug"`
	At   string `json:"place"`
	Why  string `json:"why"`
}

// sameFolder reports whether two files lie in one folder, however their paths are written.
func sameFolder(a, b string) bool {
	x, errX := filepath.Abs(filepath.Dir(a))
	y, errY := filepath.Abs(filepath.Dir(b))
	return errX == nil && errY == nil && x == y
}

// fixBuild mends a copy of a build. The copy lies beside the build, so that its includes
// hold; the build itself is never written over.
func (a *app) fixBuild(path string, o *fixFlags) error {
	if path == stdin {
		return fmt.Errorf("--fix needs a build file: what it includes lies beside it")
	}
	if o.out == "" {
		return fmt.Errorf("--dry-run goes with --fix OUT, the file that would be written")
	}
	if !sameFolder(o.out, path) {
		return fmt.Errorf("%s lies in another folder than the build, and what it includes would not be found: write it to %s", o.out, filepath.Join(filepath.Dir(path), filepath.Base(o.out)))
	}
	for _, slug := range o.only {
		if _, ok := rule.Find(slug); !ok {
			return noFinding(slug)
		}
	}
	build, faults := a.read(path)
	if len(faults) > 0 {
		return faults
	}
	place, err := file.To(o.out, build.Files...)
	if err != nil {
		return err
	}
	if place.Exists() && !o.over && !o.dry {
		return fmt.Errorf("%s is there already and is kept: choose another name, or write over it with --force", o.out)
	}
	if place.Exists() && !o.dry {
		if _, faults := a.read(o.out); len(faults) > 0 {
			return fmt.Errorf("%s is there already and is no build file, so that it is kept with --force too: choose another name", o.out)
		}
	}
	text, err := file.Read(path, source.Limit)
	if err != nil {
		return err
	}
	r, err := fix.Build(path, text, fix.Options{Only: o.only, AdaptOnly: o.adapt, Outside: a.outside})
	if err != nil {
		return err
	}
	if r.Stops > 0 {
		a.status = exitStops
	}
	f := fixFactsOf(r)
	f.Diff = string(diff.Diff(path, text, o.out, r.Text))
	if !o.dry && len(r.Edits) > 0 {
		if err := place.Write(func(w io.Writer) error { _, err := w.Write(r.Text); return err }); err != nil {
			return err
		}
		f.Written = o.out
	}
	if a.json {
		return a.ui.printJSON(f)
	}
	a.printFix(path, &f)
	return nil
}

func fixFactsOf(r *fix.Result) fixFacts {
	f := fixFacts{Edits: []fixEdit{}, Left: []fixLeft{}, Stops: r.Stops}
	for _, e := range r.Edits {
		f.Edits = append(f.Edits, fixEdit(e))
	}
	for _, l := range r.Left {
		f.Left = append(f.Left, fixLeft(l))
	}
	return f
}

func (a *app) printFix(path string, f *fixFacts) {
	u := a.ui
	for _, line := range strings.Split(strings.TrimSuffix(f.Diff, "\n"), "\n") {
		u.line("%s", line)
	}
	u.line("")
	for _, e := range f.Edits {
		where := ""
		if e.Line > 0 {
			where = fmt.Sprintf(" (%s:%d)", filepath.Base(e.File), e.Line)
		}
		u.fold("  mended", fmt.Sprintf("%s, %s%s: %s", e.Slug, e.At, where, strings.Join(e.Buy, "; and ")))
	}
	for _, l := range f.Left {
		u.fold("  left", fmt.Sprintf("%s, %s: %s", l.Slug, l.At, l.Why))
	}
	if len(f.Edits) > 0 {
		u.say("", "No offer is known of what was put in: it stands on the list without a price. Ask for data sheets where a rating is left out.")
	}
	switch {
	case f.Written != "":
		u.line("Written: %s", f.Written)
	case len(f.Edits) == 0:
		u.line("Nothing was mended, and nothing is written.")
	default:
		u.line("Nothing is written: a dry run.")
	}
}
