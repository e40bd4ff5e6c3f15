package source

import (
	"cmp"
	"slices"
	"strconv"
	"strings"
	"unicode"
	"unicode/utf8"

	"handtight/bom/file"
)

// Place says where in a file something stands. Line and Column count from 1,
// columns in code points; Line 0 means the file as a whole. Text is the whole
// line without its newline.
type Place struct {
	File   string
	Line   int
	Column int
	Text   string
}

// String gives the place as people say it: "kittiwake.toml line 31, column 9",
// or the file alone for the file as a whole.
func (p Place) String() string {
	name := file.Name(p.File)
	if p.Line == 0 {
		return name
	}
	return name + " line " + strconv.Itoa(p.Line) + ", column " + strconv.Itoa(p.Column)
}

// Fault is one reason why a file cannot be taken: what was found at a place, and
// what to write instead.
type Fault struct {
	Place
	Reason string
	Remedy string
}

// Error gives the place and the reason, then the line itself, then the remedy,
// each on a line of its own.
func (f Fault) Error() string {
	var b strings.Builder
	b.WriteString(f.Place.String())
	b.WriteString(": ")
	b.WriteString(quoted(f.Reason))
	if line := shown(f.Text, f.Column); f.Line > 0 && line != "" {
		b.WriteString("\n    ")
		b.WriteString(line)
	}
	if f.Remedy != "" {
		b.WriteString("\n  ")
		b.WriteString(quoted(f.Remedy))
	}
	return b.String()
}

// quoted makes a sentence about a file fit to print: what it quotes from the file has no
// lines of its own, and is cut where it goes on and on.
func quoted(text string) string {
	const most = 2000
	if len(text) > most {
		text = text[:most] + " …"
	}
	return strings.ToValidUTF8(file.Name(text), "\ufffd")
}

// String is the text of [Fault.Error].
func (f Fault) String() string { return f.Error() }

// Faults are all the reasons why a file cannot be taken; empty means none.
type Faults []Fault

// Error gives the faults one after the other, with an empty line between.
func (f Faults) Error() string {
	texts := make([]string, len(f))
	for i, one := range f {
		texts[i] = one.Error()
	}
	return strings.Join(texts, "\n\n")
}

// Err returns the faults as an error, or nil when there are none.
func (f Faults) Err() error {
	if len(f) == 0 {
		return nil
	}
	return f
}

// Sort puts the faults in the order of file, line, column and reason.
func (f Faults) Sort() {
	slices.SortStableFunc(f, func(a, b Fault) int {
		return cmp.Or(
			cmp.Compare(a.File, b.File), cmp.Compare(a.Line, b.Line),
			cmp.Compare(a.Column, b.Column), cmp.Compare(a.Reason, b.Reason),
		)
	})
}

// A longer line is cut to the part around the column.
const (
	lineWidth = 120
	lineLead  = 60
)

// shown returns a line fit for a terminal: trimmed, cut around the column, and
// without characters that would move the cursor.
func shown(line string, column int) string {
	from, runes := 0, 0
	if skip := column - 1 - lineLead; skip > 0 && len(line) > lineWidth {
		for from < len(line) && runes < skip {
			_, width := utf8.DecodeRuneInString(line[from:])
			from, runes = from+width, runes+1
		}
	}
	text := clip(strings.TrimSpace(line[from:]), lineWidth)
	if from > 0 {
		return "… " + text
	}
	return text
}

// clip returns at most limit characters of a text, with an ellipsis for the rest
// and a mark for each character that cannot be printed.
func clip(text string, limit int) string {
	var b strings.Builder
	n := 0
	for _, r := range text {
		if n == limit {
			b.WriteString(" …")
			break
		}
		switch {
		case r == '\t' || r == '\n' || r == '\r':
			r = ' '
		case !unicode.IsPrint(r):
			r = utf8.RuneError
		}
		b.WriteRune(r)
		n++
	}
	return b.String()
}

// Offset is where the place stands in the text of its file, in bytes; false where the text
// has no such line or column.
func (p Place) Offset(text string) (int, bool) {
	at := 0
	for range p.Line - 1 {
		i := strings.IndexByte(text[at:], '\n')
		if i < 0 {
			return 0, false
		}
		at += i + 1
	}
	for range p.Column - 1 {
		if at >= len(text) {
			return 0, false
		}
		_, n := utf8.DecodeRuneInString(text[at:])
		at += n
	}
	return at, true
}
