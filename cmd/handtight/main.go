// Command handtight checks the parts list of a small desalinator, joint by joint
// and segment by segment, and writes the priced shopping list.
package main

import (
	"errors"
	"fmt"
	"io"
	"os"
	"runtime/debug"
	"slices"
	"strings"

	"handtight/pressure/pattern"
)

func main() {
	if os.Getenv("GOGC") == "" {
		debug.SetGCPercent(rarely)
	}
	os.Exit(run(os.Args[1:], os.Stdin, os.Stdout, os.Stderr))
}

// rarely is how much is left to lie before it is gathered up, in per cent of what is in use: a
// command ends before most of it would have been. GOGC, where it is set, goes before it.
const rarely = 400

// Exit statuses.
const (
	exitClear = 0 // nothing stops
	exitStops = 1 // stops were found, or a joint that does not seal
	exitFault = 2 // the file or the command is at fault
)

// run is the whole program: arguments and streams in, exit status out.
func run(args []string, in io.Reader, out, errOut io.Writer) int {
	app := &app{in: in, ui: newUI(out, errOut)}
	app.ui.args = args
	root := app.root()
	root.SetArgs(append([]string{}, dashSizes(args)...)) // never nil: cobra would read the words of the process itself
	root.SetIn(in)
	root.SetOut(app.ui.out)
	root.SetErr(app.ui.errOut)
	err := root.Execute()
	if lost := app.ui.lost(); lost != nil && (err == nil || errors.Is(err, lost)) {
		err = fmt.Errorf("the output cannot be written: %w", lost)
	}
	if errors.Is(err, errFaulty) {
		return exitFault
	}
	if err != nil {
		app.ui.fault(err)
		return exitFault
	}
	return app.status
}

// dashSize is an end that begins with its dash size: "-6 JIC male".
var dashSize = pattern.New(`^-\d`)

// dashSizes keeps ends that begin with a dash size from being taken for flags: no flag
// of ours begins with a digit. The commands that read ends trim the blank.
func dashSizes(args []string) []string {
	at := slices.IndexFunc(args, func(s string) bool { return !strings.HasPrefix(s, "-") })
	if at < 0 || !slices.Contains([]string{"mate", "thread", "adapt", "catalog"}, args[at]) {
		return args
	}
	out := slices.Clone(args)
	for i := at + 1; i < len(out) && out[i] != "--"; i++ {
		if dashSize.MatchString(out[i]) {
			out[i] = " " + out[i]
		}
	}
	return out
}
