package pattern

import (
	"regexp/syntax"
	"slices"
	"strings"
	"unicode/utf8"
)

// needs are words of which every text that a pattern matches has one, in whatever case. To look for
// them costs a few nanoseconds a letter, and most texts that are asked have none.
type needs struct {
	words []string // small letters, all of ASCII
	any   bool     // nothing is needed: the pattern must be asked
	first [256]bool
}

// mostWords is up to how many words are looked for; more of them cost what the pattern itself does.
const mostWords = 40

// needsOf are the needs of a regular expression.
func needsOf(text string) *needs {
	re, err := syntax.Parse(text, syntax.Perl)
	if err != nil {
		return &needs{any: true}
	}
	words, ok := required(re.Simplify())
	if !ok || len(words) > mostWords {
		return &needs{any: true}
	}
	n := &needs{words: words}
	for _, w := range words {
		n.first[w[0]], n.first[strings.ToUpper(w)[0]] = true, true
	}
	return n
}

// met reports whether a text may hold a match. A text beyond ASCII always may: letters there have
// others for their capitals.
func (n *needs) met(text string) bool {
	if n.any {
		return true
	}
	for i := range len(text) {
		switch c := text[i]; {
		case c >= utf8.RuneSelf:
			return true
		case n.first[c] && n.at(text[i:]):
			return true
		}
	}
	return false
}

// at reports whether a text begins with one of the words.
func (n *needs) at(text string) bool {
	for _, w := range n.words {
		if len(text) >= len(w) && strings.EqualFold(text[:len(w)], w) {
			return true
		}
	}
	return false
}

// required lists words of which each match of an expression in a text of ASCII has one; ok is false
// where a match may have none.
func required(re *syntax.Regexp) (words []string, ok bool) {
	switch re.Op {
	case syntax.OpLiteral:
		return literal(re.Rune), true
	case syntax.OpCapture, syntax.OpPlus:
		return required(re.Sub[0])
	case syntax.OpRepeat:
		if re.Min > 0 {
			return required(re.Sub[0])
		}
	case syntax.OpAlternate:
		for _, sub := range re.Sub {
			more, has := required(sub)
			if !has {
				return nil, false
			}
			words = append(words, more...)
		}
		return words, true
	case syntax.OpConcat:
		for _, sub := range re.Sub {
			if more, has := required(sub); has && (!ok || rarer(more, words)) {
				words, ok = more, true
			}
		}
		return words, ok
	}
	return nil, false
}

// literal is the word of a literal; none where no text of ASCII has it. Package syntax writes a letter
// that is matched in whatever case as the first of its kind, so the long s of a pattern stands here as an S.
func literal(letters []rune) []string {
	if slices.ContainsFunc(letters, func(r rune) bool { return r >= utf8.RuneSelf }) {
		return nil
	}
	return []string{strings.ToLower(string(letters))}
}

// rarer reports whether words are found in fewer texts than others are: the shortest decides, then how many.
func rarer(words, others []string) bool {
	a, b := shortest(words), shortest(others)
	return a > b || a == b && len(words) < len(others)
}

func shortest(words []string) int {
	least := 1 << 10
	for _, w := range words {
		least = min(least, len(w))
	}
	return least
}
