package main

import (
	"bytes"
	"os"
	"os/exec"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

// The notice names every module that is linked in on any system, in its version, and no
// other. It is written again by .ci/licences.
func TestLicences(t *testing.T) {
	var want []string
	for _, system := range []string{"linux", "windows", "darwin"} {
		cmd := exec.Command("go", "list", "-deps", "-f", "{{with .Module}}{{if not .Main}}{{.Path}} {{.Version}}{{end}}{{end}}", ".")
		cmd.Env = append(os.Environ(), "GOOS="+system, "CGO_ENABLED=0")
		out, err := cmd.Output()
		if err != nil {
			t.Skipf("the go command does not run here: %v", err)
		}
		want = append(want, strings.Split(strings.TrimSpace(string(out)), "\n")...)
	}
	slices.Sort(want)
	want = slices.DeleteFunc(slices.Compact(want), func(s string) bool { return s == "" })
	require.Greater(t, len(want), 10)
	var out bytes.Buffer
	require.Equal(t, exitClear, run([]string{"--licences"}, strings.NewReader(""), &out, &bytes.Buffer{}))
	var got []string
	for line := range strings.Lines(out.String()) {
		path, version, ok := strings.Cut(strings.TrimSpace(line), " ")
		if ok && strings.Contains(path, ".") && strings.Contains(path, "/") && strings.HasPrefix(version, "v") && !strings.Contains(version, " ") {
			got = append(got, path+" "+version)
		}
	}
	slices.Sort(got)
	require.Equal(t, want, got, "run .ci/licences")
	for _, text := range []string{"ISC License", "Apache License", "The Go standard library and runtime", "Permission is hereby granted", "Redistributions in binary form"} {
		require.Contains(t, out.String(), text)
	}
	own, err := os.ReadFile("../../LICENSE")
	require.NoError(t, err)
	require.True(t, strings.HasPrefix(out.String(), string(own)), "our own comes first")
}
