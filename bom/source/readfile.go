package source

import (
	"errors"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"slices"
	"strings"

	"handtight/pressure/nearest"
)

// A folder of more files than this is not searched to its end for a near name.
const mostNames = 2000

// Load reads a file and parses it: [ReadFile], then [Parse].
func Load(path string) (*Document, Faults) {
	text, faults := ReadFile(path)
	if len(faults) > 0 {
		return nil, faults
	}
	return Parse(path, text)
}

// ReadFile reads a file of at most [MaxBytes]. It refuses a folder, a missing file
// (and gives the nearest name in that folder), a file that may not be read, and a
// file above the limit without reading all of it. The fault names the path as it
// was given, and no other.
func ReadFile(path string) ([]byte, Faults) {
	if path == "" {
		return nil, Faults{{Place{}, "no file is named", "give the path of a build file, which ends in .toml"}}
	}
	info, err := os.Stat(path)
	switch {
	case err != nil:
		return nil, Faults{unreadable(path, err)}
	case info.IsDir():
		return nil, Faults{folder(path)}
	case info.Size() > MaxBytes:
		return nil, Faults{tooLarge(path)}
	}
	file, err := os.Open(path)
	if err != nil {
		return nil, Faults{unreadable(path, err)}
	}
	defer file.Close()
	text, err := io.ReadAll(io.LimitReader(file, MaxBytes+1)) // a pipe has no size beforehand
	if err != nil {
		return nil, Faults{unreadable(path, err)}
	}
	if len(text) > MaxBytes {
		return nil, Faults{tooLarge(path)}
	}
	return text, nil
}

// unreadable says in plain words why a file cannot be read.
func unreadable(path string, err error) Fault {
	f := Fault{Place: Place{File: path}}
	switch {
	case errors.Is(err, fs.ErrNotExist):
		f.Reason, f.Remedy = "there is no such file", missingRemedy(path)
	case errors.Is(err, fs.ErrPermission):
		f.Reason, f.Remedy = "this file may not be read", "give yourself leave to read it, or copy it to a folder of your own"
	default:
		f.Reason, f.Remedy = "this file cannot be read", "check its name and the disk that it is on"
		if inner := (*fs.PathError)(nil); errors.As(err, &inner) {
			f.Reason += ": " + inner.Err.Error()
		}
	}
	return f
}

// missingRemedy looks for the name that was meant.
func missingRemedy(path string) string {
	dir, base := filepath.Split(path)
	names, ok := filesIn(dir)
	if !ok {
		return "check the path: there is no folder " + clip(dir, 80)
	}
	if near, ok := nearest.Of(base, names); ok {
		return "did you mean " + dir + near + "?"
	}
	if builds := tomlOnly(names); len(builds) > 0 {
		return "the build files there are " + strings.Join(builds, ", ")
	}
	return "check the name and the folder"
}

// folder says which files of a folder to name.
func folder(path string) Fault {
	f := Fault{Place{File: path}, "this is a folder, not a file", "name the build file within it, which ends in .toml"}
	names, _ := filesIn(path)
	if builds := tomlOnly(names); len(builds) > 0 {
		f.Remedy = "name a file within it: " + strings.Join(builds, ", ")
	}
	return f
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
