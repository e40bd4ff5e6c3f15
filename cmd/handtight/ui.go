package main

import (
	"errors"
	"fmt"
	"io"
	"os"
	"strconv"
	"strings"

	"golang.org/x/term"

	"handtight/bom/file"
	"handtight/bom/finding"
	"handtight/bom/source"
)

// ui is the only printer. What was asked for goes to out, trouble to errOut. Colour
// is used on a terminal only, never with NO_COLOR or TERM=dumb, and never alone: the
// word that it colours says the same. Text is folded to the terminal's width, or to
// COLUMNS, or to 80 columns, where there is none.
type ui struct {
	out, errOut io.Writer
	args        []string // of the command line, which errors may quote
	colour      bool
	width       int
	height      int // of the terminal; 0 where there is none
}

const (
	plainWidth  = 80
	plainHeight = 30 // lines of a screen, where nobody says
	widestLines = 120
	leastWidth  = 40
)

func newUI(out, errOut io.Writer) *ui {
	results := newStream(out)
	u := &ui{out: results, errOut: newStream(errOut), width: plainWidth}
	if n, err := strconv.Atoi(os.Getenv("COLUMNS")); err == nil && n > 0 {
		u.width = max(leastWidth, min(n, widestLines))
	}
	file, ok := out.(*os.File)
	if !ok || !term.IsTerminal(int(file.Fd())) {
		return u
	}
	u.colour = wantsColour(os.Getenv) && takesColour(file)
	results.colour = u.colour
	if w, h, err := term.GetSize(int(file.Fd())); err == nil && w > 0 {
		u.width, u.height = max(leastWidth, min(w, widestLines)), h
	}
	return u
}

// wantsColour reads the two variables that ask for plain text.
func wantsColour(env func(string) string) bool { return env("NO_COLOR") == "" && env("TERM") != "dumb" }

// screens is how many lines two screens hold.
func (u *ui) screens() int { return 2 * max(u.height, plainHeight) }

// The colours of the severities, as terminal codes.
const (
	red    = "1;31"
	yellow = "33"
	cyan   = "36"
	green  = "32"
	bold   = "1"
)

func (u *ui) paint(code, text string) string {
	if !u.colour || text == "" {
		return text
	}
	return "\x1b[" + code + "m" + text + "\x1b[0m"
}

// line prints a line; what is put into the format has no lines of its own, so that no name
// in a file can write one.
func (u *ui) line(format string, args ...any) {
	for i, a := range args {
		if s, ok := a.(string); ok {
			args[i] = strings.ReplaceAll(s, "\n", "\ufffd")
		}
	}
	fmt.Fprintln(u.out, fmt.Sprintf(format, args...))
}

// lost gives the first write that failed: what was asked for is then not said.
func (u *ui) lost() error {
	for _, w := range []io.Writer{u.out, u.errOut} {
		if s, ok := w.(*stream); ok && s.err != nil {
			return s.err
		}
	}
	return nil
}

// say prints a line of its own, wrapped to the width; code colours it, "" does not.
func (u *ui) say(code, format string, args ...any) {
	for _, l := range wrap(fmt.Sprintf(format, args...), u.width) {
		if code != "" {
			l = u.paint(code, l)
		}
		u.line("%s", l)
	}
}

// labelHang is where text begins behind a label.
const labelHang = 9

// fold prints text under a label, wrapped to the width and hung under itself.
func (u *ui) fold(label, text string) {
	hang := labelHang
	if label == "  -" {
		hang = dashHang
	}
	lead := label + strings.Repeat(" ", max(1, hang-widthOf(label)))
	for _, l := range wrap(text, u.width-max(hang, widthOf(lead))) {
		u.line("%s%s", lead, l)
		lead = strings.Repeat(" ", hang)
	}
}

// wrap breaks text at blanks into lines of at most width columns; a longer word stands on
// a line of its own. Letters that take two columns need no blank to be broken at.
func wrap(text string, width int) []string {
	var lines []string
	current := ""
	for _, word := range broken(strings.Fields(text), width) {
		if current != "" && widthOf(current)+1+widthOf(word) > width {
			lines = append(lines, current)
			current = ""
		}
		if current != "" {
			current += " "
		}
		current += word
	}
	return append(lines, current)
}

func (u *ui) printJSON(v any) error {
	return u.writeJSON(v, "  ")
}

func severityColour(s finding.Severity) string {
	return map[finding.Severity]string{finding.Stop: red, finding.Caution: yellow, finding.Note: cyan}[s]
}

// fault prints why the command could not do its work.
func (u *ui) fault(err error) {
	var faults source.Faults
	if errors.As(err, &faults) {
		for _, f := range faults[:min(len(faults), mostFaults)] {
			fmt.Fprintf(u.errOut, "%s\n\n", f.Error())
		}
		if more := len(faults) - mostFaults; more > 0 {
			fmt.Fprintf(u.errOut, "and %d more.\n\n", more)
		}
		fmt.Fprintf(u.errOut, "%s; nothing was judged or written.\n", counted(len(faults), "file error"))
		return
	}
	fmt.Fprintln(u.errOut, "handtight: "+u.quoting(err.Error()))
}

// mostFaults is how many file errors are listed.
const mostFaults = 50

// quoting makes a sentence that quotes the command line fit to print: an argument has no
// lines of its own, and a long one is cut.
func (u *ui) quoting(text string) string {
	const most = 300
	for _, arg := range u.args {
		fit := file.Name(arg)
		if len(fit) > most {
			fit = strings.ToValidUTF8(fit[:most], "") + " …"
		}
		if fit != arg {
			text = strings.ReplaceAll(text, arg, fit)
			text = strings.ReplaceAll(text, strings.TrimSpace(arg), fit)
		}
	}
	return text
}

func counted(n int, what string) string {
	if n == 1 {
		return "1 " + what
	}
	return fmt.Sprintf("%d %ss", n, what)
}
