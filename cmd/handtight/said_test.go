package main

import (
	"bytes"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/spf13/cobra"
	"github.com/spf13/pflag"
	"github.com/stretchr/testify/require"
)

// call is one call of the program with what it must say. The words of the command line are
// parted by " | ". Of a fault (status 2) nothing goes to the output and part of says stands in
// what goes to errors; of all else nothing goes to errors.
type call struct {
	why    string
	line   string
	status int
	says   string
	silent string // what must not stand there; "" for nothing
	in     string // standard input
}

func (c call) args() []string {
	if c.line == "" {
		return nil
	}
	return strings.Split(c.line, " | ")
}

// demoFolder is a folder with copies of the example builds, and the working folder of the test.
func demoFolder(t *testing.T, demos ...string) {
	t.Helper()
	dir := t.TempDir()
	for _, demo := range demos {
		require.NoError(t, os.CopyFS(filepath.Join(dir, demo), os.DirFS(filepath.Join("..", "..", "testdata", demo))))
	}
	t.Chdir(dir)
}

// sayAll runs each line in turn: a later one may use what an earlier one wrote.
func sayAll(t *testing.T, rows []call) {
	t.Helper()
	for _, row := range rows {
		t.Run(row.why, func(t *testing.T) {
			var out, errOut bytes.Buffer
			status := run(row.args(), strings.NewReader(row.in), &out, &errOut)
			require.Equal(t, row.status, status, "%s\n%s%s", row.line, out.String(), errOut.String())
			text, empty := out.String(), errOut.String()
			if row.status == exitFault {
				text, empty = empty, text
			}
			require.Empty(t, empty, row.line)
			require.Contains(t, text, row.says, row.line)
			if row.silent != "" {
				require.NotContains(t, text, row.silent, row.line)
			}
		})
	}
}

// everySaid are the tables of the files said_*_test.go.
var everySaid = [][]call{saidOfThread, saidOfMate, saidOfAdapt, saidOfIdentify, saidOfCatalog, saidOfWhy, saidOfCheck, saidOfOrder, saidOfPages, saidOfCart, saidOfDuty, saidOfNew}

// Each flag of each command stands in one line at least of the tables, and each command in one
// that ends well and in one that does not.
func TestEveryFlagIsTried(t *testing.T) {
	tried, statuses := map[string]bool{}, map[string]map[int]bool{}
	for _, rows := range everySaid {
		for _, row := range rows {
			args := row.args()
			for k, arg := range args {
				if k == 0 {
					if statuses[arg] == nil {
						statuses[arg] = map[int]bool{}
					}
					statuses[arg][row.status] = true
					continue
				}
				name, _, _ := strings.Cut(strings.TrimLeft(arg, "-"), "=")
				if strings.HasPrefix(arg, "-") {
					tried[args[0]+" "+name] = true
				}
			}
		}
	}
	// What waits for a person, or serves until it is interrupted, has tests of its own:
	// watch_test.go, serve_test.go.
	apart := map[string]bool{"check watch": true, "page serve": true, "page port": true, "new ask": true, "cart accept": true}
	a := &app{ui: newUI(&bytes.Buffer{}, &bytes.Buffer{})}
	for _, cmd := range a.root().Commands() {
		if cmd.Name() == "help" || cmd.Name() == "completion" {
			continue
		}
		eachFlag(cmd, func(f *pflag.Flag) {
			name := cmd.Name() + " " + f.Name
			require.True(t, tried[name] || f.Shorthand != "" && tried[cmd.Name()+" "+f.Shorthand] || apart[name], "no line tries --%s of %s", f.Name, cmd.Name())
		})
		require.True(t, statuses[cmd.Name()][exitFault], "no line has %s fail", cmd.Name())
		require.True(t, statuses[cmd.Name()][exitClear] || statuses[cmd.Name()][exitStops], "no line has %s end", cmd.Name())
	}
}

func eachFlag(cmd *cobra.Command, do func(*pflag.Flag)) {
	cmd.LocalNonPersistentFlags().VisitAll(func(f *pflag.Flag) {
		if f.Name != "help" {
			do(f)
		}
	})
}
