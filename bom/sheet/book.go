package sheet

import (
	"archive/zip"
	"bytes"
	"encoding/xml"
	"errors"
	"fmt"
	"io"
	"path"
	"slices"
	"strings"
)

// The bounds within which a workbook is unpacked, whatever it is read for.
const (
	maxPart     = 32 << 20  // bytes of one part
	maxToken    = 1 << 20   // bytes without the end of a tag
	maxUnpacked = 96 << 20  // bytes of all parts that are read
	maxParts    = 2_000     // parts
	maxElements = 2_500_000 // elements of one part
	maxDepth    = 40        // elements inside elements
	maxSheets   = 100
	maxStrings  = 400_000 // shared texts
	maxText     = 24 << 20
)

// Limits are what a reader sets of its own. A figure of 0 is no sheet at all.
type Limits struct {
	Rows      int // that hold something, over all sheets
	Columns   int
	CellBytes int
}

// Error says why a workbook is not read, and what to do. Sheet and Row are set where one
// row is at fault.
type Error struct {
	Reason, Remedy string
	Sheet          string
	Row            int
}

// Error gives the reason and the remedy.
func (e *Error) Error() string { return e.Reason + "; " + e.Remedy }

func tooLarge(what string) error {
	return &Error{Reason: "it is too large: " + what, Remedy: "save the sheet that is needed alone, and take empty rows and columns out"}
}

// Book is a workbook that was read.
type Book struct {
	Sheets     []Sheet
	Links      bool              // it has links to other files, which were not followed
	Title      string            // of its properties
	Properties map[string]string // the ones that a program added of its own
}

// Sheet gives a sheet by its name; nil if there is none.
func (b *Book) Sheet(name string) *Sheet {
	i := slices.IndexFunc(b.Sheets, func(s Sheet) bool { return s.Name == name })
	if i < 0 {
		return nil
	}
	return &b.Sheets[i]
}

// reader reads one workbook.
type reader struct {
	limits   Limits
	parts    map[string]*zip.File
	unpacked int64
	rows     int
	strings  []shared
	styles   []style
	dates    int // days from the first of 1900 to that of 1904, where days count from there
	out      Book
}

// Read reads every sheet of an XLSX workbook.
//
// Errors: *[Error] for a file that is none, that is broken, has macros or entities of its
// own, names a part or a sheet's part twice, or goes beyond a bound.
func Read(data []byte, l Limits) (*Book, error) {
	r := &reader{limits: l, parts: map[string]*zip.File{}}
	err := r.read(data)
	if err == nil {
		return &r.out, nil
	}
	if e := (*Error)(nil); errors.As(err, &e) {
		return nil, e
	}
	return nil, &Error{Reason: "the workbook cannot be read: " + err.Error(), Remedy: "save it again as XLSX"}
}

func (b *reader) read(data []byte) error {
	z, err := zip.NewReader(bytes.NewReader(data), int64(len(data)))
	if err != nil {
		return err
	}
	if err := b.list(z); err != nil {
		return err
	}
	list, dates, err := b.sheetList()
	if err != nil {
		return err
	}
	b.dates = dates
	for _, read := range []func() error{b.readStyles, b.readStrings, b.readProperties} {
		if err := read(); err != nil {
			return err
		}
	}
	for _, entry := range list {
		s, err := b.readSheet(entry)
		if err != nil {
			return err
		}
		b.out.Sheets = append(b.out.Sheets, s)
	}
	return nil
}

// list notes the parts by name, and refuses what is no plain workbook.
func (b *reader) list(z *zip.Reader) error {
	if len(z.File) > maxParts {
		return tooLarge(fmt.Sprintf("%d parts", len(z.File)))
	}
	for _, f := range z.File {
		name := strings.ToLower(strings.TrimPrefix(strings.ReplaceAll(f.Name, "\\", "/"), "/"))
		switch {
		case b.parts[name] != nil:
			return &Error{Reason: "the workbook holds two parts of the same name, " + f.Name, Remedy: "save it again as XLSX"}
		case strings.HasSuffix(name, "vbaproject.bin") || strings.Contains(name, "macrosheets/"):
			return &Error{Reason: "the workbook has macros", Remedy: "save it as XLSX, which has none; no macros are needed here"}
		case name == "content.xml" || name == "mimetype":
			return &Error{Reason: "it is an OpenDocument file", Remedy: "save it as XLSX"}
		case strings.HasPrefix(name, "xl/externallinks/"):
			b.out.Links = true
		}
		b.parts[name] = f
	}
	if b.parts["xl/workbook.xml"] == nil {
		return &Error{Reason: "it is a packed file without a workbook in it", Remedy: "give the workbook itself; unpack it first"}
	}
	return nil
}

// scan gives the elements of a part to visit, one after another, within all bounds. A
// part that is missing has none.
func (b *reader) scan(name string, visit func(d *xml.Decoder, t xml.Token, depth int) error) error {
	f := b.parts[strings.ToLower(name)]
	if f == nil {
		return nil
	}
	if f.UncompressedSize64 > maxPart {
		return tooLarge(fmt.Sprintf("%s unpacks to more than %d MB", f.Name, maxPart>>20))
	}
	r, err := f.Open()
	if err != nil {
		return err
	}
	defer r.Close()
	within := &io.LimitedReader{R: r, N: min(maxPart, maxUnpacked-b.unpacked) + 1}
	start := within.N
	d := xml.NewDecoder(&tagReader{r: within})
	d.CharsetReader = func(charset string, _ io.Reader) (io.Reader, error) {
		return nil, &Error{Reason: "a part of the workbook is in the encoding " + charset, Remedy: "save it again as XLSX, which is in UTF-8"}
	}
	err = walk(d, visit)
	b.unpacked += start - within.N
	if within.N == 0 {
		return tooLarge("it unpacks to many megabytes")
	}
	if err == io.EOF {
		return nil
	}
	return err
}

// tagReader refuses a part in which no tag ends for long: a token is held in memory as a
// whole.
type tagReader struct {
	r   io.Reader
	run int
}

func (t *tagReader) Read(p []byte) (int, error) {
	n, err := t.r.Read(p)
	if last := bytes.LastIndexByte(p[:n], '>'); last >= 0 {
		t.run = n - last
	} else {
		t.run += n
	}
	if t.run > maxToken {
		return 0, tooLarge("one of its texts or tags goes on for more than a megabyte")
	}
	return n, err
}

func walk(d *xml.Decoder, visit func(*xml.Decoder, xml.Token, int) error) error {
	depth, count := 0, 0
	for {
		t, err := d.RawToken()
		if err != nil {
			return err
		}
		switch t.(type) {
		case xml.StartElement:
			depth++
			count++
		case xml.Directive:
			return &Error{Reason: "a part of the workbook declares entities of its own", Remedy: "save it again as XLSX"}
		}
		if depth > maxDepth || count > maxElements {
			return tooLarge("one of its parts has too many elements, or too deep ones")
		}
		if err := visit(d, t, depth); err != nil {
			return err
		}
		if _, ok := t.(xml.EndElement); ok {
			depth--
		}
	}
}

// sheetEntry is a sheet as the workbook lists it.
type sheetEntry struct {
	name, part string
	hidden     bool
}

// sheetList reads the sheets' names and parts, in the order of the tabs, and whether
// days are counted from 1904.
func (b *reader) sheetList() ([]sheetEntry, int, error) {
	targets, err := b.targets()
	if err != nil {
		return nil, 0, err
	}
	var out []sheetEntry
	from := 0
	err = b.scan("xl/workbook.xml", func(_ *xml.Decoder, t xml.Token, _ int) error {
		e, ok := t.(xml.StartElement)
		switch {
		case !ok:
		case e.Name.Local == "workbookPr" && truth(attr(e, "date1904")):
			from = 1462 // days from the first of 1900 to that of 1904
		case e.Name.Local == "sheet":
			part := targets[attr(e, "id")]
			if part == "" {
				return nil
			}
			if slices.ContainsFunc(out, func(s sheetEntry) bool { return s.part == part }) {
				return &Error{Reason: "the workbook names the part " + part + " for two of its sheets", Remedy: "save it again as XLSX"}
			}
			state := attr(e, "state")
			out = append(out, sheetEntry{attr(e, "name"), part, state == "hidden" || state == "veryHidden"})
		}
		if len(out) > maxSheets {
			return tooLarge("it has more than 100 sheets")
		}
		return nil
	})
	return out, from, err
}

// targets gives the part of each sheet by its relation. What lies outside is left out.
func (b *reader) targets() (map[string]string, error) {
	out := map[string]string{}
	err := b.scan("xl/_rels/workbook.xml.rels", func(_ *xml.Decoder, t xml.Token, _ int) error {
		e, ok := t.(xml.StartElement)
		if !ok || e.Name.Local != "Relationship" || !strings.HasSuffix(attr(e, "Type"), "/worksheet") || attr(e, "TargetMode") == "External" {
			return nil
		}
		target := attr(e, "Target")
		if !strings.HasPrefix(target, "/") {
			target = "xl/" + target
		}
		out[attr(e, "Id")] = strings.TrimPrefix(path.Clean("/"+target), "/")
		return nil
	})
	return out, err
}

// attr gives an attribute by its local name: the relation's id has a prefix.
func attr(e xml.StartElement, name string) string {
	for _, a := range e.Attr {
		if a.Name.Local == name {
			return a.Value
		}
	}
	return ""
}

func truth(s string) bool { return s == "1" || strings.EqualFold(s, "true") }
