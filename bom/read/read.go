package read

import (
	"errors"
	"fmt"
	"path/filepath"
	"slices"
	"strconv"
	"strings"

	"handtight/bom/build"
	"handtight/bom/file"
	"handtight/bom/money"
	"handtight/bom/source"
	"handtight/catalog"
	"handtight/pressure/nearest"
	"handtight/pressure/pattern"
	"handtight/pressure/quantity"
	"handtight/threads"
	"handtight/threads/title"
)

// Read reads a build file and what it includes. It gives the build, or every
// file error at once: nothing is half-read. The path is used as the user wrote it.
func Read(path string) (*build.Build, source.Faults) { return ReadWith(path, Options{}) }

// Options say how a build is read.
type Options struct {
	Outside bool               // includes may lie outside the build's folder
	Listen  func(source.Asked) // is told every question that is put to the files; nil: nobody
}

// ReadWith is [Read] with options.
func ReadWith(path string, o Options) (*build.Build, source.Faults) {
	text, faults := source.ReadFile(path)
	if len(faults) > 0 {
		return nil, faults
	}
	return ParseWith(path, text, o)
}

// Parse reads a build file whose text is at hand; includes are read from disk,
// relative to the file.
func Parse(path string, text []byte) (*build.Build, source.Faults) {
	return ParseWith(path, text, Options{})
}

// ParseWith is [Parse] with options.
func ParseWith(path string, text []byte, o Options) (*build.Build, source.Faults) {
	r := parse(path, text, o, nil)
	if len(r.faults) > 0 {
		faults := r.withoutWhatComesOfSlips(path, text, o)
		faults.Sort()
		return nil, faults
	}
	return r.build, nil
}

// withoutWhatComesOfSlips are the faults of a build some of whose keys may be misspelt: read again
// with these keys as they were meant, so that a slip is one fault, whatever misses its key.
func (r *reader) withoutWhatComesOfSlips(path string, text []byte, o Options) source.Faults {
	mended := map[string][]byte{}
	var slips source.Faults
	for _, src := range r.readers {
		if text, list, ok := src.Mended(); ok {
			mended[src.Document().File()] = text
			slips = append(slips, list...)
		}
	}
	if len(mended) == 0 {
		return r.faults
	}
	if better, ok := mended[path]; ok {
		text = better
	}
	again := parse(path, text, Options{Outside: o.Outside}, mended)
	for _, f := range again.faults {
		onSlip := func(s source.Fault) bool { return s.File == f.File && s.Line == f.Line }
		before := func(b source.Fault) bool { return b.File == f.File && b.Line == f.Line && b.Reason == f.Reason }
		if !slices.ContainsFunc(slips, onSlip) || slices.ContainsFunc(r.faults, before) {
			slips = append(slips, f)
		}
	}
	return slips
}

// parse reads a build; mended are texts of files that are taken in place of what is on the disk.
func parse(path string, text []byte, o Options, mended map[string][]byte) *reader {
	r := &reader{
		outside: o.Outside, listen: o.Listen, mended: mended,
		build: &build.Build{File: path, ByID: map[string]*build.Item{}}, ends: map[string]endRead{}, unsure: map[string]unsureEnd{}, rows: map[*catalog.Kind][]*carriedRow{}, made: map[string][]*catalog.Material{},
		vendors: map[string]*build.Vendor{}, kinds: slices.DeleteFunc(catalog.KindNames(), func(name string) bool { return catalog.IsKind(name, catalog.Hose) }), // a [[hose]] is no [[item]]
	}
	if r.file(path, text, true) && !r.misspelt {
		r.link() // of a section whose name is not known, all that names its parts would be at fault too
	}
	for _, src := range r.readers {
		r.faults = append(r.faults, src.Faults()...)
	}
	return r
}

// reader reads the files of one build.
type reader struct {
	outside     bool
	listen      func(source.Asked)
	mended      map[string][]byte // files whose keys are written as they were meant
	build       *build.Build
	main        *source.Table
	tables      []*source.Table // roots of all files, the build's own first
	readers     []*source.Reader
	faults      source.Faults
	ends        map[string]endRead
	unsure      map[string]unsureEnd
	rows        map[*catalog.Kind][]*carriedRow
	made        map[string][]*catalog.Material // what the texts of materials name
	vendors     map[string]*build.Vendor
	kinds       []string
	kindsListed bool // the list of kinds has been told
	misspelt    bool // a section has a name that is not known
	read        int  // items and hoses so far
	bytes       int  // of the included files so far
	steps       int  // of all paths so far
	offers      []offerLine
	runs        []*source.Table
	jointNotes  []*source.Table
	endNotes    []*source.Table
}

// endRead is what an end's text gave: the same words are read once.
type endRead struct {
	end threads.EndReading
	err error
}

// file reads one file, and of the build's own the includes.
func (r *reader) file(path string, text []byte, main bool) bool {
	r.build.Files = append(r.build.Files, path)
	doc, faults := source.Parse(path, text)
	if len(faults) > 0 {
		r.faults = append(r.faults, faults...)
		return false
	}
	src := source.NewReader(doc)
	r.readers = append(r.readers, src)
	src.Listen(r.listen)
	root := src.Root()
	r.tables = append(r.tables, root)
	if main {
		r.head(root)
	}
	r.vendorTables(root)
	ok := r.parts(root)
	r.offerTables(root)
	r.optionTables(root)
	if main {
		r.runs = root.Tables("run")
		r.jointNotes = root.Tables("joint")
		r.endNotes = root.Tables("end")
		r.auditTable(root)
		if b, has := root.Table("build"); has {
			ok = r.includes(b, path) && ok
			b.Known("name", "currency", "include", "plugged", "left_open", "origin")
			b.Done()
		}
	}
	r.misspelt = r.misspelt || len(root.Unknown()) > 0
	root.Done()
	if main {
		r.main = root
	}
	return ok
}

// includes reads the files that a build names: such as lie in its folder or below it, so
// that a build from elsewhere does not read what is none of its business.
func (r *reader) includes(b *source.Table, path string) bool {
	names := b.Texts("include", "our-fittings.toml")
	if len(names) > mostIncludes {
		b.Fault("include", fmt.Sprintf("it names %d files, and the most is %d", len(names), mostIncludes), "put several of them into one file")
		return false
	}
	ok := true
	fault := func(i int, reason, remedy string) {
		b.FaultAt(reason, remedy, "include", i)
		ok = false
	}
	taken := []file.ID{file.IDOf(path)}
	words := []string{filepath.Clean(path)}
	for i, name := range names {
		if file.Absolute(name) {
			fault(i, fmt.Sprintf("`%s` is the path of a file from the root of a disk, and such are not included", name), "copy the file into the build's folder, and write its path from there")
			continue
		}
		full := filepath.Join(filepath.Dir(path), filepath.FromSlash(name))
		id := file.IDOf(full)
		if at := slices.IndexFunc(taken, id.Same); at >= 0 || slices.Contains(words, filepath.Clean(full)) {
			reason := "`%s` is included twice"
			if at == 0 || filepath.Clean(full) == words[0] {
				reason = "`%s` includes itself"
			}
			fault(i, fmt.Sprintf(reason, name), "take the name out of `include`; a file is read once")
			continue
		}
		if !r.outside && !file.Within(filepath.Dir(path), full) {
			fault(i, fmt.Sprintf("`%s` lies outside the build's folder, and is not read unless you say so", name), "copy it into the folder, or say --outside if you trust the build")
			continue
		}
		text, faults := source.ReadFile(full)
		if len(faults) > 0 {
			for _, f := range faults {
				remedy := f.Remedy
				if strings.Contains(name, `\`) {
					remedy = "write folders with / in place of \\; it means the same on every system"
				}
				fault(i, fmt.Sprintf("the included file `%s` cannot be read: %s", name, f.Reason), remedy)
			}
			continue
		}
		if better, has := r.mended[full]; has {
			text = better
		}
		if r.bytes += len(text); r.bytes > source.MaxBytes {
			fault(i, fmt.Sprintf("with `%s` the files of this build are larger than %d MiB, and that is the most", name, source.MaxBytes>>20), "keep in them what this build uses")
			return false
		}
		taken, words = append(taken, id), append(words, filepath.Clean(full))
		ok = r.file(full, text, false) && ok
	}
	return ok
}

// link ties names to things once all files are read.
func (r *reader) link() {
	for _, it := range r.build.Items {
		it.Made = r.materials(it.Material)
	}
	r.hoseStock()
	r.contents()
	r.vessels()
	r.recoveryStall()
	for _, t := range r.runs {
		r.run(t)
	}
	r.resolveOffers()
	r.resolveOptions()
	r.refs()
	r.notes()
	r.needs()
}

// quantityOf is a text that is read as a quantity of one sort.
type quantityOf[T any] struct{ text string }

// take reads a quantity with its unit; nil when the key is missing or faulty. What it
// points to is shared by all that have the same words, and must not be changed.
func take[T any](t *source.Table, key, hint string, parse func(string) (T, error)) *T {
	text, ok := t.Text(key, hint)
	t.Amount(key, hint)
	if !ok {
		return nil
	}
	if v, known := t.Recall(quantityOf[T]{text}); known {
		return v.(*T)
	}
	v, err := parse(text)
	if err == nil {
		t.Remember(quantityOf[T]{text}, &v)
		return &v
	}
	var figure *quantity.Error
	if errors.As(err, &figure) && bare.MatchString(text) {
		figure.Remedy = proposal.ReplaceAllString(figure.Remedy, "write "+strconv.Quote(withUnit(text, hint)))
	}
	refuse(t, key, err, "write it like "+`"`+hint+`"`)
	return nil
}

// proposal is what a remedy proposes to write.
var proposal = pattern.New(`^write "[^"]*"`)

// bare is a number, or a fraction, that no unit follows.
var bare = pattern.New(`^\s*[0-9][0-9./ -]*$`)

// withUnit gives a bare number the unit of the key's example; a fraction is of an inch.
func withUnit(text, hint string) string {
	text = strings.TrimSpace(text)
	_, unit, _ := strings.Cut(hint, " ")
	if strings.Contains(text, "/") {
		unit = "in"
	}
	return text + " " + unit
}

// refuse reports a value that could not be read: what was found, why it is not taken,
// and what to write; the remedy is for an error that brings none of its own.
func refuse(t *source.Table, key string, err error, remedy string) {
	var (
		figure *quantity.Error
		sum    *money.InputError
		code   *money.CodeError
	)
	switch {
	case errors.As(err, &figure):
		t.Fault(key, fmt.Sprintf("`%s` %s", figure.Text, figure.Reason), figure.Remedy)
	case errors.As(err, &sum):
		t.Fault(key, fmt.Sprintf("`%s` %s", sum.Text, sum.Reason), sum.Remedy)
	case errors.As(err, &code):
		if code.Nearest != "" {
			remedy = fmt.Sprintf("did you mean %s? %s", code.Nearest, remedy)
		}
		t.Fault(key, fmt.Sprintf("`%s` is not a currency code", code.Code), remedy)
	default:
		t.Fault(key, err.Error(), remedy)
	}
}

// wish reads one of a few words.
func wish(t *source.Table, key string, words ...string) string {
	text, ok := t.Text(key, words[0])
	t.Words(key, words...)
	if !ok {
		return ""
	}
	if slices.Contains(words, text) {
		return text
	}
	t.Fault(key, fmt.Sprintf("`%s` is not a word for `%s`", text, key), "write one of "+build.InWords(words))
	return ""
}

// end reads an end's text, once for all ports that have the same words.
func (r *reader) end(text string) (threads.EndReading, error) {
	got, ok := r.ends[text]
	if !ok {
		got.end, got.err = title.ReadEnd(text)
		r.ends[text] = got
	}
	return got.end, got.err
}

// near adds the nearest known name to a remedy.
func near(word string, known []string, remedy string) string {
	if n, ok := nearest.Of(word, known); ok {
		return fmt.Sprintf("did you mean `%s`? %s", n, remedy)
	}
	return remedy
}
