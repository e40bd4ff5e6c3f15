package main

import (
	"bufio"
	"bytes"
	"errors"
	"fmt"
	"io"
	"strings"

	"handtight/threads/title"
)

// longestLine is the longest line that is read from standard input, in bytes.
const longestLine = 64 << 10

// mostAtOnce is how many lines are read at once at most, so that a list of any length takes the memory of so many.
const mostAtOnce = 256

// threadLines reads a text a line, as many at once as have come, so that a list has all processors and a line that is typed has its answer.
// A line that is longer than longestLine is named by its number and skipped.
func (a *app) threadLines() error {
	in := lineReader{Reader: bufio.NewReaderSize(a.in, longestLine)}
	for {
		texts, err := in.next(func(n int) { fmt.Fprintf(a.ui.errOut, "line %d: longer than 64 KiB, skipped\n", n) })
		for _, r := range title.ReadAll(texts) {
			if err := a.threadLine(r); err != nil {
				return err
			}
		}
		if lost := a.ui.lost(); lost != nil {
			return lost
		}
		switch {
		case errors.Is(err, io.EOF) && in.skipped > 0:
			return fmt.Errorf("%s skipped: the text of one part is shorter", counted(in.skipped, "line"))
		case errors.Is(err, io.EOF):
			return nil
		case err != nil:
			return err
		}
	}
}

// lineReader gives the lines of its input that have come, and counts them.
type lineReader struct {
	*bufio.Reader
	read, skipped int
}

// next gives the texts of at least one line and of those behind it that are there without waiting. tooLong is told the number of each line that is
// skipped, in order. The error is that of the input, with the texts before it.
func (in *lineReader) next(tooLong func(n int)) ([]string, error) {
	var texts []string
	for {
		in.read++
		line, err := in.ReadSlice('\n')
		if errors.Is(err, bufio.ErrBufferFull) {
			in.skipped++
			tooLong(in.read)
			line, err = nil, in.restOfLine()
		}
		if text := strings.TrimSpace(string(line)); text != "" {
			texts = append(texts, text)
		}
		if err != nil || len(texts) >= mostAtOnce || !in.lineThere() {
			return texts, err
		}
	}
}

// lineThere reports a whole line that has come and was not read.
func (in *lineReader) lineThere() bool {
	there, err := in.Peek(in.Buffered())
	return err == nil && bytes.IndexByte(there, '\n') >= 0
}

// restOfLine reads to the end of a line that did not fit.
func (in *lineReader) restOfLine() error {
	for {
		_, err := in.ReadSlice('\n')
		if !errors.Is(err, bufio.ErrBufferFull) {
			return err
		}
	}
}
