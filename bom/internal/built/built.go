// Package built makes the small builds that tests of the stages walk.
package built

import (
	"fmt"
	"math"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"handtight/bom"
	"handtight/bom/read"
	"handtight/bom/state"
)

// Common practice, no source: 55 bar below. Check values, and no limit rests on them.

// Head begins a build, and Any is a build behind it that is without fault: nine lines together.
const (
	Head = "[build]\nname = \"boat\"\ncurrency = \"EUR\"\n"
	Any  = "[[item]]\nid = \"well\"\nkind = \"sea\"\n[[item]]\nid = \"sink\"\nkind = \"drain\"\n[[run]]\nname = \"any\"\npath = [\"well\", \"sink\"]\n"
)

// Changes of the plant: its relief leads overboard by an outlet of its own, and its brine has no tee for it and no
// valve behind.
var (
	OwnOutlet  = Edit{`"relief", "tee/outlet.branch"]`, `"relief", "relief-outlet"]`}
	PlugOutlet = Edit{`"tee/outlet", `, ``}
	NoValve    = Edit{`"overboard-valve", `, ``}
)

// Edit is one change of the plant's text: what stands there once, and what takes its place.
type Edit [2]string

// More adds items and runs to the plant.
func More(text string) Edit { return Edit{"[duty]", text + "\n[duty]"} }

// DutyOf sets another duty.
func DutyOf(text string) Edit { return Edit{`"55 bar"`, `"` + text + `"`} }

// Plant reads and walks the plant of testdata/states with some changes.
func Plant(t testing.TB, edits ...Edit) *bom.System {
	t.Helper()
	text := Demo(t, "states/plant.toml")
	for _, e := range edits {
		text = Replace(t, text, e[0], e[1])
	}
	return Walk(t, DemoPath(t, "states/plant.toml"), text)
}

// Demo is the text of a file of testdata, from whichever package the test is run in.
func Demo(t testing.TB, path string) string {
	t.Helper()
	text, err := os.ReadFile(DemoPath(t, path))
	require.NoError(t, err)
	return string(text)
}

// DemoPath is where a file of testdata lies.
func DemoPath(t testing.TB, path string) string {
	t.Helper()
	for up := "."; len(up) < 32; up = filepath.Join(up, "..") {
		if _, err := os.Stat(filepath.Join(up, "go.mod")); err == nil {
			return filepath.Join(up, "testdata", path)
		}
	}
	require.FailNow(t, "no module above")
	return ""
}

// Walk reads and walks a build that must be without fault.
func Walk(t testing.TB, path, text string) *bom.System {
	t.Helper()
	build, faults := read.Parse(path, []byte(text))
	require.NoError(t, faults.Err())
	sys, faults := bom.Walk(build)
	require.NoError(t, faults.Err())
	return sys
}

// Faults reads a build that stands in a folder of its own with other files.
func Faults(t *testing.T, text string, files map[string]string) string {
	t.Helper()
	t.Chdir(t.TempDir())
	for name, content := range files {
		require.NoError(t, os.WriteFile(name, []byte(content), 0o600))
	}
	build, faults := read.Parse("boat.toml", []byte(text))
	if len(faults) > 0 {
		require.Nil(t, build, "nothing is half-read")
		return faults.Error()
	}
	_, faults = bom.Walk(build)
	return faults.Error()
}

// Port is the number of a port of the graph.
func Port(t testing.TB, sys *bom.System, name string) int {
	t.Helper()
	for i := range sys.Graph.Ports {
		if sys.Graph.Ports[i].Name() == name {
			return i
		}
	}
	require.FailNow(t, "no port "+name)
	return -1
}

// State finds a state by its name.
func State(t testing.TB, sys *bom.System, name string) *state.State {
	t.Helper()
	for _, st := range sys.States.All {
		if st.Name == name {
			return st
		}
	}
	require.FailNow(t, "no state "+name)
	return nil
}

// Close compares pressures in bar, infinite ones too.
func Close(t testing.TB, want, got float64, words string, args ...any) {
	t.Helper()
	if math.IsInf(want, 1) || math.IsInf(got, 1) {
		require.Equal(t, want, got, append([]any{words}, args...)...)
		return
	}
	require.InDelta(t, want, got, 1e-9, append([]any{words}, args...)...)
}

// Replace changes what must stand in a text once.
func Replace(t testing.TB, text, from, to string) string {
	t.Helper()
	require.Equal(t, 1, strings.Count(text, from), "%q stands once", from)
	return strings.Replace(text, from, to, 1)
}

// Runs writes runs, each a text of its steps with spaces between them.
func Runs(paths ...string) string {
	var b strings.Builder
	for i, path := range paths {
		fmt.Fprintf(&b, "[[run]]\nname = \"r%d\"\npath = [\"%s\"]\n", i+1, strings.Join(strings.Fields(path), "\", \""))
	}
	return b.String()
}

// Ended writes an item of two ends.
func Ended(id, kind, a, b string) string {
	names := [2]string{"a", "b"}
	if kind == "check valve" {
		names = [2]string{"in", "out"}
	}
	return fmt.Sprintf("[[item]]\nid = %q\nkind = %q\nports = { %s = '%s', %s = '%s' }\n", id, kind, names[0], a, names[1], b)
}

// Fed is a line that stands at 3 bar from a house supply; parts of it are given.
func Fed(items, path string) string {
	return Head + "[[item]]\nid = \"house\"\nkind = \"house supply\"\npressure = \"3 bar\"\n[[item]]\nid = \"end\"\nkind = \"cap\"\nrated = \"400 bar\"\n" + items + Runs("house "+path+" end")
}

// Elbow writes an elbow with further keys, such as its rating.
func Elbow(id, keys string) string {
	return "[[item]]\nid = \"" + id + "\"\nkind = \"elbow\"\n" + keys + "\n"
}
