package source

import (
	"strconv"
	"strings"
	"unicode/utf8"

	"github.com/BurntSushi/toml"
)

// MaxBytes is the longest text that is taken. A build of 10,000 items has about 3 MB.
const MaxBytes = 6 << 20

// Faults of one kind are not listed beyond this many.
const mostFaults = 20

const byteOrderMark = "\uFEFF"

const needs = "a build file needs a [build] with its name, an [[item]] for each part and a [[run]] with its path"

// Parse decodes TOML text, and says everything that stops it: text that is not
// text (a workbook, another encoding), text of more than [MaxBytes], text without
// a key, and up to 20 faults of syntax. The document is nil when there are faults.
// The file is only a name for the places. A byte-order mark and Windows line ends
// are taken.
func Parse(file string, text []byte) (*Document, Faults) {
	if len(text) > MaxBytes {
		return nil, Faults{tooLarge(file)}
	}
	source := string(text)
	if f, ok := notText(file, source); ok {
		return nil, Faults{f}
	}
	source = strings.TrimPrefix(source, byteOrderMark)
	if faults := controlCharacters(file, source); len(faults) > 0 {
		return nil, faults
	}
	nest := nestingOf(source)
	if nest.excess >= 0 {
		return nil, Faults{tooDeep(file, source, nest.excess)}
	}
	values, err := decodePieces(source, nest.cuts)
	if err != nil {
		return nil, syntaxFaults(file, source, err)
	}
	doc := &Document{file: file, text: source, values: values}
	if len(values) == 0 {
		return nil, Faults{{Place{File: file}, "this file holds no key: it is empty, or only comments", needs}}
	}
	if nest.dotted {
		return checked(doc)
	}
	if len(nest.cuts) > 0 {
		go doc.locate() // of a long text the places are found while its tables are read
	}
	return doc, nil
}

// checked refuses a key that is given again as a whole after its parts were given
// by dotted keys: the library drops the later value without a word.
func checked(d *Document) (*Document, Faults) {
	d.locate()
	if !d.index.clash {
		return d, nil
	}
	first, again := d.place(int(d.index.first)), d.place(int(d.index.again))
	return nil, Faults{{again, "this key is already written on line " + strconv.Itoa(first.Line), "keep one of the two"}}
}

// decode runs the library once. It has panics of its own for texts that it did
// not foresee; to us they are one more fault.
func decode(text string) (values map[string]any, err error) {
	defer func() {
		if recover() != nil {
			values, err = nil, errUnforeseen
		}
	}()
	values = map[string]any{}
	_, err = toml.Decode(text, &values)
	return values, err
}

// notText recognises what was never TOML: by its first bytes, a byte that text
// does not hold, or bytes that are not UTF-8.
func notText(file, text string) (Fault, bool) {
	whole := Place{File: file}
	switch {
	case strings.HasPrefix(text, "PK\x03\x04"):
		return Fault{whole, "this looks like a workbook or another zip file, not text",
			"name the build file, which ends in .toml; a cart in a workbook belongs to the cart command"}, true
	case strings.HasPrefix(text, "\xD0\xCF\x11\xE0"):
		return Fault{whole, "this looks like an old workbook or document, not text",
			"name the build file, which ends in .toml"}, true
	case strings.HasPrefix(text, "\xFF\xFE"), strings.HasPrefix(text, "\xFE\xFF"):
		return Fault{whole, "this text is encoded as UTF-16", "save it as UTF-8 in your editor"}, true
	}
	if at := strings.IndexByte(text, 0); at >= 0 {
		return Fault{linesOf(text).place(file, text, at), "a byte of value 0 stands here: this is not a text file",
			"name the build file, which ends in .toml; if it is one, save it as UTF-8"}, true
	}
	if at := firstInvalid(text); at >= 0 {
		return Fault{linesOf(text).place(file, text, at),
			"the byte 0x" + hexByte(text[at]) + " is not UTF-8 text",
			"save the file as UTF-8 in your editor; a degree sign or an accent from an older encoding is the usual cause"}, true
	}
	return Fault{}, false
}

// firstInvalid is the offset of the first byte that is not UTF-8, or -1.
func firstInvalid(text string) int {
	if utf8.ValidString(text) {
		return -1
	}
	for i, r := range text {
		if r != utf8.RuneError {
			continue
		}
		if _, width := utf8.DecodeRuneInString(text[i:]); width == 1 {
			return i
		}
	}
	return -1
}

// controlCharacters finds characters that TOML allows nowhere.
func controlCharacters(file, text string) Faults {
	var faults Faults
	var lines lineTable
	for i := range len(text) {
		c := text[i]
		lone := c == '\r' && (i+1 == len(text) || text[i+1] != '\n')
		if !lone && (c >= ' ' && c != 0x7F || c == '\t' || c == '\n' || c == '\r') {
			continue
		}
		if lines == nil {
			lines = linesOf(text)
		}
		f := Fault{lines.place(file, text, i), "the control character 0x" + hexByte(c) + " cannot stand in a text", "remove it"}
		if lone {
			f.Reason = "a carriage return stands here without its newline"
			f.Remedy = "save the file with Unix or Windows line ends"
		}
		if faults = append(faults, f); len(faults) == mostFaults {
			break
		}
	}
	return faults
}

func hexByte(c byte) string {
	const digits = "0123456789ABCDEF"
	return string([]byte{digits[c>>4], digits[c&15]})
}

func tooDeep(file, text string, at int) Fault {
	f := Fault{Place: linesOf(text).place(file, text, at)}
	if text[at] == '.' {
		f.Reason = "a key of more than " + strconv.Itoa(longestPath) + " parts"
		f.Remedy = "write it with fewer points"
	} else {
		f.Reason = "brackets within brackets, more than " + strconv.Itoa(deepest) + " deep"
		f.Remedy = "close the brackets that are left open above"
	}
	return f
}
