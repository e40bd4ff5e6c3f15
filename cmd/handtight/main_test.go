package main

import (
	"flag"
	"os"
	"path/filepath"
	"strconv"
	"testing"

	"github.com/rogpeppe/go-internal/testscript"
	"github.com/stretchr/testify/require"
)

var update = flag.Bool("update", false, "rewrite the expected output within the scripts")

func TestMain(m *testing.M) {
	testscript.Main(m, map[string]func(){"handtight": main})
}

// The commands as a user runs them: one script a topic. Each finds the example builds
// in its own folder, so that no path of a machine stands in the output.
func TestScripts(t *testing.T) {
	if testing.Short() {
		t.Skip("each script starts the program many times: in the full run")
	}
	testscript.Run(t, testscript.Params{
		Dir:                 filepath.Join("testdata", "script"),
		RequireExplicitExec: true,
		RequireUniqueNames:  true,
		UpdateScripts:       *update,
		Setup: func(env *testscript.Env) error {
			for _, demo := range []string{"clean", "careless", "refit", "arrows", "leftovers", "shops", "engine", "engine-careless", "recovery", "recovery-careless", "drip", "logs", "oldplant"} {
				from := filepath.Join("..", "..", "testdata", demo)
				if err := os.CopyFS(filepath.Join(env.WorkDir, demo), os.DirFS(from)); err != nil {
					return err
				}
			}
			return nil
		},
		Cmds: map[string]func(*testscript.TestScript, bool, []string){
			"grow":    grow,
			"onlyhas": onlyHas,
		},
	})
}

// grow FILE BYTES makes a file of that size without writing it out.
func grow(ts *testscript.TestScript, _ bool, args []string) {
	size, err := strconv.ParseInt(args[1], 10, 64)
	ts.Check(err)
	name := ts.MkAbs(args[0])
	f, err := os.Create(name)
	ts.Check(err)
	ts.Check(f.Close())
	ts.Check(os.Truncate(name, size))
}

// onlyhas DIR NAME... checks that a folder holds these names and no other.
func onlyHas(ts *testscript.TestScript, _ bool, args []string) {
	entries, err := os.ReadDir(ts.MkAbs(args[0]))
	ts.Check(err)
	want := map[string]bool{}
	for _, name := range args[1:] {
		want[name] = true
	}
	for _, e := range entries {
		if !want[e.Name()] {
			ts.Fatalf("%s holds %s, which nobody asked for", args[0], e.Name())
		}
		delete(want, e.Name())
	}
	for name := range want {
		ts.Fatalf("%s does not hold %s", args[0], name)
	}
}

// An end that begins with its dash size is no flag; flags stay flags.
func TestDashSizes(t *testing.T) {
	for name, row := range map[string]struct{ args, want []string }{
		"a JIC size is an end, not a flag":           {[]string{"mate", "-6 JIC male", "-8 ORB"}, []string{"mate", " -6 JIC male", " -8 ORB"}},
		"a flag before the command is kept":          {[]string{"--json", "thread", "-4"}, []string{"--json", "thread", " -4"}},
		"a lone dash is standard input":              {[]string{"thread", "-"}, []string{"thread", "-"}},
		"after -- all is taken as it is":             {[]string{"mate", "--", "-6 JIC", "x"}, []string{"mate", "--", "-6 JIC", "x"}},
		"other commands' file names are not touched": {[]string{"order", "b.toml", "-o", "-5.xlsx"}, []string{"order", "b.toml", "-o", "-5.xlsx"}},
		"no command at all":                          {[]string{"--help"}, []string{"--help"}},
	} {
		t.Run(name, func(t *testing.T) { require.Equal(t, row.want, dashSizes(row.args)) })
	}
}
