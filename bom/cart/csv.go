package cart

import (
	"fmt"
	"strconv"
	"strings"
	"unicode/utf8"
)

// readText reads a text file as a table.
func readText(name string, data []byte, o Options, c *Cart) ([]tableSheet, error) {
	text, guessed, err := decode(data, o.Encoding)
	if err != nil {
		return nil, &ReadError{Cart: name, Reason: err.Error() + ", so it is no text table",
			Remedy: "save it as CSV in UTF-8, or say its encoding by --encoding, such as windows-1250 or shift_jis"}
	}
	if guessed != "" {
		c.note("the text was taken as %s; say --encoding if letters look wrong", guessed)
	}
	text, sep, said := saidSeparator(text)
	switch found := findSeparator(text); {
	case !said:
		sep = found
	case found != 0 && found != sep && regular(text[:min(len(text), sampleBytes)], sep) == 0:
		c.note("the first line says that %s parts the columns, and it parts none: %s does, and was taken", signName(sep), signName(found))
		sep = found
	}
	if sep == 0 {
		for i := range len(oddSeparators) {
			if regular(text[:min(len(text), sampleBytes)], oddSeparators[i]) > oddRegular {
				c.note("the columns look parted by %s, which was not taken for a separator: save the file with semicolons, commas or tabs", signName(oddSeparators[i]))
				break
			}
		}
	}
	s := splitter{rest: text, sep: sep}
	out := tableSheet{}
	for s.next() {
		r := row{number: s.line, cells: s.cells()}
		switch {
		case len(r.cells) == 0:
			continue
		case len(out.rows) == maxRows:
			return nil, tooMany(name)
		case len(r.cells) > maxColumns:
			return nil, &ReadError{name, fmt.Sprintf("the row has %d columns, and a cart has some ten", len(r.cells)), "export the cart again; check the separator", r.number}
		case s.longest > maxCell:
			return nil, longCell(name, r.number)
		}
		out.rows = append(out.rows, r)
	}
	return []tableSheet{out}, nil
}

func tooMany(name string) error {
	return &ReadError{Cart: name, Reason: fmt.Sprintf("it has more than %d rows", maxRows), Remedy: "give a cart, not a catalogue: take the other rows out"}
}

func longCell(name string, number int) error {
	return &ReadError{name, fmt.Sprintf("a cell holds more than %d characters", maxCell), "shorten it; a quote that never closes may be the cause", number}
}

func (c *Cart) note(format string, args ...any) {
	c.Notes = append(c.Notes, fmt.Sprintf(format, args...))
}

const separators = "\t;,|"

// oddSeparators part columns in some programs, and stand in texts too, so that they are only
// spoken of: where nearly all rows have as many of them.
const (
	oddSeparators = "^~:"
	oddRegular    = 900
)

func signName(sep byte) string {
	if sep == '\t' {
		return "a tab"
	}
	return strconv.Quote(string(sep))
}

// saidSeparator takes the line `sep=;` that some programs write first.
func saidSeparator(text string) (rest string, sep byte, ok bool) {
	line, after, _ := strings.Cut(text, "\n")
	line = strings.TrimSuffix(strings.TrimSuffix(line, "\r"), `"`)
	line = strings.TrimPrefix(line, `"`)
	if len(line) == 5 && strings.EqualFold(line[:4], "sep=") && strings.IndexByte(separators, line[4]) >= 0 {
		return after, line[4], true
	}
	return text, 0, false
}

// How much of a file is looked at for its separator.
const (
	sampleBytes = 64 << 10
	sampleRows  = 60
)

// findSeparator takes the one that makes most of the headings known, and then the one
// that gives most rows the same number of columns; 0 for a list of one column.
func findSeparator(text string) byte {
	sample := text[:min(len(text), sampleBytes)]
	best, bestScore := byte(0), 0
	for i := range len(separators) {
		if score := regular(sample, separators[i]); score > bestScore {
			best, bestScore = separators[i], score
		}
	}
	return best
}

func regular(sample string, sep byte) int {
	s := splitter{rest: sample, sep: sep}
	widths := map[int]int{}
	rows, heads := 0, 0
	for rows < sampleRows && s.next() {
		r := row{cells: s.cells()}
		if len(r.cells) == 0 {
			continue
		}
		rows++
		widths[min(len(s.fields), 50)]++
		heads = max(heads, len(headings(&r)))
	}
	most := 0
	for width, n := range widths {
		if width > 1 {
			most = max(most, n*100/rows*10+min(width, 9)) // a thousand for all rows alike
		}
	}
	if most == 0 {
		return 0
	}
	return most + heads*400
}

// splitter takes records from a text. Quotes are read as people and programs write
// them: `"1/2"" NPT"`, `"1/2" NPT"` and a bare `1/2" NPT` all give 1/2" NPT.
type splitter struct {
	rest    string
	sep     byte
	line    int // of the record, from 1
	fields  []string
	longest int // characters of the record's longest field
	taken   int // lines that the last record took
	stray   int // quotes that never closed
}

// The most that a quoted field may hold, and the number of quotes that may stay
// open: beyond it quotes mean nothing in the file.
const (
	quotedBytes  = 8 << 10
	quotedLines  = 20
	strayQuotes  = 500
	spacesBehind = 64 // between a quote and its separator
)

// next reads a record; false at the end.
func (s *splitter) next() bool {
	s.line += max(s.taken, 1)
	if s.rest == "" {
		return false
	}
	s.fields, s.longest, s.taken = s.fields[:0], 0, 1
	quotes := s.stray < strayQuotes
	for {
		var field string
		var more bool
		field, more, quotes = s.field(quotes)
		s.fields = append(s.fields, field)
		s.longest = max(s.longest, utf8.RuneCountInString(field))
		if !more {
			return true
		}
	}
}

// field takes one field; more is false when it ends the record.
func (s *splitter) field(quotes bool) (field string, more, still bool) {
	if quotes {
		lead := len(s.rest) - len(strings.TrimLeft(s.rest, " "))
		if strings.HasPrefix(s.rest[lead:], `"`) {
			if text, used, ok := s.quoted(s.rest[lead+1:]); ok {
				s.taken += strings.Count(text, "\n")
				s.rest = s.rest[lead+1+used:]
				return text, s.end(), true
			}
			quotes = false // as far as this record goes
			s.stray++
		}
	}
	i := 0
	for i < len(s.rest) && s.rest[i] != '\n' && s.rest[i] != '\r' && (s.sep == 0 || s.rest[i] != s.sep) {
		i++
	}
	field, s.rest = s.rest[:i], s.rest[i:]
	return field, s.end(), quotes
}

// end takes what stands after a field, and tells whether another one follows.
func (s *splitter) end() bool {
	switch {
	case s.rest == "":
		return false
	case s.sep != 0 && s.rest[0] == s.sep:
		s.rest = s.rest[1:]
		return true
	case strings.HasPrefix(s.rest, "\r\n"):
		s.rest = s.rest[2:]
	default:
		s.rest = s.rest[1:]
	}
	return false
}

// quoted reads up to the quote that closes: one with a separator or an end of line
// behind it. Any other quote belongs to the text.
func (s *splitter) quoted(text string) (field string, used int, ok bool) {
	var b strings.Builder
	lines := 0
	for i := 0; i < len(text) && i < quotedBytes && lines < quotedLines; i++ {
		switch c := text[i]; {
		case c != '"':
			if c == '\n' {
				lines++
			}
			b.WriteByte(c)
		case i+1 < len(text) && text[i+1] == '"':
			b.WriteByte('"')
			i++
		default:
			skip := i + 1
			for skip < len(text) && text[skip] == ' ' && skip < i+spacesBehind {
				skip++
			}
			if skip == len(text) || text[skip] == '\n' || text[skip] == '\r' || s.sep != 0 && text[skip] == s.sep {
				return b.String(), skip, true
			}
			b.WriteByte('"')
		}
	}
	return "", 0, false
}

// cells gives the record's cells, cleaned; nil if all are blank.
func (s *splitter) cells() []cell {
	out := make([]cell, 0, len(s.fields))
	last := 0
	for i, f := range s.fields {
		text := clean(f)
		out = append(out, cell{text: text})
		if text != "" {
			last = i + 1
		}
	}
	return out[:last]
}
