package main

import (
	"bytes"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"

	"github.com/spf13/pflag"
	"github.com/stretchr/testify/require"
)

func readmeText(t *testing.T) string {
	t.Helper()
	text, err := os.ReadFile("../../README.md")
	require.NoError(t, err)
	return string(text)
}

// blocksOf are the fenced blocks of a language; "" for those that name none.
func blocksOf(text, language string) []string {
	var out []string
	for _, m := range regexp.MustCompile("(?ms)^```([a-z]*)\n(.*?)^```$").FindAllStringSubmatch(text, -1) {
		if m[1] == language {
			out = append(out, m[2])
		}
	}
	return out
}

// The table of commands has each command, and no other; and each flag that the page names is one
// of the command's whose row, or of the command in whose code span, it stands.
func TestReadmeNamesTheCommandsAndTheirFlags(t *testing.T) {
	a := &app{ui: newUI(&bytes.Buffer{}, &bytes.Buffer{})}
	var want []string
	flags := map[string]map[string]bool{"": {"json": true, "help": true, "licences": true}}
	for _, c := range a.root().Commands() {
		if c.Name() == "help" || c.Name() == "completion" {
			continue
		}
		want = append(want, c.Name())
		flags[c.Name()] = map[string]bool{"json": true, "help": true}
		c.Flags().VisitAll(func(f *pflag.Flag) { flags[c.Name()][f.Name], flags[""][f.Name] = true, true })
	}
	text := readmeText(t)
	var named []string
	flag := regexp.MustCompile(`--([a-z][a-z-]+)`)
	for line := range strings.Lines(text) {
		m := regexp.MustCompile("^\\| `([a-z]+)[^|]*` \\|(.*)").FindStringSubmatch(line)
		if m == nil || flags[m[1]] == nil {
			continue
		}
		named = append(named, m[1])
		for _, f := range flag.FindAllStringSubmatch(line, -1) {
			require.True(t, flags[m[1]][f[1]], "%s has no --%s: %s", m[1], f[1], line)
		}
	}
	slices.Sort(want)
	slices.Sort(named)
	require.Equal(t, want, slices.Compact(named), "the table of commands in README.md")
	for _, f := range flag.FindAllStringSubmatch(strings.ReplaceAll(text, "-->", ""), -1) {
		require.True(t, flags[""][f[1]], "README.md names --%s, which no command has", f[1])
	}
	for _, span := range regexp.MustCompile("`([a-z]+) [^`]*--[^`]*`").FindAllString(text, -1) {
		name, _, _ := strings.Cut(strings.Trim(span, "`"), " ")
		if flags[name] == nil {
			continue
		}
		for _, f := range flag.FindAllStringSubmatch(span, -1) {
			require.True(t, flags[name][f[1]], "README.md: %s has no --%s", name, f[1])
		}
	}
}

// What a newcomer is told to type is typed: no line is at fault, and each leaves the file that it
// names.
func TestReadmeCommandsRun(t *testing.T) {
	if testing.Short() {
		t.Skip("the whole job on the example builds: in the full run")
	}
	text := readmeText(t)
	dir := t.TempDir()
	require.NoError(t, os.CopyFS(filepath.Join(dir, "testdata"), os.DirFS("../../testdata")))
	t.Chdir(dir)
	ran := 0
	for _, block := range blocksOf(text, "sh") {
		for line := range strings.Lines(block) {
			args, ok := strings.CutPrefix(strings.TrimSpace(line), "go run ./cmd/handtight ")
			if !ok {
				require.Regexp(t, `^go test `, line)
				continue
			}
			ran++
			var out, errOut bytes.Buffer
			words := strings.Fields(args)
			status := run(words, strings.NewReader(""), &out, &errOut)
			require.NotEqual(t, exitFault, status, "%s\n%s", line, errOut.String())
			if k := slices.Index(words, "-o"); k > 0 {
				require.FileExists(t, words[k+1], line)
			}
		}
	}
	require.GreaterOrEqual(t, ran, 5)
	for _, path := range regexp.MustCompile("testdata/[a-z/.-]+[a-z]").FindAllString(text, -1) {
		if !strings.HasPrefix(path, "testdata/marks") && !strings.Contains(text, "pressure/"+path) {
			_, err := os.Stat(path)
			require.NoError(t, err)
		}
	}
}

// The report that the page shows is what check says of a build.
func TestReadmeShowsAReport(t *testing.T) {
	shown := blocksOf(readmeText(t), "")
	require.Len(t, shown, 1)
	var out, errOut bytes.Buffer
	require.Equal(t, exitStops, run([]string{"check", "testdata/readme/build.toml"}, strings.NewReader(""), &out, &errOut), errOut.String())
	require.Contains(t, out.String(), shown[0])
}

// The sections of a build file that the page shows are read: with the few items that they leave
// out, and that testdata/readme/fittings.toml has, they make a build, and no key of theirs is
// unknown.
func TestReadmeBuildIsRead(t *testing.T) {
	sections := blocksOf(readmeText(t), "toml")
	require.Len(t, sections, 1)
	dir := t.TempDir()
	rest, err := os.ReadFile("testdata/readme/fittings.toml")
	require.NoError(t, err)
	require.NoError(t, os.WriteFile(filepath.Join(dir, "fittings.toml"), rest, 0o644))
	require.NoError(t, os.WriteFile(filepath.Join(dir, "build.toml"), []byte(sections[0]), 0o644))
	var out, errOut bytes.Buffer
	status := run([]string{"check", filepath.Join(dir, "build.toml")}, strings.NewReader(""), &out, &errOut)
	require.Equal(t, exitStops, status, "%s%s", out.String(), errOut.String())
	require.Contains(t, out.String(), "6 joints", "each joint of the two runs that it shows")
}
