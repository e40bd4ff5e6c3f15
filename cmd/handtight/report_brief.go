package main

import (
	"regexp"
	"strings"
)

// more stands where a remedy has further ways or further steps: nothing is cut in mid-sentence.
const more = " (more: --all)"

var (
	aside   = regexp.MustCompile(` \([^()]*\)`)
	clauses = regexp.MustCompile(`(?:[.;] |, (?:or|and|so|else|then|never|not|without) )`)
)

// brief says what to do in a line, or in two: the whole of it where that has room; without what
// stands in brackets; up to the end of a clause, and that there is more. What has no such end is
// whole.
func brief(text string, room int) []string {
	if lines := wrap(text, room); len(lines) < 2 {
		return lines
	}
	short := aside.ReplaceAllString(strings.Replace(text, "Do not force it. ", "", 1), "")
	for _, most := range []int{1, 2} {
		if lines := wrap(short, room); len(lines) <= most {
			return lines
		}
		ends := clauses.FindAllStringIndex(short, -1)
		for i := len(ends) - 1; i >= 0; i-- {
			clause := strings.TrimRight(short[:ends[i][0]], " ,;.")
			if widthOf(clause) < leastClause {
				continue
			}
			if lines := wrap(clause+more, room); len(lines) <= most {
				return lines
			}
		}
	}
	return wrap(text, room)
}

// leastClause is how long a clause must be to say something by itself.
const leastClause = 24
