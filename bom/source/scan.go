package source

import "strings"

// A build needs a handful of levels. The limits keep a hostile file from using
// up the stack, and a key of a million parts from taking hours.
const (
	deepest     = 200
	longestPath = 100
)

// skipString returns the offset behind the string that opens at offset at, and
// whether it is closed. A string of one line ends, unclosed, before its newline.
func skipString(text string, at int) (end int, closed bool) {
	quote := text[at]
	if isLong(text, at) {
		return skipLongString(text, at+3, quote)
	}
	for i := at + 1; i < len(text); i++ {
		switch text[i] {
		case quote:
			return i + 1, true
		case '\n':
			return i, false
		case '\\':
			if quote == '"' && i+1 < len(text) && text[i+1] != '\n' {
				i++
			}
		}
	}
	return len(text), false
}

// isLong says whether the string that opens at an offset may run over lines.
func isLong(text string, at int) bool {
	return at+2 < len(text) && text[at+1] == text[at] && text[at+2] == text[at]
}

// skipLongString goes on behind the three quotes that open a string over lines.
// Up to two quotes may stand right before the three that close it.
func skipLongString(text string, from int, quote byte) (end int, closed bool) {
	run := 0
	for i := from; i < len(text); i++ {
		switch {
		case text[i] == quote:
			run++
			if run == 3 {
				i++
				for extra := 0; extra < 2 && i < len(text) && text[i] == quote; extra++ {
					i++
				}
				return i, true
			}
		case text[i] == '\\' && quote == '"':
			run = 0
			i++
		default:
			run = 0
		}
	}
	return len(text), false
}

// skipComment returns the offset of the newline that ends the comment, or of the end.
func skipComment(text string, at int) int {
	if n := strings.IndexByte(text[at:], '\n'); n >= 0 {
		return at + n
	}
	return len(text)
}

// nesting is what stands open at the end of a text, by brackets and quotes alone.
type nesting struct {
	statement int   // where the line begins on which the last statement begins
	open      []int // offsets of the brackets still open
	quote     int   // offset of a string that is still open, or -1
	dotted    bool  // a key of several parts was given a value
	excess    int   // offset at which a limit was passed, or -1
	cuts      []int // offsets of headers of lists at which a long text may be decoded in pieces
}

// nestingOf walks a text once. On text that the TOML reader accepts, or on the
// part before its first fault, it sees the same brackets as the reader.
func nestingOf(text string) nesting {
	n := nesting{quote: -1, excess: -1}
	piece := pieceOf(len(text))
	dots := 0
	for i := 0; i < len(text); i++ {
		switch c := text[i]; c {
		case '"', '\'':
			end, closed := skipString(text, i)
			if !closed && (end == len(text)) {
				n.quote = i
				return n
			}
			i = end - 1
		case '#':
			i = skipComment(text, i) - 1
		case '[', '{':
			if dots = 0; len(n.open) == deepest {
				n.excess = i
				return n
			}
			n.open = append(n.open, i)
		case ']', '}':
			if len(n.open) > 0 {
				n.open = n.open[:len(n.open)-1]
			}
		case '.':
			if dots++; dots == longestPath {
				n.excess = i
				return n
			}
		case '=':
			n.dotted = n.dotted || dots > 0
			dots = 0
		case ',':
			dots = 0
		case '\n':
			if dots = 0; len(n.open) == 0 {
				n.statement = i + 1
				if n.statement >= piece*(len(n.cuts)+1) && opensList(text[n.statement:]) {
					n.cuts = append(n.cuts, n.statement)
				}
			}
		}
	}
	return n
}
