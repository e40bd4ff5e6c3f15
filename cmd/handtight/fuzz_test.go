package main

import (
	"bytes"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

// A whole check of builds that are put together from pieces of a sound one: it ends, in
// one of its three ways, prints nothing that drives a terminal, and says the same twice;
// what it takes, the order takes too.
func FuzzCheck(f *testing.F) {
	lines := strings.Split(hostileBuild, "\n")
	values := []string{"1", "\"1/2 NPT male\"", "\"5 m\"", "\"9e9 h\"", "[\"a1/1\", \"h1\", \"a1/2\"]", "{ a = '1/2 BSPP male' }", "\"tee\"", "true", "\"95 %\"", "999999"}
	f.Add([]byte{})
	f.Add([]byte{1, 2, 3, 0, 20, 4})
	f.Add([]byte{2, 30, 9, 1, 55, 0, 0, 14, 4})
	f.Fuzz(func(t *testing.T, moves []byte) {
		build := append([]string{}, lines...)
		for ; len(moves) >= 3 && len(build) < 2000; moves = moves[3:] {
			at, what := int(moves[1])%len(build), int(moves[2])
			switch moves[0] % 5 {
			case 0: // a line falls away
				build = append(build[:at:at], build[at+1:]...)
			case 1: // a line stands twice
				build = append(build[:at+1:at+1], build[at:]...)
			case 2: // another value
				if key, _, ok := strings.Cut(build[at], " = "); ok {
					build[at] = key + " = " + values[what%len(values)]
				}
			case 3: // a line of somewhere else
				build[at] = lines[what%len(lines)]
			case 4: // a letter is lost
				if n := len(build[at]); n > 0 {
					build[at] = build[at][:what%n] + build[at][what%n+1:]
				}
			}
			if len(build) == 0 {
				return
			}
		}
		path := filepath.Join(t.TempDir(), "build.toml")
		require.NoError(t, os.WriteFile(path, []byte(strings.Join(build, "\n")), 0o644))
		checked := func(args ...string) (int, string) {
			var out, errOut bytes.Buffer
			status := run(args, strings.NewReader(""), &out, &errOut)
			require.Contains(t, []int{exitClear, exitStops, exitFault}, status)
			require.False(t, strings.ContainsFunc(out.String()+errOut.String(), drives))
			require.Equal(t, status == exitFault, errOut.Len() > 0)
			return status, out.String() + errOut.String()
		}
		status, text := checked("check", path)
		again, same := checked("check", path)
		require.Equal(t, status, again)
		require.Equal(t, text, same)
		ordered, _ := checked("order", path)
		require.Equal(t, status == exitFault, ordered == exitFault, "check refuses what the order would")
		_, _ = checked("check", path, "--json")
	})
}
