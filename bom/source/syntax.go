package source

import (
	"errors"
	"sort"
	"strconv"
	"strings"

	"github.com/BurntSushi/toml"

	"handtight/pressure/pattern"
)

// errUnforeseen stands for a panic within the library.
var errUnforeseen = errors.New("the TOML reader gave up")

// Each fault costs another decoding. Past this many bytes decoded in all, the
// faults found so far have to do.
const mostDecoded = 4 * MaxBytes

// A line that begins a statement of its own: [name], [[name]], or key =. A list
// of numbers alone, as in [3], is an element and no header.
var (
	headerLine = pattern.New(`^\s*\[\[?\s*[A-Za-z"'][^\[\]=,{}]*\]\]?\s*(#.*)?$`)
	pairLine   = pattern.New(`^\s*(?:[\w-]+|"[^"]*"|'[^']*')(?:\s*\.\s*(?:[\w-]+|"[^"]*"|'[^']*'))*\s*=`)
)

// syntax collects the faults of one text: each found fault is taken out and the
// text is decoded again, for as long as the next fault lies further down.
type syntax struct {
	file       string
	lines      []string // the text, without what was taken out
	whole      lineTable
	text       string // the text as it was
	faults     Faults
	headerLost bool // a header was taken out: what follows may seem to be given twice
}

// syntaxFaults gives the faults of a text whose first one the library has found.
func syntaxFaults(file, text string, err error) Faults {
	s := &syntax{file: file, lines: strings.Split(text, "\n"), text: text, whole: linesOf(text)}
	floor := 0 // the first line on which the next fault may lie
	current := text
	for decoded := 0; err != nil && decoded <= mostDecoded; decoded += len(text) {
		offset, message := faultOf(current, err)
		line := s.lineAt(current, offset)
		if line < floor {
			break
		}
		next, goOn := s.take(current, offset, line, message)
		if !goOn || len(s.faults) == mostFaults {
			break
		}
		floor = next
		current = strings.Join(s.lines, "\n")
		_, err = decode(current)
	}
	s.faults.Sort()
	return s.faults
}

// faultOf gives the offset and the message of the library's error.
func faultOf(text string, err error) (int, string) {
	var parse toml.ParseError
	if !errors.As(err, &parse) {
		return unforeseenAt(text, func(front string) bool {
			_, err := decode(front)
			return errors.Is(err, errUnforeseen)
		}), err.Error()
	}
	offset := min(max(parse.Position.Start, 0), len(text))
	for offset < len(text) && (text[offset] == ' ' || text[offset] == '\t') {
		offset++
	}
	return offset, parse.Message
}

// unforeseenAt finds the line at which the library gives up: reading goes from
// the front, so that every text that begins with that line makes it give up too.
func unforeseenAt(text string, givesUp func(front string) bool) int {
	lines := linesOf(text)
	return lines[sort.Search(len(lines)-1, func(i int) bool { return givesUp(text[:lines[i+1]]) })]
}

// lineAt counts the lines before an offset.
func (s *syntax) lineAt(text string, offset int) int {
	return strings.Count(text[:offset], "\n")
}

// take notes one fault and takes its statement out of the lines. It returns the
// first line on which another fault may lie, and whether to look for one.
func (s *syntax) take(text string, offset, line int, message string) (next int, goOn bool) {
	nest := nestingOf(text[:offset])
	first := min(s.lineAt(text, min(nest.statement, offset)), line)
	if nest.quote >= 0 && strings.Contains(message, "EOF") && isLong(text, nest.quote) {
		s.unclosed(text, nest.quote, "the text that begins here is never closed",
			"close it with the three quotes that it began with")
		return 0, false
	}
	open := byte('[')
	if len(nest.open) > 0 && !isHeader(s.lines[first]) {
		at := nest.open[len(nest.open)-1]
		open = text[at]
		if atEnd(message) {
			s.unclosed(text, at, bracketWord(open)+" that opens here is never closed", closing(open))
			return 0, false
		}
		if line > first && s.begins(line, open) {
			s.unclosed(text, at, bracketWord(open)+" that opens here is not closed before line "+
				strconv.Itoa(line+1), closing(open))
			s.blank(first, line-1)
			return line, true
		}
	}
	if !s.headerLost || !strings.Contains(message, "already") {
		s.diagnosed(text, offset, line, message)
	}
	if nest.quote >= 0 {
		end, _ := skipString(text, nest.quote)
		line = s.lineAt(text, end)
	}
	last := s.statementEnd(first, line, open)
	s.blank(first, last)
	return last + 1, true
}

// atEnd says whether the library met the end of the text within a statement.
func atEnd(message string) bool {
	return strings.Contains(message, "EOF") || strings.Contains(message, "end of file")
}

func isHeader(line string) bool {
	return strings.HasPrefix(strings.TrimLeft(line, " \t"), "[")
}

// begins says whether a line within an open bracket is the next statement. Within
// braces a pair is one more pair, unless it stands at the left margin and ends the
// braces nowhere.
func (s *syntax) begins(line int, open byte) bool {
	text := s.lines[line]
	if headerLine.MatchString(text) {
		return true
	}
	if !pairLine.MatchString(text) {
		return false
	}
	trimmed := strings.TrimRight(text, " \t\r")
	return open == '[' || text[0] != ' ' && text[0] != '\t' && !strings.HasSuffix(trimmed, ",") && !strings.HasSuffix(trimmed, "}")
}

// statementEnd is the last line of the statement that begins on line first and has
// a fault on line at: where its brackets close, or before the next statement.
func (s *syntax) statementEnd(first, at int, open byte) int {
	depth := 0
	for i := first; i < len(s.lines); i++ {
		if i > at && s.begins(i, open) {
			return i - 1
		}
		if depth += balance(s.lines[i]); i >= at && depth <= 0 {
			return i
		}
	}
	return at
}

// balance is how many more brackets a line opens than it closes.
func balance(line string) int {
	depth := 0
	for i := 0; i < len(line); i++ {
		switch line[i] {
		case '"', '\'':
			end, _ := skipString(line, i)
			i = end - 1
		case '#':
			return depth
		case '[', '{':
			depth++
		case ']', '}':
			depth--
		}
	}
	return depth
}

// blank takes lines out. A header is replaced by one that nobody wrote, so that
// the keys below it do not fall to the table above.
func (s *syntax) blank(first, last int) {
	for i := first; i <= last; i++ {
		header := i == first && isHeader(s.lines[i])
		s.lines[i] = ""
		if header {
			s.lines[i] = `["taken out" . ` + strconv.Itoa(i+1) + "]"
			s.headerLost = true
		}
	}
}

// unclosed notes a fault at an offset of the text as it stands now.
func (s *syntax) unclosed(text string, offset int, reason, remedy string) {
	s.faults = append(s.faults, Fault{s.place(text, offset), reason, remedy})
}

// place gives the place of an offset in the current text, with its line as it was
// written: lines are taken out, never moved.
func (s *syntax) place(text string, offset int) Place {
	line := s.lineAt(text, offset)
	column := offset - (strings.LastIndexByte(text[:offset], '\n') + 1)
	return s.whole.place(s.file, s.text, s.whole[line]+column)
}

// diagnosed notes the library's fault in our words.
func (s *syntax) diagnosed(text string, offset, line int, message string) {
	d := diagnosis{message: message}
	if strings.Contains(message, "already") {
		d.section = s.section(line)
		d.earlier, offset = s.earlier(text, offset)
	}
	at := s.place(text, offset)
	d.line = at.Text
	d.column = min(offset-(strings.LastIndexByte(text[:offset], '\n')+1), len(d.line))
	reason, remedy := d.words()
	s.faults = append(s.faults, Fault{at, reason, remedy})
}

// section is the header above a line, as written.
func (s *syntax) section(line int) string {
	for i := line - 1; i >= 0; i-- {
		if headerLine.MatchString(s.lines[i]) {
			return strings.TrimSpace(strings.SplitN(s.lines[i], "#", 2)[0])
		}
	}
	return ""
}

// earlier is the line on which the key at an offset was written before, or 0. It
// also gives the offset of the key itself, which the library may put further on.
func (s *syntax) earlier(text string, offset int) (line, again int) {
	l := locate(text[:skipComment(text, offset)])
	if !l.clash || s.lineAt(text, int(l.again)) != s.lineAt(text, offset) {
		return 0, offset
	}
	return s.lineAt(text, int(l.first)) + 1, int(l.again)
}

func bracketWord(open byte) string {
	if open == '{' {
		return "the table"
	}
	return "the list"
}

func closing(open byte) string {
	if open == '{' {
		return "close it with }"
	}
	return "close it with ]"
}
