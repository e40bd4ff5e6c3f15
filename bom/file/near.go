package file

import (
	"errors"
	"io"
	"os"
	"path/filepath"
	"slices"
	"strings"

	"handtight/pressure/nearest"
)

// A folder of more files than this is not searched to its end for a near name.
const mostNames = 2000

// missing looks for the name that was meant.
func missing(path string) string {
	if filepath.Separator != '\\' && strings.Contains(path, `\`) {
		return "this is a path of Windows; write folders with / here, from the folder in which the file stands on this system"
	}
	dir, base := filepath.Split(path)
	names, ok := filesIn(dir)
	if !ok {
		return "check the path: there is no folder " + short(dir)
	}
	if near, ok := nearest.Of(base, names); ok {
		return "did you mean " + dir + near + "?"
	}
	if builds := tomlOnly(names); len(builds) > 0 {
		return "the build files there are " + strings.Join(builds, ", ")
	}
	return "check the name and the folder"
}

// short cuts a long path.
func short(path string) string {
	const most = 80
	if r := []rune(path); len(r) > most {
		return string(r[:most]) + " …"
	}
	return path
}

// folder says which files of a folder to name.
func folder(path string) error {
	e := &Error{Path: path, Reason: "this is a folder, not a file", Remedy: "name the build file within it, which ends in .toml"}
	names, _ := filesIn(path)
	if builds := tomlOnly(names); len(builds) > 0 {
		e.Remedy = "name a file within it: " + strings.Join(builds, ", ")
	}
	return e
}

// filesIn gives the sorted names of the files in a folder, as far as it is read.
func filesIn(dir string) ([]string, bool) {
	if dir == "" {
		dir = "."
	}
	folder, err := os.Open(dir)
	if err != nil {
		return nil, false
	}
	defer folder.Close()
	entries, err := folder.ReadDir(mostNames)
	if err != nil && !errors.Is(err, io.EOF) {
		return nil, false
	}
	var names []string
	for _, e := range entries {
		if !e.IsDir() {
			names = append(names, e.Name())
		}
	}
	slices.Sort(names)
	return names, true
}

// tomlOnly gives the first few names that end in .toml.
func tomlOnly(names []string) []string {
	const few = 5
	var builds []string
	for _, n := range names {
		if strings.HasSuffix(n, ".toml") && len(builds) < few {
			builds = append(builds, n)
		}
	}
	return builds
}
