package cart

import (
	"archive/zip"
	"bytes"
	"encoding/xml"
	"fmt"
	"io"
	"path"
	"strings"
)

// The bounds within which a workbook is unpacked.
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

// book is a workbook that is open.
type book struct {
	name     string
	parts    map[string]*zip.File
	unpacked int64
	strings  []shared
	styles   []style
	dates    int
}

// broken is an error about a part, before it has the cart's name.
type broken struct{ reason, remedy string }

func (b *broken) Error() string { return b.reason }

func tooLarge(what string) error {
	return &broken{"it is too large for a cart: " + what, "save the sheet with the cart alone, and take empty rows and columns out"}
}

// readWorkbook reads the sheets of an XLSX workbook.
func readWorkbook(name string, data []byte, c *Cart) ([]sheet, error) {
	b := &book{name: name, parts: map[string]*zip.File{}}
	sheets, err := b.read(data, c)
	if err == nil {
		return sheets, nil
	}
	out := &ReadError{Cart: name, Reason: "the workbook cannot be read: " + clean(err.Error()), Remedy: "save it again as XLSX, or as CSV"}
	if e, ok := err.(*broken); ok {
		out.Reason, out.Remedy = e.reason, e.remedy
	}
	if e, ok := err.(*ReadError); ok {
		out = e
	}
	return nil, out
}

func (b *book) read(data []byte, c *Cart) ([]sheet, error) {
	z, err := zip.NewReader(bytes.NewReader(data), int64(len(data)))
	if err != nil {
		return nil, err
	}
	if err := b.list(z, c); err != nil {
		return nil, err
	}
	list, dates, err := b.sheetList()
	if err != nil {
		return nil, err
	}
	b.dates = dates
	if err := b.readStyles(); err != nil {
		return nil, err
	}
	if err := b.readStrings(); err != nil {
		return nil, err
	}
	var out []sheet
	for _, entry := range list {
		s, err := b.readSheet(entry)
		if err != nil {
			return nil, err
		}
		out = append(out, s)
	}
	return out, nil
}

// list notes the parts by name, and refuses what is no plain workbook.
func (b *book) list(z *zip.Reader, c *Cart) error {
	if len(z.File) > maxParts {
		return tooLarge(fmt.Sprintf("%d parts", len(z.File)))
	}
	links := false
	for _, f := range z.File {
		name := strings.ToLower(strings.TrimPrefix(strings.ReplaceAll(f.Name, "\\", "/"), "/"))
		switch {
		case b.parts[name] != nil:
			return &broken{"the workbook holds two parts of the same name, " + clean(f.Name), "save it again as XLSX"}
		case strings.HasSuffix(name, "vbaproject.bin") || strings.Contains(name, "macrosheets/"):
			return &broken{"the workbook has macros", "save it as XLSX, which has none; a cart needs no macros"}
		case name == "content.xml" || name == "mimetype":
			return &broken{"it is an OpenDocument file", "save it as XLSX or CSV"}
		case strings.HasPrefix(name, "xl/externallinks/"):
			links = true
		}
		b.parts[name] = f
	}
	if b.parts["xl/workbook.xml"] == nil {
		return &broken{"it is a packed file without a workbook in it", "give the cart itself, as XLSX or CSV; unpack it first"}
	}
	if links {
		c.note("the workbook has links to other files: they were not followed, and the values last saved are used")
	}
	return nil
}

// scan gives the elements of a part to visit, one after another, within all bounds. A
// part that is missing has none.
func (b *book) scan(name string, visit func(d *xml.Decoder, t xml.Token, depth int) error) error {
	f := b.parts[strings.ToLower(name)]
	if f == nil {
		return nil
	}
	if f.UncompressedSize64 > maxPart {
		return tooLarge(fmt.Sprintf("%s unpacks to more than %d MB", clean(f.Name), maxPart>>20))
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
		return nil, &broken{"a part of the workbook is in the encoding " + clean(charset), "save it again as XLSX, which is in UTF-8"}
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
			return &broken{"a part of the workbook declares entities of its own", "save it again as XLSX"}
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
func (b *book) sheetList() ([]sheetEntry, int, error) {
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
			state := attr(e, "state")
			out = append(out, sheetEntry{clean(attr(e, "name")), part, state == "hidden" || state == "veryHidden"})
		}
		if len(out) > maxSheets {
			return tooLarge("it has more than 100 sheets")
		}
		return nil
	})
	return out, from, err
}

// targets gives the part of each sheet by its relation. What lies outside is left out.
func (b *book) targets() (map[string]string, error) {
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
