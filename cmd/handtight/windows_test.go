package main

import (
	"bytes"
	"os"
	"path/filepath"
	"runtime"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

// Names that Windows keeps for devices are refused there, and are plain files elsewhere.
func TestReservedNamesWhereTheyApply(t *testing.T) {
	build, list := boughtList(t)
	t.Chdir(t.TempDir())
	for name, args := range map[string][]string{
		"con.xlsx": {"order", build}, "nul.html": {"page", build}, "aux.toml": {"draft", list},
	} {
		var out, errOut bytes.Buffer
		status := run(append(args, "-o", name), strings.NewReader(""), &out, &errOut)
		if runtime.GOOS == "windows" {
			require.Equal(t, exitFault, status, name)
			require.Contains(t, errOut.String(), "for a device", name)
			continue
		}
		require.NotContains(t, errOut.String(), "device", name)
		_, err := os.Stat(name)
		require.NoError(t, err, "%s: %s", name, errOut.String())
	}
}

// A build that was written on Windows checks as the same build elsewhere, and what came in
// is written into it with its own ends of lines.
func TestWindowsLines(t *testing.T) {
	build, list := boughtList(t)
	check := func() string {
		var out, errOut bytes.Buffer
		run([]string{"check", build}, strings.NewReader(""), &out, &errOut)
		return out.String() + errOut.String()
	}
	unix := check()
	for _, name := range []string{"build.toml", "fittings.toml"} {
		path := filepath.Join(filepath.Dir(build), name)
		text, err := os.ReadFile(path)
		require.NoError(t, err)
		require.NoError(t, os.WriteFile(path, bytes.ReplaceAll(text, []byte("\n"), []byte("\r\n")), 0o644))
	}
	require.Equal(t, unix, check())
	var out, errOut bytes.Buffer
	run([]string{"receive", build, list, "--amend"}, strings.NewReader(""), &out, &errOut)
	require.Contains(t, out.String(), "+", errOut.String())
	kept, err := filepath.Glob(filepath.Join(filepath.Dir(build), "*.issue-1.toml"))
	require.NoError(t, err)
	require.NotEmpty(t, kept, "something was amended: %s%s", out.String(), errOut.String())
	for _, name := range []string{"build.toml", "fittings.toml"} {
		windowsLines(t, filepath.Join(filepath.Dir(build), name))
	}
}

func windowsLines(t *testing.T, path string) {
	t.Helper()
	text, err := os.ReadFile(path)
	require.NoError(t, err)
	require.NotZero(t, bytes.Count(text, []byte("\n")))
	require.Equal(t, bytes.Count(text, []byte("\n")), bytes.Count(text, []byte("\r\n")), path)
}

// What is written for a build with the ends of lines of Windows has the same ones.
func TestWindowsLinesAreWrittenBack(t *testing.T) {
	for folder, args := range map[string][]string{
		"careless": {"check", "build.toml", "--fix", "new.toml"},
		"oldplant": {"audit", "build.toml", "--on", "2026-11-28", "--record", "new.toml"},
	} {
		from, err := filepath.Abs(filepath.Join("..", "..", "testdata", folder))
		require.NoError(t, err)
		t.Run(folder, func(t *testing.T) {
			dir := t.TempDir()
			names, err := filepath.Glob(filepath.Join(from, "*.toml"))
			require.NoError(t, err)
			for _, name := range names {
				text, err := os.ReadFile(name)
				require.NoError(t, err)
				require.NoError(t, os.WriteFile(filepath.Join(dir, filepath.Base(name)), bytes.ReplaceAll(text, []byte("\n"), []byte("\r\n")), 0o644))
			}
			t.Chdir(dir)
			var out, errOut bytes.Buffer
			run(args, strings.NewReader(""), &out, &errOut)
			require.FileExists(t, "new.toml", errOut.String())
			windowsLines(t, "new.toml")
		})
	}
}

// A path of Windows on another system's command line: said what to write.
func TestWindowsPathOnTheCommandLine(t *testing.T) {
	if runtime.GOOS == "windows" {
		t.Skip("it is a path here")
	}
	for _, path := range []string{`C:\boat\build.toml`, `boat\build.toml`} {
		var out, errOut bytes.Buffer
		require.Equal(t, exitFault, run([]string{"check", path}, strings.NewReader(""), &out, &errOut))
		require.Contains(t, out.String()+errOut.String(), "write folders with / here", path)
	}
}

// An include with the drive or the backslashes of Windows is refused on every system, with
// its place and what to write.
func TestWindowsPathsInInclude(t *testing.T) {
	for _, path := range []string{`C:\boat\fittings.toml`, `c:fittings.toml`, `\\server\boat\fittings.toml`, `parts\fittings.toml`} {
		build := filepath.Join(t.TempDir(), "build.toml")
		require.NoError(t, os.WriteFile(build, []byte("[build]\nname = 'x'\ncurrency = 'EUR'\ninclude = ['"+path+"']\n"), 0o644))
		var out, errOut bytes.Buffer
		require.Equal(t, exitFault, run([]string{"check", build}, strings.NewReader(""), &out, &errOut), path)
		said := out.String() + errOut.String()
		require.Contains(t, said, "build.toml line 4, column 12", path)
		require.Regexp(t, "write its path from there|write folders with / in place", said, path)
	}
}
