package main

import (
	"regexp"
	"slices"
	"strings"
)

// more stands where a text goes on: nothing is cut in mid-sentence.
const more = " (more: --all)"

// Where a clause ends: of what to do where another way or step begins, of a reason where it goes on to
// explain itself.
var (
	aside   = regexp.MustCompile(` \([^()]*\)`)
	ways    = regexp.MustCompile(`(?:[.;] |, (?:or|and|so|else|then|never|not|without) )`)
	reasons = regexp.MustCompile(`(?:[.;:] |, (?:or|and|so|but|while|since|which|where|not) )`)
)

// brief says a text in so many lines, or in two: the whole of it where that has room; without what
// stands in brackets; up to the end of a clause, and that there is more. What has no such end is
// whole.
func brief(text string, room, lines int, clauses *regexp.Regexp) []string {
	if lines := wrap(text, room); len(lines) < 2 {
		return lines
	}
	short := plain(strings.Replace(text, "Do not force it. ", "", 1))
	for most := lines; most <= 2; most++ {
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

// plain leaves out what stands in brackets, but for what a statement rests on.
func plain(text string) string {
	return aside.ReplaceAllStringFunc(text, func(s string) string {
		if slices.Contains([]string{" (memory)", " (common practice)", " (judgement)"}, s) {
			return s
		}
		return ""
	})
}

// leastClause is how long a clause must be to say something by itself.
const leastClause = 24
