package main

import (
	"errors"
	"io"
	"os"
)

// stream is the one way out of the program, for results, help, prompts and errors alike:
// what would drive the terminal is taken out, and the first write that fails is kept, so
// that lost output never ends as success.
type stream struct {
	to     io.Writer
	colour bool
	err    error
}

// errClosed says that nobody reads what is written.
var errClosed = errors.New("the standard output is closed (or is the null device, opened for reading and writing: it looks the same)")

func newStream(to io.Writer) *stream {
	s := &stream{to: to}
	if to == io.Writer(os.Stdout) && closedOutput() {
		s.err = errClosed
	}
	return s
}

// Write writes a whole text, cleaned.
func (s *stream) Write(p []byte) (int, error) {
	if s.err != nil {
		return 0, s.err
	}
	if _, s.err = io.WriteString(s.to, clean(string(p), s.colour)); s.err != nil {
		return 0, s.err
	}
	return len(p), nil
}
