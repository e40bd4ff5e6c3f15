package cart

import (
	"bytes"
	"fmt"
	"strings"
	"unicode"

	"handtight/bom/file"
)

// maxFile is the most bytes that a cart's file may have.
const maxFile = 16 << 20

// Limit bounds a cart's file.
var Limit = file.Limit{Bytes: maxFile, Remedy: "give the sheet or the rows of the cart alone"}

// The bounds within which a cart is read: a cart of 5,000 lines is far inside them.
const (
	maxRows    = 20_000
	maxColumns = 256
	maxCell    = 32_767 // characters, the bound of a spreadsheet's cell
)

// ReadError says why a cart cannot be read, and what to do. Row is counted from 1; 0
// means the file as a whole.
type ReadError struct {
	Cart, Reason, Remedy string
	Row                  int
}

// Error gives the cart, the row, the reason and the remedy.
func (e *ReadError) Error() string {
	at := e.Cart
	if e.Row > 0 {
		at += fmt.Sprintf(" row %d", e.Row)
	}
	return at + ": " + e.Reason + "\n  " + e.Remedy
}

// Options say what a person knows of a cart better than its file tells.
type Options struct {
	Columns  Columns // which column is what; nil: by the headings
	Encoding string  // of a text file, such as "windows-1250"; "" to find out
	Currency string  // ISO 4217, where the file does not say
	Sheet    string  // the one sheet to read; "" for all that look like a cart
}

// Cart is a cart's lines, as they were read.
type Cart struct {
	Name     string
	Currency string // that most prices are in; "" if nothing says
	Lines    []Line
	Notes    []string // what the reader decided, and what it left out
	Plain    bool     // some sheet of it has no row of headings

	skipped []string // sheets that were not read
}

// sheet is a table before anyone knows its columns.
type tableSheet struct {
	name   string
	hidden bool
	rows   []row
}

// row is one row that is not empty. Its number is the file's own.
type row struct {
	number int
	hidden bool
	cells  []cell
}

// cell is one cell. A number was typed as one, so its text has a decimal point.
type cell struct {
	text     string
	number   bool
	date     bool
	struck   bool
	unsolved bool   // a formula that was saved without its value
	currency string // of the cell's format
}

func (r *row) text(i int) string {
	if i < 0 || i >= len(r.cells) {
		return ""
	}
	return r.cells[i].text
}

func (r *row) cell(i int) cell {
	if i < 0 || i >= len(r.cells) {
		return cell{}
	}
	return r.cells[i]
}

// Read reads a cart: CSV with any common separator, or XLSX, told apart by content
// and not by name. The name stands in every message.
//
// Errors: *[ReadError] for a file that is too large, no table, broken, in an encoding
// that is not known, with macros, or without a single line.
func Read(name string, data []byte, o Options) (*Cart, error) {
	if len(data) > maxFile {
		return nil, &ReadError{Cart: name, Reason: fmt.Sprintf("the file is larger than %d MB", maxFile>>20),
			Remedy: "save the sheet with the cart alone, without pictures, as XLSX or CSV"}
	}
	if len(bytes.TrimSpace(data)) == 0 {
		return nil, &ReadError{Cart: name, Reason: "the file is empty", Remedy: "export the cart again, as CSV or XLSX"}
	}
	c := &Cart{Name: name}
	sheets, err := sheetsOf(name, data, o, c)
	if err != nil {
		return nil, err
	}
	if err := c.read(sheets, o); err != nil {
		return nil, err
	}
	if len(c.Lines) == 0 {
		return nil, &ReadError{Cart: name, Reason: "no line of a cart is in it",
			Remedy: "a cart has a row of headings, such as Description, Quantity and Price, and a row for each part"}
	}
	return c, nil
}

// sheetsOf tells the sort of file by its first bytes.
func sheetsOf(name string, data []byte, o Options, c *Cart) ([]tableSheet, error) {
	refuse := func(what, remedy string) error {
		return &ReadError{Cart: name, Reason: "it is " + what, Remedy: remedy}
	}
	text := strings.ToLower(string(data[:min(len(data), 512)]))
	text = strings.TrimSpace(strings.TrimPrefix(text, "\ufeff"))
	switch {
	case bytes.HasPrefix(data, []byte("PK")):
		return readWorkbook(name, data, c)
	case bytes.HasPrefix(data, []byte("\xd0\xcf\x11\xe0")):
		return nil, refuse("an old XLS workbook, or one with a password", "save it as XLSX without a password")
	case bytes.HasPrefix(data, []byte("%PDF")):
		return nil, refuse("a PDF, which has no table to read", "copy its lines into a spreadsheet, or ask the shop for CSV or XLSX")
	case strings.HasPrefix(text, "<!doctype") || strings.HasPrefix(text, "<html") || strings.HasPrefix(text, "<table") || strings.HasPrefix(text, "<?xml"):
		return nil, refuse("a web page or XML, whatever its name says", "open it in a spreadsheet program and save it as XLSX or CSV")
	case bytes.HasPrefix(data, []byte("\x1f\x8b")) || bytes.HasPrefix(data, []byte("\xff\xd8\xff")) || bytes.HasPrefix(data, []byte("\x89PNG")):
		return nil, refuse("packed data or a picture", "give the table itself, as CSV or XLSX")
	}
	return readText(name, data, o, c)
}

// clean makes a cell's text safe to print: one line, without control characters, marks
// that turn the direction of writing, or characters that cannot be seen.
func clean(s string) string {
	if plainText(s) {
		return strings.TrimSpace(s)
	}
	s = strings.Map(func(r rune) rune {
		switch {
		case r == '\u00ad' || r >= '\u200b' && r <= '\u200f' || r >= '\u202a' && r <= '\u202e' || r >= '\u2060' && r <= '\u206f' || r == '\ufeff':
			return -1
		case unicode.IsControl(r) || unicode.IsSpace(r):
			return ' '
		}
		return r
	}, strings.ToValidUTF8(s, "\ufffd"))
	return strings.Join(strings.Fields(s), " ")
}

func plainText(s string) bool {
	for i := range len(s) {
		if s[i] < ' ' || s[i] > '~' {
			return false
		}
	}
	return !strings.Contains(s, "  ")
}
