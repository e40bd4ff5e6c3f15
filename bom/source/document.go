package source

import (
	"sort"
	"strconv"
	"strings"
	"sync"
	"unicode/utf8"
)

// Path leads from the file to a value: a string names a key of a table, an int
// counts the elements of a list from 0.
type Path []any

// String writes the path as people read it: item[3].ports.in.
func (p Path) String() string {
	var b strings.Builder
	for _, step := range p {
		switch s := step.(type) {
		case string:
			if b.Len() > 0 {
				b.WriteByte('.')
			}
			b.WriteString(keyText(s))
		case int:
			b.WriteString("[" + strconv.Itoa(s) + "]")
		}
	}
	return b.String()
}

// Document is a text that TOML accepts, decoded once. It does not change and may
// be shared between goroutines.
type Document struct {
	file   string
	text   string
	values map[string]any

	once  sync.Once
	index *locator
	lines lineTable
}

// File returns the name under which the text was given.
func (d *Document) File() string { return d.file }

// key returns the place of a key: of its own last part where it is dotted, of the
// name within the brackets for a [table] or a [[list]]. An element of a list has
// the place of its value, or of its [[name]]. A path that leads nowhere gives the
// place of its nearest parent, and an empty path the file as a whole.
func (d *Document) key(path Path) Place {
	return d.place(d.offset(path, true))
}

// locate builds the index of places once.
func (d *Document) locate() {
	d.once.Do(func() {
		d.index = locate(d.text)
		d.lines = linesOf(d.text)
	})
}

// offset finds a path in the text; -1 is the file as a whole.
func (d *Document) offset(path Path, key bool) int {
	d.locate()
	id := d.index.find(path)
	switch {
	case id == 0:
		return -1
	case key:
		return int(d.index.spots[id].key)
	default:
		return int(d.index.spots[id].value)
	}
}

// place turns an offset of the text into a place.
func (d *Document) place(offset int) Place {
	if offset < 0 {
		return Place{File: d.file}
	}
	d.locate()
	return d.lines.place(d.file, d.text, offset)
}

// literal returns what is written for a value that is no list and no table: its
// digits as typed, where the decoded number has lost its decimals.
func (d *Document) literal(path Path) string {
	offset := d.offset(path, false)
	if offset < 0 {
		return ""
	}
	text := d.text[offset:]
	if n := strings.IndexAny(text, ",]}#\r\n"); n >= 0 {
		text = text[:n]
	}
	return strings.TrimSpace(text)
}

// lineTable holds the offset at which each line begins, in order.
type lineTable []int

func linesOf(text string) lineTable {
	table := make(lineTable, 1, strings.Count(text, "\n")+1)
	for i := range len(text) {
		if text[i] == '\n' {
			table = append(table, i+1)
		}
	}
	return table
}

// place finds the line of an offset and counts its column. An offset behind the
// text is taken for its end.
func (t lineTable) place(file, text string, offset int) Place {
	offset = min(max(offset, 0), len(text))
	line := sort.SearchInts(t, offset+1) - 1
	whole := text[t[line]:skipComment(text, t[line])]
	return Place{
		File:   file,
		Line:   line + 1,
		Column: utf8.RuneCountInString(text[t[line]:offset]) + 1,
		Text:   strings.ToValidUTF8(strings.TrimSuffix(whole, "\r"), "\uFFFD"),
	}
}
