// Command handtight checks the parts list of a small desalinator, joint by joint
// and segment by segment, and writes the priced shopping list.
package main

import (
	"io"
	"os"
)

func main() { os.Exit(run(os.Args[1:], os.Stdin, os.Stdout, os.Stderr)) }

// Exit statuses.
const (
	exitClear = 0 // nothing stops
	exitStops = 1 // stops were found, or a joint that does not seal
	exitFault = 2 // the file or the command is at fault
)

// run is the whole program: arguments and streams in, exit status out.
func run(args []string, in io.Reader, out, errOut io.Writer) int {
	app := &app{in: in, ui: newUI(out, errOut)}
	root := app.root()
	root.SetArgs(args)
	root.SetIn(in)
	root.SetOut(out)
	root.SetErr(errOut)
	if err := root.Execute(); err != nil {
		app.ui.fault(err)
		return exitFault
	}
	return app.status
}
