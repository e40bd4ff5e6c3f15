// Package pattern holds regular expressions that are compiled when they are first asked for.
// A command uses few of the program's patterns, and compiling all of them took longer than
// most commands do. A text without any of the words that a match must have is not put to the
// expression at all: most texts are such, and a look for words is some ten times as fast.
package pattern

import (
	"errors"
	"fmt"
	"regexp"
	"sync"
)

// Pattern is a regular expression in the syntax of package regexp. It may be asked by several
// goroutines at once. Its methods are those of [regexp.Regexp].
type Pattern struct {
	text     string
	compiled func() *regexp.Regexp
	needs    func() *needs
}

var all []*Pattern

// New makes a pattern for a variable of a package: not for use while the program runs, since
// it is kept. A text that is no regular expression panics at its first use, and [Faults] names
// it before.
func New(text string) *Pattern {
	p := &Pattern{text, sync.OnceValue(func() *regexp.Regexp { return regexp.MustCompile(text) }), sync.OnceValue(func() *needs { return needsOf(text) })}
	all = append(all, p)
	return p
}

// Faults names every pattern of the program that does not compile.
func Faults() error {
	var faults []error
	for _, p := range all {
		if _, err := regexp.Compile(p.text); err != nil {
			faults = append(faults, fmt.Errorf("pattern %q: %w", p.text, err))
		}
	}
	return errors.Join(faults...)
}
